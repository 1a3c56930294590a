//! What was measured on a piece once it was made. It moves with its link; no number of any report rests on it, and it is
//! never sent with a link.

use super::{Link, tidy_reference};

/// One piece as it was made.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Piece {
    /// Heat or lot of its metal.
    pub heat: String,
    /// The certificate of that heat.
    pub certificate: String,
    /// Who made and measured it.
    pub by: String,
    /// The day, as ISO 8601.
    pub on: String,
    /// The bar, face to face, m.
    pub bar: Option<f64>,
    /// Eye to eye, where rod ends are fitted, m.
    pub eye_to_eye: Option<f64>,
    /// End A and end B.
    pub ends: [PieceEnd; 2],
}

/// One end of a piece as it was made.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PieceEnd {
    /// Depth of full thread, m.
    pub depth: Option<f64>,
    /// Eye center to bar face, where a rod end is fitted, m.
    pub eye_to_face: Option<f64>,
    /// Whether the thread passed its gauges: go went in, no-go did not.
    pub gauge: Option<bool>,
}

/// No more of one link are made at a time.
pub const MOST_PIECES: usize = 20;

/// One thing that is written down of a piece.
pub struct PieceField {
    /// Never reused once released.
    pub id: &'static str,
    /// As the page says it.
    pub label: &'static str,
    /// At which end.
    pub end: Option<usize>,
    /// What it holds.
    pub holds: Holds,
}

/// What stands in a field, and how it is got and set.
pub enum Holds {
    /// A few words.
    Words(fn(&Piece) -> &String, fn(&mut Piece) -> &mut String),
    /// A day of the calendar.
    Day(fn(&Piece) -> &String, fn(&mut Piece) -> &mut String),
    /// A length, m.
    Length(fn(&Piece) -> Option<f64>, fn(&mut Piece, Option<f64>)),
    /// Passed its gauges or not.
    Gauge(fn(&Piece) -> Option<bool>, fn(&mut Piece, Option<bool>)),
}

const fn field(id: &'static str, label: &'static str, end: Option<usize>, holds: Holds) -> PieceField {
    PieceField { id, label, end, holds }
}

/// Every field, in the order in which they are written down.
pub static PIECE_FIELDS: [PieceField; 12] = [
    field("heat", "Heat or lot", None, Holds::Words(|it| &it.heat, |it| &mut it.heat)),
    field("certificate", "Certificate", None, Holds::Words(|it| &it.certificate, |it| &mut it.certificate)),
    field("bar", "Bar, face to face", None, Holds::Length(|it| it.bar, |it, value| it.bar = value)),
    field("depth-a", "Full thread, deep", Some(0), Holds::Length(|it| it.ends[0].depth, |it, v| it.ends[0].depth = v)),
    field("depth-b", "Full thread, deep", Some(1), Holds::Length(|it| it.ends[1].depth, |it, v| it.ends[1].depth = v)),
    field("gauge-a", "Thread gauges", Some(0), Holds::Gauge(|it| it.ends[0].gauge, |it, v| it.ends[0].gauge = v)),
    field("gauge-b", "Thread gauges", Some(1), Holds::Gauge(|it| it.ends[1].gauge, |it, v| it.ends[1].gauge = v)),
    field("eye", "Eye to eye", None, Holds::Length(|it| it.eye_to_eye, |it, value| it.eye_to_eye = value)),
    field(
        "face-a",
        "Eye center to bar face",
        Some(0),
        Holds::Length(|it| it.ends[0].eye_to_face, |it, v| it.ends[0].eye_to_face = v),
    ),
    field(
        "face-b",
        "Eye center to bar face",
        Some(1),
        Holds::Length(|it| it.ends[1].eye_to_face, |it, v| it.ends[1].eye_to_face = v),
    ),
    field("by", "Made and measured by", None, Holds::Words(|it| &it.by, |it| &mut it.by)),
    field("on", "On", None, Holds::Day(|it| &it.on, |it| &mut it.on)),
];

/// The longest length that is written down: no link is longer.
const LONGEST: f64 = 4.0;

/// The two answers of a gauge, as they are kept.
const PASSED: &str = "passed";
const REFUSED: &str = "refused";

impl PieceField {
    /// Takes a text; one that cannot stand there changes nothing and gives `false`. An empty one takes it back. Lengths
    /// are read and written by whoever knows units: see [`PieceField::set_length`].
    pub fn set_text(&self, piece: &mut Piece, text: &str) -> bool {
        match self.holds {
            Holds::Words(_, get_mut) => *get_mut(piece) = tidy_reference(text),
            Holds::Day(_, get_mut) if text.is_empty() || super::is_date(text) => *get_mut(piece) = text.to_string(),
            Holds::Gauge(_, set) if text.is_empty() => set(piece, None),
            Holds::Gauge(_, set) if [PASSED, REFUSED].contains(&text) => set(piece, Some(text == PASSED)),
            Holds::Length(_, set) if text.is_empty() => set(piece, None),
            Holds::Day(..) | Holds::Gauge(..) | Holds::Length(..) => return false,
        }
        true
    }

    /// Takes a length; one that no link has changes nothing and gives `false`.
    pub fn set_length(&self, piece: &mut Piece, length: f64) -> bool {
        match self.holds {
            Holds::Length(_, set) if length > 0.0 && length < LONGEST => {
                set(piece, Some(length));
                true
            }
            _ => false,
        }
    }

    /// The words, the day or the gauge's answer that stand there; empty for a length.
    pub fn text<'a>(&self, piece: &'a Piece) -> &'a str {
        match self.holds {
            Holds::Words(get, _) | Holds::Day(get, _) => get(piece),
            Holds::Gauge(get, _) => get(piece).map_or("", |passed| if passed { PASSED } else { REFUSED }),
            Holds::Length(..) => "",
        }
    }

    /// The length that stands there, m.
    pub fn length(&self, piece: &Piece) -> Option<f64> {
        if let Holds::Length(get, _) = self.holds { get(piece) } else { None }
    }

    /// Whether nothing stands there.
    pub fn is_empty(&self, piece: &Piece) -> bool {
        self.text(piece).is_empty() && self.length(piece).is_none()
    }
}

impl Link {
    /// A piece of it by its place, with those before it.
    pub fn piece_mut(&mut self, at: usize) -> &mut Piece {
        if self.made.len() <= at {
            self.made.resize_with(at + 1, Piece::default);
        }
        &mut self.made[at]
    }

    /// Takes the pieces at the end away of which nothing is written down.
    pub fn drop_empty_pieces(&mut self) {
        while self.made.last().is_some_and(|piece| *piece == Piece::default()) {
            self.made.pop();
        }
    }
}
