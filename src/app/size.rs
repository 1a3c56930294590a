//! To come.
use leptos::prelude::*;
#[component]
pub(crate) fn Size() -> impl IntoView {}
#[component]
pub(crate) fn Below() -> impl IntoView {}
#[component]
pub(crate) fn Invitation(needs: Vec<&'static str>) -> impl IntoView {
    let _ = needs;
}
