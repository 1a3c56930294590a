//! Questions that take many searches: asked only once typing pauses.

use super::use_session;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::report::Firmness;
use std::time::Duration;

/// Typing has paused after this long without a key.
const PAUSE: Duration = Duration::from_millis(180);

/// The answer to a slow question about the current link, for as long as `wanted`; none until it was worked out for the
/// first time. While somebody types, the previous answer stays. For printing it is worked out at once.
pub(crate) fn use_slow<T: Clone + PartialEq + Send + Sync + 'static>(
    wanted: Signal<bool>,
    work: fn(&Document, usize) -> T,
) -> Signal<Option<T>> {
    let session = use_session();
    let asked = use_paused();
    let found = Memo::new(move |before: Option<&Option<T>>| {
        let paper = session.laid_open.get();
        let before = before.cloned().flatten();
        if !wanted.get() && !paper {
            return before;
        }
        let now = || (session.document.get(), session.link.get());
        let (document, link) = asked.get().filter(|_| !paper && before.is_some()).unwrap_or_else(now);
        Some(work(&document, link))
    });
    found.into()
}

/// Document and link as they were when typing last paused; none before it first did.
fn use_paused() -> Signal<Option<(Document, usize)>> {
    let session = use_session();
    let now = Memo::new(move |_| (session.document.get(), session.link.get()));
    let paused = RwSignal::new(None);
    let timer = StoredValue::new(None::<TimeoutHandle>);
    let stop = move || {
        if let Some(timer) = timer.try_update_value(Option::take).flatten() {
            timer.clear();
        }
    };
    Effect::new(move |_| {
        now.track();
        stop();
        let settle = move || {
            if let Some(now) = now.try_get_untracked() {
                paused.set(Some(now));
            }
        };
        timer.set_value(set_timeout_with_handle(settle, PAUSE).ok());
    });
    on_cleanup(stop);
    paused.into()
}

/// How far each value may go.
#[derive(Clone, PartialEq, Default)]
pub(crate) struct Firm {
    /// A row for each value.
    pub(crate) rows: Vec<Firmness>,
    /// Whether the rows belong to the current answer, not to the previous one.
    pub(crate) current: bool,
}

/// How firm an answer was, and for which document and link.
#[derive(Clone, PartialEq)]
struct Answered {
    of: (Document, usize),
    rows: Vec<Firmness>,
}

/// How firm the answer is. While somebody types the rows are not `current`, so that no old number is shown beside a new
/// answer.
pub(crate) fn use_firmness() -> Signal<Firm> {
    let session = use_session();
    let paused = use_paused();
    // Stored with its question: whoever types their way back to that gets the same answer at once.
    let answered = Memo::new(move |before: Option<&Option<Answered>>| {
        let now = || (session.document.get(), session.link.get());
        let of = if session.printing.get() { now() } else { paused.get()? };
        let before = before.cloned().flatten().filter(|before| before.of == of);
        Some(before.unwrap_or_else(|| Answered { rows: engine::firmness(&of.0, of.1), of }))
    });
    let firm = Memo::new(move |_| {
        answered
            .with(|answered| {
                answered.as_ref().map(|Answered { of: (document, link), rows }| {
                    let current = session.link.get() == *link && session.document.with(|open| open == document);
                    Firm { rows: rows.clone(), current }
                })
            })
            .unwrap_or_default()
    });
    firm.into()
}
