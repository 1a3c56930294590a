//! The Prove view: what yields first, every check with its working, what was assumed, and what would change it.

mod assumed;
mod bending;
mod check;
mod checks;
mod head;
mod metals;
mod outside;
mod sensitivity;
mod slow_fold;
mod working;

use crate::app::fields::StaleNote;
use crate::app::session::use_session;
use assumed::Assumed;
use bending::Bending;
use checks::EveryCheck;
use head::Head;
use leptos::prelude::*;
use metals::OtherMetals;
use outside::OutsideChecks;
use sensitivity::WhatWouldChange;

/// The whole view.
#[component]
pub(crate) fn Prove() -> impl IntoView {
    let session = use_session();

    view! {
        <StaleNote />
        <Head />
        <Show when=move || session.answered.get()>
            <Bending />
            <EveryCheck />
        </Show>
        <Assumed />
        <OtherMetals />
        <WhatWouldChange />
        <OutsideChecks />
    }
}
