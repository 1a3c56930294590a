//! How to measure on a rig, with drawings.

use super::own_rod_end::EnterOwnRodEnds;
use super::reading::ReadingField;
use super::state::use_fitting;
use crate::app::drawings::DrawingView;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::drawing::{Drawing, Layout, bracket, guide as drawn};
use linkwright::present::fit::guide::{Judged, Readings, TITLE, Topic, judged};

/// The guide, folded.
#[component]
pub(super) fn Guide() -> impl IntoView {
    let topics = || Topic::ALL.map(|topic| view! { <TopicFold topic /> }).into_iter().collect_view();
    view! {
        <section class="guide">
            <h3>{TITLE}</h3>
            {topics()}
        </section>
    }
}

/// Before there is a link: how to measure, without fields, for nothing would be judged.
#[component]
pub(super) fn GuideWithoutLink() -> impl IntoView {
    let topic = |topic: Topic| {
        view! {
            <Fold summary=topic.title().to_string() id=topic.id()>
                <ul class="fit-lines">{topic.how().iter().map(|words| view! { <li>{*words}</li> }).collect_view()}</ul>
                <Pictures topic />
            </Fold>
        }
    };
    view! {
        <section class="guide">
            <h3>{TITLE}</h3>
            {Topic::ALL.map(topic).into_iter().collect_view()}
        </section>
    }
}

/// One thing to measure: how, what was read, and what that makes it.
#[component]
pub(super) fn TopicFold(
    /// Which.
    topic: Topic,
) -> impl IntoView {
    view! { <Fold summary=topic.title().to_string() id=topic.id()><TopicInside topic /></Fold> }
}

#[component]
fn TopicInside(topic: Topic) -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let found = Memo::new(move |_| {
        let (number, picked) = (|id: &str| fitting.number(id), |id: &str| fitting.picked(id));
        let readings = Readings { number: &number, picked: &picked };
        let (index, system) = (session.link.get(), session.units.get());
        let judge =
            |answer: &_| session.document.with(|document| judged(topic, &readings, document, index, answer, system));
        session.answer.with(|answer| answer.as_deref().and_then(judge)).unwrap_or_default()
    });
    let working = Memo::new(move |_| {
        found.with(|found| found.iter().flat_map(|judged| judged.working.clone()).collect::<Vec<_>>())
    });
    let fields = topic.readings().iter().map(|of| view! { <ReadingField of=*of /> }).collect_view();
    let answers = move || {
        found
            .get()
            .into_iter()
            .map(|judged| view! { <JudgedLines judged=judged.unless_hit(fitting.hit.get()) /> })
            .collect_view()
    };
    view! {
        <ul class="fit-lines">{topic.how().iter().map(|words| view! { <li>{*words}</li> }).collect_view()}</ul>
        <Pictures topic />
        <div class="guide-answer" aria-live="polite">{answers}</div>
        <div class="on-screen">{fields}</div>
        {(topic == Topic::RodEnd).then(|| view! { <EnterOwnRodEnds /> })}
        <Show when=move || working.with(|working| !working.is_empty())>
            <Fold summary="How these numbers came out"><WorkingLines steps=working /></Fold>
        </Show>
    }
}

/// The drawing of a topic; for the bolt, both brackets as they are.
#[component]
fn Pictures(topic: Topic) -> impl IntoView {
    let session = use_session();
    let drawings = Memo::new(move |_| {
        if topic != Topic::Bolt {
            return drawn::guide(topic).into_iter().collect::<Vec<Drawing>>();
        }
        let (index, system) = (session.link.get(), session.units.get());
        let both = |answer: &_| {
            session.document.with(|document| {
                let one = |end| bracket::bracket(document, index, answer, end, Layout::Narrow, system);
                [0, 1].into_iter().filter_map(one).collect::<Vec<Drawing>>()
            })
        };
        session.answer.with(|answer| answer.as_deref().map(both)).unwrap_or_default()
    });
    let one = |drawing| view! { <figure class="drawing guide-drawing"><DrawingView drawing /></figure> };
    move || drawings.get().into_iter().map(one).collect_view()
}

/// What readings come to.
#[component]
fn JudgedLines(judged: Judged) -> impl IntoView {
    let Judged { mark, word, says, more, sources, .. } = judged;
    view! {
        <p><VerdictMark verdict=mark word /></p>
        <p class="fit-reason">{says}</p>
        {more.into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}
        {sources.into_iter().map(|words| view! { <p class="source">{words}</p> }).collect_view()}
    }
}
