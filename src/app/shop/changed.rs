//! What is no longer as the customer confirmed it, for everybody to see.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::order::confirmation::changed_since_yes;

/// The block; nothing while everything is as it was confirmed.
#[component]
pub(crate) fn ChangedSinceYes() -> impl IntoView {
    let session = use_session();
    let lines = Memo::new(move |_| {
        let system = session.units.get();
        let changed =
            session.document.with(|document| session.rig.with(|whole| changed_since_yes(document, &whole.links)));
        changed.map(|changed| changed.lines(system)).unwrap_or_default()
    });
    let told = move || {
        let mut lines = lines.get().into_iter();
        lines.next().map(|sentence| {
            view! {
                <div class="stop changed" id="changed-since-yes" role="alert">
                    <p>{sentence}</p>
                    <ul>{lines.map(|line| view! { <li>{line}</li> }).collect_view()}</ul>
                </div>
            }
        })
    };
    view! { {told} }
}
