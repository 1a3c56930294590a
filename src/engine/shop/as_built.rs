//! A piece as it was made, beside what was asked for.

use super::route::{Asked, Machine};
use crate::document::{Piece, PieceField};
use crate::quantity::exceeds;
use crate::report::{Answer, LinkGeometry};

/// What is expected in one field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Expected {
    /// A length with its tolerance, as the route sheet asks for it.
    Measured(Asked),
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

/// What is expected in a field.
pub fn expected(field: &PieceField, made: &LinkGeometry, machine: &Machine) -> Expected {
    let end = field.end.and_then(|end| made.ends.get(end));
    match (field.id, end) {
        ("bar", _) => Expected::Measured(Asked::bar(made, machine)),
        ("eye", _) => Expected::AsSet(made.length),
        ("depth-a" | "depth-b", Some(end)) => Expected::Measured(Asked::full_thread(end, machine)),
        ("face-a" | "face-b", Some(end)) => Expected::AsSet(end.eye_to_face),
        ("gauge-a" | "gauge-b", _) => Expected::Gauges,
        _ => Expected::Nothing,
    }
}

/// How what stands in a field compares with what was asked for; nothing where nothing stands, or nothing was asked.
pub fn judge(field: &PieceField, piece: &Piece, answer: &Answer, machine: &Machine) -> Option<Judged> {
    let made = &answer.link;
    match (expected(field, made, machine), field.length(piece)) {
        (Expected::Measured(Asked { length, under, over }), Some(measured)) => {
            let least = length - under;
            Some(if exceeds(measured, length + over) || exceeds(least, measured) {
                Judged::Off(measured - length)
            } else {
                Judged::Within
            })
        }
        (Expected::AsSet(_), Some(measured)) => {
            let end = made.ends.get(field.end?)?;
            Some(Judged::Engaged(end.eye_to_end - measured - end.not_full, end.least))
        }
        (Expected::Gauges, _) => match field.text(piece) {
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
