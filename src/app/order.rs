//! The Order view: what is still needed, what is read back and confirmed, and what it costs.

use crate::app::entries::LinkPicker;
use leptos::prelude::*;

/// The view.
#[component]
pub(crate) fn Order() -> impl IntoView {
    view! { <LinkPicker /> }
}
