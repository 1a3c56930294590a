//! To come.
use leptos::prelude::*;
#[component]
pub(crate) fn CurrentSheet() -> impl IntoView {}
