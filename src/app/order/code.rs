//! The order code, and whether a code that somebody reads out belongs to what stands here.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::shop::code::{Code, compare};
use linkwright::present::order::code::{HELP, NO_CODE_YET, compared};

/// The section.
#[component]
pub(super) fn OrderCode(
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
) -> impl IntoView {
    let session = use_session();
    let typed = RwSignal::new(String::new());
    let verdict = Memo::new(move |_| {
        typed.with(|typed| {
            (!typed.trim().is_empty()).then(|| {
                session.document.with(|document| {
                    session.rig.with(|whole| compared(document, compare(typed, document, &whole.links)))
                })
            })
        })
    });
    let shown = move || match code.get() {
        Some(code) => view! { <CodeWords code /> }.into_any(),
        None => view! { <p id="order-code">{NO_CODE_YET}</p> }.into_any(),
    };
    let said = move || verdict.get().map(|(class, sentence)| view! { <p class=class>{sentence}</p> });
    view! {
        <section class="part-of" id="code-part" tabindex="-1">
            <h3>"Order code"</h3>
            {shown}
            <div class="field">
                <label for="in-code">"A code that somebody reads to you"</label>
                <div class="entry words">
                    <input
                        id="in-code"
                        type="text"
                        autocomplete="off"
                        autocapitalize="characters"
                        spellcheck="false"
                        aria-describedby="help-code"
                        prop:value=move || typed.get()
                        on:input:target=move |event| typed.set(event.target().value())
                    />
                </div>
                <div id="code-compared" role="status">{said}</div>
                <p class="help" id="help-code">{HELP}</p>
            </div>
        </section>
    }
}

/// The code and how it is spelled.
#[component]
fn CodeWords(
    /// The code.
    code: Code,
) -> impl IntoView {
    view! {
        <p class="order-code" id="order-code">{code.written()}</p>
        <p class="help">{code.spoken()}</p>
    }
}
