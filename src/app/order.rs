//! The Order view: what is still needed, what is read back and confirmed, and what it costs.

mod code;
mod confirmation;
mod lengths;
mod lists;
mod offers;
mod questions;
mod quote;
mod read_back;
mod stages;

use crate::app::entries::LinkPicker;
use crate::app::fields::StaleNote;
use crate::app::session::use_session;
use crate::app::shop::{ChangedSinceYes, Shop, provide_not_taken, use_changed};
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine::shop::code::code_of_rig;
use linkwright::present::ends::SizeRow;
use linkwright::present::order::needed::{self, Row, named_lengths};
use linkwright::present::words;
use linkwright::quantity::System;
use linkwright::report::LinkReport;

/// The lengths that must never be mistaken for one another, each by its name.
#[component]
fn Lengths() -> impl IntoView {
    let session = use_session();
    let rows = move || {
        let system = session.units.get();
        session.answer.get().map(|answer| named_lengths(&answer.link, system)).unwrap_or_default()
    };
    let row = |row: SizeRow| view! { <div><dt>{row.name}</dt><dd>{row.value}</dd></div> };
    view! { <dl class="plate" id="named-lengths">{move || rows().into_iter().map(row).collect_view()}</dl> }
}

/// The view.
#[component]
pub(crate) fn Order() -> impl IntoView {
    let session = use_session();
    let shop = Shop::open(session);
    let rows: Memo<Vec<Row>> = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        session.report.with(|report| session.document.with(|document| needed::rows(document, link, report, system)))
    });
    // Worked out once for all who show it.
    let code = Memo::new(move |_| {
        session.document.with(|document| session.rig.with(|whole| code_of_rig(document, &whole.links)))
    });
    let changed = use_changed(Some(code));
    let of_order = move |of: fn(&Document, &[LinkReport], System) -> Vec<String>| {
        let system = session.units.get();
        session.document.with(|document| session.rig.with(|whole| of(document, &whole.links, system)))
    };
    let not_taken = provide_not_taken(session);
    let obstacles = Memo::new(move |_| {
        let mut obstacles = not_taken.get();
        obstacles.extend(of_order(needed::obstacles));
        obstacles
    });
    let failing = Memo::new(move |_| of_order(|document, reports, _| needed::failing(document, reports)));
    let refused = move || not_taken.get().into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view();
    let stops = move || failing.get().into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view();
    let lacking = Memo::new(move |_| {
        let system = session.units.get();
        let not_taken = not_taken.with(Vec::len);
        session
            .document
            .with(|document| session.rig.with(|whole| needed::still_needed(document, &whole.links, not_taken, system)))
    });
    let title = move || session.document.with(|document| words::titled(document, session.link.get()));
    view! {
        <div class="order-head">
            <p class="kicker">{title}</p>
            <h2 id="order-title" aria-live="polite">{lacking}</h2>
            <StaleNote />
            <div id="order-not-taken" role="status">{refused}</div>
            <ChangedSinceYes changed />
            <div id="order-fails">{stops}</div>
            <LinkPicker />
            <Lengths />
        </div>
        <div class="order-columns">
            <div class="asked">
                <lengths::AllLengths />
                <questions::Questions rows />
            </div>
            <div class="told-back">
                <offers::Offers shop />
                <read_back::ReadBack code />
                <code::OrderCode code />
                <stages::Stages code changed obstacles />
                <confirmation::Confirmation code />
            </div>
        </div>
        <quote::QuoteSection shop code changed />
        <lists::ShopLists shop />
    }
}
