//! The one line that stays in sight while typing.

use crate::app::session::{View, use_session};
use crate::browser::page;
use leptos::prelude::*;

/// The line; tapping it leads to the answer, or to the first entry that it lacks.
#[component]
pub(crate) fn Summary(
    /// What it says.
    #[prop(into)]
    line: Signal<String>,
) -> impl IntoView {
    let session = use_session();
    let size = move || session.answered.get() && session.view.get() == View::Size;
    let show = move |_| match session.view.get_untracked() {
        View::Size | View::Prove => page::show(&session.next_place()),
        _ => page::show("answer"),
    };
    view! {
        <div class="summary" class:stale=move || session.answered.get() && session.is_stale()>
            <p id="summary" aria-live="polite" on:click=show>{move || line.get()}</p>
            <Show when=size>
                <button type="button" class="quiet" on:click=move |_| session.open_view(View::Prove)>"See why"</button>
            </Show>
        </div>
    }
}
