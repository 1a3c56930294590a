//! After a hit: what a bend leaves of a link and what may be done with it; what broke, what to carry, what can be borrowed.

#[path = "fitting_hits/after.rs"]
mod after;
#[path = "fitting_hits/bowed.rs"]
mod bowed;
#[path = "fitting_hits/broken.rs"]
mod broken;
mod dice;
mod links;
#[path = "fitting_hits/page.rs"]
mod page;
#[path = "fitting_hits/spares.rs"]
mod spares;

use linkwright::document::{Document, Role, Use};
use linkwright::quantity::{inch, lbf};

/// A link of a rig, of one metal and size.
fn link(role: Role, metal: &'static str, [weight, length, outside, wall]: [f64; 4]) -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(weight)), Some(Use::Slow));
    let link = &mut document.links[0];
    (link.role, link.material, link.length) = (role, Some(metal), Some(inch(length)));
    link.outside_diameter = Some(inch(outside));
    link.wall = (wall > 0.0).then(|| inch(wall));
    document
}

/// A lower link of drawn tube that bends before it breaks.
fn tube() -> Document {
    link(Role::Lower, "1026-dom", [4000.0, 36.0, 2.0, 0.25])
}
