//! How far the link can be made longer and shorter.

use crate::app::sending::AdjustmentTable;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::adjustment;

/// The section.
#[component]
pub(super) fn HowItAdjusts() -> impl IntoView {
    let session = use_session();
    let shown = Memo::new(move |_| {
        session.answer_below.get().map(|answer| adjustment::adjustment(&answer, session.units.get()))
    });
    let table = move || shown.get().map(|adjustment| view! { <AdjustmentTable adjustment on_screen=true /> });

    view! {
        <section class="part-of" id="below" tabindex="-1">
            <h3>{adjustment::TITLE}</h3>
            {table}
        </section>
    }
}
