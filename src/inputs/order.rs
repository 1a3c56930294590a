//! The choices of an order: finish, who brings the rod ends, and what was measured.

use super::choices::{Choice, Option, end_of, id_of, link_of, of_id};
use super::{Group, Scope};
use crate::document::{Finish, MeasuredOn, SuppliedBy};

const FINISHES: [(Finish, Option); 3] = [
    (Finish::AsTurned, Option { id: "as-turned", label: "As turned", help: "" }),
    (Finish::Polished, Option { id: "polished", label: "Polished", help: "Polish before tapping, or plug the holes." }),
    (
        Finish::Anodized,
        Option {
            id: "anodized",
            label: "Anodized",
            help: "Half of a hard coat grows outward and moves the pitch diameter by four times that (common practice, no source): plug the holes, or tap oversize.",
        },
    ),
];

const SUPPLIERS: [(SuppliedBy, Option); 3] = [
    (SuppliedBy::Shop, Option { id: "shop", label: "Ours", help: "From the shop, so its sizes are known." }),
    (
        SuppliedBy::Customer,
        Option { id: "customer", label: "The customer’s", help: "Measure eye center to shank end, thread and hand." },
    ),
    (SuppliedBy::NotKnown, Option { id: "not-known", label: "Not known yet", help: "The bar cannot be sawn yet." }),
];

const MEASURED: [(MeasuredOn, Option); 3] = [
    (MeasuredOn::Rig, Option { id: "rig", label: "On the rig, at ride height", help: "Hole center to hole center." }),
    (
        MeasuredOn::OldLink,
        Option { id: "old-link", label: "On the old link", help: "Eye center to eye center, as it was set." },
    ),
    (MeasuredOn::NotKnown, Option { id: "not-known", label: "Not known yet", help: "Ask before the bar is sawn." }),
];

/// How the bar is finished.
pub static FINISH: Choice = Choice {
    id: "finish",
    label: "Finish",
    help: "Anodizing and plating grow the threads.",
    scope: Scope::Link,
    group: Group::Order,
    options: || FINISHES.map(|(_, option)| option).to_vec(),
    get: |document, place| id_of(&FINISHES, &document.links.get(place.link)?.finish?),
    set: |document, place, id| match (picked(&FINISHES, id), link_of(document, place)) {
        (Some(finish), Some(link)) => {
            link.finish = finish;
            true
        }
        _ => false,
    },
    default: |_, _| id_of(&FINISHES, &Finish::default()),
};

/// Who brings the rod end.
pub static SUPPLIED_BY: Choice = Choice {
    id: "supplied-by",
    label: "Whose rod end",
    help: "Rod ends of one size differ in length: a customer’s own must be measured.",
    scope: Scope::End,
    group: Group::Order,
    options: || SUPPLIERS.map(|(_, option)| option).to_vec(),
    get: |document, place| id_of(&SUPPLIERS, &document.links.get(place.link)?.ends.get(place.end)?.supplied_by?),
    set: |document, place, id| match (picked(&SUPPLIERS, id), end_of(document, place)) {
        (Some(supplied_by), Some(end)) => {
            end.supplied_by = supplied_by;
            true
        }
        _ => false,
    },
    default: |_, _| None,
};

/// What the length was measured on.
pub static MEASURED_ON: Choice = Choice {
    id: "measured-on",
    label: "How it was measured",
    help: "Mount to mount, eye to eye and bar length are three different lengths.",
    scope: Scope::Link,
    group: Group::Order,
    options: || MEASURED.map(|(_, option)| option).to_vec(),
    get: |document, place| id_of(&MEASURED, &document.links.get(place.link)?.measured_on?),
    set: |document, place, id| match (picked(&MEASURED, id), link_of(document, place)) {
        (Some(measured_on), Some(link)) => {
            link.measured_on = measured_on;
            true
        }
        _ => false,
    },
    default: |_, _| None,
};

/// What an id stands for; nothing picked where there is none. None for an id that is not known.
fn picked<T: Copy>(
    pairs: &[(T, Option)],
    id: std::option::Option<&str>,
) -> std::option::Option<std::option::Option<T>> {
    match id {
        None => Some(None),
        Some(id) => of_id(pairs, id).map(Some),
    }
}
