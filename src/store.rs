//! What is kept on this device, as data and decisions: which records there are, who may write over which, what goes
//! to the trash, and what is offered back.
//!
//! Pure: what the browser keeps comes in as texts and records, the time and new ids as a [`Stamp`]; what is to be
//! kept goes out as a list of [`Write`]s, each done only once those before it are. Four promises are kept:
//!
//! 1. **Nothing is lost on a reload**: entries are one record with all that belongs to them ([`stored_entries`],
//!    [`autosave`], [`opening`]).
//! 2. **A bad link takes nothing away**, and damaged numbers never pass for sound ones ([`opening`], [`unverified`]).
//! 3. **Full storage**: nothing is written over before what it held stands somewhere else ([`autosave`], [`trash`]).
//! 4. **Two tabs** take nothing from each other ([`other_tabs`], [`saved_builds`], [`shop_lists`], [`logs`]).

pub mod autosave;
pub mod history;
pub mod import;
pub mod logs;
pub mod opening;
pub mod other_tabs;
pub mod saved_builds;
pub mod shop_lists;
pub mod stored_entries;
pub mod trash;
pub mod unverified;

use crate::builds::{self, Build};

/// The entries that are open, of the tab that wrote last.
pub const ENTRIES: &str = "linkwright.entries";
/// The reader's own entries from before something else took their place; they are offered back.
pub const BEFORE: &str = "linkwright.before";
/// Entries that were damaged where they were kept, as they were found.
pub const DAMAGED: &str = "linkwright.damaged";
/// Begins the key of every saved build; its id follows.
pub const BUILD: &str = "linkwright.build.";

/// What only the world outside knows.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Stamp {
    /// The time, as ISO 8601 in UTC.
    pub now: String,
    /// An id that nothing else has.
    pub id: String,
}

/// Why something was not stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refused {
    /// The browser lets the page store nothing.
    Blocked,
    /// The space it gives is used up.
    Full,
}

/// A text to keep under a key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Write {
    /// The key.
    pub key: String,
    /// The text; an empty one forgets the key.
    pub text: String,
}

impl Write {
    /// The entries that all tabs share.
    pub fn entries(text: String) -> Self {
        Self { key: ENTRIES.to_string(), text }
    }

    /// The entries that are offered back.
    pub fn before(text: String) -> Self {
        Self { key: BEFORE.to_string(), text }
    }

    /// Damaged entries, as they were found.
    pub fn damaged(text: String) -> Self {
        Self { key: DAMAGED.to_string(), text }
    }

    /// The record of a build.
    pub fn build(build: &Build) -> Self {
        let text = builds::to_text(std::slice::from_ref(build));
        Self { key: format!("{BUILD}{}", build.id), text }
    }

    /// Forgets the record of a build for good.
    pub fn forget(id: &str) -> Self {
        Self { key: format!("{BUILD}{id}"), text: String::new() }
    }

    /// Whether those after it may be done where this one cannot.
    pub fn is_optional(&self) -> bool {
        self.key == DAMAGED || (self.text.is_empty() && self.key != ENTRIES)
    }

    /// Whether it is of a saved build.
    pub fn is_build(&self) -> bool {
        self.build_id().is_some()
    }

    /// The id of the build it is of.
    pub fn build_id(&self) -> Option<&str> {
        self.key.strip_prefix(BUILD)
    }
}
