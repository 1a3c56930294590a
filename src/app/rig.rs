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
use leptos::prelude::*;

/// The view.
#[component]
pub(crate) fn Rig() -> impl IntoView {
    view! {
        <head::Head />
        <plan::PlanPicture />
        <links::Links />
        <adding::Adding />
        <parts::Parts />
        <fewer_sizes::FewerRodEndSizes />
        <Sending />
        <sheets::Sheets />
    }
}
