//! From one link of several to the others.

use crate::app::session::{View, use_session};
use leptos::prelude::*;
use linkwright::inputs;
use linkwright::present::rig;

/// Which of several links is the current one; nothing when there is only one.
#[component]
pub(crate) fn LinkPicker() -> impl IntoView {
    let session = use_session();
    let titles = Memo::new(move |_| session.document.with(rig::picker_titles));
    let shown = move || titles.with(|titles| titles.len() > 1) && session.view.get() != View::Rig;
    let options = move || {
        let option = |(index, title): (usize, String)| {
            view! { <option value=index.to_string() selected=move || session.link.get() == index>{title}</option> }
        };
        titles.get().into_iter().enumerate().map(option).collect_view()
    };
    view! {
        <Show when=shown>
            <div class="field links">
                <label for="link-picker">"Current link"</label>
                <select
                    id="link-picker"
                    on:change:target=move |event| session.link.set(event.target().value().parse().unwrap_or(0))
                >
                    {options}
                </select>
            </div>
        </Show>
    }
}

/// On to the next link that is not entered yet, or back to the list. Placed right below the length,
/// within reach of the thumb.
#[component]
pub(crate) fn OtherLinks() -> impl IntoView {
    let session = use_session();
    let ways = Memo::new(move |_| {
        session.document.with(|document| {
            let count = document.links.len();
            let entered = (0..count).all(|link| inputs::still_needed(document, link).is_empty());
            (count > 1, inputs::next_link(document, session.link.get()), entered)
        })
    });
    let back = move |_| session.open_view_at(View::Rig, format!("open-{}", session.link.get_untracked()));
    let next = move || {
        let (_, next, _) = ways.get();
        next.map(|next| {
            view! {
                <button type="button" class="next-link" on:click=move |_| session.open_link(next)>
                    "Next link"
                </button>
            }
        })
    };
    let label = move || rig::back_label(ways.get().2);
    view! {
        <Show when=move || ways.get().0 && session.view.get() == View::Size>
            <div class="buttons around">
                {next}
                <button type="button" class="back-to-rig" on:click=back>{label}</button>
            </div>
        </Show>
    }
}
