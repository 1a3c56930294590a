//! The steps of fitting a link, each with a tick that stays on this device.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::checklist::Step;

/// The steps in the order of the work.
#[component]
pub(crate) fn Steps(
    /// The steps.
    steps: Vec<Step>,
) -> impl IntoView {
    let row = |(index, step)| view! { <StepRow index step /> };
    view! { <ol class="steps">{steps.into_iter().enumerate().map(row).collect_view()}</ol> }
}

/// One step and its tick.
#[component]
fn StepRow(
    /// Its place in the list.
    index: usize,
    /// The step.
    step: Step,
) -> impl IntoView {
    let session = use_session();
    let Step { key, words } = step;
    let (own, ticked) = (key.clone(), move || session.ticks.read().contains(&key));
    let on_change = move |_| {
        session.ticks.update(|ticks| match ticks.iter().position(|tick| *tick == own) {
            Some(at) => drop(ticks.remove(at)),
            None => ticks.push(own.clone()),
        });
    };

    view! {
        <li>
            <label>
                <input type="checkbox" data-step=index.to_string() prop:checked=ticked on:change=on_change />
                <span>{words}</span>
            </label>
        </li>
    }
}
