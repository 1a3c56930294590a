//! The saved builds on this device: one record each, the same text as a file of that build.

use super::held::{Held, Work};
use super::state::{Bench, Leaf};
use super::storage::{self, BEFORE, BUILD, ENTRIES, Trouble};
use super::words;
use linkwright::builds::{self, Build, Earlier, is_id, numbered};
use linkwright::document::{Document, tidy_name};
use linkwright::share;
use std::borrow::Cow;
use std::sync::Arc;

/// Sets of entries that the page itself put aside; more than these nobody misses.
const MOST_ASIDE: usize = 50;

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
    /// Whether nothing could be read.
    pub(super) damaged: bool,
    /// The record itself.
    pub(super) text: Arc<str>,
}

impl Kept {
    fn read(id: &str, text: String) -> Self {
        let read = builds::from_text(&text);
        let (build, damaged) = match read.map(|read| read.builds.into_iter().next()) {
            Ok(Some(build)) => (build, false),
            Ok(None) => (Build::default(), true),
            Err(sentence) => (Build { doubt: vec![sentence], ..Build::default() }, true),
        };
        let build = Build { id: id.to_string(), ..build };
        Self { fragment: share::to_fragment(&build.document), build, damaged, text: text.into() }
    }

    /// Whether it can be opened and is not in the bin.
    pub(super) fn lies_open(&self) -> bool {
        !self.damaged && self.build.removed.is_none()
    }

    /// Whether it can be brought back.
    pub(super) fn lies_in_bin(&self) -> bool {
        !self.damaged && self.build.removed.is_some()
    }

    /// Whether the page put it into the bin, unsaved.
    pub(super) fn is_set_aside(&self) -> bool {
        self.build.id.starts_with(ASIDE)
    }

    /// Whether an earlier version of it held this.
    pub(super) fn was(&self, fragment: &str) -> bool {
        self.build.earlier.iter().any(|earlier| earlier.fragment == fragment)
    }

    /// What it is called.
    pub(super) fn title(&self, bench: Bench) -> String {
        if self.damaged { "A damaged record".to_string() } else { title(bench, &self.build.document) }
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
    /// Under this title, which took the place of one that was called otherwise.
    Done(String, Option<Box<Build>>),
    /// Another tab or an earlier visit saved something else meanwhile.
    Changed,
    /// The browser keeps nothing.
    Trouble(Trouble),
}

impl Bench {
    /// Looks at every record, the newest first; only what is new or was written since is read.
    pub(super) fn read_shelf(self) {
        let mut before = self.shelf.take();
        let mut differs = before.is_none();
        let mut read = |(id, text): (String, String)| {
            // Records come in the order of their ids, the oldest first, and stand here the newest first.
            let known = before.as_mut().and_then(|before| {
                let at = before.iter().rposition(|kept| kept.build.id == id && *kept.text == *text)?;
                Some(before.remove(at))
            });
            differs |= known.is_none();
            known.unwrap_or_else(|| Kept::read(&id, text))
        };
        let mut kept: Vec<Kept> = storage::records(BUILD).into_iter().map(&mut read).collect();
        differs |= before.is_some_and(|before| !before.is_empty());
        kept.sort_by(|a, b| b.build.saved.cmp(&a.build.saved));
        if differs {
            self.shelf.set(Some(kept));
        } else {
            self.shelf.update_untracked(|shelf| *shelf = Some(kept));
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
        // What was read before may be older than what another tab did since.
        storage::kept(&format!("{BUILD}{id}")).map(|text| Kept::read(id, text))
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
        let holds = |kept: &Kept| !kept.damaged && (kept.fragment == fragment || kept.was(fragment));
        self.records(|records| records.iter().any(holds))
    }

    /// Puts entries into the bin, from where they can be brought back, unless a record holds them already.
    ///
    /// # Errors
    /// When the browser has no room for them: then they must not be written over where they stand.
    pub(super) fn set_aside(self, held: &Held) -> Result<(), Trouble> {
        // What was read before may be older than what another tab saved since.
        self.read_shelf();
        let (held, document, _) = held.clone().checked();
        if document == Document::default() || self.is_saved(&held.fragment) {
            return Ok(());
        }
        let now = storage::now();
        let id = format!("{ASIDE}{}", held.work.id);
        let mut build = match self.record(&id) {
            // The same work was set aside before: that becomes an earlier version.
            Some(mut kept) if kept.lies_in_bin() => {
                kept.build.save(&document, &now);
                kept.build
            }
            taken => {
                let free = taken.is_none() && is_id(&id);
                let id = if free { id } else { format!("{ASIDE}{}", storage::fresh_id()) };
                Build { id, saved: now.clone(), document, ..Build::default() }
            }
        };
        build.removed = Some(now);
        build.doubt.clone_from(&held.work.doubt);
        self.put(&build)?;
        // Not the one just written, wherever a clock that was set wrong would put it.
        let over: Vec<String> = self.records(|records| {
            let aside = records.iter().filter(|kept| kept.is_set_aside() && kept.lies_in_bin());
            aside.map(|kept| kept.build.id.clone()).filter(|id| *id != build.id).skip(MOST_ASIDE - 1).collect()
        });
        over.iter().for_each(|id| self.forget(id));
        Ok(())
    }

    /// The document on the bench, saved: as the build it belongs to, or as another one.
    pub(super) fn save(self, as_another: bool, over: bool) -> Saving {
        let (document, work) = (self.document.get_untracked(), self.work.get_untracked());
        self.read_shelf();
        let record = work.build.as_ref().filter(|_| !as_another).and_then(|id| self.record(id));
        let fragment = share::to_fragment(&document);
        let mut renamed = None;
        let mut build = match record.filter(Kept::lies_open) {
            Some(kept) if kept.fragment != work.base && kept.fragment != fragment && !over => return Saving::Changed,
            Some(mut kept) => {
                let name = &kept.build.document.name;
                renamed = (!name.is_empty() && *name != document.name).then(|| Box::new(kept.build.clone()));
                kept.build.save(&document, &storage::now());
                kept.build
            }
            None => {
                let mut document = document;
                document.name = self.records(|records| free_name(records, &document.name));
                Build { id: storage::fresh_id(), saved: storage::now(), document, ..Build::default() }
            }
        };
        build.doubt.clone_from(&work.doubt);
        if let Err(trouble) = self.put(&build) {
            return Saving::Trouble(trouble);
        }
        let fragment = share::to_fragment(&build.document);
        if self.document.with_untracked(|document| *document != build.document) {
            self.document.update(|document| document.name.clone_from(&build.document.name));
        }
        self.work.set(Work { build: Some(build.id.clone()), base: fragment, ..work });
        Saving::Done(title(self, &build.document), renamed)
    }

    /// Puts a saved build on the bench, or an earlier version of it.
    pub(super) fn open_build(self, id: &str, version: Option<&Earlier>) {
        let Some(kept) = self.record(id) else { return };
        let (document, doubt) = match version {
            Some(earlier) => {
                let opened = share::from_fragment(&earlier.fragment);
                (opened.document, [opened.told, earlier.doubt.clone()].concat())
            }
            None => (kept.build.document, kept.build.doubt),
        };
        let leaf = Leaf::to_open(&document);
        let work = Work { build: Some(id.to_string()), base: kept.fragment, doubt, ..Work::fresh() };
        self.exchange(document, work);
        self.turn_to(leaf);
    }

    /// Keeps a build as it was before it was saved under another name.
    pub(super) fn keep_too(self, build: &Build) -> Result<(), Trouble> {
        self.put(&Build { id: storage::fresh_id(), ..build.clone() })
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

    /// Puts a build into the bin.
    pub(super) fn bin(self, kept: &Kept) -> Result<(), Trouble> {
        self.put(&Build { removed: Some(storage::now()), ..kept.build.clone() })?;
        if self.work.with_untracked(|work| work.build.as_ref() == Some(&kept.build.id)) {
            self.work.update(|work| (work.build, work.base) = (None, String::new()));
        }
        Ok(())
    }

    /// Takes a build out of the bin, and says what it is called now.
    pub(super) fn bring_back(self, kept: &Kept) -> Result<String, Trouble> {
        let mut build = Build { removed: None, ..kept.build.clone() };
        build.document.name = self.records(|records| free_name(records, &build.document.name));
        if kept.is_set_aside() {
            // From now on it is a build like any other, and nothing set aside later takes its place.
            build.id = storage::fresh_id();
        }
        self.put(&build)?;
        if build.id != kept.build.id {
            self.forget(&kept.build.id);
        }
        Ok(title(self, &build.document))
    }

    /// Forgets a record for good.
    pub(super) fn forget(self, id: &str) {
        storage::keep_quietly(&format!("{BUILD}{id}"), "");
        self.read_shelf();
    }

    /// Takes the builds of a file in; none of them replaces one that is here.
    pub(super) fn take_in(self, text: &str) -> Vec<String> {
        let mut here = self.records(<[Kept]>::to_vec);
        let (mut added, mut known, mut binned, mut renamed) = (0, 0, 0, false);
        let mut told = Vec::new();
        // A file may well hold two that are alike.
        let before = here.len();
        let pieces = pieces(text);
        if pieces.is_empty() {
            told.push("There is nothing in this file that could be taken in.".to_string());
        }
        for (piece, loose) in pieces {
            let read = match builds::from_text(&piece) {
                Ok(read) => read,
                Err(sentence) => {
                    told.push(sentence);
                    continue;
                }
            };
            told.extend(read.told);
            for mut build in read.builds {
                let held = |kept: &&Kept| {
                    !kept.damaged && kept.build.has_all_of(&build) && (kept.lies_open() || build.removed.is_some())
                };
                if here.iter().take(if loose { here.len() } else { before }).any(|kept| held(&kept)) {
                    known += 1;
                    continue;
                }
                if build.id.is_empty()
                    || build.id.starts_with(ASIDE)
                    || here.iter().any(|kept| kept.build.id == build.id)
                {
                    build.id = storage::fresh_id();
                }
                binned += usize::from(build.removed.is_some());
                if build.removed.is_none() {
                    let name = free_name(&here, &build.document.name);
                    renamed |= name != build.document.name;
                    build.document.name = name;
                }
                let written = self.write_record(&build);
                if let Err(trouble) = written {
                    self.note(written);
                    self.read_shelf();
                    told.insert(0, format!("{} {added} builds of the file were taken in before.", trouble.sentence()));
                    return told;
                }
                added += 1;
                here.push(Kept { fragment: String::new(), damaged: false, text: Arc::default(), build });
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
        if binned > 0 {
            told.insert(1, format!("{binned} of them lay in the bin, and do again."));
        }
        if renamed {
            told.insert(1, "Where a name was taken, the new one has a number after it.".to_string());
        }
        told
    }
}

/// The files in a text: one, or every record of what the page hands out when it has stopped, with the entries there.
/// Entries are marked: a build beside them may hold them.
fn pieces(text: &str) -> Vec<(Cow<'_, str>, bool)> {
    let parts: Vec<&str> = text.split("\nlinkwright.").collect();
    if parts.len() == 1 {
        return vec![(Cow::Borrowed(text), false)];
    }
    let (mut found, mut loose) = (Vec::new(), Vec::new());
    for (key, record) in parts.into_iter().skip(1).filter_map(|part| part.split_once('\n')) {
        // Editors on some systems end lines in their own way.
        let key = key.trim_end();
        if key.starts_with("build.") {
            found.push((Cow::Borrowed(record), false));
        } else if [ENTRIES, BEFORE].iter().any(|entries| entries.strip_prefix("linkwright.") == Some(key)) {
            let (held, document, _) = Held::read(record).checked();
            if document != Document::default() {
                let build = Build { document, doubt: held.work.doubt, ..Build::default() };
                loose.push((Cow::Owned(builds::to_text(&[build])), true));
            }
        }
    }
    found.append(&mut loose);
    found
}

/// A name that no saved build has yet: with the number after the highest that this name has.
fn free_name(here: &[Kept], name: &str) -> String {
    let taken = |name: &str| here.iter().any(|kept| kept.lies_open() && kept.build.document.name == name);
    if name.is_empty() || !taken(name) {
        return name.to_string();
    }
    let stem = tidy_name(&numbered(name).0.chars().take(50).collect::<String>());
    let names = here.iter().filter(|kept| kept.lies_open()).map(|kept| numbered(&kept.build.document.name));
    let mut number = names.filter(|(other, _)| *other == stem).map(|(_, number)| number).max().unwrap_or(1);
    loop {
        number += 1;
        let free = tidy_name(&format!("{stem} ({number})"));
        if !taken(&free) {
            return free;
        }
    }
}
