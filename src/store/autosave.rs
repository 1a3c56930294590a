//! Keeping the open entries without being asked.
//!
//! ```text
//!   changed ── a pause, or the page is left ──▶ kept ◀── there is room again ── unkept, told
//!                     │                                                           ▲
//!                     └── what stands there cannot be set aside, or no room ──────┘
//! ```
//!
//! Serves the promises: on reloads, for the record holds the entries with their origin; on full storage and on two
//! tabs, for what stands in the record and was not seen here, or is of another origin, is set aside first, and where
//! there is no room for that the record stays as it is.

use super::saved_builds::{SavedBuild, belongs_to};
use super::stored_entries::{Origin, StoredEntries};
use super::{Stamp, Write, trash};

/// The entries as they are to be kept: those that equal a saved build belong to it from now on.
pub fn adopt(entries: &StoredEntries, builds: &[SavedBuild]) -> Option<StoredEntries> {
    if entries.origin.build.is_some() {
        return None;
    }
    let saved = belongs_to(builds, &entries.fragment)?;
    let mut origin = entries.origin.clone();
    if saved.fragment == entries.fragment {
        saved.build.unverified.iter().for_each(|sentence| origin.mark_unverified(sentence));
    }
    let origin = Origin { build: Some(saved.build.id.clone()), base: saved.fragment.clone(), ..origin };
    Some(StoredEntries { origin, ..entries.clone() })
}

/// Whether keeping the entries takes the place of others, which were not seen here or are of another origin. `shared`
/// is what stands there now, `seen` what this tab last read or wrote there.
pub fn replaces_others(own: &StoredEntries, shared: &str, seen: &str) -> bool {
    let other = StoredEntries::read(shared);
    let unknown = seen != shared || !other.origin.is_same(&own.origin);
    unknown && !other.fragment.is_empty() && other.fragment != own.fragment
}

/// Keeps the entries for every tab. What stands there and would be lost goes to the trash first.
pub fn keep(own: &StoredEntries, shared: &str, seen: &str, builds: &[SavedBuild], stamp: &Stamp) -> Vec<Write> {
    let text = own.write();
    if shared == text {
        return Vec::new();
    }
    let mut writes = Vec::new();
    if replaces_others(own, shared, seen) {
        writes = trash::set_aside(&StoredEntries::read(shared), builds, stamp);
    }
    writes.push(Write::entries(text));
    writes
}
