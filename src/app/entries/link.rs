//! The first entries of the current link.

use super::picker::OtherLinks;
use crate::app::fields::{NumberField, RadioField};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::inputs;

/// What the link is for, its length, the rig's weight, and how it is driven.
#[component]
pub(crate) fn LinkEntries() -> impl IntoView {
    let session = use_session();
    let place = Memo::new(move |_| session.place());
    let fields = move || {
        let place = place.get();
        view! {
            <RadioField choice=&inputs::ROLE place />
            <NumberField input=&inputs::LENGTH place />
            <OtherLinks />
            <NumberField input=&inputs::WEIGHT place />
            <RadioField choice=&inputs::USAGE place />
        }
    };
    view! { <form class="first" on:submit=|event| event.prevent_default()>{fields}</form> }
}
