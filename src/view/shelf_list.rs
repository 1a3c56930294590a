//! The list of saved builds and the bin: markup, and what their buttons do.

use super::markup::{Markup, attribute, element, plain, said};
use super::moments::after;
use super::saved::{Offer, Shown, export, file_name, sentences};
use super::shelf::Kept;
use super::state::{Bench, toggle};
use super::{storage, words};
use linkwright::builds::Build;
use linkwright::differences::differences;
use linkwright::document::{Document, Position};
use linkwright::share;
use std::time::Duration;

/// The builds that are not in the bin and fit what is looked for.
pub(super) fn listed(bench: Bench, shown: Shown) -> Markup {
    let find = storage::lowercase(&shown.find.get());
    let words: Vec<&str> = find.split_whitespace().collect();
    let shelf = bench.shelf.get().unwrap_or_default();
    let all: Vec<Kept> = shelf.into_iter().filter(|kept| kept.damaged || kept.build.removed.is_none()).collect();
    if all.is_empty() {
        return said("li", "Save the current build, or import a file below.");
    }
    let fits = |kept: &&Kept| {
        let about = storage::lowercase(&format!("{} {}", kept.title(bench), about(bench, &kept.build.document)));
        words.iter().all(|word| about.contains(word))
    };
    let found: Markup = all.iter().filter(fits).map(|kept| one(bench, shown, kept)).collect();
    if found.is_empty() { said("li", "No build has these words in its name or its links.") } else { found }
}

/// What a build is about, in one line.
fn about(bench: Bench, document: &Document) -> String {
    let job = words::job(document, bench.system.get());
    let mut about = if job.is_empty() { String::new() } else { format!("{job}.") };
    for axle in Position::ALL {
        let here = document.links.iter().filter(|link| link.position == axle);
        // The axle is said once: `Front: lower links, track bar.`
        let word = format!("{} ", axle.word());
        let names: Vec<String> = here.map(|link| words::lower(&link.title()).replace(&word, "")).collect();
        if !names.is_empty() {
            let head = if axle == Position::Front { "Front" } else { "Rear" };
            about += &format!(" {head}: {}.", names.join(", "));
        }
    }
    about
}

/// A button of a build; said aloud, it names the build.
fn act_button(act: &str, class: &str, label: &str, name: &str) -> Markup {
    let unseen = if name.is_empty() { Markup::default() } else { said("span class=\"unseen\"", format!(": {name}")) };
    let open = attribute("button type=\"button\"", "class", class);
    element(attribute(&open, "data-do", act), plain(label) + unseen)
}

/// One build, and what can be done with it.
fn one(bench: Bench, shown: Shown, kept: &Kept) -> Markup {
    let (build, name) = (&kept.build, kept.title(bench));
    let mut inside = said("h4", &name);
    let mut buttons = Markup::default();
    if kept.damaged {
        inside.extend(build.doubt.iter().map(|words| said("p class=\"error\"", words)));
        inside += said("p", "Nothing else is lost by it. Export it as it is, for somebody who can mend it.");
        buttons += act_button("export", "export", "Export it", "") + for_good(shown, &build.id);
    } else {
        let mut when = storage::spoken_time(&build.saved);
        if !when.is_empty() {
            when = format!("Saved {when}. ");
        }
        if bench.work.with(|work| work.build.as_ref() == Some(&build.id)) {
            when.push_str("On the bench now.");
        }
        inside += said("p class=\"source\"", when) + said("p", about(bench, &build.document));
        inside.extend(build.doubt.iter().map(|words| said("p class=\"error\"", words)));
        buttons += act_button("open", "open", "Open", &name)
            + act_button("copy", "quiet copy", "Duplicate", &name)
            + act_button("export", "quiet export", "Export", &name)
            + act_button("remove", "quiet remove", "Delete", &name);
        if shown.armed.with(|armed| *armed == build.id) {
            buttons += for_good(shown, &build.id);
        }
        if !build.earlier.is_empty() {
            buttons += act_button("history", "quiet history-of", "What changed", &name);
        }
    }
    inside += element("div class=\"buttons\"", buttons);
    if shown.history.with(|open| open.contains(&build.id)) {
        inside += history(bench, build);
    }
    element(attribute("li", "data-build", &build.id), inside)
}

/// Earlier versions, each with what changed after it.
fn history(bench: Bench, build: &Build) -> Markup {
    let mut after = build.document.clone();
    let mut saved = build.saved.clone();
    let mut lines = Markup::default();
    for (number, earlier) in build.earlier.iter().enumerate().rev() {
        let opened = share::from_fragment(&earlier.fragment);
        let damaged: Markup =
            opened.told.iter().chain(&earlier.doubt).map(|words| said("p class=\"error\"", words)).collect();
        let before = opened.document;
        let when = said("p", storage::spoken_time(&saved));
        let changes = element("ul class=\"changes\"", sentences(bench, &differences(&before, &after)));
        let open = format!("Open version {} of {}", number + 1, storage::spoken_time(&earlier.saved));
        let button = format!("button type=\"button\" class=\"quiet\" data-do=\"version\" data-version=\"{number}\"");
        lines += element("li", when + changes + damaged + said(&button, &open));
        (after, saved) = (before, earlier.saved.clone());
    }
    element("ol class=\"history\"", lines)
}

/// Takes a build out of the bin.
pub(super) fn bring(bench: Bench, shown: Shown, kept: &Kept) {
    shown.armed.set(String::new());
    shown.tell(match bench.bring_back(kept) {
        Ok(name) => format!("“{name}” is back among the saved builds."),
        Err(trouble) => format!("Not brought back. {}", trouble.sentence()),
    });
    storage::show("saved-title");
}

/// Gives the focus to what stands there once the list is written anew.
fn focus_soon(selector: String) {
    after(Duration::from_millis(30), move || storage::focus(&selector));
}

/// Does what a button of a build asks for.
pub(super) fn act(bench: Bench, shown: Shown, event: &leptos::ev::Event) {
    let (Some(what), Some(id)) = (storage::attribute(event, "data-do"), storage::attribute(event, "data-build")) else {
        return;
    };
    if what != "forget" {
        // Only two presses in a row delete for good.
        shown.armed.set(String::new());
    }
    if matches!(what.as_str(), "copy" | "history" | "forget" | "export") {
        // The list is written anew: the keyboard stays where it was.
        focus_soon(format!("[data-build='{id}'] [data-do='{what}']"));
    }
    let Some(kept) = bench.record(&id) else { return };
    let name = kept.title(bench);
    match what.as_str() {
        "open" => bench.open_build(&id, None),
        "version" => {
            let number = storage::attribute(event, "data-version").and_then(|number| number.parse::<usize>().ok());
            let earlier = number.and_then(|number| kept.build.earlier.get(number));
            if let Some(earlier) = earlier {
                bench.open_build(&id, Some(earlier));
            }
        }
        "copy" => shown.tell(match bench.duplicate(&kept) {
            Ok(title) => format!("Copied as “{title}”."),
            Err(trouble) => format!("Not copied. {}", trouble.sentence()),
        }),
        "export" if kept.damaged => {
            storage::download(&format!("linkwright-damaged-{id}.txt"), &kept.text);
        }
        "export" => export(shown, &file_name(&name), &[kept.build]),
        "remove" => match bench.bin(&kept) {
            Ok(()) => {
                shown.tell(format!("“{name}” is in the bin, at the end of this page."));
                shown.offer.set(Some(Offer::BringBack(id)));
                focus_soon("#bring-back".to_string());
            }
            Err(trouble) => {
                // There is no room for the note that it was deleted: then it can only go for good.
                shown.armed.set(id);
                let sentence = format!(
                    "Not deleted. {} Export “{name}” if you may want it back, then delete it for good.",
                    trouble.sentence()
                );
                shown.tell(sentence);
            }
        },
        "bring" => bring(bench, shown, &kept),
        "history" => toggle(shown.history, id),
        "forget" if shown.armed.get_untracked() == id => {
            bench.forget(&id);
            shown.tell(format!("“{name}” is gone for good."));
            storage::show("saved-title");
        }
        "forget" => shown.armed.set(id),
        _ => {}
    }
}

/// What was deleted, and what the page set aside.
pub(super) fn binned(bench: Bench, shown: Shown) -> Markup {
    let shelf = bench.shelf.get().unwrap_or_default();
    let one = |kept: &Kept| {
        let (id, name) = (&kept.build.id, kept.title(bench));
        let when = storage::spoken_time(kept.build.removed.as_deref().unwrap_or_default());
        let how = if kept.is_set_aside() { "Set aside unsaved" } else { "Deleted" };
        let buttons = act_button("bring", "bring", "Bring it back", &name) + for_good(shown, id);
        let inside = said("h4", &name)
            + said("p class=\"source\"", format!("{how} {when}"))
            + said("p", about(bench, &kept.build.document))
            + element("div class=\"buttons\"", buttons);
        element(attribute("li", "data-build", id), inside)
    };
    shelf.iter().filter(|kept| kept.lies_in_bin()).map(one).collect()
}

/// A button that must be pressed twice.
fn for_good(shown: Shown, id: &str) -> Markup {
    let armed = shown.armed.with(|armed| armed == id);
    act_button("forget", "quiet forget", if armed { "Press again: it is gone for good" } else { "Delete for good" }, "")
}
