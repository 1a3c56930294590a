//! The rows of choices: what may be picked, and how a pick is kept.

macro_rules! pick_id {
    ($options:ident, $document:ident, $place:ident, $id:ident, $target:expr) => {{
        let picked = match $id {
            None => None,
            Some(id) => match known(&$options(), id) {
                None => return false,
                found => found,
            },
        };
        match $target {
            Some(target) => {
                *target = picked;
                true
            }
            None => false,
        }
    }};
}

mod loads;
mod steel;
mod welded;

use super::bracket::{self, BOLT_SERIES, SPACER_KIND, STOCK};
use super::order::{FINISH, MEASURED_ON, SUPPLIED_BY};
use super::{At, Group, Scope};
use crate::document::{Document, Hand, OWN_ROD_END, Position, Role, Side, Use};
pub use loads::{STEERING_BOX, SWAY_MEASURED, TIE_ROD_SIDE, TRACK_BAR};
pub use steel::{HARDENED_AFTER_WELDING, SHANK_STEEL};
pub use welded::{ROSETTE_WELDS, TUBE_END};

use crate::engine::tables::{bolts, materials, rod_ends, threads, uses};

/// One thing that may be picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Option {
    /// Never reused once released.
    pub id: &'static str,
    /// As the form says it.
    pub label: &'static str,
    /// One plain sentence, or nothing.
    pub help: &'static str,
}

/// A choice the user may make.
pub struct Choice {
    /// Never reused once released.
    pub id: &'static str,
    /// As the form says it.
    pub label: &'static str,
    /// One sentence for somebody who does not know it.
    pub help: &'static str,
    /// What it belongs to.
    pub scope: Scope,
    /// Where in the form it stands.
    pub group: Group,
    /// What may be picked.
    pub options: fn() -> Vec<Option>,
    /// The id picked, if any.
    pub get: fn(&Document, At) -> std::option::Option<&'static str>,
    /// Picks an id, or gives it back to the default; an unknown id changes nothing and gives `false`.
    pub set: fn(&mut Document, At, std::option::Option<&str>) -> bool,
    /// The id in force when none is picked; `None` where the recommendation decides.
    pub default: fn(&Document, At) -> std::option::Option<&'static str>,
}

impl PartialEq for Choice {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Choice {
    /// The id in force.
    pub fn value(&self, document: &Document, place: At) -> std::option::Option<&'static str> {
        (self.get)(document, place).or_else(|| (self.default)(document, place))
    }
}

/// Looks an id up in a choice's own options, so that only known ids are ever kept.
fn known(options: &[Option], id: &str) -> std::option::Option<&'static str> {
    options.iter().find(|option| option.id == id).map(|option| option.id)
}

const ROLES: [(Role, Option); 6] = [
    (Role::Lower, Option { id: "lower", label: "Lower link", help: "Under the axle's center: rocks land on it." }),
    (
        Role::Upper,
        Option { id: "upper", label: "Upper link", help: "Above the axle: keeps the pinion where it belongs." },
    ),
    (Role::TrackBar, Option { id: "track-bar", label: "Track bar", help: "Across the rig: keeps the axle centered." }),
    (Role::TieRod, Option { id: "tie-rod", label: "Tie rod", help: "From knuckle to knuckle." }),
    (Role::DragLink, Option { id: "drag-link", label: "Drag link", help: "From the steering box to the knuckle." }),
    (Role::SwayLink, Option { id: "sway-link", label: "Sway-bar end link", help: "From the sway bar to the axle." }),
];

const POSITIONS: [(Position, Option); 2] = [
    (Position::Front, Option { id: "front", label: "Front axle", help: "" }),
    (Position::Rear, Option { id: "rear", label: "Rear axle", help: "" }),
];

const SEATS: [(Side, Option); 4] = [
    (Side::Both, Option { id: "both", label: "Both sides alike", help: "A pair, entered once." }),
    (Side::Left, Option { id: "left", label: "Left only", help: "Left as the driver sits." }),
    (Side::Right, Option { id: "right", label: "Right only", help: "Right as the driver sits." }),
    (Side::Middle, Option { id: "middle", label: "A single one", help: "In the middle, or from side to side." }),
];

const HANDS: [(Hand, Option); 2] = [
    (Hand::Right, Option { id: "rh", label: "Right-hand", help: "Tightens clockwise." }),
    (Hand::Left, Option { id: "lh", label: "Left-hand", help: "Tightens counterclockwise." }),
];

/// Finds the enum value of an id, and the id of an enum value, in a table of pairs.
pub(super) fn of_id<T: Copy>(pairs: &[(T, Option)], id: &str) -> std::option::Option<T> {
    pairs.iter().find(|(_, option)| option.id == id).map(|(value, _)| *value)
}
pub(super) fn id_of<T: PartialEq>(pairs: &[(T, Option)], value: &T) -> std::option::Option<&'static str> {
    pairs.iter().find(|(of, _)| of == value).map(|(_, option)| option.id)
}

fn role_options() -> Vec<Option> {
    ROLES.map(|(_, option)| option).to_vec()
}

fn hand_options() -> Vec<Option> {
    HANDS.map(|(_, option)| option).to_vec()
}

fn usage_options() -> Vec<Option> {
    uses::ALL.iter().map(|row| Option { id: row.id, label: row.label, help: row.words }).collect()
}

fn material_options() -> Vec<Option> {
    materials::ALL.iter().map(|row| Option { id: row.id, label: row.label, help: row.plain }).collect()
}

fn family_options() -> Vec<Option> {
    rod_ends::Family::ALL.iter().map(|family| Option { id: family.id(), label: family.label(), help: "" }).collect()
}

fn rod_end_options() -> Vec<Option> {
    let own = Option { id: OWN_ROD_END, label: "My own, measured", help: "Three caliper readings." };
    rod_ends::ALL.iter().map(|row| Option { id: row.id, label: row.label, help: row.note }).chain([own]).collect()
}

fn thread_options() -> Vec<Option> {
    threads::ALL.iter().map(|row| Option { id: row.id, label: row.label, help: "" }).collect()
}

fn bolt_options() -> Vec<Option> {
    bolts::GRADES.iter().map(|row| Option { id: row.id, label: row.label, help: "" }).collect()
}

pub(super) fn link_of(document: &mut Document, place: At) -> std::option::Option<&mut crate::document::Link> {
    document.links.get_mut(place.link)
}

pub(super) fn end_of(document: &mut Document, place: At) -> std::option::Option<&mut crate::document::End> {
    link_of(document, place).and_then(|link| link.ends.get_mut(place.end))
}

/// What the link locates.
pub static ROLE: Choice = Choice {
    id: "role",
    label: "Which link",
    help: "A lower link takes the rocks; an upper link mostly pushes and pulls.",
    scope: Scope::Link,
    group: Group::First,
    options: role_options,
    get: |document, place| {
        let link = document.links.get(place.link)?;
        if link.role == Role::default() && !link.role_said { None } else { id_of(&ROLES, &link.role) }
    },
    set: |document, place, id| match (
        id.map_or(Some(Role::default()), |id| of_id(&ROLES, id)),
        link_of(document, place),
    ) {
        (Some(role), Some(link)) => {
            (link.role, link.role_said) = (role, id.is_some() && role == Role::default());
            true
        }
        _ => false,
    },
    default: |_, _| id_of(&ROLES, &Role::default()),
};

/// At which axle the link is.
pub static POSITION: Choice = Choice {
    id: "axle",
    label: "Which axle",
    help: "Each axle has its own mount heights, weight and travel.",
    scope: Scope::Link,
    group: Group::Side,
    options: || POSITIONS.map(|(_, option)| option).to_vec(),
    get: |document, place| {
        let link = document.links.get(place.link)?;
        if link.position == Position::default() && !link.position_said {
            None
        } else {
            id_of(&POSITIONS, &link.position)
        }
    },
    set: |document, place, id| match (
        id.map_or(Some(Position::default()), |id| of_id(&POSITIONS, id)),
        link_of(document, place),
    ) {
        (Some(position), Some(link)) => {
            (link.position, link.position_said) = (position, id.is_some() && position == Position::default());
            true
        }
        _ => false,
    },
    default: |_, _| id_of(&POSITIONS, &Position::default()),
};

/// Where across the rig the link is.
pub static SEAT: Choice = Choice {
    id: "seat",
    label: "Where across the rig",
    help: "Seen from the driver’s seat.",
    scope: Scope::Link,
    group: Group::Side,
    options: || SEATS.map(|(_, option)| option).to_vec(),
    get: |document, place| id_of(&SEATS, &document.links.get(place.link)?.seat?),
    set: |document, place, id| {
        let picked = match id {
            None => None,
            Some(id) => match of_id(&SEATS, id) {
                None => return false,
                found => found,
            },
        };
        link_of(document, place).map(|link| link.seat = picked).is_some()
    },
    default: |document, place| {
        let usual = crate::document::Link { seat: None, ..document.links.get(place.link)?.clone() };
        id_of(&SEATS, &usual.seated())
    },
};

/// How the rig is used.
pub static USAGE: Choice = Choice {
    id: "use",
    label: "How it is used",
    help: "Pick the hardest day it will see.",
    scope: Scope::Rig,
    group: Group::First,
    options: usage_options,
    get: |document, _| document.rig.usage.map(|usage: Use| uses::scenario(usage).id),
    set: |document, _, id| {
        let picked = match id {
            None => None,
            Some(id) => match uses::find(id) {
                None => return false,
                found => found.map(|row| row.usage),
            },
        };
        document.rig.usage = picked;
        true
    },
    default: |_, _| None,
};

/// What the bar is made of.
pub static MATERIAL: Choice = Choice {
    id: "metal",
    label: "Metal",
    help: "Strengths are the least the specification promises, for certified stock.",
    scope: Scope::Link,
    group: Group::Bar,
    options: material_options,
    get: |document, place| document.links.get(place.link).and_then(|link| link.material),
    set: |document, place, id| {
        pick_id!(material_options, document, place, id, link_of(document, place).map(|link| &mut link.material))
    },
    default: |_, _| Some(materials::DEFAULT),
};

/// Which table of rod ends the recommendation searches.
pub static FAMILY: Choice = Choice {
    id: "family",
    label: "Rod ends to choose from",
    help: "Shanks of standard rod ends differ in length; measure yours if it is none of these.",
    scope: Scope::Link,
    group: Group::Ends,
    options: family_options,
    get: |document, place| document.links.get(place.link).and_then(|link| link.family),
    set: |document, place, id| {
        pick_id!(family_options, document, place, id, link_of(document, place).map(|link| &mut link.family))
    },
    default: |_, _| Some(rod_ends::Family::ALL[0].id()),
};

/// The rod end at one end.
pub static ROD_END: Choice = Choice {
    id: "rod-end",
    label: "Rod end",
    help: "Bore of the ball and thread of the shank.",
    scope: Scope::End,
    group: Group::Ends,
    options: rod_end_options,
    get: |document, place| {
        document.links.get(place.link).and_then(|link| link.ends.get(place.end)).and_then(|end| end.rod_end)
    },
    set: |document, place, id| {
        pick_id!(rod_end_options, document, place, id, end_of(document, place).map(|end| &mut end.rod_end))
    },
    default: |_, _| None,
};

/// The hand of thread at one end.
pub static HAND: Choice = Choice {
    id: "hand",
    label: "Hand of thread",
    help: "One right-hand and one left-hand end let you set the length by turning the bar.",
    scope: Scope::End,
    group: Group::Ends,
    options: hand_options,
    get: |document, place| {
        let hand = document.links.get(place.link)?.ends.get(place.end)?.hand?;
        id_of(&HANDS, &hand)
    },
    set: |document, place, id| {
        let picked = match id {
            None => None,
            Some(id) => match of_id(&HANDS, id) {
                None => return false,
                found => found,
            },
        };
        match end_of(document, place) {
            Some(end) => {
                end.hand = picked;
                true
            }
            None => false,
        }
    },
    default: |_, place| Some(if place.end == 0 { "rh" } else { "lh" }),
};

/// The shank thread of a rod end the user measured.
pub static OWN_THREAD: Choice = Choice {
    id: "own-thread",
    label: "Shank thread",
    help: "1-12 and 1-14 do not mate, nor do M12 and 1/2: measure the pitch.",
    scope: Scope::End,
    group: Group::Ends,
    options: thread_options,
    get: |document, place| {
        document.links.get(place.link).and_then(|link| link.ends.get(place.end)).and_then(|end| end.own_thread)
    },
    set: |document, place, id| {
        pick_id!(thread_options, document, place, id, end_of(document, place).map(|end| &mut end.own_thread))
    },
    default: |_, _| None,
};

/// The bolt through the eye.
pub static BOLT: Choice = Choice {
    id: "bolt",
    label: "Bolt grade",
    help: "Empty takes Grade 8 for an inch bolt, class 10.9 for a metric one.",
    scope: Scope::Link,
    group: Group::Bracket,
    options: bolt_options,
    get: |document, place| document.links.get(place.link).and_then(|link| link.bolt),
    set: |document, place, id| {
        pick_id!(bolt_options, document, place, id, link_of(document, place).map(|link| &mut link.bolt))
    },
    default: |document, place| Some(bolts::default_grade(bracket::bolt_system(document, place)).id),
};

/// Every choice, in the order of the form.
pub static CHOICES: &[&Choice] = &[
    &ROLE,
    &USAGE,
    &POSITION,
    &SEAT,
    &MATERIAL,
    &HARDENED_AFTER_WELDING,
    &STOCK,
    &FAMILY,
    &ROD_END,
    &SHANK_STEEL,
    &HAND,
    &TUBE_END,
    &ROSETTE_WELDS,
    &OWN_THREAD,
    &BOLT,
    &BOLT_SERIES,
    &SPACER_KIND,
    &TRACK_BAR,
    &STEERING_BOX,
    &TIE_ROD_SIDE,
    &SWAY_MEASURED,
    &FINISH,
    &SUPPLIED_BY,
    &MEASURED_ON,
];
