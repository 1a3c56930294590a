//! Is it still safe? The check of a link as it is fitted.

use leptos::prelude::*;

/// The place.
#[component]
pub(super) fn Safe() -> impl IntoView {
    view! { <p class="help">"This place is being built."</p> }
}
