//! Shop depths: what to drill and tap at each end, and what to mill for the wrench.

use super::open_sections::DEPTHS;
use super::section::Section;
use crate::app::sending::SizeRows;
use leptos::prelude::*;
use linkwright::present::ends::{End, Ends};

/// The section.
#[component]
pub(super) fn ShopDepths(
    /// Every size of both ends.
    ends: Memo<Option<Ends>>,
) -> impl IntoView {
    let essentials = move || ends.with(|ends| ends.as_ref().map(|ends| ends.shop_summary.clone()).unwrap_or_default());
    let end = |end: End| {
        view! {
            <article class="end-of">
                <h4>{end.letter}</h4>
                <SizeRows rows=end.shop />
            </article>
        }
    };
    let content = move || {
        ends.get().map(|ends| {
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
