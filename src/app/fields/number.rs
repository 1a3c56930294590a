//! A field for a number: the text as typed, the default while it is empty, and why an entry is refused.

use super::fractions::Fractions;
use super::step::Step;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::inputs::drafts::Typed;
use linkwright::inputs::{At, DefaultKind, LENGTH, Number};
use linkwright::present::field;
use linkwright::quantity::{Kind, unit_name};
use std::time::Duration;

/// How long a pause makes a half-typed entry a finished one.
const PAUSE: Duration = Duration::from_millis(900);

/// The field of an input.
#[component]
pub(crate) fn NumberField(
    /// The input.
    input: &'static Number,
    /// Where it is.
    place: At,
    /// Whether it stands among those of other links, so that the link's number tells it from them.
    #[prop(optional)]
    numbered: bool,
) -> impl IntoView {
    let session = use_session();
    let key = field::key(input.id, input.scope, place);
    let key = if numbered { format!("{key}-{}", place.link + 1) } else { key };
    let (id, error_id, help_id) = (format!("in-{key}"), format!("err-{key}"), format!("help-{key}"));
    let shown = Memo::new(move |_| {
        let system = session.units.get();
        session
            .document
            .with(|document| session.drafts.with(|drafts| field::number(document, drafts, system, input, place)))
    });
    let wrong = move || shown.with(|shown| shown.complaint.is_some());
    let described = {
        let (error_id, help_id) = (error_id.clone(), help_id.clone());
        move || if wrong() { format!("{error_id} {help_id}") } else { help_id.clone() }
    };
    let letters = RwSignal::new(false);
    let (has_focus, focused) = (StoredValue::new(false), RwSignal::new(false));
    let follow_focus = move |now| {
        has_focus.set_value(now);
        // The fractions must not appear or go while a finger is down, which would move what it presses.
        session.once_released(move || {
            if let Some(now) = has_focus.try_get_value().filter(|now| focused.try_get_untracked() != Some(*now)) {
                let _ = focused.try_set(now);
            }
        });
    };
    let keypad = move || match input.kind {
        // Fractions stand beside the number pad, and one tap brings letters.
        Kind::Length if letters.get() => "text",
        _ => "decimal",
    };
    let typed = move |text: String| {
        session.type_into(input, place, text.clone(), Typed::Key);
        set_timeout(move || session.once_released(move || session.finish(input, place, &text)), PAUSE);
    };
    let left = move |text: String| {
        session.type_into(input, place, text.clone(), Typed::Left);
        session.once_released(move || session.finish(input, place, &text));
    };
    let whose = move || {
        let link = (input.id == LENGTH.id).then_some(place.link);
        link.map(|link| session.document.with(|document| field::of_several(document, link)))
    };
    let complaint = move || {
        let sentence = shown.with(|shown| shown.complaint.clone());
        sentence.map(|sentence| view! { <p class="error" role="alert" id=error_id.clone()>{sentence}</p> })
    };
    let question = move || {
        let sentence = shown.with(|shown| shown.question.clone());
        sentence.map(|sentence| view! { <p class="help" role="status">{sentence}</p> })
    };
    let fractions =
        move || (input.kind == Kind::Length && focused.get()).then(|| view! { <Fractions input place letters /> });
    let can_reset = move || shown.with(|shown| shown.changed) && input.default_kind != DefaultKind::Asked;
    view! {
        <div
            class="field"
            class:changed=move || shown.with(|shown| shown.changed)
            class:wrong=wrong
            on:focusin=move |_| follow_focus(true)
            on:focusout=move |_| follow_focus(false)
        >
            <label for=id.clone()>{input.label}{whose}</label>
            <div class="entry">
                {(input.id == LENGTH.id).then(|| view! { <Step input place direction=-1.0 /> })}
                <input
                    type="text"
                    autocomplete="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    id=id
                    inputmode=keypad
                    prop:value=move || shown.with(|shown| shown.text.clone())
                    placeholder=move || shown.with(|shown| shown.placeholder.clone())
                    aria-invalid=move || wrong().to_string()
                    aria-describedby=described
                    on:input:target=move |event| typed(event.target().value())
                    on:change:target=move |event| left(event.target().value())
                />
                <span class="unit" aria-hidden="true">{move || unit_name(input.kind, session.units.get())}</span>
                {(input.id == LENGTH.id).then(|| view! { <Step input place direction=1.0 /> })}
            </div>
            {fractions}
            {complaint}
            {question}
            <p class="help" id=help_id hidden=numbered && place.link != 0>{input.help}" "{move || shown.with(|shown| shown.default.clone())}</p>
            <Show when=can_reset>
                <button
                    type="button"
                    class="quiet reset"
                    on:click=move |_| session.type_into(input, place, String::new(), Typed::Whole)
                >
                    "Back to the default"<span class="unseen">" for "{input.label}</span>
                </button>
            </Show>
        </div>
    }
}
