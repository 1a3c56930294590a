//! Shop depths: what to drill and tap at each end, and what to mill for the wrench.

use super::open_sections::DEPTHS;
use super::section::Section;
use crate::app::sending::SizeRows;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::ends::{self, End};

/// The section.
#[component]
pub(super) fn ShopDepths() -> impl IntoView {
    let session = use_session();
    let shown =
        Memo::new(move |_| session.answer_below.get().map(|answer| ends::ends(&answer.link, session.units.get())));
    let essentials = move || shown.with(|ends| ends.as_ref().map(|ends| ends.shop_summary.clone()).unwrap_or_default());
    let end = |end: End| {
        view! {
            <article class="end-of">
                <h4>{end.letter}</h4>
                <SizeRows rows=end.shop />
            </article>
        }
    };
    let content = move || {
        shown.get().map(|ends| {
            view! {
                <div class="ends">{ends.ends.into_iter().map(end).collect_view()}</div>
                {ends.flats.map(|flats| view! { <p class="flats">{flats}</p> })}
            }
        })
    };

    view! {
        <Section id=DEPTHS class="ends-part" title="Shop depths" essentials=Signal::derive(essentials)>
            {content}
        </Section>
    }
}
