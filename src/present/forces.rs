//! Where the forces on the link come from, in words.

use super::drawing::axle;
use super::words::{say, uses_your_own};
use crate::quantity::System;
use crate::report::Answer;

/// The forces of an answer in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Forces {
    /// How the axle's forces balance, for links that hold it against drive and brakes.
    pub axle: Option<String>,
    /// What the link is sized for, to stand after “Sized for: ”.
    pub story: String,
    /// The changed defaults that it rests on.
    pub changed: Option<String>,
}

/// The forces of an answer in words.
pub fn forces(answer: &Answer, system: System) -> Forces {
    let loads = &answer.loads;
    Forces {
        axle: loads.axle.as_ref().map(|axle| axle::spoken(axle, system)),
        story: say(&loads.story, system),
        changed: uses_your_own(&loads.axial_changed, &loads.strike_changed),
    }
}
