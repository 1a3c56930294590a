//! What is read on a link that is fitted.

use super::{ReadingKind, ReadingRow, YES_NO};
use crate::quantity::{Kind, inch};

const FACE: ReadingKind = ReadingKind::Number { kind: Kind::FineLength, least: inch(0.25), most: inch(12.0) };
const THREADS: ReadingKind = ReadingKind::Number { kind: Kind::Ratio, least: 0.0, most: 60.0 };

const fn row(id: &'static str, label: &'static str, help: &'static str, holds: ReadingKind) -> ReadingRow {
    ReadingRow { id, label, help, holds }
}

/// The rows.
pub(super) static ROWS: [ReadingRow; 7] = [
    row("face-a", "Eye center to bar face, end A", "Ruler along the shank.", FACE),
    row("face-b", "Eye center to bar face, end B", "Ruler along the shank.", FACE),
    row("threads-a", "Threads showing at A", "Count past the jam nut; halves count.", THREADS),
    row("threads-b", "Threads showing at B", "Count past the jam nut; halves count.", THREADS),
    row("nut-a", "Jam nut at A tight?", "By wrench, not by eye.", YES_NO),
    row("nut-b", "Jam nut at B tight?", "By wrench, not by eye.", YES_NO),
    row(
        "eye-to-eye",
        "Eye to eye, as it is",
        "Ball center to ball center.",
        ReadingKind::Number { kind: Kind::Length, least: inch(4.0), most: inch(120.0) },
    ),
];
