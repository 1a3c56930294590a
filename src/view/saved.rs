//! What is kept on this device: saving, finding, opening, copying, the bin, and files.

use super::shelf::{Kept, Saving, title};
use super::state::Bench;
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
    view! {
        <p class="kicker">"On this device"</p>
        <h2 id="saved-title" tabindex="-1">{move || match many.get() { 0 => "No saved builds yet".to_string(), 1 => "1 saved build".to_string(), many => format!("{many} saved builds") }}</h2>
        {saving(bench, shown)}
        <div id="saved-told" role="status">{move || shown.told.get().into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}</div>
        <section class="part-of" aria-labelledby="list-title">
            <h3 id="list-title">"Saved builds"</h3>
            {move || (many.get() > 3).then(|| finding(shown))}
            <ul class="builds" id="builds">{move || listed(bench, shown)}</ul>
        </section>
        {move || (many.get() > 0).then(|| compare::compare(bench))}
        {files(bench, shown)}
        {move || bin(bench, shown)}
    }
    .into_any()
}

/// What is on the bench, and how it gets kept.
fn saving(bench: Bench, shown: Shown) -> AnyView {
    let record = Memo::new(move |_| {
        let id = bench.work.with(|work| work.build.clone())?;
        bench.shelf.with(|shelf| shelf.iter().flatten().find(|kept| kept.build.id == id).cloned())
    });
    let empty = Memo::new(move |_| bench.document.with(|document| *document == Document::default()));
    let stands = move || {
        if empty.get() {
            return "Nothing is entered yet.".to_string();
        }
        let Some(kept) = record.get() else { return "Not saved yet.".to_string() };
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
        let kept = record.get()?;
        let changes = bench.document.with(|document| differences(&kept.build.document, document));
        (!changes.is_empty()).then(|| view! { <ul class="changes">{sentences(bench, &changes)}</ul> })
    };
    let known = move || record.with(Option::is_some);
    view! {
        <section class="part-of" aria-labelledby="bench-title">
            <h3 id="bench-title">"On the bench now"</h3>
            {rig_entries::name(bench)}
            <p id="bench-stands">{stands}</p>
            {changes}
            <div class="buttons">
                <button type="button" id="save" disabled=move || empty.get() on:click=move |_| save(bench, shown, false, false)>
                    {move || if known() { "Save the changes" } else { "Save on this device" }}
                </button>
                {move || known().then(|| view! { <button type="button" id="save-another" on:click=move |_| save(bench, shown, true, false)>"Save as another build"</button> })}
                {trail::buttons(bench)}
            </div>
            {move || shown.clash.get().then(|| view! {
                <div class="clash" role="alert">
                    <p>"Something else was saved under this build meanwhile, in another tab or window. Which do you want?"</p>
                    <div class="buttons">
                        <button type="button" id="save-beside" on:click=move |_| save(bench, shown, true, false)>"Keep both: save mine as another build"</button>
                        <button type="button" id="save-over" on:click=move |_| save(bench, shown, false, true)>"Save mine; the other becomes an earlier version"</button>
                    </div>
                </div>
            })}
        </section>
    }
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

fn sentences(bench: Bench, changes: &[Difference]) -> AnyView {
    let system = bench.system.get();
    let more = changes.len().saturating_sub(MOST_LISTED);
    let more = (more > 0).then(|| format!("And {more} more."));
    let lines = changes.iter().take(MOST_LISTED).map(|change| change.sentence(system)).chain(more);
    lines.map(|line| view! { <li>{line}</li> }).collect_view().into_any()
}

fn finding(shown: Shown) -> AnyView {
    view! {
        <div class="field">
            <label for="find-build">"Find a build"</label>
            <div class="entry words">
                <input id="find-build" type="search" autocomplete="off" prop:value=move || shown.find.get()
                    on:input=move |event| shown.find.set(event_target_value(&event))/>
            </div>
        </div>
    }
    .into_any()
}

/// The builds that are not in the bin and fit what is looked for.
fn listed(bench: Bench, shown: Shown) -> AnyView {
    let find = shown.find.get().to_lowercase();
    let words: Vec<&str> = find.split_whitespace().collect();
    let shelf = bench.shelf.get().unwrap_or_default();
    let all: Vec<Kept> = shelf.into_iter().filter(|kept| kept.raw.is_some() || kept.build.removed.is_none()).collect();
    if all.is_empty() {
        return view! { <li><p>"Save what is on the bench, or take in a file below."</p></li> }.into_any();
    }
    let fits = |kept: &Kept| {
        let about = format!("{} {}", kept.title(bench), about(bench, &kept.build.document)).to_lowercase();
        words.iter().all(|word| about.contains(word))
    };
    let found: Vec<Kept> = all.into_iter().filter(fits).collect();
    if found.is_empty() {
        return view! { <li><p>"No build has these words in its name or its links."</p></li> }.into_any();
    }
    found.into_iter().map(|kept| one(bench, shown, kept)).collect_view().into_any()
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
        return view! {
            <li>
                <h4>{name}</h4>
                <p class="error">"Nothing can be read of this one. Nothing else is lost by it. Export it as it is, for somebody who can mend it."</p>
                <div class="buttons">
                    <button type="button" on:click=move |_| { storage::download(&file, &raw); }>"Export it"</button>
                    {for_good(bench, id)}
                </div>
            </li>
        }
        .into_any();
    }
    let (line, when) = (about(bench, &kept.build.document), storage::spoken_time(&kept.build.saved));
    let told = kept.told.iter().map(|words| view! { <p class="error">{words.clone()}</p> }).collect_view();
    let here = bench.work.with(|work| work.build.as_deref() == Some(&id));
    let [open, copy, export, delete] = [(); 4].map(|()| id.clone());
    let (build, other) = (kept.build.clone(), name.clone());
    view! {
        <li data-build=id>
            <h4>{name.clone()}</h4>
            <p class="source">{if when.is_empty() { String::new() } else { format!("Saved {when}") }}{here.then_some(". On the bench now")}</p>
            <p>{line}</p>
            {told}
            <div class="buttons">
                <button type="button" class="open" on:click=move |_| bench.open_build(&open, None)>"Open"<span class="unseen">" "{name.clone()}</span></button>
                <button type="button" class="quiet copy" on:click=move |_| shown.told.set(bench.duplicate(&copy).map(|title| format!("Copied as “{title}”.")).into_iter().collect())>"Duplicate"<span class="unseen">" "{name.clone()}</span></button>
                <button type="button" class="quiet export" on:click=move |_| { export_one(bench, shown, &export); }>"Export"<span class="unseen">" "{name.clone()}</span></button>
                <button type="button" class="quiet remove" on:click=move |_| {
                    bench.bin(&delete, true);
                    shown.told.set(vec![format!("“{other}” is in the bin, at the end of this page.")]);
                    storage::show("saved-title");
                }>"Delete"<span class="unseen">" "{name.clone()}</span></button>
            </div>
            {history(bench, build)}
        </li>
    }
    .into_any()
}

/// Earlier versions, each with what changed after it.
fn history(bench: Bench, build: Build) -> AnyView {
    if build.earlier.is_empty() {
        return ().into_any();
    }
    let open = RwSignal::new(false);
    let count = build.earlier.len();
    let inside = move || {
        if !open.get() {
            return ().into_any();
        }
        let mut after = build.document.clone();
        let mut saved = build.saved.clone();
        let lines = build.earlier.iter().rev().map(|earlier| {
            let before = share::from_fragment(&earlier.fragment).document;
            let changes = sentences(bench, &differences(&before, &after));
            let (when, was) = (storage::spoken_time(&saved), storage::spoken_time(&earlier.saved));
            (after, saved) = (before, earlier.saved.clone());
            let (id, fragment) = (build.id.clone(), earlier.fragment.clone());
            view! {
                <li>
                    <p><b>{when}</b></p>
                    <ul class="changes">{changes}</ul>
                    <button type="button" class="quiet" on:click=move |_| bench.open_build(&id, Some(&fragment))>"Open the version before, of "{was}</button>
                </li>
            }
        });
        view! { <ol class="history">{lines.collect_view()}</ol> }.into_any()
    };
    view! {
        <details on:toggle=move |_| open.set(true)>
            <summary>{if count == 1 { "What changed: 1 earlier version".to_string() } else { format!("What changed: {count} earlier versions") }}</summary>
            {inside}
        </details>
    }
    .into_any()
}

/// A name for a file, of letters that every system takes.
fn file_name(title: &str) -> String {
    let plain: String = title.to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { ' ' }).collect();
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
    let all = move |_| {
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
    view! {
        <section class="part-of" aria-labelledby="files-title">
            <h3 id="files-title">"As a file"</h3>
            <p>"Builds are kept in this browser, on this device only. "{lasting}</p>
            <div class="buttons">
                <button type="button" id="export-all" disabled=none on:click=all>"Export all as one file"</button>
                <label class="button" for="take-in">"Take in a file"</label>
                <input class="unseen" id="take-in" type="file" accept=".json,application/json" on:change=take/>
            </div>
            <p class="help">"The file is plain text with every value and its unit. Taking it in adds builds and replaces none."</p>
        </section>
    }
    .into_any()
}

/// What was deleted, and what the page set aside.
fn bin(bench: Bench, shown: Shown) -> AnyView {
    let shelf = bench.shelf.get().unwrap_or_default();
    let binned: Vec<Kept> =
        shelf.into_iter().filter(|kept| kept.raw.is_none() && kept.build.removed.is_some()).collect();
    if binned.is_empty() {
        return ().into_any();
    }
    let count = binned.len();
    let one = |kept: Kept| {
        let (id, name) = (kept.build.id.clone(), kept.title(bench));
        let when = storage::spoken_time(kept.build.removed.as_deref().unwrap_or_default());
        let how = if id.starts_with("aside-") { "Set aside unsaved" } else { "Deleted" };
        let (back, line, title) = (id.clone(), about(bench, &kept.build.document), name.clone());
        let bring = move |_| {
            bench.bin(&back, false);
            shown.told.set(vec![format!("“{title}” is back among the saved builds.")]);
            storage::show("saved-title");
        };
        view! {
            <li>
                <h4>{name.clone()}</h4>
                <p class="source">{how}" "{when}</p>
                <p>{line}</p>
                <div class="buttons">
                    <button type="button" class="bring" on:click=bring>"Bring it back"<span class="unseen">": "{name}</span></button>
                    {for_good(bench, id)}
                </div>
            </li>
        }
    };
    view! {
        <section class="part-of">
            <details id="bin">
                <summary>{format!("The bin: {count}")}</summary>
                <p class="help">"Builds you deleted, and entries that something else took the place of before they were saved."</p>
                <ul class="builds">{binned.into_iter().map(one).collect_view()}</ul>
            </details>
        </section>
    }
    .into_any()
}

/// A button that must be pressed twice.
fn for_good(bench: Bench, id: String) -> AnyView {
    let armed = RwSignal::new(false);
    let press = move |_| if armed.get_untracked() { bench.forget(&id) } else { armed.set(true) };
    view! {
        <button type="button" class="quiet forget" on:click=press>
            {move || if armed.get() { "Press again: it is gone for good" } else { "Delete for good" }}
        </button>
    }
    .into_any()
}
