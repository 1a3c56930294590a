//! The axle with its forces, what was assumed in words, and the entries that change it.

use crate::app::drawings::DrawingView;
use crate::app::entries::FieldGroups;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::inputs::edits::has_changed_defaults;
use linkwright::present::answer::SIZED_FOR;
use linkwright::present::drawing::axle;
use linkwright::present::forces;

/// The section. Its fields stay where they are while the rest is written anew.
#[component]
pub(super) fn Assumed() -> impl IntoView {
    let session = use_session();
    let changed = Memo::new(move |_| {
        let place = session.place();
        session.document.with(|document| has_changed_defaults(document, place))
    });

    view! {
        <section class="part-of" id="assumed">
            <h3>"The forces, and what was assumed"</h3>
            <div>
                <Forces />
            </div>
            <FieldGroups />
            <Show when=move || changed.get()>
                <button type="button" id="defaults" on:click=move |_| session.reset_defaults()>
                    "Take every default again"
                </button>
            </Show>
        </section>
    }
}

/// The axle's picture and the story of the forces.
#[component]
fn Forces() -> impl IntoView {
    let session = use_session();
    let drawing = Memo::new(move |_| {
        let system = session.units.get();
        session.answer.with(|answer| answer.as_ref().and_then(|answer| axle::axle(answer, system))).unwrap_or_default()
    });
    let forces = Memo::new(move |_| {
        let system = session.units.get();
        session.answer.with(|answer| answer.as_ref().map(|answer| forces::forces(answer, system)))
    });
    let words = move || {
        forces.get().map(|forces| {
            view! {
                {forces.axle.map(|words| view! { <p>{words}</p> })}
                <p class="story"><b>{SIZED_FOR}</b>{forces.story}</p>
                {forces.changed.map(|changed| view! { <p class="changed-mark">{changed}</p> })}
            }
        })
    };

    view! {
        <Show when=move || !drawing.read().is_empty()>
            <figure class="drawing axle"><DrawingView drawing /></figure>
        </Show>
        {words}
    }
}
