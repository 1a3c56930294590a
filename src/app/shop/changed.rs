//! What is no longer as the customer confirmed it, for everybody to see.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::shop::code::{Code, code_of_rig};
use linkwright::present::order::confirmation::{changed_since_yes, is_confirmed};

/// What has changed since the yes, a line each; none while everything is as it was confirmed. The code of the order is
/// worked out for it unless the view has it.
pub(crate) fn use_changed(code: Option<Memo<Option<Code>>>) -> Memo<Vec<String>> {
    let session = use_session();
    Memo::new(move |_| {
        let system = session.units.get();
        let changed = session.document.with(|document| {
            // Most orders have no yes yet: then no link but the current one is worked out for this.
            if !is_confirmed(&document.order) {
                return None;
            }
            let of_rig = || session.rig.with(|whole| code_of_rig(document, &whole.links));
            changed_since_yes(document, code.map_or_else(of_rig, |code| code.get()))
        });
        changed.map(|changed| changed.lines(system)).unwrap_or_default()
    })
}

/// The block; nothing while everything is as it was confirmed.
#[component]
pub(crate) fn ChangedSinceYes(
    /// What has changed, a line each.
    changed: Memo<Vec<String>>,
) -> impl IntoView {
    let block = move || {
        let mut lines = changed.get().into_iter();
        lines.next().map(|sentence| {
            view! {
                <div class="stop changed" id="changed-since-yes" role="alert">
                    <p>{sentence}</p>
                    <ul>{lines.map(|line| view! { <li>{line}</li> }).collect_view()}</ul>
                </div>
            }
        })
    };
    view! { {block} }
}
