//! Recheck: what to look at, and when.

use super::into_log::IntoLog;
use super::reading::ReadingField;
use super::state::use_fitting;
use crate::app::fields::stands_in_sight;
use crate::app::fields::{PaperPart, VerdictMark};
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use crate::browser::{clock, files};
use leptos::prelude::*;
use linkwright::engine::fitting::recheck::Occasion;
use linkwright::log::{EntryKind, Reading};
use linkwright::present::fit::calendar::{Bar, MIME_TYPE};
use linkwright::present::fit::recheck::{
    CALENDAR, DATE_AND_NAME, DueRow, KIND, Last, LookRow, Outcome, TICK_FIRST, calendar_file, due_rows, last,
    look_rows, occasion, sum_up,
};
use linkwright::present::words::sheet_name;

/// The place.
#[component]
pub(super) fn Recheck() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let known =
        Memo::new(move |_| fitting.spot().map(|spot| fitting.log.with(|log| last(log, &spot))).unwrap_or_default());
    let chosen = Memo::new(move |_| occasion(fitting.picked(KIND)).id());
    let looks = Memo::new(move |_| {
        let rows = |answer: &_| look_rows(answer, occasion(Some(chosen.get())), session.units.get());
        session.answer.with(|answer| answer.as_deref().map(rows)).unwrap_or_default()
    });
    let outcome = Memo::new(move |_| {
        let ticked = |key: &str| fitting.ticked(key).is_some();
        let told =
            |answer: &_| sum_up(answer, occasion(Some(chosen.get())), ticked, fitting.hit.get(), session.units.get());
        session.answer.with(|answer| answer.as_deref().map(told))
    });
    let clear = move || {
        let keys: Vec<String> = looks.with_untracked(|looks| looks.iter().map(|look| look.key.clone()).collect());
        fitting.tick(&keys, false);
    };
    let any_tick = move || looks.with(|looks| looks.iter().any(|look| fitting.ticked(&look.key).is_some()));
    let draft = move || {
        let outcome = outcome.get().filter(|_| any_tick())?;
        let draft = fitting.draft(outcome.kind, outcome.says, &[]);
        Some(draft.with(KIND, Reading::Pick(chosen.get())))
    };
    let last_time = move || fitting.last(EntryKind::Rechecked).map(|at| clock::spoken_time(&at));
    let due = move || known.with(|known| due_rows(known, &clock::now(), fitting.hit.get(), session.units.get()));
    let due_row = |row| view! { <DueLine row /> };
    let look = move |(index, row): (usize, LookRow)| view! { <OneLook index row /> };
    stands_in_sight(move || outcome.with(|outcome| outcome.as_ref().map(|outcome| (outcome.mark, outcome.word))));
    view! {
        <section id="recheck-due">
            <h3>"What is due"</h3>
            <ul class="fit-lines">{move || due().into_iter().map(due_row).collect_view()}</ul>
        </section>
        <ReadingField of=KIND />
        <h3>{move || occasion(Some(chosen.get())).label()}</h3>
        <div id="recheck-outcome" aria-live="polite">
            {move || outcome.get().map(|outcome| view! { <Sum outcome /> })}
        </div>
        <ol class="steps fit-steps">{move || looks.get().into_iter().enumerate().map(look).collect_view()}</ol>
        <IntoLog
            id="recheck-log"
            draft=Signal::derive(draft)
            nothing=TICK_FIRST
            on_done=Callback::new(move |()| clear())
        />
        <div class="buttons on-screen">
            <button type="button" class="quiet" on:click=move |_| clear()>"Clear the ticks"</button>
        </div>
        {move || last_time().map(|time| view! { <p id="recheck-last">"In the log as rechecked: "{time}"."</p> })}
        <div class="buttons on-screen">
            <button type="button" id="print-recheck" on:click=move |_| session.print_part("recheck-sheet")>
                "Print this list"
            </button>
            <CalendarButton known />
        </div>
        <PaperPart name="recheck-sheet"><Sheet /></PaperPart>
    }
}

/// What a recheck came to.
#[component]
fn Sum(outcome: Outcome) -> impl IntoView {
    let Outcome { mark, word, says, .. } = outcome;
    view! {
        <p class="judged"><VerdictMark verdict=mark word /></p>
        <p class="fit-reason">{says}</p>
    }
}

/// Whether something is due.
#[component]
fn DueLine(row: DueRow) -> impl IntoView {
    let DueRow { title, mark, word, says, help } = row;
    view! {
        <li>
            <p><b>{title}</b>" "<VerdictMark verdict=mark word /></p>
            <p>{says}</p>
            <p class="source">{help}</p>
        </li>
    }
}

/// One thing to look at, and its tick.
#[component]
fn OneLook(
    /// Its place in the list.
    index: usize,
    /// What to look at.
    row: LookRow,
) -> impl IntoView {
    let fitting = use_fitting();
    let LookRow { key, words, limit, source } = row;
    let ticked = {
        let key = key.clone();
        Memo::new(move |_| fitting.ticked(&key).is_some())
    };
    let on_change = move |_| fitting.tick(std::slice::from_ref(&key), !ticked.get_untracked());
    view! {
        <li>
            <label>
                <input type="checkbox" data-look=index.to_string() prop:checked=ticked on:change=on_change />
                <span><b>{words}</b>" "{limit}</span>
            </label>
            <p class="source">{source}</p>
        </li>
    }
}

/// Hands over the rechecks as a calendar file.
#[component]
fn CalendarButton(
    /// What the log knows.
    known: Memo<Last>,
) -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let said = RwSignal::new(String::new());
    let give = move |_| {
        let Some(spot) = untrack(|| fitting.spot()) else { return };
        let title = fitting.bars.with_untracked(|bars| {
            bars.iter().find(|(other, _)| *other == spot).map(|(_, title)| title.clone()).unwrap_or_default()
        });
        let rig = session.document.with_untracked(|document| document.name.clone());
        let bar = Bar { spot: &spot, title: &title, rig: &rig };
        let (now, system) = (clock::now(), session.units.get_untracked());
        let file = session.answer.with_untracked(|answer| {
            known.with_untracked(|known| calendar_file(bar, known, answer.as_deref()?, &now, system))
        });
        let done = file.is_some_and(|(name, text)| files::download_as(&name, &text, MIME_TYPE));
        said.set(
            if done { "The calendar file is in your downloads." } else { "This browser did not take the file." }
                .to_string(),
        );
    };
    view! {
        <button type="button" id="recheck-calendar" on:click=give>{CALENDAR}</button>
        <p class="done" aria-live="polite">{said}</p>
    }
}

/// The list on paper. A printed sheet does not change any more: nothing is tracked.
#[component]
fn Sheet() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let system = session.units.get_untracked();
    let occasion = untrack(|| occasion(fitting.picked(KIND)));
    let rows = session.answer.with_untracked(|answer| {
        answer.as_deref().map(|answer| look_rows(answer, occasion, system)).unwrap_or_default()
    });
    let name = session.document.with_untracked(|document| sheet_name(document, session.link.get_untracked()));
    // A pair is looked at bar by bar.
    let boxes: &'static [&'static str] = if fitting.bars.with_untracked(Vec::len) > 1 { &["L", "R"] } else { &[""] };
    let row = move |row: LookRow| {
        let one = |side: &&'static str| view! { <span class="side">{*side}<span class="box"></span></span> };
        view! {
            <li>
                <span class="sides" aria-hidden="true">{boxes.iter().map(one).collect_view()}</span>
                <p><b>{row.words}</b>" "{row.limit}" "<small>{row.source}</small></p>
            </li>
        }
    };
    let also = Occasion::ALL.map(|occasion| view! { <p>{occasion.label()}": "{occasion.help()}</p> });
    view! {
        <article class="recheck-sheet">
            <p class="sheet-name">"Recheck: "{name}</p>
            <PrintedLine />
            <p class="signed">{DATE_AND_NAME}</p>
            <h3>{occasion.label()}</h3>
            <ol class="ticked">{rows.into_iter().map(row).collect_view()}</ol>
            {also.into_iter().collect_view()}
        </article>
    }
}
