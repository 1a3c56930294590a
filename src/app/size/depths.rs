//! Shop depths: what to drill and tap at each end, and what to mill for the wrench.

use super::open_sections::DEPTHS;
use super::section::Section;
use crate::app::sending::SizeRows;
use leptos::prelude::*;
use linkwright::present::ends::Ends;

/// The section.
#[component]
pub(super) fn ShopDepths(
    /// Every size of both ends.
    ends: Memo<Option<Ends>>,
) -> impl IntoView {
    let essentials = move || ends.with(|ends| ends.as_ref().map(|ends| ends.shop_summary.clone()).unwrap_or_default());
    let flats = Memo::new(move |_| ends.with(|ends| ends.as_ref()?.flats.clone()));

    view! {
        <Section id=DEPTHS class="ends-part" title="Shop depths" essentials=Signal::derive(essentials)>
            <div class="ends">{[0, 1].map(|index| view! { <OneEnd index ends /> }).collect_view()}</div>
            {move || flats.get().map(|flats| view! { <p class="flats">{flats}</p> })}
        </Section>
    }
}

/// What to drill and tap at one end. Its elements stay while the sizes change.
#[component]
fn OneEnd(
    /// Which one: A is 0, B is 1.
    index: usize,
    /// Every size of both ends.
    ends: Memo<Option<Ends>>,
) -> impl IntoView {
    let end = Memo::new(move |_| ends.with(|ends| ends.as_ref()?.ends.get(index).cloned()).unwrap_or_default());
    let rows = Signal::derive(move || end.read().shop.clone());
    view! {
        <article class="end-of">
            <h4>{move || end.read().letter.clone()}</h4>
            <SizeRows rows />
        </article>
    }
}
