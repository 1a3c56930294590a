//! Fitting the link, step by step, with ticks that stay.

use super::open_sections::FITTING;
use super::section::Section;
use crate::app::sending::Steps;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::checklist;

/// The section.
#[component]
pub(super) fn FittingList() -> impl IntoView {
    let session = use_session();
    let steps = Memo::new(move |_| {
        session.answer_below.get().map(|answer| checklist::steps(&answer, session.units.get())).unwrap_or_default()
    });
    let essentials = move || steps.with(|steps| session.ticks.with(|ticks| checklist::summary(steps, ticks)));

    view! {
        <Section id=FITTING class="fitting" title=checklist::TITLE essentials=Signal::derive(essentials)>
            <p class="on-screen">{checklist::TICKS}</p>
            {move || view! { <Steps steps=steps.get() /> }}
            <button type="button" class="quiet" on:click=move |_| session.ticks.set(Vec::new())>
                "Clear the ticks"
            </button>
        </Section>
    }
}
