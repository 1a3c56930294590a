//! The calculation behind a check.

use crate::app::formula::WorkingLines;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::{findings, working};

/// The calculation.
#[component]
pub(super) fn Working(
    /// Which check.
    id: &'static str,
) -> impl IntoView {
    let session = use_session();
    let steps = Memo::new(move |_| {
        let system = session.units.get();
        let steps = |answer: &_| working::steps(findings::working(answer, id), system);
        session.answer.with(|answer| answer.as_deref().map(steps)).unwrap_or_default()
    });
    view! { <WorkingLines steps /> }
}
