//! Where on the rig a bar sits: what a log goes by, for links move in their list, and one entry may stand for a pair.
//! What holds for a whole axle stands under a spot of its own, `front-axle`.

use crate::document::{Document, Link, Position, Role, Side};

/// Where on the rig one bar sits: `front-lower-left`; of a second link there `front-lower-left-2`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Spot(String);

impl Spot {
    /// The spot of an id, if it can be one.
    pub fn of_id(id: &str) -> Option<Self> {
        let letters = id.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-');
        (letters && (1..=60).contains(&id.len())).then(|| Self(id.to_string()))
    }

    /// Its axle, where what holds for every bar of it is kept; the same again for the spot of an axle.
    #[must_use]
    pub fn axle(&self) -> Self {
        let position = self.0.split('-').next().unwrap_or_default();
        Self(format!("{position}-axle"))
    }

    /// Its id.
    pub fn id(&self) -> &str {
        &self.0
    }
}

const fn role(role: Role) -> &'static str {
    match role {
        Role::Lower => "lower",
        Role::Upper => "upper",
        Role::TrackBar => "track-bar",
        Role::TieRod => "tie-rod",
        Role::DragLink => "drag-link",
        Role::SwayLink => "sway-link",
    }
}

fn sides(link: &Link) -> Vec<(Side, &'static str)> {
    match link.seated() {
        Side::Both => vec![(Side::Left, "left"), (Side::Right, "right")],
        Side::Left => vec![(Side::Left, "left")],
        Side::Right => vec![(Side::Right, "right")],
        Side::Middle => vec![(Side::Middle, "middle")],
    }
}

fn stem(position: Position, of: Role, side: &str) -> String {
    format!("{}-{}-{side}", position.word(), role(of))
}

/// The bars that one link of the list stands for, each with its name: a pair is two.
pub fn bars(document: &Document, link: usize) -> Vec<(Spot, String)> {
    let Some(this) = document.links.get(link) else { return Vec::new() };
    let before = document.links.iter().take(link);
    let same = |other: &&Link| other.position == this.position && other.role == this.role;
    let before: Vec<&Link> = before.filter(same).collect();
    let bar = |(side, word): (Side, &str)| {
        let earlier = before.iter().filter(|other| sides(other).iter().any(|(of, _)| *of == side)).count();
        let id = stem(this.position, this.role, word);
        let title = Link { seat: Some(side), ..this.clone() }.title();
        if earlier == 0 {
            (Spot(id), title)
        } else {
            (Spot(format!("{id}-{}", earlier + 1)), format!("{title} {}", earlier + 1))
        }
    };
    sides(this).into_iter().map(bar).collect()
}
