//! Bending against strength along the link: the picture, how to read it, and the same as a table.

use crate::app::drawings::DrawingView;
use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::engine;
use linkwright::present::bending::{self, HEAD, Row};
use linkwright::present::drawing::bending::bending as picture;
use linkwright::present::drawing::{Layout, Touch, check_of};
use linkwright::report::{Along, Answer};

/// The section.
#[component]
pub(super) fn Bending() -> impl IntoView {
    let session = use_session();
    let along = Memo::new(move |_| session.document.with(|document| engine::along(document, session.link.get())));
    let explanation = Memo::new(move |_| {
        with_answer(session, along, |answer, along| {
            session.document.with(|document| bending::explanation(document, answer, along, session.units.get()))
        })
    });
    let buckles = move || explanation.with(|explanation| explanation.as_ref().is_some_and(|it| it.buckles));

    view! {
        <section class="part-of" aria-labelledby="prove-title">
            <figure class="drawing hill">
                {Layout::ALL.map(|layout| view! { <Picture along layout /> }).collect_view()}
            </figure>
            <p id="hill-words" class:stop=buckles>
                {move || explanation.with(|explanation| explanation.as_ref().map(|it| it.sentence.clone()))}
            </p>
            <PartsTable along />
        </section>
    }
}

/// Something about the answer and the bending along the link, while there is an answer.
fn with_answer<T>(session: Session, along: Memo<Along>, of: impl FnOnce(&Answer, &Along) -> T) -> Option<T> {
    session.answer.with(|answer| answer.as_ref().map(|answer| along.with(|along| of(answer, along))))
}

/// The picture for a phone or for a desk. The one that the screen does not show is only drawn on paper.
#[component]
fn Picture(along: Memo<Along>, layout: Layout) -> impl IntoView {
    let session = use_session();
    let drawing = Memo::new(move |_| {
        let draw = |answer: &Answer, along: &Along| picture(answer, along, session.units.get(), layout);
        with_answer(session, along, draw).flatten().unwrap_or_default()
    });
    let on_touch = move |touch| {
        if let Touch::Part(part) = touch {
            open_check_of(session, part);
        }
    };

    view! {
        <Show when=move || session.shows(layout) && !drawing.read().is_empty()>
            <DrawingView drawing on_touch />
        </Show>
    }
}

/// Each part where it is asked for most.
#[component]
fn PartsTable(along: Memo<Along>) -> impl IntoView {
    let session = use_session();
    let rows = Memo::new(move |_| along.with(|along| bending::rows(along, session.units.get())));

    view! {
        <Show when=move || rows.with(|rows| !rows.is_empty())>
            <details>
                <summary>"The same as a table"</summary>
                <div class="scroll">
                    <table class="along">
                        <thead>
                            <tr>{HEAD.map(|name| view! { <th scope="col">{name}</th> }).collect_view()}</tr>
                        </thead>
                        <tbody>
                            {move || rows.get().into_iter().map(|row| view! { <PartRow row /> }).collect_view()}
                        </tbody>
                    </table>
                </div>
            </details>
        </Show>
    }
}

#[component]
fn PartRow(row: Row) -> impl IntoView {
    let session = use_session();
    let Row { part, values } = row;
    let cells = HEAD.into_iter().skip(1).zip(values).map(|(name, value)| view! { <td data-of=name>{value}</td> });

    view! {
        <tr>
            <th scope="row">
                <button type="button" class="quiet" data-part=part on:click=move |_| open_check_of(session, part)>
                    {part}
                </button>
            </th>
            {cells.collect_view()}
        </tr>
    }
}

/// Opens the check that judges a part.
fn open_check_of(session: Session, part: &str) {
    if let Some(check) = check_of(part) {
        session.open_check(check);
    }
}
