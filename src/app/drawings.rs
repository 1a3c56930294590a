//! To come.
use leptos::prelude::*;
#[component]
pub(crate) fn LeadingDrawing() -> impl IntoView {}
