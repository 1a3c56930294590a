//! Everything to buy and make for the link.

use super::open_sections::PARTS;
use super::section::Section;
use crate::app::sending::PartRows;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::parts::{self, LinkParts as Parts};
use linkwright::report::Answer;

/// The section.
#[component]
pub(super) fn LinkParts() -> impl IntoView {
    let session = use_session();
    let shown = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        let parts = |answer: &Answer| session.document.with(|document| parts::of_link(document, link, answer, system));
        session.answer_below.get().as_deref().map(parts)
    });
    let read = move |read: fn(&Parts) -> &String| {
        Signal::derive(move || shown.with(|parts| parts.as_ref().map(read).cloned().unwrap_or_default()))
    };
    let rows = move || shown.get().map(|parts| view! { <PartRows rows=parts.rows /> });

    view! {
        <Section id=PARTS title=read(|parts| &parts.title) essentials=read(|parts| &parts.summary)>
            {rows}
        </Section>
    }
}
