//! How to measure on a rig, with drawings.

use leptos::prelude::*;

/// The guide, folded.
#[component]
pub(super) fn Guide() -> impl IntoView {
    view! { <p class="help">"This guide is being built."</p> }
}
