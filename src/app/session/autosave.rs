//! Autosave: what the library's `store` decides is written where the next visit finds it.

use super::{Session, View};
use crate::browser::{address, clock, page, storage, window};
use leptos::leptos_dom::helpers::debounce;
use leptos::prelude::*;
use linkwright::quantity::System;
use linkwright::share::{self, Sent};
use linkwright::store::stored_entries::{StoredEntries, fragment_of};
use linkwright::store::{ENTRIES, Refused, Write, autosave, logs, unverified};
use std::time::Duration;

/// The key of the unit system.
const UNITS: &str = "linkwright.units";
/// The key of the view that was open.
const VIEW: &str = "linkwright.leaf";

/// Typing has paused after this long without a key.
const PAUSE: Duration = Duration::from_millis(250);

/// The builds are read once the first answer stands there.
const FIRST_ANSWER: Duration = Duration::from_millis(30);

/// The reader's units.
pub(super) fn stored_units() -> System {
    if storage::get(UNITS).as_deref() == Some("metric") { System::Metric } else { System::Inch }
}

/// The view that was open.
pub(super) fn stored_view() -> View {
    View::of_name(&storage::get(VIEW).unwrap_or_default())
}

/// The stored entries that all tabs share; empty when there are none.
pub(super) fn shared() -> String {
    storage::get(ENTRIES).unwrap_or_default()
}

/// The entries that this tab stored for itself; empty when there are none.
pub(super) fn of_tab() -> String {
    storage::get_of_tab(ENTRIES).unwrap_or_default()
}

impl Session {
    /// Writes document, units and view where the next visit finds them.
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
        // Nothing is lost by leaving the page right after a key, or by turning to another program.
        window::on("visibilitychange", move |_| {
            self.settle();
            self.store();
        });
        window::on("pagehide", move |_| {
            page::leave_field();
            self.store();
        });
        set_timeout(move || self.read_builds(), FIRST_ANSWER);
    }

    /// Stores the entries, and writes them into the address, which a page that is being left cannot do any more.
    pub(super) fn write(self) {
        self.store();
        if page::is_live() {
            self.write_address();
        }
    }

    /// Writes the entries into the address, which somebody may send: without the order, and unverified numbers say so
    /// where it is opened.
    pub(super) fn write_address(self) {
        let fragment = self.fragment_to_send(Sent::default());
        self.origin.with_untracked(|origin| address::write_fragment(unverified::to_send(&fragment, origin)));
    }

    /// Stores the entries.
    pub(super) fn store(self) {
        self.store_entries(self.entries());
    }

    fn store_entries(self, mut own: StoredEntries) {
        // A page that has stopped set its entries aside already.
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
        // Another tab may have written since: its entries stand until something changes here.
        if !self.unsaved.get_value() && of_tab() == text {
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
        let stored = self.carry_out(&writes);
        if stored.is_ok() && !writes.is_empty() {
            self.seen.set_value(Some(text.clone()));
        }
        self.unsaved.set_value(stored.is_err());
        self.note_storage(stored);
        storage::set_of_tab(ENTRIES, &text);
    }

    /// Writes records in their order, up to the first that the browser refuses.
    ///
    /// # Errors
    /// Why the browser refused it.
    pub(crate) fn carry_out(self, writes: &[Write]) -> Result<(), Refused> {
        let write = |write: &Write| {
            let written = written(write);
            if write.is_optional() { Ok(()) } else { written }
        };
        let written = writes.iter().try_for_each(write);
        // What is taken away needs no room.
        logs::forgotten(writes).iter().for_each(|write| storage::set_quietly(&write.key, &write.text));
        if writes.iter().any(|write| !write.is_optional()) {
            self.note_storage(written);
        }
        if writes.iter().any(Write::is_build) {
            self.read_builds();
        }
        written
    }

    /// Shows the reader whether the browser refused to store something, until the entries are stored again.
    pub(super) fn note_storage(self, written: Result<(), Refused>) {
        if written.is_ok() && self.unsaved.get_value() {
            return;
        }
        if self.refused.with_untracked(|refused| *refused != written.err()) {
            self.refused.set(written.err());
        }
    }

    /// The open entries, as they are stored.
    pub(super) fn entries(self) -> StoredEntries {
        let fragment = self.document.with_untracked(fragment_of);
        StoredEntries { fragment, origin: self.origin.get_untracked() }
    }

    /// The address to send: what is made, without the order; of unverified numbers one that says so where it is opened.
    pub(crate) fn link_address(self) -> String {
        self.address_with(Sent::default())
    }

    /// The same with what of the order is ticked, unless it leads to a file on this device.
    pub(crate) fn link_with(self, what: Sent) -> Option<String> {
        (!address::is_a_file()).then(|| self.address_with(what))
    }

    fn address_with(self, what: Sent) -> String {
        self.document.track();
        let fragment = self.fragment_to_send(what);
        self.origin.with(|origin| address::with_fragment(unverified::to_send(&fragment, origin)))
    }

    pub(super) fn fragment_to_send(self, what: Sent) -> String {
        self.document.with_untracked(|document| fragment_of(&share::sent(document, what)))
    }

    /// The same, unless it leads to a file on this device.
    pub(crate) fn link_for_others(self) -> Option<String> {
        self.link_with(Sent::default())
    }
}

/// Writes a text. A copy of what was found damaged goes beside the one that was set aside before.
pub(super) fn written(write: &Write) -> Result<(), Refused> {
    if !logs::is_set_aside(&write.key) || write.text.is_empty() {
        return storage::set(&write.key, &write.text);
    }
    let before = storage::get(&write.key).unwrap_or_default();
    storage::set(&write.key, &logs::set_aside(&before, &write.text))
}
