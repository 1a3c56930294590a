//! What is looked at and measured on a link after a hit.

use super::{ReadingKind, ReadingRow, YES_NO, row};
use crate::quantity::{Kind, inch};

const GAP: ReadingKind = ReadingKind::Number { kind: Kind::FineLength, least: 0.0, most: inch(6.0) };
const DENT: ReadingKind = ReadingKind::Number { kind: Kind::FineLength, least: 0.0, most: inch(2.0) };
const STRING: ReadingKind = ReadingKind::Number { kind: Kind::Length, least: inch(4.0), most: inch(120.0) };
const GOUGE: ReadingKind =
    ReadingKind::Pick(&[("none", "None"), ("blunt", "Blunt scratch"), ("sharp", "Sharp, catches a nail")]);

/// The rows, in the order of the looks.
pub(super) static ROWS: [ReadingRow; 14] = [
    row(
        "hit-bow",
        "Gap between string and bar",
        "The deepest gap, on the hollow side. 0 where it touches all along.",
        GAP,
    ),
    row("hit-string", "Length of the string", "Only if it did not run from face to face of the bar.", STRING),
    row("hit-bend", "Bend seen?", "Roll it on a flat floor, or turn it and sight along it.", YES_NO),
    row("hit-kink", "Kink, wrinkle or flat?", "Run a hand along the bar.", YES_NO),
    row(
        "hit-crack",
        "Crack?",
        "Wipe it clean. Look at welds, threads, flats and every gouge, with a light held low.",
        YES_NO,
    ),
    row("hit-gouge", "Gouge?", "Draw a fingernail across it.", GOUGE),
    row("hit-dent", "Dent?", "In the bar, from a rock or a chain.", YES_NO),
    row("hit-dent-depth", "Depth of the dent", "A straightedge along the bar, a ruler into the dent.", DENT),
    row("hit-shank", "Shank bent?", "Sight from the side: eye, shank and bar on one line.", YES_NO),
    row("hit-head", "Head or ball damaged?", "Stretched, dented or cracked head; ball loose or coming out.", YES_NO),
    row("hit-eye", "Eye turned in its bracket?", "It sat square before, and the paint lines were whole.", YES_NO),
    row(
        "hit-nut",
        "Jam nut loose, or paint line broken?",
        "Wrench on each jam nut; look along each paint line.",
        YES_NO,
    ),
    row(
        "hit-mount",
        "Bolt, bracket or weld damaged?",
        "Bent bolt, oval hole, bent ear, torn or cracked weld, at both ends.",
        YES_NO,
    ),
    row("hit-play", "Play, any knock?", "A hand on the joint while a helper rocks wheel or rig.", YES_NO),
];
