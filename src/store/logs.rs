//! The log of what is open: a record beside the entries, under the id of their build, or of their origin while they
//! belong to none.
//!
//! ```text
//!   entries of no build ── saved, or found to be a saved build ──▶ the build's log takes theirs in
//!   a build's entries   ── saved as another, or the build is deleted ──▶ the new one begins with a copy
//!   entries set aside   ──▶ what holds them in the trash gets a copy
//! ```
//!
//! Serves the promises on reloads and on two tabs: a log only grows, so what stands there is joined, never written over.
//! On full storage a record is written whole or not at all.

use super::Write;
use super::stored_entries::Origin;
use crate::builds::{log_from_text, log_to_text};
use crate::log::Log;

/// Begins the key of every log; the id of a build or of an origin follows.
pub const LOG: &str = "linkwright.log.";

/// Ends the key of a log that could not be read whole, as it was found.
const DAMAGED: &str = ".damaged";

/// Whether a record is such a copy.
pub fn is_set_aside(key: &str) -> bool {
    key.starts_with(LOG) && key.ends_with(DAMAGED)
}

/// The key of a log.
pub fn key(id: &str) -> String {
    format!("{LOG}{id}")
}

/// Under which id the log of entries is kept.
pub fn id(origin: &Origin) -> &str {
    origin.build.as_deref().unwrap_or(&origin.id)
}

/// Under what a log that could not be read whole is kept as it was found.
pub fn damaged_id(id: &str) -> String {
    format!("{id}{DAMAGED}")
}

/// What to keep as the copy of what was found damaged; what was set aside before stays beside it.
pub fn set_aside(before: &str, now: &str) -> String {
    match before {
        "" => now.to_string(),
        before if before.contains(now) => before.to_string(),
        before => format!("{before}\n{now}"),
    }
}

/// What stands in a record, and what sets it aside where a part of it could not be read.
pub fn read(id: &str, text: &str) -> (Log, Option<Write>) {
    let (log, whole) = log_from_text(text);
    (log, (!whole).then(|| write(&damaged_id(id), text.to_string())))
}

/// Keeps a log joined with what stands there: the log then, and what to write.
pub fn keep(id: &str, own: &Log, stands: &str) -> (Log, Vec<Write>) {
    let (mut log, damaged) = read(id, stands);
    log.join(own);
    let text = log_to_text(&log);
    let writes = if text == stands { Vec::new() } else { damaged.into_iter().chain([write(id, text)]).collect() };
    (log, writes)
}

/// Keeps the log that a link brought with entries of this origin.
pub fn received(origin: &Origin, log: &str) -> Vec<Write> {
    if log.is_empty() { Vec::new() } else { vec![write(id(origin), log.to_string())] }
}

fn write(id: &str, text: String) -> Write {
    Write { key: key(id), text }
}

/// What to write when entries come to belong to another build: `of` tells what stands under an id.
pub fn follow(before: &Origin, now: &Origin, of: impl Fn(&str) -> String) -> Vec<Write> {
    let (from, to) = (id(before), id(now));
    if !before.is_same(now) || from == to {
        return Vec::new();
    }
    let (log, damaged) = read(from, &of(from));
    if log.is_empty() && damaged.is_none() {
        return Vec::new();
    }
    let mut writes = keep(to, &log, &of(to)).1;
    // What could not be read of it is not lost with the record that it stood in.
    if let Some(copy) = damaged {
        let aside = key(&damaged_id(to));
        let before = writes.iter().find(|write| write.key == aside).map(|write| write.text.clone());
        writes.retain(|write| write.key != aside);
        writes.insert(0, Write { text: set_aside(&before.unwrap_or_default(), &copy.text), key: aside });
    }
    if before.build.is_none() {
        writes.push(write(from, String::new()));
    }
    writes
}

/// What goes along with builds that are written in the place of entries or of another build, so that each has the log.
pub fn along(writes: &[Write], log: &str) -> Vec<Write> {
    let builds = writes.iter().filter(|write| !write.text.is_empty()).filter_map(Write::build_id);
    if log.is_empty() { Vec::new() } else { builds.map(|id| write(id, log.to_string())).collect() }
}

/// Forgets the logs of the builds that are forgotten.
pub fn forgotten(writes: &[Write]) -> Vec<Write> {
    let builds = writes.iter().filter(|write| write.text.is_empty()).filter_map(Write::build_id);
    builds.map(|id| write(id, String::new())).collect()
}
