//! The Size view: what to buy and make, whether it passes, and how to fit and send it.

mod adjusts;
mod cautions;
mod checks_and_sources;
mod ends;
mod fitting;
mod head;
mod invitation;
mod jumps;
mod margin;
mod open_sections;
mod parts;
mod section;
mod why;

pub(crate) use invitation::Invitation;

use crate::app::entries::OtherLinks;
use crate::app::fields::StaleNote;
use crate::app::sending::Sending;
use crate::app::session::use_session;
use adjusts::HowItAdjusts;
use cautions::Cautions;
use checks_and_sources::ChecksAndSources;
use ends::TheTwoEnds;
use fitting::FittingList;
use head::Head;
use leptos::prelude::*;
use linkwright::present::{ends::ends, text, words};
use parts::LinkParts;
use why::WhyThisSize;

/// The answer itself: what the first screen needs.
#[component]
pub(crate) fn Size() -> impl IntoView {
    view! {
        <StaleNote />
        <Head />
        <Cautions />
    }
}

/// What stands below the answer.
#[component]
pub(crate) fn Below() -> impl IntoView {
    let session = use_session();
    let sizes = Memo::new(move |_| session.answer_below.get().map(|answer| ends(&answer.link, session.units.get())));
    let text = Callback::new(move |()| {
        let (link, address) = (session.link.get(), session.link_for_others());
        let text = |answer| {
            session.document.with(|document| text::plain_text(document, link, answer, session.is_stale(), address))
        };
        session.answer.get().as_deref().map(text).unwrap_or_default()
    });
    let summary = Callback::new(move |()| {
        let system = session.units.get();
        session.answer.get().map(|answer| words::headline(&answer.link, system)).unwrap_or_default()
    });

    view! {
        <HowItAdjusts />
        <WhyThisSize />
        <TheTwoEnds ends=sizes />
        <LinkParts />
        <ChecksAndSources />
        <FittingList />
        <Sending whole_rig=false text summary />
        <OtherLinks />
    }
}
