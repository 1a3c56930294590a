//! The route sheet of one link: for the screen, and on one page of paper with boxes to tick and blanks to write in.

mod rows;

pub(super) use rows::asked;
pub use rows::{Measurement, Row};

use super::super::drawing::{self, Drawing, Layout};
use super::super::words::{self, Units, hand_mark, letter, say_in, sheet_name, unbroken};
use crate::document::Document;
use crate::engine::formula::Line;
use crate::engine::shop::route::Route;
use crate::quantity::{Kind, System};
use crate::report::Answer;

/// The title of the sheet.
pub const TITLE: &str = "Route sheet";

/// What is written by hand in the head of the sheet.
pub const BLANKS: [&str; 3] = ["Order", "Made by", "Date"];

/// One page for the shop.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Which link, and how many of it.
    pub name: String,
    /// What it is made of, and its lengths.
    pub head: Vec<HeadRow>,
    /// What must be settled before anything is cut.
    pub before: Vec<String>,
    /// What is written in by hand.
    pub blanks: &'static [&'static str],
    /// End A and end B, by letter and shape.
    pub ends: [EndMark; 2],
    /// The steps.
    pub steps: Vec<Row>,
    /// What is measured and written down, in the order of the steps.
    pub measurements: Vec<Measurement>,
    /// Minutes in all, for one piece and for all of them.
    pub time: String,
    /// What stands behind the minutes and the machine.
    pub note: &'static str,
    /// How the weights came out.
    pub working: Vec<Line>,
    /// Whether its ends are welded in: such a sheet has more steps, and smaller letters to stay on one page.
    pub welded: bool,
}

/// A line in the head of the sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct HeadRow {
    /// What it is.
    pub name: &'static str,
    /// Its value.
    pub value: String,
}

/// What an end is told apart by.
#[derive(Debug, Clone, PartialEq)]
pub struct EndMark {
    /// Its letter.
    pub letter: &'static str,
    /// Its shape on the sheet: a circle for A, a square for B, which print in one color.
    pub shape: &'static str,
    /// Its thread and hand.
    pub thread: String,
}

/// What stands on the fold with the working of a step.
pub const WORKING: &str = "How these numbers came out";
/// The same of the weights.
pub const WORKING_OF_WEIGHTS: &str = "How the weights came out";

/// Said under the steps.
pub const NOTE: &str = "Speeds, feeds and limits carry their source with each step. Minutes, machine limits and tolerances are assumptions until you set your own.";

/// The shape of an end.
pub const fn shape(end: usize) -> &'static str {
    if end == 0 { "●" } else { "■" }
}

/// The route sheet of a link.
pub fn sheet(document: &Document, at: usize, answer: &Answer, route: &Route, units: impl Into<Units>) -> Sheet {
    let (units, made) = (units.into(), &answer.link);
    let weight = |value: f64| words::in_units(value, Kind::Weight, units);
    let row = |name, value| HeadRow { name, value };
    let mut head = vec![
        row("Stock", format!("{}, {}", made.material.label, words::stock(made, units))),
        row("Eye to eye", words::length(made.length, units)),
        row("Bar, face to face", words::length(made.bar, units)),
        row("Saw to", words::length(made.cut, units)),
        row("Blank", weight(route.blank_weight)),
    ];
    head.extend(route.finished_weight.map(|finished| row("Finished bar", weight(finished))));
    Sheet {
        name: sheet_name(document, at),
        head,
        before: route.before.iter().map(|said| unbroken(&say_in(said, units))).collect(),
        blanks: &BLANKS,
        ends: [0, 1].map(|end| EndMark {
            letter: letter(end),
            shape: shape(end),
            thread: format!("{}, {}", made.ends[end].thread.label, hand_mark(made.ends[end].hand)),
        }),
        steps: route.steps.iter().enumerate().map(|(index, step)| rows::row(index, step, units)).collect(),
        measurements: route
            .steps
            .iter()
            .enumerate()
            .flat_map(|(index, step)| step.boxes.iter().map(move |one| rows::measurement(index, one, units)))
            .collect(),
        time: time(route),
        note: NOTE,
        working: route.working.clone(),
        welded: made.bore > 0.0,
    }
}

impl Sheet {
    /// The time in all and what stands behind it, for the foot of the paper.
    pub fn foot(&self) -> String {
        format!("Time: {}. {}", self.time, self.note)
    }
}

/// The steps for paper, where room is dear: a step at end B that says the same as one at end A points back to it.
pub fn said_once(steps: &[Row]) -> Vec<Row> {
    let at_b = |words: &String| words.replace("end A", "end B").replace(shape(0), shape(1));
    let same = |a: &Row, b: &Row| {
        at_b(&a.title) == b.title
            && a.says.iter().map(at_b).eq(b.says.iter().cloned())
            && a.warnings.iter().map(at_b).eq(b.warnings.iter().cloned())
    };
    let one = |(at, row): (usize, &Row)| {
        let first = steps.iter().take(at).find(|before| before.title != row.title && same(before, row));
        let says = first.map(|first| vec![format!("As step {}, at this end.", first.number)]);
        says.map_or_else(|| row.clone(), |says| Row { says, warnings: Vec::new(), ..row.clone() })
    };
    steps.iter().enumerate().map(one).collect()
}

/// What is measured, for paper: what only passes or not at the same step stands in one line.
pub fn measured_once(measurements: &[Measurement]) -> Vec<Measurement> {
    let mut once: Vec<Measurement> = Vec::new();
    for one in measurements {
        match once.last_mut().filter(|last| last.step == one.step && last.asked.is_empty() && one.asked.is_empty()) {
            Some(last) => last.name = format!("{}; {}", last.name, words::lower(&one.name)),
            None => once.push(one.clone()),
        }
    }
    once
}

/// Minutes in all: `1 h 25 min for one piece, 2 h 50 min for 2 pieces`.
fn time(route: &Route) -> String {
    let one = format!("{} for one piece", rows::minutes(route.minutes));
    if route.pieces < 2 {
        return one;
    }
    let all = rows::minutes(route.minutes * route.pieces as f64);
    format!("{one}, {all} for {}", words::pieces(route.pieces))
}

/// The link to scale and both ends large, as the sheet shows them.
pub fn drawings(answer: &Answer, layout: Layout, system: System) -> [Drawing; 3] {
    [
        drawing::link::link(answer, system, layout),
        drawing::end::end(&answer.link, 0, layout, system),
        drawing::end::end(&answer.link, 1, layout, system),
    ]
}
