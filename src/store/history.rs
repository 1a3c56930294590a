//! Undo and redo, as long as the page is open.
//!
//! ```text
//!            a change, or a burst of them: one step
//!   ┌──────┐ ◀───────────────────────────────────── ┌──────┐ ──── undo ────▶ ┌──────┐
//!   │ back │                                        │ open │                 │ redo │
//!   └──────┘ ─────────────── undo ────────────────▶ └──────┘ ◀─── redo ───── └──────┘
//!                                                       └──── a change empties redo
//! ```
//!
//! Serves no promise over reloads: it is a convenience on top of what autosave and the trash keep.

use super::stored_entries::Origin;
use crate::document::Document;

/// More steps than anybody goes back.
const LONGEST: usize = 100;

/// What was open, and where it came from.
pub type Step = (Document, Origin);

/// Where the entries have been.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct History {
    back: Vec<Step>,
    forward: Vec<Step>,
    /// What was open after the last change.
    last: Option<Step>,
    /// What undo or redo just put there, which is no new step.
    put: Option<Document>,
    /// Whether a burst of changes goes on.
    burst: bool,
}

impl History {
    /// Notes what is open now. True when a step or part of one was noted: then a burst goes on until
    /// [`Self::end_burst`].
    pub fn follow(&mut self, now: Step) -> bool {
        let before = self.last.replace(now.clone());
        let Some(before) = before.filter(|before| before.0 != now.0) else { return false };
        if self.put.take().is_some_and(|put| put == now.0) {
            return false;
        }
        // Entries of another origin are always a step of their own.
        if !self.burst || before.1.id != now.1.id {
            self.back.push(before);
            let over = self.back.len().saturating_sub(LONGEST);
            self.back.drain(..over);
        }
        self.burst = true;
        self.forward.clear();
        true
    }

    /// Nothing changed for a while.
    pub fn end_burst(&mut self) {
        self.burst = false;
    }

    /// The document went back by itself to what it was before some keys: these are no step.
    pub fn taken_back(&mut self, document: &Document) {
        self.put = Some(document.clone());
        if self.back.last().is_some_and(|(last, _)| last == document) {
            self.back.pop();
        }
    }

    /// Whether there is something to undo.
    pub fn can_undo(&self) -> bool {
        !self.back.is_empty()
    }

    /// Whether there is something to redo.
    pub fn can_redo(&self) -> bool {
        !self.forward.is_empty()
    }

    /// The step before the one that is open now.
    pub fn undo(&mut self, now: Step) -> Option<Step> {
        let step = self.back.pop()?;
        self.forward.push(now);
        self.put = Some(step.0.clone());
        Some(step)
    }

    /// The step that was undone last.
    pub fn redo(&mut self, now: Step) -> Option<Step> {
        let step = self.forward.pop()?;
        self.back.push(now);
        self.put = Some(step.0.clone());
        Some(step)
    }
}
