//! Typing into fields: what is typed stands there as it is, and counts as soon as it can be read.

use super::{Session, View};
use leptos::prelude::*;
use linkwright::inputs::drafts::{Draft, Drafts, Taken, Typed};
use linkwright::inputs::{At, Number};
use linkwright::quantity::System;
use std::time::Duration;

/// How soon the pointer is checked again while it is down, and how often at most.
const LOOK: Duration = Duration::from_millis(30);
const LOOKS: u32 = 30;

impl Session {
    /// Takes what was typed into a field, when it can be taken; keeps the text either way.
    pub(crate) fn type_into(self, input: &'static Number, place: At, text: String, typed: Typed) {
        let system = self.units.get_untracked();
        let mut document = self.document.get_untracked();
        let mut drafts = self.drafts.get_untracked();
        match drafts.type_into(&mut document, system, (input, place), text, typed) {
            Taken::Unchanged => {}
            Taken::Changed => self.document.set(document),
            Taken::TakenBack => {
                self.taken_back(&document);
                self.document.set(document);
            }
        }
        self.drafts.set(drafts);
    }

    /// A field was left, or confirmed, or nothing more came. What was typed may be gone meanwhile.
    pub(crate) fn finish(self, input: &'static Number, place: At, text: &str) {
        let draft = self.draft_untracked(input, place);
        if draft.is_some_and(|draft| draft.text == text && !draft.settled) {
            self.type_into(input, place, text.to_string(), Typed::Whole);
        }
    }

    fn draft_untracked(self, input: &Number, place: At) -> Option<Draft> {
        let system = self.units.get_untracked();
        let of = |drafts: &Drafts| {
            self.document.with_untracked(|document| drafts.of(document, system, input, place).cloned())
        };
        self.drafts.with_untracked(of)
    }

    /// Something else is done than typing: what is half typed is taken or refused for good.
    pub(crate) fn settle(self) {
        let system = self.units.get_untracked();
        let document = self.document.get_untracked();
        self.read_again(self.drafts.with_untracked(|drafts| drafts.unsettled(&document, system)));
    }

    /// Shows other units. What could not be taken is read again in them: somebody typed 927 and meant millimeters.
    pub(crate) fn switch_units(self, system: System) {
        self.settle();
        let before = self.units.get_untracked();
        let document = self.document.get_untracked();
        let refused = self.drafts.with_untracked(|drafts| drafts.refused(&document, before));
        self.units.set(system);
        self.read_again(refused);
    }

    fn read_again(self, drafts: Vec<Draft>) {
        for draft in drafts {
            if let Some(input) = draft.row() {
                self.type_into(input, draft.place, draft.text, Typed::Whole);
            }
        }
    }

    /// Does something as soon as no finger or button is down, so that nothing moves away from under the pointer; or
    /// after a second, if no event says that it is up.
    pub(crate) fn once_released(self, act: impl FnOnce() + 'static) {
        self.wait_for_release(Duration::ZERO, LOOKS, Box::new(act));
    }

    fn wait_for_release(self, pause: Duration, looks: u32, act: Box<dyn FnOnce()>) {
        let look = move || {
            if looks > 0 && self.pressed.get_value() {
                self.wait_for_release(LOOK, looks - 1, act);
            } else {
                act();
            }
        };
        set_timeout(look, pause);
    }

    /// Every entry that stands and was not taken, of whichever link: an order is of all of them.
    pub(crate) fn not_taken(self) -> Vec<Draft> {
        let system = self.units.get();
        self.drafts.with(|drafts| self.document.with(|document| drafts.refused(document, system)))
    }

    /// Whether an entry stands that was not taken, so that the answer rests on the one before it.
    pub(crate) fn is_stale(self) -> bool {
        self.refused_drafts.with(|drafts| !drafts.is_empty())
    }

    /// The same once typing paused: a screen reader must not announce half a number.
    pub(crate) fn is_stale_for_good(self) -> bool {
        self.refused_drafts.with(|drafts| drafts.iter().any(|draft| draft.settled))
    }

    /// Drops what was typed into fields that are no longer shown.
    pub(crate) fn drop_hidden(self) {
        let (place, all) = (self.place_untracked(), self.view.get_untracked() == View::Rig);
        let document = self.document.get_untracked();
        self.drafts.update(|drafts| drafts.drop_hidden(&document, place, all));
    }
}
