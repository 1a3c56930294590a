//! Which saved builds are cut together with the rig that is open.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::saved::{is_listed, title_of};

/// A box for each build; nothing where none is saved.
#[component]
pub(super) fn WhichBuilds(
    /// Whether the rig that is open is cut.
    with_rig: RwSignal<bool>,
    /// The ids of the builds that are ticked.
    ticked: RwSignal<Vec<String>>,
) -> impl IntoView {
    let session = use_session();
    let builds = Memo::new(move |_| {
        let system = session.units.get();
        session.builds.with(|builds| {
            let listed = builds.iter().flatten().filter(|saved| is_listed(saved));
            listed.map(|saved| (saved.build.id.clone(), title_of(saved, system))).collect::<Vec<_>>()
        })
    });
    // They are read when somebody needs them, and what is read is kept.
    session.with_builds(|_| ());
    let tick = move |id: String, on: bool| {
        ticked.update(|ticked| {
            ticked.retain(|other| *other != id);
            ticked.extend(on.then_some(id));
        });
    };
    let row = move |(id, title): (String, String)| {
        let (own, changed) = (id.clone(), id);
        view! {
            <label>
                <input
                    type="checkbox"
                    prop:checked=move || ticked.with(|ticked| ticked.contains(&own))
                    on:change:target=move |event| tick(changed.clone(), event.target().checked())
                />
                <span>{title}</span>
            </label>
        }
    };
    view! {
        <Show when=move || builds.with(|builds| !builds.is_empty())>
            <fieldset class="ticks on-screen" id="which-builds">
                <legend>"Cut together"</legend>
                <label>
                    <input
                        type="checkbox"
                        prop:checked=move || with_rig.get()
                        on:change:target=move |event| with_rig.set(event.target().checked())
                    />
                    <span>"What is open now"</span>
                </label>
                {move || builds.get().into_iter().map(row).collect_view()}
            </fieldset>
        </Show>
    }
}
