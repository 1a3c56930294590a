//! Undo and redo, beside the form and where builds are saved.

use crate::app::session::use_session;
use leptos::prelude::*;

/// The two buttons.
#[component]
pub(crate) fn UndoButtons(
    /// Whether they have the ids `undo` and `redo`, which only one pair may have.
    #[prop(optional)]
    ids: bool,
) -> impl IntoView {
    let session = use_session();
    // `aria-disabled`, not `disabled`: at the end of the history the button must not lose the focus.
    view! {
        <button
            type="button"
            class="quiet"
            id=ids.then_some("undo")
            aria-disabled=move || (!session.can_undo()).to_string()
            on:click=move |_| session.undo()
        >
            "Undo"
        </button>
        <button
            type="button"
            class="quiet"
            id=ids.then_some("redo")
            aria-disabled=move || (!session.can_redo()).to_string()
            on:click=move |_| session.redo()
        >
            "Redo"
        </button>
    }
}
