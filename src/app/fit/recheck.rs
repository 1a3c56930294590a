//! Recheck: what to look at, and when.

use leptos::prelude::*;

/// The place.
#[component]
pub(super) fn Recheck() -> impl IntoView {
    view! { <p class="help">"This place is being built."</p> }
}
