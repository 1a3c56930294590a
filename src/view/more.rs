//! Every other entry, by group: built from the tables of inputs, so that none can be forgotten.

use super::changing::Changing;
use super::field::{choice, number};
use super::known::Known;
use super::state::Bench;
use super::tag::{Piece, live, nothing, several, tag, words as told};
use super::words;
use linkwright::document::{Document, OWN_ROD_END, Role};
use linkwright::engine::tables::materials::{self, Form, Material};
use linkwright::inputs::{At, CHOICES, Group, MATERIAL, NUMBERS, ROD_END, SPACER, Scope};

/// The groups in the order of the form, each with its name and what it is about.
const GROUPS: [(Group, &str, &str); 7] = [
    (Group::Side, "Place on the rig", "Axle, side, how many"),
    (Group::Bar, "Bar", "Metal and size"),
    (Group::Ends, "Rod ends", "Series, hand, thread, your own"),
    (Group::Bracket, "Bracket", "Bolt, ears, spacers"),
    (Group::Loads, "Loads", "Tires, grip, shock, strikes"),
    (Group::Factors, "Factors", "Safety factors"),
    (Group::Shop, "Shop", "Rounding, facing, wrench flats"),
];

/// The groups, each folded away until it is wanted.
pub(super) fn more(bench: Bench, place: At) -> Piece {
    let groups = GROUPS.into_iter().map(|(group, name, about)| {
        let changed = told(move || changed_words(bench, group, place));
        folded(name, about, tag("em").with(changed), move || inside(bench, group, place))
    });
    several().with(tag("h3 class=more-title").with("Change a default")).with(groups.collect::<Vec<_>>())
}

/// A fold of the form: what it is called, what it is about, and its entries, which are made when it first opens:
/// sixty fields would otherwise follow every key that is pressed in another.
pub(super) fn folded(name: &str, about: &str, beside: Piece, inside: impl Fn() -> Vec<Piece> + 'static) -> Piece {
    let opened = Changing::new(false);
    let inside = live(move || if opened.get() { several().with(inside()) } else { nothing() });
    let summary = tag("summary").with(tag("b").with(name)).with(" ").with(tag("small").with(about)).with(beside);
    tag("details class=group").first_opened(opened).with(summary).with(tag("div class=fields").with(inside))
}

fn inside(bench: Bench, group: Group, place: At) -> Vec<Piece> {
    let mut list = fields(bench, group, false, place);
    let of_ends = NUMBERS.iter().any(|row| row.group == group && row.scope == Scope::End);
    if of_ends {
        list.extend([0, 1].map(|end| {
            let legend = tag("legend").with("End ").with(words::letter(end));
            let fields = fields(bench, group, true, At { end, ..place });
            tag("fieldset class=end").with(legend).with(fields)
        }));
    }
    list
}

/// The choices and numbers of a group that belong to an end, or that do not.
fn fields(bench: Bench, group: Group, of_end: bool, place: At) -> Vec<Piece> {
    let mut list = Vec::new();
    for row in CHOICES.iter().filter(|row| row.group == group && (row.scope == Scope::End) == of_end) {
        list.push(shown_if(bench, row.id, place, move || choice(bench, row, place)));
    }
    for row in NUMBERS.iter().filter(|row| row.group == group && (row.scope == Scope::End) == of_end) {
        list.push(shown_if(bench, row.id, place, move || number(bench, row, place)));
    }
    list
}

/// When an entry can matter that only some links have; `None` for one that always may.
pub(super) fn matters(id: &str) -> Option<fn(&Document, At) -> bool> {
    Some(match id {
        "wall" | "insert-shear" => is_tube,
        "stock" => |document, place| !is_tube(document, place),
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

/// An entry that only some links have appears when it can matter.
fn shown_if(bench: Bench, id: &'static str, place: At, field: impl Fn() -> Piece + 'static) -> Piece {
    // Only the picture of the whole rig rests on it.
    if id == "wheelbase" {
        return nothing();
    }
    let Some(applies) = matters(id) else { return field() };
    let shows = Known::new(move || bench.document.with(|document| applies(document, place)));
    live(move || if shows.get() { field() } else { nothing() })
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

fn is_tube(document: &Document, place: At) -> bool {
    MATERIAL.value(document, place).and_then(materials::find).is_some_and(|material| material.form == Form::Tube)
}

/// How many entries of a group the reader changed.
fn changed_words(bench: Bench, group: Group, place: At) -> String {
    let count = bench.document.with(|document| {
        let at = |scope: Scope| {
            if scope == Scope::End { vec![At { end: 0, ..place }, At { end: 1, ..place }] } else { vec![place] }
        };
        let numbers = NUMBERS.iter().filter(|input| input.group == group);
        let numbers = numbers
            .flat_map(|input| at(input.scope).into_iter().filter(|place| (input.get)(document, *place).is_some()))
            .count();
        let choices = CHOICES.iter().filter(|choice| choice.group == group);
        numbers
            + choices
                .flat_map(|choice| {
                    at(choice.scope).into_iter().filter(|place| (choice.get)(document, *place).is_some())
                })
                .count()
    });
    match count {
        0 => String::new(),
        count => format!(" {count} changed"),
    }
}
