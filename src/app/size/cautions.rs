//! What to mind before acting on the answer: the most urgent in sight, the others one tap away.

use crate::app::fields::Fold;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::answer;

/// The cautions.
#[component]
pub(super) fn Cautions() -> impl IntoView {
    let session = use_session();
    let cautions =
        Memo::new(move |_| session.answer.get().map(|answer| answer::cautions(&answer, session.units.get())));
    let items = |cautions: Vec<String>| cautions.into_iter().map(|words| view! { <li>{words}</li> }).collect_view();
    let first = move || cautions.with(|cautions| cautions.as_ref().map(|all| items(all.first.clone())));
    let rest = move || cautions.with(|cautions| cautions.as_ref().map(|all| items(all.rest.clone())));
    let more = move || cautions.with(|cautions| cautions.as_ref().and_then(|all| all.more.clone()));
    let has_more = Memo::new(move |_| more().is_some());

    view! {
        <section class="cautions" aria-label="Before you act on this">
            <ul>{first}</ul>
            <Show when=move || has_more.get()>
                <Fold summary=Signal::derive(move || more().unwrap_or_default())>
                    <ul>{rest}</ul>
                </Fold>
            </Show>
        </section>
    }
}
