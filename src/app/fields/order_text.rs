//! The field of one text of the order.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::{LONGEST_REMARKS, OrderText};

/// The field; a day is picked from a calendar.
#[component]
pub(crate) fn OrderField(
    /// The text.
    text: &'static OrderText,
) -> impl IntoView {
    let session = use_session();
    let id = format!("in-{}", text.id);
    // What is half typed stays while something else changes.
    let value = Memo::new(move |_| session.document.with(|document| (text.get)(&document.order).to_string()));
    let take = move |typed: String| {
        session.edit(|document| {
            text.take(&mut document.order, &typed);
        });
    };
    let kind = if text.is_day() { "date" } else { "text" };
    view! {
        <div class="field">
            <label for=id.clone()>{text.label}</label>
            <div class="entry words">
                <input
                    id=id
                    type=kind
                    autocomplete="off"
                    enterkeyhint="done"
                    maxlength=LONGEST_REMARKS.to_string()
                    prop:value=move || value.get()
                    on:change:target=move |event| take(event.target().value())
                />
            </div>
        </div>
    }
}
