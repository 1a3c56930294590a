//! A field for a number that no document holds: a reading on the rig, a wish, a borrowed part.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::quantity::{Kind, unit_name};

/// The field.
#[component]
pub(super) fn NumberField(
    /// The id of the input.
    id: String,
    /// What is asked.
    label: &'static str,
    /// How it is measured or meant.
    help: &'static str,
    /// What kind of number it is.
    kind: Kind,
    /// What stands in it while nobody types.
    #[prop(into)]
    shown: Signal<String>,
    /// Takes what is typed, at every key; it refuses with a sentence what it cannot read.
    take: Callback<String, Result<(), String>>,
) -> impl IntoView {
    let session = use_session();
    let typing = RwSignal::new(None::<String>);
    let wrong = RwSignal::new(None::<String>);
    let on_input = move |text: String| {
        // A half-typed entry is not refused before it is left.
        if take.run(text.clone()).is_ok() {
            wrong.set(None);
        }
        typing.set(Some(text));
    };
    let on_change = move |text: String| {
        // A field that is taken off the page while somebody types says so once it is gone; what could be read of it
        // was taken at each key.
        if typing.is_disposed() {
            return;
        }
        wrong.set(take.run(text.clone()).err());
        typing.set(wrong.read_untracked().is_some().then_some(text));
    };
    let (help_id, error_id) = (format!("help-{id}"), format!("error-{id}"));
    let described = {
        let (help_id, error_id) = (help_id.clone(), error_id.clone());
        move || if wrong.read().is_some() { format!("{error_id} {help_id}") } else { help_id.clone() }
    };
    view! {
        <div class="field" class:wrong=move || wrong.read().is_some()>
            <label for=id.clone()>{label}</label>
            <div class="entry">
                <input
                    type="text"
                    id=id
                    autocomplete="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    inputmode="decimal"
                    aria-invalid=move || wrong.read().is_some().to_string()
                    aria-describedby=described
                    prop:value=move || typing.get().unwrap_or_else(|| shown.get())
                    on:input:target=move |event| on_input(event.target().value())
                    on:change:target=move |event| on_change(event.target().value())
                />
                <span class="unit" aria-hidden="true">{move || unit_name(kind, session.units.get())}</span>
            </div>
            {move || {
                let id = error_id.clone();
                wrong.get().map(|words| view! { <p class="error" role="alert" id=id>{words}</p> })
            }}
            <p class="help" id=help_id>{help}</p>
        </div>
    }
}
