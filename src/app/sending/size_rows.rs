//! Sizes with their names, a row each.

use leptos::prelude::*;
use linkwright::present::ends::SizeRow;

/// The rows.
#[component]
pub(crate) fn SizeRows(
    /// What they show.
    #[prop(into)]
    rows: Signal<Vec<SizeRow>>,
) -> impl IntoView {
    // The elements stay while the sizes change.
    let names = Memo::new(move |_| rows.with(|rows| rows.iter().map(|row| row.name).collect::<Vec<_>>()));
    let value_of = move |name| rows.with(|rows| rows.iter().find(|row| row.name == name).map(|row| row.value.clone()));
    view! {
        <dl class="rows">
            <For each=move || names.get() key=|name| *name let(name)>
                <div><dt>{name}</dt><dd>{move || value_of(name)}</dd></div>
            </For>
        </dl>
    }
}
