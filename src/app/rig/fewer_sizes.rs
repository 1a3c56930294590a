//! Whether fewer sizes of rod end would do for the rig: looked for when asked.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::inputs::edits::set_rod_ends;
use linkwright::present::parts::{NO_FEWER_SIZES, fewer_sizes_sentence};
use linkwright::report::FewerSizes;

/// What was found, and for which entries.
type Found = Option<(Document, Vec<FewerSizes>)>;

/// The question and its answers, which stand until something changes.
#[component]
pub(super) fn FewerRodEndSizes() -> impl IntoView {
    let session = use_session();
    let last = RwSignal::new(None as Found);
    let found = Memo::new(move |_| {
        last.with(|last| {
            let (document, ways) = last.as_ref()?;
            session.document.with(|now| now == document).then(|| ways.clone())
        })
    });
    let look = move |_| {
        let document = session.document.get_untracked();
        let ways = session.rig.with_untracked(|whole| engine::fewer_sizes(&document, &whole.links));
        last.set(Some((document, ways)));
    };
    let ways = move || found.get().map(|ways| view! { <Ways ways /> });
    view! {
        <div class="fewer">
            <button type="button" id="fewer" on:click=look>"Could fewer rod-end sizes do?"</button>
            <div id="fewer-ways" role="status">{ways}</div>
        </div>
    }
}

/// Each way to buy one size fewer.
#[component]
fn Ways(
    /// The ways.
    ways: Vec<FewerSizes>,
) -> impl IntoView {
    if ways.is_empty() {
        return view! { <p>{NO_FEWER_SIZES}</p> }.into_any();
    }
    let ways = ways.into_iter().map(|way| view! { <Way way /> }).collect_view();
    view! { <ul class="layouts">{ways}</ul> }.into_any()
}

/// One way, and the button that takes it.
#[component]
fn Way(
    /// The way.
    way: FewerSizes,
) -> impl IntoView {
    let session = use_session();
    let way = StoredValue::new(way);
    let sentence = move || {
        let system = session.units.get();
        session.document.with(|document| way.with_value(|way| fewer_sizes_sentence(document, way, system)))
    };
    let take = move |_| {
        let FewerSizes { links, to, .. } = way.get_value();
        session.rearrange(|document| set_rod_ends(document, &links, to));
    };
    view! {
        <li>
            <p>{sentence}</p>
            <button type="button" class="quiet" on:click=take>"Take it"</button>
        </li>
    }
}
