//! The page: one signal in, one memo out. It shows what the report says and works nothing out itself.

mod along;
mod answer;
mod boxed;
mod changing;
mod checklist;
mod compare;
mod detail;
mod drafts;
mod drawing;
mod ends;
mod field;
mod findings;
mod firm;
mod forces;
mod form;
mod keep;
mod known;
mod later;
mod markup;
mod metals;
mod moments;
mod more;
mod moves;
mod outside;
mod pace;
mod parts;
mod patch;
mod pen;
mod plan;
mod prove;
mod qr;
mod rest;
mod rig;
mod rig_adding;
mod rig_entries;
mod rig_parts;
mod saved;
mod send;
mod sheets;
mod shelf;
mod shelf_list;
mod sizes;
mod standing;
mod state;
mod storage;
mod tag;
mod trail;
mod verdict;
mod words;
mod working;

use changing::whenever;
use known::Known;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::quantity::System;
use linkwright::report::LinkReport;
use linkwright::share;
use linkwright::store::stored_entries::StoredEntries;
use rest::Rest;
use standing::DefaultKind;
use state::{Bench, Leaf};
use tag::{Piece, button, live, nothing, several, tag, words as live_words};

/// What the page is called while what it holds has no name.
const NAME: &str = "Linkwright: size a suspension link and see why";

/// What the window, a bookmark and a file of the printed page are called.
fn page_name(bench: Bench, document: &Document, at: usize, one: bool) -> String {
    if *document == Document::default() {
        return NAME.to_string();
    }
    let rig = shelf::title(bench, document);
    let link = document.links.get(at).filter(|_| one && document.links.len() > 1).map(|link| link.title());
    let link = link.map(|title| format!("{title}, ")).unwrap_or_default();
    format!("{link}{rig}: Linkwright")
}

/// Mounts the page.
pub(crate) fn start() {
    // To the framework it is an empty view: what stands on the page keeps itself.
    mount_to_body(|| DefaultKind::new(page()).stay());
    storage::mark_live();
}

/// The whole page.
fn page() -> Piece {
    let bench = Bench::open();
    bench.fetch_rest();
    let name = bench.pace.calm(Known::new(move || {
        let one = matches!(bench.leaf.get(), Leaf::Size | Leaf::Prove);
        let at = bench.at.get();
        bench.document.with(|document| page_name(bench, document, at, one))
    }));
    whenever(move |_| name.with(|name| storage::name_page(name)));
    let main = tag("main class=bench")
        .class("proving", move || bench.known.get() && bench.leaf.get() == Leaf::Prove)
        .class("whole", move || bench.leaf.get() == Leaf::Rig)
        .class("saved", move || bench.leaf.get() == Leaf::Saved)
        .with(drawing::drawing(bench))
        .with(form::form(bench))
        .with(
            tag("section class=sheet id=answer tabindex=-1 aria-label='The answer'").with(live(move || leaves(bench))),
        );
    several().with(title(bench)).with(told(bench)).with(main).with(foot()).with(summary(bench))
}

/// The leaf that is open; on paper both, one after the other.
fn leaves(bench: Bench) -> Piece {
    let leaf = bench.leaf.get();
    if matches!(leaf, Leaf::Rig | Leaf::Saved) {
        return live(move || rest::view(bench, leaf));
    }
    // Each is asked for by itself: where paper adds the one, the other keeps its folds and the focus.
    let paper = move || bench.printing.get() || bench.laid_open.get();
    let answers = Known::new(move || leaf == Leaf::Size || !bench.entered.get() || paper());
    let proves = Known::new(move || bench.entered.get() && (leaf == Leaf::Prove || paper()));
    let proof = move || rest::view(bench, Leaf::Prove);
    several()
        .with(live(move || if answers.get() { live(move || answer_part(bench)) } else { nothing() }))
        .with(live(move || if proves.get() { live(proof) } else { nothing() }))
}

/// The answer, or what stands in its place. Only when one takes the place of the other is it built anew.
fn answer_part(bench: Bench) -> Piece {
    if bench.known.get() {
        return answer::answer(bench);
    }
    match bench.report.get() {
        LinkReport::Impossible(why) => tag("p class=stop id=headline").with(&*bench.say(&why)),
        LinkReport::Needs(needs) => form::invitation(&needs),
        LinkReport::Answer(_) => nothing(),
    }
}

/// Name of the page, its leaves and the unit switch.
fn title(bench: Bench) -> Piece {
    let unit = move |system: System, open, label, spoken| {
        button(open, label, move |_| bench.switch_units(system))
            .set("aria-label", spoken)
            .attribute("aria-pressed", move || (bench.system.get() == system).to_string())
    };
    let leaves = tag("nav class=leaves aria-label=Views")
        .with(leaf(bench, Leaf::Rig, "button type=button id=leaf-rig", "Rig"))
        .with(leaf(bench, Leaf::Size, "button type=button id=leaf-size", "Size"))
        .with(leaf(bench, Leaf::Prove, "button type=button id=leaf-prove", "Prove"))
        .with(leaf(bench, Leaf::Saved, "button type=button id=leaf-saved", "Saved"));
    let units = tag("div class=units role=group aria-label=Units")
        .with(unit(System::Inch, "button type=button id=units-inch", "in, lb", "in, lb: inches and pounds"))
        .with(unit(
            System::Metric,
            "button type=button id=units-metric",
            "mm, kg",
            "mm, kg: millimeters and kilograms",
        ));
    tag("header class=title")
        .with(tag("h1").with("Linkwright"))
        .with(tag("p").with("Sizes a suspension link and shows why."))
        .with(leaves)
        .with(units)
}

/// A tab of the drawing set.
fn leaf(bench: Bench, leaf: Leaf, open: &'static str, name: &str) -> Piece {
    let current = move || if bench.leaf.get() == leaf { "page" } else { "false" }.to_string();
    button(open, name, move |_| bench.turn_to(leaf)).attribute("aria-current", current)
}

/// What a received link brought with it, and the way back.
fn told(bench: Bench) -> Piece {
    let sentences = move || {
        let line = |sentence: &String| tag("p").with(&**sentence);
        let mut told: Vec<Piece> = bench.told.with(|told| told.iter().map(line).collect());
        // What makes the numbers doubtful stays until somebody compared them.
        let doubtful = |sentence: &String| tag("p class=doubt").with(&**sentence);
        let doubt: Vec<Piece> = bench.origin.with(|origin| origin.unverified.iter().map(doubtful).collect());
        if !doubt.is_empty() {
            told.extend(doubt);
            let compared = button("button type=button id=compared", "I have compared every number", move |_| {
                bench.clear_doubt();
                storage::show("answer");
            });
            told.push(tag("p class=back").with(compared));
        }
        several().with(told)
    };
    let back = move || {
        if bench.before.with(Option::is_none) {
            return nothing();
        }
        tag("p class=back")
            .with(if bench.origin.with(|origin| origin.build.is_none() && !origin.base.is_empty()) {
                "This came by a link. "
            } else {
                ""
            })
            .with("Your own earlier entries are kept, in the bin too.")
            .with(button("button type=button id=back-to-own", "Back to your own entries", move |_| bench.back_to_own()))
            .with(button("button type=button id=keep-these class=quiet", "Close", move |_| {
                bench.forget_earlier();
                storage::show("answer");
            }))
    };
    let elsewhere = move || bench.elsewhere.get().map_or_else(nothing, |held| elsewhere(bench, &held));
    let trouble = move || bench.trouble.get().map_or_else(nothing, trouble);
    tag("div id=told role=status").with(live(sentences)).with(live(back)).with(live(elsewhere)).with(live(trouble))
}

/// Nothing can be kept here.
fn trouble(trouble: storage::Trouble) -> Piece {
    let rest =
        " Your work goes on; the address above holds it. To keep it, copy the link, or export a file from Saved.";
    tag("p class=trouble").with(trouble.sentence()).with(rest)
}

/// Another tab holds something else: the reader decides.
fn elsewhere(bench: Bench, held: &StoredEntries) -> Piece {
    let title = shelf::title(bench, &share::from_fragment(&held.fragment).document);
    tag("p class=elsewhere")
        .with("Another tab has something else open: ")
        .with(&*title)
        .with(". This tab keeps its own entries.")
        .with(button("button type=button id=join", "Show that one here too", move |_| bench.join()))
        .with(button("button type=button id=stay-apart class=quiet", "Leave them apart", move |_| {
            bench.elsewhere.set(None);
        }))
}

/// The one line that stays in sight while typing.
fn summary(bench: Bench) -> Piece {
    let why = move || {
        if !bench.known.get() || bench.leaf.get() != Leaf::Size {
            return nothing();
        }
        button("button type=button class=quiet", "See why", move |_| bench.turn_to(Leaf::Prove))
    };
    tag("div class=summary")
        .class("stale", move || bench.known.get() && bench.stale())
        .with(tag("p id=summary aria-live=polite").with(live_words(move || summed(bench))))
        .with(live(why))
}

/// What is said in that line.
fn summed(bench: Bench) -> String {
    match bench.leaf.get() {
        Leaf::Rig | Leaf::Saved => match bench.rest.get() {
            Rest::Here(part) => (part.summed)(bench),
            Rest::OnItsWay => "Loading …".to_string(),
            Rest::Missing => "A part of the page did not arrive.".to_string(),
        },
        Leaf::Size | Leaf::Prove => words::summary(bench),
    }
}

/// What leaves the device, and how far to trust the page.
fn foot() -> Piece {
    tag("footer class=foot")
        .with(tag("p").with("Nothing you type leaves this device unless you send it. A link carries your entries in its own address; no server keeps them."))
        .with(tag("p").with("An estimate for planning. Makers’ ratings, local rules and a licensed engineer come first."))
}
