//! What broke? Small drawings to pick from, and what the picked one tells.

use super::state::use_fitting;
use crate::app::drawings::DrawingView;
use crate::app::fields::Fold;
use crate::app::session::use_session;
use crate::browser::page;
use leptos::prelude::*;
use linkwright::present::fit::broken::{HELP, Leads, Look, STOPS, TITLE, Told, looks, told};

/// The section.
#[component]
pub(super) fn Broken() -> impl IntoView {
    let session = use_session();
    let picked = RwSignal::new(None::<&'static str>);
    let pick = move |id: Option<&'static str>| {
        picked.set(id);
        page::show_soon("broken-told".to_string());
    };
    let tells = move || {
        let id = picked.get()?;
        session.answer.with(|answer| told(id, answer.as_deref()))
    };
    let each = move |look: Look| view! { <OneLook look picked pick=Callback::new(pick) /> };
    view! {
        <Fold summary=TITLE id="broken">
            <div id="broken-told" tabindex="-1" aria-live="polite">
                {move || match tells() {
                    Some(told) => view! { <Tells told /> }.into_any(),
                    None => view! { <p class="help">{HELP}</p> }.into_any(),
                }}
            </div>
            <div class="broken-looks on-screen">{looks().into_iter().map(each).collect_view()}</div>
        </Fold>
    }
}

/// One look to pick.
#[component]
fn OneLook(look: Look, picked: RwSignal<Option<&'static str>>, pick: Callback<Option<&'static str>>) -> impl IntoView {
    let Look { id, name, drawing } = look;
    let is_picked = move || picked.get() == Some(id);
    view! {
        <button
            type="button"
            id=format!("broken-{id}")
            aria-pressed=move || is_picked().to_string()
            class:chosen=is_picked
            on:click=move |_| pick.run(Some(id))
        >
            <span class="drawing" aria-hidden="true"><DrawingView drawing=Signal::stored(drawing) /></span>
            <span>{name}</span>
        </button>
    }
}

/// Cause, what would have caught it, and what to change.
#[component]
fn Tells(told: Told) -> impl IntoView {
    let Told { name, looks, happened, caught_by, change, stops, source, drawing } = told;
    let caught = |(words, leads): (String, Leads)| view! { <li><Lead words leads /></li> };
    view! {
        <h3>{name}</h3>
        {stops.then(|| view! { <p class="stop">{STOPS}</p> })}
        <div class="drawing broken-large"><DrawingView drawing=Signal::stored(drawing) /></div>
        <p>{looks}</p>
        <h4>"What happened"</h4>
        <p>{happened}</p>
        <h4>"What would have caught it"</h4>
        <ul>{caught_by.into_iter().map(caught).collect_view()}</ul>
        <h4>"What to change"</h4>
        <p>{change}</p>
        <p class="source">{source}</p>
    }
}

/// What would have caught it, as a way to it where there is one.
#[component]
fn Lead(words: String, leads: Leads) -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    match leads {
        Leads::Check(id) => {
            view! { <button type="button" class="quiet" on:click=move |_| session.open_check(id)>{words}</button> }
                .into_any()
        }
        Leads::Place(place) => view! {
            <button type="button" class="quiet" on:click=move |_| fitting.open(Some(place))>{words}</button>
        }
        .into_any(),
        Leads::Nowhere => words.into_any(),
    }
}
