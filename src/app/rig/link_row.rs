//! One link of the list: how it stands, what it is, and what can be done with it.

use crate::app::fields::{Phrases, VerdictMark};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::rig_list::{self, Change, Sides};

/// The row of a link.
#[component]
pub(super) fn LinkRow(
    /// Which link.
    index: usize,
    /// Changes the rig at this link.
    on_change: Callback<(usize, Change)>,
) -> impl IntoView {
    let session = use_session();
    let row = Memo::new(move |_| {
        session.rig.with(|whole| rig_list::row(whole, index, session.units.get())).unwrap_or_default()
    });
    let mark =
        move || row.read().judged.map(|judged| view! { <VerdictMark verdict=judged.verdict word=judged.word /> });
    let saw = move || row.read().saw.clone().map(|saw| view! { " " <b>{saw}</b> });
    view! {
        <li data-link=index>
            <div>
                <div class="rig-line"><h4>{move || row.read().title.clone()}</h4>{mark}</div>
                <p class="rig-size phrases">
                    {move || view! { <Phrases text=row.read().size.clone() /> }}
                    {saw}
                </p>
                <p class="help">{move || row.read().rests_on.clone()}</p>
            </div>
            <LinkButtons index on_change />
        </li>
    }
}

/// The buttons of a row. For a screen reader each label names the link.
#[component]
fn LinkButtons(
    /// Which link.
    index: usize,
    /// Changes the rig at this link.
    on_change: Callback<(usize, Change)>,
) -> impl IntoView {
    let session = use_session();
    let buttons = Memo::new(move |_| {
        let system = session.units.get();
        session.document.with(|document| rig_list::buttons(document, index, system)).unwrap_or_default()
    });
    let link = Signal::derive(move || buttons.read().link.clone());
    let other_axle = move || buttons.read().other_axle.clone();
    let sides = move || buttons.read().sides.clone().map(|sides| view! { <SideButtons index link sides on_change /> });
    view! {
        <div class="buttons">
            <button type="button" class="open" id=format!("open-{index}") on:click=move |_| session.open_link(index)>
                "Open"<span class="unseen">" "{link}</span>
            </button>
            <button type="button" class="quiet" on:click=move |_| on_change.run((index, Change::CopyToOtherAxle))>
                {other_axle}<span class="unseen">": "{link}</span>
            </button>
            {sides}
            <button type="button" class="quiet remove" on:click=move |_| on_change.run((index, Change::Remove))>
                "Remove"<span class="unseen">" "{link}</span>
            </button>
        </div>
    }
}

/// What can be done about the sides of a link.
#[component]
fn SideButtons(
    /// Which link.
    index: usize,
    /// What the link is called.
    link: Signal<String>,
    /// What they do.
    sides: Sides,
    /// Changes the rig at this link.
    on_change: Callback<(usize, Change)>,
) -> impl IntoView {
    let Sides { label, change, joins } = sides;
    let join = joins.then(|| {
        view! {
            <button type="button" class="quiet" on:click=move |_| on_change.run((index, Change::Join))>
                "Join left and right"<span class="unseen">": "{link}</span>
            </button>
        }
    });
    view! {
        <button type="button" class="quiet" on:click=move |_| on_change.run((index, change))>
            {label}<span class="unseen">": "{link}</span>
        </button>
        {join}
    }
}
