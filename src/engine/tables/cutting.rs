//! How each metal is cut: which rows of speed hold for it, its cutting fluids, turning, sawing, and the chamfers
//! of taps by letter.

use super::drills::{CuttingSpeed, DRILLING_SPEEDS, TAPPING_SPEEDS};
use crate::quantity::inch;
use crate::source::{Cite, DIN_2197, FERROUS_DATA, MH31, OURS, Obtained, PRACTICE, SHOP_COURSE, TO_1_1A_9, cite};

/// A class of metals that are cut alike.
#[derive(Debug, PartialEq)]
pub struct Class {
    /// Kebab-case; the id of its rows of drilling and tapping speeds too.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// What it is drilled with.
    pub drilling_fluid: Fluid,
    /// What it is tapped with.
    pub tapping_fluid: Fluid,
    /// How fast it is turned and faced with high-speed steel.
    pub turning: Turning,
    /// How fast the blade of a band saw runs in it.
    pub sawing: Sawing,
    /// The tap that brings chips out of a blind hole.
    pub blind_tap: Advice,
    /// The letter of that tap's chamfer.
    pub blind_chamfer: &'static str,
}

/// Turning speeds with high-speed steel, feet a minute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turning {
    /// What a small lathe begins with.
    pub begin: f64,
    /// The most that is published for a light cut.
    pub most: f64,
    /// Where the most comes from.
    pub cite: Cite,
}

/// Blade speeds of a band saw with a bimetal blade and fluid, feet a minute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sawing {
    /// Least and most.
    pub feet_per_minute: [f64; 2],
    /// Where they come from.
    pub cite: Cite,
}

/// A cutting fluid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fluid {
    /// As it is shown, inside a sentence.
    pub name: &'static str,
    /// Where it comes from.
    pub cite: Cite,
}

/// A short advice with its source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Advice {
    /// As it is shown, inside a sentence.
    pub words: &'static str,
    /// Where it comes from.
    pub cite: Cite,
}

/// Feed of a finishing cut for one turn, m.
pub const FINISH_FEED: f64 = inch(0.008);
/// The speeds to begin turning with and the feed are our own.
pub const TURNING_CITE: Cite = cite(&OURS, "turning with high-speed steel, finishing cut", Obtained::Assumption);

/// Without fluid the blade of a saw runs slower by these shares.
pub const SAWING_DRY: [f64; 2] = [0.3, 0.5];
/// What a countersink runs at, as a share of the speed of a drill as wide.
pub const COUNTERSINK_SHARE: f64 = 0.25;
/// Where that share comes from. A drill maker's guide prints the drill's own speed instead, at the middle of the cone.
pub const COUNTERSINK_CITE: Cite =
    cite(&SHOP_COURSE, "countersinking: a quarter of the speed and the feed of a drill as wide", Obtained::Copied);
/// A center drill is turned as a drill as wide as its body; one published rule, 1,200 to 1,500 rpm, names no metal.
pub const CENTER_DRILL_CITE: Cite = cite(&PRACTICE, "center drill turned as a drill of its body", Obtained::Practice);

const MILD: Cite = cite(&FERROUS_DATA, "table 9-2, 1020 and 1025, cut of 0.040 in", Obtained::Copied);
const ALLOY: Cite =
    cite(&FERROUS_DATA, "table 9-6, 4130 and 4340 up to 225 Brinell, cut of 0.040 in", Obtained::Copied);
const HARD: Cite = cite(
    &FERROUS_DATA,
    "table 9-6, 4340 of 275 to 325 Brinell, cut of 0.040 in with cobalt or T15 steel",
    Obtained::Copied,
);
const BLADE: &str = "p. 1245, bimetal band saw blades, 4 in with coolant";
const BLADE_ALUMINUM: Cite = cite(&MH31, "p. 1244, bimetal band saw blades, 4 in with coolant", Obtained::Memory);
const BLADE_STEEL: Cite = cite(&MH31, BLADE, Obtained::Copied);
const BLADE_HARD: Cite =
    cite(&OURS, "annealed 4340 of the handbook, a quarter to a half slower for its hardness", Obtained::Assumption);

/// Blade speeds.
const fn blade(least: f64, most: f64, cite: Cite) -> Sawing {
    Sawing { feet_per_minute: [least, most], cite }
}

const FLUIDS: Cite = cite(&MH31, "p. 1250, cutting fluids for machining operations", Obtained::Copied);
const SPIRAL: Advice = Advice {
    words: "spiral-flute tap",
    cite: cite(&TO_1_1A_9, "par. 3-195 and 3-197b, blind holes in aluminum", Obtained::Read),
};
const SPIRAL_IN_STEEL: Advice = Advice {
    words: "spiral-flute tap, or a straight-flute tap backed out to clear chips",
    cite: cite(&OURS, "tap for a blind hole in steel", Obtained::Assumption),
};

/// Aluminum.
pub static ALUMINUM: Class = Class {
    id: "aluminum",
    label: "Aluminum",
    drilling_fluid: Fluid { name: "soluble oil, 75 to 90 % water", cite: FLUIDS },
    tapping_fluid: Fluid { name: "lard oil, or sulfur-base oil mixed with mineral oil", cite: FLUIDS },
    turning: Turning { begin: 300.0, most: 300.0, cite: TURNING_CITE },
    sawing: blade(500.0, 500.0, BLADE_ALUMINUM),
    blind_tap: SPIRAL,
    blind_chamfer: "C",
};

/// Low-carbon steel.
pub static LOW_CARBON_STEEL: Class = Class {
    id: "low-carbon-steel",
    label: "Low-carbon steel",
    drilling_fluid: Fluid { name: "soluble oil", cite: FLUIDS },
    tapping_fluid: Fluid { name: "25 to 40 % lard oil with mineral oil", cite: FLUIDS },
    turning: Turning { begin: 100.0, most: 150.0, cite: MILD },
    // 4130 and 1026.
    sawing: blade(270.0, 300.0, BLADE_STEEL),
    blind_tap: SPIRAL_IN_STEEL,
    blind_chamfer: "D",
};

/// Alloy steel.
pub static ALLOY_STEEL: Class = Class {
    id: "alloy-steel",
    label: "Alloy steel",
    drilling_fluid: Fluid { name: "soluble oil", cite: FLUIDS },
    tapping_fluid: Fluid { name: "30 % lard oil with 70 % mineral oil", cite: FLUIDS },
    turning: Turning { begin: 80.0, most: 135.0, cite: ALLOY },
    // 4340 and 4140.
    sawing: blade(220.0, 250.0, BLADE_STEEL),
    blind_tap: SPIRAL_IN_STEEL,
    blind_chamfer: "D",
};

/// Alloy steel, hardened.
pub static HARDENED_ALLOY_STEEL: Class = Class {
    id: "hardened-alloy-steel",
    label: "Alloy steel hardened to 300 to 400 Brinell",
    drilling_fluid: Fluid { name: "soluble oil", cite: FLUIDS },
    tapping_fluid: Fluid { name: "30 % lard oil with 70 % mineral oil", cite: FLUIDS },
    turning: Turning { begin: 50.0, most: 90.0, cite: HARD },
    sawing: blade(110.0, 165.0, BLADE_HARD),
    blind_tap: SPIRAL_IN_STEEL,
    blind_chamfer: "D",
};

/// Every class.
pub static CLASSES: &[&Class] = &[&ALUMINUM, &LOW_CARBON_STEEL, &ALLOY_STEEL, &HARDENED_ALLOY_STEEL];

/// The letter of the chamfer for a through hole.
const THROUGH_CHAMFER: &str = "B";

impl Class {
    /// The chamfer of the tap for it: right through, or into a blind hole.
    pub fn chamfer(&self, through: bool) -> Option<&'static ChamferForm> {
        let letter = if through { THROUGH_CHAMFER } else { self.blind_chamfer };
        CHAMFER_FORMS.iter().find(|form| form.letter == letter)
    }

    /// How fast it is drilled.
    pub fn drilling(&self) -> Option<&'static CuttingSpeed> {
        DRILLING_SPEEDS.iter().find(|row| row.id == self.id)
    }

    /// How fast it is tapped.
    pub fn tapping(&self) -> Option<&'static CuttingSpeed> {
        TAPPING_SPEEDS.iter().find(|row| row.id == self.id)
    }
}

/// A chamfer of a tap by its letter.
#[derive(Debug, PartialEq)]
pub struct ChamferForm {
    /// Its letter.
    pub letter: &'static str,
    /// Least and most threads of chamfer.
    pub threads: [f64; 2],
    /// What it is for.
    pub purpose: &'static str,
    /// Where it comes from.
    pub cite: Cite,
}

const FORM: Cite = cite(&DIN_2197, "forms A to F", Obtained::Copied);

/// Chamfers by letter.
pub static CHAMFER_FORMS: &[ChamferForm] = &[
    ChamferForm { letter: "A", threads: [6.0, 8.0], purpose: "short through holes", cite: FORM },
    ChamferForm { letter: "B", threads: [3.5, 5.5], purpose: "spiral point, through holes", cite: FORM },
    ChamferForm { letter: "C", threads: [2.0, 3.0], purpose: "blind holes, aluminum", cite: FORM },
    ChamferForm { letter: "D", threads: [3.5, 5.0], purpose: "blind holes with room for the chamfer", cite: FORM },
    ChamferForm { letter: "E", threads: [1.5, 2.0], purpose: "blind holes with little room", cite: FORM },
    ChamferForm { letter: "F", threads: [1.0, 1.5], purpose: "blind holes with hardly any room", cite: FORM },
];
