//! The entries as they are kept: one text, so that they never part from what they belong to.

use super::storage;
use linkwright::document::{Document, one_line};
use linkwright::share;

/// Which piece of work is on the bench. Tabs that hold the same one follow each other.
#[derive(Clone, PartialEq, Eq, Default)]
pub(super) struct Work {
    /// Made anew whenever something else comes onto the bench.
    pub(super) id: String,
    /// The saved build it belongs to.
    pub(super) build: Option<String>,
    /// What it began as, as a fragment: that build when it was last read or saved here, or a received link.
    pub(super) base: String,
    /// Why its numbers must be compared before they are used; it stays until the reader says it was done.
    pub(super) doubt: Vec<String>,
}

impl Work {
    /// Another piece of work, which belongs to no build.
    pub(super) fn fresh() -> Self {
        Self { id: storage::fresh_id(), ..Self::default() }
    }

    /// Adds a doubt, once.
    pub(super) fn doubt(&mut self, sentence: &str) {
        if !self.doubt.iter().any(|doubt| doubt == sentence) {
            self.doubt.push(sentence.to_string());
        }
    }
}

/// Said when the kept entries do not pass their own check.
const DAMAGED: &str = "What this browser kept of your entries was damaged. What could be read is below; check every number before you use it.";

/// Entries, with the work they are.
#[derive(Clone, PartialEq, Eq, Default)]
pub(super) struct Held {
    /// The entries, as a fragment; empty when nothing was entered.
    pub(super) fragment: String,
    pub(super) work: Work,
}

/// More letters of a doubt than anybody reads.
const LONGEST_DOUBT: usize = 400;

impl Held {
    /// Reads a text: the entries, the id of the work, its build, what it began as, and a line for each doubt.
    pub(super) fn read(text: &str) -> Self {
        let mut lines = text.lines().map(str::to_string);
        let mut next = || lines.next().unwrap_or_default();
        let (fragment, id, build, base) = (next(), next(), next(), next());
        let build = Some(build).filter(|build| !build.is_empty());
        let id = if id.is_empty() { storage::fresh_id() } else { id };
        Self { fragment, work: Work { id, build, base, doubt: lines.collect() } }
    }

    /// The text; none when nothing was entered.
    pub(super) fn write(&self) -> String {
        if self.fragment.is_empty() {
            return String::new();
        }
        let Work { id, build, base, doubt } = &self.work;
        let mut text = [self.fragment.as_str(), id, build.as_deref().unwrap_or_default(), base].join("\n");
        for doubt in doubt {
            text.push('\n');
            text += &one_line(doubt, LONGEST_DOUBT);
        }
        text
    }

    /// What is kept under a key, over all tabs.
    pub(super) fn kept(key: &str) -> Self {
        storage::kept(key).map(|text| Self::read(&text)).unwrap_or_default()
    }

    /// The same, with a doubt when it does not pass its own check, the entries, and whether they come from an earlier
    /// version; what it was is kept.
    pub(super) fn checked(mut self) -> (Self, Document, bool) {
        if self.fragment.is_empty() {
            return (self, Document::default(), false);
        }
        let opened = share::from_fragment(&self.fragment);
        if !opened.told.is_empty() {
            storage::keep_quietly(storage::DAMAGED, &self.fragment);
            self.work.doubt(DAMAGED);
        }
        if opened.recalculated {
            // As this version writes it, so that nobody takes it for a change of the reader's.
            let base = share::from_fragment(&self.work.base);
            if base.recalculated {
                self.work.base = share::to_fragment(&base.document);
            }
            self.fragment = share::to_fragment(&opened.document);
        }
        (self, opened.document, opened.recalculated)
    }

    /// Whether it is what somebody sent, with nothing of the reader's own in it.
    pub(super) fn is_as_received(&self) -> bool {
        self.work.build.is_none() && self.fragment == self.work.base
    }
}
