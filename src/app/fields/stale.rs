//! The note over an answer that does not rest on the last entry.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::answer::STALE;

/// The note, hidden while every entry was taken.
#[component]
pub(crate) fn StaleNote() -> impl IntoView {
    let session = use_session();
    view! { <p class="stale-note" hidden=move || !session.is_stale()>{STALE}</p> }
}
