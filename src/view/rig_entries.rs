//! What is entered about the rig as a whole: its name, its weight and use, and each axle.

use super::field::{choice, number, radios};
use super::moments::after;
use super::more::folded;
use super::state::{Bench, Leaf};
use super::storage;
use super::tag::{Piece, nothing, tag};
use leptos::prelude::*;
use linkwright::document::{LONGEST_NAME, tidy_name};
use linkwright::inputs::{self, At, CHOICES, NUMBERS, Scope};
use std::time::Duration;

/// The entries of the whole rig.
pub(super) fn rig_entries(bench: Bench) -> Piece {
    let whole = move || {
        let whole = [&inputs::TIRE, &inputs::FRONT_SHARE, &inputs::TRACK, &inputs::WHEELBASE];
        whole.map(|input| number(bench, input, At::default())).into()
    };
    tag("form class=first")
        .on("submit", |event| event.prevent_default())
        .with(name(bench))
        .with(number(bench, &inputs::WEIGHT, At::default()))
        .with(radios(bench, &inputs::USAGE, At::default()))
        .with(tag("h3 class=more-title").with("Change a default"))
        .with(folded("Rig", "Tires, weight on each axle, track, wheelbase", nothing(), whole))
        .with(axle(bench, 0, "Front axle"))
        .with(axle(bench, 1, "Rear axle"))
}

/// Everything that an axle has of its own.
fn axle(bench: Bench, axle: usize, title: &str) -> Piece {
    let numbers = move || {
        let place = At::of_axle(axle);
        let choices = CHOICES.iter().filter(|row| row.scope == Scope::Axle).map(|row| choice(bench, row, place));
        let numbers = NUMBERS.iter().filter(|input| input.scope == Scope::Axle);
        choices.chain(numbers.map(|input| number(bench, input, place))).collect()
    };
    folded(title, "Weight, mount heights, travel, track bar", nothing(), numbers)
}

/// The name of the rig.
pub(super) fn name(bench: Bench) -> Piece {
    let take = move |event: leptos::ev::Event| {
        let tidy = tidy_name(&event_target_value(&event));
        bench.document.update(|document| document.name = tidy);
    };
    let entry = tag("input id=in-name type=text autocomplete=off enterkeyhint=done aria-describedby=help-name")
        .set("maxlength", &LONGEST_NAME.to_string())
        .value(move || bench.document.with(|document| document.name.clone()))
        .on("change", take)
        .on("keydown", move |event| {
            // Whoever confirms the name where builds are saved wants it saved.
            if storage::is_enter(&event) && bench.leaf.get_untracked() == Leaf::Saved {
                take(event);
                // The button may wake only with the name.
                after(Duration::from_millis(30), || storage::press("save"));
            }
        });
    tag("div class=field")
        .with(tag("label for=in-name").with("Name of this rig"))
        .with(tag("div class='entry words'").with(entry))
        .with(tag("p class=help id=help-name").with("Optional. It goes along in the link you send."))
}
