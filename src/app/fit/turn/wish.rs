//! The one number that is wanted.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::fit::turn::{Ask, read_wish};
use linkwright::quantity::unit_name;

/// The field of a question.
#[component]
pub(super) fn WishField(
    /// The question.
    ask: Memo<Ask>,
    /// What is typed; whoever asks something else empties it.
    typed: RwSignal<String>,
    /// Where its number goes, SI.
    value: RwSignal<Option<f64>>,
) -> impl IntoView {
    let session = use_session();
    let question = move || ask.get().question();
    let wrong = RwSignal::new(None::<String>);
    let take = move |text: String, left: bool| {
        // A field that is taken off the page while somebody types says so once it is gone.
        if wrong.is_disposed() {
            return;
        }
        let read = read_wish(ask.get_untracked(), &text, session.units.get_untracked());
        typed.set(text);
        match read {
            Ok(read) => {
                wrong.set(None);
                value.set(read);
            }
            // A half-typed entry is not refused before it is left, and no answer to its beginning stays.
            Err(sentence) => {
                value.set(None);
                if left {
                    wrong.set(Some(sentence));
                }
            }
        }
    };
    // A question that was refused is not the next one's.
    Effect::new(move |_| {
        ask.track();
        wrong.set(None);
    });
    view! {
        <div class="field" class:wrong=move || wrong.read().is_some()>
            <label for="turn-wish">{move || question().label}</label>
            <div class="entry">
                <input
                    type="text"
                    id="turn-wish"
                    autocomplete="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    inputmode="decimal"
                    aria-invalid=move || wrong.read().is_some().to_string()
                    aria-describedby="help-turn-wish"
                    prop:value=typed
                    on:input:target=move |event| take(event.target().value(), false)
                    on:change:target=move |event| take(event.target().value(), true)
                />
                <span class="unit" aria-hidden="true">{move || unit_name(question().kind, session.units.get())}</span>
            </div>
            {move || wrong.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}
            <p class="help" id="help-turn-wish">{move || question().help}</p>
        </div>
    }
}
