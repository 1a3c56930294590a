//! The cut plan: which blanks come from which bar, made when asked, and what it does to the shop's lists.

mod planned;

pub(super) use planned::Planned;

use super::machines::{Machines, NotKept, SettingEntry};
use super::stops::StopLines;
use super::which_builds::WhichBuilds;
use crate::app::drawings::DrawingView;
use crate::app::fields::{Fold, PaperPart};
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use crate::app::shop::{Shop, use_held_back};
use leptos::prelude::*;
use linkwright::engine::shop::cut_plan::CutPlan;
use linkwright::engine::shop::route::machine::SAW;
use linkwright::present::drawing::bars::bars;
use linkwright::present::make::cut_plan::{BarRow, GOES_BY, TITLE, rows};
use linkwright::present::make::machine::summary;
use linkwright::present::make::plan::{ASSUMED, CHANGED, NOTHING, REMNANTS_FIRST, taken};
use linkwright::present::words::{Units, rig_title};
use planned::Planned as State;

/// The section.
#[component]
pub(super) fn CutPlanSection(
    /// The shop's lists.
    shop: Shop,
    /// What the shop has set.
    machines: Machines,
    /// The plan, which the files show too.
    planned: Planned,
) -> impl IntoView {
    let session = use_session();
    let held_back = use_held_back();
    let plan = move |_| planned.plan(session, shop, machines);
    let current = Memo::new(move |_| planned.is_current(session, shop, machines));
    let said = move || match (planned.found.with(Option::is_some), current.get()) {
        (true, false) => Some(CHANGED),
        (true, true) if planned.is_empty() => Some(NOTHING),
        _ => None,
    };
    let has_plan = Memo::new(move |_| current.get() && !planned.is_empty());
    let saw = Signal::derive(move || {
        machines.machine.with(|machine| summary("Saw and length of bars", machine, SAW.into_iter()))
    });
    let put = move |_| planned.put_remnants(shop);
    let done = move || planned.found.with(|found| found.as_ref().and_then(|found| found.taken.map(taken)));
    let title = move || session.document.with(|document| rig_title(document, session.units.get()));
    view! {
        <section class="part-of" id="cut-plan" tabindex="-1">
            <h3>{TITLE}</h3>
            <p>{GOES_BY}</p>
            <WhichBuilds with_rig=planned.with_rig ticked=planned.builds />
            <Fold summary=saw id="saw-settings" class="on-screen">
                <div class="two">{SAW.map(|setting| view! { <SettingEntry machines setting /> }).collect_view()}</div>
                <NotKept machines />
            </Fold>
            <div class="buttons">
                <button type="button" id="plan-cuts" on:click=plan>"Plan the cuts"</button>
            </div>
            <div id="cut-plan-said" role="status">{move || said().map(|words| view! { <p>{words}</p> })}</div>
            <Show when=move || has_plan.get()>
                <div id="cut-plans"><Plans planned units=Units::In(session.units.get()) /></div>
                <div class="buttons">
                    <button
                        type="button"
                        id="put-remnants"
                        disabled=move || held_back.get() || planned.found.with(|found| found.as_ref().is_none_or(|it| it.taken.is_some()))
                        on:click=put
                    >
                        "It is cut: put the remnants into the list"
                    </button>
                    <button type="button" id="print-cuts" disabled=move || held_back.get() on:click=move |_| session.print_part("cut-plan")>
                        "Print the cut plan"
                    </button>
                </div>
                <p class="done" id="remnants-put" role="status">{done}</p>
                <p class="help">{REMNANTS_FIRST}</p>
            </Show>
        </section>
        <PaperPart name="cut-plan">
            <div class="cut-sheet">
                <p class="sheet-name">{TITLE}": "{title}</p>
                <PrintedLine />
                <StopLines />
                <Plans planned units=Units::Both />
            </div>
        </PaperPart>
    }
}

/// The plan of each metal and size.
#[component]
fn Plans(
    /// The plan.
    planned: State,
    /// The units to write in.
    units: Units,
) -> impl IntoView {
    move || {
        planned.found.with(|found| {
            let found = found.as_ref()?;
            let open = found.open.clone().map(|words| view! { <p class="stop">{words}</p> });
            let plans = found.plans.iter().cloned();
            let plans = plans.map(|(plan, assumed)| view! { <OnePlan plan assumed units /> }).collect_view();
            Some(view! { {open} {plans} })
        })
    }
}

/// The plan of one metal and size.
#[component]
fn OnePlan(
    /// The plan.
    plan: CutPlan,
    /// Whether the length of its bars was assumed.
    assumed: bool,
    /// The units to write in.
    units: Units,
) -> impl IntoView {
    let session = use_session();
    let told = rows(&plan, units);
    let drawing = Memo::new(move |_| bars(&plan, session.units.get(), session.layout()));
    let row = |row: BarRow| {
        view! {
            <tr>
                <td data-of="Bars">{row.count}</td>
                <th scope="row">{row.bar}</th>
                <td data-of="Saw">{row.cuts}</td>
                <td data-of="Left">{row.left}</td>
            </tr>
        }
    };
    view! {
        <article class="one-plan">
            <h4>{told.title}</h4>
            <p class="sum">{told.summary}</p>
            {told.not_cut.into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view()}
            {assumed.then(|| view! { <p class="warned">{ASSUMED}</p> })}
            <figure class="drawing"><DrawingView drawing /></figure>
            <table class="cuts">
                <thead>
                    <tr>
                        <th scope="col">"Bars"</th>
                        <th scope="col">"Of"</th>
                        <th scope="col">"Saw"</th>
                        <th scope="col">"Left"</th>
                    </tr>
                </thead>
                <tbody>{told.bars.into_iter().map(row).collect_view()}</tbody>
            </table>
            {told.sentences.into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}
            <p class="help">{told.saw}</p>
        </article>
    }
}
