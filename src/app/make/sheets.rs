//! Route sheets on paper: one page a link, with boxes to tick and blanks to write in.

use super::links::{address_of, code_of, current, every_answer};
use super::machines::Machines;
use crate::app::drawings::DrawingView;
use crate::app::fields::PaperPart;
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use crate::app::shop::use_held_back;
use leptos::prelude::*;
use linkwright::engine::shop::route::route;
use linkwright::present::answer::STALE;
use linkwright::present::drawing::{Layout, code};
use linkwright::present::make::route::{self, EndMark, HeadRow, Measurement, Row};
use linkwright::present::words::Units;
use linkwright::report::Answer;
use std::sync::Arc;

/// The buttons, and what they print.
#[component]
pub(super) fn PrintSection(
    /// What the shop has set.
    machines: Machines,
) -> impl IntoView {
    let session = use_session();
    let held_back = use_held_back();
    let several = move || session.document.with(|document| document.links.len() > 1);
    let one = move |(index, answer)| view! { <RouteSheet machines index answer /> };
    view! {
        <section class="part-of" id="print-sheets" tabindex="-1">
            <h3>"On paper"</h3>
            <p>"One page a link, with boxes to tick, room to write, and a code that opens the same numbers."</p>
            <div class="buttons">
                <button type="button" id="print-route" disabled=move || held_back.get() on:click=move |_| session.print_part("route-sheet")>
                    "Print this route sheet"
                </button>
                <Show when=several>
                    <button type="button" id="print-routes" disabled=move || held_back.get() on:click=move |_| session.print_part("route-sheets")>
                        "Print every route sheet"
                    </button>
                </Show>
            </div>
        </section>
        <PaperPart name="route-sheet">{current(session).into_iter().map(one).collect_view()}</PaperPart>
        <PaperPart name="route-sheets">{every_answer(session).into_iter().map(one).collect_view()}</PaperPart>
    }
}

/// The page of one link. A printed sheet does not change any more: nothing is tracked.
#[component]
fn RouteSheet(
    /// What the shop has set.
    machines: Machines,
    /// Which link of the rig.
    index: usize,
    /// The answer for it.
    answer: Arc<Answer>,
) -> impl IntoView {
    let session = use_session();
    let sheet = session.document.with_untracked(|document| {
        let route = machines.machine.with_untracked(|machine| route(document, index, &answer, machine));
        route::sheet(document, index, &answer, &route, Units::Both)
    });
    // The narrow ones have letters that are read at arm's length on a third of the page.
    let [whole, a, b] = route::drawings(&answer, Layout::Narrow, session.units.get_untracked());
    let (steps, measurements) = (route::said_once(&sheet.steps), route::measured_once(&sheet.measurements));
    let address = session.document.with_untracked(|document| address_of(session, document, index, &answer));
    let camera = address.and_then(|address| code::code(&address));
    let row = |row: HeadRow| view! { <div><dt>{row.name}</dt><dd>{row.value}</dd></div> };
    let mark = |mark: EndMark| {
        view! { <figcaption>{format!("End {} {}: {}", mark.letter, mark.shape, mark.thread)}</figcaption> }
    };
    let foot = sheet.foot();
    let [end_a, end_b] = sheet.ends.map(mark);
    let blank = |name: &&'static str| view! { <div><dt>{*name}</dt><dd class="write"></dd></div> };
    let measure = |one: Measurement| {
        view! {
            <div>
                <dt><b>{one.step}". "{one.name}</b>" "{one.asked}</dt>
                <dd class="write"></dd>
            </div>
        }
    };
    let stale = untrack(|| session.is_stale());
    view! {
        <article class="route-sheet" class:welded=sheet.welded>
            <header>
                <div>
                    <p class="sheet-name">
                        {route::TITLE}": "{sheet.name}", code "
                        <span class="order-code">{code_of(session, index, &answer)}</span>
                    </p>
                    <PrintedLine />
                    <dl class="blanks">{sheet.blanks.iter().map(blank).collect_view()}</dl>
                </div>
                {camera.map(|drawing| view! { <figure class="camera"><DrawingView drawing /></figure> })}
            </header>
            <super::stops::StopLines />
            {stale.then(|| view! { <p class="stale-note">{STALE}</p> })}
            {sheet.before.into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view()}
            <div class="three drawing">
                <figure>{end_a}<DrawingView drawing=a /></figure>
                <div>
                    <figure><DrawingView drawing=whole /></figure>
                    <dl class="made-of">
                        {sheet.head.into_iter().map(row).collect_view()}
                    </dl>
                </div>
                <figure>{end_b}<DrawingView drawing=b /></figure>
            </div>
            <ol class="ticked">{steps.into_iter().map(|row| view! { <PaperStep row /> }).collect_view()}</ol>
            <p class="as-built">"As built, each piece, with the number of the step"</p>
            <dl class="measured">{measurements.into_iter().map(measure).collect_view()}</dl>
            <p class="fine">{foot}</p>
        </article>
    }
}

/// A step with its box.
#[component]
fn PaperStep(
    /// What stands in it.
    row: Row,
) -> impl IntoView {
    let warnings = row.warnings.into_iter().map(|words| view! { <b>{words}" "</b> });
    let says = row.says.into_iter().map(|words| format!("{words} "));
    view! {
        <li>
            <span class="box" aria-hidden="true"></span>
            <p><b>{row.number}". "{row.title}". "</b>{warnings.collect_view()}{says.collect_view()}</p>
        </li>
    }
}
