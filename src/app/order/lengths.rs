//! The lengths of every link of a rig in one list, and what is picked for all of them at once.

use crate::app::fields::NumberField;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::Position;
use linkwright::inputs::edits::pick_for_all;
use linkwright::inputs::{At, Choice, FINISH, LENGTH, MATERIAL, MEASURED_ON, ROD_END, SUPPLIED_BY};
use linkwright::layouts::{copied_of_axle, copy_axle};
use linkwright::present::order::needed::{COPY_IN_RIG, copy_axle_label};

/// The list; nothing for a single link.
#[component]
pub(super) fn AllLengths() -> impl IntoView {
    let session = use_session();
    let titles = Memo::new(move |_| {
        session.document.with(|document| document.links.iter().map(|link| link.title()).collect::<Vec<_>>())
    });
    let several = move || titles.with(|titles| titles.len() > 1);
    let row = move |(link, title): (usize, String)| {
        let place = session.document.with_untracked(|document| At::of_link(document, link));
        view! {
            <li>
                <h4>{format!("{}. {title}", link + 1)}</h4>
                <NumberField input=&LENGTH place numbered=true />
            </li>
        }
    };
    view! {
        <Show when=several>
            <section class="part-of" id="all-lengths" tabindex="-1">
                <h3>"All links at once"</h3>
                <ol class="questions">{move || titles.get().into_iter().enumerate().map(row).collect_view()}</ol>
                <ForAll choice=&MEASURED_ON label="How every length was measured" />
                <ForAll choice=&MATERIAL label="Metal of every link" />
                <ForAll choice=&SUPPLIED_BY label="Whose rod ends, for every link" />
                <ForAll choice=&ROD_END label="Rod ends of every link" />
                <ForAll choice=&FINISH label="Finish of every link" />
                <p class="help">{COPY_IN_RIG}</p>
            </section>
        </Show>
        {Position::ALL.map(|from| view! { <CopyAxle from /> }).collect_view()}
    }
}

/// Adds the links of one axle at the other; nothing where that has its own.
#[component]
fn CopyAxle(
    /// The axle that is copied.
    from: Position,
) -> impl IntoView {
    let session = use_session();
    let copied = Memo::new(move |_| session.document.with(|document| copied_of_axle(document, from)));
    let copy = move |_| {
        session.rearrange(|document| copy_axle(document, from));
    };
    view! {
        <Show when=move || copied.get().gt(&0)>
            <div class="buttons">
                <button type="button" id=format!("copy-{}", from.word()) on:click=copy>
                    {move || copy_axle_label(from, copied.get())}
                </button>
            </div>
        </Show>
    }
}

/// A choice that is made for every link, at both ends.
#[component]
fn ForAll(
    /// The choice.
    choice: &'static Choice,
    /// As it is called.
    label: &'static str,
) -> impl IntoView {
    let session = use_session();
    let id = format!("all-{}", choice.id);
    let options =
        (choice.options)().into_iter().map(|option| view! { <option value=option.id>{option.label}</option> });
    let pick = move |id: String| {
        if !id.is_empty() {
            session.edit(|document| pick_for_all(document, choice, &id));
        }
    };
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <select id=id prop:value="" on:change:target=move |event| pick(event.target().value())>
                <option value="">"As each link has it"</option>
                {options.collect_view()}
            </select>
        </div>
    }
}
