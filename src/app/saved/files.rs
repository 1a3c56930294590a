//! Saved builds as files: all out as one, and a file back in.

use super::state::SavedState;
use crate::app::session::use_session;
use crate::browser::{clock, files, page};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::builds::Build;
use linkwright::present::saved::all_builds_file_name;
use linkwright::present::saved::help::{FILE, where_kept};

/// The section.
#[component]
pub(super) fn Files(
    /// What the view holds.
    state: SavedState,
    /// How many builds can be opened.
    count: Memo<usize>,
) -> impl IntoView {
    let session = use_session();
    // The first build that is saved asks for the promise.
    let promised = LocalResource::new(move || {
        session.builds.track();
        files::is_persisted()
    });
    let kept = move || where_kept(promised.get() == Some(Some(true)));
    let export = move |_| {
        let builds: Vec<Build> = session.with_builds(|builds| {
            builds.iter().filter(|saved| saved.is_open()).map(|saved| saved.build.clone()).collect()
        });
        state.export_all(&all_builds_file_name(&clock::now()), &builds);
    };
    let import = move |event| {
        spawn_local(async move {
            let notices = match files::chosen_text(event).await {
                Ok(None) => return,
                Ok(Some(text)) => session.import(&text),
                Err(sentence) => vec![sentence.to_string()],
            };
            state.say_all(notices);
            page::show("saved-title");
        });
    };
    view! {
        <section class="part-of" aria-labelledby="files-title">
            <h3 id="files-title">"As a file"</h3>
            <p>{kept}</p>
            <div class="buttons">
                <button type="button" id="export-all" disabled=move || count.get() == 0 on:click=export>
                    "Export all as one file"
                </button>
                <label class="button" for="take-in">"Import a file"</label>
                <input
                    class="unseen"
                    id="take-in"
                    type="file"
                    accept=".json,.txt,application/json,text/plain"
                    on:change=import
                />
            </div>
            <p class="help">{FILE}</p>
        </section>
    }
}
