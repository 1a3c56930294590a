//! What was just done, and what can be done about it on the spot.

use super::state::{Offer, SavedState};
use crate::browser::page;
use leptos::prelude::*;
use linkwright::present::saved::notices::keep_too_label;

/// The notices.
#[component]
pub(super) fn Notices(
    /// What the view holds.
    state: SavedState,
) -> impl IntoView {
    let sentences = move || state.notices.get().into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view();
    let offer = move || state.offer.get().map(|offer| view! { <OfferButton state offer /> });
    let close = move |_| {
        state.say_all(Vec::new());
        page::show("saved-title");
    };
    view! {
        <div class="done-here">
            <div id="saved-notices" role="status">{sentences}</div>
            <Show when=move || !state.notices.read().is_empty()>
                <div class="buttons">
                    {offer}
                    <button type="button" class="quiet" id="close-notices" on:click=close>"Close"</button>
                </div>
            </Show>
        </div>
    }
}

/// The button that does what is offered.
#[component]
fn OfferButton(
    /// What the view holds.
    state: SavedState,
    /// What is offered.
    offer: Offer,
) -> impl IntoView {
    match offer {
        Offer::Restore(id) => {
            view! { <button type="button" id="bring-back" on:click=move |_| state.restore(&id)>"Bring it back"</button> }
                .into_any()
        }
        Offer::KeepToo(build) => {
            let label = keep_too_label(&build.document.name);
            view! { <button type="button" id="keep-too" on:click=move |_| state.keep_too(&build)>{label}</button> }
                .into_any()
        }
    }
}
