//! The route sheet on the screen: every step with its figures, and the machines it goes by.

use super::machines::{Machines, NotKept, SettingEntry};
use crate::app::drawings::DrawingView;
use crate::app::fields::Fold;
use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::shop::route::machine::of_the_route;
use linkwright::engine::shop::route::{Machine, route};
use linkwright::present::ends::SizeRow;
use linkwright::present::make::machine::{HELP, summary};
use linkwright::present::make::route::{self, EndMark, HeadRow, Measurement, Row, Sheet};
use linkwright::present::words::Units;
use linkwright::present::working;

/// Figures of a step that stand in sight; more of them are folded.
const MOST_IN_SIGHT: usize = 3;

/// The section.
#[component]
pub(super) fn RouteSection(
    /// What the shop has set.
    machines: Machines,
) -> impl IntoView {
    let session = use_session();
    let sheet: Memo<Option<Sheet>> = Memo::new(move |_| {
        session.with_answer_below(|document, link, answer| {
            let route = machines.machine.with(|machine| route(document, link, answer, machine));
            route::sheet(document, link, answer, &route, Units::Both)
        })
    });
    let has_sheet = Memo::new(move |_| sheet.with(Option::is_some));
    let drawings = Memo::new(move |_| {
        let (layout, system) = (session.layout(), session.units.get());
        session.answer_below.get().map(|answer| route::drawings(&answer, layout, system))
    });
    let drawing =
        move |at: usize| Memo::new(move |_| drawings.with(|all| all.as_ref()?.get(at).cloned()).unwrap_or_default());
    let lines = Memo::new(move |_| sheet.with(|sheet| Some(sheet.as_ref()?.working.clone())).unwrap_or_default());
    let weights = Signal::derive(move || lines.with(|lines| working::steps(lines, session.units.get())));
    let provisional =
        move || session.answer_below.with(|answer| answer.as_ref().is_some_and(|answer| answer.link.provisional));
    let [whole, end_a, end_b] = [0, 1, 2].map(drawing);
    view! {
        <section class="part-of route" id="route" tabindex="-1">
            <h3>{route::TITLE}</h3>
            {move || sheet.get().map(|sheet| view! { <SheetHead sheet provisional=provisional() /> })}
            <figure class="drawing"><DrawingView drawing=whole /></figure>
            <div class="ends">
                <figure class="drawing end-of"><DrawingView drawing=end_a /></figure>
                <figure class="drawing end-of"><DrawingView drawing=end_b /></figure>
            </div>
            <Show when=move || has_sheet.get()>
                <Fold summary=route::WORKING_OF_WEIGHTS id="route-weights"><WorkingLines steps=weights /></Fold>
                <Steps sheet />
            </Show>
            <MachineFold machines />
        </section>
    }
}

/// What must be settled, what it is made of, and how its ends are told apart.
#[component]
fn SheetHead(
    /// The sheet.
    sheet: Sheet,
    /// Whether its lengths are provisional, which the head of the view says loudly.
    provisional: bool,
) -> impl IntoView {
    // It is the last thing that is said before.
    let before = sheet.before.len() - usize::from(provisional).min(sheet.before.len());
    let row = |row: HeadRow| view! { <div><dt>{row.name}</dt><dd>{row.value}</dd></div> };
    let mark = |mark: EndMark| {
        view! {
            <div>
                <dt>{format!("End {} {}", mark.letter, mark.shape)}</dt>
                <dd>{mark.thread}</dd>
            </div>
        }
    };
    view! {
        {sheet.before.into_iter().take(before).map(|words| view! { <p class="stop">{words}</p> }).collect_view()}
        <dl class="rows made-of">
            {sheet.head.into_iter().map(row).collect_view()} {sheet.ends.into_iter().map(mark).collect_view()}
        </dl>
    }
}

/// A step by its title, and how many of the same title come before it.
type StepKey = (String, usize);

/// The steps in their order, what is measured, and the minutes of all. What does not change keeps its elements, and what
/// is open stays open.
#[component]
fn Steps(
    /// The sheet.
    sheet: Memo<Option<Sheet>>,
) -> impl IntoView {
    let of_sheet = move |read: fn(&Sheet) -> String| {
        Memo::new(move |_| sheet.with(|sheet| sheet.as_ref().map(read)).unwrap_or_default())
    };
    let keys = Memo::new(move |_| sheet.with(|sheet| sheet.as_ref().map(keys_of).unwrap_or_default()));
    let measured =
        Memo::new(move |_| sheet.with(|sheet| Some(sheet.as_ref()?.measurements.clone())).unwrap_or_default());
    let measurement = |one: Measurement| {
        view! {
            <div>
                <dt>{one.name}<small>{format!("step {}", one.step)}</small></dt>
                <dd>{one.asked}</dd>
            </div>
        }
    };
    let sources = Memo::new(move |_| {
        let source = |row: &Row| (format!("{}. {}: ", row.number, row.title), row.sources.join("; "));
        sheet.with(|sheet| Some(sheet.as_ref()?.steps.iter().map(source).collect::<Vec<_>>())).unwrap_or_default()
    });
    let source = |(title, words): (String, String)| view! { <li><b>{title}</b>{words}</li> };
    let (time, note) = (of_sheet(|sheet| sheet.time.clone()), of_sheet(|sheet| sheet.note.to_string()));
    view! {
        <ol class="route-steps" id="route-steps">
            <For each=move || keys.get() key=StepKey::clone let(key)>
                <OneStep sheet key />
            </For>
        </ol>
        <p class="sum" id="route-time">{time}</p>
        <Fold summary="What is measured and written down">
            <dl class="rows">{move || measured.get().into_iter().map(measurement).collect_view()}</dl>
        </Fold>
        <Fold summary="Where the values come from">
            <p>{note}</p>
            <ul class="remarks">{move || sources.get().into_iter().map(source).collect_view()}</ul>
        </Fold>
    }
}

/// What each step of a sheet is told apart by.
fn keys_of(sheet: &Sheet) -> Vec<StepKey> {
    let key = |(at, row): (usize, &Row)| {
        let before = sheet.steps.iter().take(at).filter(|other| other.title == row.title);
        (row.title.clone(), before.count())
    };
    sheet.steps.iter().enumerate().map(key).collect()
}

/// One step.
#[component]
fn OneStep(
    /// The sheet that it is a step of.
    sheet: Memo<Option<Sheet>>,
    /// Which of its steps.
    key: StepKey,
) -> impl IntoView {
    let title = key.0.clone();
    // A step that has just left the sheet is about to leave the page.
    let row = Memo::new(move |_| {
        let of = |sheet: &Sheet| sheet.steps.iter().filter(|row| row.title == key.0).nth(key.1).cloned();
        sheet.with(|sheet| sheet.as_ref().and_then(of))
    });
    let word =
        move |read: fn(&Row) -> String| Memo::new(move |_| row.with(|row| row.as_ref().map(read)).unwrap_or_default());
    let sentences = move |read: fn(&Row) -> Vec<String>| {
        Memo::new(move |_| row.with(|row| row.as_ref().map(read)).unwrap_or_default())
    };
    let (number, minutes) = (word(|row| row.number.clone()), word(|row| row.minutes.clone()));
    let (warnings, says) = (sentences(|row| row.warnings.clone()), sentences(|row| row.says.clone()));
    let figures = Memo::new(move |_| row.with(|row| Some(row.as_ref()?.figures.clone())).unwrap_or_default());
    let figure = |row: SizeRow| view! { <div><dt>{row.name}</dt><dd>{row.value}</dd></div> };
    let list = move || {
        view! { <dl class="rows figures">{move || figures.get().into_iter().map(figure).collect_view()}</dl> }
    };
    let count = Memo::new(move |_| figures.with(Vec::len));
    let summary = Signal::derive(move || format!("{} figures", count.get()));
    // The sentences have said them all: many of them would only stand in the way.
    let (some, many) = (move || (1..=MOST_IN_SIGHT).contains(&count.get()), move || count.get() > MOST_IN_SIGHT);
    let session = use_session();
    let lines = Memo::new(move |_| row.with(|row| Some(row.as_ref()?.working.clone())).unwrap_or_default());
    let is_worked = Memo::new(move |_| lines.with(|lines| !lines.is_empty()));
    let steps = Signal::derive(move || lines.with(|lines| working::steps(lines, session.units.get())));
    view! {
        <li>
            <h4><span class="step-number">{number}</span><span>{title}</span><small>{minutes}</small></h4>
            {move || warnings.get().into_iter().map(|words| view! { <p class="warned">{words}</p> }).collect_view()}
            {move || says.get().into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}
            <Show when=some>{list()}</Show>
            <Show when=many>
                <Fold summary>{list()}</Fold>
            </Show>
            <Show when=move || is_worked.get()>
                <Fold summary=route::WORKING><WorkingLines steps /></Fold>
            </Show>
        </li>
    }
}

/// The machine limits, minutes and tolerances that the route goes by.
#[component]
fn MachineFold(
    /// What the shop has set.
    machines: Machines,
) -> impl IntoView {
    let label = Signal::derive(move || {
        machines.machine.with(|machine| summary("Machine limits, minutes and tolerances", machine, of_the_route()))
    });
    let entries = move || of_the_route().map(|setting| view! { <SettingEntry machines setting /> }).collect_view();
    let reset = move |_| {
        machines.change(|machine: &mut Machine| machine.reset(of_the_route()));
    };
    view! {
        <Fold summary=label id="machine-limits" class="on-screen">
            <p class="help">{HELP}</p>
            <div class="two">{entries}</div>
            <NotKept machines />
            <div class="buttons">
                <button type="button" id="reset-machine" on:click=reset>"Back to the defaults"</button>
            </div>
        </Fold>
    }
}
