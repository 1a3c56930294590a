//! The Fit view: six places for whoever lies under the rig.

mod broken;
mod card;
mod fit_it;
mod guide;
mod hit;
mod into_log;
mod log;
mod number;
mod open_hit;
mod own_rod_end;
mod reading;
mod recheck;
mod safe;
mod spares;
mod state;
#[cfg(test)]
mod tests;
mod turn;

use crate::app::entries::LinkPicker;
use crate::app::fields::{Fold, StaleNote};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::fit::hit as hit_words;
use linkwright::present::fit::log::DAMAGED;
use linkwright::present::fit::{AFTER_A_HIT, ENTER_LINK, NO_LINK, NOTHING_JUDGED, Place, which_ends};
use linkwright::present::words;
use state::{provide_fitting, use_fitting};

/// The view.
#[component]
pub(crate) fn Fit() -> impl IntoView {
    let session = use_session();
    let fitting = provide_fitting();
    let kicker = move || session.document.with(|document| words::titled(document, session.link.get()));
    let title = move || session.fit_place.get().map_or("Fit it and keep it", Place::title);
    view! {
        <div class="fit-head">
            <p class="kicker">{kicker}</p>
            <Show when=move || session.fit_place.get().is_some()>
                <button type="button" class="quiet back on-screen" on:click=move |_| fitting.open(None)>
                    "All of Fit"
                </button>
            </Show>
            <h2 id="fit-title" tabindex="-1">{title}</h2>
            <StaleNote />
            <LinkPicker />
            <Show when=move || session.answered.get()><BarPicker /></Show>
            <Ends />
            <Show when=move || !fitting.whole.get()>
                <p class="stop" id="log-damaged" role="alert">{DAMAGED}</p>
            </Show>
            <open_hit::OpenHit />
        </div>
        <Show
            when=move || session.answered.get()
            fallback=|| view! { <WithoutLink /> }
        >
            {move || match session.fit_place.get() {
                None => view! { <Places /> }.into_any(),
                Some(Place::Safe) => view! { <safe::Safe /> }.into_any(),
                Some(Place::Turn) => view! { <turn::TurnIt /> }.into_any(),
                Some(Place::FitIt) => view! { <fit_it::FitIt /> }.into_any(),
                Some(Place::Recheck) => view! { <recheck::Recheck /> }.into_any(),
                Some(Place::Hit) => view! { <hit::AfterAHit /> }.into_any(),
                Some(Place::Spares) => view! { <spares::Spares /> }.into_any(),
            }}
            <log::LogSection />
            <Show when=move || session.fit_place.get().is_some()>
                <p class="on-screen">
                    <button type="button" class="quiet back" id="fit-back" on:click=move |_| fitting.open(None)>
                        "All of Fit"
                    </button>
                </p>
            </Show>
        </Show>
    }
}

/// Before there is a link: the way to it, and what needs no numbers.
#[component]
fn WithoutLink() -> impl IntoView {
    let session = use_session();
    let enter = move |_| session.open_link(session.link.get_untracked());
    let look = |(label, help): (&'static str, &'static str)| {
        view! { <li><b>{label}</b>" "<span class="help">{help}</span></li> }
    };
    view! {
        <p class="stop" id="fit-needs">{NO_LINK}</p>
        <p class="on-screen"><button type="button" id="fit-enter" on:click=enter>{ENTER_LINK}</button></p>
        <Fold summary=AFTER_A_HIT id="fit-looks">
            <p>{hit_words::HELP}</p>
            <ul>{hit_words::looks().map(look).collect_view()}</ul>
            <p><b>{NOTHING_JUDGED}</b></p>
            <p class="help">{hit_words::CAUTION}</p>
        </Fold>
        <broken::Broken />
        <guide::GuideWithoutLink />
    }
}

/// The six places, as large buttons.
#[component]
fn Places() -> impl IntoView {
    let fitting = use_fitting();
    let button = move |place: Place| {
        view! {
            <button type="button" id=format!("fit-{}", place.id()) on:click=move |_| fitting.open(Some(place))>
                <b>{place.title()}</b>
                <small>{place.help()}</small>
            </button>
        }
    };
    view! {
        <div class="places">{Place::ALL.map(button).collect_view()}</div>
        <guide::Guide />
        <card::PocketCard />
    }
}

/// Which end is A, which every direction goes by.
#[component]
fn Ends() -> impl IntoView {
    let session = use_session();
    let words = move || session.answer.get().map(|answer| which_ends(&answer.link));
    view! { <p class="help" id="which-ends">{words}</p> }
}

/// Which bar of a pair is looked at; nothing where the link is one.
#[component]
fn BarPicker() -> impl IntoView {
    let fitting = use_fitting();
    let pick = move |(index, (_, title)): (usize, (_, String))| {
        let id = format!("bar-{index}");
        view! {
            <label class="radio" for=id.clone()>
                <input
                    type="radio"
                    name="bar"
                    id=id.clone()
                    prop:checked=move || fitting.chosen.get() == index
                    on:change=move |_| fitting.chosen.set(index)
                />
                <span><b>{title}</b></span>
            </label>
        }
    };
    view! {
        <Show when=move || fitting.bars.with(Vec::len).gt(&1)>
            <fieldset class="radios bars on-screen">
                <legend class="unseen">"Which bar"</legend>
                <div class="row">{move || fitting.bars.get().into_iter().enumerate().map(pick).collect_view()}</div>
            </fieldset>
        </Show>
    }
}
