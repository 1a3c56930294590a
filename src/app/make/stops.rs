//! What keeps anything from being made, in sight on the screen and on every paper of the view.

use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::present::order::needed::failing;

/// The sentences, for the components of the view.
#[derive(Clone, Copy)]
pub(super) struct Stops(Memo<Vec<String>>);

/// Provides them: entries that were not taken, what has changed since the yes, and which links fail.
pub(super) fn provide_stops(session: Session, changed: Memo<Vec<String>>, not_taken: Memo<Vec<String>>) {
    provide_context(Stops(Memo::new(move |_| {
        let first = changed.with(|lines| lines.first().cloned());
        let fails = session.document.with(|document| session.rig.with(|whole| failing(document, &whole.links)));
        not_taken.get().into_iter().chain(first).chain(fails).collect()
    })));
}

/// Whether there are any.
pub(super) fn use_stopped() -> Signal<bool> {
    let Stops(stops) = expect_context();
    Signal::derive(move || stops.with(|stops| !stops.is_empty()))
}

/// The sentences on paper, and beside what is planned.
#[component]
pub(super) fn StopLines() -> impl IntoView {
    let Stops(stops) = expect_context();
    let session = use_session();
    let unverified = move || session.origin.with(|origin| origin.unverified.clone());
    let line = |words: String| view! { <p class="stop">{words}</p> };
    view! {
        {move || stops.get().into_iter().map(line).collect_view()}
        {move || unverified().into_iter().map(line).collect_view()}
    }
}
