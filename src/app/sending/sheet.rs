//! A link on a sheet of its own, for the saw and the lathe: only printed, and built only then.

use super::{AdjustmentTable, AnswerHead, PartRows, PrintedLine, SizeRows, Steps};
use crate::app::drawings::DrawingView;
use crate::app::session::use_session;
use crate::browser::clock;
use leptos::either::Either;
use leptos::prelude::*;
use linkwright::engine::shop::code::{code_of_link, code_of_made};
use linkwright::log;
use linkwright::present::answer::STALE;
use linkwright::present::drawing::{Layout, end, link};
use linkwright::present::ends::{self, End, Ends};
use linkwright::present::fit::log::{LogLine, OF_ANOTHER, TITLE as LOG, lines};
use linkwright::present::{adjustment, checklist, sheet, words};
use linkwright::quantity::System;
use linkwright::report::{Answer, LinkGeometry};
use std::sync::Arc;

/// The sheet of the current link.
#[component]
pub(crate) fn CurrentSheet() -> impl IntoView {
    let session = use_session();
    move || view! { <Sheet index=session.link.get() answer=session.answer.get() /> }
}

/// The sheet of a link, under a head that names it.
#[component]
pub(crate) fn Sheet(
    /// Which link of the rig it is.
    index: usize,
    /// The answer for it, if there is one.
    answer: Option<Arc<Answer>>,
) -> impl IntoView {
    let inside = match answer {
        Some(answer) => Either::Left(view! { <Answered index answer /> }),
        None => Either::Right(view! { <p>"No answer yet."</p> }),
    };
    view! { <Framed index>{inside}</Framed> }
}

/// What is cut and drilled first, then what is bought, set and minded.
#[component]
fn Answered(
    /// Which link of the rig it is.
    index: usize,
    /// The answer for it.
    answer: Arc<Answer>,
) -> impl IntoView {
    let session = use_session();
    // A printed sheet does not change any more: nothing is tracked.
    let system = session.units.get_untracked();
    let sheet = session.document.with_untracked(|document| sheet::sheet(document, index, &answer, system));
    let stale = untrack(|| session.is_stale());
    let caution = |words| view! { <li>{words}</li> };

    view! {
        {stale.then(|| view! { <p class="stale-note">{STALE}</p> })}
        <AnswerHead head=Some(sheet.head) on_screen=false />
        <figure class="drawing"><DrawingView drawing=link::link(&answer, system, Layout::Wide) /></figure>
        <section class="part-of"><BothEnds ends=sheet.ends made=answer.link.clone() system /></section>
        <section class="part-of">
            <h3>{sheet.parts.title}</h3>
            <PartRows rows=sheet.parts.rows />
        </section>
        <section class="part-of">
            <h3>{adjustment::TITLE}</h3>
            <AdjustmentTable adjustment=sheet.adjustment on_screen=false />
        </section>
        <section class="cautions">
            <ul>{sheet.cautions.into_iter().map(caution).collect_view()}</ul>
        </section>
        <section class="part-of">
            <h3>{checklist::TITLE}</h3>
            <Steps steps=sheet.steps />
        </section>
        <LogOfLink index answer=answer.clone() />
    }
}

/// What was read and done on the rig, bar by bar; nothing where nothing was.
#[component]
fn LogOfLink(
    /// Which link of the rig it is.
    index: usize,
    /// The answer for it.
    answer: Arc<Answer>,
) -> impl IntoView {
    let session = use_session();
    let ((log, _), system) = (session.kept_log(), session.units.get_untracked());
    let (bars, codes) = session.document.with_untracked(|document| {
        let codes = [code_of_made(document, index, &answer), code_of_link(document, index, &answer)];
        (log::bars(document, index), codes.map(|code| code.written()))
    });
    let line = |line: LogLine| {
        let of_another = line.of_another.then_some(OF_ANOTHER);
        view! { <li><b>{line.title}</b>", "{clock::spoken_time(&line.at)}". "{line.words}" "{of_another}</li> }
    };
    let bar = move |(spot, title)| {
        let lines = lines(&log, &spot, &codes, &[], system);
        (!lines.is_empty()).then(|| {
            view! {
                <section class="part-of">
                    <h3>{LOG}": "{title}</h3>
                    <ul class="log">{lines.into_iter().map(line).collect_view()}</ul>
                </section>
            }
        })
    };
    bars.into_iter().map(bar).collect_view()
}

/// A table, because only its head is repeated on every page: a page that was dropped finds its way back.
#[component]
fn Framed(
    /// Which link of the rig it is.
    index: usize,
    /// The sheet.
    children: Children,
) -> impl IntoView {
    let name = use_session().document.with_untracked(|document| words::sheet_name(document, index));

    view! {
        <table class="one-sheet">
            <thead>
                <tr>
                    <th>
                        <p class="sheet-name">{name}</p>
                        <PrintedLine />
                    </th>
                </tr>
            </thead>
            <tbody>
                <tr>
                    <td>{children()}</td>
                </tr>
            </tbody>
        </table>
    }
}

/// Both ends with every size, drawn.
#[component]
fn BothEnds(
    /// Their sizes.
    ends: Ends,
    /// The link they belong to.
    made: LinkGeometry,
    /// The reader's units.
    system: System,
) -> impl IntoView {
    let one = |(index, mut end): (usize, End)| {
        let drawing = end::end(&made, index, Layout::Wide, system);
        end.set.append(&mut end.shop);
        view! {
            <article class="end-of">
                <h4>{end.title}</h4>
                <figure class="drawing"><DrawingView drawing /></figure>
                <SizeRows rows=end.set />
            </article>
        }
    };

    view! {
        <h3>{ends::TITLE}</h3>
        <div class="ends">{ends.ends.into_iter().enumerate().map(one).collect_view()}</div>
        {ends.flats.map(|flats| view! { <p class="flats">{flats}</p> })}
    }
}
