//! Links added to a rig, copied and taken away: whole layouts of an axle by their plain names, and pairs.

use crate::document::{Document, Link, MOST_LINKS, Position, Role, Side};
use crate::quantity::deg;

/// The links that usually come together at an axle.
pub struct Layout {
    /// Never reused.
    pub id: &'static str,
    /// As people call it.
    pub label: &'static str,
    /// One plain sentence.
    pub help: &'static str,
    links: &'static [(Role, Option<Side>, Option<f64>)],
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
        links: &[(Role::Lower, None, None), (Role::Upper, Some(Side::Middle), None), (Role::TrackBar, None, None)],
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

/// The same link at the other axle.
fn across(link: &Link) -> Link {
    let position = if link.position == Position::Front { Position::Rear } else { Position::Front };
    Link { position, made: Vec::new(), ..link.clone() }
}

/// The same link on the other side, where it has one.
fn beside(link: &Link) -> Option<Link> {
    let other = match link.seated() {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
        Side::Both | Side::Middle => return None,
    };
    Some(Link { seat: Some(other), made: Vec::new(), ..link.clone() })
}

/// Where the other axle's link of the same kind is, which a copy would write over.
pub fn at_other_axle(document: &Document, index: usize) -> Option<usize> {
    place(document, &across(document.links.get(index)?))
}

/// Where the other side's link of the same kind is, which a copy would write over.
pub fn at_other_side(document: &Document, index: usize) -> Option<usize> {
    place(document, &beside(document.links.get(index)?)?)
}

/// Makes the other axle's link of the same kind like this one, or adds it; gives its place.
pub fn to_other_axle(document: &mut Document, index: usize) -> Option<usize> {
    let copy = across(document.links.get(index)?);
    put(document, copy)
}

/// How many links a copy of an axle would add: those of its suspension, for a second axle seldom steers, and only where
/// the other axle has none, for mixed layouts hold no axle.
pub fn copied_of_axle(document: &Document, from: Position) -> usize {
    let holds = |link: &&Link| !link.role.steers();
    let count = |of: bool| document.links.iter().filter(holds).filter(|link| (link.position == from) == of).count();
    if count(false) > 0 || count(true) + document.links.len() > MOST_LINKS { 0 } else { count(true) }
}

/// Adds them.
pub fn copy_axle(document: &mut Document, from: Position) {
    if copied_of_axle(document, from) > 0 {
        let copies: Vec<Link> = document.links.iter().filter(|link| !link.role.steers()).map(across).collect();
        document.links.extend(copies);
    }
}

/// Makes the other side like this one, or adds it; gives its place.
pub fn to_other_side(document: &mut Document, index: usize) -> Option<usize> {
    let copy = beside(document.links.get(index)?)?;
    put(document, copy)
}

/// Makes a pair a left and a right link; the right one goes to the end, so that every other link keeps its place.
/// Gives that of the right one.
pub fn set_apart(document: &mut Document, index: usize) -> Option<usize> {
    let room = document.links.len() < MOST_LINKS;
    let link = document.links.get_mut(index).filter(|link| room && link.seated() == Side::Both)?;
    // A pair's quantity covers both sides.
    link.quantity = None;
    link.seat = Some(Side::Left);
    let right = Link { seat: Some(Side::Right), made: Vec::new(), ..link.clone() };
    document.links.push(right);
    Some(document.links.len() - 1)
}

/// Makes a left and a right link one pair, like this one; gives its place.
pub fn join(document: &mut Document, index: usize) -> Option<usize> {
    let other = at_other_side(document, index)?;
    let mut pair = Link { seat: None, quantity: None, ..document.links.get(index)?.clone() };
    pair.made.extend(document.links.get(other)?.made.iter().cloned());
    if pair.seated() != Side::Both {
        pair.seat = Some(Side::Both);
    }
    let at = index.min(other);
    document.links[at] = pair;
    document.links.remove(index.max(other));
    Some(at)
}

/// Where the rig has a link of this kind, axle and side.
fn place(document: &Document, link: &Link) -> Option<usize> {
    let same =
        |other: &Link| other.role == link.role && other.position == link.position && other.seated() == link.seated();
    document.links.iter().position(same)
}

/// Puts a link in the place of the one of its kind, axle and side, or at the end.
fn put(document: &mut Document, link: Link) -> Option<usize> {
    if let Some(at) = place(document, &link) {
        document.links[at] = link;
        return Some(at);
    }
    if document.links.len() >= MOST_LINKS {
        return None;
    }
    document.links.push(link);
    Some(document.links.len() - 1)
}
