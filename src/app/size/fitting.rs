//! What leads to fitting the link: its essential readings, and the way to the steps.

use super::open_sections::FITTING;
use super::section::Section;
use crate::app::session::{View, use_session};
use leptos::prelude::*;
use linkwright::present::checklist;

/// The section.
#[component]
pub(super) fn FittingList() -> impl IntoView {
    let session = use_session();
    let told = Memo::new(move |_| {
        let answer = session.answer_below.get()?;
        let (at, system) = (session.link.get(), session.units.get());
        Some(session.document.with(|document| {
            (checklist::summary(document, at, &answer), checklist::essentials(document, at, &answer, system))
        }))
    });
    let summary = move || told.get().map(|(summary, _)| summary).unwrap_or_default();
    let lines = move || told.get().map(|(_, lines)| lines).unwrap_or_default();
    let line = |words| view! { <li>{words}</li> };

    view! {
        <Section id=FITTING class="fitting" title=checklist::TITLE essentials=Signal::derive(summary)>
            <ul class="lines">{move || lines().into_iter().map(line).collect_view()}</ul>
            <button type="button" id="to-fit" class="on-screen" on:click=move |_| session.open_view(View::Fit)>
                "Fit it, step by step"
            </button>
        </Section>
    }
}
