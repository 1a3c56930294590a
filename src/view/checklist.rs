//! Fitting, step by step, with ticks that stay.

use super::state::{Bench, toggle};
use leptos::prelude::*;
use linkwright::engine::formula::{Said, spoken};
use linkwright::quantity::System;
use linkwright::report::Answer;

/// The steps in the order of the work.
pub(super) fn checklist(bench: Bench, answer: &Answer) -> AnyView {
    view! {
        <section class="part-of fitting">
            <h3>"Fitting it"</h3>
            <p>"Ticks stay on this device. A tick clears when its numbers change."</p>
            <ol class="steps">{answer.checklist.iter().map(|said| step(bench, said)).collect_view()}</ol>
            <button type="button" class="quiet" on:click=move |_| bench.ticks.set(Vec::new())>"Clear the ticks"</button>
        </section>
    }
    .into_any()
}

fn step(bench: Bench, said: &Said) -> AnyView {
    // A tick belongs to a sentence with its numbers, whatever units it is read in.
    let key = spoken(said, System::Inch);
    let ticked = {
        let key = key.clone();
        move || bench.ticks.with(|ticks| ticks.contains(&key))
    };
    let tap = move |_| toggle(bench.ticks, key.clone());
    view! { <li><label><input type="checkbox" prop:checked=ticked on:change=tap/><span>{bench.say(said)}</span></label></li> }.into_any()
}
