//! What stands in fields as it was typed, whether it could be taken or not.

use super::moments::after;
use super::state::Bench;
use linkwright::inputs::{NUMBERS, Number, Place, Refused};
use linkwright::quantity::System;
use std::time::Duration;

/// How soon it is looked again whether a finger is still down.
const RELEASE: Duration = Duration::from_millis(30);

/// An entry as it was typed, for as long as it still says what the document holds.
#[derive(Clone, PartialEq)]
pub(super) struct Draft {
    pub(super) id: &'static str,
    pub(super) place: Place,
    pub(super) text: String,
    /// What the document held before the first of these keys, to go back to where the text cannot be taken.
    pub(super) before: Option<f64>,
    /// What the document held right after typing.
    pub(super) held: Option<f64>,
    pub(super) system: System,
    pub(super) revision: u32,
    /// Why the text was not taken, if it was not.
    pub(super) refused: Option<Refused>,
    /// Whether the reader stopped typing, so that a complaint no longer interrupts.
    pub(super) settled: bool,
}

impl Draft {
    /// Whether it was typed into this field.
    fn is_in(&self, id: &str, place: Place) -> bool {
        self.id == id && self.place == place
    }
}

impl Bench {
    /// Tells drafts that belong to these units and to the entries as a whole from those that are gone.
    fn counts(self) -> impl Fn(&Draft) -> bool {
        let (system, revision) = (self.system.get_untracked(), self.revision.get_untracked());
        move |draft| draft.system == system && draft.revision == revision
    }

    /// The draft of a field, if it still stands.
    pub(super) fn draft(self, id: &str, place: Place, held: Option<f64>) -> Option<Draft> {
        self.system.track();
        self.revision.track();
        let counts = self.counts();
        let stands = |draft: &&Draft| draft.is_in(id, place) && counts(draft) && same(draft.held, held);
        self.drafts.with(|drafts| drafts.iter().find(stands).cloned())
    }

    /// Takes what was typed into a field, when it can be taken; keeps the text either way.
    pub(super) fn type_into(self, input: &'static Number, place: Place, text: String, settled: bool) {
        let (system, revision) = (self.system.get_untracked(), self.revision.get_untracked());
        let held = || self.document.with_untracked(|document| (input.get)(document, place));
        let goes_on = {
            let counts = self.counts();
            move |draft: &&Draft| draft.is_in(input.id, place) && counts(draft) && !draft.settled
        };
        let typing = self.drafts.with_untracked(|drafts| drafts.iter().find(goes_on).cloned());
        let before = typing.filter(|draft| same(draft.held, held())).map_or_else(held, |draft| draft.before);
        // A field emptied in order to retype it is not yet a wish to have nothing there.
        let half_way = !settled && text.trim().is_empty() && matches!(input.id, "length" | "weight");
        let read = input.read(&text, system);
        let wanted = match &read {
            Ok(_) if half_way => held(),
            Ok(value) => *value,
            // Nobody who typed 927 meant the 92 on the way there.
            Err(_) if settled => before,
            Err(_) => held(),
        };
        if !same(held(), wanted) {
            // Where there is no answer yet, all of the page waits for the first one.
            if self.known.with_untracked(|known| *known) {
                self.pace.key();
            }
            self.document.update(|document| (input.set)(document, place, wanted));
        }
        let (held, refused) = (held(), read.err());
        let draft = Draft { id: input.id, place, text, before, held, system, revision, refused, settled };
        self.drafts.update(|drafts| {
            drafts.retain(|other| !other.is_in(input.id, place));
            drafts.push(draft);
        });
    }

    /// Shows other units. What could not be taken is read again in them: somebody typed 927 and meant millimeters.
    pub(super) fn switch_units(self, system: System) {
        self.settle();
        let refused = self.refused();
        self.system.set(system);
        refused.into_iter().for_each(|draft| self.read_again(draft));
    }

    /// Something else is done than typing: what could not be taken is refused for good, and the page stands as the
    /// entries want it.
    pub(super) fn settle(self) {
        self.refused().into_iter().filter(|draft| !draft.settled).for_each(|draft| self.read_again(draft));
        self.pace.settle();
    }

    /// What stands in fields and could not be taken.
    fn refused(self) -> Vec<Draft> {
        let counts = self.counts();
        let now = |draft: &&Draft| draft.refused.is_some() && counts(draft);
        self.drafts.with_untracked(|drafts| drafts.iter().filter(now).cloned().collect())
    }

    /// Reads a draft once more, as one that is typed to its end.
    fn read_again(self, draft: Draft) {
        if let Some(input) = NUMBERS.iter().find(|input| input.id == draft.id) {
            self.type_into(input, draft.place, draft.text, true);
        }
    }

    /// A field was left, or confirmed, or nothing more came. What was typed may be gone meanwhile, or be another value in
    /// other units.
    pub(super) fn finish(self, input: &'static Number, place: Place, text: &str) {
        let (counts, held) = (self.counts(), self.document.with_untracked(|document| (input.get)(document, place)));
        let typed = |draft: &Draft| draft.is_in(input.id, place) && draft.text == text && same(draft.held, held);
        let unfinished = |draft: &Draft| typed(draft) && counts(draft) && !draft.settled;
        if self.drafts.with_untracked(|drafts| drafts.iter().any(unfinished)) {
            self.type_into(input, place, text.to_string(), true);
        }
    }

    /// Does something as soon as neither finger nor button is down: else what is pressed may move away from under it.
    pub(super) fn once_released(self, act: impl FnOnce() + 'static) {
        fn wait(bench: Bench, pause: Duration, act: Box<dyn FnOnce()>) {
            after(pause, move || if bench.pressed.get_untracked() { wait(bench, RELEASE, act) } else { act() });
        }
        wait(self, Duration::ZERO, Box::new(act));
    }

    /// Whether an entry stands that was not taken, so that the answer rests on the one before it.
    pub(super) fn stale(self) -> bool {
        self.any_refused(|_| true)
    }

    /// The same once typing paused: half a number is no news to whoever only hears the page.
    pub(super) fn stale_for_good(self) -> bool {
        self.any_refused(|draft| draft.settled)
    }

    fn any_refused(self, which: impl Fn(&Draft) -> bool) -> bool {
        self.system.track();
        self.revision.track();
        let counts = self.counts();
        self.drafts.with(|drafts| drafts.iter().any(|draft| draft.refused.is_some() && counts(draft) && which(draft)))
    }
}

/// Whether two values are the same number, bit for bit.
fn same(a: Option<f64>, b: Option<f64>) -> bool {
    a.map(f64::to_bits) == b.map(f64::to_bits)
}
