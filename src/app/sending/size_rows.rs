//! Sizes with their names, a row each.

use leptos::prelude::*;
use linkwright::present::ends::SizeRow;

/// The rows.
#[component]
pub(crate) fn SizeRows(
    /// What they show.
    rows: Vec<SizeRow>,
) -> impl IntoView {
    let row = |SizeRow { name, value }| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    view! { <dl class="rows">{rows.into_iter().map(row).collect_view()}</dl> }
}
