//! What one link must bear: traction along it and a strike across it, each with its working.

use super::formula::{Line, Sheet};
use super::formulas::{axle, impact, loads, steering};
use super::geometry::role_word;
use super::given::Values;
use super::sentence::{Said, said};
use super::stepped::{self, Step};
use super::tables::uses;
use crate::document::Role;
use crate::inputs;
use crate::quantity::{Kind, inch};
use crate::report::{Axle, Loads};

/// The force along the link, and the axle it comes from.
fn axial(given: &Values, sheet: &mut Sheet) -> (f64, &'static str, Option<Axle>) {
    if let Some(own) = given.number(&inputs::OWN_AXIAL) {
        sheet.choose(|| said!["Your own force along the link is used: ", (own, Force), "."]);
        return (own, "by your own entry there are", None);
    }
    match given.link.role {
        Role::Lower | Role::Upper => {
            let (force, axle) = from_traction(given, sheet);
            (force, "the tires push or pull", Some(axle))
        }
        Role::TrackBar => (sheet.work(&steering::SIDE_LOAD, &side(given)), "an axle that slides sideways puts", None),
        Role::TieRod | Role::DragLink => {
            let (from, force) = from_steering(given, sheet);
            (force, from, None)
        }
        Role::SwayLink => {
            let travel = given.known(&inputs::FLEX);
            let spring = [given.known(&inputs::SHOCK), given.known(&inputs::SWAY_RATE), travel, inch(1.0)];
            (sheet.work(&steering::SWAY_FORCE, &spring), "the sway bar puts", None)
        }
    }
}

/// Share of the rig's weight on this link's axle at worst. Unless it is given it follows from the level share.
fn axle_share(given: &Values) -> f64 {
    if !given.is_decided(&inputs::AXLE_SHARE) {
        given.number(&inputs::FRONT_SHARE);
    }
    given.known(&inputs::AXLE_SHARE)
}

/// Shock, grip, share and weight: what slides an axle sideways.
fn side(given: &Values) -> [f64; 4] {
    [given.known(&inputs::SHOCK), given.known(&inputs::TRACTION), axle_share(given), given.known(&inputs::WEIGHT)]
}

/// Drive and brakes, through the axle that the links hold.
fn from_traction(given: &Values, sheet: &mut Sheet) -> (f64, Axle) {
    let (lower_height, upper_height) = (given.known(&inputs::LOWER_HEIGHT), given.known(&inputs::UPPER_HEIGHT));
    let traction =
        sheet.work(&axle::TRACTION, &[given.known(&inputs::TRACTION), axle_share(given), given.known(&inputs::WEIGHT)]);
    let arms = [traction, upper_height, lower_height];
    let lower = sheet.work(&axle::LOWER_PAIR, &arms);
    let upper = sheet.work(&axle::UPPER_PAIR, &arms);
    let pair = if given.link.role == Role::Upper { upper } else { lower };
    let each = sheet.work(
        &axle::PER_LINK,
        &[pair, given.known(&inputs::UNEVEN), given.known(&inputs::COUNT), given.known(&inputs::PLAN_ANGLE)],
    );
    let force = sheet.work(&loads::SHOCKED_FORCE, &[given.known(&inputs::SHOCK), each]);
    let tire = given.known(&inputs::TIRE);
    (force, Axle { traction, lower, upper, lower_height, upper_height, tire })
}

/// The largest of what turns the wheels, what holds them back and what pushes on the link by itself.
fn from_steering(given: &Values, sheet: &mut Sheet) -> (&'static str, f64) {
    let (grip, arm) = (given.known(&inputs::TRACTION), given.known(&inputs::STEERING_ARM));
    let offset = given.known(&inputs::SCRUB);
    let wheel = sheet.work(&steering::WHEEL_WEIGHT, &[axle_share(given), given.known(&inputs::WEIGHT)]);
    let torque = sheet.work(&steering::SCRUB_TORQUE, &[grip, wheel, offset, given.known(&inputs::PATCH)]);
    // The drag link turns both wheels, the tie rod hands on what the far one takes.
    let wheels = if given.link.role == Role::DragLink { 2.0 } else { 1.0 };
    let mut largest =
        ("turning the wheels on the spot puts", sheet.work(&steering::SCRUB_FORCE, &[wheels, torque, arm]));
    let mut also = |what, force| {
        if force > largest.1 {
            largest = (what, force);
        }
    };
    let hit = sheet.work(&steering::OBSTACLE_FORCE, &[given.known(&inputs::SHOCK), grip, wheel, offset, arm]);
    also("a wheel that runs against a rock puts", hit);
    if let Some(bore) = given.number(&inputs::CYLINDER_BORE) {
        let cylinder = [given.known(&inputs::CYLINDER_PRESSURE), bore, given.known(&inputs::CYLINDER_ROD)];
        also("the assist cylinder puts", sheet.work(&steering::CYLINDER_FORCE, &cylinder));
    }
    if let Some(force) = given.number(&inputs::BOX_FORCE) {
        also("the steering box puts", force);
    }
    sheet.choose(|| said!["The largest counts: ", (largest.0), " ", (largest.1, Force), " along it."]);
    largest
}

/// The weight that lands on the bar; track bars, drag links and sway-bar links are not landed on.
pub(super) fn strike_weight(given: &Values, sheet: &mut Sheet) -> f64 {
    let (share, weight) = (given.known(&inputs::STRIKE_SHARE), given.known(&inputs::WEIGHT));
    match given.link.role {
        Role::Lower => sheet.work(&loads::STRIKE_WEIGHT, &[share, weight]),
        Role::Upper | Role::TieRod => {
            sheet.work(&loads::UPPER_STRIKE_WEIGHT, &[given.known(&inputs::UPPER_STRIKE), share, weight])
        }
        Role::TrackBar | Role::DragLink | Role::SwayLink => 0.0,
    }
}

/// The force of a strike at mid-span. The weight is stopped by the link and by the rest of the rig, two springs one after
/// the other. One force stands for the whole zone: with the rest of the rig deflecting too, the same drop lands only a
/// few percent harder near an eye.
fn strike_force(given: &Values, steps: &[Step], weight: f64, sheet: &mut Sheet) -> f64 {
    if let Some(force) = given.number(&inputs::OWN_STRIKE) {
        sheet.choose(|| said!["Your own strike is used: ", (force, Force), "."]);
        return force;
    }
    if weight <= 0.0 {
        return 0.0;
    }
    let compliance = stepped::deflection_per_force(steps, given.known(&inputs::LENGTH) / 2.0);
    sheet.record(|| Line::Solved {
        what: "Deflection of the link at the point of impact, for each unit of force",
        value: compliance,
        kind: Kind::Compliance,
        how: "added up over shanks, threaded holes, flats and bar",
    });
    let deflection = at_rest(given, weight, compliance, sheet);
    sheet.work(&impact::DROP_FORCE, &[weight, given.known(&inputs::DROP), deflection])
}

/// How far the rest of the rig deflects, for each unit of force.
pub(super) fn rest_compliance(given: &Values, sheet: &mut Sheet) -> f64 {
    sheet.work(&impact::REST_COMPLIANCE, &[given.known(&inputs::REST_DEFLECTION), given.known(&inputs::WEIGHT)])
}

/// How far a link and the rest of the rig deflect under a weight at rest.
pub(super) fn at_rest(given: &Values, weight: f64, compliance: f64, sheet: &mut Sheet) -> f64 {
    let rest = rest_compliance(given, sheet);
    sheet.work(&impact::STATIC_DEFLECTION, &[weight, compliance, rest])
}

/// The largest tension or compression along a link, without a strike.
pub(super) fn largest_axial(given: &Values) -> f64 {
    axial(given, &mut Sheet::silent()).0
}

/// Every force on a link.
pub(super) fn on_link(given: &Values, steps: &[Step], sheet: &mut Sheet) -> Loads {
    given.begin_trace();
    let (axial, from, axle) = axial(given, sheet);
    let axial_changed = given.take_trace();
    given.begin_trace();
    let with = sheet.work(&loads::FORCE_WITH_STRIKE, &[given.known(&inputs::AXIAL_SHARE_WITH_STRIKE), axial]);
    let weight = strike_weight(given, sheet);
    let zone = given.known(&inputs::STRIKE_ZONE);
    let strike = strike_force(given, steps, weight, sheet);
    Loads {
        strike_changed: given.take_trace(),
        axial_changed,
        axle,
        from,
        axial,
        axial_with_strike: with,
        strike_weight: weight,
        drop: given.known(&inputs::DROP),
        strike,
        zone,
        story: Said::default(),
        working: std::mem::take(&mut sheet.lines),
    }
}

/// What was assumed, in words.
pub(super) fn story(given: &Values, loads: &Loads) -> Said {
    let role = given.link.role;
    let name = role_word(role);
    let mut said = Said::default();
    if given.number(&inputs::OWN_STRIKE).is_some() {
        said.extend(said!["Your own strike of ", (loads.strike, Force), " across the bar"]);
    } else if loads.strike_weight > 0.0 {
        said.extend(said![(loads.strike_weight, Weight), " — "]);
        if role == Role::Lower {
            said.extend(said![(given.known(&inputs::STRIKE_SHARE), Percent), " of the rig — "]);
        } else {
            let share = loads.strike_weight / given.known(&inputs::WEIGHT);
            said.extend(said![(share, Percent), " of the rig, since rocks seldom reach it — "]);
        }
        said.extend(if loads.drop > inch(0.001) {
            said!["dropped on the middle of this ", (name), " from ", (loads.drop, FineLength)]
        } else {
            said!["set down on the middle of this ", (name), " all at once"]
        });
        said.extend(said![", which is ", (loads.strike, Force)]);
    }
    if said.is_empty() {
        said.extend(said!["No strike across this ", (name), " is assumed; ", (loads.from), " ", (loads.axial, Force)]);
        said.extend(said![" along it, both ways."]);
    } else {
        said.extend(said![", while ", (loads.from), " ", (loads.axial_with_strike, Force), " along it; and "]);
        said.extend(said![(loads.axial, Force), " along it alone."]);
    }
    if let Some(usage) = given.document.rig.usage {
        let scenario = uses::scenario(usage).label.to_ascii_lowercase();
        said.extend(said![" Assumed for “", scenario, "”: a scenario, not a limit of what a rock can do."]);
    }
    said
}
