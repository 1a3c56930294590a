//! A cell of a list: typed or picked, taken over when it is left.

use crate::app::session::use_session;
use crate::app::shop::Shop;
use leptos::prelude::*;
use linkwright::present::order::lists::{ListColumn, ListTable};
use linkwright::shop::{self, Kind};

/// The cell.
#[component]
pub(super) fn ListCell(
    /// The shop's lists.
    shop: Shop,
    /// Which of them.
    kind: Kind,
    /// The list as it is shown.
    shown: Memo<ListTable>,
    /// Its row.
    row: usize,
    /// Its column.
    column: usize,
    /// What that column holds.
    of: ListColumn,
) -> impl IntoView {
    let session = use_session();
    let wrong = RwSignal::new(None::<String>);
    let cell = Memo::new(move |_| shown.with(|shown| shown.rows.get(row)?.cells.get(column).cloned()));
    let text = move || cell.with(|cell| cell.as_ref().map(|cell| cell.text.clone()).unwrap_or_default());
    let unread = move || cell.with(|cell| cell.as_ref().is_some_and(|cell| cell.unread)) || wrong.read().is_some();
    let take = move |typed: String| {
        // A cell that was only visited stays as it was written.
        if untrack(|| typed == text() && !unread()) {
            return;
        }
        let system = session.units.get_untracked();
        let taken = shop.edit(kind, |lists| shop::set_cell(lists, kind, row, column, &typed, system));
        wrong.set(taken.and_then(Result::err));
    };
    let label = format!("{}, row {}", of.heading, row + 1);
    let field = if of.options.is_empty() {
        view! {
            <input
                type="text"
                aria-label=label
                aria-invalid=move || unread().to_string()
                aria-required=of.needed.to_string()
                class:number=of.is_number
                autocomplete="off"
                spellcheck="false"
                prop:value=text
                on:change:target=move |event| take(event.target().value())
            />
        }
        .into_any()
    } else {
        let options = of.options.into_iter().map(|pick| view! { <option value=pick.label>{pick.label}</option> });
        view! {
            <select aria-label=label aria-required=of.needed.to_string() prop:value=text on:change:target=move |event| take(event.target().value())>
                <option value=""></option>
                {options.collect_view()}
            </select>
        }
        .into_any()
    };
    view! { <td class:wrong=unread>{field}{move || wrong.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}</td> }
}
