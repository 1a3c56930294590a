//! To come.
use crate::app::session::Session;
use leptos::prelude::*;
#[component]
pub(crate) fn Saved() -> impl IntoView {}
pub(crate) fn short_state(_: Session) -> String {
    String::new()
}
