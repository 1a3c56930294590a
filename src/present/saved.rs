//! What is saved on this device: what a build is called, how the open entries stand to it, its rows and its versions.

pub mod help;
pub mod notices;

use super::words::{job, lower, rig_title, unbroken};
use crate::builds::Build;
use crate::differences::differences;
use crate::document::{Document, Link, Position};
use crate::quantity::System;
use crate::share;
use crate::store::saved_builds::SavedBuild;
use crate::store::stored_entries::Origin;
use crate::store::trash;

/// What the entries that are open are called, beside saved builds.
pub const CURRENT_BUILD: &str = "Current build";

/// More changes than these are counted, not listed.
const MOST_CHANGES: usize = 12;

/// What a saved build is called.
pub fn title_of(saved: &SavedBuild, system: System) -> String {
    if saved.damaged { "A damaged record".to_string() } else { rig_title(&saved.build.document, system) }
}

/// What a rig is, in one line: its job, and its links at each axle.
pub fn about(document: &Document, system: System) -> String {
    let job = job(document, system);
    let mut sentences: Vec<String> = Vec::new();
    if !job.is_empty() {
        sentences.push(format!("{job}."));
    }
    for axle in Position::ALL {
        let here: Vec<&Link> = document.links.iter().filter(|link| link.position == axle).collect();
        if here.is_empty() {
            continue;
        }
        // The axle is said once: `Front: lower links, track bar.`
        let word = format!("{} ", axle.word());
        let names: Vec<String> = here.iter().map(|link| lower(&link.title()).replace(&word, "")).collect();
        let head = if axle == Position::Front { "Front" } else { "Rear" };
        sentences.push(format!("{head}: {}.", names.join(", ")));
    }
    sentences.join(" ")
}

/// Whether a record is listed: all but those in the trash, so that what is damaged can be handed out.
pub fn is_listed(saved: &SavedBuild) -> bool {
    saved.damaged || saved.build.removed.is_none()
}

/// Whether a build has every word that is looked for in its name or in what it is, in small or capital letters.
pub fn is_found(saved: &SavedBuild, search: &str, system: System) -> bool {
    let words = format!("{} {}", title_of(saved, system), about(&saved.build.document, system)).to_lowercase();
    search.to_lowercase().split_whitespace().all(|word| words.contains(word))
}

/// The build that the open entries belong to.
pub fn of_entries<'a>(builds: &'a [SavedBuild], origin: &Origin) -> Option<&'a SavedBuild> {
    let id = origin.build.as_ref()?;
    builds.iter().find(|saved| saved.build.id == *id && saved.is_open())
}

/// How the open entries stand to what is saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaveState {
    /// For the line that stays in sight.
    pub short: String,
    /// With the times.
    pub full: String,
}

impl SaveState {
    fn plain(words: &str) -> Self {
        Self { short: words.to_string(), full: words.to_string() }
    }
}

/// How the open entries stand to the build that they belong to; `spoken` says a time where the reader is.
pub fn save_state(
    document: &Document,
    saved: Option<&SavedBuild>,
    system: System,
    spoken: impl Fn(&str) -> String,
) -> SaveState {
    if *document == Document::default() {
        return SaveState::plain("Nothing is entered yet.");
    }
    let Some(saved) = saved else { return SaveState::plain("Not saved yet.") };
    let build = &saved.build;
    let name = rig_title(&build.document, system);
    let changes = differences(&build.document, document).len();
    if changes > 0 {
        let fragment = share::to_fragment(document);
        let earlier = build.earlier.iter().enumerate().rev().find(|(_, earlier)| earlier.fragment == fragment);
        if let Some((index, earlier)) = earlier {
            let version = format!("Version {} of “{name}”", index + 1);
            let when = saved_at(&spoken(&earlier.saved));
            return SaveState {
                short: format!("{version}, not the newest."),
                full: format!("{version}, {when}. Save it to make it the newest. It differs from the newest:"),
            };
        }
    }
    let (short, since) = match changes {
        0 => ("Saved.".to_string(), "Unchanged since.".to_string()),
        1 => ("One change not saved.".to_string(), "One change since:".to_string()),
        changes => (format!("{changes} changes not saved."), format!("{changes} changes since:")),
    };
    let when = saved_at(&spoken(&build.saved));
    SaveState { short: format!("“{name}”: {short}"), full: format!("“{name}”, {when}. {since}") }
}

/// `saved Nov 25, 2026, 10:11 PM`; a file from elsewhere may not say when.
fn saved_at(time: &str) -> String {
    if time.is_empty() { "saved".to_string() } else { format!("saved {time}") }
}

/// What differs between two documents, a sentence each; the last one counts what is not listed.
pub fn changes(before: &Document, after: &Document, system: System) -> Vec<String> {
    let all = differences(before, after);
    let mut sentences: Vec<String> =
        all.iter().take(MOST_CHANGES).map(|difference| unbroken(&difference.sentence(system))).collect();
    let more = all.len().saturating_sub(MOST_CHANGES);
    if more > 0 {
        sentences.push(format!("And {more} more."));
    }
    sentences
}

/// A build in the list, or in the trash.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Row {
    /// What it is called.
    pub name: String,
    /// When it was saved and whether it is open, or when it was deleted.
    pub when: String,
    /// What it is.
    pub about: String,
    /// Why its numbers must be compared before they are used; of a damaged record, why it cannot be read.
    pub unverified: Vec<String>,
    /// Whether nothing of it can be read.
    pub damaged: bool,
    /// Whether it has earlier versions.
    pub has_versions: bool,
}

impl Row {
    fn of(saved: &SavedBuild, when: String, system: System) -> Self {
        Self {
            name: title_of(saved, system),
            when,
            about: about(&saved.build.document, system),
            unverified: saved.build.unverified.clone(),
            damaged: saved.damaged,
            has_versions: !saved.build.earlier.is_empty(),
        }
    }
}

/// The row of a saved build.
pub fn row(saved: &SavedBuild, origin: &Origin, system: System, spoken: impl Fn(&str) -> String) -> Row {
    let when = spoken(&saved.build.saved);
    let open = origin.build.as_ref() == Some(&saved.build.id);
    let mut sentences = Vec::new();
    if !when.is_empty() {
        sentences.push(format!("Saved {when}."));
    }
    if open {
        sentences.push(format!("{CURRENT_BUILD}."));
    }
    Row::of(saved, sentences.join(" "), system)
}

/// The row of a build in the trash.
pub fn trash_row(saved: &SavedBuild, system: System, spoken: impl Fn(&str) -> String) -> Row {
    let when = spoken(saved.build.removed.as_deref().unwrap_or_default());
    let how = if trash::is_set_aside(&saved.build) { "Set aside unsaved" } else { "Deleted" };
    Row::of(saved, format!("{how} {when}").trim_end().to_string(), system)
}

/// An earlier version of a build, with what changed after it.
#[derive(Debug, Clone, PartialEq)]
pub struct Version {
    /// Which one it is in [`Build::earlier`].
    pub index: usize,
    /// When the one after it was saved.
    pub replaced: String,
    /// What the one after it changed.
    pub changes: Vec<String>,
    /// Why its numbers must be compared before they are used.
    pub unverified: Vec<String>,
    /// What the button that opens it is called.
    pub open: String,
}

/// The earlier versions of a build, the newest first.
pub fn versions(build: &Build, system: System, spoken: impl Fn(&str) -> String) -> Vec<Version> {
    let mut after = (build.document.clone(), build.saved.as_str());
    let mut versions = Vec::new();
    for (index, earlier) in build.earlier.iter().enumerate().rev() {
        let opened = share::from_fragment(&earlier.fragment);
        let (document, replaced) = std::mem::replace(&mut after, (opened.document, &earlier.saved));
        let time = spoken(&earlier.saved);
        let number = index + 1;
        versions.push(Version {
            index,
            replaced: spoken(replaced),
            changes: changes(&after.0, &document, system),
            unverified: opened.notices.into_iter().chain(earlier.unverified.iter().cloned()).collect(),
            open: if time.is_empty() {
                format!("Open version {number}")
            } else {
                format!("Open version {number} of {time}")
            },
        });
    }
    versions
}

/// How many builds are saved: the title of the view.
pub fn heading(builds: usize) -> String {
    match builds {
        0 => "No saved builds yet".to_string(),
        1 => "1 saved build".to_string(),
        builds => format!("{builds} saved builds"),
    }
}

/// What stands on the fold of the trash, which the reader knows as the bin.
pub fn trash_heading(records: usize) -> String {
    format!("The bin: {records}")
}

/// A name for the file of a build, of letters that every system takes.
pub fn file_name(title: &str) -> String {
    let plain: String =
        title.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { ' ' }).collect();
    let words: Vec<&str> = plain.split_whitespace().take(8).collect();
    let name = if words.is_empty() { "build".to_string() } else { words.join("-") };
    format!("linkwright-{name}.json")
}

/// A name for the file of all builds, with the day of a time in ISO 8601.
pub fn all_builds_file_name(now: &str) -> String {
    let day: String = now.chars().take(10).collect();
    format!("linkwright-builds-{day}.json")
}

/// A name for the file of a record that cannot be read.
pub fn damaged_file_name(id: &str) -> String {
    format!("linkwright-damaged-{id}.txt")
}
