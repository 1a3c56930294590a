//! How the entries outlive the page: what the library's `store` decides is written where the next visit finds it.

use super::{Session, View};
use crate::browser::storage::{self, Refused};
use crate::browser::{address, clock, page, window};
use leptos::leptos_dom::helpers::debounce;
use leptos::prelude::*;
use linkwright::quantity::System;
use linkwright::store::stored_entries::{StoredEntries, fragment_of};
use linkwright::store::{ENTRIES, Write, autosave, unverified};
use std::time::Duration;

/// Where the unit system is kept.
const UNITS: &str = "linkwright.units";
/// Which view was open.
const VIEW: &str = "linkwright.leaf";
/// The ticked steps, one a line.
const TICKS: &str = "linkwright.ticks";

/// A pause that long means that nobody is typing.
const PAUSE: Duration = Duration::from_millis(250);

/// The builds are read once the first answer stands there.
const FIRST_ANSWER: Duration = Duration::from_millis(30);

/// The reader's units.
pub(super) fn kept_units() -> System {
    if storage::get(UNITS).as_deref() == Some("metric") { System::Metric } else { System::Inch }
}

/// The view that was open.
pub(super) fn kept_view() -> View {
    View::of_name(&storage::get(VIEW).unwrap_or_default())
}

/// The ticked steps.
pub(super) fn kept_ticks() -> Vec<String> {
    storage::get(TICKS).map(|text| text.lines().map(str::to_string).collect()).unwrap_or_default()
}

/// What all tabs share of the entries; empty when there is nothing.
pub(super) fn shared() -> String {
    storage::get(ENTRIES).unwrap_or_default()
}

/// What this tab kept of them.
pub(super) fn of_tab() -> String {
    storage::get_of_tab(ENTRIES).unwrap_or_default()
}

impl Session {
    /// Writes document, units, view and ticks where the next visit finds them.
    pub(super) fn save_on_change(self) {
        // A browser takes longer to change its address than the engine to size a link, so that waits for a pause.
        let mut write_soon = debounce(PAUSE, move |()| self.write());
        Effect::new(move |_| {
            self.document.track();
            self.origin.track();
            self.builds.track();
            write_soon(());
        });
        Effect::new(move |_| {
            storage::set_quietly(UNITS, if self.units.get() == System::Metric { "metric" } else { "" })
        });
        Effect::new(move |_| storage::set_quietly(VIEW, self.view.get().name()));
        Effect::new(move |_| storage::set_quietly(TICKS, &self.ticks.get().join("\n")));
        // Whoever leaves right after a key, or turns to another program, loses nothing.
        window::on("visibilitychange", move |_| {
            self.settle();
            self.keep();
        });
        window::on("pagehide", move |_| {
            page::leave_field();
            self.keep();
        });
        set_timeout(move || self.read_builds(), FIRST_ANSWER);
    }

    /// Keeps the entries, in the address too; that a page which is being left cannot change.
    pub(super) fn write(self) {
        let own = self.entries();
        self.keep_entries(own.clone());
        if page::is_live() {
            address::write_fragment(&own.fragment);
        }
    }

    /// Keeps the entries.
    pub(super) fn keep(self) {
        self.keep_entries(self.entries());
    }

    fn keep_entries(self, mut own: StoredEntries) {
        // What a page that has stopped still holds was set aside already.
        if !page::is_live() {
            return;
        }
        let adopted = |own: &StoredEntries| {
            self.builds.with_untracked(|builds| autosave::adopt(own, builds.as_deref().unwrap_or_default()))
        };
        if adopted(&own).is_some() {
            // Another tab may have deleted the build a moment ago.
            self.read_builds();
            if let Some(adopted) = adopted(&own) {
                own = adopted;
                self.origin.set(own.origin.clone());
            }
        }
        let text = own.write();
        // What this tab has written already may have given way to another tab's since: that stands until something changes.
        if !self.unkept.get_value() && of_tab() == text {
            return;
        }
        let (shared, seen) = (shared(), self.seen.get_value().unwrap_or_default());
        if autosave::replaces_others(&own, &shared, &seen) {
            self.read_builds();
        }
        let plan = |builds: &Option<Vec<_>>| {
            autosave::keep(&own, &shared, &seen, builds.as_deref().unwrap_or_default(), &clock::stamp())
        };
        let writes = self.builds.with_untracked(plan);
        let kept = self.carry_out(&writes);
        if kept.is_ok() && !writes.is_empty() {
            self.seen.set_value(Some(text.clone()));
        }
        self.unkept.set_value(kept.is_err());
        self.note_kept(kept);
        storage::set_of_tab(ENTRIES, &text);
    }

    /// Keeps what is to be kept, in its order, up to what cannot be.
    ///
    /// # Errors
    /// Why the browser does not keep it.
    pub(super) fn carry_out(self, writes: &[Write]) -> Result<(), Refused> {
        let keep = |write: &Write| {
            let kept = storage::set(&write.key, &write.text);
            if write.is_optional() { Ok(()) } else { kept }
        };
        let kept = writes.iter().try_for_each(keep);
        if writes.iter().any(|write| !write.is_optional()) {
            self.note_kept(kept);
        }
        if writes.iter().any(Write::is_build) {
            self.read_builds();
        }
        kept
    }

    /// Notes whether something could be kept. All is well only once the entries are.
    pub(super) fn note_kept(self, kept: Result<(), Refused>) {
        if kept.is_ok() && self.unkept.get_value() {
            return;
        }
        if self.refused.with_untracked(|refused| *refused != kept.err()) {
            self.refused.set(kept.err());
        }
    }

    /// The open entries, as they are kept.
    pub(super) fn entries(self) -> StoredEntries {
        let fragment = self.document.with_untracked(fragment_of);
        StoredEntries { fragment, origin: self.origin.get_untracked() }
    }

    /// The document as a fragment; empty when nothing was entered.
    pub(crate) fn fragment(self) -> String {
        self.document.with(fragment_of)
    }

    /// The address to send: of unverified numbers one that says so where it is opened.
    pub(crate) fn link_address(self) -> String {
        let fragment = self.fragment();
        self.origin.with(|origin| address::with_fragment(unverified::to_send(&fragment, origin)))
    }

    /// The same, unless it leads to a file on this device.
    pub(crate) fn link_for_others(self) -> Option<String> {
        (!address::is_a_file()).then(|| self.link_address())
    }
}
