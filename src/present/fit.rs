//! The Fit view: the six places it opens on, and what was read on the rig.

pub mod broken;
pub mod calendar;
pub mod card;
pub mod fit_it;
pub mod guide;
pub mod hit;
pub mod log;
pub mod own_rod_end;
pub mod reading;
pub mod recheck;
pub mod safe;
pub mod spares;
pub mod standing;
pub mod turn;

use crate::present::words::hand_mark;
use crate::report::LinkGeometry;

/// One of the places of the view.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// The check as fitted.
    Safe,
    /// Longer or shorter.
    Turn,
    /// Fitting, step by step.
    FitIt,
    /// Looking again.
    Recheck,
    /// After a hit.
    Hit,
    /// What to carry.
    Spares,
}

impl Place {
    /// Every place, in the order of need.
    pub const ALL: [Self; 6] = [Self::Safe, Self::Turn, Self::FitIt, Self::Recheck, Self::Hit, Self::Spares];

    /// Never reused once released.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Safe => "safe",
            Self::Turn => "turn",
            Self::FitIt => "fit-it",
            Self::Recheck => "recheck",
            Self::Hit => "hit",
            Self::Spares => "spares",
        }
    }

    /// What stands on its button and above it.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Safe => "Is it still safe?",
            Self::Turn => "Turn it",
            Self::FitIt => "Fit it",
            Self::Recheck => "Recheck",
            Self::Hit => "After a hit",
            Self::Spares => "Spares",
        }
    }

    /// What it is for, under its title on the button.
    pub const fn help(self) -> &'static str {
        match self {
            Self::Safe => "A ruler or a count of threads at each end.",
            Self::Turn => "Longer, shorter, pinion, caster, toe: which way and how far.",
            Self::FitIt => "Step by step, with torque.",
            Self::Recheck => "What to look at, and when.",
            Self::Hit => "Drive on, limp home, or stop. What broke?",
            Self::Spares => "What to carry. Will a borrowed part fit?",
        }
    }
}

/// Which end is A.
pub fn which_ends(link: &LinkGeometry) -> String {
    let [a, b] = [link.ends[0].hand.words(), link.ends[1].hand.words()];
    let marks = [0, 1].map(|end| hand_mark(link.ends[end].hand));
    if link.adjustment.opposite_hands {
        format!(
            "End A has the {a} thread ({}), end B the {b} thread ({}). Not the side of the rig.",
            marks[0], marks[1]
        )
    } else {
        format!("Both ends have a {a} thread ({}). Mark one of them A with paint, and keep to it.", marks[0])
    }
}

/// Said where there is no link yet.
pub const NO_LINK: &str =
    "Enter the link first: length, weight and use in the Size view. Then all of this has its numbers.";

/// The button that leads to its entries.
pub const ENTER_LINK: &str = "Enter the link";

/// On the fold of the looks after a hit, where there is no link yet.
pub const AFTER_A_HIT: &str = "After a hit: what to look at";

/// Said under those looks.
pub const NOTHING_JUDGED: &str =
    "Without the link nothing here is judged. If you find any one of these, do not drive on it before it is.";
