//! The as-built record: what was measured on each piece, beside what was asked for.

use crate::document::{Document, Holds, PIECE_FIELDS, Piece, PieceField};
use crate::engine::shop::as_built::{self, Expected, Judged, Reading, Stop};
use crate::engine::shop::route::machine::Machine;
use crate::present::words::{Units, fit, in_units, letter, titled};
use crate::quantity::{self, Kind, System};
use crate::report::Answer;

/// The title of the section.
pub const TITLE: &str = "As built";

/// What the record is for.
pub const HELP: &str = "Kept with the build on this device and printed on its certificate of work. No link carries it, and no size changes with it.";

/// What a gauge may say, as it is kept and as it is picked.
pub const GAUGES: [(&str, &str); 3] =
    [("", "Not gauged yet"), ("passed", "Go goes in, no-go does not"), ("refused", "Refused")];

/// Said where a piece must not leave the shop.
pub const HELD_BACK: &str = "Keep this piece in the shop: something measured on it is not as asked for.";

/// On the certificate.
pub const CERTIFIES: &str = "What was measured on each piece, by whoever signs here. It says nothing of the strength of a link: see the proof, the makers’ ratings and a licensed engineer for that.";

/// A line of the record.
#[derive(Clone)]
pub struct RecordRow {
    /// The field.
    pub field: &'static PieceField,
    /// As it is called, with its end.
    pub label: String,
    /// What was asked for; empty where nothing was.
    pub asked: String,
    /// What stands there, as it is shown.
    pub value: String,
    /// How it stands: whether it passes, and in words.
    pub judged: Option<(bool, String)>,
}

/// The lines of one piece.
pub fn rows(piece: &Piece, answer: &Answer, machine: &Machine, units: impl Into<Units>) -> Vec<RecordRow> {
    let units = units.into();
    let row = |field: &'static PieceField| {
        let judged = as_built::judge(field, piece, answer, machine);
        RecordRow {
            field,
            label: label(field),
            asked: expected(as_built::expected(field, &answer.link, machine), units),
            value: shown(field, piece, units),
            judged: judged.map(|judged| (judged.passes(), in_words(judged, units))),
        }
    };
    PIECE_FIELDS.iter().map(row).collect()
}

/// What a field is called, with its end.
pub fn label(field: &PieceField) -> String {
    field.end.map_or_else(|| field.label.to_string(), |end| format!("{} at {}", field.label, letter(end)))
}

/// What stands in a field, as it is shown.
fn shown(field: &PieceField, piece: &Piece, units: Units) -> String {
    match field.holds {
        Holds::Length(..) => field.length(piece).map(|length| fit(length, units)).unwrap_or_default(),
        Holds::Gauge(..) => {
            let said = field.text(piece);
            let words = GAUGES.iter().find(|(id, _)| *id == said && !said.is_empty());
            words.map(|(_, words)| (*words).to_string()).unwrap_or_default()
        }
        Holds::Words(..) | Holds::Day(..) => field.text(piece).to_string(),
    }
}

/// What a field for a length holds while nobody types, as one would type it.
pub fn typed(field: &PieceField, piece: &Piece, system: System) -> String {
    match field.length(piece) {
        Some(length) => quantity::plain(length, Kind::FineLength, system),
        None => field.text(piece).to_string(),
    }
}

/// Takes over what was typed into a field.
///
/// # Errors
/// A sentence that says what would work; the piece then stays as it is.
pub fn take(field: &PieceField, piece: &mut Piece, text: &str, system: System) -> Result<(), String> {
    let text = text.trim();
    if text.is_empty() || !matches!(field.holds, Holds::Length(..)) {
        let day = || "Type a day of the calendar, as 2026-12-24.".to_string();
        return if field.set_text(piece, text) { Ok(()) } else { Err(day()) };
    }
    let length = quantity::read(text, Kind::FineLength, system).map_err(|misread| misread.sentence())?;
    if field.set_length(piece, length) {
        Ok(())
    } else {
        Err(format!("I read {}. No link has such a length.", quantity::show(length, Kind::FineLength, system)))
    }
}

fn expected(expected: Expected, units: Units) -> String {
    match expected {
        Expected::Measured(length) => super::route::asked(length, units),
        Expected::AsSet(length) => format!("{} as set", in_units(length, Kind::FineLength, units)),
        Expected::Gauges => "go in, no-go not".to_string(),
        Expected::Nothing => String::new(),
    }
}

fn in_words(judged: Judged, units: Units) -> String {
    match judged {
        Judged::Within => "Within its tolerance.".to_string(),
        Judged::Off(off) if off > 0.0 => format!("Out of tolerance: {} too much.", fit(off, units)),
        Judged::Off(off) => format!("Out of tolerance: {} too little.", fit(-off, units)),
        Judged::Engaged(full, least) => {
            let (full_in, least_in) = (fit(full, units), fit(least, units));
            if judged.passes() {
                format!("{full_in} of full thread in the bar, at least {least_in} required.")
            } else {
                format!("Only {full_in} of full thread in the bar, at least {least_in} required.")
            }
        }
        Judged::TooDeep { inserted, room, by } => {
            let (inserted, room) = (fit(inserted, units), fit(room, units));
            let why = match by {
                Stop::Hole => "before the shank meets the bottom of its thread",
                Stop::JamNut => "with the jam nut on its thread",
            };
            format!("Cannot be: {inserted} of shank in the bar, and at most {room} goes in {why}. Measure again.")
        }
        Judged::Agrees(sum) => format!("Agrees with bar and both faces, {}.", fit(sum, units)),
        Judged::Disagrees { sum, wrong } => {
            let sum = fit(sum, units);
            match wrong {
                Some(reading) => format!(
                    "Bar and both faces add up to {sum}, not to this. Measure {} again first: with the length asked for there, all four agree.",
                    named(reading)
                ),
                None => format!(
                    "Bar and both faces add up to {sum}, not to this. One of the four is wrong: measure all of them again."
                ),
            }
        }
        Judged::InRange([least, most]) => {
            format!("Between {} and {}, as far as this link can be set.", fit(least, units), fit(most, units))
        }
        Judged::OutOfRange([least, most]) => format!(
            "Cannot be, or an end is wound too far: this link can be set from {} to {}. Measure again.",
            fit(least, units),
            fit(most, units)
        ),
        Judged::Gauges(true) => "Passed.".to_string(),
        Judged::Gauges(false) => "Refused by its gauges: it does not leave the shop.".to_string(),
    }
}

/// A reading, within a sentence.
const fn named(reading: Reading) -> &'static str {
    match reading {
        Reading::Bar => "the bar, face to face,",
        Reading::Face(0) => "eye center to bar face at A",
        Reading::Face(_) => "eye center to bar face at B",
        Reading::Eyes => "eye to eye",
    }
}

/// What a piece is called on its certificate.
pub fn piece_title(document: &Document, link: usize, number: usize) -> String {
    format!("{}: piece {}", titled(document, link), number + 1)
}
