//! The fitting checklist; ticks are kept on the device.

use super::state::Bench;
use leptos::prelude::*;
use linkwright::engine::formula::spoken;
use linkwright::quantity::System;
use linkwright::report::Answer;

/// The steps of fitting the link, each with a box to tick.
pub(super) fn checklist(bench: Bench, answer: &Answer) -> AnyView {
    let steps: Vec<_> = answer
        .checklist
        .iter()
        .map(|said| {
            // A tick belongs to the sentence with its numbers: another link starts unticked.
            let key = spoken(said, System::Inch);
            let ticked = {
                let key = key.clone();
                move || bench.ticks.with(|ticks| ticks.contains(&key))
            };
            let toggle = move |_| {
                bench.ticks.update(|ticks| {
                    if ticks.contains(&key) {
                        ticks.retain(|other| *other != key);
                    } else {
                        ticks.push(key.clone());
                    }
                });
            };
            view! { <li><label><input type="checkbox" prop:checked=ticked on:change=toggle/><span>{bench.say(said)}</span></label></li> }
        })
        .collect();
    view! {
        <h3>"Fitting it"</h3>
        <ol class="checklist">{steps}</ol>
    }
    .into_any()
}
