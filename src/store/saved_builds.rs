//! The saved builds on this device: one record each, the same text as a file of that build.
//!
//! ```text
//!            save                 delete                  delete for good
//!   entries ──────▶ saved build ────────▶ in the trash ──────────────────▶ gone
//!                     │     ▲ ▲              │
//!       save again:   │     │ └── restore ───┘
//!       what it was   └─────┘
//!       becomes its earlier version
//! ```
//!
//! Serves the promises: on two tabs, for a build that changed since it was opened here is written over only after
//! the reader said so, and even then its state becomes an earlier version; on full storage, for a record is written
//! whole or not at all.

use super::Stamp;
use super::stored_entries::Origin;
use crate::builds::{self, Build, Earlier, numbered};
use crate::document::{Document, tidy_name};
use crate::share;
use std::sync::Arc;

/// One record.
#[derive(Debug, Clone, PartialEq)]
pub struct SavedBuild {
    /// What could be read of it, with the id under which it is kept.
    pub build: Build,
    /// What it holds, as a fragment.
    pub fragment: String,
    /// Whether nothing could be read.
    pub damaged: bool,
    /// The record itself.
    pub text: Arc<str>,
}

impl SavedBuild {
    /// Reads the record of an id.
    pub fn read(id: &str, text: String) -> Self {
        let read = builds::from_text(&text);
        let (build, damaged) = match read.map(|read| read.builds.into_iter().next()) {
            Ok(Some(build)) => (build, false),
            Ok(None) => (Build::default(), true),
            Err(sentence) => (Build { unverified: vec![sentence], ..Build::default() }, true),
        };
        let build = Build { id: id.to_string(), ..build };
        Self { fragment: share::to_fragment(&build.document), build, damaged, text: text.into() }
    }

    /// Whether it can be opened and is not in the trash.
    pub fn is_open(&self) -> bool {
        !self.damaged && self.build.removed.is_none()
    }

    /// Whether it can be restored.
    pub fn is_in_trash(&self) -> bool {
        !self.damaged && self.build.removed.is_some()
    }

    /// Whether an earlier version of it held this.
    pub fn was(&self, fragment: &str) -> bool {
        self.build.earlier.iter().any(|earlier| earlier.fragment == fragment)
    }
}

/// The records as they are kept now, the newest first, and whether they differ from those read before; only what is
/// new or was written since is read.
pub fn refresh(before: Option<Vec<SavedBuild>>, records: Vec<(String, String)>) -> (Vec<SavedBuild>, bool) {
    let mut differs = before.is_none();
    let mut before = before.unwrap_or_default();
    let read = |(id, text): (String, String)| {
        // Records come in the order of their ids, the oldest first, and stand here the newest first.
        let known = before.iter().rposition(|saved| saved.build.id == id && *saved.text == *text);
        differs |= known.is_none();
        known.map_or_else(|| SavedBuild::read(&id, text), |at| before.remove(at))
    };
    let mut now: Vec<SavedBuild> = records.into_iter().map(read).collect();
    differs |= !before.is_empty();
    now.sort_by(|a, b| b.build.saved.cmp(&a.build.saved));
    (now, differs)
}

/// Whether some record holds this already, now or earlier.
pub fn is_saved(builds: &[SavedBuild], fragment: &str) -> bool {
    holder(builds, fragment).is_some()
}

/// The record that holds this already, now or earlier.
pub fn holder<'a>(builds: &'a [SavedBuild], fragment: &str) -> Option<&'a SavedBuild> {
    builds.iter().find(|saved| !saved.damaged && (saved.fragment == fragment || saved.was(fragment)))
}

/// The open record of an id.
fn open_record<'a>(builds: &'a [SavedBuild], id: Option<&String>) -> Option<&'a SavedBuild> {
    builds.iter().find(|saved| Some(&saved.build.id) == id && saved.is_open())
}

/// Where a save goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Target {
    /// The build that the entries belong to, unless it changed meanwhile; a new one where they belong to none.
    Same,
    /// That build, whatever it holds by now.
    SameAnyway,
    /// A new build.
    Another,
}

/// What a save is to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Save {
    /// The record to write.
    pub build: Build,
    /// Where the entries come from once it is written.
    pub origin: Origin,
    /// The build as it was, where its name changed with the save.
    pub renamed: Option<Box<Build>>,
}

/// Saves entries; none where something else was saved under their build since it was opened here.
pub fn save(
    document: &Document,
    origin: &Origin,
    target: Target,
    builds: &[SavedBuild],
    stamp: &Stamp,
) -> Option<Save> {
    let own = origin.build.as_ref().filter(|_| target != Target::Another);
    let fragment = share::to_fragment(document);
    let mut renamed = None;
    let mut build = match open_record(builds, own) {
        Some(saved) => {
            let changed = saved.fragment != origin.base && saved.fragment != fragment;
            if changed && target == Target::Same {
                return None;
            }
            let name = &saved.build.document.name;
            renamed = (!name.is_empty() && *name != document.name).then(|| Box::new(saved.build.clone()));
            let mut build = saved.build.clone();
            build.save(document, &stamp.now);
            build
        }
        None => {
            let mut document = document.clone();
            document.name = free_name(builds, &document.name);
            Build { id: stamp.id.clone(), saved: stamp.now.clone(), document, ..Build::default() }
        }
    };
    build.unverified.clone_from(&origin.unverified);
    let base = share::to_fragment(&build.document);
    let origin = Origin { build: Some(build.id.clone()), base, ..origin.clone() };
    Some(Save { build, origin, renamed })
}

/// What opening a build brings, or an earlier version of it.
pub fn open(saved: &SavedBuild, version: Option<&Earlier>, id: String) -> (Document, Origin) {
    let (document, unverified) = match version {
        Some(earlier) => {
            let opened = share::from_fragment(&earlier.fragment);
            (opened.document, [opened.notices, earlier.unverified.clone()].concat())
        }
        None => (saved.build.document.clone(), saved.build.unverified.clone()),
    };
    (document, Origin { id, build: Some(saved.build.id.clone()), base: saved.fragment.clone(), unverified })
}

/// The build as it was before it was saved under another name, as one more.
pub fn keep_too(build: &Build, id: String) -> Build {
    Build { id, ..build.clone() }
}

/// A second one like it; it is called as the first, with a number.
pub fn duplicate(saved: &SavedBuild, name: &str, builds: &[SavedBuild], stamp: &Stamp) -> Build {
    let mut build = saved.build.clone();
    build.document.name = free_name(builds, name);
    Build { id: stamp.id.clone(), saved: stamp.now.clone(), earlier: Vec::new(), ..build }
}

/// The build that entries without one belong to: what equals a saved build, or an earlier version of it, is that
/// build, whichever way it came here.
pub fn belongs_to<'a>(builds: &'a [SavedBuild], fragment: &str) -> Option<&'a SavedBuild> {
    if fragment.is_empty() {
        return None;
    }
    let open = || builds.iter().filter(|saved| saved.is_open());
    open().find(|saved| saved.fragment == fragment).or_else(|| open().find(|saved| saved.was(fragment)))
}

/// A name that no saved build has yet: with the number after the highest that this name has.
pub fn free_name(builds: &[SavedBuild], name: &str) -> String {
    let open = || builds.iter().filter(|saved| saved.is_open()).map(|saved| &saved.build.document.name);
    let taken = |name: &str| open().any(|other| other == name);
    if name.is_empty() || !taken(name) {
        return name.to_string();
    }
    let stem = tidy_name(&numbered(name).0.chars().take(50).collect::<String>());
    let numbers = open().map(|other| numbered(other)).filter(|(other, _)| *other == stem);
    let mut number = numbers.map(|(_, number)| number).max().unwrap_or(1);
    loop {
        number += 1;
        let free = tidy_name(&format!("{stem} ({number})"));
        if !taken(&free) {
            return free;
        }
    }
}
