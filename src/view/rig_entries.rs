//! What is entered about the rig as a whole: its name, its weight and use, and each axle.

use super::field::{NumberField, RadioField};
use super::state::Bench;
use leptos::prelude::*;
use linkwright::document::{LONGEST_NAME, tidy_name};
use linkwright::inputs::{self, NUMBERS, Place, Scope};

/// The entries of the whole rig.
pub(super) fn rig_entries(bench: Bench) -> AnyView {
    let whole = [&inputs::TIRE, &inputs::FRONT_SHARE, &inputs::TRACK, &inputs::WHEELBASE];
    view! {
        <form class="first" on:submit=move |event| event.prevent_default()>
            {name(bench)}
            <NumberField input=&inputs::WEIGHT place=Place::default()/>
            <RadioField choice=&inputs::USAGE place=Place::default()/>
            <h3 class="more-title">"Change a default"</h3>
            <details class="group">
                <summary><b>"Rig"</b>" "<small>"Tires, weight on each axle, track, wheelbase"</small></summary>
                <div class="fields">
                    {whole.map(|input| view! { <NumberField input=input place=Place::default()/> }).collect_view()}
                </div>
            </details>
            {axle(0, "Front axle")}
            {axle(1, "Rear axle")}
        </form>
    }
    .into_any()
}

/// Everything that an axle has of its own.
fn axle(axle: usize, title: &'static str) -> AnyView {
    let numbers = NUMBERS.iter().filter(|input| input.scope == Scope::Axle);
    view! {
        <details class="group">
            <summary><b>{title}</b>" "<small>"Weight, mount heights, travel"</small></summary>
            <div class="fields">
                {numbers.map(|&input| view! { <NumberField input=input place=Place::of_axle(axle)/> }).collect_view()}
            </div>
        </details>
    }
    .into_any()
}

/// The name of the rig.
pub(super) fn name(bench: Bench) -> AnyView {
    let named = move || bench.document.with(|document| document.name.clone());
    let take = move |event: leptos::ev::Event| {
        let tidy = tidy_name(&event_target_value(&event));
        bench.document.update(|document| document.name = tidy);
    };
    view! {
        <div class="field">
            <label for="in-name">"Name of this rig"</label>
            <div class="entry words">
                <input id="in-name" type="text" autocomplete="off" maxlength=LONGEST_NAME.to_string() enterkeyhint="done"
                    prop:value=named on:change=take aria-describedby="help-name"/>
            </div>
            <p class="help" id="help-name">"Optional. It goes along in the link you send."</p>
        </div>
    }
    .into_any()
}
