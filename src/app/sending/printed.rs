//! When a sheet was printed, and how far to trust it: only on paper.

use crate::app::session::use_session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::present::answer;

/// The line under the name of a printed link.
#[component]
pub(crate) fn PrintedLine() -> impl IntoView {
    let session = use_session();
    let line = || answer::printed(&clock::spoken_time(&clock::now()));

    view! {
        <Show when=move || session.printing.get()>
            <p class="printed">{line()}</p>
        </Show>
    }
}
