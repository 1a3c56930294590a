//! The Make view: the route sheet of the current link, and what the shop needs for the whole rig.

mod cut_plan;
mod depths;
mod files;
mod head;
mod labels;
mod links;
mod machines;
mod record;
mod route;
mod sheets;
mod stops;
#[cfg(test)]
mod tests;
mod which_builds;

use crate::app::entries::LinkPicker;
use crate::app::fields::StaleNote;
use crate::app::session::use_session;
use crate::app::shop::{ChangedSinceYes, Shop, provide_not_taken, use_changed};
use crate::browser::page;
use cut_plan::{CutPlanSection, Planned};
use leptos::prelude::*;
use linkwright::present::words;
use machines::Machines;

/// What stands on each button, and the id of its section.
const JUMPS: [(&str, &str); 7] = [
    ("Depths", "shop-depths"),
    ("Route", "route"),
    ("Print", "print-sheets"),
    ("Cuts", "cut-plan"),
    ("Labels", "labels"),
    ("Built", "as-built"),
    ("Files", "files"),
];

/// The view.
#[component]
pub(crate) fn Make() -> impl IntoView {
    let session = use_session();
    let (shop, machines) = (Shop::open(session), Machines::open(session));
    let planned = Planned::new();
    let changed = use_changed(None);
    let not_taken = provide_not_taken(session);
    stops::provide_stops(session, changed, not_taken);
    let refused = move || not_taken.get().into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view();
    let kicker = move || session.document.with(|document| words::titled(document, session.link.get()));
    let jump = |(label, id)| {
        view! { <button type="button" class="quiet" on:click=move |_| page::show(id)>{label}</button> }
    };
    view! {
        <div class="make-head">
            <p class="kicker">{kicker}</p>
            <head::Head />
            <StaleNote />
            <div id="make-not-taken" role="status">{refused}</div>
            <ChangedSinceYes changed />
            <LinkPicker />
            <nav class="jumps on-screen" aria-label="On this page">{JUMPS.map(jump).collect_view()}</nav>
        </div>
        <Show when=move || session.answered.get()>
            <depths::ShopDepths />
            <route::RouteSection machines />
            <sheets::PrintSection machines />
        </Show>
        <CutPlanSection shop machines planned />
        <Show when=move || session.answered.get()>
            <labels::Labels />
            <record::RecordSection machines />
        </Show>
        <files::Files shop machines planned />
    }
}
