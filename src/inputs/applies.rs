//! Which inputs matter for which links: the form shows the others not at all.

use super::{At, MATERIAL, ROD_END, SPACER, TUBE_END};
use crate::document::{Document, OWN_ROD_END, Role};
use crate::engine::tables::inserts;
use crate::engine::tables::materials::{self, Form, Material};

/// Whether an input, by its id, can matter at a place of a document.
pub fn applies(id: &str, document: &Document, place: At) -> bool {
    condition(id).is_none_or(|matters| matters(document, place))
}

/// When an input can matter that only some links have; none for one that always may.
fn condition(id: &str) -> Option<fn(&Document, At) -> bool> {
    Some(match id {
        "wall" | "insert-shear" | "tube-end" | "rosette-welds" => is_tube,
        "bung-flange" => |document, place| is_tube(document, place) && has_flange(document, place),
        "stock" | "skim" => |document, place| !is_tube(document, place),
        "hardened-after-welding" => |document, place| {
            let metal = MATERIAL.value(document, place).and_then(materials::find);
            metal.is_some_and(Material::is_hardened_tube)
        },
        "spacer-kind" | "spacer-foot" => |document, place| SPACER.value(document, place).is_some_and(|long| long > 0.0),
        "steering-arm" | "scrub" | "patch" | "box-force" => is_steering,
        // It decides nothing any more; only an old link still brings it.
        "cylinder-rod" => |document, _| document.rig.cylinder_rod.is_some(),
        id if id.starts_with("cylinder") => is_steering,
        "steering-box" => is_steering,
        "tie-rod-place" => |document, place| role(document, place) == Some(Role::TieRod),
        "bar-slope" => |document, place| role(document, place) == Some(Role::TrackBar),
        "bend-offset" => |document, place| {
            matches!(role(document, place), Some(Role::TrackBar | Role::DragLink))
                || document.links.get(place.link).is_some_and(|link| link.bend_offset.is_some())
        },
        "track-bar" => |document, place| role(document, place) == Some(Role::Upper),
        "grip-offset" | "lower-spread" => |document, place| role(document, place) == Some(Role::Lower),
        "sway-rate" | "sway-measured" => |document, place| role(document, place) == Some(Role::SwayLink),
        "count" | "plan-angle" | "uneven" | "lower-height" | "upper-height" | "tire" => {
            |document, place| role(document, place).is_some_and(Role::drives)
        }
        id if id.starts_with("own-") && id != "own-axial" && id != "own-strike" => is_own,
        _ => return None,
    })
}

fn role(document: &Document, place: At) -> Option<Role> {
    document.links.get(place.link).map(|link| link.role)
}

fn is_steering(document: &Document, place: At) -> bool {
    role(document, place).is_some_and(Role::steers)
}

fn is_own(document: &Document, place: At) -> bool {
    ROD_END.value(document, place) == Some(OWN_ROD_END)
}

/// Whether a shouldered bung is welded in at an end of the link.
fn has_flange(document: &Document, place: At) -> bool {
    let kind = |end| TUBE_END.value(document, At { end, ..place }).and_then(inserts::find);
    (0..2).filter_map(kind).any(|kind| kind.has_flange)
}

fn is_tube(document: &Document, place: At) -> bool {
    MATERIAL.value(document, place).and_then(materials::find).is_some_and(|material| material.form == Form::Tube)
}
