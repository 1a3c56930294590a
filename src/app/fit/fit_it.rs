//! Fit it, step by step.

use super::guide::Guide;
use super::into_log::IntoLog;
use super::own_rod_end::EnterOwnRodEnds;
use super::reading::ReadingField;
use super::state::{Draft, use_fitting};
use crate::app::fields::stands_in_sight;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::log::EntryKind;
use linkwright::present::fit::fit_it::{
    CROW_FOOT_HELP, Progress, StepRow, TICKS, TORQUE_HELP, TorqueRow, crow_foot_setting, how_far, rows, torque,
};

/// The place.
#[component]
pub(super) fn FitIt() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let steps = Memo::new(move |_| {
        let (index, system) = (session.link.get(), session.units.get());
        let steps = |answer: &_| session.document.with(|document| rows(document, index, answer, system));
        session.answer.with(|answer| answer.as_deref().map(steps)).unwrap_or_default()
    });
    let progress = Memo::new(move |_| {
        let (index, system) = (session.link.get(), session.units.get());
        let ticked = |key: &str| fitting.ticked(key).is_some();
        let hit = fitting.hit.get();
        let told = |answer: &_| session.document.with(|document| how_far(document, index, answer, ticked, hit, system));
        session.answer.with(|answer| answer.as_deref().map(told))
    });
    let clear = move |_| {
        let keys: Vec<String> = steps.with_untracked(|steps| steps.iter().map(|step| step.key.clone()).collect());
        fitting.tick(&keys, false);
    };
    let draft = move || {
        let words = progress.with(|progress| progress.as_ref().and_then(|it| it.log.clone()))?;
        Some(Draft::of_words(EntryKind::Fitted, words))
    };
    let last = move || fitting.last(EntryKind::Fitted).map(|at| clock::spoken_time(&at));
    let complete = move || progress.with(|progress| progress.as_ref().is_some_and(|it| it.log.is_some()));
    let each = move |(index, row): (usize, StepRow)| view! { <OneStep index row /> };
    stands_in_sight(move || progress.with(|progress| progress.as_ref().map(|it| (it.mark, it.word))));
    view! {
        <div id="fit-progress" aria-live="polite">
            {move || progress.get().map(|progress| view! { <HowFar progress /> })}
        </div>
        <p class="help on-screen">{TICKS}</p>
        <ol class="steps fit-steps">{move || steps.get().into_iter().enumerate().map(each).collect_view()}</ol>
        <EnterOwnRodEnds />
        <Show when=complete><IntoLog id="fit-log-it" draft=Signal::derive(draft) /></Show>
        <div class="buttons on-screen">
            <button type="button" class="quiet" id="fit-clear" on:click=clear>"Clear the ticks"</button>
        </div>
        {move || last().map(|time| view! { <p id="fit-last">"In the log as fitted: "{time}"."</p> })}
        <TorqueCard />
        <Guide />
    }
}

/// How far somebody is.
#[component]
fn HowFar(progress: Progress) -> impl IntoView {
    let Progress { mark, word, says, count, .. } = progress;
    view! {
        <p class="judged"><VerdictMark verdict=mark word />" "{count}</p>
        <p class="fit-reason">{says}</p>
    }
}

/// One step, its tick, and when it was ticked.
#[component]
fn OneStep(
    /// Its place in the list.
    index: usize,
    /// The step.
    row: StepRow,
) -> impl IntoView {
    let fitting = use_fitting();
    let StepRow { key, words, why, last_and_first, is_ticked } = row;
    if !is_ticked {
        return view! {
            <li class:decides=last_and_first>
                <p>{words}</p>
                {why.map(|words| view! { <p class="source">{words}</p> })}
            </li>
        }
        .into_any();
    }
    let at = {
        let key = key.clone();
        Memo::new(move |_| fitting.ticked(&key))
    };
    let on_change = move |_| fitting.tick(std::slice::from_ref(&key), at.with_untracked(Option::is_none));
    view! {
        <li class:decides=last_and_first>
            <label>
                <input
                    type="checkbox"
                    data-step=index.to_string()
                    prop:checked=move || at.with(Option::is_some)
                    on:change=on_change
                />
                <span>{words}</span>
            </label>
            {why.map(|words| view! { <p class="source">{words}</p> })}
            {move || at.get().map(|time| view! { <p class="source">"Ticked "{clock::spoken_time(&time)}</p> })}
        </li>
    }
    .into_any()
}

/// One range for each jam nut, one torque for each bolt, and what an adapter changes.
#[component]
fn TorqueCard() -> impl IntoView {
    let session = use_session();
    let ends = Memo::new(move |_| {
        let (index, system) = (session.link.get(), session.units.get());
        let ends = |answer: &_| session.document.with(|document| torque(document, index, answer, system));
        session.answer.with(|answer| answer.as_deref().map(ends)).unwrap_or_default()
    });
    let working =
        Memo::new(move |_| ends.with(|ends| ends.iter().flat_map(|end| end.working.clone()).collect::<Vec<_>>()));
    let each = |row| view! { <EndTorque row /> };
    view! {
        <section id="torque-card">
            <h3>"Torque"</h3>
            <p class="help">{TORQUE_HELP}</p>
            <div class="fit-ends">{move || ends.get().into_iter().map(each).collect_view()}</div>
            <Fold summary="With a crow-foot adapter" id="crow-foot"><CrowFoot /></Fold>
            <Fold summary="How the torque came out" id="torque-working"><WorkingLines steps=working /></Fold>
        </section>
    }
}

/// What is tightened at one end.
#[component]
fn EndTorque(row: TorqueRow) -> impl IntoView {
    let TorqueRow { title, jam_nut, how, jam_nut_sources, bolt, bolt_says, bolt_source, .. } = row;
    let source = |words: String| view! { <p class="source">{words}</p> };
    view! {
        <section class="fit-end">
            <h4>{title}</h4>
            <p>"Jam nut"</p>
            <p class="fit-large">{jam_nut}</p>
            {how.into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}
            {jam_nut_sources.into_iter().map(source).collect_view()}
            <p>"Bolt through the eye"</p>
            {bolt.map(|torque| view! { <p class="fit-large">{torque}</p> })}
            <p>{bolt_says}</p>
            {bolt_source.map(source)}
        </section>
    }
}

#[component]
fn CrowFoot() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let setting = Memo::new(move |_| {
        let (index, system) = (session.link.get(), session.units.get());
        let [wrench, adapter] = ["wrench", "adapter"].map(|id| fitting.number(id));
        let set = |answer: &_| {
            session.document.with(|document| crow_foot_setting(document, index, answer, wrench, adapter, system))
        };
        session.answer.with(|answer| answer.as_deref().map(set))
    });
    let says = move || setting.get().map(|setting| setting.says).unwrap_or_default();
    let working = Memo::new(move |_| setting.get().map(|setting| setting.working).unwrap_or_default());
    view! {
        <p class="help">{CROW_FOOT_HELP}</p>
        <div id="crow-foot-says" aria-live="polite">
            {move || says().into_iter().map(|words| view! { <p class="fit-reason">{words}</p> }).collect_view()}
        </div>
        <ReadingField of="wrench" />
        <ReadingField of="adapter" />
        <Show when=move || working.with(|working| !working.is_empty())><WorkingLines steps=working /></Show>
    }
}
