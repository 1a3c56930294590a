//! Entries that were not taken, which keep an order from going out and from being made.

use crate::app::session::Session;
use leptos::prelude::*;
use linkwright::present::order::not_taken::sentence;

/// A sentence for each, for the components of the view.
#[derive(Clone, Copy)]
pub(crate) struct NotTaken(Memo<Vec<String>>);

/// Provides them.
pub(crate) fn provide_not_taken(session: Session) -> Memo<Vec<String>> {
    let sentences = Memo::new(move |_| {
        let drafts = session.not_taken();
        session.document.with(|document| drafts.iter().map(|draft| sentence(document, draft)).collect::<Vec<_>>())
    });
    provide_context(NotTaken(sentences));
    sentences
}

/// Whether there are any.
pub(crate) fn use_held_back() -> Signal<bool> {
    let NotTaken(sentences) = expect_context();
    Signal::derive(move || sentences.with(|sentences| !sentences.is_empty()))
}
