//! The earlier versions of a build, each with what changed after it.

use super::state::SavedState;
use crate::app::session::use_session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::present::saved::{self, Version};

/// The list, the newest first.
#[component]
pub(super) fn Versions(
    /// What the view holds.
    state: SavedState,
    /// The id of the build.
    id: StoredValue<String>,
) -> impl IntoView {
    let session = use_session();
    let versions = Memo::new(move |_| {
        let system = session.units.get();
        state.of_record(id, |saved| saved::versions(&saved.build, system, clock::spoken_time))
    });
    let rows =
        move || versions.get().into_iter().map(|version| view! { <VersionRow state id version /> }).collect_view();
    view! { <ol class="history">{rows}</ol> }
}

/// One version.
#[component]
fn VersionRow(
    /// What the view holds.
    state: SavedState,
    /// The id of the build.
    id: StoredValue<String>,
    /// The version.
    version: Version,
) -> impl IntoView {
    let Version { index, replaced, changes, unverified, open } = version;
    view! {
        <li>
            <p>{replaced}</p>
            <ul class="changes">
                {changes.into_iter().map(|sentence| view! { <li>{sentence}</li> }).collect_view()}
            </ul>
            {unverified.into_iter().map(|sentence| view! { <p class="error">{sentence}</p> }).collect_view()}
            <button
                type="button"
                class="quiet"
                data-do="version"
                data-version=index
                on:click=move |_| id.with_value(|id| state.open_version(id, index))
            >
                {open}
            </button>
        </li>
    }
}
