//! What is kept on this device: saving, finding, opening, copying, the bin, and files.

use super::changing::{Changing, whenever};
use super::known::Known;
use super::markup::{Markup, said};
use super::moments::meanwhile;
use super::shelf::{Kept, Saving, title};
use super::shelf_list::{act, binned, bring, listed};
use super::state::Bench;
use super::tag::{Piece, button, live, nothing, several, tag, words as live_words};
use super::{compare, rig_entries, storage, trail};
use leptos::prelude::*;
use linkwright::builds::{self, Build};
use linkwright::differences::{Difference, differences};
use linkwright::document::Document;

/// More changes than these are counted, not listed.
const MOST_LISTED: usize = 12;

/// What is offered beside the words that tell what was done.
#[derive(Clone, PartialEq)]
pub(super) enum Offer {
    /// The build of this id was deleted.
    BringBack(String),
    /// This build was saved under another name.
    KeepToo(Box<Build>),
}

/// What the view itself holds.
#[derive(Clone, Copy)]
pub(super) struct Shown {
    /// What was last done, said once.
    pub(super) told: Changing<Vec<String>>,
    /// Letters that a build must contain to be listed.
    pub(super) find: Changing<String>,
    /// Whether another tab saved the same build meanwhile.
    pub(super) clash: Changing<bool>,
    /// The builds whose history is open.
    pub(super) history: Changing<Vec<String>>,
    /// What can be done about it on the spot.
    pub(super) offer: Changing<Option<Offer>>,
    /// The build that the next press deletes for good.
    pub(super) armed: Changing<String>,
}

/// The view.
pub(super) fn saved(bench: Bench) -> Piece {
    bench.read_shelf();
    let shown = Shown {
        told: Changing::default(),
        find: Changing::default(),
        clash: Changing::new(false),
        history: Changing::default(),
        offer: Changing::default(),
        armed: Changing::default(),
    };
    let count = move |which: fn(&Kept) -> bool| {
        bench.shelf.with(|shelf| shelf.iter().flatten().filter(|kept| which(kept)).count())
    };
    let many = Known::new(move || count(Kept::lies_open));
    let bin = Known::new(move || count(Kept::lies_in_bin));
    let heading = move || match many.get() {
        0 => "No saved builds yet".to_string(),
        1 => "1 saved build".to_string(),
        many => format!("{many} saved builds"),
    };
    let list = tag("section class=part-of aria-labelledby=list-title")
        .with(tag("h3 id=list-title").with("Saved builds"))
        .with(live(move || if many.get() > 3 { finding(shown) } else { nothing() }))
        .with(builds("ul class=builds id=builds", bench, shown, listed));
    let bin =
        tag("section class=part-of").class("empty", move || bin.get() == 0).with(
            tag("details id=bin")
                .with(tag("summary").with(live_words(move || format!("The bin: {}", bin.get()))))
                .with(tag("p class=help").with(
                    "Builds you deleted, and entries that something else took the place of before they were saved.",
                ))
                .with(builds("ul class=builds", bench, shown, binned)),
        );
    let told = move || shown.told.with(|told| told.iter().map(|words| said("p", words)).collect());
    let done = tag("div class=done-here")
        .with(tag("div id=saved-told role=status").markup(told))
        .with(live(move || if shown.told.with(Vec::is_empty) { nothing() } else { beside(bench, shown) }));
    several()
        .with(tag("p class=kicker").with("On this device"))
        .with(tag("h2 id=saved-title tabindex=-1").with(live_words(heading)))
        .with(saving(bench, shown))
        .with(done)
        .with(list)
        .with(live(move || if many.get() > 0 { compare::compare(bench) } else { nothing() }))
        .with(files(bench, shown))
        .with(bin)
}

/// What can be done about it, and away with the words.
fn beside(bench: Bench, shown: Shown) -> Piece {
    let offer = match shown.offer.get() {
        Some(Offer::BringBack(id)) => {
            let act = move |_| {
                if let Some(kept) = bench.record(&id) {
                    bring(bench, shown, &kept);
                }
            };
            Some(button("button type=button id=bring-back", "Bring it back", act))
        }
        Some(Offer::KeepToo(build)) => {
            let label = format!("Keep “{}” too", build.document.name);
            let act = move |_| {
                let kept = bench.keep_too(&build);
                let done = || format!("“{}” is kept too.", build.document.name);
                shown.tell(kept.map_or_else(|trouble| format!("Not kept. {}", trouble.sentence()), |()| done()));
                storage::show("saved-title");
            };
            Some(button("button type=button id=keep-too", &label, act))
        }
        None => None,
    };
    let close = button("button type=button class=quiet id=close-told", "Close", move |_| {
        shown.say(Vec::new());
        storage::show("saved-title");
    });
    tag("div class=buttons").with(offer).with(close)
}

impl Shown {
    /// Says what was done; what was offered before has passed.
    pub(super) fn say(self, told: Vec<String>) {
        self.offer.set(None);
        self.told.set(told);
    }

    /// The same, in one sentence.
    pub(super) fn tell(self, told: String) {
        self.say(vec![told]);
    }
}

/// A list of builds whose buttons are heard.
fn builds(open: &'static str, bench: Bench, shown: Shown, tell: fn(Bench, Shown) -> Markup) -> Piece {
    tag(open).markup(move || tell(bench, shown)).on("click", move |event| act(bench, shown, &event))
}

/// The record of the build that the bench belongs to.
fn record(bench: Bench) -> Option<Kept> {
    let id = bench.work.with(|work| work.build.clone())?;
    bench.shelf.with(|shelf| shelf.iter().flatten().find(|kept| kept.build.id == id && kept.lies_open()).cloned())
}

/// How what is on the bench stands to what is saved: in short, and with the times.
pub(super) fn stands(bench: Bench) -> [String; 2] {
    let plain = |words: &str| [words.to_string(), words.to_string()];
    if bench.document.with(|document| *document == Document::default()) {
        return plain("Nothing is entered yet.");
    }
    let Some(kept) = record(bench) else { return plain("Not saved yet.") };
    let name = title(bench, &kept.build.document);
    let changes = bench.document.with(|document| differences(&kept.build.document, document).len());
    let fragment = bench.fragment();
    let earlier = kept.build.earlier.iter().rposition(|earlier| earlier.fragment == fragment);
    if let (Some(at), true) = (earlier, changes > 0) {
        let when = storage::spoken_time(kept.build.earlier.get(at).map_or("", |earlier| &earlier.saved));
        let version = format!("Version {} of “{name}”", at + 1);
        let saved = format!("{version}, saved {when}. Save it to make it the newest. It differs from the newest:");
        return [version + ", not the newest.", saved];
    }
    let (short, since) = match changes {
        0 => ("Saved.".to_string(), "Unchanged since.".to_string()),
        1 => ("One change not saved.".to_string(), "One change since:".to_string()),
        changes => (format!("{changes} changes not saved."), format!("{changes} changes since:")),
    };
    let saved = format!("“{name}”, saved {}. {since}", storage::spoken_time(&kept.build.saved));
    [format!("“{name}”: {short}"), saved]
}

/// What is on the bench, and how it gets kept.
fn saving(bench: Bench, shown: Shown) -> Piece {
    let record = move || record(bench);
    // Whether there is one, which changes more seldom than what is in it.
    let known = Known::new(move || record().is_some());
    let empty = Known::new(move || bench.document.with(|document| *document == Document::default()));
    let changes = move || {
        let Some(kept) = record() else { return nothing() };
        let changes = bench.document.with(|document| differences(&kept.build.document, document));
        if changes.is_empty() {
            return nothing();
        }
        tag("ul class=changes").markup(move || sentences(bench, &changes))
    };
    let name = live_words(move || if known.get() { "Save the changes" } else { "Save on this device" }.to_string());
    let another = move || {
        if !known.get() {
            return nothing();
        }
        let act = move |_| save(bench, shown, true, false);
        button("button type=button id=save-another", "Save as another build", act)
    };
    let buttons = tag("div class=buttons")
        .with(
            tag("button type=button id=save")
                .class("settled", move || {
                    record().is_some_and(|kept| bench.document.with(|now| *now == kept.build.document))
                })
                .flag("disabled", move || empty.get())
                .on("click", move |_| save(bench, shown, false, false))
                .with(name),
        )
        .with(live(another))
        .with(trail::buttons(bench, ["button type=button class=quiet", "button type=button class=quiet"]));
    tag("section class=part-of aria-labelledby=bench-title")
        .with(tag("h3 id=bench-title").with("On the bench now"))
        .with(rig_entries::name(bench))
        // Before what changes with the name: a button that is pressed must not move away.
        .with(buttons)
        .with(tag("p id=bench-stands").with(live_words(move || {
            let [_, stands] = stands(bench);
            stands
        })))
        .with(live(changes))
        .with(live(move || if shown.clash.get() { clash(bench, shown) } else { nothing() }))
}

/// Which of two saves is wanted.
fn clash(bench: Bench, shown: Shown) -> Piece {
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
}

/// Saves, and says how it ended.
fn save(bench: Bench, shown: Shown, as_another: bool, over: bool) {
    let first = bench.records(<[_]>::is_empty);
    let saving = bench.save(as_another, over);
    shown.clash.set(matches!(saving, Saving::Changed));
    let renamed = if let Saving::Done(_, renamed) = &saving { renamed.clone() } else { None };
    shown.say(told(saving));
    shown.offer.set(renamed.map(Offer::KeepToo));
    if first {
        meanwhile(async {
            // The answer is told where the files are.
            let _ = storage::keep_for_good().await;
        });
    }
}

/// How saving ended, in words.
pub(super) fn told(saving: Saving) -> Vec<String> {
    match saving {
        Saving::Done(title, None) => vec![format!("Saved as “{title}”.")],
        Saving::Done(title, Some(before)) => {
            vec![format!(
                "Saved over “{}”, now called “{title}”. What it was is its earlier version.",
                before.document.name
            )]
        }
        Saving::Changed => Vec::new(),
        Saving::Trouble(trouble) => {
            vec![format!("Not saved. {} Copy the link or export a file instead.", trouble.sentence())]
        }
    }
}

/// Changes, an item each.
pub(super) fn sentences(bench: Bench, changes: &[Difference]) -> Markup {
    let system = bench.system.get();
    let more = changes.len().saturating_sub(MOST_LISTED);
    let more = (more > 0).then(|| format!("And {more} more."));
    let lines = changes.iter().take(MOST_LISTED).map(|change| change.sentence(system)).chain(more);
    lines.map(|line| said("li", line)).collect()
}

fn finding(shown: Shown) -> Piece {
    let entry = tag("input id=find-build type=search autocomplete=off")
        .value(move || shown.find.get())
        .on("input", move |event| shown.find.set(event_target_value(&event)));
    tag("div class=field")
        .with(tag("label for=find-build").with("Find a build"))
        .with(tag("div class='entry words'").with(entry))
}

/// A name for a file, of letters that every system takes.
pub(super) fn file_name(title: &str) -> String {
    let plain: String =
        title.to_ascii_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { ' ' }).collect();
    let words: Vec<&str> = plain.split_whitespace().take(8).collect();
    let name = if words.is_empty() { "build".to_string() } else { words.join("-") };
    format!("linkwright-{name}.json")
}

/// Hands builds out as one file.
pub(super) fn export(shown: Shown, name: &str, builds: &[Build]) {
    let done = storage::download(name, &builds::to_text(builds));
    let words = if done {
        format!("“{name}” went to your downloads.")
    } else {
        "The browser refused to write a file.".to_string()
    };
    shown.tell(words);
}

/// Everything into one file, and a file back in.
fn files(bench: Bench, shown: Shown) -> Piece {
    let promised = Changing::new(None);
    whenever(move |_| {
        bench.shelf.track();
        meanwhile(async move {
            let promise = storage::is_kept_for_good().await;
            promised.set(promise);
        });
    });
    let lasting = move || match promised.get() {
        Some(true) => "This browser has promised to keep them until you delete them.",
        _ => {
            "This browser may clear them when it runs out of space, and clears them with its history. Keep a file of what matters."
        }
    };
    let all = move |_: leptos::ev::Event| {
        let open = |kept: &&Kept| kept.lies_open();
        let builds: Vec<Build> =
            bench.records(|records| records.iter().filter(open).map(|kept| kept.build.clone()).collect());
        let day: String = storage::now().chars().take(10).collect();
        export(shown, &format!("linkwright-builds-{day}.json"), &builds);
    };
    let none = move || bench.shelf.with(|shelf| !shelf.iter().flatten().any(Kept::lies_open));
    let take = move |event: leptos::ev::Event| {
        meanwhile(async move {
            let told = match storage::chosen_text(event).await {
                Ok(None) => return,
                Ok(Some(text)) => bench.take_in(&text),
                Err(sentence) => vec![sentence.to_string()],
            };
            shown.say(told);
            storage::show("saved-title");
        });
    };
    let buttons = tag("div class=buttons")
        .with(button("button type=button id=export-all", "Export all as one file", all).flag("disabled", none))
        .with(tag("label class=button for=take-in").with("Import a file"))
        .with(
            tag("input class=unseen id=take-in type=file accept=.json,.txt,application/json,text/plain")
                .on("change", take),
        );
    tag("section class=part-of aria-labelledby=files-title")
        .with(tag("h3 id=files-title").with("As a file"))
        .with(
            tag("p")
                .with("Builds are kept in this browser, on this device only. ")
                .with(live_words(move || lasting().to_string())),
        )
        .with(buttons)
        .with(
            tag("p class=help")
                .with("The file is plain text with every value and its unit. Importing adds builds and replaces none."),
        )
}
