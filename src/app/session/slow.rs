//! Questions that take many searches: asked only once typing pauses.

use super::use_session;
use leptos::leptos_dom::helpers::debounce;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::report::Firmness;
use std::time::Duration;

/// Typing has paused after this long without a key.
const PAUSE: Duration = Duration::from_millis(180);

/// A document without its order, and which of its links is asked about.
pub(crate) type Question = (Document, usize);

/// Document and link as they were when typing last paused; none before it first did.
pub(super) fn paused(now: Memo<Question>) -> RwSignal<Option<Question>> {
    let paused = RwSignal::new(None);
    let mut settle = debounce(PAUSE, move |()| paused.set(Some(now.get_untracked())));
    Effect::new(move |_| {
        now.track();
        settle(());
    });
    paused
}

/// The answer to a slow question about the current link, for as long as `wanted`; none until it was worked out for the
/// first time. While somebody types, the previous answer stays. For printing it is worked out at once.
pub(crate) fn use_slow<T: Clone + PartialEq + Send + Sync + 'static>(
    wanted: Signal<bool>,
    work: impl Fn(&Document, usize) -> T + Send + Sync + 'static,
) -> Signal<Option<T>> {
    let session = use_session();
    let found = Memo::new(move |before: Option<&Option<T>>| {
        let paper = session.laid_open.get();
        let before = before.cloned().flatten();
        if !wanted.get() && !paper {
            return before;
        }
        let paused = session.paused.get().filter(|_| !paper && before.is_some());
        let (document, link) = paused.unwrap_or_else(|| session.question.get());
        Some(work(&document, link))
    });
    found.into()
}

/// How far each value may go.
#[derive(Clone, PartialEq, Default)]
pub(crate) struct Firm {
    /// A row for each value.
    pub(crate) rows: Vec<Firmness>,
    /// Whether the rows belong to the current answer, not to the previous one.
    pub(crate) current: bool,
}

/// How firm an answer was, and to which question.
#[derive(Clone, PartialEq)]
struct Answered {
    to: Question,
    rows: Vec<Firmness>,
}

/// How firm the answer is, worked out once for all who ask. While somebody types the rows are not `current`, so that no
/// old number is shown beside a new answer.
pub(super) fn firmness(
    now: Memo<Question>,
    paused: RwSignal<Option<Question>>,
    printing: RwSignal<bool>,
) -> Memo<Firm> {
    // Stored with its question: whoever types their way back to that gets the same answer at once.
    let answered = Memo::new(move |before: Option<&Option<Answered>>| {
        let to = if printing.get() { now.get() } else { paused.get()? };
        let before = before.cloned().flatten().filter(|before| before.to == to);
        Some(before.unwrap_or_else(|| Answered { rows: engine::firmness(&to.0, to.1), to }))
    });
    Memo::new(move |_| {
        let firm = |Answered { to, rows }: &Answered| Firm { rows: rows.clone(), current: now.with(|now| now == to) };
        answered.with(|answered| answered.as_ref().map(firm)).unwrap_or_default()
    })
}
