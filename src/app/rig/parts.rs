//! Every part to buy or make for the whole rig.

use crate::app::sending::PartRows;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::parts::{self, RigParts};

/// The parts; nothing while nothing is to be made.
#[component]
pub(super) fn Parts() -> impl IntoView {
    let session = use_session();
    let parts = Memo::new(move |_| session.rig.with(|whole| parts::whole_rig(whole, session.units.get())));
    let list = |RigParts { missing, rows, weight }| {
        view! {
            <h3>"Parts for all of it"</h3>
            {missing.map(|missing| view! { <p class="stop">{missing}</p> })}
            <PartRows rows />
            <p>{weight}</p>
        }
    };
    view! { <section class="part-of" id="parts">{move || parts.get().map(list)}</section> }
}
