//! Every question of the order, in the order in which one asks them on the phone, each with its fields.

use crate::app::fields::{InputField, NameField, OrderField};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::ORDER_TEXTS;
use linkwright::inputs::{At, Input};
use linkwright::present::order::needed::{Row, State};

/// The list. A question stays where it is while it is answered: only its words change.
#[component]
pub(super) fn Questions(
    /// The questions and how each stands.
    rows: Memo<Vec<Row>>,
) -> impl IntoView {
    // A question that stays keeps its fields, and the focus in them.
    let asked = Memo::new(move |_| {
        rows.with(|rows| rows.iter().map(|row| (row.question.clone(), row.inputs.clone(), row.end)).collect::<Vec<_>>())
    });
    view! {
        <section class="part-of" id="still-to-ask" tabindex="-1">
            <h3>"What to ask"</h3>
            <ol class="questions">
                <For each=move || asked.get() key=|asked| asked.clone() let((question, inputs, end))>
                    <Question rows question inputs end />
                </For>
            </ol>
        </section>
    }
}

/// One question.
#[component]
fn Question(
    /// The questions and how each stands.
    rows: Memo<Vec<Row>>,
    /// As one asks it.
    question: String,
    /// What answers it.
    inputs: Vec<&'static str>,
    /// Which end it is about, where it is about one.
    end: Option<usize>,
) -> impl IntoView {
    let session = use_session();
    let place = At { end: end.unwrap_or_default(), ..session.place_untracked() };
    let asked = question.clone();
    let stands = Memo::new(move |_| {
        rows.with(|rows| {
            let row = rows.iter().find(|row| row.question == asked && row.end == end);
            row.map(|row| (row.state, row.known.clone()))
        })
    });
    let state = move || stands.read().as_ref().map(|(state, _)| *state).unwrap_or(State::LeftOpen);
    let known = move || stands.read().as_ref().map(|(_, known)| known.clone());
    let field = move |id: &'static str| {
        if id == "name" {
            return view! { <NameField /> }.into_any();
        }
        match (Input::find(id), ORDER_TEXTS.iter().find(|text| text.id == id)) {
            (Some(input), _) => view! { <InputField input place answers=true /> }.into_any(),
            (None, Some(text)) => view! { <OrderField text /> }.into_any(),
            (None, None) => ().into_any(),
        }
    };
    // On a phone what can wait is folded away; a question that was open stays open when it is answered.
    let missing = untrack(|| state() == State::Missing);
    let open = session.columns.get_untracked() || missing;
    view! {
        <li class="question" data-state=move || state().name()>
            <details prop:open=open>
                <summary>
                    <h4>{question}</h4>
                    <p class="stands">
                        <b class="state">{move || state().word()}</b>
                        " "
                        <span>{known}</span>
                    </p>
                </summary>
                <div class="fields">{inputs.into_iter().map(field).collect_view()}</div>
            </details>
        </li>
    }
}
