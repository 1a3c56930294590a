//! The views that the first answer does not need, the only place where the program is cut in two.
//!
//! `cargo xtask build` turns on the feature `cut`: then what only [`load`] leads to comes in a second file, fetched once
//! the first answer stands there. Without the feature `load` is a function like any other.

use crate::app::session::{Session, View, use_session};
use crate::app::{fit, make, order, prove, rig, saved, sending, size};
use crate::browser::{page, window};
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_split::SplitLoaderError;
#[cfg(feature = "cut")]
use leptos::wasm_split::{self, wasm_split};
pub(crate) use linkwright::present::waiting::Part;
use linkwright::present::waiting::{LOAD_AGAIN, LOADING, NOT_LOADED, SLOW};
use std::time::Duration;

/// The views of the second part.
struct LaterViews {
    below: fn() -> AnyView,
    prove: fn() -> AnyView,
    order: fn() -> AnyView,
    make: fn() -> AnyView,
    fit: fn() -> AnyView,
    rig: fn() -> AnyView,
    saved: fn() -> AnyView,
    sheet: fn() -> AnyView,
    /// What goes on from its arrival, whatever view is open.
    arrive: fn(Session),
}

/// Brings the second part: the macro writes the crossing, and makes it wait for the file.
#[cfg(feature = "cut")]
#[wasm_split(rest, wasm_split_path = wasm_split, fallible)]
fn load() -> Result<&'static LaterViews, SplitLoaderError> {
    Ok(views())
}

/// Brings the second part, which is here already.
#[cfg(not(feature = "cut"))]
async fn load() -> Result<&'static LaterViews, SplitLoaderError> {
    Ok(views())
}

fn views() -> &'static LaterViews {
    &LaterViews {
        below: || view! { <size::Below /> }.into_any(),
        prove: || view! { <prove::Prove /> }.into_any(),
        order: || view! { <order::Order /> }.into_any(),
        make: || view! { <make::Make /> }.into_any(),
        fit: || view! { <fit::Fit /> }.into_any(),
        rig: || view! { <rig::Rig /> }.into_any(),
        saved: || view! { <saved::Saved /> }.into_any(),
        sheet: || view! { <sending::CurrentSheet /> }.into_any(),
        arrive: Session::keep_log_along,
    }
}

/// How far the second part has come.
#[derive(Clone, Copy)]
enum Arrival {
    OnItsWay,
    Missing,
    Here(&'static LaterViews),
}

/// The second part, for the components of this file.
#[derive(Clone, Copy)]
struct Later(RwSignal<Arrival>);

/// After this long the page says that loading takes long.
const LATE: Duration = Duration::from_secs(15);

/// Has the second part fetched as soon as the first screen is shown. Where it did not come, turning to another view
/// or a network that is back is as good as pressing the button.
pub(crate) fn provide_later(session: Session) {
    let later = Later(RwSignal::new(Arrival::OnItsWay));
    provide_context(later);
    Effect::new(move |before: Option<()>| {
        session.view.track();
        if before.is_none() {
            later.fetch(session, |_| {});
        } else {
            later.fetch_missing(session);
        }
    });
    window::on("online", move |_| later.fetch_missing(session));
}

impl Later {
    /// Sends for the part, and does something once it is here or failed to come: `then` gets whether it is here.
    fn fetch(self, session: Session, then: impl FnOnce(bool) + 'static) {
        spawn_local(async move {
            let loaded = load().await;
            // A page that has stopped meanwhile shows what can be taken along, and goes on with nothing.
            if !page::is_live() {
                return;
            }
            let here = loaded.is_ok();
            if !matches!(self.0.get_untracked(), Arrival::Here(_)) {
                if let Ok(views) = loaded {
                    (views.arrive)(session);
                }
                self.0.set(loaded.map_or(Arrival::Missing, Arrival::Here));
                session.arrived.set(here);
            }
            then(here);
            if here {
                session.show_wanted_place();
            }
        });
    }

    fn fetch_missing(self, session: Session) {
        if matches!(self.0.get_untracked(), Arrival::Missing) {
            self.fetch_again(session);
        }
    }

    /// Sends for the part again. The focus of the button that goes away waits for what comes, unless the reader turns to
    /// something else.
    fn fetch_again(self, session: Session) {
        let waits = page::has_focus("fetch-again");
        self.0.set(Arrival::OnItsWay);
        if waits {
            set_timeout(|| page::focus("on-its-way"), Duration::ZERO);
        }
        self.fetch(session, move |here| {
            if page::has_focus("on-its-way") {
                let place = match session.view.get_untracked() {
                    _ if !here => "missing",
                    View::Size => "below",
                    _ => "answer",
                };
                set_timeout(move || page::show(place), Duration::ZERO);
            }
        });
    }
}

/// A part, or what stands in its place until it is here.
#[component]
pub(crate) fn LaterPart(
    /// Which one.
    of: Part,
) -> impl IntoView {
    let session = use_session();
    let Later(arrival) = expect_context();
    move || match arrival.get() {
        Arrival::Here(views) => match of {
            Part::Below => (views.below)(),
            Part::Prove => (views.prove)(),
            Part::Order => (views.order)(),
            Part::Make => (views.make)(),
            Part::Fit => (views.fit)(),
            Part::Rig => (views.rig)(),
            Part::Saved => (views.saved)(),
        },
        _ if session.printing.get() => view! { <p class="stop">{of.not_printed()}</p> }.into_any(),
        Arrival::OnItsWay => view! { <OnItsWay of /> }.into_any(),
        Arrival::Missing => view! { <Missing of /> }.into_any(),
    }
}

/// The current link as a sheet of paper, once that can be written.
#[component]
pub(crate) fn LaterSheet() -> impl IntoView {
    let Later(arrival) = expect_context();
    move || match arrival.get() {
        Arrival::Here(views) => Some((views.sheet)()),
        Arrival::OnItsWay | Arrival::Missing => None,
    }
}

/// Said while the part comes.
#[component]
fn OnItsWay(of: Part) -> impl IntoView {
    let late = RwSignal::new(false);
    set_timeout(
        move || {
            let _ = late.try_set(true);
        },
        LATE,
    );
    // A screen reader has just announced the answer; this below it must not interrupt.
    let role = (of != Part::Below).then_some("status");
    view! {
        <p id="on-its-way" tabindex="-1" role=role>
            {of.on_its_way()}
            {move || late.get().then(|| format!(" {SLOW}"))}
        </p>
    }
}

/// Said where the part did not come, with a way to try again.
#[component]
fn Missing(of: Part) -> impl IntoView {
    let session = use_session();
    let later: Later = expect_context();
    view! {
        <div id="missing" tabindex="-1">
            <p class="stop" role="alert">{of.missing()}</p>
            <div class="buttons">
                <button type="button" id="fetch-again" on:click=move |_| later.fetch_again(session)>"Try again"</button>
            </div>
            <p class="help">{LOAD_AGAIN}</p>
        </div>
    }
}

/// What the line in sight says of a view that is not here.
pub(crate) fn use_waiting_words() -> Signal<Option<&'static str>> {
    let Later(arrival) = expect_context();
    Signal::derive(move || match arrival.get() {
        Arrival::Here(_) => None,
        Arrival::OnItsWay => Some(LOADING),
        Arrival::Missing => Some(NOT_LOADED),
    })
}
