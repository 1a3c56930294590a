//! One row per reading on a rig: what it is called, how it is taken and what it can be.

mod as_fitted;
mod care;
mod hit;
pub mod told;

use crate::quantity::Kind;

/// What was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reading {
    /// A number, SI.
    Number(f64),
    /// The id of what was picked.
    Pick(&'static str),
}

/// A reading that can be taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingRow {
    /// Never reused once released.
    pub id: &'static str,
    /// As the page says it.
    pub label: &'static str,
    /// How it is taken.
    pub help: &'static str,
    /// What it can be.
    pub holds: ReadingKind,
}

/// What a reading can be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReadingKind {
    /// A number.
    Number {
        /// What it measures.
        kind: Kind,
        /// The least that is taken for a reading.
        least: f64,
        /// The most.
        most: f64,
    },
    /// One of a few, each with its id and what the page calls it.
    Pick(&'static [(&'static str, &'static str)]),
}

const fn row(id: &'static str, label: &'static str, help: &'static str, holds: ReadingKind) -> ReadingRow {
    ReadingRow { id, label, help, holds }
}

/// Whether a row is of the axle, and so the same for every bar there.
pub fn is_of_axle(id: &str) -> bool {
    as_fitted::OF_AXLE.contains(&id)
}

/// Yes or no.
pub const YES_NO: ReadingKind = ReadingKind::Pick(&[("yes", "Yes"), ("no", "No")]);

/// Every reading, part by part.
pub static READINGS: [&[ReadingRow]; 4] = [&as_fitted::ROWS, &hit::ROWS, &care::ROWS, &told::ROWS];

/// The row of an id.
pub fn reading_row(id: &str) -> Option<&'static ReadingRow> {
    READINGS.iter().copied().flatten().find(|row| row.id == id)
}

impl ReadingRow {
    /// Whether a reading is one that this row can hold.
    pub fn takes(&self, reading: Reading) -> bool {
        match (self.holds, reading) {
            (ReadingKind::Number { least, most, .. }, Reading::Number(value)) => (least..=most).contains(&value),
            (ReadingKind::Pick(picks), Reading::Pick(id)) => picks.iter().any(|(of, _)| *of == id),
            _ => false,
        }
    }

    /// The pick of an id that came from outside.
    pub fn pick(&self, id: &str) -> Option<Reading> {
        match self.holds {
            ReadingKind::Pick(picks) => picks.iter().find(|(of, _)| *of == id).map(|(of, _)| Reading::Pick(of)),
            ReadingKind::Number { .. } => None,
        }
    }
}

impl Reading {
    /// The number, if it is one.
    pub const fn number(self) -> Option<f64> {
        match self {
            Self::Number(value) => Some(value),
            Self::Pick(_) => None,
        }
    }

    /// The id of what was picked, if something was.
    pub const fn picked(self) -> Option<&'static str> {
        match self {
            Self::Pick(id) => Some(id),
            Self::Number(_) => None,
        }
    }
}
