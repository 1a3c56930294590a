//! Undo and redo: the history of the library follows the document.

use super::Session;
use super::autosave::shared;
use crate::browser::clock;
use leptos::leptos_dom::helpers::debounce;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::store::history::{History, Step};
use linkwright::store::other_tabs;
use std::time::Duration;

/// Keys pressed within this time of each other are one step.
const PAUSE: Duration = Duration::from_millis(900);

impl Session {
    /// Follows the document from now on.
    pub(super) fn follow_history(self) {
        let mut end_burst = debounce(PAUSE, move |()| self.history.update_untracked(History::end_burst));
        // The history is no input of the page: it is written here alone, and read by two buttons.
        Effect::new(move |_| {
            let now = (self.document.get(), self.origin.get());
            let mut changed = false;
            self.history.update(|history| changed = history.follow(now));
            if changed {
                end_burst(());
            }
        });
    }

    /// The document goes back by itself to what it was before some keys: these are no step.
    pub(super) fn taken_back(self, document: &Document) {
        self.history.update(|history| history.taken_back(document));
    }

    /// Whether there is something to undo.
    pub(crate) fn can_undo(self) -> bool {
        self.history.with(History::can_undo)
    }

    /// Whether there is something to redo.
    pub(crate) fn can_redo(self) -> bool {
        self.history.with(History::can_redo)
    }

    /// Takes the last step back.
    pub(crate) fn undo(self) {
        self.step(History::undo);
    }

    /// Takes the step again that was undone last.
    pub(crate) fn redo(self) {
        self.step(History::redo);
    }

    fn step(self, take: fn(&mut History, Step) -> Option<Step>) {
        self.settle();
        let now = self.origin.get_untracked();
        let open = (self.document.get_untracked(), now.clone());
        let Some((document, origin)) = self.history.try_update(|history| take(history, open)).flatten() else { return };
        // Across an exchange the build that it belongs to comes along; within one it may have been saved since.
        if origin.id != now.id {
            // What was typed a moment ago must be among the entries that are set aside.
            self.store();
            self.origin.set(other_tabs::apart(origin, &shared(), clock::fresh_id()));
        }
        self.rearrange(|now| *now = document);
        self.withdraw_open_offer();
    }
}
