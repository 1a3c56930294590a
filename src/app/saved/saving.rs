//! What is open now, how it stands to what is saved, and how it is saved.

use super::state::{Offer, SavedState};
use crate::app::entries::UndoButtons;
use crate::app::fields::NameField;
use crate::app::session::{Saving, use_session};
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::present::saved::help::CLASH;
use linkwright::present::saved::{CURRENT_BUILD, changes, of_entries, save_state};
use linkwright::store::saved_builds::Target;

/// The section.
#[component]
pub(super) fn SaveSection(
    /// What the view holds.
    state: SavedState,
) -> impl IntoView {
    let session = use_session();
    let clash = RwSignal::new(false);
    // The build that the entries belong to.
    let saved = Memo::new(move |_| {
        session.builds.with(|builds| {
            let builds = builds.as_deref().unwrap_or_default();
            session.origin.with(|origin| of_entries(builds, origin).cloned())
        })
    });
    let belongs = Memo::new(move |_| saved.read().is_some());
    let empty = Memo::new(move |_| session.is_empty());
    let changed = Memo::new(move |_| {
        let system = session.units.get();
        session.document.with(|document| {
            saved.read().as_ref().map(|saved| changes(&saved.build.document, document, system)).unwrap_or_default()
        })
    });
    let settled = move || belongs.get() && changed.read().is_empty();
    let state_words = Memo::new(move |_| {
        let system = session.units.get();
        session.document.with(|document| save_state(document, saved.read().as_ref(), system, clock::spoken_time).full)
    });
    let on_save = Callback::new(move |target: Target| {
        session.settle();
        let saving = session.save(target);
        clash.set(matches!(saving, Saving::Changed));
        state.say_all(saving.sentence().into_iter().collect());
        if let Saving::Done(_, renamed) = saving {
            state.offer.set(renamed.map(Offer::KeepToo));
        }
    });
    let label = move || if belongs.get() { "Save the changes" } else { "Save on this device" };
    let list = move || changed.get().into_iter().map(|sentence| view! { <li>{sentence}</li> }).collect_view();
    view! {
        <section class="part-of" aria-labelledby="current-title">
            <h3 id="current-title">{CURRENT_BUILD}</h3>
            <NameField />
            // Before what changes with the name: a button that is pressed must not move away.
            <div class="buttons">
                <button
                    type="button"
                    id="save"
                    class:settled=settled
                    disabled=move || empty.get()
                    on:click=move |_| on_save.run(Target::Same)
                >
                    {label}
                </button>
                <Show when=move || belongs.get()>
                    <button type="button" id="save-another" on:click=move |_| on_save.run(Target::Another)>
                        "Save as another build"
                    </button>
                </Show>
                <UndoButtons ids=false />
            </div>
            <p id="save-state">{move || state_words.get()}</p>
            <Show when=move || !changed.read().is_empty()>
                <ul class="changes">{list}</ul>
            </Show>
            <Show when=move || clash.get()>
                <Clash on_save />
            </Show>
        </section>
    }
}

/// Which of two saves is wanted, where the same build was saved elsewhere meanwhile.
#[component]
fn Clash(
    /// Saves the entries.
    on_save: Callback<Target>,
) -> impl IntoView {
    view! {
        <div class="clash" role="alert">
            <p>{CLASH}</p>
            <div class="buttons">
                <button type="button" id="save-beside" on:click=move |_| on_save.run(Target::Another)>
                    "Keep both: save mine as another build"
                </button>
                <button type="button" id="save-over" on:click=move |_| on_save.run(Target::SameAnyway)>
                    "Save mine; the other becomes an earlier version"
                </button>
            </div>
        </div>
    }
}
