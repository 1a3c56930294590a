//! The rows of a route sheet: a step, and what is measured in it.

use super::super::super::ends::SizeRow;
use super::super::super::words::{self, Units, in_units, say_in, unbroken};
use super::shape;
use crate::engine::formula::Line;
use crate::engine::shop::route::{Asked, Figure, Step, ToMeasure, Value};
use crate::quantity::{Kind, System, show};

/// Feet in one meter a minute, for cutting speeds.
const METERS_IN_A_FOOT: f64 = 0.3048;

/// One step with its box.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its number on the sheet, as it is shown.
    pub number: String,
    /// What it is called, with the end it is done at: `Tap, end A ●`.
    pub title: String,
    /// What to do.
    pub says: Vec<String>,
    /// Its numbers by name, for the screen.
    pub figures: Vec<SizeRow>,
    /// What to mind.
    pub warnings: Vec<String>,
    /// How long it takes.
    pub minutes: String,
    /// Where its values come from, for the screen.
    pub sources: Vec<String>,
    /// How its numbers came out, for the screen.
    pub working: Vec<Line>,
}

/// Something to measure, with room to write.
#[derive(Debug, Clone, PartialEq)]
pub struct Measurement {
    /// The number of its step.
    pub step: String,
    /// What is measured, with the end.
    pub name: String,
    /// What it should be; empty for what only passes or not.
    pub asked: String,
}

fn number(index: usize) -> String {
    (index + 1).to_string()
}

fn at_end(name: &str, end: Option<usize>) -> String {
    end.map_or_else(|| name.to_string(), |end| format!("{name}, end {} {}", words::letter(end), shape(end)))
}

/// One step.
pub(super) fn row(index: usize, step: &Step, units: Units) -> Row {
    let sentence = |said: &crate::engine::sentence::Said| unbroken(&say_in(said, units));
    let mut says: Vec<String> = step.says.iter().map(sentence).collect();
    // What a sentence begins with may be a name out of a table.
    says.iter_mut().for_each(|says| *says = capital(says));
    Row {
        number: number(index),
        title: at_end(step.title, step.end),
        says,
        figures: step.figures.iter().map(|one| figure(one, units)).collect(),
        warnings: step.warnings.iter().map(sentence).collect(),
        minutes: minutes(step.minutes),
        sources: step.sources.iter().map(|cite| cite.words()).collect(),
        working: step.working.clone(),
    }
}

fn capital(says: &str) -> String {
    let mut letters = says.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn figure(figure: &Figure, units: Units) -> SizeRow {
    let range = |[least, most]: [String; 2]| if least == most { least } else { format!("{least} to {most}") };
    let value = match &figure.value {
        Value::One(value, kind) => in_units(*value, *kind, units),
        Value::Range(both, kind) => range(both.map(|value| in_units(value, *kind, units))),
        Value::Counted(both, "ft/min") => {
            let meters = range(both.map(|value| plain((value * METERS_IN_A_FOOT).round())));
            format!("{} ft/min ({meters} m/min)", range(both.map(plain)))
        }
        // A spindle is set no faster than this.
        Value::Counted(both, "rpm") => format!("{} rpm", range(both.map(|value| plain(value.floor())))),
        Value::Counted(both, unit) => format!("{} {unit}", range(both.map(plain))),
        Value::Words(words) => words.clone(),
    };
    SizeRow { name: figure.name, value: unbroken(&value) }
}

fn plain(value: f64) -> String {
    show(value, Kind::Count, System::Inch)
}

/// What is measured.
pub(super) fn measurement(index: usize, one: &ToMeasure, units: Units) -> Measurement {
    let asked = one.asked.map_or_else(String::new, |length| asked(length, units));
    Measurement { step: number(index), name: at_end(one.name, one.end), asked }
}

/// A length that is asked for, with its tolerance.
pub(in crate::present::make) fn asked(asked: Asked, units: Units) -> String {
    let fine = |value: f64| in_units(value, Kind::FineLength, units);
    let length = fine(asked.length);
    let nothing = |value: f64| value <= 0.0;
    match (nothing(asked.under), nothing(asked.over)) {
        (true, true) => length,
        (true, false) => format!("{length}, up to {} more", fine(asked.over)),
        (false, true) => format!("{length}, up to {} less", fine(asked.under)),
        (false, false) => format!("{length}, ± {}", fine(asked.over)),
    }
}

/// `45 min`, `1 h 20 min`; begun minutes count.
pub(super) fn minutes(minutes: f64) -> String {
    if !minutes.is_finite() {
        return "—".to_string();
    }
    let whole = (minutes - 1e-9).ceil().max(0.0) as u64;
    match (whole / 60, whole % 60) {
        (0, rest) => format!("{rest} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, rest) => format!("{hours} h {rest} min"),
    }
}
