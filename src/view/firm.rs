//! How firm the answer is. That takes as long as the answer itself, so it waits until typing pauses; meanwhile its
//! numbers are left open, so that no old one stands beside a new answer.

use super::changing::{Changing, Pause};
use super::known::Known;
use super::pace::Pace;
use super::rest::Rest;
use linkwright::document::Document;
use linkwright::report::Firmness;
use std::time::Duration;

/// A pause that long means that nobody is typing.
const PAUSE: Duration = Duration::from_millis(180);

/// How far each value may go.
#[derive(Clone, PartialEq, Default)]
pub(super) struct Firm {
    pub(super) rows: Vec<Firmness>,
    /// Whether the rows are those of the answer that stands there, and not those of the one before.
    pub(super) now: bool,
}

/// How firm the answer for one link is, once typing pauses, or at once where `paper` cannot wait.
pub(super) fn follow(
    document: Changing<Document>,
    at: Changing<usize>,
    rest: Changing<Rest>,
    pace: Pace,
    paper: impl Fn() -> bool + Send + Sync + 'static,
) -> Known<Firm> {
    // What stood on the bench when typing last paused.
    let (rested, place, pause) = (Changing::new(Document::default()), Changing::new(0), Pause::new());
    pace.whenever(move || {
        document.track();
        at.track();
        pause.after(PAUSE, move || {
            place.set(at.get_untracked());
            rested.set(document.get_untracked());
        });
    });
    Known::with_before(move |before: Option<&Firm>| {
        let (at, paper) = (at.get(), paper());
        document.with(|document| {
            let rests = place.get() == at && rested.with(|rested| rested == document);
            match rest.get() {
                Rest::Here(part) if rests || paper => Firm { rows: (part.firmness)(document, at), now: true },
                _ => Firm { rows: before.map(|before| before.rows.clone()).unwrap_or_default(), now: false },
            }
        })
    })
}
