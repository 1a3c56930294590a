//! The route sheet on the screen: every step with its figures, and the machines it goes by.

use super::machines::{Machines, SettingEntry};
use crate::app::drawings::DrawingView;
use crate::app::fields::Fold;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::shop::route::machine::of_the_route;
use linkwright::engine::shop::route::{Machine, route};
use linkwright::present::make::machine::{HELP, summary};
use linkwright::present::make::route::{self, EndMark, HeadRow, Row, Sheet};
use linkwright::present::words::Units;

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
        let (answer, link) = (session.answer_below.get()?, session.link.get());
        session.document.with(|document| {
            document.links.get(link)?;
            let route = machines.machine.with(|machine| route(document, link, &answer, machine));
            Some(route::sheet(document, link, &answer, &route, Units::Both))
        })
    });
    let drawing = move |at: usize| {
        Memo::new(move |_| {
            let (layout, system) = (session.layout(), session.units.get());
            let drawings = session.answer_below.get().map(|answer| route::drawings(&answer, layout, system));
            drawings.and_then(|drawings| drawings.get(at).cloned()).unwrap_or_default()
        })
    };
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
            {move || sheet.get().map(|sheet| view! { <Steps sheet /> })}
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

/// The steps in their order, what is measured, and the minutes of all.
#[component]
fn Steps(
    /// The sheet.
    sheet: Sheet,
) -> impl IntoView {
    let sources = sheet.steps.iter().map(|row| (row.number.clone(), row.title.clone(), row.sources.join("; ")));
    let sources = StoredValue::new(sources.collect::<Vec<_>>());
    let measured = sheet.measurements.into_iter().map(|one| {
        view! {
            <div>
                <dt>{one.name}<small>{format!("step {}", one.step)}</small></dt>
                <dd>{one.asked}</dd>
            </div>
        }
    });
    let source = |(number, title, words): (String, String, String)| {
        view! { <li><b>{format!("{number}. {title}: ")}</b>{words}</li> }
    };
    view! {
        <ol class="route-steps" id="route-steps">{sheet.steps.into_iter().map(|row| view! { <OneStep row /> }).collect_view()}</ol>
        <p class="sum" id="route-time">{sheet.time}</p>
        <Fold summary="What is measured and written down">
            <dl class="rows">{measured.clone().collect_view()}</dl>
        </Fold>
        <Fold summary="Where the values come from">
            <p>{sheet.note}</p>
            <ul class="remarks">{move || sources.get_value().into_iter().map(source).collect_view()}</ul>
        </Fold>
    }
}

/// One step.
#[component]
fn OneStep(
    /// What stands in it.
    row: Row,
) -> impl IntoView {
    let figure = |row: linkwright::present::ends::SizeRow| view! { <div><dt>{row.name}</dt><dd>{row.value}</dd></div> };
    let (count, all) = (row.figures.len(), StoredValue::new(row.figures));
    let list = move || {
        view! { <dl class="rows figures">{all.get_value().into_iter().map(figure).collect_view()}</dl> }
    };
    // The sentences have said them all: many of them would only stand in the way.
    let figures = match count {
        0 => ().into_any(),
        1..=MOST_IN_SIGHT => list().into_any(),
        _ => view! { <Fold summary=format!("{count} figures")>{list()}</Fold> }.into_any(),
    };
    view! {
        <li>
            <h4><span class="step-number">{row.number}</span><span>{row.title}</span><small>{row.minutes}</small></h4>
            {row.warnings.into_iter().map(|words| view! { <p class="warned">{words}</p> }).collect_view()}
            {row.says.into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}
            {figures}
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
        machines.change(|machine: &mut Machine| {
            of_the_route().for_each(|setting| {
                machine.set(setting, None);
            });
        });
    };
    view! {
        <Fold summary=label id="machine-limits" class="on-screen">
            <p class="help">{HELP}</p>
            <div class="two">{entries}</div>
            {move || machines.trouble.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}
            <div class="buttons">
                <button type="button" id="reset-machine" on:click=reset>"Back to the defaults"</button>
            </div>
        </Fold>
    }
}
