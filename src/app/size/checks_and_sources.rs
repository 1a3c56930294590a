//! The way to every check and to how the link is made, and the values that were assumed.

use crate::app::fields::Fold;
use crate::app::session::{View, use_session};
use leptos::prelude::*;
use linkwright::present::sizes::{self, AssumedRow};

/// The section.
#[component]
pub(super) fn ChecksAndSources() -> impl IntoView {
    let session = use_session();
    let assumed = Memo::new(move |_| {
        session.answer_below.get().map(|answer| sizes::assumed(&answer.assumed, session.units.get()))
    });
    let summary =
        move || sizes::assumed_summary(assumed.with(|assumed| assumed.as_ref().map(Vec::len).unwrap_or_default()));
    let table = move || assumed.get().map(|rows| view! { <AssumedTable rows /> });

    view! {
        <section class="part-of" id="checks-and-sources">
            <h3>"Checks and sources"</h3>
            <div class="buttons">
                <button type="button" id="to-prove" on:click=move |_| session.open_view(View::Prove)>
                    "See why: every check and its working"
                </button>
                <button type="button" id="to-make" on:click=move |_| session.open_view(View::Make)>
                    "How to make it"
                </button>
            </div>
            <Fold summary=Signal::derive(summary)>{table}</Fold>
        </section>
    }
}

/// Every value that was assumed.
#[component]
fn AssumedTable(
    /// A row for each.
    rows: Vec<AssumedRow>,
) -> impl IntoView {
    let row = |row: AssumedRow| {
        view! {
            <tr class:chosen=row.changed>
                <th scope="row">{row.name}</th>
                <td data-of="Now">{row.now}</td>
                <td data-of="Source">{row.source}</td>
            </tr>
        }
    };

    view! {
        <table class="assumed">
            <thead>
                <tr>
                    <th scope="col">"Value"</th>
                    <th scope="col">"Now"</th>
                    <th scope="col">"Source"</th>
                </tr>
            </thead>
            <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
        </table>
    }
}
