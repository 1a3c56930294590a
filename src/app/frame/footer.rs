//! What leaves the device, and how far to trust the page.

use leptos::prelude::*;
use linkwright::present::frame::{ESTIMATE, PRIVACY};

/// The footer.
#[component]
pub(crate) fn Footer() -> impl IntoView {
    view! {
        <footer class="foot">
            <p>{PRIVACY}</p>
            <p>{ESTIMATE}</p>
        </footer>
    }
}
