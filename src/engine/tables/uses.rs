//! How rigs are used, and the strike and shock that each use stands for.
//!
//! Calibrated, not measured: strike share, the two drops and the deflection of the rest of the rig are tuned together, with
//! a factor of 1.25 on yield and half the traction acting with the strike, until the bar sizes come out that builders
//! settle on. Other sets of the four give the same force and the same sizes; only that force is fixed by them.

use crate::document::Use;
use crate::quantity::inch;
use crate::source::{Cite, OURS, Obtained, cite};

/// One use and what it does to a link.
#[derive(Debug, PartialEq)]
pub struct Scenario {
    /// Which use.
    pub usage: Use,
    /// Id in links and files.
    pub id: &'static str,
    /// As the form says it.
    pub label: &'static str,
    /// One plain sentence.
    pub words: &'static str,
    /// How far the weight falls before it lands on the bar.
    pub drop: f64,
    /// What multiplies the traction force.
    pub shock: f64,
}

/// Share of the rig's weight that lands on one lower link, in every use.
pub const STRIKE_SHARE: f64 = 0.46;

/// Where these numbers come from.
pub const CITE: Cite = cite(&OURS, "calibrated against what builders use", Obtained::Assumption);

/// The four uses, mildest first.
pub static ALL: [Scenario; 4] = [
    Scenario {
        usage: Use::Easy,
        id: "easy",
        label: "Easy trails",
        words: "Dirt roads and mild trails, driven with care.",
        drop: 0.0,
        shock: 1.0,
    },
    Scenario {
        usage: Use::Slow,
        id: "slow",
        label: "Slow crawling",
        words: "Rocks at walking pace, set down on them gently.",
        drop: 0.0,
        shock: 1.25,
    },
    Scenario {
        usage: Use::Hard,
        id: "hard",
        label: "Driven hard",
        words: "Momentum up ledges, the odd drop onto a rock.",
        drop: inch(0.50),
        shock: 1.5,
    },
    Scenario {
        usage: Use::Punished,
        id: "punished",
        label: "Raced or jumped",
        words: "Landed hard, bounced or jumped, again and again.",
        drop: inch(1.30),
        shock: 2.0,
    },
];

/// The row of a use.
pub fn scenario(usage: Use) -> &'static Scenario {
    match usage {
        Use::Easy => &ALL[0],
        Use::Slow => &ALL[1],
        Use::Hard => &ALL[2],
        Use::Punished => &ALL[3],
    }
}

/// The row with an id.
pub fn find(id: &str) -> Option<&'static Scenario> {
    ALL.iter().find(|row| row.id == id)
}
