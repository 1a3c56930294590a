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

use crate::app::session::{Session, use_session};
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::present::saved::{heading, of_entries, save_state};
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

/// How the open entries stand to what is saved, for the line that stays in sight.
pub(crate) fn short_state(session: Session) -> String {
    let system = session.units.get();
    session.document.with(|document| {
        session.builds.with(|builds| {
            let saved = session.origin.with(|origin| of_entries(builds.as_deref().unwrap_or_default(), origin));
            save_state(document, saved, system, clock::spoken_time).short
        })
    })
}
