//! The list of saved builds, and the search in it.

use super::build_row::BuildRow;
use super::state::SavedState;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::saved::help::{NOTHING_FOUND, NOTHING_SAVED};
use linkwright::present::saved::{is_found, is_listed};

/// From this many builds on, there is a search.
const SEARCHED: usize = 4;

/// What is said where no build is listed.
#[derive(Clone, Copy, PartialEq)]
enum Nothing {
    Saved,
    Found,
}

/// The list.
#[component]
pub(super) fn BuildList(
    /// What the view holds.
    state: SavedState,
    /// How many builds can be opened.
    count: Memo<usize>,
) -> impl IntoView {
    let session = use_session();
    let search = RwSignal::new(String::new());
    let searched = Memo::new(move |_| count.get() >= SEARCHED);
    let found = Memo::new(move |_| {
        let (search, system) = (if searched.get() { search.get() } else { String::new() }, session.units.get());
        session.builds.with(|builds| {
            let listed = builds.iter().flatten().filter(|saved| is_listed(saved));
            let found = listed.filter(|saved| is_found(saved, &search, system));
            found.map(|saved| saved.build.id.clone()).collect::<Vec<_>>()
        })
    });
    let nothing = Memo::new(move |_| {
        let any = session.builds.with(|builds| builds.iter().flatten().any(is_listed));
        match (any, found.read().is_empty()) {
            (false, _) => Some(Nothing::Saved),
            (true, true) => Some(Nothing::Found),
            _ => None,
        }
    });
    let nothing = move || {
        nothing.get().map(|nothing| {
            let sentence = match nothing {
                Nothing::Saved => NOTHING_SAVED,
                Nothing::Found => NOTHING_FOUND,
            };
            view! { <li>{sentence}</li> }
        })
    };
    view! {
        <section class="part-of" aria-labelledby="list-title">
            <h3 id="list-title">"Saved builds"</h3>
            <Show when=move || searched.get()>
                <div class="field">
                    <label for="find-build">"Find a build"</label>
                    <div class="entry words">
                        <input id="find-build" type="search" autocomplete="off" bind:value=search />
                    </div>
                </div>
            </Show>
            <ul class="builds" id="builds">
                <For each=move || found.get() key=String::clone let(id)>
                    <BuildRow state id />
                </For>
                {nothing}
            </ul>
        </section>
    }
}
