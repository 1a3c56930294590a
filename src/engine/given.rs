//! The values in force for one link, with a note of every default the answer rests on.

use std::cell::{Cell, RefCell};

use crate::document::{Document, Link, OWN_ROD_END, Stock};
use crate::engine::tables::inserts::{self, Insert};
use crate::engine::tables::jam_nuts::{self, JamNut};
use crate::engine::tables::materials::{self, Material};
use crate::engine::tables::rod_ends::{self, Family, RodEnd};
use crate::engine::tables::threads::{self, Limits, Thread};
use crate::inputs::{self, At, Choice, Number};
use crate::report::Assumption;

/// Width of the widest ball of the published series, in bores.
const WIDEST_BALL: f64 = 1.4;

/// A document seen from one of its links.
pub(super) struct Values<'a> {
    /// The document.
    pub(super) document: &'a Document,
    /// The link.
    pub(super) link: &'a Link,
    /// Where it stands in the document.
    pub(super) place: At,
    assumed: RefCell<Vec<&'static Number>>,
    /// Whether defaults are noted; a search asks for them thousands of times and nobody reads its list.
    noting: Cell<bool>,
    /// Changed defaults seen since the watch began; none while nobody watches.
    changed: RefCell<Option<Vec<&'static str>>>,
}

impl<'a> Values<'a> {
    pub(super) fn new(document: &'a Document, index: usize) -> Option<Self> {
        Some(Self {
            document,
            link: document.links.get(index)?,
            place: At::of_link(document, index),
            assumed: RefCell::default(),
            noting: Cell::new(true),
            changed: RefCell::default(),
        })
    }

    /// The value of an input of the rig or of the link.
    pub(super) fn number(&self, input: &'static Number) -> Option<f64> {
        self.number_at(input, 0)
    }

    /// The value of an input of one end.
    pub(super) fn number_at(&self, input: &'static Number, end: usize) -> Option<f64> {
        let place = At { end, ..self.place };
        self.note_number(input, place);
        input.value(self.document, place)
    }

    fn note_number(&self, input: &'static Number, place: At) {
        if !self.noting.get() {
            return;
        }
        let mut assumed = self.assumed.borrow_mut();
        if input.default_kind == inputs::DefaultKind::Assumed
            && !assumed.iter().any(|known| std::ptr::eq(*known, input))
        {
            assumed.push(input);
        }
        if let Some(changed) = self.changed.borrow_mut().as_mut()
            && input.default_kind.is_a_default()
            && !changed.contains(&input.id)
            && input.decided(self.document, place).is_some()
        {
            changed.push(input.id);
        }
    }

    /// The id in force of a choice of the rig, its axle or the link.
    pub(super) fn choice(&self, choice: &'static Choice) -> Option<&'static str> {
        self.rests_on_choice(choice);
        choice.value(self.document, self.place)
    }

    /// Notes that the answer rests on a number which is read by other ways, such as a default that follows from it.
    pub(super) fn rests_on(&self, input: &'static Number) {
        self.note_number(input, self.place);
    }

    /// The same for a choice.
    pub(super) fn rests_on_choice(&self, choice: &'static Choice) {
        self.note_choice(choice, self.place);
    }

    fn note_choice(&self, choice: &'static Choice, place: At) {
        if self.noting.get()
            && let Some(changed) = self.changed.borrow_mut().as_mut()
            && !changed.contains(&choice.id)
            && (choice.get)(self.document, place).is_some()
        {
            changed.push(choice.id);
        }
    }

    /// Whether the link is an upper one that holds its axle sideways, for want of a track bar.
    pub(super) fn holds_sideways(&self) -> bool {
        self.rests_on_choice(&inputs::TRACK_BAR);
        inputs::holds_sideways(self.document, self.place)
    }

    /// Whether somebody gave the value of an input of the rig, its axle or the link.
    pub(super) fn is_decided(&self, input: &'static Number) -> bool {
        input.decided(self.document, self.place).is_some()
    }

    /// Whether what is asked for is noted from here on.
    pub(super) fn note(&self, noting: bool) {
        self.noting.set(noting);
    }

    /// Begins to note which changed defaults are asked for.
    pub(super) fn begin_trace(&self) {
        self.changed.replace(Some(Vec::new()));
    }

    /// The changed defaults asked for since the watch began, which ends here.
    pub(super) fn take_trace(&self) -> Vec<&'static str> {
        self.changed.take().unwrap_or_default()
    }

    /// The value of an input that always has a default; an impossible document gives NaN, which every check refuses.
    pub(super) fn known(&self, input: &'static Number) -> f64 {
        self.number(input).unwrap_or(f64::NAN)
    }

    /// Yield strength of the shank at an end; a metal does not yield above the stress that breaks it.
    pub(super) fn shank_yield(&self, end: usize) -> f64 {
        let at = |input| self.number_at(input, end).unwrap_or(f64::NAN);
        at(&inputs::SHANK_YIELD).min(at(&inputs::SHANK_ULTIMATE))
    }

    /// What was assumed so far, in the order of the form.
    pub(super) fn assumptions(&self) -> Vec<Assumption> {
        let used = self.assumed.borrow();
        let place = self.place;
        inputs::NUMBERS
            .iter()
            .filter(|input| used.contains(input))
            .filter_map(|input| {
                Some(Assumption {
                    input: input.id,
                    value: input.value(self.document, place)?,
                    kind: input.kind,
                    changed: input.decided(self.document, place).is_some(),
                })
            })
            .collect()
    }

    pub(super) fn material(&self) -> &'static Material {
        self.link.material.and_then(materials::find).unwrap_or_else(materials::default_row)
    }

    /// What is welded into a tube at an end.
    pub(super) fn insert(&self, end: usize) -> &'static Insert {
        self.note_choice(&inputs::TUBE_END, At { end, ..self.place });
        let decided = self.link.ends.get(end).and_then(|end| end.insert);
        decided.and_then(inserts::find).unwrap_or_else(inserts::default_row)
    }

    /// Whether bars of inch or of metric sizes are chosen from.
    pub(super) fn stock(&self) -> Stock {
        inputs::stock_of(self.document, self.place)
    }

    pub(super) fn family(&self) -> Family {
        let id = self.link.family.unwrap_or(Family::ALL[0].id());
        Family::ALL.into_iter().find(|family| family.id() == id).unwrap_or(Family::ALL[0])
    }

    /// The rod end decided for an end, if one is and it is complete.
    pub(super) fn chosen_joint(&self, end: usize) -> Option<RodEndSpec> {
        let chosen = self.link.ends.get(end)?;
        if chosen.rod_end? != OWN_ROD_END {
            return rod_ends::find(chosen.rod_end?).and_then(RodEndSpec::of_table);
        }
        let thread = threads::find(chosen.own_thread?)?;
        let bore = self.number_at(&inputs::OWN_BORE, end)?;
        let ball = self.number_at(&inputs::OWN_BALL_WIDTH, end);
        let measured = self.number_at(&inputs::OWN_RACE_BORE, end).map(|hole| Hole { diameter: hole, assumed: false });
        Some(RodEndSpec {
            id: OWN_ROD_END,
            label: "Your own rod end",
            bore,
            // A ball without a reading is taken as wide as any: the wider, the more the bolt bends.
            ball_width: ball.unwrap_or(WIDEST_BALL * bore),
            head: Head {
                diameter: self.number_at(&inputs::OWN_HEAD_DIAMETER, end),
                thickness: self.number_at(&inputs::OWN_HEAD_THICKNESS, end),
                hole: measured.or_else(|| ball.map(|ball| Hole::assumed(bore, ball))),
            },
            eye_to_end: self.number_at(&inputs::OWN_EYE_TO_END, end)?,
            thread_length: self.number_at(&inputs::OWN_THREAD_LENGTH, end)?,
            ..RodEndSpec::of_thread(thread)?
        })
    }
}

/// The head of a rod end, as far as it is known.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Head {
    pub(super) diameter: Option<f64>,
    pub(super) thickness: Option<f64>,
    pub(super) hole: Option<Hole>,
}

/// The hole in a head, which holds the race.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hole {
    pub(super) diameter: f64,
    /// Whether it is taken from bore and ball instead of being printed or measured.
    pub(super) assumed: bool,
}

impl Hole {
    /// The hole that bore and ball width suggest: the corner of the ball, with the largest race printed around one.
    fn assumed(bore: f64, ball: f64) -> Self {
        Self { diameter: rod_ends::LARGEST_RACE * (bore * bore + ball * ball).sqrt(), assumed: true }
    }
}

/// A rod end with its thread and jam nut, from the table or measured.
#[derive(Debug, Clone, Copy)]
pub(super) struct RodEndSpec {
    pub(super) id: &'static str,
    pub(super) label: &'static str,
    pub(super) thread: &'static Thread,
    pub(super) nut: &'static JamNut,
    pub(super) bore: f64,
    pub(super) ball_width: f64,
    /// The row, for the tilt of the ball and its source; a measured rod end has none.
    pub(super) row: Option<&'static RodEnd>,
    /// The head around the ball, as far as it is known.
    pub(super) head: Head,
    pub(super) eye_to_end: f64,
    pub(super) thread_length: f64,
    /// Class limits and shear areas of the thread, worked out once: a search asks for them hundreds of times.
    pub(super) limits: Limits,
    pub(super) external_shear_area: f64,
    pub(super) internal_shear_area: f64,
}

impl RodEndSpec {
    /// What follows from the thread alone; the lengths are still to come.
    fn of_thread(thread: &'static Thread) -> Option<Self> {
        Some(Self {
            id: "",
            label: "",
            thread,
            nut: jam_nuts::for_thread(thread)?,
            bore: 0.0,
            ball_width: 0.0,
            row: None,
            head: Head::default(),
            eye_to_end: 0.0,
            thread_length: 0.0,
            limits: thread.limits(),
            external_shear_area: thread.external_shear_area(),
            internal_shear_area: thread.internal_shear_area(),
        })
    }

    pub(super) fn of_table(row: &'static RodEnd) -> Option<Self> {
        Some(Self {
            id: row.id,
            label: row.label,
            bore: row.bore,
            ball_width: row.ball_width,
            row: Some(row),
            head: Head {
                diameter: Some(row.head_diameter),
                thickness: Some(row.head_width),
                hole: row.race_bore.map(|hole| Hole { diameter: hole, assumed: false }),
            },
            eye_to_end: row.eye_to_end,
            thread_length: row.thread_length,
            ..Self::of_thread(threads::find(row.thread)?)?
        })
    }
}
