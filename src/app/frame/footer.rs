//! What leaves the device, and how far to trust the page.

use leptos::prelude::*;

/// The footer.
#[component]
pub(crate) fn Footer() -> impl IntoView {
    view! {
        <footer class="foot">
            <p>
                "Nothing you type leaves this device unless you send it. A link carries your entries in its own address; no server keeps them."
            </p>
            <p>"An estimate for planning. Makers’ ratings, local rules and a licensed engineer come first."</p>
        </footer>
    }
}
