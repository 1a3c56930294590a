//! A sheet of paper for each link, printed behind the rig's own.

use crate::app::sending::{Sheet, SheetWithoutAnswer};
use crate::app::session::use_session;
use leptos::either::Either;
use leptos::prelude::*;
use linkwright::report::LinkReport;
use std::sync::Arc;

/// The sheets, in the order of the list; made only when they are printed.
#[component]
pub(super) fn Sheets() -> impl IntoView {
    let session = use_session();
    let sheets = move || {
        session.laid_open.get().then(|| {
            let whole = session.rig.get();
            let sheet = |&index: &usize| match whole.links.get(index) {
                Some(LinkReport::Answer(answer)) => Either::Left(view! { <Sheet index answer=Arc::clone(answer) /> }),
                _ => Either::Right(view! { <SheetWithoutAnswer index /> }),
            };
            whole.rig.worst_first.iter().map(sheet).collect_view()
        })
    };
    view! { <div class="sheets">{sheets}</div> }
}
