//! What stands in number fields as it was typed, whether it could be taken or not.

use super::{At, NUMBERS, Number, Refused, Scope, applies};
use crate::document::Document;
use crate::quantity::System;

/// An entry as it was typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The input it was typed into.
    pub input: &'static str,
    /// Where that input is.
    pub place: At,
    /// What was typed.
    pub text: String,
    /// The units it was typed in.
    pub system: System,
    /// Why the text was not taken, if it was not.
    pub refused: Option<Refused>,
    /// Whether the reader stopped typing, so that a complaint no longer interrupts.
    pub settled: bool,
    /// What the document held before the first of these keys, to go back to where the text cannot be taken.
    before: Option<f64>,
    /// What the document held right after typing: once it holds something else the draft is gone.
    held: Option<f64>,
}

/// How far somebody is with a field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Typed {
    /// More keys may follow.
    Key,
    /// The field was left, but a finger or button may still be down.
    Left,
    /// Nothing more follows.
    Whole,
}

/// What an entry did to the document.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taken {
    /// Nothing.
    Unchanged,
    /// It holds what was typed.
    Changed,
    /// It holds again what it held before, for the text cannot be taken.
    TakenBack,
}

/// The entries of every field that somebody typed into.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drafts(Vec<Draft>);

impl Drafts {
    /// The draft of a field, as long as it still says what the document holds, in these units.
    pub fn of(&self, document: &Document, system: System, input: &Number, place: At) -> Option<&Draft> {
        let place = shared(input, place);
        let here = |draft: &&Draft| draft.input == input.id && draft.place == place;
        self.0.iter().find(here).filter(|draft| draft.stands(document, system))
    }

    /// Takes what was typed into a field, when it can be taken; keeps the text either way.
    pub fn type_into(
        &mut self,
        document: &mut Document,
        system: System,
        (input, place): (&'static Number, At),
        text: String,
        typed: Typed,
    ) -> Taken {
        let held = (input.get)(document, place);
        let typing = self.of(document, system, input, place).filter(|draft| !draft.settled);
        let before = typing.map_or(held, |draft| draft.before);
        let read = input.read(&text, system);
        let wanted = match &read {
            // A field emptied in order to retype it is not yet a wish to have nothing there.
            Ok(None) if typed == Typed::Key && matches!(input.id, "length" | "weight") => held,
            Ok(value) => *value,
            Err(_) if typed == Typed::Key => held,
            // Nobody who typed 927 meant the 92 on the way there.
            Err(_) => before,
        };
        let changed = !same(held, wanted);
        if changed {
            (input.set)(document, place, wanted);
        }
        let draft = Draft {
            input: input.id,
            place: shared(input, place),
            text,
            system,
            before: if read.is_ok() && typed != Typed::Key { wanted } else { before },
            held: wanted,
            settled: typed == Typed::Whole,
            refused: read.err(),
        };
        let taken = match (changed, draft.refused.is_some()) {
            (false, _) => Taken::Unchanged,
            (true, false) => Taken::Changed,
            (true, true) => Taken::TakenBack,
        };
        self.0.retain(|other| other.input != draft.input || other.place != draft.place);
        self.0.push(draft);
        taken
    }

    /// Those that stand and that somebody may still be typing.
    pub fn unsettled(&self, document: &Document, system: System) -> Vec<Draft> {
        self.still_there(document, system, |draft| !draft.settled)
    }

    /// Those that stand and could not be taken.
    pub fn refused(&self, document: &Document, system: System) -> Vec<Draft> {
        self.still_there(document, system, |draft| draft.refused.is_some())
    }

    fn still_there(&self, document: &Document, system: System, which: impl Fn(&Draft) -> bool) -> Vec<Draft> {
        self.0.iter().filter(|draft| which(draft) && draft.stands(document, system)).cloned().collect()
    }

    /// Drops what was typed into fields that are no longer shown: of the link at `place`, or of all where `all` are
    /// seen.
    pub fn drop_hidden(&mut self, document: &Document, place: At, all: bool) {
        self.0.retain(|draft| {
            let own = draft.is_of_a_link();
            let place = if own { At { axle: place.axle, ..draft.place } } else { place };
            (!own && all) || applies(draft.input, document, place)
        });
    }
}

impl Draft {
    /// The row of its input.
    pub fn row(&self) -> Option<&'static Number> {
        NUMBERS.iter().find(|input| input.id == self.input).copied()
    }

    /// Whether it belongs to one link, not to the rig or an axle.
    pub fn is_of_a_link(&self) -> bool {
        self.row().is_some_and(|input| matches!(input.scope, Scope::Link | Scope::End))
    }

    fn stands(&self, document: &Document, system: System) -> bool {
        self.system == system && self.row().is_some_and(|input| same(self.held, (input.get)(document, self.place)))
    }
}

/// The place that an input has in common with its other fields: the rig's is in the form of a link and of the rig.
fn shared(input: &Number, place: At) -> At {
    match input.scope {
        Scope::Rig => At::default(),
        Scope::Axle => At::of_axle(place.axle),
        Scope::Link => At { link: place.link, ..At::default() },
        Scope::End => At { link: place.link, end: place.end, ..At::default() },
    }
}

/// Whether two values are the same number, bit for bit.
fn same(a: Option<f64>, b: Option<f64>) -> bool {
    a.map(f64::to_bits) == b.map(f64::to_bits)
}
