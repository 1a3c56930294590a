//! Every value that has a default.

use super::groups::FieldGroups;
use super::rig::RigGroups;
use crate::app::session::{View, use_session};
use leptos::prelude::*;
use linkwright::present::field::CHANGE_A_DEFAULT;

/// The groups of the open view. The Prove view has them in its section on forces: every field stands on the page once.
#[component]
pub(crate) fn Defaults() -> impl IntoView {
    let session = use_session();
    let of_link = move || match session.view.get() {
        View::Size => true,
        View::Prove => !session.entered.get(),
        _ => false,
    };
    view! {
        <section class="defaults" aria-label=CHANGE_A_DEFAULT>
            <Show when=of_link><FieldGroups /></Show>
            <Show when=move || session.view.get() == View::Rig><RigGroups /></Show>
        </section>
    }
}
