//! Which sections of the view are unfolded, for the folds themselves and for the jumps to them.

use crate::app::session::{Session, use_session};
use crate::browser::page;
use leptos::prelude::*;

/// Ids of the sections that fold, in the order of the page.
pub(super) const ENDS: &str = "two-ends";
pub(super) const PARTS: &str = "link-parts";
pub(super) const FITTING: &str = "fitting";

const ALL: [&str; 3] = [ENDS, PARTS, FITTING];

/// The unfolded sections: all on a wide screen, none on a phone, until the reader folds or unfolds one.
#[derive(Clone, Copy)]
pub(super) struct OpenSections(Session);

/// The unfolded sections of the view.
pub(super) fn use_open_sections() -> OpenSections {
    OpenSections(use_session())
}

impl OpenSections {
    fn at_first(self) -> Vec<&'static str> {
        if self.0.wide.get() { ALL.to_vec() } else { Vec::new() }
    }

    /// Whether a section is unfolded.
    pub(super) fn is_open(self, id: &str) -> bool {
        self.0.open_sections.get().unwrap_or_else(|| self.at_first()).contains(&id)
    }

    /// Folds or unfolds a section.
    pub(super) fn set(self, id: &'static str, open: bool) {
        if untrack(|| self.is_open(id)) != open {
            let mut all = self.0.open_sections.get_untracked().unwrap_or_else(|| untrack(|| self.at_first()));
            all.retain(|other| *other != id);
            all.extend(open.then_some(id));
            self.0.open_sections.set(Some(all));
        }
    }

    /// Unfolds a section, if it folds, and leads to it.
    pub(super) fn jump(self, id: &'static str) {
        if ALL.contains(&id) {
            self.set(id, true);
        }
        page::show_soon(id.to_string());
    }
}
