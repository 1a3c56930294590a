//! A button that copies a text, and says how that ended.

use crate::browser::clipboard;
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::present::sending::COPY_BY_HAND;
use std::time::Duration;

/// How long a text stays empty before it is set again: a screen reader announces changes only.
const SAY_AGAIN: Duration = Duration::from_millis(60);

/// Says something, so that a screen reader announces it also where the same was said before.
pub(crate) fn say_again(said: RwSignal<String>, words: String) {
    said.set(String::new());
    set_timeout(
        move || {
            let _ = said.try_set(words);
        },
        SAY_AGAIN,
    );
}

/// The button, and beside it how copying ended.
#[component]
pub(crate) fn CopyButton(
    /// What stands on it.
    label: &'static str,
    /// What is copied.
    #[prop(into)]
    text: Callback<(), String>,
    /// What is said once it is copied.
    done: &'static str,
    /// What is said where the browser refuses.
    #[prop(default = COPY_BY_HAND)]
    refused: &'static str,
    /// The button's class.
    #[prop(optional)]
    class: &'static str,
    /// Whether nothing may be copied now.
    #[prop(optional, into)]
    disabled: Signal<bool>,
) -> impl IntoView {
    let said = RwSignal::new(String::new());
    let copy = move |_| {
        let text = text.run(());
        spawn_local(async move {
            let copied = clipboard::copy(&text).await;
            say_again(said, if copied { done } else { refused }.to_string());
        });
    };
    view! {
        <button type="button" class=class disabled=move || disabled.get() on:click=copy>{label}</button>
        <span role="status">{move || said.get()}</span>
    }
}
