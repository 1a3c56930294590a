//! The first three entries, and what stands there before them.

use super::field::{NumberField, RadioField};
use super::more::More;
use super::state::{Bench, Leaf};
use super::{rig_entries, trail, words};
use leptos::prelude::*;
use linkwright::document::{Document, Link};
use linkwright::inputs::{self, Place};

/// Every entry of the link on the bench.
#[component]
pub(super) fn Form() -> impl IntoView {
    let bench = Bench::here();
    let place = Memo::new(move |_| bench.place());
    view! {
        <h2 class="unseen" id="entries-title">"Your entries"</h2>
        {move || welcome(bench)}
        {picker(bench)}
        {move || if bench.leaf.get() == Leaf::Rig { rig_entries::rig_entries(bench) } else { entries(bench, place.get()) }}
        {start_over(bench)}
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
    let titles =
        Memo::new(move |_| bench.document.with(|document| document.links.iter().map(Link::title).collect::<Vec<_>>()));
    (move || {
        let titles = titles.get();
        if titles.len() < 2 || bench.leaf.get() == Leaf::Rig {
            return ().into_any();
        }
        let options = titles.into_iter().enumerate().map(|(index, title)| {
            view! { <option value=index.to_string() selected=move || bench.at.get() == index>{title}</option> }
        });
        view! {
            <div class="field links">
                <label for="link-picker">"Link on the bench"</label>
                <select id="link-picker" on:change=move |event| bench.at.set(event_target_value(&event).parse().unwrap_or(0))>
                    {options.collect_view()}
                </select>
            </div>
        }
        .into_any()
    })
    .into_any()
}

/// Steps back and forth, and a way back to an empty form once something is in it.
fn start_over(bench: Bench) -> AnyView {
    let filled = Memo::new(move |_| bench.document.with(|document| *document != Document::default()));
    view! {
        <div class="buttons clear">
            {trail::buttons(bench)}
            {move || filled.get().then(|| view! {
                <button type="button" class="quiet" id="clear" on:click=move |_| bench.clear()>"Clear every entry"</button>
            })}
        </div>
    }
    .into_any()
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
