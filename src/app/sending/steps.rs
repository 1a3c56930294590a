//! The steps of fitting a link on paper, each with a box to tick.

use leptos::prelude::*;

/// The steps in the order of the work.
#[component]
pub(crate) fn Steps(
    /// The steps.
    steps: Vec<String>,
) -> impl IntoView {
    let row = |words| view! { <li><label><input type="checkbox" /><span>{words}</span></label></li> };
    view! { <ol class="steps">{steps.into_iter().map(row).collect_view()}</ol> }
}
