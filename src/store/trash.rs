//! The trash: builds that the reader deleted, and entries that something else took the place of before they were
//! saved; those are offered back, too.
//!
//! ```text
//!   saved build ── delete ──────────────▶ in the trash ── restore ──▶ saved build (under a free name)
//!   open entries ── set aside ──────────▶    │   ▲
//!        │  ▲                                │   └── the offer is closed, or gives way to a newer one
//!        │  └── back to own ── offered ◀─────┼────── (the same entries, kept as `BEFORE`)
//!        └───── set aside ────────▲          └── delete for good, or the 51st set aside ──▶ gone
//! ```
//!
//! Serves all four promises: whatever takes the place of entries sets them aside first, and where there is no room
//! for that, what they stand in is not written over.

use super::saved_builds::{SavedBuild, free_name, is_saved};
use super::stored_entries::{Checked, Origin, StoredEntries};
use super::{Stamp, Write};
use crate::builds::{Build, is_id};
use crate::document::Document;

/// Sets of entries that the page itself put aside; more than these nobody misses.
const MOST_SET_ASIDE: usize = 50;

/// Begins the ids of what the page itself put aside.
pub const SET_ASIDE: &str = "aside-";

/// Whether the page put a record into the trash, unsaved.
pub fn is_set_aside(build: &Build) -> bool {
    build.id.starts_with(SET_ASIDE)
}

/// Whether entries would be lost if something else took their place.
pub fn is_unsaved(entries: &StoredEntries, builds: &[SavedBuild]) -> bool {
    !entries.fragment.is_empty() && !is_saved(builds, &entries.fragment)
}

/// Puts entries into the trash, unless a record holds them already.
pub fn set_aside(entries: &StoredEntries, builds: &[SavedBuild], stamp: &Stamp) -> Vec<Write> {
    let Checked { entries, document, damaged, .. } = entries.clone().checked();
    if document == Document::default() || is_saved(builds, &entries.fragment) {
        return Vec::new();
    }
    let own = &entries.origin.id;
    let id = format!("{SET_ASIDE}{}", if own.is_empty() { &stamp.id } else { own });
    let now = stamp.now.clone();
    let mut build = match builds.iter().find(|saved| saved.build.id == id) {
        // Entries of the same origin were set aside before: those become an earlier version.
        Some(saved) if saved.is_in_trash() => {
            let mut build = saved.build.clone();
            build.save(&document, &now);
            build
        }
        taken => {
            let free = taken.is_none() && is_id(&id);
            let id = if free { id } else { format!("{SET_ASIDE}{}", stamp.id) };
            Build { id, saved: now.clone(), document, ..Build::default() }
        }
    };
    build.removed = Some(now);
    build.unverified.clone_from(&entries.origin.unverified);
    // Not the one just written, wherever a clock that was set wrong would put it.
    let others = builds.iter().filter(|saved| is_set_aside(&saved.build) && saved.is_in_trash());
    let others = others.filter(|saved| saved.build.id != build.id);
    let over = others.skip(MOST_SET_ASIDE - 1).map(|saved| Write::forget(&saved.build.id));
    damaged.map(Write::damaged).into_iter().chain([Write::build(&build)]).chain(over).collect()
}

/// Offers nothing any longer; what was offered stays in the trash.
pub fn close_offer(before: &str, builds: &[SavedBuild], stamp: &Stamp) -> Vec<Write> {
    let mut writes = set_aside(&StoredEntries::read(before), builds, stamp);
    writes.push(Write::before(String::new()));
    writes
}

/// Puts a build into the trash.
pub fn delete(saved: &SavedBuild, now: &str) -> Vec<Write> {
    vec![Write::build(&Build { removed: Some(now.to_string()), ..saved.build.clone() })]
}

/// Entries whose build was deleted belong to none.
pub fn leave_build(origin: &Origin, deleted: &str) -> Option<Origin> {
    let leaves = origin.build.as_deref() == Some(deleted);
    leaves.then(|| Origin { build: None, base: String::new(), ..origin.clone() })
}

/// Takes a build out of the trash: the build as it is then, and what to write.
pub fn restore(saved: &SavedBuild, builds: &[SavedBuild], id: String) -> (Build, Vec<Write>) {
    let mut build = Build { removed: None, ..saved.build.clone() };
    build.document.name = free_name(builds, &build.document.name);
    if is_set_aside(&saved.build) {
        // From now on it is a build like any other, and nothing set aside later takes its place.
        build.id = id;
    }
    let mut writes = vec![Write::build(&build)];
    if build.id != saved.build.id {
        writes.push(Write::forget(&saved.build.id));
    }
    (build, writes)
}
