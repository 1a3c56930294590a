//! After a hit: drive on, limp home, or stop.

use super::broken::Broken;
use super::into_log::IntoLog;
use super::reading::ReadingField;
use super::state::use_fitting;
use crate::app::drawings::DrawingView;
use crate::app::fields::stands_in_sight;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use crate::browser::page::focus_soon;
use leptos::prelude::*;
use linkwright::engine::fitting::hit::{HitReadings, bowed_bar};
use linkwright::log::{EntryKind, HIT_VERDICT, Reading, reading_row};
use linkwright::present::drawing::string::string;
use linkwright::present::fit::hit::{
    ALL_CLEAN, ALL_CLEAN_HELP, BENT_BY_DESIGN, CAUTION, HELP, HitPage, Line, PICKED, ROWS, STRING, none_of, page,
    readings,
};
use linkwright::present::fit::log::hit_verdict;

/// The place.
#[component]
pub(super) fn AfterAHit() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    // It takes as long as the answer, and no reading changes it.
    let bar = Memo::new(move |_| session.document.with(|document| bowed_bar(document, session.link.get())));
    let told = Memo::new(move |_| {
        let readings = readings(|id| fitting.number(id), |id| fitting.picked(id));
        let readings = HitReadings { unreadable: fitting.is_unread(&ROWS), ..readings };
        let system = session.units.get();
        bar.with(|bar| session.answer.with(|answer| Some(page(answer.as_deref()?, bar.as_ref(), &readings, system))))
    });
    let working =
        Memo::new(move |_| told.with(|told| told.as_ref().map(|told| told.working.clone())).unwrap_or_default());
    let lines = Memo::new(move |_| told.with(|told| told.as_ref().map(|told| told.lines.clone())).unwrap_or_default());
    let looks = move || lines.get().into_iter().map(|line| view! { <OneLine line /> }).collect_view();
    let bent_by_design = Memo::new(move |_| bar.with(|bar| bar.is_some_and(|bar| bar.offset > 0.0)));
    let open = move || none_of(|id| fitting.picked(id), !bent_by_design.get());
    let all_clean = move |_| {
        for (id, pick) in untrack(open) {
            if let Some(row) = reading_row(id) {
                fitting.note(row.id, row.pick(pick));
            }
        }
        // The button is gone now.
        focus_soon("hit-verdict".to_string());
    };
    let draft = move || {
        let (words, mark) = told.with(|told| told.as_ref().map(|told| (told.log.clone(), told.mark)))?;
        let draft = fitting.draft(EntryKind::Hit, words, &ROWS);
        Some(draft.with(HIT_VERDICT, Reading::Pick(hit_verdict(mark))))
    };
    // The depth is asked for where there is a dent.
    let depth = move |id: &'static str| {
        (id == "hit-dent").then(|| {
            stands_in_sight(move || told.with(|told| told.as_ref().map(|told| (told.mark, told.word))));
            view! {
                <Show when=move || fitting.yes("hit-dent") == Some(true)>
                    <ReadingField of="hit-dent-depth" />
                </Show>
            }
        })
    };
    let look = move |id: &'static str| view! { <ReadingField of=id />{depth(id)} };
    let drawing = Memo::new(|_| string());
    view! {
        <h3 class="unseen">"Verdict"</h3>
        <div id="hit-verdict" tabindex="-1" aria-live="polite">{move || told.get().map(|told| view! { <Whole told /> })}</div>
        <p class="help">{HELP}</p>
        <Show
            when=move || !bent_by_design.get()
            fallback=|| view! { <p class="help" id="hit-by-design">{BENT_BY_DESIGN}</p> }
        >
            <div class="drawing fit-drawing hit-string"><DrawingView drawing /></div>
            <p class="help">{STRING}</p>
            <ReadingField of="hit-bow" />
            <Fold summary="Another length of string" id="hit-string-fold">
                <ReadingField of="hit-string" />
            </Fold>
        </Show>
        <Show when=move || !open().is_empty()>
            <div class="all-clean on-screen">
                <button type="button" id="hit-all-clean" on:click=all_clean>{ALL_CLEAN}</button>
                <p class="help">{ALL_CLEAN_HELP}</p>
            </div>
        </Show>
        <h3>"What to look at"</h3>
        <div class="looks">{PICKED.map(look).into_iter().collect_view()}</div>
        <IntoLog id="hit-log" draft=Signal::derive(draft) />
        <p class="help">{CAUTION}</p>
        <Show when=move || lines.with(|lines| !lines.is_empty())>
            <Fold summary="What each look came to" id="hit-looks"><ul class="fit-lines">{looks}</ul></Fold>
        </Show>
        <Show when=move || working.with(|steps| !steps.is_empty())>
            <Fold summary="How these numbers came out" id="hit-working"><WorkingLines steps=working /></Fold>
        </Show>
        <Broken />
    }
}

/// The one word, why, what to do and within which limits.
#[component]
fn Whole(told: HitPage) -> impl IntoView {
    let HitPage { mark, word, reason, next, limits, left, .. } = told;
    let limits = (!limits.is_empty()).then(|| {
        view! {
            <ul class="limits" id="hit-limits">
                {limits.into_iter().map(|limit| view! { <li>{limit}</li> }).collect_view()}
            </ul>
        }
    });
    let left = (!left.is_empty()).then(|| {
        let row = |(name, value): (&'static str, String)| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
        view! { <dl class="left" id="hit-left">{left.into_iter().map(row).collect_view()}</dl> }
    });
    view! {
        <p class="judged"><VerdictMark verdict=mark word /></p>
        <p class="fit-reason">{reason}</p>
        <p><b>{next}</b></p>
        {limits}
        {left}
    }
}

/// What one look came to.
#[component]
fn OneLine(line: Line) -> impl IntoView {
    let Line { mark, word, words, source } = line;
    view! {
        <li>
            <VerdictMark verdict=mark word />
            " "
            {words}
            <span class="source">" "{source}"."</span>
        </li>
    }
}
