//! After a hit: drive on, limp home, or stop.

use leptos::prelude::*;

/// The place.
#[component]
pub(super) fn AfterAHit() -> impl IntoView {
    view! { <p class="help">"This place is being built."</p> }
}
