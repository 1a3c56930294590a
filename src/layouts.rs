//! Links added to a rig, copied and taken away: whole layouts of an axle by their plain names, and pairs.

use crate::document::{Document, Link, MOST_LINKS, Position, Role, Seat};
use crate::quantity::deg;

/// The links that usually come together at an axle.
pub struct Layout {
    /// Never reused.
    pub id: &'static str,
    /// As people call it.
    pub label: &'static str,
    /// One plain sentence.
    pub help: &'static str,
    links: &'static [(Role, Option<Seat>, Option<f64>)],
}

/// Angle of converging upper links seen from above, until somebody measures it: our assumption.
const CONVERGING: Option<f64> = Some(deg(30.0));

/// Every layout.
pub static LAYOUTS: [Layout; 5] = [
    Layout {
        id: "converging",
        label: "Parallel lowers, converging uppers",
        help: "No track bar: the uppers keep the axle centered. They are set to 30° seen from above; measure yours.",
        links: &[(Role::Lower, None, None), (Role::Upper, None, CONVERGING)],
    },
    Layout {
        id: "three",
        label: "Three links and a track bar",
        help: "Two lowers, a single upper, and a track bar from side to side.",
        links: &[(Role::Lower, None, None), (Role::Upper, Some(Seat::Middle), None), (Role::TrackBar, None, None)],
    },
    Layout {
        id: "four",
        label: "Four links and a track bar",
        help: "Two lowers and two uppers straight ahead, and a track bar from side to side.",
        links: &[(Role::Lower, None, None), (Role::Upper, None, None), (Role::TrackBar, None, None)],
    },
    Layout {
        id: "steering",
        label: "Tie rod and drag link",
        help: "What steers the wheels of this axle.",
        links: &[(Role::TieRod, None, None), (Role::DragLink, None, None)],
    },
    Layout {
        id: "sway",
        label: "Sway-bar end links",
        help: "A pair, from the sway bar down to the axle.",
        links: &[(Role::SwayLink, None, None)],
    },
];

/// Adds the links of a layout that the axle does not have yet; gives the place of the first one added.
pub fn add(document: &mut Document, layout: &Layout, position: Position) -> Option<usize> {
    // The blank link of a new document makes room.
    if document.links.len() == 1 && document.links[0] == Link::default() {
        document.links.clear();
    }
    let mut first = None;
    for &(role, seat, plan_angle) in layout.links {
        let there = document.links.iter().any(|link| link.role == role && link.position == position);
        if there || document.links.len() >= MOST_LINKS {
            continue;
        }
        first = first.or(Some(document.links.len()));
        document.links.push(Link { role, position, seat, plan_angle, ..Link::default() });
    }
    first
}

/// Takes a link away; a rig keeps at least one, so the last one is emptied instead.
pub fn remove(document: &mut Document, index: usize) {
    if document.links.len() > 1 && index < document.links.len() {
        document.links.remove(index);
    } else if index == 0 {
        document.links = vec![Link::default()];
    }
}

/// Makes the other axle's link of the same kind like this one, or adds it; gives its place.
pub fn to_other_axle(document: &mut Document, index: usize) -> Option<usize> {
    let link = document.links.get(index)?;
    let position = if link.position == Position::Front { Position::Rear } else { Position::Front };
    let copy = Link { position, ..link.clone() };
    put(document, copy)
}

/// Makes the other side like this one; a pair becomes a left and a right link, to be set apart. Gives the other's place.
pub fn to_other_side(document: &mut Document, index: usize) -> Option<usize> {
    let room = document.links.len() < MOST_LINKS;
    let link = document.links.get_mut(index)?;
    let other = match link.seated() {
        Seat::Both if room => {
            // A pair's quantity covers both sides.
            link.quantity = None;
            link.seat = Some(Seat::Left);
            let right = Link { seat: Some(Seat::Right), ..link.clone() };
            document.links.insert(index + 1, right);
            return Some(index + 1);
        }
        Seat::Left => Seat::Right,
        Seat::Right => Seat::Left,
        Seat::Both | Seat::Middle => return None,
    };
    let copy = Link { seat: Some(other), ..link.clone() };
    put(document, copy)
}

/// Puts a link in the place of the one of its kind, axle and side, or at the end.
fn put(document: &mut Document, link: Link) -> Option<usize> {
    let same =
        |other: &Link| other.role == link.role && other.position == link.position && other.seated() == link.seated();
    if let Some(at) = document.links.iter().position(same) {
        document.links[at] = link;
        return Some(at);
    }
    if document.links.len() >= MOST_LINKS {
        return None;
    }
    document.links.push(link);
    Some(document.links.len() - 1)
}
