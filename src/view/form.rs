//! The first three entries, and what stands there before them.

use super::field::{NumberField, RadioField};
use super::more::More;
use super::state::{Bench, Leaf};
use super::words;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::inputs::{self, Place};

/// Every entry of the link on the bench.
#[component]
pub(super) fn Form() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <h2 class="unseen" id="entries-title">"Your entries"</h2>
        {move || welcome(bench)}
        {move || picker(bench)}
        {move || entries(bench, Place { link: bench.at.get(), end: 0 })}
        {move || start_over(bench)}
    }
    .into_any()
}

fn entries(bench: Bench, place: Place) -> AnyView {
    view! {
        <form class="first" on:submit=move |event| event.prevent_default()>
            <RadioField choice=&inputs::ROLE place=place/>
            <NumberField input=&inputs::LENGTH place=place/>
            <NumberField input=&inputs::WEIGHT place=place/>
            <RadioField choice=&inputs::USAGE place=place/>
            {move || shows_more(bench).then(|| view! { <More place=place/> })}
        </form>
    }
    .into_any()
}

/// In the Prove view the defaults stand where the forces are told; every field stands on the page once.
fn shows_more(bench: Bench) -> bool {
    bench.leaf.get() == Leaf::Size || !bench.entered.get()
}

/// Which of several links is on the bench; nothing when there is only one.
fn picker(bench: Bench) -> AnyView {
    let count = bench.document.with(|document| document.links.len());
    if count < 2 {
        return ().into_any();
    }
    let one = move |index: usize| {
        view! {
            <button type="button" aria-pressed=move || (bench.at.get() == index).to_string() on:click=move |_| bench.at.set(index)>
                {format!("Link {}", index + 1)}
            </button>
        }
    };
    view! { <div class="links" role="group" aria-label="Links of this rig">{(0..count).map(one).collect_view()}</div> }
        .into_any()
}

/// A way back to an empty form, once something is in it.
fn start_over(bench: Bench) -> AnyView {
    if bench.document.with(|document| *document == Document::default()) {
        return ().into_any();
    }
    view! { <button type="button" class="quiet clear" id="clear" on:click=move |_| bench.clear()>"Clear every entry"</button> }.into_any()
}

/// The invitation above an empty form.
fn welcome(bench: Bench) -> AnyView {
    if bench.document.with(|document| *document != Document::default()) {
        return ().into_any();
    }
    view! {
        <div class="welcome">
            <p>"Three entries give the whole answer."</p>
            <button type="button" class="quiet" id="example" on:click=move |_| bench.try_example()>"Try an example"</button>
        </div>
    }
    .into_any()
}

/// What stands in place of the answer until it can be given.
pub(super) fn invitation(needs: &[&'static str]) -> AnyView {
    // Somebody who is past the first entries needs no welcome.
    if !needs.iter().any(|id| [inputs::LENGTH.id, inputs::WEIGHT.id, inputs::USAGE.id].contains(id)) {
        return view! { <p class="stop" id="still-needed">{words::still_needed(needs)}</p> }.into_any();
    }
    view! {
        <div class="invitation">
            <p class="lead">"Measure one link from hole center to hole center. Add what the rig weighs, loaded, and how you drive it."</p>
            <p id="still-needed">{words::still_needed(needs)}</p>
            <p>"You get the bar, the rod ends, what to saw, tap and set, and how far it is from giving. Every number opens its working."</p>
        </div>
    }
    .into_any()
}
