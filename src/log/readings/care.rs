//! What is read while a rig is measured, a link fitted and looked at again.

use super::{ReadingKind, ReadingRow, row};
use crate::quantity::{Kind, inch};

const fn number(kind: Kind, least: f64, most: f64) -> ReadingKind {
    ReadingKind::Number { kind, least, most }
}

const TAPE: ReadingKind = number(Kind::Length, inch(4.0), inch(120.0));
const BALL: ReadingKind = number(Kind::FineLength, inch(0.1), inch(4.0));
const SHANK: ReadingKind = number(Kind::FineLength, inch(0.25), inch(12.0));
const PLAIN: ReadingKind = number(Kind::FineLength, 0.0, inch(12.0));

/// The rows.
pub(super) static ROWS: [ReadingRow; 18] = [
    row("tape-1", "Reading 1", "Hole center to hole center.", TAPE),
    row("tape-2", "Reading 2", "Let the tape go and set it again.", TAPE),
    row("tape-3", "Reading 3", "Once more, from the other end.", TAPE),
    row("thread-major", "Over the threads", "Caliper over the crests.", BALL),
    row("thread-count", "Threads counted", "Along a ruler.", number(Kind::Ratio, 1.0, 100.0)),
    row("thread-over", "Counted over", "1 in (25.4 mm) or more.", number(Kind::FineLength, inch(0.2), inch(6.0))),
    row(
        "leaf-inch",
        "Gauge leaf that fits, threads per inch",
        "If you have a thread gauge.",
        number(Kind::Ratio, 4.0, 48.0),
    ),
    row(
        "leaf-metric",
        "Gauge leaf that fits, pitch in mm",
        "If you have a thread gauge.",
        number(Kind::Ratio, 0.5, 6.0),
    ),
    row(
        "slope",
        "The thread rises",
        "Shank upright in front of you.",
        ReadingKind::Pick(&[("right", "To the right"), ("left", "To the left")]),
    ),
    row("rod-eye", "Eye center to shank end", "Half the bore added to what you read from its edge.", SHANK),
    row("rod-thread", "Thread length of the shank", "First thread to last.", SHANK),
    row("rod-ball", "Width of the ball", "Face to face, by caliper.", BALL),
    row("rod-bore", "Bore of the ball", "The hole, by caliper.", BALL),
    row("bolt-plain", "Plain shank of the bolt", "Under the head to the first thread.", PLAIN),
    row("bolt-washers", "Washers, all together", "Their thickness under head and nut.", PLAIN),
    row(
        "wrench",
        "Torque wrench",
        "Hand to the middle of its square.",
        number(Kind::FineLength, inch(4.0), inch(60.0)),
    ),
    row(
        "adapter",
        "Crow-foot adapter",
        "Middle of the square to the middle of the nut.",
        number(Kind::FineLength, inch(0.5), inch(12.0)),
    ),
    row(
        "recheck-kind",
        "Which recheck",
        "What is looked at depends on it.",
        ReadingKind::Pick(&[
            ("first-drive", "After the first drive"),
            ("outing", "Each outing"),
            ("half-year", "Twice a year"),
        ]),
    ),
];
