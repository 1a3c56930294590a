//! Fit it, step by step.

use leptos::prelude::*;

/// The place.
#[component]
pub(super) fn FitIt() -> impl IntoView {
    view! { <p class="help">"This place is being built."</p> }
}
