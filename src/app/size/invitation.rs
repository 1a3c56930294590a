//! What stands in place of the answer until it can be given.

use leptos::prelude::*;
use linkwright::present::summary::{MEASURE, WHAT_YOU_GET, is_first_visit};
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
            <p class="lead">{MEASURE}</p>
            <p id="still-needed">{needed}</p>
            <p>{WHAT_YOU_GET}</p>
        </div>
    }
    .into_any()
}
