//! The two ends: what is bought and set at each, drawn, and how much thread is enough.

use super::open_sections::ENDS;
use super::section::Section;
use crate::app::drawings::DrawingView;
use crate::app::sending::SizeRows;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::drawing::{bracket, end};
use linkwright::present::ends::{self, End, Ends, Mark, Reached};
use linkwright::report::Answer;

/// The section.
#[component]
pub(super) fn TheTwoEnds(
    /// Every size of both ends.
    ends: Memo<Option<Ends>>,
) -> impl IntoView {
    let essentials = move || ends.with(|ends| ends.as_ref().map(|ends| ends.summary.clone()).unwrap_or_default());
    let both = move || {
        ends.get().map(|ends| {
            let end = |(index, end)| view! { <OneEnd index end /> };
            ends.ends.into_iter().enumerate().map(end).collect_view()
        })
    };

    view! {
        <Section id=ENDS class="ends-part" title=ends::TITLE essentials=Signal::derive(essentials)>
            <div class="ends">{both}</div>
        </Section>
    }
}

/// One end with its drawing, its sizes and its scale of engagement.
#[component]
fn OneEnd(
    /// Which one: A is 0, B is 1.
    index: usize,
    /// Its sizes.
    end: End,
) -> impl IntoView {
    let session = use_session();
    let drawing = Memo::new(move |_| {
        let drawing = |answer: &Answer| end::end(&answer.link, index, session.layout(), session.units.get());
        session.answer_below.get().as_deref().map(drawing).unwrap_or_default()
    });
    let bracket = Memo::new(move |_| {
        let (link, layout, system) = (session.link.get(), session.layout(), session.units.get());
        let bracket = |answer: &Answer| {
            session.document.with(|document| bracket::bracket(document, link, answer, index, layout, system))
        };
        session.answer_below.get().as_deref().and_then(bracket).unwrap_or_default()
    });

    view! {
        <article class="end-of">
            <h4>{end.title}</h4>
            <figure class="drawing"><DrawingView drawing /></figure>
            <Show when=move || !bracket.read().is_empty()>
                <figure class="drawing"><DrawingView drawing=bracket /></figure>
            </Show>
            <SizeRows rows=end.set />
            <h5>"How much thread is enough"</h5>
            <ol class="scale">{end.scale.into_iter().map(|mark| view! { <MarkRow mark /> }).collect_view()}</ol>
        </article>
    }
}

/// A length of thread on the scale.
#[component]
fn MarkRow(
    /// The mark.
    mark: Mark,
) -> impl IntoView {
    let as_set = mark.reached == Reached::AsSet;
    let against = (!as_set).then(|| {
        view! {
            <em>{mark.reached.word()}</em>
            <small>{mark.source}</small>
        }
    });

    view! {
        <li class:as-set=as_set class:missed=mark.reached == Reached::No>
            <b>{mark.length}</b>
            <div><span>{mark.name}{(!as_set).then_some(", ")}</span>{against}</div>
        </li>
    }
}
