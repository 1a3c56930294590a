//! What is kept on this device: saving, finding, opening, copying, the bin, and files.

use super::shelf::{Kept, Saving, title};
use super::state::Bench;
use super::tag::{Tag, button, live, nothing, tag, words};
use super::{compare, rig_entries, storage, trail};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::builds::{self, Build};
use linkwright::differences::{Difference, differences};
use linkwright::document::{Document, Link};
use linkwright::share;

/// More changes than these are counted, not listed.
const MOST_LISTED: usize = 12;

/// What the view itself holds.
#[derive(Clone, Copy)]
pub(super) struct Shown {
    /// What was last done, said once.
    told: RwSignal<Vec<String>>,
    /// Letters that a build must contain to be listed.
    find: RwSignal<String>,
    /// Whether another tab saved the same build meanwhile.
    clash: RwSignal<bool>,
}

/// The view.
pub(super) fn saved(bench: Bench) -> AnyView {
    bench.read_shelf();
    let shown = Shown { told: RwSignal::default(), find: RwSignal::default(), clash: RwSignal::new(false) };
    let many =
        Memo::new(move |_| bench.shelf.with(|shelf| shelf.iter().flatten().filter(|kept| kept.lies_open()).count()));
    let how_many = move || match many.get() {
        0 => "No saved builds yet".to_string(),
        1 => "1 saved build".to_string(),
        many => format!("{many} saved builds"),
    };
    let list = tag("section class=part-of aria-labelledby=list-title")
        .with(tag("h3 id=list-title").with("Saved builds"))
        .with(live(move || if many.get() > 3 { finding(shown) } else { nothing() }))
        .with(tag("ul class=builds id=builds").with(live(move || listed(bench, shown))));
    vec![
        tag("p class=kicker").with("On this device").into_any(),
        tag("h2 id=saved-title tabindex=-1").with(words(how_many)).into_any(),
        saving(bench, shown),
        tag("div id=saved-told role=status").with(live(move || lines("p", &shown.told.get()).into_any())).into_any(),
        list.into_any(),
        live(move || if many.get() > 0 { compare::compare(bench) } else { nothing() }),
        files(bench, shown),
        live(move || bin(bench, shown)),
    ]
    .into_any()
}

/// Each sentence in an element of its own.
fn lines(open: &'static str, sentences: &[String]) -> Vec<AnyView> {
    sentences.iter().map(|words| tag(open).with(&**words).into_any()).collect()
}

/// Words on a button that only a screen reader says.
fn unseen(before: &str, name: &str) -> Tag {
    tag("span class=unseen").with(before).with(name)
}

/// What is on the bench, and how it gets kept.
fn saving(bench: Bench, shown: Shown) -> AnyView {
    let record = move || {
        let id = bench.work.with(|work| work.build.clone())?;
        bench.shelf.with(|shelf| shelf.iter().flatten().find(|kept| kept.build.id == id).cloned())
    };
    // Whether there is one, which changes more seldom than what is in it.
    let known = Memo::new(move |_| record().is_some());
    let empty = Memo::new(move |_| bench.document.with(|document| *document == Document::default()));
    let stands = move || {
        if empty.get() {
            return "Nothing is entered yet.".to_string();
        }
        let Some(kept) = record() else { return "Not saved yet.".to_string() };
        let when = storage::spoken_time(&kept.build.saved);
        let changes = bench.document.with(|document| differences(&kept.build.document, document).len());
        let since = match changes {
            0 => "Unchanged since.".to_string(),
            1 => "One change since:".to_string(),
            changes => format!("{changes} changes since:"),
        };
        format!("“{}”, saved {when}. {since}", title(bench, &kept.build.document))
    };
    let changes = move || {
        let Some(kept) = record() else { return nothing() };
        let changes = bench.document.with(|document| differences(&kept.build.document, document));
        if changes.is_empty() {
            return nothing();
        }
        tag("ul class=changes").with(sentences(bench, &changes)).into_any()
    };
    let name = words(move || if known.get() { "Save the changes" } else { "Save on this device" }.to_string());
    let another = move || {
        if !known.get() {
            return nothing();
        }
        let act = move |_| save(bench, shown, true, false);
        button("button type=button id=save-another", "Save as another build", act).into_any()
    };
    let buttons = tag("div class=buttons")
        .with(
            tag("button type=button id=save")
                .flag("disabled", move || empty.get())
                .on("click", move |_| save(bench, shown, false, false))
                .with(name),
        )
        .with(live(another))
        .with(trail::buttons(bench));
    tag("section class=part-of aria-labelledby=bench-title")
        .with(tag("h3 id=bench-title").with("On the bench now"))
        .with(rig_entries::name(bench))
        .with(tag("p id=bench-stands").with(words(stands)))
        .with(live(changes))
        .with(buttons)
        .with(live(move || if shown.clash.get() { clash(bench, shown) } else { nothing() }))
        .into_any()
}

/// Which of two saves is wanted.
fn clash(bench: Bench, shown: Shown) -> AnyView {
    let buttons = tag("div class=buttons")
        .with(button("button type=button id=save-beside", "Keep both: save mine as another build", move |_| {
            save(bench, shown, true, false);
        }))
        .with(button(
            "button type=button id=save-over",
            "Save mine; the other becomes an earlier version",
            move |_| {
                save(bench, shown, false, true);
            },
        ));
    tag("div class=clash role=alert")
        .with(
            tag("p").with(
                "Something else was saved under this build meanwhile, in another tab or window. Which do you want?",
            ),
        )
        .with(buttons)
        .into_any()
}

/// Saves, and says how it ended.
fn save(bench: Bench, shown: Shown, as_another: bool, over: bool) {
    let first = bench.records().is_empty();
    let saving = bench.save(as_another, over);
    shown.clash.set(matches!(saving, Saving::Changed));
    shown.told.set(told(saving));
    if first {
        spawn_local(async {
            // The answer is told where the files are.
            let _ = storage::keep_for_good().await;
        });
    }
}

/// How saving ended, in words.
pub(super) fn told(saving: Saving) -> Vec<String> {
    match saving {
        Saving::Done(title) => vec![format!("Saved as “{title}”.")],
        Saving::Changed => Vec::new(),
        Saving::Trouble(trouble) => {
            vec![format!("Not saved. {} Copy the link or export a file instead.", trouble.sentence())]
        }
    }
}

fn sentences(bench: Bench, changes: &[Difference]) -> Vec<AnyView> {
    let system = bench.system.get();
    let more = changes.len().saturating_sub(MOST_LISTED);
    let more = (more > 0).then(|| format!("And {more} more."));
    let said: Vec<String> =
        changes.iter().take(MOST_LISTED).map(|change| change.sentence(system)).chain(more).collect();
    lines("li", &said)
}

fn finding(shown: Shown) -> AnyView {
    let entry = tag("input id=find-build type=search autocomplete=off")
        .value(move || shown.find.get())
        .on("input", move |event| shown.find.set(event_target_value(&event)));
    tag("div class=field")
        .with(tag("label for=find-build").with("Find a build"))
        .with(tag("div class='entry words'").with(entry))
        .into_any()
}

/// The builds that are not in the bin and fit what is looked for.
fn listed(bench: Bench, shown: Shown) -> AnyView {
    let find = storage::lowercase(&shown.find.get());
    let wanted: Vec<&str> = find.split_whitespace().collect();
    let shelf = bench.shelf.get().unwrap_or_default();
    let all: Vec<Kept> = shelf.into_iter().filter(|kept| kept.raw.is_some() || kept.build.removed.is_none()).collect();
    if all.is_empty() {
        return tag("li").with(tag("p").with("Save what is on the bench, or take in a file below.")).into_any();
    }
    let fits = |kept: &Kept| {
        let about = storage::lowercase(&format!("{} {}", kept.title(bench), about(bench, &kept.build.document)));
        wanted.iter().all(|word| about.contains(word))
    };
    let found: Vec<Kept> = all.into_iter().filter(fits).collect();
    if found.is_empty() {
        return tag("li").with(tag("p").with("No build has these words in its name or its links.")).into_any();
    }
    found.into_iter().map(|kept| one(bench, shown, kept)).collect::<Vec<_>>().into_any()
}

/// What a build is about, in one line.
fn about(bench: Bench, document: &Document) -> String {
    let job = super::words::job(document, bench.system.get());
    let links: Vec<String> = document.links.iter().map(Link::title).collect();
    let links = links.join(", ");
    if job.is_empty() { links } else { format!("{job}. {links}") }
}

/// One build, and what can be done with it.
fn one(bench: Bench, shown: Shown, kept: Kept) -> AnyView {
    let (id, name) = (kept.build.id.clone(), kept.title(bench));
    if let Some(raw) = kept.raw {
        let file = format!("linkwright-damaged-{id}.txt");
        let take = button("button type=button", "Export it", move |_| {
            storage::download(&file, &raw);
        });
        return tag("li")
            .with(tag("h4").with(&*name))
            .with(tag("p class=error").with("Nothing can be read of this one. Nothing else is lost by it. Export it as it is, for somebody who can mend it."))
            .with(tag("div class=buttons").with(take).with(for_good(bench, id)))
            .into_any();
    }
    let when = storage::spoken_time(&kept.build.saved);
    let here = bench.work.with(|work| work.build.as_deref() == Some(&id));
    let stands = if when.is_empty() { String::new() } else { format!("Saved {when}") };
    let [open, copy, export, delete] = [(); 4].map(|()| id.clone());
    let other = name.clone();
    let buttons = tag("div class=buttons")
        .with(
            button("button type=button class=open", "Open", move |_| bench.open_build(&open, None))
                .with(unseen(" ", &name)),
        )
        .with(
            button("button type=button class='quiet copy'", "Duplicate", move |_| {
                let copied = bench.duplicate(&copy).map(|title| format!("Copied as “{title}”."));
                shown.told.set(copied.into_iter().collect());
            })
            .with(unseen(" ", &name)),
        )
        .with(
            button("button type=button class='quiet export'", "Export", move |_| export_one(bench, shown, &export))
                .with(unseen(" ", &name)),
        )
        .with(
            button("button type=button class='quiet remove'", "Delete", move |_| {
                bench.bin(&delete, true);
                shown.told.set(vec![format!("“{other}” is in the bin, at the end of this page.")]);
                storage::show("saved-title");
            })
            .with(unseen(" ", &name)),
        );
    tag("li")
        .set("data-build", &id)
        .with(tag("h4").with(&*name))
        .with(tag("p class=source").with(&*stands).with(here.then_some(". On the bench now")))
        .with(tag("p").with(&*about(bench, &kept.build.document)))
        .with(lines("p class=error", &kept.told))
        .with(buttons)
        .with(history(bench, kept.build))
        .into_any()
}

/// Earlier versions, each with what changed after it.
fn history(bench: Bench, build: Build) -> AnyView {
    if build.earlier.is_empty() {
        return nothing();
    }
    let open = RwSignal::new(false);
    let count = build.earlier.len();
    let inside = move || {
        if !open.get() {
            return nothing();
        }
        let mut after = build.document.clone();
        let mut saved = build.saved.clone();
        let lines = build.earlier.iter().rev().map(|earlier| {
            let before = share::from_fragment(&earlier.fragment).document;
            let changes = sentences(bench, &differences(&before, &after));
            let (when, was) = (storage::spoken_time(&saved), storage::spoken_time(&earlier.saved));
            (after, saved) = (before, earlier.saved.clone());
            let (id, fragment) = (build.id.clone(), earlier.fragment.clone());
            let open = button("button type=button class=quiet", "Open the version before, of ", move |_| {
                bench.open_build(&id, Some(&fragment));
            });
            tag("li")
                .with(tag("p").with(tag("b").with(&*when)))
                .with(tag("ul class=changes").with(changes))
                .with(open.with(&*was))
                .into_any()
        });
        tag("ol class=history").with(lines.collect::<Vec<_>>()).into_any()
    };
    let name = match count {
        1 => "What changed: 1 earlier version".to_string(),
        count => format!("What changed: {count} earlier versions"),
    };
    tag("details").on("toggle", move |_| open.set(true)).with(tag("summary").with(&*name)).with(live(inside)).into_any()
}

/// A name for a file, of letters that every system takes.
fn file_name(title: &str) -> String {
    let plain: String =
        title.to_ascii_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { ' ' }).collect();
    let words: Vec<&str> = plain.split_whitespace().take(8).collect();
    let name = if words.is_empty() { "build".to_string() } else { words.join("-") };
    format!("linkwright-{name}.json")
}

fn export_one(bench: Bench, shown: Shown, id: &str) {
    if let Some(kept) = bench.record(id) {
        let name = file_name(&kept.title(bench));
        export(shown, &name, &[kept.build]);
    }
}

fn export(shown: Shown, name: &str, builds: &[Build]) {
    let done = storage::download(name, &builds::to_text(builds));
    let words = if done {
        format!("“{name}” went to your downloads.")
    } else {
        "The browser refused to write a file.".to_string()
    };
    shown.told.set(vec![words]);
}

/// Everything into one file, and a file back in.
fn files(bench: Bench, shown: Shown) -> AnyView {
    let promised = RwSignal::new(None);
    Effect::new(move |_| {
        bench.shelf.track();
        spawn_local(async move {
            let promise = storage::is_kept_for_good().await;
            let _ = promised.try_set(promise);
        });
    });
    let lasting = move || match promised.get() {
        Some(true) => "This browser has promised to keep them until you delete them.",
        _ => {
            "This browser may clear them when it runs out of space, and clears them with its history. Keep a file of what matters."
        }
    };
    let all = move |_: leptos::ev::Event| {
        let builds: Vec<Build> = bench.records().into_iter().filter(Kept::lies_open).map(|kept| kept.build).collect();
        let day: String = storage::now().chars().take(10).collect();
        export(shown, &format!("linkwright-builds-{day}.json"), &builds);
    };
    let none = move || bench.shelf.with(|shelf| !shelf.iter().flatten().any(Kept::lies_open));
    let take = move |event: leptos::ev::Event| {
        spawn_local(async move {
            let told = match storage::chosen_text(event).await {
                Ok(None) => return,
                Ok(Some(text)) => bench.take_in(&text),
                Err(sentence) => vec![sentence.to_string()],
            };
            shown.told.set(told);
            storage::show("saved-title");
        });
    };
    let buttons = tag("div class=buttons")
        .with(button("button type=button id=export-all", "Export all as one file", all).flag("disabled", none))
        .with(tag("label class=button for=take-in").with("Take in a file"))
        .with(tag("input class=unseen id=take-in type=file accept=.json,application/json").on("change", take));
    tag("section class=part-of aria-labelledby=files-title")
        .with(tag("h3 id=files-title").with("As a file"))
        .with(
            tag("p")
                .with("Builds are kept in this browser, on this device only. ")
                .with(words(move || lasting().to_string())),
        )
        .with(buttons)
        .with(
            tag("p class=help").with(
                "The file is plain text with every value and its unit. Taking it in adds builds and replaces none.",
            ),
        )
        .into_any()
}

/// What was deleted, and what the page set aside.
fn bin(bench: Bench, shown: Shown) -> AnyView {
    let shelf = bench.shelf.get().unwrap_or_default();
    let binned: Vec<Kept> =
        shelf.into_iter().filter(|kept| kept.raw.is_none() && kept.build.removed.is_some()).collect();
    if binned.is_empty() {
        return nothing();
    }
    let count = binned.len();
    let one = |kept: Kept| {
        let (id, name) = (kept.build.id.clone(), kept.title(bench));
        let when = storage::spoken_time(kept.build.removed.as_deref().unwrap_or_default());
        let how = if id.starts_with("aside-") { "Set aside unsaved" } else { "Deleted" };
        let (back, line, title) = (id.clone(), about(bench, &kept.build.document), name.clone());
        let bring = move |_: leptos::ev::Event| {
            bench.bin(&back, false);
            shown.told.set(vec![format!("“{title}” is back among the saved builds.")]);
            storage::show("saved-title");
        };
        let buttons = tag("div class=buttons")
            .with(button("button type=button class=bring", "Bring it back", bring).with(unseen(": ", &name)))
            .with(for_good(bench, id));
        tag("li")
            .with(tag("h4").with(&*name))
            .with(tag("p class=source").with(how).with(" ").with(&*when))
            .with(tag("p").with(&*line))
            .with(buttons)
            .into_any()
    };
    let help = "Builds you deleted, and entries that something else took the place of before they were saved.";
    let fold = tag("details id=bin")
        .with(tag("summary").with(&*format!("The bin: {count}")))
        .with(tag("p class=help").with(help))
        .with(tag("ul class=builds").with(binned.into_iter().map(one).collect::<Vec<_>>()));
    tag("section class=part-of").with(fold).into_any()
}

/// A button that must be pressed twice.
fn for_good(bench: Bench, id: String) -> AnyView {
    let armed = RwSignal::new(false);
    let press = move |_| if armed.get_untracked() { bench.forget(&id) } else { armed.set(true) };
    let name = move || if armed.get() { "Press again: it is gone for good" } else { "Delete for good" };
    tag("button type=button class='quiet forget'").on("click", press).with(words(move || name().to_string())).into_any()
}
