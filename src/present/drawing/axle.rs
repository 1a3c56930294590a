//! The axle from the side with the forces that its links and the ground hold in balance, to scale.

use super::sketch::Sketch;
use super::{Anchor, Drawing, LETTERING, NARROW};
use crate::quantity::{Kind, System, show};
use crate::report::{Answer, Axle};

/// Height of the ground line on the sheet.
const GROUND: f64 = 206.0;
/// Where the wheel's middle is, across the sheet.
const HUB: f64 = 102.0;
/// Length of the longest arrow.
const LONGEST: f64 = 86.0;
/// Where the links are cut off.
const CUT: f64 = 214.0;
/// Where the names of the forces begin.
const NAMES: f64 = 226.0;

/// The picture for one link; nothing where it does not hold its axle against drive and brakes.
pub fn axle(answer: &Answer, system: System) -> Option<Drawing> {
    let axle = answer.loads.axle.as_ref()?;
    let shown = |force| show(force, Kind::Force, system);
    let mut sketch = Sketch::new(NARROW, LETTERING);
    let scale = (GROUND - 22.0) / axle.tire.max(axle.upper_height);
    let y = |above: f64| GROUND - above * scale;
    let (hub, middle) = (HUB, y(axle.tire / 2.0));
    sketch.line("edge", (8.0, GROUND), (NARROW - 8.0, GROUND));
    sketch.circle("part", (hub, middle), (axle.tire / 2.0 * scale).min(HUB - 3.0));
    sketch.circle("part", (hub, middle), 0.16 * axle.tire * scale);
    // A bracket from the lower mount to the upper one carries both links.
    let lowest = axle.lower_height.min(axle.tire / 2.0);
    sketch.line("bracket", (hub, y(lowest)), (hub, y(axle.upper_height)));
    let long = |force: f64| LONGEST * force / axle.lower.max(axle.traction).max(axle.upper);
    let mounts = [axle.upper_height, axle.lower_height].map(y);
    let room = 2.0 * sketch.line_height() + 4.0;
    let rows = apart(mounts, room, [room / 2.0, GROUND - room / 2.0]);
    let links = [(axle.upper, "upper links", true), (axle.lower, "lower links", false)];
    for (((force, name, away), at), row) in links.into_iter().zip(mounts).zip(rows) {
        sketch.line("rod", (hub, at), (CUT, at));
        sketch.circle("hole", (hub, at), 4.0);
        // The links reach toward the middle of the rig, on the right.
        let near = hub + 20.0;
        let (from, to) = if away { (near, near + long(force)) } else { (near + long(force), near) };
        arrow(&mut sketch, from, to, at);
        if (row - at).abs() > 1.0 {
            sketch.line("leader", (CUT, at), (NAMES - 4.0, row));
        }
        sketch.text("note", Anchor::Start, (NAMES, row - 3.0), name);
        let under = row - 3.0 + sketch.line_height();
        sketch.text("size", Anchor::Start, (NAMES, under), &shown(force));
    }
    arrow(&mut sketch, hub + 6.0, hub + 6.0 + long(axle.traction), GROUND + 8.0);
    let below = GROUND + 17.0 + sketch.ascent();
    sketch.text("size", Anchor::Start, (8.0, below), &format!("ground {}", shown(axle.traction)));
    let height = below + sketch.descent() + 3.0;
    Some(sketch.finish("", height, spoken(axle, system)))
}

/// What the picture says; the page writes it under it too.
pub fn spoken(axle: &Axle, system: System) -> String {
    let shown = |force| show(force, Kind::Force, system);
    format!(
        "The axle from the side. The ground pushes the tires with {}. That would turn the axle over, so the lower links hold it back with {} and the upper links push it the other way with {}; the three are in balance. The higher the lower mount and the closer the upper one is to it, the more both links have to bear. Shock comes on top.",
        shown(axle.traction),
        shown(axle.lower),
        shown(axle.upper)
    )
}

/// Two heights, the upper one first, moved apart until there is room between them, and kept between two others.
fn apart([upper, lower]: [f64; 2], room: f64, [least, most]: [f64; 2]) -> [f64; 2] {
    let missing = (room - (lower - upper)).max(0.0) / 2.0;
    let upper = (upper - missing).min(most - room).max(least);
    [upper, (lower + missing).max(upper + room).min(most)]
}

fn arrow(sketch: &mut Sketch, from: f64, to: f64, y: f64) {
    sketch.line("force", (from, y), (to, y));
    sketch.arrow("strike", (to, y), (if to > from { -12.0 } else { 12.0 }, 0.0));
}
