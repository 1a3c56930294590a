//! One saved build, and what can be done with it.

use super::buttons::{BuildButton, DeleteForGood};
use super::state::SavedState;
use super::versions::Versions;
use crate::app::session::use_session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::present::saved;

/// The row of a build.
#[component]
pub(super) fn BuildRow(
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
        state.of_record(id, |saved| session.origin.with(|origin| saved::row(saved, origin, system, clock::spoken_time)))
    });
    let name = Signal::derive(move || row.read().name.clone());
    let unverified = move || {
        let sentences = row.read().unverified.clone();
        sentences.into_iter().map(|sentence| view! { <p class="error">{sentence}</p> }).collect_view()
    };
    let damaged = Memo::new(move |_| row.read().damaged);
    let open = RwSignal::new(false);
    let has_versions = Memo::new(move |_| row.read().has_versions);
    let inside = move || {
        if damaged.get() {
            view! {
                {unverified}
                <p>{saved::help::DAMAGED}</p>
                <DamagedButtons state id />
            }
            .into_any()
        } else {
            view! {
                <p class="source">{move || row.read().when.clone()}</p>
                <p>{move || row.read().about.clone()}</p>
                {unverified}
                <Buttons state id name open has_versions />
            }
            .into_any()
        }
    };
    view! {
        <li data-build=data_id>
            <h4>{name}</h4>
            {inside}
            <Show when=move || open.get() && has_versions.get()>
                <Versions state id />
            </Show>
        </li>
    }
}

/// What can be done with a build.
#[component]
fn Buttons(
    /// What the view holds.
    state: SavedState,
    /// The id of the build.
    id: StoredValue<String>,
    /// What the build is called.
    name: Signal<String>,
    /// Whether its versions are open.
    open: RwSignal<bool>,
    /// Whether it has any.
    has_versions: Memo<bool>,
) -> impl IntoView {
    let versions = move |()| {
        state.armed.set(None);
        open.update(|open| *open = !*open);
    };
    let armed = Memo::new(move |_| id.with_value(|id| state.is_armed(id)));
    view! {
        <div class="buttons">
            <BuildButton action="open" class="open" label="Open" name on_press=move |()| id.with_value(|id| state.open(id)) />
            <BuildButton
                action="copy"
                class="quiet copy"
                label="Duplicate"
                name
                on_press=move |()| id.with_value(|id| state.duplicate(id))
            />
            <BuildButton
                action="export"
                class="quiet export"
                label="Export"
                name
                on_press=move |()| id.with_value(|id| state.export(id))
            />
            <BuildButton
                action="remove"
                class="quiet remove"
                label="Delete"
                name
                on_press=move |()| id.with_value(|id| state.delete(id))
            />
            <Show when=move || armed.get()>
                <DeleteForGood state id />
            </Show>
            <Show when=move || has_versions.get()>
                <BuildButton action="history" class="quiet history-of" label="What changed" name on_press=versions />
            </Show>
        </div>
    }
}

/// What can be done with a record that cannot be read.
#[component]
fn DamagedButtons(
    /// What the view holds.
    state: SavedState,
    /// The id of the build.
    id: StoredValue<String>,
) -> impl IntoView {
    let export = move |_| id.with_value(|id| state.export(id));
    view! {
        <div class="buttons">
            <button type="button" class="export" data-do="export" on:click=export>"Export it"</button>
            <DeleteForGood state id />
        </div>
    }
}
