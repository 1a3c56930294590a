//! Fitting, step by step, with ticks that stay.

use super::known::Known;
use super::markup::{Markup, element, sentence};
use super::state::{Bench, toggle};
use super::storage;
use super::tag::{Piece, button, tag};
use linkwright::engine::sentence::spoken;
use linkwright::quantity::System;
use linkwright::report::Answer;

/// The steps in the order of the work.
pub(super) fn checklist(bench: Bench) -> Piece {
    let steps = Known::new(move || bench.with_answer(|answer| steps(bench, answer)).unwrap_or_default());
    let tap = move |event: leptos::ev::Event| {
        let index = storage::attribute(&event, "data-step").and_then(|index| index.parse::<usize>().ok());
        let key = index.and_then(|index| {
            bench.with_answer(|answer| answer.checklist.get(index).map(|said| spoken(said, System::Inch))).flatten()
        });
        if let Some(key) = key {
            toggle(bench.ticks, key);
        }
    };
    let clear = move |_: leptos::ev::Event| bench.ticks.set(Vec::new());
    tag("section class='part-of fitting'")
        .with(tag("h3").with("Fitting it"))
        .with(tag("p").with("Ticks stay on this device. A tick clears when its numbers change."))
        .with(tag("ol class=steps").on("change", tap).markup(move || steps.get()))
        .with(button("button type=button class=quiet", "Clear the ticks", clear))
}

/// The steps as markup.
pub(super) fn steps(bench: Bench, answer: &Answer) -> Markup {
    let ticks = bench.ticks.get();
    answer
        .checklist
        .iter()
        .enumerate()
        .map(|(index, step)| {
            // A tick belongs to a sentence with its numbers, whatever units it is read in.
            let ticked = !ticks.is_empty() && ticks.contains(&spoken(step, System::Inch));
            let ticked = if ticked { " checked" } else { "" };
            let tick = Markup::drawn(format!("<input type=\"checkbox\" data-step=\"{index}\"{ticked}>"));
            element("li", element("label", tick + sentence("span", &bench.say(step))))
        })
        .collect()
}
