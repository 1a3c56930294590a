//! The Saved view: what is saved on this device, found, opened, copied, deleted, compared, and handed on as files.

mod build_row;
mod buttons;
mod compare;
mod files;
mod list;
mod notices;
mod saving;
mod state;
mod trash;
mod versions;

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::saved::heading;
use linkwright::store::saved_builds::SavedBuild;
use state::SavedState;

/// The view.
#[component]
pub(crate) fn Saved() -> impl IntoView {
    let session = use_session();
    session.read_builds();
    let state = SavedState::new(session);
    let count = Memo::new(move |_| {
        session.builds.with(|builds| builds.iter().flatten().filter(|saved| SavedBuild::is_open(saved)).count())
    });
    view! {
        <p class="kicker">"On this device"</p>
        <h2 id="saved-title" tabindex="-1">{move || heading(count.get())}</h2>
        <saving::SaveSection state />
        <notices::Notices state />
        <list::BuildList state count />
        <Show when=move || count.get() != 0>
            <compare::Compare />
        </Show>
        <files::Files state count />
        <trash::Trash state />
    }
}
