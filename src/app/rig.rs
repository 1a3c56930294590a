//! To come.
use leptos::prelude::*;
#[component]
pub(crate) fn Rig() -> impl IntoView {}
