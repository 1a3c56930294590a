//! What is read on a link that is fitted.

use super::{ReadingKind, ReadingRow, YES_NO, row};
use crate::quantity::{Kind, deg, inch};

const FACE: ReadingKind = ReadingKind::Number { kind: Kind::FineLength, least: inch(0.25), most: inch(12.0) };
const THREADS: ReadingKind = ReadingKind::Number { kind: Kind::Ratio, least: 0.0, most: 60.0 };

const SLOPE: ReadingKind = ReadingKind::Number { kind: Kind::Angle, least: deg(-40.0), most: deg(40.0) };

/// The rows of what is read of an axle: it holds for every bar there.
pub(super) const OF_AXLE: [&str; 3] = ["lower-slope", "upper-slope", "track-bar-frame-end"];

/// The rows.
pub(super) static ROWS: [ReadingRow; 11] = [
    row(
        "face-a",
        "Eye center to bar face, end A",
        "Ruler along the shank, from the ball’s center to the face of the bar, not to the nut.",
        FACE,
    ),
    row(
        "face-b",
        "Eye center to bar face, end B",
        "Ruler along the shank, from the ball’s center to the face of the bar, not to the nut.",
        FACE,
    ),
    row(
        "threads-a",
        "Threads showing at A",
        "Threads in sight outside the jam nut, on the eye’s side. Halves count.",
        THREADS,
    ),
    row(
        "threads-b",
        "Threads showing at B",
        "Threads in sight outside the jam nut, on the eye’s side. Halves count.",
        THREADS,
    ),
    row("nut-a", "Jam nut at A tight?", "By wrench, not by eye: it does not move under a firm pull.", YES_NO),
    row("nut-b", "Jam nut at B tight?", "By wrench, not by eye: it does not move under a firm pull.", YES_NO),
    row(
        "eye-to-eye",
        "Eye to eye, as it is",
        "Ball center to ball center. Shows whether the bar is the one of this build.",
        ReadingKind::Number { kind: Kind::Length, least: inch(4.0), most: inch(120.0) },
    ),
    row(
        "turned-by",
        "Longer by",
        "What a turn changed the length by; minus where it became shorter. The log writes it.",
        ReadingKind::Number { kind: Kind::FineLength, least: inch(-6.0), most: inch(6.0) },
    ),
    row(
        "lower-slope",
        "Slope of the lowers, from the side",
        "A phone on the link. Minus where the frame’s end is lower.",
        SLOPE,
    ),
    row(
        "upper-slope",
        "Slope of the uppers, from the side",
        "A phone on the link. Minus where the frame’s end is lower.",
        SLOPE,
    ),
    row(
        "track-bar-frame-end",
        "Track bar bolted to the frame on the",
        "As somebody in the driver’s seat sees it.",
        ReadingKind::Pick(&[("left", "Left"), ("right", "Right")]),
    ),
];
