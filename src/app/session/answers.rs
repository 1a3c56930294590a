//! The answer for the sections below and for slow questions, always beside the document that it is of.

use super::Session;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::report::{Answer, LinkReport};
use std::sync::Arc;
use std::time::Duration;

impl Session {
    /// Hands the answer on to the sections below, a frame later.
    pub(super) fn follow_answer(self) {
        Effect::new(move |_| {
            self.answer.track();
            after_paint(move || self.answer_below.set(self.answer.get_untracked()));
        });
    }

    /// Reads the answer for the sections below with the document and the link that it is of. They are not tracked: every
    /// change of them brings an answer a frame later, and nothing is worked out from a new document and an old answer.
    pub(crate) fn with_answer_below<T>(self, read: impl FnOnce(&Document, usize, &Answer) -> T) -> Option<T> {
        let answer = self.answer_below.get()?;
        let link = self.link.get_untracked();
        self.document.with_untracked(|document| (link < document.links.len()).then(|| read(document, link, &answer)))
    }

    /// The answer for a link of a document, both as they were when a slow question was asked: the one at hand where nothing
    /// changed since. Nothing is tracked.
    pub(crate) fn answer_then(self, document: &Document, link: usize) -> Option<Arc<Answer>> {
        if self.question.with_untracked(|(now, current)| *current == link && now == document) {
            return self.answer.get_untracked();
        }
        answer_in(&engine::report_on(document, link))
    }
}

/// Does something once the page shows what was changed just now.
pub(crate) fn after_paint(work: impl FnOnce() + 'static) {
    request_animation_frame(move || set_timeout(work, Duration::ZERO));
}

/// The answer of a report, if it is one.
pub(super) fn answer_in(report: &LinkReport) -> Option<Arc<Answer>> {
    match report {
        LinkReport::Answer(answer) => Some(Arc::clone(answer)),
        _ => None,
    }
}
