//! The two ends: what is bought and set at each, drawn, and how much thread is enough.

use super::open_sections::ENDS;
use super::section::Section;
use crate::app::drawings::DrawingView;
use crate::app::sending::SizeRows;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::drawing::{bracket, end};
use linkwright::present::ends::{self, End, Ends, Reached};
use linkwright::report::Answer;

/// The section.
#[component]
pub(super) fn TheTwoEnds(
    /// Every size of both ends.
    ends: Memo<Option<Ends>>,
) -> impl IntoView {
    let essentials = move || ends.with(|ends| ends.as_ref().map(|ends| ends.summary.clone()).unwrap_or_default());

    view! {
        <Section id=ENDS class="ends-part" title=ends::TITLE essentials=Signal::derive(essentials)>
            <div class="ends">{[0, 1].map(|index| view! { <OneEnd index ends /> }).collect_view()}</div>
        </Section>
    }
}

/// One end with its drawing, its sizes and its scale of engagement. Its elements stay while the sizes change.
#[component]
fn OneEnd(
    /// Which one: A is 0, B is 1.
    index: usize,
    /// Every size of both ends.
    ends: Memo<Option<Ends>>,
) -> impl IntoView {
    let session = use_session();
    let end = Memo::new(move |_| ends.with(|ends| ends.as_ref()?.ends.get(index).cloned()).unwrap_or_default());
    let rows = Signal::derive(move || end.read().set.clone());
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
            <h4>{move || end.read().title.clone()}</h4>
            <figure class="drawing"><DrawingView drawing /></figure>
            <Show when=move || !bracket.read().is_empty()>
                <figure class="drawing"><DrawingView drawing=bracket /></figure>
            </Show>
            <SizeRows rows />
            <h5>"How much thread is enough"</h5>
            <ol class="scale">
                <For each=move || 0..end.read().scale.len() key=|at| *at let(at)>
                    <MarkRow end at />
                </For>
            </ol>
        </article>
    }
}

/// A length of thread on the scale.
#[component]
fn MarkRow(
    /// The end.
    end: Memo<End>,
    /// Which of its lengths.
    at: usize,
) -> impl IntoView {
    let mark = Memo::new(move |_| end.with(|end| end.scale.get(at).cloned()).unwrap_or_default());
    let is = move |reached| mark.read().reached == reached;

    view! {
        <li class:as-set=move || is(Reached::AsSet) class:missed=move || is(Reached::No)>
            <b>{move || mark.read().length.clone()}</b>
            <div>
                <span>{move || mark.read().name.clone()}</span>
                <Show when=move || !is(Reached::AsSet)>
                    ", "
                    <em>{move || mark.read().reached.word()}</em>
                    <small>{move || mark.read().source.clone()}</small>
                </Show>
            </div>
        </li>
    }
}
