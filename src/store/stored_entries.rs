//! The entries as they are kept: one text, so that they never part from what they belong to.

use super::unverified::{self, DAMAGED_HERE};
use crate::document::{Document, one_line};
use crate::share::{self, Sent};

/// Where entries come from. Tabs whose entries are of one origin follow each other.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Origin {
    /// New whenever something else is opened; empty only until somebody gives it one.
    pub id: String,
    /// The saved build that the entries belong to, by its id.
    pub build: Option<String>,
    /// What the entries began as, as a fragment: that build when it was last read or saved here, or a received link.
    pub base: String,
    /// Why the numbers must be compared before they are used, a sentence each; they stay until the reader did.
    pub unverified: Vec<String>,
}

impl Origin {
    /// Entries that belong to nothing yet.
    pub fn new(id: String) -> Self {
        Self { id, ..Self::default() }
    }

    /// Whether it is the same one, which another tab may have open too.
    pub fn is_same(&self, other: &Self) -> bool {
        !self.id.is_empty() && self.id == other.id
    }

    /// Adds why the numbers are unverified, once.
    pub fn mark_unverified(&mut self, sentence: &str) {
        unverified::add(&mut self.unverified, sentence);
    }
}

/// Entries with their origin.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StoredEntries {
    /// The entries as a link's fragment; empty when nothing was entered.
    pub fragment: String,
    /// Where they come from.
    pub origin: Origin,
}

/// Entries whose fragment was read, and what that showed.
#[derive(Debug, Clone, PartialEq)]
pub struct Checked {
    /// The entries, marked unverified where they are damaged and written anew where an earlier version wrote them.
    pub entries: StoredEntries,
    /// What they are.
    pub document: Document,
    /// Whether an earlier version wrote them, so that the answer may differ.
    pub recalculated: bool,
    /// The fragment as it was found, where it is damaged.
    pub damaged: Option<String>,
}

/// A longer sentence is cut.
const LONGEST_SENTENCE: usize = 400;

/// The fragment of entries; empty when nothing was entered.
pub fn fragment_of(document: &Document) -> String {
    if *document == Document::default() { String::new() } else { share::to_fragment(document) }
}

/// The fragment that entries have in the address, which somebody may send: without the order around what is made, and
/// without what was measured on it.
pub fn in_address(fragment: &str) -> String {
    let opened = share::from_fragment(fragment);
    let sent = share::sent(&opened.document, Sent::default());
    // Of damaged entries nothing is left out unseen.
    if sent == opened.document || !opened.notices.is_empty() { fragment.to_string() } else { share::to_fragment(&sent) }
}

/// Whether entries are what an address brings: as they are, or without what no address carries.
pub fn is_of_address(fragment: &str, brought: &str) -> bool {
    fragment == brought || in_address(fragment) == brought
}

impl StoredEntries {
    /// Reads a text: a line each for the entries, the id of their origin, their build and what they began as, then a
    /// line for each sentence on why they are unverified.
    pub fn read(text: &str) -> Self {
        let mut lines = text.lines().map(str::to_string);
        let mut next = || lines.next().unwrap_or_default();
        let (fragment, id, build, base) = (next(), next(), next(), next());
        let build = Some(build).filter(|build| !build.is_empty());
        Self { fragment, origin: Origin { id, build, base, unverified: lines.collect() } }
    }

    /// The text; empty when nothing was entered.
    pub fn write(&self) -> String {
        if self.fragment.is_empty() {
            return String::new();
        }
        let Origin { id, build, base, unverified } = &self.origin;
        let mut text = [self.fragment.as_str(), id, build.as_deref().unwrap_or_default(), base].join("\n");
        for sentence in unverified {
            text.push('\n');
            text += &one_line(sentence, LONGEST_SENTENCE);
        }
        text
    }

    /// Reads the fragment and tells what that showed.
    pub fn checked(mut self) -> Checked {
        if self.fragment.is_empty() {
            return Checked { entries: self, document: Document::default(), recalculated: false, damaged: None };
        }
        let opened = share::from_fragment(&self.fragment);
        let damaged = (!opened.notices.is_empty()).then(|| self.fragment.clone());
        if damaged.is_some() {
            self.origin.mark_unverified(DAMAGED_HERE);
        }
        if opened.recalculated {
            // As this version writes it, so that nobody takes it for a change of the reader's.
            let base = share::from_fragment(&self.origin.base);
            if base.recalculated {
                self.origin.base = share::to_fragment(&base.document);
            }
            self.fragment = share::to_fragment(&opened.document);
        }
        Checked { entries: self, document: opened.document, recalculated: opened.recalculated, damaged }
    }

    /// Whether this is what an address brings, as the fragment that it is written as.
    pub fn is_of_address(&self, brought: &str) -> bool {
        is_of_address(&self.fragment, brought)
    }

    /// Whether this is what somebody sent, with nothing of the reader's own in it.
    pub fn is_as_received(&self) -> bool {
        self.origin.build.is_none() && self.fragment == self.origin.base
    }
}
