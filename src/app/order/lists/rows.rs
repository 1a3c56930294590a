//! The rows of a list as a table, a page at a time, and the search through them.

use super::cell::ListCell;
use crate::app::session::use_session;
use crate::app::shop::Shop;
use leptos::prelude::*;
use linkwright::present::order::lists::{EMPTY, ListColumn, ListRow, Page, ROWS_OF_A_PAGE, columns, page, row};
use linkwright::shop::lines::RowId;
use linkwright::shop::{self, Kind};

/// The table, with a button that adds a row.
#[component]
pub(super) fn Rows(
    /// The shop's lists.
    shop: Shop,
    /// Which of them.
    kind: Kind,
) -> impl IntoView {
    let session = use_session();
    let count = Memo::new(move |_| shop.lists.with(|lists| shop::rows(lists, kind)));
    let many = move || count.get() > ROWS_OF_A_PAGE;
    let headings = Memo::new(move |_| columns(kind, session.units.get()));
    let words = RwSignal::new(String::new());
    let wanted = RwSignal::new(0_usize);
    let rows = Memo::new(move |_| shop.rows(kind));
    // Looked for anew when rows come and go, not when a cell changes: a row stays in sight while it is edited.
    let found = Memo::new(move |_| {
        rows.with(|_| ());
        words.with(|words| shop.found(kind, words))
    });
    let shown = Memo::new(move |_| page(wanted.get(), found.with(Vec::len)));
    let of_page = move || {
        let Page { from, to, .. } = shown.get();
        found.with(|found| found.get(from..to).unwrap_or_default().to_vec())
    };
    let add = move |_| {
        words.set(String::new());
        shop.add(kind);
        wanted.set(usize::MAX);
    };
    let look = move |typed: String| {
        words.set(typed);
        wanted.set(0);
    };
    let heads =
        move || headings.get().into_iter().map(|column| view! { <th scope="col">{column.heading}</th> }).collect_view();
    let field = format!("find-{}", kind.id());
    view! {
        <Show when=many>
            <div class="field find-rows">
                <label for=field.clone()>"Find rows by what stands in them"</label>
                <div class="entry words">
                    <input
                        id=field.clone()
                        type="search"
                        autocomplete="off"
                        spellcheck="false"
                        prop:value=move || words.get()
                        on:input:target=move |event| look(event.target().value())
                    />
                </div>
            </div>
            <Pages shown count wanted />
        </Show>
        <Show when=move || count.get() != 0 fallback=|| view! { <p>{EMPTY}</p> }>
            <div class="scroll" tabindex="0" role="region" aria-label=kind.label()>
                <table class="list">
                    <thead><tr>{heads}<th scope="col"><span class="unseen">"Remove"</span></th></tr></thead>
                    <tbody>
                        <For each=of_page key=|id| *id let(id)>
                            <OneRow shop kind id headings />
                        </For>
                    </tbody>
                </table>
            </div>
        </Show>
        <div class="buttons">
            <button type="button" id=format!("add-{}", kind.id()) on:click=add>"Add a row"</button>
        </div>
    }
}

/// Which rows are shown, and the way to the others.
#[component]
fn Pages(
    /// The page that is shown.
    shown: Memo<Page>,
    /// How many rows the list has.
    count: Memo<usize>,
    /// Which page is wanted.
    wanted: RwSignal<usize>,
) -> impl IntoView {
    view! {
        <div class="buttons pages">
            <button
                type="button"
                class="rows-before"
                disabled=move || shown.with(|shown| shown.number == 0)
                on:click=move |_| wanted.set(shown.with_untracked(|shown| shown.number.saturating_sub(1)))
            >
                "Rows before"
            </button>
            <button
                type="button"
                class="rows-after"
                disabled=move || shown.with(|shown| shown.number + 1 >= shown.pages)
                on:click=move |_| wanted.set(shown.with_untracked(|shown| shown.number + 1))
            >
                "Rows after"
            </button>
            <span role="status">{move || shown.with(|shown| shown.words(count.get()))}</span>
        </div>
    }
}

/// One row. Its cells stay while one of them is typed into.
#[component]
fn OneRow(
    /// The shop's lists.
    shop: Shop,
    /// Which of them.
    kind: Kind,
    /// Which row.
    id: RowId,
    /// The columns.
    headings: Memo<Vec<ListColumn>>,
) -> impl IntoView {
    let session = use_session();
    let place = Memo::new(move |_| {
        shop.lists.track();
        shop.place(kind, id).unwrap_or_default()
    });
    let shown: Memo<ListRow> =
        Memo::new(move |_| shop.lists.with(|lists| row(lists, kind, place.get(), session.units.get())));
    let remove = move |_| {
        if let Some(read) = shop.as_read(kind, id) {
            shop.remove(kind, &read);
        }
    };
    let complaint = move || shown.with(|shown| shown.complaint.clone());
    let cells = move || {
        let cell = |(column, of)| view! { <ListCell shop kind id place shown column of /> };
        headings.get().into_iter().enumerate().map(cell).collect_view()
    };
    view! {
        <tr>
            {cells}
            <td>
                <button type="button" class="quiet" on:click=remove>
                    "Remove"<span class="unseen">{move || format!(" row {}", place.get() + 1)}</span>
                </button>
                {move || complaint().map(|words| view! { <p class="error">{words}</p> })}
            </td>
        </tr>
    }
}
