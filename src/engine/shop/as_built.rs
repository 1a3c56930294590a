//! A piece as it was made, beside what was asked for.

use super::route::{Asked, Machine};
use crate::document::{Piece, PieceField};
use crate::engine::formula::Sheet;
use crate::engine::formulas::lengths;
use crate::quantity::{exceeds, inch};
use crate::report::{Answer, EndGeometry, LinkGeometry};

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
    /// More shank in the bar than goes in, m.
    TooDeep {
        /// Length of shank in the bar, as the reading has it.
        inserted: f64,
        /// The most that goes in.
        room: f64,
        /// What stops it.
        by: Stop,
    },
    /// The length that the bar and both readings at its faces add up to, m.
    Agrees(f64),
    /// The same where it is not what was read from eye to eye.
    Disagrees {
        /// What bar and faces add up to.
        sum: f64,
        /// The only reading that makes them agree when it is what was asked for; none where there is not just one.
        wrong: Option<Reading>,
    },
    /// Eye to eye, between the least and most that the link can be set to, m.
    InRange([f64; 2]),
    /// Eye to eye, shorter or longer than the link can be set, m.
    OutOfRange([f64; 2]),
    /// Whether the gauges passed it.
    Gauges(bool),
}

/// What stops a shank on its way in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stop {
    /// One pitch clear of the end of the thread in the bar.
    Hole,
    /// The jam nut, which takes the rest of the thread of the shank.
    JamNut,
}

/// A length of a piece that others can be held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reading {
    /// The bar, face to face.
    Bar,
    /// Eye center to bar face at an end.
    Face(usize),
    /// Eye to eye.
    Eyes,
}

/// How closely the bar and both faces must add up to what is read from eye to eye (assumption: a rule read to 1/32 in).
pub const AGREEMENT: f64 = inch(1.0 / 32.0);

impl Judged {
    /// Whether the piece may leave the shop.
    pub fn passes(self) -> bool {
        match self {
            Self::Within | Self::Agrees(_) | Self::InRange(_) => true,
            Self::Off(_) | Self::TooDeep { .. } | Self::Disagrees { .. } | Self::OutOfRange(_) => false,
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
        (Expected::AsSet(_), Some(measured)) => match field.end {
            Some(end) => Some(at_a_face(made.ends.get(end)?, measured, piece.ends.get(end)?.depth)),
            None => Some(eye_to_eye(piece, made, measured, machine)),
        },
        (Expected::Gauges, _) => match field.text(piece) {
            "" => None,
            said => Some(Judged::Gauges(said == "passed")),
        },
        _ => None,
    }
}

/// How an eye stands that is so far from its face. The hole is as deep as it was measured, where it was.
fn at_a_face(end: &EndGeometry, measured: f64, depth: Option<f64>) -> Judged {
    let mut sheet = Sheet::silent();
    let inserted = end.eye_to_end - measured;
    let by_hole = sheet.work(&lengths::MOST_BY_HOLE, &[depth.unwrap_or(end.tapped_depth), end.thread.pitch]);
    let by_nut = end.thread_length - end.jam_nut;
    let (room, by) = if exceeds(by_nut, by_hole) { (by_hole, Stop::Hole) } else { (by_nut, Stop::JamNut) };
    if exceeds(inserted, room) {
        return Judged::TooDeep { inserted, room: room.max(0.0), by };
    }
    Judged::Engaged((inserted - end.not_full).max(0.0), end.least)
}

/// How a length from eye to eye stands: beside bar and faces where all of them are written down, and within what the
/// link can be set to.
fn eye_to_eye(piece: &Piece, made: &LinkGeometry, measured: f64, machine: &Machine) -> Judged {
    let faces = [0, 1].map(|end: usize| piece.ends[end].eye_to_face);
    let sum = match (piece.bar, faces) {
        (Some(bar), [Some(a), Some(b)]) => Some(bar + a + b),
        _ => None,
    };
    if let Some(sum) = sum
        && exceeds((measured - sum).abs(), AGREEMENT)
    {
        return Judged::Disagrees { sum, wrong: only_wrong(made, measured - sum, measured, piece.bar, faces) };
    }
    // A bar that is off by so much makes the link longer or shorter by as much at either stop.
    let bar = Asked::bar(made, machine);
    let [under, over] = piece.bar.map_or([-bar.under, bar.over], |bar| [bar - made.bar; 2]);
    let reach = made.adjustment.reach;
    let range = [made.length - reach.in_limit + under, made.length + reach.out_limit + over];
    if exceeds(measured, range[1]) || exceeds(range[0], measured) {
        return Judged::OutOfRange(range);
    }
    sum.map_or(Judged::InRange(range), Judged::Agrees)
}

/// The one reading that, had it been what was asked for, would make all four agree; `off` is how much eye to eye is over
/// the rest.
fn only_wrong(
    made: &LinkGeometry,
    off: f64,
    measured: f64,
    bar: Option<f64>,
    faces: [Option<f64>; 2],
) -> Option<Reading> {
    let [a, b] = &made.ends;
    let found = [
        (Reading::Bar, bar.map(|bar| off + bar - made.bar)),
        (Reading::Face(0), faces[0].map(|face| off + face - a.eye_to_face)),
        (Reading::Face(1), faces[1].map(|face| off + face - b.eye_to_face)),
        (Reading::Eyes, Some(off - (measured - made.length))),
    ];
    let mut explain = found.into_iter().filter(|(_, left)| left.is_some_and(|left| !exceeds(left.abs(), AGREEMENT)));
    match (explain.next(), explain.next()) {
        (Some((reading, _)), None) => Some(reading),
        _ => None,
    }
}

/// Whether anything that was measured keeps a piece in the shop.
pub fn is_held_back(piece: &Piece, answer: &Answer, machine: &Machine) -> bool {
    let judged = crate::document::PIECE_FIELDS.iter().filter_map(|field| judge(field, piece, answer, machine));
    judged.into_iter().any(|judged| !judged.passes())
}
