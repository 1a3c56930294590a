//! What rig it is, how it came out, and how its links stand.

use crate::app::fields::VerdictMark;
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::rig;

/// The head of the view.
#[component]
pub(super) fn Head() -> impl IntoView {
    let session = use_session();
    let head = Memo::new(move |_| session.rig.with(|whole| rig::head(whole, session.units.get())));
    let mark =
        move || head.read().judged.map(|judged| view! { <VerdictMark verdict=judged.verdict word=judged.word /> });
    view! {
        <div>
            <p class="kicker">{move || head.read().kicker.clone()}</p>
            <PrintedLine />
            <h2 id="rig-title">{move || head.read().title.clone()}</h2>
            <div class="judged">{mark}<p id="rig-status">{move || head.read().status.clone()}</p></div>
        </div>
    }
}
