//! The margin: how far each entry may go while the size stays as it is.

use crate::app::fields::Fold;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::sizes::{self, MARGIN_CAPTION, Margin, MarginRow};

/// The table, folded away; nothing where there is no margin.
#[component]
pub(super) fn MarginFold() -> impl IntoView {
    let session = use_session();
    let margin =
        Memo::new(move |_| session.firmness.with(|firm| sizes::margin(&firm.rows, firm.current, session.units.get())));
    let has_margin = Memo::new(move |_| margin.with(Option::is_some));
    let summary = move || margin.with(|margin| margin.as_ref().map(Margin::heading).unwrap_or_default());
    let table = move || margin.get().map(|margin| view! { <MarginTable head=margin.head rows=margin.rows /> });

    view! {
        <Show when=move || has_margin.get()>
            <Fold id="margin" open=session.wide.get_untracked() summary=Signal::derive(summary)>{table}</Fold>
        </Show>
    }
}

/// A row for each entry.
#[component]
fn MarginTable(
    /// The head of the last column.
    head: &'static str,
    /// The entries.
    rows: Vec<MarginRow>,
) -> impl IntoView {
    let row = |row: MarginRow| {
        view! {
            <tr>
                <th scope="row">{row.entry}</th>
                <td data-of="Now">{row.now}</td>
                <td data-of=head>{row.within}</td>
            </tr>
        }
    };

    view! {
        <table class="firm" id="firm">
            <caption>{MARGIN_CAPTION}</caption>
            <thead>
                <tr>
                    <th scope="col">"Entry"</th>
                    <th scope="col">"Now"</th>
                    <th scope="col">{head}</th>
                </tr>
            </thead>
            <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
        </table>
    }
}
