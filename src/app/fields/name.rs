//! The name of the rig.

use crate::app::session::{View, use_session};
use crate::browser::page;
use leptos::prelude::*;
use linkwright::document::{LONGEST_NAME, tidy_name};
use linkwright::present::field::NAME_HELP;

/// The field for the name.
#[component]
pub(crate) fn NameField() -> impl IntoView {
    let session = use_session();
    let take = move |text: String| session.edit(|document| document.name = tidy_name(&text));
    let confirm = move |key: String, text: String| {
        // Enter in the Saved view also saves the build.
        if key == "Enter" && session.view.get_untracked() == View::Saved {
            take(text);
            page::press_soon("save");
        }
    };
    view! {
        <div class="field">
            <label for="in-name">"Name of this rig"</label>
            <div class="entry words">
                <input
                    id="in-name"
                    type="text"
                    autocomplete="off"
                    enterkeyhint="done"
                    aria-describedby="help-name"
                    maxlength=LONGEST_NAME.to_string()
                    prop:value=move || session.document.with(|document| document.name.clone())
                    on:change:target=move |event| take(event.target().value())
                    on:keydown:target=move |event| confirm(event.key(), event.target().value())
                />
            </div>
            <p class="help" id="help-name">{NAME_HELP}</p>
        </div>
    }
}
