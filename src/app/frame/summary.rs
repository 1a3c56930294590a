//! The one line that stays in sight while typing, or under the rig.

use crate::app::fields::{InSight, VerdictMark};
use crate::app::session::{View, use_session};
use crate::browser::page;
use leptos::prelude::*;

/// The line; tapping it leads to the answer, or to the first entry that it lacks. In a place of the Fit view it tells how
/// the bar stands, and leads back.
#[component]
pub(crate) fn Summary(
    /// What it says.
    #[prop(into)]
    line: Signal<String>,
) -> impl IntoView {
    let session = use_session();
    let in_sight = use_context::<InSight>();
    let size = move || session.answered.get() && session.view.get() == View::Size;
    let place = move || session.view.get() == View::Fit && session.fit_place.get().is_some();
    // The place may be gone before the line is drawn anew.
    let standing = Memo::new(move |_| in_sight?.standing().filter(|_| place()));
    let says = move || match standing.get() {
        Some((verdict, word)) => view! { <VerdictMark verdict word /> }.into_any(),
        None => line.get().into_any(),
    };
    let show = move |_| match session.view.get_untracked() {
        View::Size | View::Prove => page::show(&session.next_place()),
        View::Fit if session.fit_place.with_untracked(Option::is_some) => page::show("fit-title"),
        _ => page::show("answer"),
    };
    // The verdict of a place is announced where it stands.
    let live = move || if place() { "off" } else { "polite" };
    view! {
        <div class="summary" class:stale=move || session.answered.get() && session.is_stale()>
            <p id="summary" aria-live=live on:click=show>{says}</p>
            <Show when=size>
                <button type="button" class="quiet" on:click=move |_| session.open_view(View::Prove)>"See why"</button>
            </Show>
            <Show when=place>
                <button type="button" class="quiet" id="summary-back" on:click=move |_| session.open_place(None)>
                    "All of Fit"
                </button>
            </Show>
        </div>
    }
}
