//! The way from the answer to each section below it.

use super::open_sections::{ENDS, FITTING, PARTS, use_open_sections};
use leptos::prelude::*;

/// What stands on each button, and the id of its section.
const JUMPS: [(&str, &str); 6] =
    [("Adjusts", "below"), ("Why", "why"), ("Ends", ENDS), ("Parts", PARTS), ("Fit", FITTING), ("Send", "sending")];

/// The list of jumps.
#[component]
pub(super) fn Jumps() -> impl IntoView {
    let sections = use_open_sections();
    let jump = move |(label, id)| {
        view! { <button type="button" class="quiet" on:click=move |_| sections.jump(id)>{label}</button> }
    };

    view! { <nav class="jumps on-screen" aria-label="On this page">{JUMPS.map(jump).collect_view()}</nav> }
}
