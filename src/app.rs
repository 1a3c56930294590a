//! The page: header, entries, the open view.
#![allow(unreachable_pub, reason = "the macro of components writes some of their parts as `pub`")]

mod drawings;
mod entries;
mod fields;
mod fit;
mod formula;
mod frame;
mod later;
mod make;
#[cfg(test)]
mod mounted;
mod order;
mod prove;
mod rig;
mod saved;
mod sending;
mod session;
mod shop;
mod size;

use crate::browser::page;
use drawings::LeadingDrawing;
use entries::{Defaults, Entries};
use fields::provide_in_sight;
use frame::{Footer, Header, Notices, Summary};
use later::{LaterPart, LaterSheet, Part, provide_later, use_waiting_words};
use leptos::prelude::*;
use linkwright::present::{self, summary, words};
use linkwright::report::LinkReport;
use session::{Session, View, use_session};
use size::{Invitation, Size};

/// The whole page.
#[component]
pub(crate) fn App() -> impl IntoView {
    let session = Session::open();
    provide_context(session);
    provide_later(session);
    provide_in_sight();
    let title = Memo::new(move |_| {
        let one = session.view.get().is_of_one_link();
        let link = one.then(|| session.link.get());
        let title = session.document.with(|document| summary::page_title(document, link, session.units.get()));
        match (session.view.get(), session.fit_place.get()) {
            (View::Size, _) => title,
            (View::Fit, Some(place)) => format!("{}, {title}", place.title().trim_end_matches('?')),
            (view, _) => format!("{}, {title}", view.label()),
        }
    });
    Effect::new(move |_| title.with(|title| page::set_title(title)));
    let is = move |view| move || session.view.get() == view;
    view! {
        <button type="button" class="skip" on:click=|_| page::show("answer")>
            "Skip to the answer"
        </button>
        <Header />
        <Notices />
        <main
            class="page-columns"
            class:proving=move || session.answered.get() && session.view.get() == View::Prove
            class:answered=move || session.answered.get()
            class:whole=is(View::Rig)
            class:saved=is(View::Saved)
            class:ordering=is(View::Order)
            class:making=is(View::Make)
            class:fit=is(View::Fit)
        >
            <LeadingDrawing />
            // These views ask for themselves.
            <Show when=move || !session.view.get().asks_for_itself()>
                <Entries />
            </Show>
            <section class="sheet" id="answer" tabindex="-1" aria-label="The answer">
                <OpenView />
            </section>
            // On a phone the answer comes first.
            <Show when=move || !session.columns.get() && !session.view.get().asks_for_itself()>
                <Defaults />
            </Show>
        </main>
        <Footer />
        <SummaryLine />
    }
}

/// What stands open: the views of one link are one, for paper shows both.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Open {
    OneLink,
    Order,
    Make,
    Fit,
    Rig,
    Saved,
}

/// The open view.
#[component]
fn OpenView() -> impl IntoView {
    let session = use_session();
    let open = Memo::new(move |_| match session.view.get() {
        View::Size | View::Prove => Open::OneLink,
        View::Order => Open::Order,
        View::Make => Open::Make,
        View::Fit => Open::Fit,
        View::Rig => Open::Rig,
        View::Saved => Open::Saved,
    });
    move || match open.get() {
        Open::OneLink => view! { <OneLink /> }.into_any(),
        Open::Order => view! { <LaterPart of=Part::Order /> }.into_any(),
        Open::Make => view! { <LaterPart of=Part::Make /> }.into_any(),
        Open::Fit => view! { <LaterPart of=Part::Fit /> }.into_any(),
        Open::Rig => view! { <LaterPart of=Part::Rig /> }.into_any(),
        Open::Saved => view! { <LaterPart of=Part::Saved /> }.into_any(),
    }
}

/// The answer for one link, or its proof; on paper both, one after the other.
#[component]
fn OneLink() -> impl IntoView {
    let session = use_session();
    let view = session.view;
    // Each is asked for by itself: where paper adds the one, the other keeps its folds and the focus.
    let paper = Memo::new(move |_| session.printing.get() || session.laid_open.get());
    let answers = move || view.get() != View::Prove || !session.entered.get() || paper.get();
    let proves = move || session.entered.get() && (view.get() == View::Prove || paper.get());
    view! {
        <Show when=answers>
            <Answer />
        </Show>
        <Show when=proves>
            <LaterPart of=Part::Prove />
        </Show>
    }
}

/// The answer, or what stands in its place.
#[component]
fn Answer() -> impl IntoView {
    let session = use_session();
    // Somebody who prints the proof wants both. Not before the sheet is written: else nothing at all would be printed.
    let alone = move || {
        session.view.get() == View::Size && !session.laid_open.get() && session.printing.get() && session.arrived.get()
    };
    let instead = move || match session.report.get() {
        LinkReport::Impossible(why) => view! { <p class="stop" id="headline">{session.say(&why)}</p> }.into_any(),
        LinkReport::Needs(needs) => view! { <Invitation needs /> }.into_any(),
        LinkReport::Answer(_) => ().into_any(),
    };
    view! {
        <Show when=move || session.answered.get() fallback=move || instead>
            <div class="sheets own" class:alone=alone>
                <Show when=move || session.printing.get()><LaterSheet /></Show>
            </div>
            <Size />
            <LaterPart of=Part::Below />
        </Show>
    }
}

/// The line that stays in sight.
#[component]
fn SummaryLine() -> impl IntoView {
    let session = use_session();
    let waiting = use_waiting_words();
    let link = move || {
        let stale = session.answered.get() && session.is_stale_for_good();
        let (link, system) = (session.link.get(), session.units.get());
        let says = if session.view.get() == View::Make { summary::line_to_make } else { summary::line };
        session.report.with(|report| session.document.with(|document| says(report, document, link, system, stale)))
    };
    let line = move || match (session.view.get(), waiting.get()) {
        (View::Order | View::Make | View::Fit | View::Rig | View::Saved, Some(waiting)) => waiting.to_string(),
        // Under the rig the size says nothing of what was found on it.
        (View::Fit, None) => session.document.with(|document| words::titled(document, session.link.get())),
        (View::Rig, None) => present::rig::summary(&session.rig.read()),
        (View::Saved, None) => saved::short_state(session),
        _ => link(),
    };
    view! { <Summary line=Signal::derive(line) /> }
}
