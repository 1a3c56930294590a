//! Two tabs: who follows whom, and whose entries stand where all tabs find them.
//!
//! ```text
//!                            another tab wrote the entries
//!                                          │
//!       something typed here is not kept yet? ── yes ──▶ own first: it is written, what was there is set aside,
//!                                          │             and the other tab follows
//!                                         no
//!                                          │
//!                           of the same origin? ── yes ──▶ follow: the same entries stand here, too
//!                                          │
//!                                          no ──▶ elsewhere: told, and offered; both tabs go on
//! ```
//!
//! Serves the promise on two tabs: neither takes anything from the other.

use super::stored_entries::{Checked, Origin, StoredEntries};

/// What a tab does when all tabs' entries changed.
#[derive(Debug, Clone, PartialEq)]
pub enum Look {
    /// It wrote or read just these itself.
    Unchanged,
    /// It writes its own, which were typed a moment ago.
    OwnFirst,
    /// It goes on with its own, and says what another tab has open, if that is anything else.
    Elsewhere(Option<StoredEntries>),
    /// It takes these over.
    Follow(Checked),
}

/// Looks at what all tabs share. `written` is what this tab wrote last, `seen` what it last read or wrote there.
pub fn look(own: &StoredEntries, written: &str, seen: Option<&str>, shared: Option<&str>) -> Look {
    if seen == shared {
        return Look::Unchanged;
    }
    if written != own.write() {
        return Look::OwnFirst;
    }
    let there = StoredEntries::read(shared.unwrap_or_default()).checked();
    if !there.entries.origin.is_same(&own.origin) {
        let other = !there.entries.fragment.is_empty() && there.entries.fragment != own.fragment;
        return Look::Elsewhere(other.then_some(there.entries));
    }
    Look::Follow(there)
}

/// The same entries as another tab left them, if one went on with them.
pub fn newest(entries: StoredEntries, shared: &str) -> StoredEntries {
    let there = StoredEntries::read(shared);
    if there.origin.is_same(&entries.origin) { there } else { entries }
}

/// An origin that takes an old state up again, apart from a tab that went on from it.
pub fn apart(origin: Origin, shared: &str, id: String) -> Origin {
    if StoredEntries::read(shared).origin.is_same(&origin) { Origin { id, ..origin } } else { origin }
}
