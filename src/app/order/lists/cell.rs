//! A cell of a list: typed or picked, taken over when it is left.

use crate::app::session::use_session;
use crate::app::shop::Shop;
use leptos::prelude::*;
use linkwright::present::order::lists::{ListColumn, ListRow};
use linkwright::shop::Kind;
use linkwright::shop::lines::{AsRead, Landed, RowId};

/// The cell.
#[component]
pub(super) fn ListCell(
    /// The shop's lists.
    shop: Shop,
    /// Which of them.
    kind: Kind,
    /// Its row.
    id: RowId,
    /// The place of that row.
    place: Memo<usize>,
    /// That row as it is shown.
    shown: Memo<ListRow>,
    /// Its column.
    column: usize,
    /// What that column holds.
    of: ListColumn,
) -> impl IntoView {
    let session = use_session();
    let wrong = RwSignal::new(None::<String>);
    // The row as it was when this cell was entered: an edit is of that row, whatever another tab did to it since.
    let entered = StoredValue::new(None::<AsRead>);
    // What was typed gives way to what stands there once it landed in another row.
    let anew = RwSignal::new(0_u32);
    let cell = Memo::new(move |_| shown.with(|shown| shown.cells.get(column).cloned()));
    let text = move || cell.with(|cell| cell.as_ref().map(|cell| cell.text.clone()).unwrap_or_default());
    let value = move || {
        anew.track();
        text()
    };
    let unread = move || cell.with(|cell| cell.as_ref().is_some_and(|cell| cell.unread)) || wrong.read().is_some();
    let enter = move |_| {
        entered.set_value(shop.as_read(kind, id));
        shop.enter(kind);
    };
    let take = move |typed: String| {
        // A field that was taken away while it was typed into still tells its last change.
        if wrong.is_disposed() {
            return;
        }
        // A cell that was only visited stays as it was written.
        if untrack(|| typed == text() && !unread()) {
            return;
        }
        let system = session.units.get_untracked();
        let Some(read) = entered.get_value().or_else(|| shop.as_read(kind, id)) else { return };
        let taken = shop.type_into(kind, &read, (column, &typed, system));
        if wrong.is_disposed() {
            return;
        }
        if matches!(taken, Some(Ok(Landed::Below | Landed::AtTheEnd))) {
            anew.update(|count| *count += 1);
        }
        wrong.set(taken.and_then(Result::err));
        entered.set_value(shop.as_read(kind, id));
    };
    // A tab that is left tells of no change: what is half typed is taken before other tabs are heard.
    let leave = move |typed: Option<String>| {
        if let Some(typed) = typed.filter(|typed| !wrong.is_disposed() && untrack(|| *typed != text())) {
            take(typed);
        }
        shop.leave(kind);
    };
    let heading = StoredValue::new(of.heading);
    let label = move || heading.with_value(|heading| format!("{heading}, row {}", place.get() + 1));
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
                prop:value=value
                on:focus=enter
                on:blur:target=move |event| leave(Some(event.target().value()))
                on:change:target=move |event| take(event.target().value())
            />
        }
        .into_any()
    } else {
        let options = of.options.into_iter().map(|pick| view! { <option value=pick.label>{pick.label}</option> });
        view! {
            <select aria-label=label aria-required=of.needed.to_string() prop:value=value on:focus=enter on:blur=move |_| leave(None) on:change:target=move |event| take(event.target().value())>
                <option value=""></option>
                {options.collect_view()}
            </select>
        }
        .into_any()
    };
    view! { <td class:wrong=unread>{field}{move || wrong.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}</td> }
}
