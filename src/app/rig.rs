//! The Rig view: how the rig stands, each of its links, and everything to buy and make.

mod adding;
mod fewer_sizes;
mod head;
mod link_row;
mod links;
mod parts;
mod plan;
mod sheets;

use crate::app::sending::Sending;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::rig;

/// The view.
#[component]
pub(crate) fn Rig() -> impl IntoView {
    let session = use_session();
    let text = Callback::new(move |()| rig::text(&session.rig.read(), session.link_for_others()));
    let summary = Callback::new(move |()| rig::summary(&session.rig.read()));
    view! {
        <head::Head />
        <plan::PlanPicture />
        <links::Links />
        <adding::Adding />
        <parts::Parts />
        <fewer_sizes::FewerRodEndSizes />
        <Sending whole_rig=true text summary />
        <sheets::Sheets />
    }
}
