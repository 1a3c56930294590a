//! What stands in fields as it was typed, whether it could be taken or not.

use super::moments::after;
use super::more::matters;
use super::state::{Bench, Leaf};
use linkwright::document::Document;
use linkwright::inputs::{At, NUMBERS, Number, Refused, Scope};
use linkwright::quantity::System;
use std::time::Duration;

/// How soon it is looked again whether a finger is still down.
const LOOK: Duration = Duration::from_millis(30);

/// An entry as it was typed, for as long as it still says what the document holds.
#[derive(Clone, PartialEq)]
pub(super) struct Draft {
    pub(super) id: &'static str,
    pub(super) place: At,
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

/// How far somebody is with a field.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Typed {
    /// More keys may follow.
    Key,
    /// The field was left, but finger or button may still be down.
    Left,
    /// Nothing more follows.
    Whole,
}

/// The place that an input has in common with its other fields: the rig's is in the form of a link and of the rig.
fn of(input: &Number, place: At) -> At {
    match input.scope {
        Scope::Rig => At::default(),
        Scope::Axle => At::of_axle(place.axle),
        Scope::Link => At { link: place.link, ..At::default() },
        Scope::End => At { link: place.link, end: place.end, ..At::default() },
    }
}

impl Bench {
    fn decided(self, input: &Number, place: At) -> Option<f64> {
        self.document.with_untracked(|document| (input.get)(document, place))
    }

    /// Tells drafts that still say what the document holds, in these units, from those that are gone.
    fn stands(self, draft: &Draft) -> bool {
        let now = draft.system == self.system.get_untracked() && draft.revision == self.revision.get_untracked();
        now && draft.input().is_some_and(|input| same(draft.held, self.decided(input, draft.place)))
    }

    fn standing_in(self, input: &Number, place: At) -> Option<Draft> {
        let here = |draft: &&Draft| draft.id == input.id && draft.place == of(input, place);
        self.drafts.with_untracked(|drafts| drafts.iter().find(here).cloned()).filter(|draft| self.stands(draft))
    }

    /// Asks to be asked again when a draft may stand that did not, or the other way round.
    fn mind_drafts(self) {
        self.system.track();
        self.revision.track();
        self.document.track();
        self.drafts.track();
    }

    /// The draft of a field, if it still stands.
    pub(super) fn draft(self, input: &Number, place: At) -> Option<Draft> {
        self.mind_drafts();
        self.standing_in(input, place)
    }

    /// Takes what was typed into a field, when it can be taken; keeps the text either way.
    pub(super) fn type_into(self, input: &'static Number, place: At, text: String, how: Typed) {
        let (system, revision) = (self.system.get_untracked(), self.revision.get_untracked());
        let held = self.decided(input, place);
        let typing = self.standing_in(input, place).filter(|draft| !draft.settled);
        let before = typing.map_or(held, |draft| draft.before);
        let read = input.read(&text, system);
        let wanted = match &read {
            // A field emptied in order to retype it is not yet a wish to have nothing there.
            Ok(None) if how == Typed::Key && matches!(input.id, "length" | "weight") => held,
            Ok(value) => *value,
            Err(_) if how == Typed::Key => held,
            // Nobody who typed 927 meant the 92 on the way there.
            Err(_) => before,
        };
        if !same(held, wanted) {
            // Where there is no answer yet, all of the page waits for the first one.
            if self.known.with_untracked(|known| *known) {
                self.pace.key();
            }
            self.document.update(|document| (input.set)(document, place, wanted));
            if read.is_err() {
                self.document.with_untracked(|document| self.trail.taken_back(document));
            }
        }
        let draft = Draft {
            id: input.id,
            place: of(input, place),
            text,
            before: if read.is_ok() && how != Typed::Key { wanted } else { before },
            held: wanted,
            system,
            revision,
            refused: read.err(),
            settled: how == Typed::Whole,
        };
        self.drafts.update(|drafts| {
            drafts.retain(|other| other.id != draft.id || other.place != draft.place);
            drafts.push(draft);
        });
    }

    /// A field was left, or confirmed, or nothing more came. What was typed may be gone meanwhile, or be another value in
    /// other units.
    pub(super) fn finish(self, input: &'static Number, place: At, text: &str) {
        if self.standing_in(input, place).is_some_and(|draft| draft.text == text && !draft.settled) {
            self.type_into(input, place, text.to_string(), Typed::Whole);
        }
    }

    /// Something else is done than typing: what was typed is taken or refused for good, and the page stands as the entries
    /// want it.
    pub(super) fn settle(self) {
        self.those(|draft| !draft.settled).into_iter().for_each(|draft| self.read(draft));
        self.pace.settle();
    }

    /// Shows other units. What could not be taken is read again in them: somebody typed 927 and meant millimeters.
    pub(super) fn switch_units(self, system: System) {
        self.settle();
        let refused = self.those(|draft| draft.refused.is_some());
        self.system.set(system);
        refused.into_iter().for_each(|draft| self.read(draft));
    }

    fn those(self, which: impl Fn(&Draft) -> bool) -> Vec<Draft> {
        let drafts = self.drafts.get_untracked();
        drafts.into_iter().filter(|draft| which(draft) && self.stands(draft)).collect()
    }

    fn read(self, draft: Draft) {
        if let Some(input) = draft.input() {
            self.type_into(input, draft.place, draft.text, Typed::Whole);
        }
    }

    /// Does something as soon as neither finger nor button is down, else what is pressed may move away from under it; or
    /// after a second, if nobody tells that it is up.
    pub(super) fn once_released(self, act: impl FnOnce() + 'static) {
        fn wait(bench: Bench, pause: Duration, looks: u32, act: Box<dyn FnOnce()>) {
            after(pause, move || {
                if looks > 0 && bench.pressed.get_untracked() {
                    wait(bench, LOOK, looks - 1, act);
                } else {
                    act();
                }
            });
        }
        wait(self, Duration::ZERO, 30, Box::new(act));
    }

    /// Whether an entry stands that was not taken, so that the answer rests on the one before it.
    pub(super) fn stale(self) -> bool {
        self.any_refused(|_| true)
    }

    /// The same once typing paused: half a number is no news to whoever only hears the page.
    pub(super) fn stale_for_good(self) -> bool {
        self.any_refused(|draft| draft.settled)
    }

    /// Of the link on the bench; of all where all are seen.
    fn any_refused(self, which: impl Fn(&Draft) -> bool) -> bool {
        self.mind_drafts();
        let (at, all) = (self.at.get(), self.leaf.get() == Leaf::Rig);
        let here = |draft: &Draft| all || !draft.is_of_a_link() || draft.place.link == at;
        let counts = |draft: &Draft| draft.refused.is_some() && here(draft) && which(draft) && self.stands(draft);
        self.drafts.with_untracked(|drafts| drafts.iter().any(counts))
    }

    /// Drops what was typed into fields that are no longer shown.
    pub(super) fn drop_hidden(self) {
        let place = self.place_untracked();
        let all = self.leaf.get_untracked() == Leaf::Rig;
        let shown = |draft: &Draft| {
            let own = draft.is_of_a_link();
            let place = if own { At { axle: place.axle, ..draft.place } } else { place };
            let applies = |matters: fn(&Document, At) -> bool| self.document.with_untracked(|it| matters(it, place));
            (!own && all) || matters(draft.id).is_none_or(applies)
        };
        self.drafts.update(|drafts| drafts.retain(shown));
    }
}

impl Draft {
    fn input(&self) -> Option<&'static Number> {
        NUMBERS.iter().find(|input| input.id == self.id).copied()
    }

    /// Whether it belongs to one link, not to the rig or an axle.
    fn is_of_a_link(&self) -> bool {
        self.input().is_some_and(|input| matches!(input.scope, Scope::Link | Scope::End))
    }
}

/// Whether two values are the same number, bit for bit.
fn same(a: Option<f64>, b: Option<f64>) -> bool {
    a.map(f64::to_bits) == b.map(f64::to_bits)
}
