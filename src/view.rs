//! The page: one signal in, one memo out. It shows what the report says and works nothing out itself.

// The component macro makes public what the page keeps to itself.
#![allow(unreachable_pub)]

mod along;
mod answer;
mod checklist;
mod compare;
mod detail;
mod drawing;
mod ends;
mod field;
mod findings;
mod forces;
mod form;
mod keep;
mod later;
mod markup;
mod metals;
mod more;
mod moves;
mod outside;
mod parts;
mod pen;
mod plan;
mod prove;
mod qr;
mod rig;
mod rig_entries;
mod saved;
mod send;
mod shelf;
mod sizes;
mod state;
mod storage;
mod trail;
mod verdict;
mod words;
mod working;

use leptos::prelude::*;
use linkwright::quantity::System;
use linkwright::report::LinkReport;
use linkwright::share;
use state::{Bench, Leaf};

/// Mounts the page.
pub(crate) fn start() {
    mount_to_body(App);
    storage::mark_live();
}

/// The whole page.
#[component]
fn App() -> impl IntoView {
    let bench = Bench::open();
    provide_context(bench);
    view! {
        <Title/>
        <Told/>
        <main class="bench" class:proving=move || bench.known.get() && bench.leaf.get() == Leaf::Prove class:whole=move || bench.leaf.get() == Leaf::Rig class:saved=move || bench.leaf.get() == Leaf::Saved>
            <drawing::Drawing/>
            <section class="entries" aria-labelledby="entries-title">
                <form::Form/>
            </section>
            <section class="sheet" id="answer" tabindex="-1" aria-label="The answer">
                {move || leaves(bench)}
            </section>
        </main>
        <Foot/>
        <Summary/>
    }
}

/// The leaf that is open; on paper both, one after the other.
fn leaves(bench: Bench) -> AnyView {
    match bench.leaf.get() {
        Leaf::Rig => return rig::rig(bench),
        Leaf::Saved => return saved::saved(bench),
        Leaf::Size | Leaf::Prove => {}
    }
    let entered = bench.entered.get();
    let paper = bench.printing.get() || bench.laid_open.get();
    let size = (paper || !entered || bench.leaf.get() == Leaf::Size).then_some(move || answer_part(bench));
    let prove = (entered && (paper || bench.leaf.get() == Leaf::Prove)).then(|| prove::prove(bench));
    view! { {size}{prove} }.into_any()
}

/// The answer, or what stands in its place. Only when one takes the place of the other is it built anew.
fn answer_part(bench: Bench) -> AnyView {
    if bench.known.get() {
        return answer::answer(bench);
    }
    match bench.report.get() {
        LinkReport::Impossible(why) => view! { <p class="stop" id="headline">{bench.say(&why)}</p> }.into_any(),
        LinkReport::Needs(needs) => form::invitation(&needs),
        LinkReport::Answer(_) => ().into_any(),
    }
}

/// Name of the page and the unit switch.
#[component]
fn Title() -> impl IntoView {
    let bench = Bench::here();
    let unit = move |system: System, id: &'static str, label: &'static str, spoken: &'static str| {
        view! {
            <button type="button" id=id aria-pressed=move || (bench.system.get() == system).to_string() aria-label=spoken
                on:click=move |_| bench.system.set(system)>{label}</button>
        }
    };
    view! {
        <header class="title">
            <h1>"Linkwright"</h1>
            <p>"Sizes a suspension link and shows why."</p>
            <nav class="leaves" aria-label="Views">
                {leaf(bench, Leaf::Rig, "leaf-rig", "Rig")}
                {leaf(bench, Leaf::Size, "leaf-size", "Size")}
                {leaf(bench, Leaf::Prove, "leaf-prove", "Prove")}
                {leaf(bench, Leaf::Saved, "leaf-saved", "Saved")}
            </nav>
            <div class="units" role="group" aria-label="Units">
                {unit(System::Inch, "units-inch", "in, lb", "in, lb: inches and pounds")}
                {unit(System::Metric, "units-metric", "mm, kg", "mm, kg: millimeters and kilograms")}
            </div>
        </header>
    }
}

/// A tab of the drawing set.
fn leaf(bench: Bench, leaf: Leaf, id: &'static str, name: &'static str) -> impl IntoView {
    let current = move || if bench.leaf.get() == leaf { "page" } else { "false" };
    view! { <button type="button" id=id aria-current=current on:click=move |_| bench.turn_to(leaf)>{name}</button> }
}

/// What a received link brought with it, and the way back.
#[component]
fn Told() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <div id="told" role="status">
            {move || bench.told.get().into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()}
            {move || bench.before.with(Option::is_some).then(|| view! {
                <p class="back">
                    "Your own earlier entries are kept."
                    <button type="button" id="back-to-own" on:click=move |_| bench.back_to_own()>"Back to your own entries"</button>
                    <button type="button" id="keep-these" class="quiet" on:click=move |_| bench.forget_earlier()>"Keep these instead"</button>
                </p>
            })}
            {move || bench.elsewhere.get().map(|fragment| elsewhere(bench, &fragment))}
            {move || bench.trouble.get().map(|trouble| view! {
                <p class="trouble">{trouble.sentence()}" Your work goes on; the address above holds it. To keep it, copy the link, or export a file from Saved."</p>
            })}
        </div>
    }
}

/// Another tab holds something else: the reader decides.
fn elsewhere(bench: Bench, fragment: &str) -> AnyView {
    let title = shelf::title(bench, &share::from_fragment(fragment).document);
    view! {
        <p class="elsewhere">
            "Another tab has something else open: "{title}". This tab keeps its own entries."
            <button type="button" id="join" on:click=move |_| bench.join()>"Show that one here too"</button>
            <button type="button" id="stay-apart" class="quiet" on:click=move |_| bench.elsewhere.set(None)>"Leave them apart"</button>
        </p>
    }
    .into_any()
}

/// The one line that stays in sight while typing.
#[component]
fn Summary() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <div class="summary" class:stale=move || bench.stale()>
            <p id="summary" aria-live="polite">{move || summary(bench)}</p>
            {move || (bench.known.get() && bench.leaf.get() == Leaf::Size).then(|| view! {
                <button type="button" class="quiet" on:click=move |_| bench.turn_to(Leaf::Prove)>"See why"</button>
            })}
        </div>
    }
}

/// What is said in that line.
fn summary(bench: Bench) -> String {
    if bench.leaf.get() == Leaf::Rig {
        return bench.whole.with(|whole| whole.as_ref().map(rig::summary).unwrap_or_default());
    }
    words::summary(bench)
}

/// What leaves the device, and how far to trust the page.
#[component]
fn Foot() -> impl IntoView {
    view! {
        <footer class="foot">
            <p>"Nothing you type leaves this device unless you send it. A link carries your entries in its own address; no server keeps them."</p>
            <p>"An estimate for planning. Makers’ ratings, local rules and a licensed engineer come first."</p>
        </footer>
    }
}
