//! Turn it: from the length it has to the one that is wanted.

use leptos::prelude::*;

/// The place.
#[component]
pub(super) fn TurnIt() -> impl IntoView {
    view! { <p class="help">"This place is being built."</p> }
}
