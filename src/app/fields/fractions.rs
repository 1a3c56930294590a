//! Fractions beside a phone's number pad, which has no slash and no space.

use super::step::step;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::inputs::drafts::Typed;
use linkwright::inputs::{At, LENGTH, Number};
use linkwright::present::field::{self, FRACTIONS, with_fraction};
use linkwright::quantity::System;

/// A row of keys under the length field that is being filled in; the style shows it on touch screens.
#[component]
pub(super) fn Fractions(
    /// The input.
    input: &'static Number,
    /// Where it is.
    place: At,
    /// Whether the keyboard with letters is wanted.
    letters: RwSignal<bool>,
) -> impl IntoView {
    let session = use_session();
    let put = move |fraction: &'static str| {
        let system = session.units.get_untracked();
        let text = session.drafts.with_untracked(|drafts| {
            session.document.with_untracked(|document| field::number(document, drafts, system, input, place).text)
        });
        session.type_into(input, place, with_fraction(&text, fraction), Typed::Key);
    };
    let inches = move || session.units.get() == System::Inch;
    let keys = move || {
        inches().then(|| {
            let key = |fraction| view! { <button type="button" on:click=move |_| put(fraction)>{fraction}</button> };
            FRACTIONS.map(key).collect_view()
        })
    };
    // The length itself has these two keys beside its field.
    let steps = (input.id != LENGTH.id).then(|| {
        let small = move || field::step_words(session.units.get());
        view! {
            <button type="button" on:click=move |_| step(session, input, place, -1.0)>"−"{small}</button>
            <button type="button" on:click=move |_| step(session, input, place, 1.0)>"+"{small}</button>
        }
    });
    // Pressing a key must not take the focus, and the keyboard with it, from the field.
    view! {
        <div class="fractions" role="group" aria-label="Fractions" on:pointerdown=|event| event.prevent_default()>
            <button
                type="button"
                aria-pressed=move || letters.get().to_string()
                on:click=move |_| letters.update(|letters| *letters = !*letters)
            >
                "abc"
            </button>
            {keys}
            {steps}
        </div>
    }
}
