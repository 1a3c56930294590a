//! The answer: what to turn in large letters, the steps, what shows afterwards, and why.

use super::super::into_log::kept_words;
use super::super::own_rod_end::EnterRodEnds;
use super::super::state::use_fitting;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::fitting::turn;
use linkwright::present::fit::turn::{
    COULD, LinkTurn, READ_AGAIN, TURNED, TURNED_ALL, TURNED_HELP, TurnAnswer, WHY_OPPOSITE,
};

/// The answer, bar by bar.
#[component]
pub(super) fn Answers(
    /// The answer; none before a number was entered.
    told: Memo<Option<TurnAnswer>>,
    /// What happens once it was turned.
    on_turned: Callback<String>,
) -> impl IntoView {
    let list = |class: &'static str, lines: Vec<String>| {
        (!lines.is_empty())
            .then(|| view! { <ul class=class>{lines.into_iter().map(|words| view! { <li>{words}</li> }).collect_view()}</ul> })
    };
    let shown = move || {
        let TurnAnswer { instead, links, could, says, cautions, assumed, working } = told.get()?;
        let working = StoredValue::new(working);
        let turned: Vec<LinkTurn> = links.iter().filter(|link| link.can_be_logged()).cloned().collect();
        Some(view! {
            {instead.map(|words| view! { <p class="stop">{words}</p> })}
            {(!could.is_empty()).then(|| view! { <div id="turn-could"><h3>{COULD}</h3>{list("fit-lines", could)}</div> })}
            {links.into_iter().map(|told| view! { <OneLink told /> }).collect_view()}
            {(!turned.is_empty()).then(|| view! { <IntoLog turned on_turned /> })}
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
    let session = use_session();
    let by_the_bar = move || {
        session.answer.with(|answer| answer.as_ref().is_some_and(|answer| answer.link.adjustment.opposite_hands))
    };
    view! {
        <div id="turn-answer" aria-live="polite">{shown}</div>
        <Show when=by_the_bar>
            <Fold summary=WHY_OPPOSITE id="why-opposite"><p>{turn::WHY_OPPOSITE}</p></Fold>
        </Show>
    }
}

/// The button for when it was turned: an entry in the log of each bar.
#[component]
fn IntoLog(
    /// The bars that are turned.
    turned: Vec<LinkTurn>,
    /// What happens once they were.
    on_turned: Callback<String>,
) -> impl IntoView {
    let fitting = use_fitting();
    let title = if turned.len() > 1 { TURNED_ALL } else { TURNED };
    let record = move |_| {
        let kept = fitting.record_turns(&turned);
        let words = kept_words(kept);
        on_turned.run(if kept.is_ok() { format!("{words} {READ_AGAIN}") } else { words });
    };
    view! {
        <p class="on-screen"><button type="button" id="turn-log" on:click=record>{title}</button></p>
        <p class="help">{TURNED_HELP}</p>
    }
}

/// What to turn at one bar.
#[component]
fn OneLink(told: LinkTurn) -> impl IntoView {
    let LinkTurn {
        title,
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
        unmeasured,
        steps,
        cautions,
        working,
        ..
    } = told;
    let working = StoredValue::new(working);
    let shows = !after.is_empty();
    let lines = |lines: Vec<String>| lines.into_iter().map(|words| view! { <li>{words}</li> }).collect_view();
    view! {
        <section class="turn-link">
            <h3>{title}</h3>
            <p class="judged"><VerdictMark verdict=mark word /></p>
            {large.map(|words| view! { <p class="turn-large">{words}</p> })}
            {nuts.map(|words| view! { <p class="fit-reason">{words}</p> })}
            {instead.map(|words| view! { <p class="stop">{words}</p> })}
            {gives.map(|words| view! { <p><b>{words}</b></p> })}
            <ul class="fit-lines">{lines(open)}</ul>
            <EnterRodEnds ends=Signal::stored(unmeasured) />
            {(!cautions.is_empty()).then(|| view! { <ul class="cautions">{lines(cautions)}</ul> })}
            <ol class="turn-steps">{lines(steps)}</ol>
            {shows.then(|| view! { <h4>"What shows afterwards"</h4> })}
            <ul class="fit-lines">{lines(after)}</ul>
            {tape.map(|words| view! { <p class="help">{words}</p> })}
            {step.map(|words| view! { <p>{words}</p> })}
            {same_hand.map(|words| view! { <p>{words}</p> })}
            <Show when=move || working.with_value(|working| !working.is_empty())>
                <Fold summary="Why: the numbers behind it">
                    <WorkingLines steps=Signal::derive(move || working.get_value()) />
                </Fold>
            </Show>
        </section>
    }
}
