//! The rows that say what is welded into the ends of a tube, and how.

use super::{Choice, Option, end_of, known, link_of};
use crate::engine::tables::inserts;
use crate::inputs::{Group, Scope};

fn insert_options() -> Vec<Option> {
    inserts::ALL.iter().map(|row| Option { id: row.id, label: row.label, help: row.note }).collect()
}

/// What is welded into the tube at an end.
pub static TUBE_END: Choice = Choice {
    id: "tube-end",
    label: "Welded into the tube",
    help: "A plain insert sits inside the tube; the flange of a shouldered bung sits on its face.",
    scope: Scope::End,
    group: Group::Ends,
    options: insert_options,
    get: |document, place| document.links.get(place.link)?.ends.get(place.end)?.insert,
    // The plain one said is the plain one taken, so that the same is made of both.
    set: |document, place, id| {
        let id = id.filter(|id| *id != inserts::default_row().id);
        pick_id!(insert_options, document, place, id, end_of(document, place).map(|end| &mut end.insert))
    },
    default: |_, _| Some(inserts::default_row().id),
};

/// Whether the inserts are held by rosette welds too.
pub static ROSETTE_WELDS: Choice = Choice {
    id: "rosette-welds",
    label: "Rosette (plug) welds",
    help: "Holes through the tube over each insert, welded full. The answer counts neither what the holes take nor what the welds hold.",
    scope: Scope::Link,
    group: Group::Ends,
    options: || {
        vec![
            Option { id: "no", label: "No, only around the end", help: "" },
            Option { id: "yes", label: "Yes, four at each end", help: "Drilled through the tube's wall alone." },
        ]
    },
    get: |document, place| document.links.get(place.link)?.rosette_welds.then_some("yes"),
    set: |document, place, id| match (id.unwrap_or("no"), link_of(document, place)) {
        (picked @ ("yes" | "no"), Some(link)) => {
            link.rosette_welds = picked == "yes";
            true
        }
        _ => false,
    },
    default: |_, _| Some("no"),
};
