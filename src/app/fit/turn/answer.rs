//! The answer: what to turn in large letters, the steps, what shows afterwards, and why.

use super::super::state::use_fitting;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::fitting::turn;
use linkwright::log::{EntryKind, Reading};
use linkwright::present::fit::log::TURNED_BY;
use linkwright::present::fit::safe::ROWS;
use linkwright::present::fit::turn::{LinkTurn, TURNED, TURNED_HELP, TurnAnswer, WHY_OPPOSITE};

/// The answer, link by link.
#[component]
pub(super) fn Answers(
    /// The answer; none before a number was entered.
    told: Memo<Option<TurnAnswer>>,
    /// What happens once it was turned.
    on_turned: Callback<()>,
) -> impl IntoView {
    let list = |class: &'static str, lines: Vec<String>| {
        (!lines.is_empty())
            .then(|| view! { <ul class=class>{lines.into_iter().map(|words| view! { <li>{words}</li> }).collect_view()}</ul> })
    };
    let shown = move || {
        let TurnAnswer { instead, links, says, cautions, assumed, working } = told.get()?;
        let working = StoredValue::new(working);
        Some(view! {
            {instead.map(|words| view! { <p class="stop">{words}</p> })}
            {links.into_iter().map(|told| view! { <OneLink told on_turned /> }).collect_view()}
            {list("fit-lines", says)}
            {list("cautions", cautions)}
            {list("fit-lines help", assumed)}
            <Show when=move || working.with_value(|working| !working.is_empty())>
                <Fold summary="How the change of length came out">
                    <WorkingLines steps=Signal::derive(move || working.get_value()) />
                </Fold>
            </Show>
        })
    };
    view! {
        <div id="turn-answer" aria-live="polite">{shown}</div>
        <Fold summary=WHY_OPPOSITE id="why-opposite"><p>{turn::WHY_OPPOSITE}</p></Fold>
    }
}

/// What to turn at one link.
#[component]
fn OneLink(told: LinkTurn, on_turned: Callback<()>) -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let LinkTurn {
        link,
        title,
        change,
        mark,
        word,
        large,
        nuts,
        instead,
        gives,
        tape,
        step,
        after,
        same_hand,
        open,
        steps,
        cautions,
        log,
        working,
    } = told;
    let (working, is_told) = (StoredValue::new(working), large.is_some());
    let lines = |lines: Vec<String>| lines.into_iter().map(|words| view! { <li>{words}</li> }).collect_view();
    let own = move || link == Some(session.link.get());
    // What was read before the turn is not true after it, and a nut that was loosened has to be checked.
    let record = move || {
        fitting.record_with(EntryKind::Turned, log.clone(), &[], Some((TURNED_BY, Reading::Number(change))));
        ROWS.iter().for_each(|id| fitting.note(id, None));
        on_turned.run(());
    };
    let record = StoredValue::new(record);
    view! {
        <section class="turn-link">
            <h3>{title}</h3>
            {large.map(|words| view! { <p class="turn-large">{words}</p> })}
            {nuts.map(|words| view! { <p class="fit-reason">{words}</p> })}
            {instead.map(|words| view! { <p class="stop">{words}</p> })}
            {gives.map(|words| view! { <p><b>{words}</b></p> })}
            <p><VerdictMark verdict=mark word /></p>
            <ul class="fit-lines">{lines(open)}</ul>
            {(!cautions.is_empty()).then(|| view! { <ul class="cautions">{lines(cautions)}</ul> })}
            <ol class="turn-steps">{lines(steps)}</ol>
            {is_told.then(|| view! { <h4>"What shows afterwards"</h4> })}
            <ul class="fit-lines">{lines(after)}</ul>
            {tape.map(|words| view! { <p class="help">{words}</p> })}
            {step.map(|words| view! { <p>{words}</p> })}
            {same_hand.map(|words| view! { <p>{words}</p> })}
            <Show when=move || is_told && own()>
                <p class="on-screen">
                    <button
                        type="button"
                        id="turn-log"
                        on:click=move |_| record.with_value(|record| record())
                    >
                        {TURNED}
                    </button>
                </p>
                <p class="help">{TURNED_HELP}</p>
            </Show>
            <Fold summary="Why: the numbers behind it">
                <WorkingLines steps=Signal::derive(move || working.get_value()) />
            </Fold>
        </section>
    }
}
