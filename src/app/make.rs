//! The Make view: the route sheet of the current link, and what the shop needs for the whole rig.

use crate::app::entries::LinkPicker;
use leptos::prelude::*;

/// The view.
#[component]
pub(crate) fn Make() -> impl IntoView {
    view! { <LinkPicker /> }
}
