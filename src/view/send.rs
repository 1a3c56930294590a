//! Sending the answer: the link, the words, the paper.

use super::changing::{Changing, whenever};
use super::known::Known;
use super::moments::{after, meanwhile};
use super::prove::STALE;
use super::shelf::Saving;
use super::state::{Bench, Leaf};
use super::tag::{Piece, button, several, tag, words as live_words};
use super::{qr, rig, saved, storage, words};
use linkwright::document::Document;
use std::time::Duration;

/// What to do where the browser does not let a page copy.
const BELOW: &str = "Your browser did not let me copy. The link stands below: hold it, or press Ctrl and C.";

/// What a link is good for, and what it is not where the page itself lies on the device.
const OF_A_LINK: &str = "The link opens the same numbers on any phone. They travel in the link itself.";
const OF_A_FILE: &str = "This page is a file on this device, and a link to it opens here only. To hand the numbers on, copy them as text, or save them as a file under “Saved”.";

/// What can be done with the answer.
pub(super) fn send(bench: Bench) -> Piece {
    let told = Changing::new(String::new());
    // No key need wait for a text that nobody looks at.
    let unfolded = Changing::new(false);
    let text = move || {
        if bench.leaf.get() == Leaf::Rig {
            return bench.whole.with(|whole| whole.as_ref().map(|whole| rig::text(bench, whole)).unwrap_or_default());
        }
        let link = bench.link_for_others();
        let Some(answer) = bench.answer() else { return String::new() };
        let text = bench.document.with(|document| words::plain_text(document, bench.at.get(), &answer, link));
        if bench.stale() { format!("{STALE}\n{text}") } else { text }
    };
    let link = move || bench.link();
    let shown = bench.pace.calm(Known::new(link));
    let twin = bench.pace.calm(Known::new(move || if unfolded.get() { text() } else { String::new() }));
    // What was copied or saved is not what stands there now.
    whenever(move |first| {
        shown.with(|_| ());
        if !first {
            told.set(String::new());
        }
    });
    let all = if bench.leaf.get_untracked() == Leaf::Rig {
        "Print every link’s sheet too"
    } else {
        "Print with every working (about 70 pages)"
    };
    let buttons = tag("div class=buttons")
        .with(
            button("button type=button id=save-here", "Save on this device", move |_| save(bench, told))
                .flag("disabled", move || bench.document.with(|document| *document == Document::default())),
        )
        .with(button("button type=button id=copy-link", "Copy the link", move |_| {
            bench.settle();
            copy(link(), told, &sure(bench, "The link is on your clipboard."), BELOW);
        }))
        .with(button("button type=button id=copy-text", "Copy as text", move |_| {
            bench.settle();
            copy(text(), told, &sure(bench, "The text is on your clipboard."), BELOW);
        }))
        .with(storage::can_share().then(|| button("button type=button id=share", "Share", move |_| share(bench, told))))
        .with(button("button type=button id=print", "Print", move |_| print(bench, false)))
        .with(button("button type=button id=print-all", all, move |_| print(bench, true)));
    let field = tag("input class=own-line id=link-text readonly")
        .value(move || shown.get())
        .on("focus", |_| storage::select_all("link-text"));
    let section = tag("section class='part-of sending'")
        .with(tag("h3").with("Keep it or send it"))
        .with(tag("p").with(if storage::is_a_file() { OF_A_FILE } else { OF_A_LINK }))
        .with(buttons)
        .with(tag("p class=done role=status").with(live_words(move || told.get())))
        .with(tag("label class=own-line for=link-text").with("The link"))
        .with(field)
        .with(
            tag("details")
                .first_opened(unfolded)
                .with(tag("summary").with("The answer as text, both units"))
                .with(tag("pre id=twin").with(live_words(move || twin.get()))),
        );
    several().with(section).with(qr::code(bench))
}

/// Saves it; where that needs a decision, turns to where it is made.
fn save(bench: Bench, told: Changing<String>) {
    let saving = bench.save(false, false);
    if matches!(saving, Saving::Changed) {
        bench.turn_to(Leaf::Saved);
    }
    tell(told, sure(bench, &saved::told(saving).concat()));
}

/// A sentence about what was handed on, and whether that is what stands in the fields.
fn sure(bench: Bench, done: &str) -> String {
    let untaken = if bench.stale() {
        " One of your entries is not taken yet: in its place stands the last good one."
    } else {
        ""
    };
    format!("{done}{untaken}")
}

/// Says something, anew also where it was said before.
fn tell(told: Changing<String>, words: String) {
    told.set(String::new());
    after(Duration::from_millis(60), move || told.set(words));
}

/// Puts a text on the clipboard and says so; where the browser refuses, says what to do.
pub(super) fn copy(text: String, told: Changing<String>, done: &str, or: &'static str) {
    let done = done.to_string();
    meanwhile(async move {
        let copied = storage::copy(&text).await;
        tell(told, if copied { done } else { or.to_string() });
        if !copied && or == BELOW {
            storage::show("link-text");
        }
    });
}

fn share(bench: Bench, told: Changing<String>) {
    bench.settle();
    let text = if bench.leaf.get_untracked() == Leaf::Rig {
        bench.whole.with_untracked(|whole| whole.as_ref().map(rig::summary).unwrap_or_default())
    } else {
        let Some(answer) = bench.answer() else { return };
        words::headline(&answer.link, bench.system.get())
    };
    let address = bench.link();
    meanwhile(async move {
        if storage::share(&text, &address).await {
            tell(told, sure(bench, "Handed over."));
        }
    });
}

/// Prints, with every working or every link's sheet laid open if `all` is wanted: the paper has no taps.
fn print(bench: Bench, all: bool) {
    bench.settle();
    bench.laid_open.set(all);
    // What a browser tells while a script asks it to print changes nothing on the page before all is over.
    bench.printing.set(true);
    bench.at_the_printer.update(|(asked, _)| *asked += 1);
    let (asked, _) = bench.at_the_printer.get_untracked();
    let ask = move || {
        storage::print();
        // A page inside another program may have no printer at all, and is told of nothing.
        let none = move || {
            if bench.at_the_printer.try_get_untracked() == Some((asked, false)) {
                bench.printed();
            }
        };
        after(Duration::from_secs(1), none);
    };
    after(Duration::from_millis(50), ask);
}
