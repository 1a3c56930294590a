//! The rig from above, to scale; touching the number of a link opens it.

use crate::app::drawings::DrawingView;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::drawing::plan::plan;
use linkwright::present::drawing::{Layout, Touch};

/// The picture, in the layout of the screen; printed, in both.
#[component]
pub(super) fn PlanPicture() -> impl IntoView {
    let session = use_session();
    let on_touch = Callback::new(move |touch| {
        if let Touch::Link(index) = touch {
            session.open_link(index);
        }
    });
    let [narrow, wide] =
        [Layout::Narrow, Layout::Wide].map(|layout| Memo::new(move |_| session.rig.with(|whole| plan(whole, layout))));
    let show_narrow = move || !session.wide.get() || session.printing.get();
    let show_wide = move || session.wide.get() || session.printing.get();
    view! {
        <figure class="drawing plan">
            <Show when=show_narrow>
                <DrawingView drawing=narrow on_touch />
            </Show>
            <Show when=show_wide>
                <DrawingView drawing=wide on_touch />
            </Show>
        </figure>
        <p class="help">
            "Lengths, angles, track and wheelbase to scale; where on its axle a link is bolted is assumed. Touch a number to open that link."
        </p>
    }
}
