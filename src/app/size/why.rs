//! Why this size: which rule decides, the sizes around it, and its margin.

use super::margin::MarginFold;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine;
use linkwright::present::sizes::{self, CandidateRow};

/// Heads of the columns.
const SIZE: &str = "Bar and rod ends";
const UTILIZATION: &str = "Highest utilization";

/// The section.
#[component]
pub(super) fn WhyThisSize() -> impl IntoView {
    let session = use_session();
    // Looked for once, though the units may change.
    let neighbors = Memo::new(move |_| {
        let answer = session.answer_below.get();
        let recommended = answer.as_ref().and_then(|answer| answer.sizing.recommended.as_ref());
        let around = |of| session.document.with(|document| engine::neighbors(document, session.link.get(), of));
        recommended.map(around).unwrap_or_default()
    });
    let why = Memo::new(move |_| {
        let system = session.units.get();
        session.answer_below.get().map(|answer| neighbors.with(|neighbors| sizes::why(&answer, neighbors, system)))
    });
    let content = move || {
        why.get().map(|why| {
            view! {
                <p id="governs">{why.governs}</p>
                {why.chosen.map(|words| view! { <p>{words}</p> })}
                <Candidates rows=why.candidates />
                {why.practice.map(|words| view! { <p class="source">{words}</p> })}
            }
        })
    };

    view! {
        <section class="part-of" id="why" tabindex="-1">
            <h3>"Why this size"</h3>
            {content}
            <MarginFold />
        </section>
    }
}

/// The sizes that were compared; nothing where there are none.
#[component]
fn Candidates(
    /// A row for each.
    rows: Vec<CandidateRow>,
) -> impl IntoView {
    let row = |row: CandidateRow| {
        view! {
            <tr class:chosen=row.recommended>
                <th scope="row">{row.name}</th>
                <td data-of=SIZE><span>{row.bar}","</span>" "<span>{row.thread}</span></td>
                <td data-of=UTILIZATION><span>{row.utilization}</span><small>{row.decides}</small></td>
            </tr>
        }
    };

    (!rows.is_empty()).then(|| {
        view! {
            <table class="sizes">
                <thead>
                    <tr>
                        <th scope="col">"Size"</th>
                        <th scope="col">{SIZE}</th>
                        <th scope="col">{UTILIZATION}</th>
                    </tr>
                </thead>
                <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
            </table>
        }
    })
}
