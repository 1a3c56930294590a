//! Spares: what to carry, and whether a borrowed part fits.

mod borrowed;

use super::own_rod_end::EnterRodEnds;
use super::state::use_fitting;
use crate::app::fields::{PaperPart, VerdictMark};
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use borrowed::{BorrowedLinkForm, BorrowedRodEndForm};
use leptos::prelude::*;
use linkwright::present::fit::own_rod_end::of_rig;
use linkwright::present::fit::spares::{ALSO, Bar, HELP, List, TITLE, list};
use linkwright::present::words::rig_title;
use linkwright::report::Verdict;

/// The place.
#[component]
pub(super) fn Spares() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let listed = Memo::new(move |_| {
        let system = session.units.get();
        session.rig.with(|whole| {
            fitting.log.with(|log| {
                let hit = |link: usize| log.open_hits(&whole.document, link).next().is_some();
                list(&whole.document, &whole.links, &hit, system)
            })
        })
    });
    let unmeasured = Memo::new(move |_| session.rig.with(|whole| of_rig(&whole.document, &whole.links)));
    view! {
        <BorrowedRodEndForm />
        <BorrowedLinkForm />
        <section class="part-of" id="spares-list">
            <h3>{TITLE}</h3>
            <p class="help">{HELP}</p>
            {move || view! { <Lines listed=listed.get() /> }}
            <EnterRodEnds ends=unmeasured />
            <p class="on-screen">
                <button type="button" id="print-spares" on:click=move |_| session.print_part("spares")>
                    "Print the list"
                </button>
            </p>
        </section>
        <PaperPart name="spares"><Paper listed /></PaperPart>
    }
}

/// Bars, parts and what to mind.
#[component]
fn Lines(listed: List) -> impl IntoView {
    let List { bars, parts, notes } = listed;
    let link = |(verdict, word, words): (Verdict, &'static str, String)| {
        view! { <li><VerdictMark verdict word />" "{words}</li> }
    };
    let bar = |bar: Bar| {
        view! {
            <li>
                <b>"1 × "{bar.name}</b>
                <ul class="fit-lines">{bar.links.into_iter().map(link).collect_view()}</ul>
            </li>
        }
    };
    let part = |(name, count, remark): (String, usize, &'static str)| {
        let remark = (!remark.is_empty()).then(|| view! { <small>" ("{remark}")"</small> });
        view! { <li>{format!("{count} × {name}")}{remark}</li> }
    };
    view! {
        <ul class="spares">
            {bars.into_iter().map(bar).collect_view()}
            {parts.into_iter().map(part).collect_view()}
        </ul>
        {notes.into_iter().map(|note| view! { <p class="help">{note}</p> }).collect_view()}
        <ul>{ALSO.map(|words| view! { <li>{words}</li> }).into_iter().collect_view()}</ul>
    }
}

/// The list on paper. It does not change any more: nothing is tracked.
#[component]
fn Paper(listed: Memo<List>) -> impl IntoView {
    let session = use_session();
    let system = session.units.get_untracked();
    let name = session.document.with_untracked(|document| rig_title(document, system));
    let unverified = session.origin.with_untracked(|origin| origin.unverified.clone());
    view! {
        <article class="spares-sheet">
            <p class="sheet-name">{TITLE}": "{name}</p>
            <PrintedLine />
            {unverified.into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view()}
            <Lines listed=listed.get_untracked() />
        </article>
    }
}
