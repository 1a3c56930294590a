//! Shop depths: what to drill and tap at each end, and what to mill for the wrench.

use crate::app::sending::SizeRows;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::ends::{Ends, ends};

/// The section.
#[component]
pub(super) fn ShopDepths() -> impl IntoView {
    let session = use_session();
    let ends: Memo<Option<Ends>> =
        Memo::new(move |_| session.answer_below.get().map(|answer| ends(&answer.link, session.units.get())));
    let flats = Memo::new(move |_| ends.with(|ends| ends.as_ref()?.flats.clone()));
    view! {
        <section class="part-of ends-part" id="shop-depths" tabindex="-1">
            <h3>"Shop depths"</h3>
            <div class="ends">{[0, 1].map(|index| view! { <OneEnd index ends /> }).collect_view()}</div>
            {move || flats.get().map(|flats| view! { <p class="flats">{flats}</p> })}
        </section>
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
