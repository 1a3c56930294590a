//! Twist drills, the drills commonly listed for tapping, taps, and cutting speeds.

use super::threads::Thread;
use crate::quantity::{System, exceeds, inch, mm};
use crate::source::{
    ASME_B94_11M, BS_328, Cite, GEOMETRY, ISO_2306, MH31, NAVEDTRA_14345, OURS, Obtained, TM_9_254, TO_1_1A_9, cite,
};

/// A size of twist drill.
#[derive(Debug, PartialEq)]
pub struct Drill {
    /// Never reused once released, such as `11/16`, `Q` or `10.25mm`.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// The set it belongs to.
    pub system: System,
    /// Diameter, m.
    pub diameter: f64,
    /// Where the size comes from.
    pub cite: Cite,
}

/// Drills by fractions of an inch, whole inches first where there are any.
macro_rules! fractions {
    ($($whole:tt: $($over:tt / $under:tt),+;)+) => {
        &[$($(Drill {
            id: fraction!($whole, $over, $under),
            label: concat!(fraction!($whole, $over, $under), " in"),
            system: System::Inch,
            diameter: inch($whole as f64 + $over as f64 / $under as f64),
            cite: cite(&GEOMETRY, "64ths of an inch", Obtained::Computed),
        },)+)+]
    };
}
macro_rules! fraction {
    (0, $over:tt, $under:tt) => {
        concat!($over, "/", $under)
    };
    ($whole:tt, 0, $under:tt) => {
        concat!($whole)
    };
    ($whole:tt, $over:tt, $under:tt) => {
        concat!($whole, "-", $over, "/", $under)
    };
}

/// Fractional drills by 64ths, smallest first.
pub static FRACTIONS: &[Drill] = fractions! {
    0: 1/4, 17/64, 9/32, 19/64, 5/16, 21/64, 11/32, 23/64, 3/8, 25/64, 13/32, 27/64, 7/16, 29/64, 15/32, 31/64, 1/2, 33/64, 17/32, 35/64, 9/16, 37/64,
       19/32, 39/64, 5/8, 41/64, 21/32, 43/64, 11/16, 45/64, 23/32, 47/64, 3/4, 49/64, 25/32, 51/64, 13/16, 53/64, 27/32, 55/64, 7/8, 57/64, 29/32,
       59/64, 15/16, 61/64, 31/32, 63/64;
    1: 0/1, 1/64, 1/32, 3/64, 1/16, 5/64, 3/32, 7/64, 1/8, 9/64, 5/32, 11/64, 3/16, 13/64, 7/32, 15/64, 1/4, 17/64, 9/32, 19/64, 5/16, 21/64, 11/32,
       23/64, 3/8, 25/64, 13/32, 27/64, 7/16, 29/64, 15/32, 31/64, 1/2;
};

macro_rules! letters {
    ($($letter:literal $diameter:literal),+ $(,)?) => {
        &[$(Drill {
            id: $letter,
            label: concat!("letter ", $letter),
            system: System::Inch,
            diameter: inch($diameter),
            cite: cite(&ASME_B94_11M, "letter sizes", Obtained::Memory),
        }),+]
    };
}

/// Letter drills, smallest first. Number drills end below them, too small for any thread here.
pub static LETTERS: &[Drill] = letters![
    "F" 0.257, "G" 0.261, "H" 0.266, "I" 0.272, "J" 0.277, "K" 0.281, "L" 0.290, "M" 0.295, "N" 0.302, "O" 0.316, "P" 0.323,
    "Q" 0.332, "R" 0.339, "S" 0.348, "T" 0.358, "U" 0.368, "V" 0.377, "W" 0.386, "X" 0.397, "Y" 0.404, "Z" 0.413,
];

macro_rules! millimeters {
    ($($diameter:literal),+ $(,)?) => {
        &[$(Drill {
            id: concat!($diameter, "mm"),
            label: concat!($diameter, " mm"),
            system: System::Metric,
            diameter: mm($diameter as f64),
            cite: cite(&BS_328, "by 0.1 mm to 13.9, by 0.25 mm from 14; 10.25 and from 25 up common practice", Obtained::Copied),
        }),+]
    };
}

/// Metric drills, smallest first.
pub static METRIC: &[Drill] = millimeters![
    7, 7.1, 7.2, 7.3, 7.4, 7.5, 7.6, 7.7, 7.8, 7.9, 8, 8.1, 8.2, 8.3, 8.4, 8.5, 8.6, 8.7, 8.8, 8.9, 9, 9.1, 9.2, 9.3,
    9.4, 9.5, 9.6, 9.7, 9.8, 9.9, 10, 10.1, 10.2, 10.25, 10.3, 10.4, 10.5, 10.6, 10.7, 10.8, 10.9, 11, 11.1, 11.2,
    11.3, 11.4, 11.5, 11.6, 11.7, 11.8, 11.9, 12, 12.1, 12.2, 12.3, 12.4, 12.5, 12.6, 12.7, 12.8, 12.9, 13, 13.1, 13.2,
    13.3, 13.4, 13.5, 13.6, 13.7, 13.8, 13.9, 14, 14.25, 14.5, 14.75, 15, 15.25, 15.5, 15.75, 16, 16.25, 16.5, 16.75,
    17, 17.25, 17.5, 17.75, 18, 18.25, 18.5, 18.75, 19, 19.25, 19.5, 19.75, 20, 20.25, 20.5, 20.75, 21, 21.25, 21.5,
    21.75, 22, 22.25, 22.5, 22.75, 23, 23.25, 23.5, 23.75, 24, 24.25, 24.5, 24.75, 25, 25.5, 26, 26.5, 27, 27.5, 28,
    28.5, 29, 29.5, 30, 30.5, 31, 31.5, 32, 33, 34, 35, 36, 37, 38,
];

/// Every drill of every set.
pub fn all() -> impl Iterator<Item = &'static Drill> {
    FRACTIONS.iter().chain(LETTERS).chain(METRIC)
}

/// The drill with an id.
pub fn find(id: &str) -> Option<&'static Drill> {
    all().find(|drill| drill.id == id)
}

/// The drill of a system nearest to a diameter, m; the larger of two equally near.
pub fn nearest(diameter: f64, system: System) -> Option<&'static Drill> {
    let off = |drill: &Drill| (drill.diameter - diameter).abs();
    let nearer = |best: &'static Drill, drill: &'static Drill| {
        let step = off(drill) - off(best);
        if step < -1e-9 || (step < 1e-9 && drill.diameter > best.diameter) { drill } else { best }
    };
    all().filter(|drill| drill.system == system).reduce(nearer)
}

/// The drill commonly listed for tapping a thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TapDrill {
    /// The drill.
    pub drill: &'static Drill,
    /// Who lists it.
    pub cite: Cite,
}

/// The drill commonly listed for tapping a thread.
pub fn tap_drill(thread: &Thread) -> Option<TapDrill> {
    let listed = match thread.system {
        System::Inch if ["9/16-18", "1-1/8-12"].contains(&thread.id) => cite(&MH31, "Table 4", Obtained::Memory),
        System::Inch => cite(&MH31, "p. 2168, Table 4", Obtained::Copied),
        System::Metric => cite(&ISO_2306, "diameter less pitch", Obtained::Memory),
    };
    find(thread.tap_drill).map(|drill| TapDrill { drill, cite: listed })
}

/// What is cut with high-speed steel, and how fast.
#[derive(Debug, PartialEq)]
pub struct CuttingSpeed {
    /// Kebab-case.
    pub id: &'static str,
    /// The metal, as it is shown.
    pub metal: &'static str,
    /// Least and most, feet a minute.
    pub feet_per_minute: [f64; 2],
    /// Where it comes from.
    pub cite: Cite,
}

const fn speed(id: &'static str, metal: &'static str, feet_per_minute: [f64; 2], cite: Cite) -> CuttingSpeed {
    CuttingSpeed { id, metal, feet_per_minute, cite }
}

const DRILLING: Cite = cite(&NAVEDTRA_14345, "twist drills of high-speed steel", Obtained::Read);
const HARDENED: Cite =
    cite(&OURS, "hardened alloy steel; charts of several makers print the same", Obtained::Assumption);
const TAPPING_ALUMINUM: Cite = cite(&TO_1_1A_9, "par. 3-197a, the lower speeds for hard alloys", Obtained::Read);
const TAPPING: Cite = cite(&OURS, "tapping with high-speed steel", Obtained::Assumption);

/// Drilling speeds.
pub static DRILLING_SPEEDS: &[CuttingSpeed] = &[
    speed("aluminum", "Aluminum", [200.0, 300.0], DRILLING),
    speed("low-carbon-steel", "Low-carbon steel", [80.0, 110.0], DRILLING),
    speed("alloy-steel", "Alloy steel", [50.0, 70.0], DRILLING),
    speed("stainless-steel", "Stainless steel", [30.0, 40.0], DRILLING),
    speed("hardened-alloy-steel", "Alloy steel hardened to 300 to 400 Brinell", [20.0, 30.0], HARDENED),
];

/// Tapping speeds.
pub static TAPPING_SPEEDS: &[CuttingSpeed] = &[
    speed("aluminum", "Aluminum", [40.0, 130.0], TAPPING_ALUMINUM),
    speed("low-carbon-steel", "Low-carbon steel", [30.0, 60.0], TAPPING),
    speed("alloy-steel", "Alloy steel", [15.0, 35.0], TAPPING),
    speed("hardened-alloy-steel", "Alloy steel hardened to 300 to 400 Brinell", [10.0, 25.0], TAPPING),
];

/// A center drill of the plain type, 60°.
#[derive(Debug, PartialEq)]
pub struct CenterDrill {
    /// Its number.
    pub number: f64,
    /// Diameter of its body, m.
    pub body: f64,
    /// Where the size comes from.
    pub cite: Cite,
}

macro_rules! center_drills {
    ($($number:literal $over:literal / $under:literal),+ $(,)?) => {
        &[$(CenterDrill {
            number: $number as f64,
            body: inch($over as f64 / $under as f64),
            cite: cite(&ASME_B94_11M, "combined drills and countersinks, plain type", Obtained::Memory),
        }),+]
    };
}

/// Center drills, smallest first.
pub static CENTER_DRILLS: &[CenterDrill] = center_drills![1 1/8, 2 3/16, 3 1/4, 4 5/16, 5 7/16, 6 1/2, 7 5/8, 8 3/4];

/// The widest center drill that is no wider than a hole, m.
pub fn center_drill(hole: f64) -> Option<&'static CenterDrill> {
    CENTER_DRILLS.iter().rev().find(|drill| !exceeds(drill.body, hole))
}

/// The feed of a drill of a diameter, m.
pub fn feed(diameter: f64) -> Option<&'static Feed> {
    FEEDS.iter().find(|row| exceeds(diameter, row.over) && !exceeds(diameter, row.up_to))
}

/// How far a drill goes in one turn, by its diameter.
#[derive(Debug, PartialEq)]
pub struct Feed {
    /// The range begins above this diameter, m.
    pub over: f64,
    /// The range ends with this diameter, m.
    pub up_to: f64,
    /// Least and most for one turn, m.
    pub per_turn: [f64; 2],
    /// Where it comes from.
    pub cite: Cite,
}

/// Drilling feeds, smallest drills first.
pub static FEEDS: &[Feed] = &[
    Feed { over: inch(0.25), up_to: inch(0.5), per_turn: [inch(0.004), inch(0.007)], cite: DRILLING },
    Feed { over: inch(0.5), up_to: inch(1.0), per_turn: [inch(0.007), inch(0.015)], cite: DRILLING },
    Feed { over: inch(1.0), up_to: f64::INFINITY, per_turn: [inch(0.015), inch(0.025)], cite: DRILLING },
];

/// A kind of tap, by how much thread its chamfer leaves unfinished.
#[derive(Debug, PartialEq)]
pub struct Tap {
    /// Kebab-case.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// Least and most threads of chamfer.
    pub chamfer: [f64; 2],
    /// Where it comes from.
    pub cite: Cite,
}

const CHAMFER: Cite = cite(&TM_9_254, "par. 4-27d", Obtained::Read);

/// Taps, longest chamfer first.
pub static TAPS: &[Tap] = &[
    Tap { id: "taper", label: "Taper tap", chamfer: [7.0, 10.0], cite: CHAMFER },
    Tap { id: "plug", label: "Plug tap", chamfer: [3.0, 5.0], cite: CHAMFER },
    Tap { id: "bottoming", label: "Bottoming tap", chamfer: [1.0, 2.0], cite: CHAMFER },
];
