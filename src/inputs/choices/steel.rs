//! The rows that say what steel a part is of.

use super::{Choice, Option, end_of, id_of, link_of, of_id};
use crate::document::ShankSteel;
use crate::inputs::{Group, Scope, numbers};

const SHANK_STEELS: [(ShankSteel, Option); 2] = [
    (
        ShankSteel::Alloy,
        Option { id: "alloy", label: "Heat-treated alloy", help: "Stamped on it, or on its maker's sheet." },
    ),
    (
        ShankSteel::NotKnown,
        Option { id: "not-known", label: "Not known", help: "Counts as low-carbon steel until you know better." },
    ),
];

/// What a rod end's shank is made of.
pub static SHANK_STEEL: Choice = Choice {
    id: "shank-steel",
    label: "Steel of the shank",
    help: "Heat-treated alloy, or not known? It affects the strength of the shank more than its size does.",
    scope: Scope::End,
    group: Group::Ends,
    options: || SHANK_STEELS.map(|(_, option)| option).to_vec(),
    get: |document, place| {
        let steel = document.links.get(place.link)?.ends.get(place.end)?.shank_steel?;
        id_of(&SHANK_STEELS, &steel)
    },
    set: |document, place, id| {
        let picked = match id {
            None => None,
            Some(id) => match of_id(&SHANK_STEELS, id) {
                None => return false,
                found => found,
            },
        };
        end_of(document, place).map(|end| end.shank_steel = picked).is_some()
    },
    default: |document, place| id_of(&SHANK_STEELS, &numbers::shank_steel(document, place)),
};

/// Whether a hardened tube is hardened again after welding.
pub static HARDENED_AFTER_WELDING: Choice = Choice {
    id: "hardened-after-welding",
    label: "Heat-treated after welding",
    help: "Welding takes the hardness from a hardened tube beside its inserts, unless the finished link is heat-treated.",
    scope: Scope::Link,
    group: Group::Bar,
    options: || {
        vec![
            Option { id: "no", label: "No, or not known", help: "Beside the weld it counts as normalized." },
            Option { id: "yes", label: "Yes, the finished link", help: "It keeps its strength to the ends." },
        ]
    },
    get: |document, place| document.links.get(place.link)?.hardened_after_welding.then_some("yes"),
    set: |document, place, id| match (id.unwrap_or("no"), link_of(document, place)) {
        ("yes", Some(link)) => {
            link.hardened_after_welding = true;
            true
        }
        ("no", Some(link)) => {
            link.hardened_after_welding = false;
            true
        }
        _ => false,
    },
    default: |_, _| Some("no"),
};
