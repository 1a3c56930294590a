//! To come.
use leptos::prelude::*;
#[component]
pub(crate) fn Prove() -> impl IntoView {}
