//! What is read back to the customer, and the same short enough for a message.

use crate::app::fields::CopyButton;
use crate::app::session::use_session;
use crate::app::shop::use_held_back;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine::shop::code::Code;
use linkwright::present::order::message::{Message, NO_MESSAGE, ONE_EACH, letters_of, messages};
use linkwright::present::order::read_back::{self, FIRST_SAID, Section};
use linkwright::report::WholeRig;
use linkwright::share;

/// The section.
#[component]
pub(super) fn ReadBack(
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
) -> impl IntoView {
    let session = use_session();
    let held_back = use_held_back();
    let told = move |document: &Document, whole: &WholeRig| {
        read_back::sections(document, &whole.links, code.get(), session.units.get())
    };
    let sections =
        Memo::new(move |_| session.document.with(|document| session.rig.with(|whole| told(document, whole))));
    let short = Memo::new(move |_| {
        let system = session.units.get();
        session.document.with(|document| session.rig.with(|whole| messages(document, &whole.links, system)))
    });
    let full = Callback::new(move |()| {
        let (code, system) = (code.get_untracked(), session.units.get_untracked());
        let lines = session.document.with_untracked(|document| {
            session.rig.with_untracked(|whole| read_back::script(document, &whole.links, code, system))
        });
        lines.join("\n")
    });
    let note_first = move |_| {
        session.settle();
        session.edit(|document| document.order.first_said = share::snapshot(document));
    };
    let noted = move || session.document.with(|document| !document.order.first_said.is_empty());
    let several = move || short.with(|short| short.len() > 1).then(|| view! { <p>{ONE_EACH}</p> });
    let message = |(link, message)| view! { <OneMessage link message /> };
    let section = |Section { heading, lines }: Section| {
        view! {
            <h4>{heading}</h4>
            <ol class="script">{lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ol>
        }
    };
    view! {
        <section class="part-of" id="read-back" tabindex="-1">
            <h3>"Read it back"</h3>
            {move || sections.get().into_iter().map(section).collect_view()}
            <div class="buttons">
                <button type="button" id="note-first" on:click=note_first>
                    {move || if noted() { "Replace what was first said" } else { "Note this as first said" }}
                </button>
                <CopyButton label="Copy the script" text=full done="Copied." disabled=held_back />
            </div>
            <p class="help">{FIRST_SAID}</p>
            <h4>"As a short message"</h4>
            {several}
            {move || short.get().into_iter().enumerate().map(message).collect_view()}
        </section>
    }
}

/// The message of one link, with a button of its own.
#[component]
fn OneMessage(
    /// Which link.
    link: usize,
    /// Its message.
    message: Message,
) -> impl IntoView {
    let Message { heading, text } = message;
    let held_back = use_held_back();
    let Some(text) = text else {
        return view! { <h5>{heading}</h5> <p>{NO_MESSAGE}</p> }.into_any();
    };
    // The first has the id that names the message of a single link.
    let id = if link == 0 { "short-text".to_string() } else { format!("short-text-{}", link + 1) };
    let (copied, letters) = (text.clone(), letters_of(&text));
    let copy = Callback::new(move |()| copied.clone());
    view! {
        <h5>{heading}</h5>
        <pre id=id>{text}</pre>
        <p class="help">{letters}</p>
        <div class="buttons"><CopyButton label="Copy the message" text=copy done="Copied." disabled=held_back /></div>
    }
    .into_any()
}
