//! Links added to the rig: whole layouts for either axle, by their plain names.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::Position;
use linkwright::layouts::{self, LAYOUTS, Layout};
use linkwright::present::rig::ADDING_NOTE;
use linkwright::present::rig_list;

/// What came of adding a layout: its id, and a sentence.
type Added = RwSignal<Option<(&'static str, String)>>;

/// The layouts; folded away once the rig is complete.
#[component]
pub(super) fn Adding() -> impl IntoView {
    let session = use_session();
    let axle = RwSignal::new(Position::Front);
    let added: Added = RwSignal::new(None);
    // A single link is where a rig begins.
    let wanted = Memo::new(move |_| session.rig.with(|whole| whole.links.len() < 2 || whole.rig.open > 0));
    let status = move || added.with(|added| added.as_ref().map(|(_, sentence)| sentence.clone()));
    let layouts = LAYOUTS.iter().map(|layout| view! { <LayoutItem layout axle added /> }).collect_view();
    view! {
        <details class="part-of adding" prop:open=move || wanted.get()>
            <summary><h3>"Add links"</h3></summary>
            <div class="axles" role="group" aria-label="At which axle">
                <AxleButton id="add-front" label="Front axle" position=Position::Front axle added />
                <AxleButton id="add-rear" label="Rear axle" position=Position::Rear axle added />
            </div>
            <ul class="layouts">{layouts}</ul>
            <p class="unseen" role="status">{status}</p>
            <p class="help">{ADDING_NOTE}</p>
        </details>
    }
}

/// Picks the axle that layouts are added to.
#[component]
fn AxleButton(
    /// Its id.
    id: &'static str,
    /// Its label.
    label: &'static str,
    /// The axle.
    position: Position,
    /// The axle that is picked.
    axle: RwSignal<Position>,
    /// What came of the last press.
    added: Added,
) -> impl IntoView {
    let pick = move |_| {
        axle.set(position);
        added.set(None);
    };
    view! {
        <button type="button" id=id aria-pressed=move || (axle.get() == position).to_string() on:click=pick>
            {label}
        </button>
    }
}

/// Adds what the axle does not have yet of a layout; what came of it stands in the place of the layout's help.
#[component]
fn LayoutItem(
    /// The layout.
    layout: &'static Layout,
    /// The axle that is picked.
    axle: RwSignal<Position>,
    /// What came of the last press.
    added: Added,
) -> impl IntoView {
    let session = use_session();
    let add = move |_| {
        let position = axle.get_untracked();
        let mut first = None;
        session.rearrange(|document| first = layouts::add(document, layout, position));
        let sentence = session.document.with_untracked(|document| rig_list::added(first.is_some(), document, position));
        added.set(Some((layout.id, sentence)));
    };
    let help = move || {
        added.with(|added| match added {
            Some((id, sentence)) if *id == layout.id => sentence.clone(),
            _ => layout.help.to_string(),
        })
    };
    view! {
        <li>
            <button type="button" id=format!("add-{}", layout.id) on:click=add>{layout.label}</button>
            <p class="help">{help}</p>
        </li>
    }
}
