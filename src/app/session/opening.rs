//! Opening entries from the address or from storage, and setting aside those that were open.

use super::autosave::{of_tab, shared};
use super::{Session, View};
use crate::browser::address::{self, OWN_ADDRESS};
use crate::browser::{clock, page, storage};
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::share::{self, Opened};
use linkwright::store::opening::{self, AddressChange, Found, Open};
use linkwright::store::other_tabs;
use linkwright::store::stored_entries::{Checked, Origin, StoredEntries, fragment_of};
use linkwright::store::{BEFORE, DAMAGED, ENTRIES, Refused, Write, logs, trash, unverified};

/// The stored entries that are offered as the reader's own earlier ones; empty when there are none.
fn offered() -> String {
    storage::get(BEFORE).unwrap_or_default()
}

impl Session {
    /// Opens the link in the address when the page is loaded; else the stored entries.
    pub(super) fn open_at_load(self) {
        let text = storage::get(ENTRIES);
        let before = StoredEntries::read(&offered());
        let opening = opening::on_load(Found {
            address: &address::fragment(),
            own_address: &storage::get_of_tab(OWN_ADDRESS).unwrap_or_default(),
            of_tab: &of_tab(),
            shared: text.as_deref().unwrap_or_default(),
        });
        self.seen.set_value(text);
        self.earlier.set(Some(before).filter(|before| !before.fragment.is_empty()));
        if opening.address_is_foreign {
            storage::set_of_tab(OWN_ADDRESS, "");
        }
        self.notices.set(opening.notices);
        if let Some(entries) = opening.set_aside {
            self.set_aside_and_offer(entries);
        }
        match opening.open {
            Open::Stored(entries) => self.take(entries),
            Open::OfTab(entries) => {
                self.unsaved.set_value(self.with_builds(|builds| trash::is_unsaved(&entries, builds)));
                self.take(entries);
            }
            Open::Link(opened, own) => self.receive(&opened, own),
        }
    }

    /// The address was changed while the page is open: by a link, by the reader, by a way back.
    pub(super) fn address_changed(self) {
        if self.is_at_own_step() {
            return;
        }
        let own = self.entries();
        match opening::on_address(&address::fragment(), &own) {
            AddressChange::Nothing(notices) => {
                self.notices.set(notices);
                self.write_address();
            }
            AddressChange::Same(notices) => self.notices.set(notices),
            AddressChange::Link(opened) => {
                self.notices.set(Vec::new());
                self.begin_visit();
                self.store();
                self.receive(&opened, self.entries());
                // At once: a second step back would find the address of the first one written over.
                self.write();
            }
        }
    }

    /// Opens a link in the place of what is the reader's own.
    fn receive(self, opened: &Opened, own: StoredEntries) {
        let before = self.earlier.get_untracked();
        if !own.is_as_received() || !self.log_text(logs::id(&own.origin)).is_empty() {
            self.set_aside_and_offer(own);
        }
        let received =
            self.with_builds(|builds| opening::receive(opened, before.as_ref(), &shared(), builds, clock::fresh_id()));
        if received.is_new {
            self.view.set(View::to_receive(&opened.document));
        }
        let (log, notice) = opening::brought_log(opened, &received);
        // Where the browser refuses, a notice says so.
        let _ = self.carry_out(&logs::received(&received.entries.origin, log));
        self.take(received.entries);
        self.notices.update(|notices| notices.extend(notice.map(str::to_string)));
        if opened.recalculated {
            self.notices.update(|notices| notices.push(share::RECALCULATED.to_string()));
        }
    }

    /// Opens stored entries.
    fn take(self, entries: StoredEntries) {
        let checked = self.check(entries);
        if checked.recalculated {
            self.notices.update(|notices| notices.push(share::RECALCULATED.to_string()));
        }
        self.other_tab.set(None);
        let origin = checked.entries.origin;
        let id = if origin.id.is_empty() { clock::fresh_id() } else { origin.id };
        self.origin.set(Origin { id, ..origin });
        self.replace(checked.document);
        self.withdraw_open_offer();
    }

    /// Reads stored entries; damaged ones are stored once more as they were found.
    pub(super) fn check(self, entries: StoredEntries) -> Checked {
        let checked = entries.checked();
        if let Some(damaged) = &checked.damaged {
            storage::set_quietly(DAMAGED, damaged);
        }
        checked
    }

    /// Withdraws the offer of earlier entries that are open again.
    pub(super) fn withdraw_open_offer(self) {
        let here = |before: &StoredEntries| before.fragment == self.document.with_untracked(fragment_of);
        if self.earlier.with_untracked(|before| before.as_ref().is_some_and(here)) {
            self.earlier.set(None);
        }
    }

    /// Puts entries into the trash, unless a record holds them already.
    ///
    /// # Errors
    /// When the browser has no room for them: then they must not be written over where they stand.
    fn set_aside(self, entries: &StoredEntries) -> Result<(), Refused> {
        // What was read before may be older than what happened in other tabs since.
        self.read_builds();
        let writes = self.with_builds(|builds| trash::set_aside(entries, builds, &clock::stamp()));
        self.carry_out(&writes)?;
        let log = self.log_text(logs::id(&entries.origin));
        self.carry_out(&logs::along(&writes, &log))
    }

    /// Offers entries as the reader's own earlier ones; those that were offered before go to the trash.
    fn offer(self, entries: StoredEntries) {
        if self.set_aside(&StoredEntries::read(&offered())).is_ok() {
            // Where the browser refuses, a notice says so, and the offer stands as long as the page.
            let _ = self.carry_out(&[Write::before(entries.write())]);
            self.earlier.set(Some(entries));
        }
    }

    /// Sets entries aside that something else takes the place of, and offers them, unless a build holds them.
    fn set_aside_and_offer(self, own: StoredEntries) {
        self.read_builds();
        if self.with_builds(|builds| trash::is_unsaved(&own, builds)) {
            // Without room in the trash the entries stay stored where they are.
            let _ = self.set_aside(&own);
            self.offer(own);
        } else if own.origin.build.is_none() {
            self.log_joins_its_holder(&own);
        }
    }

    /// Opens something else; what was open is set aside and offered.
    pub(crate) fn exchange(self, document: Document, origin: Origin) {
        // Stored first, so that no older state of the same entries is set aside too.
        self.store();
        self.give_way(document, origin);
    }

    pub(super) fn give_way(self, document: Document, origin: Origin) {
        self.set_aside_and_offer(self.entries());
        self.notices.set(Vec::new());
        self.other_tab.set(None);
        self.origin.set(origin);
        self.replace(document);
    }

    /// Empties the form; what was in it is set aside.
    pub(crate) fn clear(self) {
        self.exchange(Document::default(), Origin::new(clock::fresh_id()));
    }

    /// Offers the entries that were set aside no longer; they stay in the trash.
    pub(crate) fn close_offer(self) {
        self.read_builds();
        let writes = self.with_builds(|builds| trash::close_offer(&offered(), builds, &clock::stamp()));
        // Where there is no room in the trash they stay where they are.
        let _ = self.carry_out(&writes);
        self.earlier.set(None);
    }

    /// Returns to the entries from before a link was opened.
    pub(crate) fn back_to_own(self) {
        if let Some(own) = self.earlier.get_untracked() {
            // What was typed a moment ago must be among the entries that are set aside.
            self.settle();
            self.store();
            self.close_offer();
            self.notices.set(Vec::new());
            self.take(other_tabs::newest(own, &shared()));
            page::show("answer");
        }
    }

    /// Marks the numbers as verified: the reader has compared them.
    pub(crate) fn mark_compared(self) {
        let mut own = self.entries();
        let saved = own.origin.build.as_ref().and_then(|id| self.saved_build(id)).filter(|saved| !saved.damaged);
        let build = unverified::verify(&own.fragment, &mut own.origin, saved.map(|saved| saved.build));
        self.origin.set(own.origin);
        if let Some(build) = build {
            // Where the browser refuses, a notice says so, and the build asks again when it is opened.
            let _ = self.carry_out(&[Write::build(&build)]);
        }
    }
}
