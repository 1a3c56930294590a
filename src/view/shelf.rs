//! The saved builds on this device: one record each, the same text as a file of that build.

use super::keep::Work;
use super::state::{Bench, Leaf};
use super::storage::{self, BUILD, Trouble};
use super::words;
use leptos::prelude::*;
use linkwright::builds::{self, Build, is_id};
use linkwright::document::{Document, tidy_name};
use linkwright::order;
use linkwright::share;

/// Sets of entries that the page itself put aside; more than these nobody misses.
const MOST_ASIDE: usize = 20;

/// More complaints about a file than these help nobody.
const MOST_TOLD: usize = 8;

/// Begins the ids of what the page itself put aside.
const ASIDE: &str = "aside-";

/// One record.
#[derive(Clone, PartialEq)]
pub(super) struct Kept {
    /// What could be read of it, with the id under which it is kept.
    pub(super) build: Build,
    /// What it holds, as a fragment.
    pub(super) fragment: String,
    /// What is wrong with it.
    pub(super) told: Vec<String>,
    /// The record itself, where nothing could be read.
    pub(super) raw: Option<String>,
}

impl Kept {
    fn read(id: &str, text: String) -> Self {
        let read = builds::from_text(&text);
        let (told, build) = match read {
            Ok(read) => (read.told, read.builds.into_iter().next()),
            Err(sentence) => (vec![sentence], None),
        };
        let raw = if build.is_none() { Some(text) } else { None };
        let build = Build { id: id.to_string(), ..build.unwrap_or_default() };
        Self { fragment: share::to_fragment(&build.document), build, told, raw }
    }

    /// Whether it can be opened and is not in the bin.
    pub(super) fn lies_open(&self) -> bool {
        self.raw.is_none() && self.build.removed.is_none()
    }

    /// Whether it can be brought back.
    pub(super) fn lies_in_bin(&self) -> bool {
        self.raw.is_none() && self.build.removed.is_some()
    }

    /// Whether the page put it into the bin, unsaved.
    pub(super) fn is_set_aside(&self) -> bool {
        self.build.id.starts_with(ASIDE)
    }

    /// What it is called.
    pub(super) fn title(&self, bench: Bench) -> String {
        if self.raw.is_some() { "A damaged record".to_string() } else { title(bench, &self.build.document) }
    }
}

/// What a document is called: by its name, else by what is known of it.
pub(super) fn title(bench: Bench, document: &Document) -> String {
    if !document.name.is_empty() {
        return document.name.clone();
    }
    let job = words::job(document, bench.system.get());
    if job.is_empty() { "Rig without a name".to_string() } else { format!("Rig of {job}") }
}

/// How saving ended.
pub(super) enum Saving {
    /// Under this title.
    Done(String),
    /// Another tab or an earlier visit saved something else meanwhile.
    Changed,
    /// The browser keeps nothing.
    Trouble(Trouble),
}

impl Bench {
    /// Reads every record, the newest first.
    pub(super) fn read_shelf(self) {
        let mut kept: Vec<Kept> = storage::records(BUILD).into_iter().map(|(id, text)| Kept::read(&id, text)).collect();
        order::by(&mut kept, |a, b| b.build.saved.cmp(&a.build.saved));
        if self.shelf.with_untracked(|shelf| shelf.as_ref() != Some(&kept)) {
            self.shelf.set(Some(kept));
        }
    }

    /// Looks at the records, which are read if they were not yet.
    pub(super) fn records<T>(self, look: impl FnOnce(&[Kept]) -> T) -> T {
        if self.shelf.with_untracked(Option::is_none) {
            self.read_shelf();
        }
        self.shelf.with_untracked(|shelf| look(shelf.as_deref().unwrap_or_default()))
    }

    /// The record of an id.
    pub(super) fn record(self, id: &str) -> Option<Kept> {
        self.records(|records| records.iter().find(|kept| kept.build.id == id).cloned())
    }

    /// Writes a record.
    pub(super) fn put(self, build: &Build) -> Result<(), Trouble> {
        let written = self.write_record(build);
        self.note(written);
        self.read_shelf();
        written
    }

    fn write_record(self, build: &Build) -> Result<(), Trouble> {
        storage::keep(&format!("{BUILD}{}", build.id), &builds::to_text(std::slice::from_ref(build)))
    }

    /// Whether some record holds this already, now or earlier.
    pub(super) fn is_saved(self, fragment: &str) -> bool {
        let holds = |kept: &Kept| {
            kept.raw.is_none()
                && (kept.fragment == fragment || kept.build.earlier.iter().any(|earlier| earlier.fragment == fragment))
        };
        self.records(|records| records.iter().any(holds))
    }

    /// Puts entries into the bin, from where they can be brought back, unless a record holds them already.
    pub(super) fn set_aside(self, fragment: &str, work: &str) {
        // What was read before may be older than what another tab saved since.
        self.read_shelf();
        let document = share::from_fragment(fragment).document;
        if document == Document::default() || self.is_saved(fragment) {
            return;
        }
        let now = storage::now();
        let id = format!("{ASIDE}{work}");
        let id = if is_id(&id) { id } else { format!("{ASIDE}{}", storage::fresh_id()) };
        let build = Build { id, saved: now.clone(), removed: Some(now), document, earlier: Vec::new() };
        // If it cannot be kept, that is told with the entries themselves.
        let _ = self.put(&build);
        let over: Vec<String> = self.records(|records| {
            let aside = records.iter().filter(|kept| kept.is_set_aside() && kept.lies_in_bin());
            aside.skip(MOST_ASIDE).map(|kept| kept.build.id.clone()).collect()
        });
        over.iter().for_each(|id| self.forget(id));
    }

    /// The document on the bench, saved: as the build it belongs to, or as another one.
    pub(super) fn save(self, as_another: bool, over: bool) -> Saving {
        let (document, work) = (self.document.get_untracked(), self.work.get_untracked());
        self.read_shelf();
        let record = work.build.as_ref().filter(|_| !as_another).and_then(|id| self.record(id));
        let fragment = share::to_fragment(&document);
        let build = match record.filter(|kept| kept.raw.is_none()) {
            Some(kept) if kept.fragment != work.base && kept.fragment != fragment && !over => return Saving::Changed,
            Some(mut kept) => {
                kept.build.save(&document, &storage::now());
                kept.build
            }
            None => {
                let mut document = document;
                document.name = self.records(|records| free_name(records, &document.name));
                Build { id: storage::fresh_id(), saved: storage::now(), document, ..Build::default() }
            }
        };
        if let Err(trouble) = self.put(&build) {
            return Saving::Trouble(trouble);
        }
        let fragment = share::to_fragment(&build.document);
        if self.document.with_untracked(|document| *document != build.document) {
            self.document.update(|document| document.name.clone_from(&build.document.name));
        }
        self.work.set(Work { build: Some(build.id.clone()), base: fragment, ..work });
        Saving::Done(title(self, &build.document))
    }

    /// Puts a saved build on the bench, or an earlier version of it.
    pub(super) fn open_build(self, id: &str, version: Option<&str>) {
        let Some(kept) = self.record(id) else { return };
        let document = match version {
            Some(fragment) => share::from_fragment(fragment).document,
            None => kept.build.document.clone(),
        };
        let leaf = if document.links.len() > 1 { Leaf::Rig } else { Leaf::Size };
        let work = Work { build: Some(id.to_string()), base: kept.fragment.clone(), ..Work::fresh() };
        self.exchange(document, work);
        self.turn_to(leaf);
    }

    /// A second one like it.
    pub(super) fn duplicate(self, kept: &Kept) -> Result<String, Trouble> {
        let mut build = kept.build.clone();
        let name = title(self, &build.document);
        build.document.name = self.records(|records| free_name(records, &name));
        let title = build.document.name.clone();
        let build = Build { id: storage::fresh_id(), saved: storage::now(), earlier: Vec::new(), ..build };
        self.put(&build).map(|()| title)
    }

    /// Puts a build into the bin, or takes it out.
    pub(super) fn bin(self, kept: &Kept, into: bool) -> Result<(), Trouble> {
        let removed = if into { Some(storage::now()) } else { None };
        self.put(&Build { removed, ..kept.build.clone() })?;
        if into && self.work.with_untracked(|work| work.build.as_ref() == Some(&kept.build.id)) {
            self.work.update(|work| work.build = None);
        }
        Ok(())
    }

    /// Forgets a record for good.
    pub(super) fn forget(self, id: &str) {
        storage::keep_quietly(&format!("{BUILD}{id}"), "");
        self.read_shelf();
    }

    /// Takes the builds of a file in; none of them replaces one that is here.
    pub(super) fn take_in(self, text: &str) -> Vec<String> {
        let mut here = self.records(<[Kept]>::to_vec);
        let (mut added, mut known, mut renamed) = (0, 0, false);
        let mut told = Vec::new();
        for piece in pieces(text) {
            let read = match builds::from_text(piece) {
                Ok(read) => read,
                Err(sentence) => {
                    told.push(sentence);
                    continue;
                }
            };
            told.extend(read.told);
            for mut build in read.builds {
                build.removed = None;
                if here.iter().any(|kept| kept.lies_open() && kept.build.holds_the_same(&build)) {
                    known += 1;
                    continue;
                }
                if build.id.is_empty() || here.iter().any(|kept| kept.build.id == build.id) {
                    build.id = storage::fresh_id();
                }
                let name = free_name(&here, &build.document.name);
                renamed |= name != build.document.name;
                build.document.name = name;
                let written = self.write_record(&build);
                if let Err(trouble) = written {
                    self.note(written);
                    self.read_shelf();
                    told.insert(0, format!("{} {added} builds of the file were taken in before.", trouble.sentence()));
                    return told;
                }
                added += 1;
                here.push(Kept { fragment: String::new(), told: Vec::new(), raw: None, build });
            }
        }
        self.read_shelf();
        let over = told.len().saturating_sub(MOST_TOLD);
        told.truncate(MOST_TOLD);
        if over > 0 {
            told.push(format!("And {over} more like these."));
        }
        let all = added + known;
        let count = match (added, known) {
            (0, 0) => return told,
            (0, _) => "Every build of this file is here already.".to_string(),
            (1, 0) => "One build was taken in.".to_string(),
            (_, 0) => format!("{added} builds were taken in."),
            _ => format!("{added} of {all} builds were taken in; the others are here already."),
        };
        told.insert(0, count);
        if renamed {
            told.insert(1, "Where a name was taken, the new one has a number after it.".to_string());
        }
        told
    }
}

/// The files in a text: one, or every record of what the page hands out when it has stopped.
fn pieces(text: &str) -> Vec<&str> {
    let marked = format!("\n{BUILD}");
    if !text.contains(&marked) {
        return vec![text];
    }
    let records = text.split("\nlinkwright.").filter_map(|part| part.strip_prefix("build."));
    records.filter_map(|part| part.split_once('\n').map(|(_, record)| record)).collect()
}

/// A name that no saved build has yet.
fn free_name(here: &[Kept], name: &str) -> String {
    let taken = |name: &str| here.iter().any(|kept| kept.lies_open() && kept.build.document.name == name);
    let mut free = name.to_string();
    let mut number = 2;
    while !name.is_empty() && taken(&free) {
        let stem: String = name.chars().take(50).collect();
        free = tidy_name(&format!("{stem} ({number})"));
        number += 1;
    }
    free
}
