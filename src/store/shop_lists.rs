//! The shop's own lists and its price book: a record each, its text the CSV file itself, so that whoever looks into
//! the browser's storage can read what is theirs.
//!
//! ```text
//!            edit                import, or another tab wrote meanwhile
//!   kept ──────────▶ kept      kept ────────────────────────────────▶ kept, what stood there beside it
//!                                ▲                                         │ bring it back
//!                                └─────────────────────────────────────────┘
//! ```
//!
//! Serves the promises: on full storage, for a list is written only after what it takes the place of stands beside it;
//! on two tabs, for a list that changed elsewhere is never written over unseen.

use super::Write;

/// Begins the key of every list; its id follows.
pub const LIST: &str = "linkwright.shop.";

/// The id of the record of what the shop has set of its machines.
pub const MACHINE: &str = "machine";

/// Ends the key of what a list was before.
const BEFORE: &str = ".before";

/// The key of a list.
pub fn key(id: &str) -> String {
    format!("{LIST}{id}")
}

/// The key of what it was before it was replaced.
pub fn key_before(id: &str) -> String {
    format!("{LIST}{id}{BEFORE}")
}

/// Keeps a list after an edit. `shared` is what stands there now, `seen` what this tab last read or wrote there.
pub fn keep(id: &str, text: String, shared: &str, seen: &str) -> Vec<Write> {
    if shared == seen || shared.is_empty() {
        return if shared == text { Vec::new() } else { vec![Write { key: key(id), text }] };
    }
    replace(id, text, shared)
}

/// Keeps a list in place of another, which stays beside it until the next is replaced.
pub fn replace(id: &str, text: String, shared: &str) -> Vec<Write> {
    if shared == text {
        return Vec::new();
    }
    let mut writes = Vec::new();
    if !shared.is_empty() {
        writes.push(Write { key: key_before(id), text: shared.to_string() });
    }
    writes.push(Write { key: key(id), text });
    writes
}
