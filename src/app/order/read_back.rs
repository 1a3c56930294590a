//! What is read back to the customer, and the same short enough for a message.

use crate::app::fields::CopyButton;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::shop::code::{Code, code_of_link};
use linkwright::present::order::read_back::{self, FIRST_SAID, letters_of};
use linkwright::share;

/// The section.
#[component]
pub(super) fn ReadBack(
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
) -> impl IntoView {
    let session = use_session();
    let lines = Memo::new(move |_| {
        let system = session.units.get();
        session
            .document
            .with(|document| session.rig.with(|whole| read_back::script(document, &whole.links, code.get(), system)))
    });
    let short = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        session.answer.get().map(|answer| {
            session.document.with(|document| {
                read_back::short_text(document, link, &answer, code_of_link(document, link, &answer), system)
            })
        })
    });
    let full = Callback::new(move |()| lines.get_untracked().join("\n"));
    let note_first = move |_| {
        session.settle();
        session.edit(|document| document.order.first_said = share::snapshot(document));
    };
    let noted = move || session.document.with(|document| !document.order.first_said.is_empty());
    let message = move || {
        short.get().map(|text| {
            let copied = text.clone();
            view! {
                <h4>"As a short message"</h4>
                <pre id="short-text">{text.clone()}</pre>
                <p class="help">{letters_of(&text)}</p>
                <div class="buttons">
                    <CopyButton label="Copy the message" text=Callback::new(move |()| copied.clone()) done="Copied." />
                </div>
            }
        })
    };
    view! {
        <section class="part-of" id="read-back" tabindex="-1">
            <h3>"Read it back"</h3>
            <ol class="script">
                {move || lines.get().into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
            </ol>
            <div class="buttons">
                <button type="button" id="note-first" on:click=note_first>
                    {move || if noted() { "Replace what was first said" } else { "Note this as first said" }}
                </button>
                <CopyButton label="Copy the script" text=full done="Copied." />
            </div>
            <p class="help">{FIRST_SAID}</p>
            {message}
        </section>
    }
}
