//! The rig from above, to scale; touching the number of a link opens it.

use crate::app::drawings::DrawingView;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::drawing::plan::plan;
use linkwright::present::drawing::{Layout, Touch};
use linkwright::present::rig::PLAN_NOTE;

/// The picture, and how far it is to scale.
#[component]
pub(super) fn PlanPicture() -> impl IntoView {
    view! {
        <figure class="drawing plan">
            <InLayout layout=Layout::Narrow />
            <InLayout layout=Layout::Wide />
        </figure>
        <p class="help">{PLAN_NOTE}</p>
    }
}

/// The picture in one layout, where the screen shows that or paper may want it.
#[component]
fn InLayout(
    /// The layout.
    layout: Layout,
) -> impl IntoView {
    let session = use_session();
    let drawing = Memo::new(move |_| session.rig.with(|whole| plan(whole, layout)));
    let on_touch = move |touch| {
        if let Touch::Link(index) = touch {
            session.open_link(index);
        }
    };
    view! {
        <Show when=move || session.shows(layout)>
            <DrawingView drawing on_touch />
        </Show>
    }
}
