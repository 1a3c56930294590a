//! What the shop has and charges: each list as a table that is edited in place, imported and exported.

mod cell;
mod rows;

use crate::app::fields::Fold;
use crate::app::shop::Shop;
use crate::browser::files;
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::present::order::lists::{DEMO, KEPT_HERE, file_name, summary};
use linkwright::shop::{self, Kind};
use rows::Rows;

/// The section.
#[component]
pub(super) fn ShopLists(
    /// The shop's lists.
    shop: Shop,
) -> impl IntoView {
    let demo = move |_| {
        for kind in Kind::ALL {
            shop.import(kind, shop::demo::text(kind));
        }
    };
    let empty = Memo::new(move |_| Kind::ALL.iter().all(|kind| shop.lists.with(|lists| shop::rows(lists, *kind) == 0)));
    view! {
        <section class="part-of" id="shop-lists" tabindex="-1">
            <h3>"What the shop has and charges"</h3>
            <p>{KEPT_HERE}</p>
            <Show when=move || empty.get()>
                <div class="buttons">
                    <button type="button" id="fill-demo" on:click=demo>"Try it with invented rows"</button>
                </div>
                <p class="help">{DEMO}</p>
            </Show>
            {Kind::ALL.map(|kind| view! { <OneList shop kind /> }).collect_view()}
        </section>
    }
}

/// One list.
#[component]
fn OneList(
    /// The shop's lists.
    shop: Shop,
    /// Which of them.
    kind: Kind,
) -> impl IntoView {
    let label = Signal::derive(move || shop.lists.with(|lists| summary(lists, kind)));
    let notices = move || {
        shop.notices.with(|notices| {
            let said = notices.iter().find(|(of, _)| *of == kind).map(|(_, said)| said.clone()).unwrap_or_default();
            said.into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()
        })
    };
    let export = move |_| {
        files::download(&file_name(kind), &shop.text(kind));
    };
    let import = move |event| {
        spawn_local(async move {
            match files::chosen_text(event).await {
                Ok(None) => {}
                Ok(Some(text)) => shop.import(kind, &text),
                Err(sentence) => shop.say(kind, vec![sentence.to_string()]),
            }
        });
    };
    let restore = move |_| {
        if let Some(text) = shop.before(kind) {
            shop.import(kind, &text);
        }
    };
    let field = format!("import-{}", kind.id());
    view! {
        <Fold summary=label class="shop-list">
            <div role="status">{notices}</div>
            <Rows shop kind />
            <div class="buttons">
                <button type="button" id=format!("export-{}", kind.id()) on:click=export>"Export as CSV"</button>
                <label class="button" for=field.clone()>"Import CSV"</label>
                <input class="unseen" id=field.clone() type="file" accept=".csv,.txt,text/csv" on:change=import />
                <Show when=move || shop.before(kind).is_some()>
                    <button type="button" class="quiet" id=format!("before-{}", kind.id()) on:click=restore>
                        "Bring back what it was before"
                    </button>
                </Show>
            </div>
        </Fold>
    }
}
