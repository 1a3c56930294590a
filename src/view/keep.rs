//! How the entries outlive the page: in the address, in what the browser keeps, and beside another tab. What is to be
//! kept, and what gives way to what, is decided in the library's `store`; here it is read and written.

use super::changing::{Changing, Pause, whenever};
use super::moments::{after, at_window};
use super::state::{Bench, Leaf};
use super::storage::{self, ADDRESS, LEAF, TICKS, Trouble, UNITS};
use linkwright::differences::followed;
use linkwright::document::Document;
use linkwright::quantity::System;
use linkwright::share::{self, Opened};
use linkwright::store::opening::{self, AddressChange, Found, Open};
use linkwright::store::other_tabs::{self, Look};
use linkwright::store::stored_entries::{Checked, Origin, StoredEntries, fragment_of};
use linkwright::store::{BEFORE, BUILD, DAMAGED, ENTRIES, Write, autosave, trash, unverified};
use std::time::Duration;

/// What all tabs share of the entries; empty when there is nothing.
fn shared() -> String {
    storage::kept(ENTRIES).unwrap_or_default()
}

/// What this tab kept of them.
fn of_tab() -> String {
    storage::of_tab(ENTRIES).unwrap_or_default()
}

impl Bench {
    /// Takes what the address brings when the page opens; else what was kept.
    pub(super) fn arrive(self) {
        let text = storage::kept(ENTRIES);
        let before = StoredEntries::read(&storage::kept(BEFORE).unwrap_or_default());
        let opening = opening::on_load(Found {
            address: &storage::fragment(),
            own_address: &storage::of_tab(ADDRESS).unwrap_or_default(),
            of_tab: &of_tab(),
            shared: text.as_deref().unwrap_or_default(),
        });
        self.seen.set(text);
        self.before.set(Some(before).filter(|before| !before.fragment.is_empty()));
        if opening.address_is_foreign {
            storage::keep_of_tab(ADDRESS, "");
        }
        self.told.set(opening.notices);
        if let Some(entries) = opening.set_aside {
            self.lay_aside(entries);
        }
        match opening.open {
            Open::Stored(entries) => self.take(entries),
            Open::OfTab(entries) => {
                self.unkept.set(self.records(|builds| trash::is_unsaved(&entries, builds)));
                self.take(entries);
            }
            Open::Link(opened, own) => self.receive(&opened, own),
        }
    }

    /// The address was changed while the page is open: by a link, by the reader, by a way back.
    pub(super) fn address_changed(self) {
        let own = self.entries();
        match opening::on_address(&storage::fragment(), &own) {
            AddressChange::Nothing(notices) => {
                self.told.set(notices);
                storage::write_fragment(&own.fragment);
            }
            AddressChange::Same(notices) => self.told.set(notices),
            AddressChange::Link(opened) => {
                self.told.set(Vec::new());
                self.keep();
                self.receive(&opened, self.entries());
                // At once: a second step back would find the address of the first one written over.
                self.write();
            }
        }
    }

    /// Puts a link on the bench, in the place of what is the reader's own.
    fn receive(self, opened: &Opened, own: StoredEntries) {
        let before = self.before.get_untracked();
        if !own.is_as_received() {
            self.lay_aside(own);
        }
        let received =
            self.records(|builds| opening::receive(opened, before.as_ref(), &shared(), builds, storage::fresh_id()));
        if received.is_new {
            self.leaf.set(Leaf::to_open(&opened.document));
        }
        self.take(received.entries);
        if opened.recalculated {
            self.told.update(|told| told.push(share::RECALCULATED.to_string()));
        }
    }

    /// Puts kept entries on the bench.
    fn take(self, entries: StoredEntries) {
        let checked = self.check(entries);
        if checked.recalculated {
            self.told.update(|told| told.push(share::RECALCULATED.to_string()));
        }
        self.elsewhere.set(None);
        let origin = checked.entries.origin;
        let id = if origin.id.is_empty() { storage::fresh_id() } else { origin.id };
        self.origin.set(Origin { id, ..origin });
        self.replace(checked.document);
        self.offer_no_longer_what_is_here();
    }

    /// Reads kept entries; what was damaged is kept as it was found.
    fn check(self, entries: StoredEntries) -> Checked {
        let checked = entries.checked();
        if let Some(damaged) = &checked.damaged {
            storage::keep_quietly(DAMAGED, damaged);
        }
        checked
    }

    /// Nobody is offered what stands before them.
    pub(super) fn offer_no_longer_what_is_here(self) {
        let here = |before: &StoredEntries| before.fragment == self.document.with_untracked(fragment_of);
        if self.before.with_untracked(|before| before.as_ref().is_some_and(here)) {
            self.before.set(None);
        }
    }

    /// Puts entries into the trash, unless a record holds them already.
    ///
    /// # Errors
    /// When the browser has no room for them: then they must not be written over where they stand.
    fn set_aside(self, entries: &StoredEntries) -> Result<(), Trouble> {
        // What was read before may be older than what happened in other tabs since.
        self.read_shelf();
        let writes = self.records(|builds| trash::set_aside(entries, builds, &storage::stamp()));
        self.carry_out(&writes)
    }

    /// Offers entries as the reader's own earlier ones; those that were offered before go to the trash.
    fn offer(self, entries: StoredEntries) {
        if self.set_aside(&StoredEntries::read(&storage::kept(BEFORE).unwrap_or_default())).is_ok() {
            // Where it cannot be kept that is told, and the offer stands as long as the page.
            let _ = self.carry_out(&[Write::before(entries.write())]);
            self.before.set(Some(entries));
        }
    }

    /// Sets entries aside that something else takes the place of, and offers them, unless a build holds them.
    fn lay_aside(self, own: StoredEntries) {
        self.read_shelf();
        if self.records(|builds| trash::is_unsaved(&own, builds)) {
            // What finds no room here is not written over where it stands.
            let _ = self.set_aside(&own);
            self.offer(own);
        }
    }

    /// Puts something else on the bench; what was on it is set aside and offered.
    pub(super) fn exchange(self, document: Document, origin: Origin) {
        // What is set aside is then what is kept, and no older state of it is set aside on top of it.
        self.keep();
        self.give_way(document, origin);
    }

    fn give_way(self, document: Document, origin: Origin) {
        self.lay_aside(self.entries());
        self.told.set(Vec::new());
        self.elsewhere.set(None);
        self.origin.set(origin);
        self.replace(document);
    }

    /// Empties the form; what was in it is set aside.
    pub(super) fn clear(self) {
        self.exchange(Document::default(), Origin::new(storage::fresh_id()));
    }

    /// Offers the entries that were set aside no longer; they stay in the trash.
    pub(super) fn forget_earlier(self) {
        self.read_shelf();
        let before = storage::kept(BEFORE).unwrap_or_default();
        let writes = self.records(|builds| trash::close_offer(&before, builds, &storage::stamp()));
        // Where there is no room in the trash they stay where they are.
        let _ = self.carry_out(&writes);
        self.before.set(None);
    }

    /// Returns to the entries from before a link was opened.
    pub(super) fn back_to_own(self) {
        if let Some(own) = self.before.get_untracked() {
            // What was typed a moment ago as well: what is kept is set aside when other entries take its place.
            self.settle();
            self.keep();
            self.forget_earlier();
            self.told.set(Vec::new());
            self.take(other_tabs::newest(own, &shared()));
            storage::show("answer");
        }
    }

    /// The reader has compared the numbers.
    pub(super) fn clear_doubt(self) {
        let mut own = self.entries();
        let saved = own.origin.build.as_ref().and_then(|id| self.record(id)).filter(|saved| !saved.damaged);
        let build = unverified::verify(&own.fragment, &mut own.origin, saved.map(|saved| saved.build));
        self.origin.set(own.origin);
        if let Some(build) = build {
            // Where it cannot be kept, it is told, and the build says so again when it is opened.
            let _ = self.carry_out(&[Write::build(&build)]);
        }
    }

    /// Writes document, units and ticks where the next visit finds them.
    pub(super) fn save_on_change(self) {
        // A browser takes longer to change its address than the engine to size a link, so that waits for a pause.
        let pause = Pause::new();
        self.pace.whenever(move || {
            self.document.track();
            self.origin.track();
            self.shelf.track();
            pause.after(PAUSE, move || self.write());
        });
        whenever(move |_| {
            storage::keep_quietly(UNITS, if self.system.get() == System::Metric { "metric" } else { "" });
        });
        whenever(move |_| {
            let leaf = self.leaf.get();
            let name = Leaf::NAMES.into_iter().find(|(other, _)| *other == leaf).map_or("", |(_, name)| name);
            storage::keep_quietly(LEAF, name);
        });
        whenever(move |_| storage::keep_quietly(TICKS, &self.ticks.get().join("\n")));
        // Whoever leaves right after a key, or turns to another program, loses nothing.
        at_window("visibilitychange", move |_| {
            self.settle();
            self.keep();
        });
        at_window("pagehide", move |_| {
            storage::leave_field();
            self.keep();
        });
        // Not before the first answer stands there.
        after(Duration::from_millis(30), move || self.read_shelf());
    }

    /// Keeps the entries, in the address too; that a page which is being left cannot change.
    fn write(self) {
        let own = self.entries();
        self.keep_entries(own.clone());
        if storage::is_live() {
            storage::write_fragment(&own.fragment);
        }
    }

    /// Keeps the entries.
    pub(super) fn keep(self) {
        self.keep_entries(self.entries());
    }

    fn keep_entries(self, mut own: StoredEntries) {
        // What a page that has stopped still holds was set aside already.
        if !storage::is_live() {
            return;
        }
        let adopted = |own: &StoredEntries| {
            self.shelf.with_untracked(|shelf| autosave::adopt(own, shelf.as_deref().unwrap_or_default()))
        };
        if adopted(&own).is_some() {
            // Another tab may have deleted the build a moment ago.
            self.read_shelf();
            if let Some(adopted) = adopted(&own) {
                own = adopted;
                self.origin.set(own.origin.clone());
            }
        }
        let text = own.write();
        // What this tab has written already may have given way to another tab's since: that stands until something changes.
        if !self.unkept.get_untracked() && of_tab() == text {
            return;
        }
        let (shared, seen) = (shared(), self.seen.get_untracked().unwrap_or_default());
        if autosave::replaces_others(&own, &shared, &seen) {
            self.read_shelf();
        }
        let plan = |shelf: &Option<Vec<_>>| {
            autosave::keep(&own, &shared, &seen, shelf.as_deref().unwrap_or_default(), &storage::stamp())
        };
        let writes = self.shelf.with_untracked(plan);
        let kept = self.carry_out(&writes);
        if kept.is_ok() && !writes.is_empty() {
            self.seen.set(Some(text.clone()));
        }
        self.unkept.set(kept.is_err());
        self.note(kept);
        storage::keep_of_tab(ENTRIES, &text);
    }

    /// Keeps what is to be kept, in its order, up to what cannot be.
    ///
    /// # Errors
    /// Why the browser does not keep it.
    pub(super) fn carry_out(self, writes: &[Write]) -> Result<(), Trouble> {
        let keep = |write: &Write| {
            let kept = storage::keep(&write.key, &write.text);
            if write.is_optional() { Ok(()) } else { kept }
        };
        let kept = writes.iter().try_for_each(keep);
        if writes.iter().any(|write| !write.is_optional()) {
            self.note(kept);
        }
        if writes.iter().any(Write::is_build) {
            self.read_shelf();
        }
        kept
    }

    /// Notes whether something could be kept. All is well only once the entries are.
    pub(super) fn note(self, kept: Result<(), Trouble>) {
        if kept.is_ok() && self.unkept.get_untracked() {
            return;
        }
        if self.trouble.with_untracked(|trouble| *trouble != kept.err()) {
            self.trouble.set(kept.err());
        }
    }

    /// What is on the bench, as it is kept.
    pub(super) fn entries(self) -> StoredEntries {
        let fragment = self.document.with_untracked(fragment_of);
        StoredEntries { fragment, origin: self.origin.get_untracked() }
    }

    /// The document as a fragment; empty when nothing was entered.
    pub(super) fn fragment(self) -> String {
        self.document.with(fragment_of)
    }

    /// The address to send: of unverified numbers one that says so where it is opened.
    pub(super) fn link(self) -> String {
        let fragment = self.fragment();
        self.origin.with(|origin| storage::address(unverified::to_send(&fragment, origin)))
    }

    /// The same, unless it leads to a file on this device.
    pub(super) fn link_for_others(self) -> Option<String> {
        (!storage::is_a_file()).then(|| self.link())
    }

    /// Follows another tab that works on the same thing, and notices one that works on another.
    pub(super) fn mind_other_tabs(self) {
        // A file that another tab takes in comes build by build.
        let waits = Changing::new(false);
        let read_soon = move || {
            if !waits.get_untracked() {
                waits.set(true);
                let read = move || {
                    waits.set(false);
                    self.read_shelf();
                };
                after(Duration::from_millis(100), read);
            }
        };
        at_window("storage", move |event| match storage::changed_key(&event).as_deref() {
            Some(ENTRIES) => self.look_across(),
            Some(key) if key.is_empty() || key.starts_with(BUILD) => read_soon(),
            _ => {}
        });
        // A page that a way back brings to life again has heard nothing meanwhile.
        at_window("pageshow", move |_| self.look_across());
    }

    /// What is kept now counts, not what the event says: it may be older than this tab's own last entry.
    fn look_across(self) {
        let text = storage::kept(ENTRIES);
        let own = self.entries();
        let seen = self.seen.get_untracked();
        match other_tabs::look(&own, &of_tab(), seen.as_deref(), text.as_deref()) {
            Look::Unchanged => self.elsewhere.set(None),
            Look::OwnFirst => self.write(),
            Look::Elsewhere(other) => self.elsewhere.set(other),
            Look::Follow(there) => {
                self.elsewhere.set(None);
                self.saw(text);
                if let Some(damaged) = &there.damaged {
                    storage::keep_quietly(DAMAGED, damaged);
                }
                if there.entries.origin != own.origin {
                    self.origin.set(there.entries.origin);
                }
                if there.entries.fragment != own.fragment {
                    self.follow(there.document);
                }
            }
        }
    }

    /// Notes what all tabs share. What came from there is not written back: it may have gone on already.
    fn saw(self, text: Option<String>) {
        storage::keep_of_tab(ENTRIES, text.as_deref().unwrap_or_default());
        self.seen.set(text);
    }

    /// Takes over another state of the same work; what is half typed here stays if it still fits.
    pub(super) fn follow(self, document: Document) {
        let at = self.at.get_untracked();
        let there = self.document.with_untracked(|now| followed(now, &document, at));
        if there.is_none() && matches!(self.leaf.get_untracked(), Leaf::Size | Leaf::Prove) && document.links.len() > 1
        {
            // The link on the bench is gone: never another one in its place, unnoticed.
            self.leaf.set(Leaf::Rig);
        }
        self.at.set(there.unwrap_or(0));
        self.document.set(document);
    }

    /// Shows here what the other tab holds.
    pub(super) fn join(self) {
        let text = storage::kept(ENTRIES);
        let there = self.check(StoredEntries::read(text.as_deref().unwrap_or_default()));
        self.elsewhere.set(None);
        if !there.entries.fragment.is_empty() {
            self.give_way(there.document, there.entries.origin);
            self.saw(text);
        }
    }
}

/// A pause that long means that nobody is typing.
const PAUSE: Duration = Duration::from_millis(250);
