//! Spares: what to carry, and whether a borrowed part fits.

use leptos::prelude::*;

/// The place.
#[component]
pub(super) fn Spares() -> impl IntoView {
    view! { <p class="help">"This place is being built."</p> }
}
