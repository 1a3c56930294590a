//! The force along a link: traction and side load, steering, a sway bar.

use crate::document::Role;
use crate::engine::formula::Sheet;
use crate::engine::formulas::{axle, loads, steering};
use crate::engine::given::Values;
use crate::engine::sentence::{Said, said};
use crate::inputs;
use crate::quantity;
use crate::quantity::deg;
use crate::report::Axle;

/// Below this half-angle two upper links hold an axle sideways too poorly to be answered for: each takes more than
/// 1.9 times the side load.
const LEAST_CONVERGENCE: f64 = deg(15.0);
/// Builders give converging upper links at least this half-angle (common practice, no source).
const USUAL_CONVERGENCE: f64 = deg(20.0);

/// The force along a link.
pub(super) struct Axial {
    pub(super) force: f64,
    /// What it comes from, as a noun phrase.
    pub(super) from: &'static str,
    /// The axle's forces, for links that hold it against drive and brakes.
    pub(super) axle: Option<Axle>,
    /// What the reader should know of it; empty for most links, and in a search.
    pub(super) remark: Said,
    /// What makes the force less certain than usual.
    pub(super) caution: Said,
}

impl Axial {
    const fn new(force: f64, from: &'static str) -> Self {
        Self { force, from, axle: None, remark: Said::new(), caution: Said::new() }
    }
}

/// The largest tension or compression along a link.
pub(super) fn axial(given: &Values, sheet: &mut Sheet) -> Axial {
    if let Some(own) = given.number(&inputs::OWN_AXIAL) {
        sheet.choose(|| said!["Your own force along the link is used: ", (own, Force), "."]);
        return Axial::new(own, "your own entry");
    }
    match given.link.role {
        Role::Lower | Role::Upper => from_traction(given, sheet),
        Role::TrackBar => {
            let slope = given.known(&inputs::SLOPE);
            let [shock, weight] = [&inputs::SHOCK, &inputs::WEIGHT].map(|input| given.known(input));
            let slide = [shock, given.known(&inputs::TRACTION), axle_share(given), weight, slope];
            Axial::new(sheet.work(&steering::SIDE_LOAD, &slide), "side load until both tires slide")
        }
        Role::TieRod | Role::DragLink => from_steering(given, sheet),
        Role::SwayLink => {
            let one_held = given.choice(&inputs::SWAY_MEASURED) == Some("one");
            let arms = if one_held { 2.0 } else { 1.0 };
            let [shock, rate, travel] =
                [&inputs::SHOCK, &inputs::SWAY_RATE, &inputs::FLEX].map(|input| given.known(input));
            Axial::new(sheet.work(&steering::SWAY_FORCE, &[shock, arms, rate, travel]), "sway bar at full travel")
        }
    }
}

/// Share of the rig's weight on this link's axle at worst. Unless it is given it follows from the level share.
fn axle_share(given: &Values) -> f64 {
    if !given.is_decided(&inputs::AXLE_SHARE) {
        given.rests_on(&inputs::FRONT_SHARE);
    }
    given.known(&inputs::AXLE_SHARE)
}

/// Drive and brakes, through the axle that the links hold; and its side load, where no track bar takes it.
fn from_traction(given: &Values, sheet: &mut Sheet) -> Axial {
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
    let found = match given.link.role {
        Role::Upper => of_upper(given, traction, each, sheet),
        _ => of_lower(given, traction, each, sheet),
    };
    let tire = given.known(&inputs::TIRE);
    Axial { axle: Some(Axle { traction, lower, upper, lower_height, upper_height, tire }), ..found }
}

/// A lower link takes no side load, but more than its share where the grip is uneven.
fn of_lower(given: &Values, traction: f64, even: f64, sheet: &mut Sheet) -> Axial {
    let offset = given.known(&inputs::GRIP_OFFSET);
    let mut each = even;
    if offset > 0.0 {
        let added = sheet.work(&axle::YAW_COUPLE, &[traction, offset, given.known(&inputs::LOWER_SPREAD)]);
        each = sheet.work(&axle::UNEVEN_LOWER, &[even, added, given.known(&inputs::PLAN_ANGLE)]);
    }
    let force = sheet.work(&loads::SHOCKED_FORCE, &[given.known(&inputs::SHOCK), each]);
    Axial::new(force, "traction and braking")
}

/// Converging upper links hold an axle without a track bar sideways too.
fn of_upper(given: &Values, grip: f64, traction: f64, sheet: &mut Sheet) -> Axial {
    let shock = given.known(&inputs::SHOCK);
    let unknown = given.choice(&inputs::TRACK_BAR) == Some("unknown");
    if !given.holds_sideways() {
        let force = sheet.work(&loads::SHOCKED_FORCE, &[shock, traction]);
        let alone = unknown && quantity::exceeds(2.0, given.known(&inputs::COUNT));
        let remark = sheet.remark(|| {
            if alone {
                said!["Does this axle have a track bar? Not known: taken to have one, since a single upper link cannot hold an axle sideways."]
            } else {
                Said::default()
            }
        });
        return Axial { remark, ..Axial::new(force, "traction and braking") };
    }
    let angle = given.known(&inputs::PLAN_ANGLE);
    sheet.choose(|| said!["Without a track bar the upper links hold the axle sideways; drive and side force share the grip of the tires."]);
    let side = sheet.work(&axle::CONVERGING_SIDE, &[grip, given.known(&inputs::COUNT), angle]);
    let force = sheet.work(&axle::CONVERGING_UPPER, &[shock, traction, side]);
    let bound = sheet.work(&axle::CONVERGING_BOUND, &[shock, traction, side]);
    let remark = sheet.remark(|| {
        let mut said = Said::default();
        if unknown {
            said.extend(if given.is_decided(&inputs::PLAN_ANGLE) {
                said!["Does this axle have a track bar? Not known: taken as none, with the upper links at ", (angle, Angle), ". "]
            } else {
                said!["Does this axle have a track bar? Not known: taken as none, ", (angle, Angle), ". "]
            });
        }
        said.extend(said![
            "A bound, not the load it is sized for: full traction and a sideways hit at the same moment, from different wheels, could reach ",
            (bound, Force),
            "."
        ]);
        said
    });
    let caution = sheet.remark(|| {
        if quantity::exceeds(USUAL_CONVERGENCE, angle) {
            said![
                "Upper links at only ",
                (angle, Angle),
                " to straight ahead hold the axle sideways poorly, and bracket flex adds to it. Common practice is at least ",
                (USUAL_CONVERGENCE, Angle),
                " a side."
            ]
        } else {
            Said::default()
        }
    });
    Axial { remark, caution, ..Axial::new(force, "traction and side load, in the worst direction") }
}

/// Entries about the upper links that no axle can be held with, in a sentence.
pub(in crate::engine) fn refusal(given: &Values) -> Option<Said> {
    if given.link.role != Role::Upper || given.number(&inputs::OWN_AXIAL).is_some() {
        return None;
    }
    let count = given.known(&inputs::COUNT);
    if quantity::exceeds(2.0, count) && given.choice(&inputs::TRACK_BAR) == Some("no") {
        return Some(said![
            "A single upper link cannot hold an axle sideways, and this axle is entered without a track bar. Check the number of upper links and the track bar under Loads."
        ]);
    }
    let angle = given.known(&inputs::PLAN_ANGLE);
    let entered = given.holds_sideways() && given.is_decided(&inputs::PLAN_ANGLE);
    (entered && quantity::exceeds(LEAST_CONVERGENCE, angle)).then(|| {
        said![
            "Upper links at ",
            (angle, Angle),
            " to straight ahead converge too little to hold an axle without a track bar: below ",
            (LEAST_CONVERGENCE, Angle),
            " each would take more than 1.9 times the side load. Enter a larger angle, or say under Loads that this axle has a track bar."
        ]
    })
}

/// The largest of what turns the wheels, what holds them back and what pushes on the link by itself.
fn from_steering(given: &Values, sheet: &mut Sheet) -> Axial {
    let (grip, arm) = (given.known(&inputs::TRACTION), given.known(&inputs::STEERING_ARM));
    let (offset, weight) = (given.known(&inputs::SCRUB), given.known(&inputs::WEIGHT));
    let wheel = sheet.work(&steering::WHEEL_WEIGHT, &[axle_share(given), weight]);
    let torque = sheet.work(&steering::SCRUB_TORQUE, &[grip, wheel, offset, given.known(&inputs::PATCH)]);
    // The drag link turns both wheels, the tie rod hands on what the far one takes.
    let wheels = if given.link.role == Role::DragLink { 2.0 } else { 1.0 };
    let scrub = sheet.work(&steering::SCRUB_FORCE, &[wheels, torque, arm]);
    let hit = sheet.work(&steering::OBSTACLE_FORCE, &[given.known(&inputs::SHOCK), grip, weight, wheel, offset, arm]);
    let mut largest = ("wheels turned in place", scrub);
    let mut also = |what, force| {
        if quantity::exceeds(force, largest.1) {
            largest = (what, force);
        }
    };
    also("a wheel against an obstacle", hit);
    // The far wheel may be jammed, so that the tie rod gets all that the box gives.
    also("the steering box", from_box(given, sheet));
    if let Some(bore) = given.number(&inputs::CYLINDER_BORE) {
        also("the hydraulic ram", sheet.work(&steering::RAM_FORCE, &[given.known(&inputs::CYLINDER_PRESSURE), bore]));
        if given.is_decided(&inputs::CYLINDER_ROD) {
            sheet.choose(|| said!["The rod is not subtracted: one side of the ram pushes with the full bore."]);
        }
    }
    sheet.choose(|| said!["The largest counts: ", (largest.0), ", ", (largest.1, Force), "."]);
    Axial::new(largest.1, largest.0)
}

/// What the steering box or rack pushes with: as entered, else by its kind.
fn from_box(given: &Values, sheet: &mut Sheet) -> f64 {
    let force = given.known(&inputs::BOX_FORCE);
    if given.is_decided(&inputs::BOX_FORCE) {
        sheet.choose(|| said!["The steering box puts out ", (force, Force), " by your entry."]);
        return force;
    }
    if given.choice(&inputs::STEERING_BOX) == Some("power") {
        return sheet.work(&steering::BOX_FORCE, &[inputs::BOX_TORQUE, inputs::PITMAN_ARM]);
    }
    sheet.choose(|| said!["A rack, or a box without power, is taken to put out ", (force, Force), "."]);
    force
}
