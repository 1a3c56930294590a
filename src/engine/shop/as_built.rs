//! A piece as it was made, beside what was asked for.

use super::route::machine::{DEPTH_TOLERANCE, LENGTH_TOLERANCE, Machine};
use crate::document::{Piece, PieceField};
use crate::quantity::exceeds;
use crate::report::{Answer, LinkGeometry};

/// What was asked for in one field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asked {
    /// A length, with how far under and over it may be, m.
    Within(f64, [f64; 2]),
    /// A length as it is set when it is fitted, m.
    AsSet(f64),
    /// The gauges.
    Gauges,
    /// Words.
    Nothing,
}

/// How what was measured stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Judged {
    /// Within its tolerance.
    Within,
    /// Out of tolerance by so much, m; negative for too little.
    Off(f64),
    /// Full thread in the bar, and the least that is required, m.
    Engaged(f64, f64),
    /// Whether the gauges passed it.
    Gauges(bool),
}

impl Judged {
    /// Whether the piece may leave the shop.
    pub fn passes(self) -> bool {
        match self {
            Self::Within => true,
            Self::Off(_) => false,
            Self::Engaged(full, least) => !exceeds(least, full),
            Self::Gauges(passed) => passed,
        }
    }
}

/// What is asked for in a field.
pub fn asked(field: &PieceField, made: &LinkGeometry, machine: &Machine) -> Asked {
    let off = machine.in_force(&LENGTH_TOLERANCE);
    let end = field.end.and_then(|end| made.ends.get(end));
    match (field.id, end) {
        ("bar", _) => Asked::Within(made.bar, [off, off]),
        ("eye", _) => Asked::AsSet(made.length),
        ("depth-a" | "depth-b", Some(end)) => {
            Asked::Within(end.tapped_depth, [0.0, machine.in_force(&DEPTH_TOLERANCE)])
        }
        ("face-a" | "face-b", Some(end)) => Asked::AsSet(end.eye_to_face),
        ("gauge-a" | "gauge-b", _) => Asked::Gauges,
        _ => Asked::Nothing,
    }
}

/// How what stands in a field compares with what was asked for; nothing where nothing stands, or nothing was asked.
pub fn judge(field: &PieceField, piece: &Piece, answer: &Answer, machine: &Machine) -> Option<Judged> {
    let made = &answer.link;
    match (asked(field, made, machine), field.length(piece)) {
        (Asked::Within(length, [under, over]), Some(measured)) => {
            let least = length - under;
            Some(if exceeds(measured, length + over) || exceeds(least, measured) {
                Judged::Off(measured - length)
            } else {
                Judged::Within
            })
        }
        (Asked::AsSet(_), Some(measured)) => {
            let end = made.ends.get(field.end?)?;
            Some(Judged::Engaged(end.eye_to_end - measured - end.not_full, end.least))
        }
        (Asked::Gauges, _) => match field.text(piece) {
            "" => None,
            said => Some(Judged::Gauges(said == "passed")),
        },
        _ => None,
    }
}

/// Whether anything that was measured keeps a piece in the shop.
pub fn is_held_back(piece: &Piece, answer: &Answer, machine: &Machine) -> bool {
    let judged = crate::document::PIECE_FIELDS.iter().filter_map(|field| judge(field, piece, answer, machine));
    judged.into_iter().any(|judged| !judged.passes())
}
