//! The buttons of a saved build.

use super::state::SavedState;
use leptos::prelude::*;

/// A button of a build; for a screen reader its label names the build.
#[component]
pub(super) fn BuildButton(
    /// What it does, as an attribute.
    action: &'static str,
    /// Its class.
    class: &'static str,
    /// What stands on it.
    label: &'static str,
    /// What the build is called.
    #[prop(into)]
    name: Signal<String>,
    /// Does it.
    #[prop(into)]
    on_press: Callback<()>,
) -> impl IntoView {
    view! {
        <button type="button" class=class data-do=action on:click=move |_| on_press.run(())>
            {label}<span class="unseen">": "{name}</span>
        </button>
    }
}

/// A button that must be pressed twice.
#[component]
pub(super) fn DeleteForGood(
    /// What the view holds.
    state: SavedState,
    /// The id of the build.
    id: StoredValue<String>,
) -> impl IntoView {
    let label = move || {
        let armed = id.with_value(|id| state.is_armed(id));
        if armed { "Press again: it is gone for good" } else { "Delete for good" }
    };
    let press = move |_| id.with_value(|id| state.delete_for_good(id));
    view! { <button type="button" class="quiet forget" data-do="forget" on:click=press>{label}</button> }
}
