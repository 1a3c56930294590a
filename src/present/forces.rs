//! Where the forces on the link come from, in words.

use super::words::{say, uses_your_own};
use crate::quantity::{Kind, System, show};
use crate::report::{Answer, Axle};

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
        axle: loads.axle.as_ref().map(|axle| axle_words(axle, system)),
        story: say(&loads.story, system),
        changed: uses_your_own(&loads.axial_changed, &loads.strike_changed),
    }
}

/// How the axle's forces balance: said under its drawing, and for whoever cannot see that.
pub fn axle_words(axle: &Axle, system: System) -> String {
    let force = |value| show(value, Kind::Force, system);
    format!(
        "The axle from the side. The ground pushes the tires with {}. That would turn the axle over, so the lower links hold it back with {} and the upper links push it the other way with {}; the three are in balance. The higher the lower mount and the closer the upper one is to it, the more both links have to bear. Shock comes on top.",
        force(axle.traction),
        force(axle.lower),
        force(axle.upper)
    )
}
