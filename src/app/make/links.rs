//! The link and the code of one link of the rig, for a sheet and a label of its own.

use crate::app::session::Session;
use crate::browser::address;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine::shop::code::{alone, code_of_link};
use linkwright::report::{Answer, LinkReport};
use linkwright::share::{Sent, to_fragment, to_send};
use linkwright::store::unverified;
use std::sync::Arc;

/// The address that opens a link as it is made: of that link alone where it needs no other, else of the rig; none where
/// the page is a file on this device. Nothing is tracked.
pub(super) fn address_of(session: Session, document: &Document, link: usize, answer: &Answer) -> Option<String> {
    let fragment =
        alone(document, link, answer).map_or_else(|| to_send(document, Sent::default()), |one| to_fragment(&one));
    let address =
        session.origin.with_untracked(|origin| address::with_fragment(unverified::to_send(&fragment, origin)));
    (!address::is_a_file()).then_some(address)
}

/// The order code of a link. Nothing is tracked.
pub(super) fn code_of(session: Session, link: usize, answer: &Answer) -> String {
    session.document.with_untracked(|document| code_of_link(document, link, answer).written())
}

/// Every link that has an answer, with its place in the rig. Nothing is tracked.
pub(super) fn every_answer(session: Session) -> Vec<(usize, Arc<Answer>)> {
    let whole = session.rig.get_untracked();
    let answered = whole.links.iter().enumerate().filter_map(|(index, report)| match report {
        LinkReport::Answer(answer) => Some((index, Arc::clone(answer))),
        _ => None,
    });
    answered.collect()
}

/// The current link, if it has an answer. Nothing is tracked.
pub(super) fn current(session: Session) -> Vec<(usize, Arc<Answer>)> {
    let answer = session.answer.get_untracked();
    answer.map(|answer| (session.link.get_untracked(), answer)).into_iter().collect()
}
