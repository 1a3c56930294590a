//! Choices that decide what pushes on a link: track bar, steering box, tie rod, sway bar.

use std::option::Option as Maybe;

use super::super::{At, Group, Scope, WEIGHT};
use super::{Choice, Option, id_of, of_id};
use crate::document::{Document, Position, Role, SteeringBox, SwayMeasured, TieRodSide, TrackBar};
use crate::quantity;
use crate::quantity::lbf;

/// A rig lighter than this is taken to steer with a rack or without assist.
const RACK_UNDER: f64 = lbf(2500.0);

const TRACK_BARS: [(TrackBar, Option); 3] = [
    (TrackBar::Fitted, Option { id: "yes", label: "Yes", help: "It holds the axle sideways." }),
    (TrackBar::Absent, Option { id: "no", label: "No", help: "The upper links converge and hold the axle sideways." }),
    (TrackBar::Unknown, Option { id: "unknown", label: "Not known", help: "Taken as none." }),
];

const STEERING_BOXES: [(SteeringBox, Option); 2] = [
    (
        SteeringBox::Power,
        Option { id: "power", label: "Power steering box", help: "About 20,000 lbf·in over a 6 in pitman arm." },
    ),
    (
        SteeringBox::Unassisted,
        Option { id: "rack", label: "Rack, or no power steering", help: "About 1,500 lbf on the link." },
    ),
];

const TIE_ROD_SIDES: [(TieRodSide, Option); 2] = [
    (TieRodSide::Ahead, Option { id: "ahead", label: "Ahead of the axle", help: "Rocks reach it first." }),
    (TieRodSide::Behind, Option { id: "behind", label: "Behind the axle", help: "The axle shields it." }),
];

const SWAY_MEASURES: [(SwayMeasured, Option); 2] = [
    (
        SwayMeasured::BothArms,
        Option {
            id: "both",
            label: "Both arms moved, opposite ways",
            help: "Force at one arm over the travel of that arm.",
        },
    ),
    (
        SwayMeasured::OneArm,
        Option {
            id: "one",
            label: "One arm moved, the other held",
            help: "As most rates are printed. Both arms moving twist the bar twice as far.",
        },
    ),
];

/// Reads and writes a field that holds one of a few values.
macro_rules! field {
    ($pairs:ident, $field:ident, |$document:ident, $place:ident| $owner:expr, $owner_mut:expr) => {
        (
            |$document: &Document, $place: At| id_of(&$pairs, &$owner?.$field?),
            |$document: &mut Document, $place: At, id: Maybe<&str>| {
                let picked = id.map(|id| of_id(&$pairs, id));
                match ($owner_mut, picked) {
                    (Some(owner), None) => owner.$field = None,
                    (Some(owner), Some(Some(value))) => owner.$field = Some(value),
                    _ => return false,
                }
                true
            },
        )
    };
}

type Access = (fn(&Document, At) -> Maybe<&'static str>, fn(&mut Document, At, Maybe<&str>) -> bool);

const OF_TRACK_BAR: Access = field!(
    TRACK_BARS,
    track_bar,
    |document, place| document.rig.axles.get(place.axle),
    document.rig.axles.get_mut(place.axle)
);
const OF_STEERING_BOX: Access =
    field!(STEERING_BOXES, steering_box, |document, _place| Some(&document.rig), Some(&mut document.rig));
const OF_TIE_ROD_SIDE: Access = field!(
    TIE_ROD_SIDES,
    tie_rod_side,
    |document, place| document.links.get(place.link),
    document.links.get_mut(place.link)
);
const OF_SWAY_MEASURED: Access =
    field!(SWAY_MEASURES, sway_measured, |document, _place| Some(&document.rig), Some(&mut document.rig));

/// Whether the axle has a track bar. Without one its upper links hold it sideways.
pub static TRACK_BAR: Choice = Choice {
    id: "track-bar",
    label: "Track bar on this axle",
    help: "Without one, the converging upper links hold the axle sideways.",
    scope: Scope::Axle,
    group: Group::Loads,
    options: || TRACK_BARS.map(|(_, option)| option).to_vec(),
    get: OF_TRACK_BAR.0,
    set: OF_TRACK_BAR.1,
    default: |document, place| {
        let here = |link: &crate::document::Link| {
            link.role == Role::TrackBar && Position::ALL.get(place.axle) == Some(&link.position)
        };
        let entered = document.links.iter().any(here);
        id_of(&TRACK_BARS, if entered { &TrackBar::Fitted } else { &TrackBar::Unknown })
    },
};

/// What turns the steering.
pub static STEERING_BOX: Choice = Choice {
    id: "steering-box",
    label: "Steering",
    help: "What pushes on the drag link and, with one wheel jammed, on the tie rod.",
    scope: Scope::Rig,
    group: Group::Loads,
    options: || STEERING_BOXES.map(|(_, option)| option).to_vec(),
    get: OF_STEERING_BOX.0,
    set: OF_STEERING_BOX.1,
    default: |document, _| {
        let light = quantity::exceeds(RACK_UNDER, WEIGHT.value(document, At::default())?);
        id_of(&STEERING_BOXES, if light { &SteeringBox::Unassisted } else { &SteeringBox::Power })
    },
};

/// On which side of the axle the tie rod runs.
pub static TIE_ROD_SIDE: Choice = Choice {
    id: "tie-rod-place",
    label: "Tie rod ahead of or behind the axle",
    help: "Ahead of the axle it takes more hits.",
    scope: Scope::Link,
    group: Group::Loads,
    options: || TIE_ROD_SIDES.map(|(_, option)| option).to_vec(),
    get: OF_TIE_ROD_SIDE.0,
    set: OF_TIE_ROD_SIDE.1,
    default: |_, _| id_of(&TIE_ROD_SIDES, &TieRodSide::Behind),
};

/// How the sway bar's rate was measured.
pub static SWAY_MEASURED: Choice = Choice {
    id: "sway-measured",
    label: "How the sway bar rate was measured",
    help: "The two differ by a factor of 2.",
    scope: Scope::Rig,
    group: Group::Loads,
    options: || SWAY_MEASURES.map(|(_, option)| option).to_vec(),
    get: OF_SWAY_MEASURED.0,
    set: OF_SWAY_MEASURED.1,
    default: |_, _| id_of(&SWAY_MEASURES, &SwayMeasured::BothArms),
};
