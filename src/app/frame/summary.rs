//! The one line that stays in sight while typing, or under the rig.

use crate::app::fields::VerdictMark;
use crate::app::session::{View, use_session};
use crate::browser::page;
use leptos::prelude::*;
use linkwright::report::Verdict;

/// A mark and its word; none before anything was judged.
type Standing = Option<(Verdict, &'static str)>;

/// How the bar stands that is looked at in a place of the Fit view.
#[derive(Clone, Copy)]
struct InSight(RwSignal<Option<Signal<Standing>>>);

/// Provides what a place keeps in sight.
pub(crate) fn provide_in_sight() {
    provide_context(InSight(RwSignal::new(None)));
}

/// Keeps how a bar stands in sight while the place is open that judges it.
pub(crate) fn stands_in_sight(standing: impl Fn() -> Standing + Send + Sync + 'static) {
    // A place by itself, in a test, has no such line.
    let Some(InSight(kept)) = use_context() else { return };
    kept.set(Some(Signal::derive(standing)));
    on_cleanup(move || {
        let _ = kept.try_set(None);
    });
}

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
    let standing = Memo::new(move |_| {
        let InSight(kept) = in_sight?;
        kept.get().filter(|_| place())?.try_get().flatten()
    });
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
