//! Where each link lies, seen from above, for the picture of the rig. Lengths, angles, track, tires and wheelbase are
//! the rig's own; where on the axle a link is bolted is our assumption, and no other number rests on it.

use crate::document::{Document, Link, Position, Role, Side};
use crate::engine::math::{cosine, sine};
use crate::inputs::{self, At, Number};
use crate::quantity::inch;
use crate::report::{Placed, Plan};

/// From the middle of the rig to a mount on the axle, as a share of the track: lower links, straight upper links,
/// converging ones, sway-bar links.
const LOWER: f64 = 0.30;
const UPPER: f64 = 0.19;
const CONVERGED: f64 = 0.06;
const SWAY: f64 = 0.38;
/// How far what lies across the rig is from the axle, toward the other axle and away from it.
const TRACK_BAR: f64 = inch(9.0);
const TIE_ROD: f64 = inch(-8.0);
const DRAG_LINK: f64 = inch(-16.0);
/// A link whose length nobody gave is drawn this long.
const ALONG: f64 = inch(36.0);
const ACROSS: f64 = 0.6;

/// The plan. Ahead is positive, from the rear axle; left is positive, from the middle.
pub(super) fn plan(document: &Document) -> Plan {
    let rig = |input: &'static Number| input.value(document, At::default()).unwrap_or(0.0);
    let (wheelbase, track, tire) = (rig(&inputs::WHEELBASE), rig(&inputs::TRACK), rig(&inputs::TIRE));
    let mut plan = Plan { wheelbase, track, tire, placed: Vec::new() };
    for (index, link) in document.links.iter().enumerate() {
        let angle = inputs::PLAN_ANGLE.value(document, At::of_link(document, index)).unwrap_or(0.0);
        place(&mut plan, index, link, angle);
    }
    plan
}

fn place(plan: &mut Plan, index: usize, link: &Link, angle: f64) {
    // From each axle the links reach toward the other.
    let (axle, inward) = if link.position == Position::Front { (plan.wheelbase, -1.0) } else { (0.0, 1.0) };
    let known = link.length.is_some();
    let track = plan.track;
    let across = link.length.unwrap_or(ACROSS * track);
    let mut put = |from, to| plan.placed.push(Placed { link: index, from, to, known });
    let beside = match link.role {
        Role::TrackBar => TRACK_BAR,
        Role::TieRod => TIE_ROD,
        Role::DragLink => DRAG_LINK,
        Role::Lower | Role::Upper | Role::SwayLink => {
            for side in sides(link.seated()) {
                let (at, away) = mount(link.role, side, angle, track);
                let long = if link.role == Role::SwayLink { 0.0 } else { link.length.unwrap_or(ALONG) };
                let ahead = if link.role == Role::SwayLink { inward * TRACK_BAR } else { 0.0 };
                let end = [axle + ahead + inward * long * cosine(angle), at + away * long * sine(angle)];
                put([axle + ahead, at], end);
            }
            return;
        }
    };
    let ahead = axle + inward * beside;
    put([ahead, across / 2.0], [ahead, -across / 2.0]);
}

/// Left is 1, right is -1, and a single one is 0.
fn sides(seat: Side) -> Vec<f64> {
    match seat {
        Side::Both => vec![1.0, -1.0],
        Side::Left => vec![1.0],
        Side::Right => vec![-1.0],
        Side::Middle => vec![0.0],
    }
}

/// Where on the axle a link begins, and which way it leans as it leaves: lower links lean in, upper ones out.
fn mount(role: Role, side: f64, angle: f64, track: f64) -> (f64, f64) {
    match role {
        Role::Lower => (side * LOWER * track, -side),
        Role::Upper if angle > 0.1 => (side * CONVERGED * track, side),
        Role::Upper => (side * UPPER * track, side),
        _ => (side * SWAY * track, 0.0),
    }
}
