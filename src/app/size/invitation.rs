//! What stands in place of the answer until it can be given.

use leptos::prelude::*;
use linkwright::present::summary::is_first_visit;
use linkwright::present::words::still_needed;

/// What is still needed; for whoever opens the page, how to measure it and what comes of it.
#[component]
pub(crate) fn Invitation(
    /// The ids of the entries that are missing.
    needs: Vec<&'static str>,
) -> impl IntoView {
    let needed = still_needed(&needs);
    if !is_first_visit(&needs) {
        return view! { <p class="stop" id="still-needed">{needed}</p> }.into_any();
    }
    view! {
        <div class="invitation">
            <p class="lead">
                "Measure one link from hole center to hole center. Add what the rig weighs, loaded, and how you drive it."
            </p>
            <p id="still-needed">{needed}</p>
            <p>
                "You get the bar, the rod ends, what to saw, tap and set, and how much margin it has. Every number opens its working."
            </p>
        </div>
    }
    .into_any()
}
