//! The trash, called the bin on the screen: what was deleted, and what was set aside unsaved.

use super::buttons::{BuildButton, DeleteForGood};
use super::state::SavedState;
use crate::app::fields::Fold;
use crate::app::session::use_session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::present::saved;
use linkwright::store::saved_builds::SavedBuild;

/// The section, hidden while the trash is empty.
#[component]
pub(super) fn Trash(
    /// What the view holds.
    state: SavedState,
) -> impl IntoView {
    let session = use_session();
    let ids = Memo::new(move |_| {
        session.builds.with(|builds| {
            let in_trash = builds.iter().flatten().filter(|saved| SavedBuild::is_in_trash(saved));
            in_trash.map(|saved| saved.build.id.clone()).collect::<Vec<_>>()
        })
    });
    let summary = Signal::derive(move || saved::trash_heading(ids.read().len()));
    view! {
        <section class="part-of" class:empty=move || ids.read().is_empty()>
            <Fold id="bin" summary>
                <p class="help">{saved::help::TRASH}</p>
                <ul class="builds">
                    <For each=move || ids.get() key=String::clone let(id)>
                        <TrashRow state id />
                    </For>
                </ul>
            </Fold>
        </section>
    }
}

/// One build in the trash.
#[component]
fn TrashRow(
    /// What the view holds.
    state: SavedState,
    /// The id of the build.
    id: String,
) -> impl IntoView {
    let session = use_session();
    let data_id = id.clone();
    let id = StoredValue::new(id);
    let row = Memo::new(move |_| {
        let system = session.units.get();
        state.of_record(id, |saved| saved::trash_row(saved, system, clock::spoken_time))
    });
    let name = Signal::derive(move || row.read().name.clone());
    view! {
        <li data-build=data_id>
            <h4>{name}</h4>
            <p class="source">{move || row.read().when.clone()}</p>
            <p>{move || row.read().about.clone()}</p>
            <div class="buttons">
                <BuildButton
                    action="bring"
                    class="bring"
                    label="Bring it back"
                    name
                    on_press=move |()| id.with_value(|id| state.restore(id))
                />
                <DeleteForGood state id />
            </div>
        </li>
    }
}
