//! Is it still safe? The check of a link as it is fitted.

use super::into_log::IntoLog;
use super::own_rod_end::EnterOwnRodEnds;
use super::reading::ReadingField;
use super::state::use_fitting;
use crate::app::drawings::DrawingView;
use crate::app::fields::stands_in_sight;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use crate::browser::page;
use leptos::prelude::*;
use linkwright::engine::fitting::as_fitted::Readings;
use linkwright::log::{EntryKind, reading_row};
use linkwright::present::drawing::Layout;
use linkwright::present::fit::safe::{
    BOTH_TIGHT, Checked, ENDS, EYE_TO_EYE, EndLines, HELP, Line, NOT_CHECKED_HERE, NUTS, ROWS, checked, readings,
};
use linkwright::report::Verdict;

/// The place.
#[component]
pub(super) fn Safe() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let check = Memo::new(move |_| {
        let readings = readings(|id| fitting.number(id), |id| fitting.yes(id));
        let readings = Readings { unreadable: fitting.is_unread(&ROWS), ..readings };
        let layout = if session.wide.get() { Layout::Wide } else { Layout::Narrow };
        session
            .answer
            .with(|answer| Some(checked(answer.as_deref()?, &readings, fitting.hit.get(), session.units.get(), layout)))
    });
    let verdict = move || check.get().map(|check| view! { <Whole check /> });
    let drawing =
        Memo::new(move |_| check.with(|check| check.as_ref().map(|check| check.drawing.clone())).unwrap_or_default());
    let working =
        Memo::new(move |_| check.with(|check| check.as_ref().map(|check| check.working.clone())).unwrap_or_default());
    let end = move |index: usize| {
        let lines = move || check.with(|check| check.as_ref().map(|check| check.ends[index].clone()));
        stands_in_sight(move || check.with(|check| check.as_ref().map(|check| (check.mark, check.word))));
        view! {
            <section class="fit-end" aria-label=if index == 0 { "End A" } else { "End B" }>
                <h3>{move || lines().map(|lines| lines.title)}</h3>
                {ENDS[index].map(|of| view! { <ReadingField of /> }).into_iter().collect_view()}
                {move || lines().map(|lines| view! { <End lines /> })}
                <EnterOwnRodEnds end=index />
            </section>
        }
    };
    let both_tight = move |_| {
        for row in NUTS.into_iter().filter_map(reading_row) {
            fitting.note(row.id, row.pick("yes"));
        }
        // The button is gone now.
        page::focus_soon("safe-verdict".to_string());
    };
    let draft = move || {
        let words = check.with(|check| check.as_ref().map(|check| check.log.clone()))?;
        Some(fitting.draft(EntryKind::Checked, words, &ROWS))
    };
    view! {
        <h3 class="unseen">"Verdict"</h3>
        <div id="safe-verdict" tabindex="-1" aria-live="polite">{verdict}</div>
        <Show when=move || drawing.with(|drawing| !drawing.is_empty())>
            <div class="drawing fit-drawing"><DrawingView drawing /></div>
        </Show>
        <p class="help">{HELP}</p>
        <Show when=move || NUTS.iter().any(|id| fitting.picked(id).is_none())>
            <p class="on-screen">
                <button type="button" id="both-tight" on:click=both_tight>{BOTH_TIGHT}</button>
            </p>
        </Show>
        <div class="fit-ends">{end(0)}{end(1)}</div>
        <ReadingField of=EYE_TO_EYE />
        <IntoLog id="safe-log" draft=Signal::derive(draft) />
        <Fold summary="How these numbers came out" id="safe-working"><WorkingLines steps=working /></Fold>
    }
}

/// The verdict on the whole link, its reason, and what else there is to say of it.
#[component]
fn Whole(
    /// The check.
    check: Checked,
) -> impl IntoView {
    let Checked { mark, word, reason, also, order, whole, stops, .. } = check;
    let good = mark == Verdict::Passes;
    view! {
        <p class="judged"><VerdictMark verdict=mark word /></p>
        <p class="fit-reason">{reason}</p>
        {good.then(|| view! { <p>{NOT_CHECKED_HERE}</p> })}
        {also.map(|words| view! { <p>{words}</p> })}
        {order.map(|words| view! { <p class="stop" id="safe-order">{words}</p> })}
        <ul class="fit-lines">{whole.into_iter().map(|line| view! { <OneLine line /> }).collect_view()}</ul>
        {stops.map(|words| view! { <p id="safe-stops">{words}</p> })}
    }
}

/// One end: its word with the reason, and the rest.
#[component]
fn End(lines: EndLines) -> impl IntoView {
    let EndLines { mark, word, reason, more, turns, .. } = lines;
    view! {
        <p><VerdictMark verdict=mark word /></p>
        <p>{reason}</p>
        {turns.map(|words| view! { <p><b>{words}</b></p> })}
        <ul class="fit-lines">{more.into_iter().map(|line| view! { <OneLine line /> }).collect_view()}</ul>
    }
}

/// A remark with its mark.
#[component]
fn OneLine(line: Line) -> impl IntoView {
    let Line { mark, word, words } = line;
    view! { <li><VerdictMark verdict=mark word />" "{words}</li> }
}
