//! A browser with two tabs, which does what the page does with what the store decides.

use linkwright::document::Document;
use linkwright::share::{self, Opened};
use linkwright::store::history::{History, Step};
use linkwright::store::opening::{self, AddressChange, Found, Open};
use linkwright::store::other_tabs::{self, Look};
use linkwright::store::saved_builds::{self, Save, SavedBuild, Target};
use linkwright::store::stored_entries::{Origin, StoredEntries, fragment_of};
use linkwright::store::{BEFORE, BUILD, ENTRIES, Stamp, Write, autosave, trash};
use std::collections::BTreeMap;

/// What all tabs share.
#[derive(Default)]
pub(crate) struct Browser {
    pub(crate) kept: BTreeMap<String, String>,
    /// Whether there is no room for a letter more.
    pub(crate) full: bool,
    count: u32,
}

impl Browser {
    pub(crate) fn read(&self, key: &str) -> String {
        self.kept.get(key).cloned().unwrap_or_default()
    }

    pub(crate) fn write(&mut self, key: &str, text: &str) -> Result<(), ()> {
        if text.is_empty() {
            self.kept.remove(key);
            return Ok(());
        }
        if self.full && text.len() > self.read(key).len() {
            return Err(());
        }
        self.kept.insert(key.to_string(), text.to_string());
        Ok(())
    }

    pub(crate) fn id(&mut self) -> String {
        self.count += 1;
        format!("id{}", self.count)
    }

    pub(crate) fn stamp(&mut self) -> Stamp {
        let id = self.id();
        let now =
            format!("2026-11-30T{:02}:{:02}:{:02}.000Z", self.count / 3600, self.count / 60 % 60, self.count % 60);
        Stamp { now, id }
    }

    /// The records of builds, of which those that were read before are not read again.
    pub(crate) fn builds(&self, before: Vec<SavedBuild>) -> Vec<SavedBuild> {
        let records = self.kept.iter().filter_map(|(key, text)| Some((key.strip_prefix(BUILD)?, text)));
        saved_builds::refresh(Some(before), records.map(|(id, text)| (id.to_string(), text.clone())).collect()).0
    }
}

/// One tab: what it shows, what it keeps for itself over a reload, and what it knows of the others.
#[derive(Default)]
pub(crate) struct Tab {
    pub(crate) address: String,
    of_tab: String,
    own_address: String,
    pub(crate) document: Document,
    pub(crate) origin: Origin,
    seen: Option<String>,
    pub(crate) before: Option<StoredEntries>,
    elsewhere: Option<StoredEntries>,
    pub(crate) unkept: bool,
    builds: Vec<SavedBuild>,
    history: History,
}

impl Tab {
    pub(crate) fn at(address: String) -> Self {
        Self { address, ..Self::default() }
    }

    pub(crate) fn entries(&self) -> StoredEntries {
        StoredEntries { fragment: fragment_of(&self.document), origin: self.origin.clone() }
    }

    /// Whether the browser keeps what is shown, as far as this tab knows.
    pub(crate) fn is_kept(&self) -> bool {
        !self.unkept && self.of_tab == self.entries().write()
    }

    fn refresh(&mut self, browser: &Browser) {
        self.builds = browser.builds(std::mem::take(&mut self.builds));
    }

    fn carry_out(&mut self, browser: &mut Browser, writes: &[Write]) -> Result<(), ()> {
        let kept = writes.iter().try_for_each(|write| {
            let kept = browser.write(&write.key, &write.text);
            if write.is_optional() { Ok(()) } else { kept }
        });
        if writes.iter().any(Write::is_build) {
            self.refresh(browser);
        }
        kept
    }

    fn noted(&mut self) {
        self.history.follow((self.document.clone(), self.origin.clone()));
        self.history.end_burst();
    }

    /// Loads the page at its address; a new tab has kept nothing for itself.
    pub(crate) fn load(&mut self, browser: &mut Browser) {
        let text = browser.kept.get(ENTRIES).cloned();
        let old = std::mem::take(self);
        *self = Self { address: old.address, of_tab: old.of_tab, own_address: old.own_address, ..Self::default() };
        self.refresh(browser);
        let opening = opening::on_load(Found {
            address: &self.address,
            own_address: &self.own_address,
            of_tab: &self.of_tab,
            shared: text.as_deref().unwrap_or_default(),
        });
        self.seen = text;
        let before = StoredEntries::read(&browser.read(BEFORE));
        self.before = Some(before).filter(|before| !before.fragment.is_empty());
        if opening.address_is_foreign {
            self.own_address.clear();
        }
        if let Some(entries) = opening.set_aside {
            self.lay_aside(browser, entries);
        }
        match opening.open {
            Open::Stored(entries) => self.take(browser, entries),
            Open::OfTab(entries) => {
                self.unkept = trash::is_unsaved(&entries, &self.builds);
                self.take(browser, entries);
            }
            Open::Link(opened, own) => self.receive(browser, &opened, own),
        }
        self.write(browser);
    }

    /// Changes the address of the page that is open.
    pub(crate) fn go_to(&mut self, browser: &mut Browser, address: &str) {
        self.address = address.to_string();
        let own = self.entries();
        match opening::on_address(address, &own) {
            AddressChange::Nothing(_) => self.write_address(),
            AddressChange::Same(_) => {}
            AddressChange::Link(opened) => {
                self.keep(browser);
                self.receive(browser, &opened, self.entries());
                self.write(browser);
            }
        }
    }

    fn receive(&mut self, browser: &mut Browser, opened: &Opened, own: StoredEntries) {
        let before = self.before.clone();
        if !own.is_as_received() {
            self.lay_aside(browser, own);
        }
        let shared = browser.read(ENTRIES);
        let received = opening::receive(opened, before.as_ref(), &shared, &self.builds, browser.id());
        self.take(browser, received.entries);
    }

    fn take(&mut self, browser: &mut Browser, entries: StoredEntries) {
        let checked = entries.checked();
        self.elsewhere = None;
        self.origin = checked.entries.origin;
        if self.origin.id.is_empty() {
            self.origin.id = browser.id();
        }
        self.document = checked.document;
        self.offer_no_longer_what_is_here();
        self.noted();
    }

    fn offer_no_longer_what_is_here(&mut self) {
        let here = fragment_of(&self.document);
        self.before = self.before.take().filter(|before| before.fragment != here);
    }

    fn set_aside(&mut self, browser: &mut Browser, entries: &StoredEntries) -> Result<(), ()> {
        self.refresh(browser);
        let writes = trash::set_aside(entries, &self.builds, &browser.stamp());
        self.carry_out(browser, &writes)
    }

    fn lay_aside(&mut self, browser: &mut Browser, own: StoredEntries) {
        self.refresh(browser);
        if !trash::is_unsaved(&own, &self.builds) {
            return;
        }
        let _ = self.set_aside(browser, &own);
        if self.set_aside(browser, &StoredEntries::read(&browser.read(BEFORE))).is_ok() {
            let _ = self.carry_out(browser, &[Write::before(own.write())]);
            self.before = Some(own);
        }
    }

    fn exchange(&mut self, browser: &mut Browser, document: Document, origin: Origin) {
        self.keep(browser);
        self.give_way(browser, document, origin);
    }

    fn give_way(&mut self, browser: &mut Browser, document: Document, origin: Origin) {
        self.lay_aside(browser, self.entries());
        self.elsewhere = None;
        (self.document, self.origin) = (document, origin);
        self.noted();
    }

    pub(crate) fn clear(&mut self, browser: &mut Browser) {
        let origin = Origin::new(browser.id());
        self.exchange(browser, Document::default(), origin);
    }

    pub(crate) fn close_offer(&mut self, browser: &mut Browser) {
        self.refresh(browser);
        let writes = trash::close_offer(&browser.read(BEFORE), &self.builds, &browser.stamp());
        let _ = self.carry_out(browser, &writes);
        self.before = None;
    }

    pub(crate) fn back_to_own(&mut self, browser: &mut Browser) {
        if let Some(own) = self.before.clone() {
            self.keep(browser);
            self.close_offer(browser);
            self.take(browser, other_tabs::newest(own, &browser.read(ENTRIES)));
        }
    }

    pub(crate) fn edit(&mut self, document: Document) {
        self.document = document;
        self.noted();
    }

    pub(crate) fn undo(&mut self, browser: &mut Browser, take: fn(&mut History, Step) -> Option<Step>) {
        let now = self.origin.clone();
        let Some((document, origin)) = take(&mut self.history, (self.document.clone(), now.clone())) else { return };
        if origin.id != now.id {
            self.keep(browser);
            self.origin = other_tabs::apart(origin, &browser.read(ENTRIES), browser.id());
        }
        self.document = document;
        self.offer_no_longer_what_is_here();
        self.noted();
    }

    fn write_address(&mut self) {
        self.address = fragment_of(&self.document);
        self.own_address.clone_from(&self.address);
    }

    /// After a pause: entries and address.
    pub(crate) fn write(&mut self, browser: &mut Browser) {
        self.keep(browser);
        self.write_address();
    }

    /// When the page is left: the entries.
    pub(crate) fn keep(&mut self, browser: &mut Browser) {
        let mut own = self.entries();
        if autosave::adopt(&own, &self.builds).is_some() {
            self.refresh(browser);
            if let Some(adopted) = autosave::adopt(&own, &self.builds) {
                own = adopted;
                self.origin = own.origin.clone();
            }
        }
        let text = own.write();
        if !self.unkept && self.of_tab == text {
            return;
        }
        let (shared, seen) = (browser.read(ENTRIES), self.seen.clone().unwrap_or_default());
        if autosave::replaces_others(&own, &shared, &seen) {
            self.refresh(browser);
        }
        let writes = autosave::keep(&own, &shared, &seen, &self.builds, &browser.stamp());
        let kept = self.carry_out(browser, &writes);
        if kept.is_ok() && !writes.is_empty() {
            self.seen = Some(text.clone());
        }
        self.unkept = kept.is_err();
        self.of_tab = text;
    }

    /// Hears that something changed in what all tabs share.
    pub(crate) fn look(&mut self, browser: &mut Browser) {
        let text = browser.kept.get(ENTRIES).cloned();
        let own = self.entries();
        match other_tabs::look(&own, &self.of_tab, self.seen.as_deref(), text.as_deref()) {
            Look::Unchanged => self.elsewhere = None,
            Look::OwnFirst => self.write(browser),
            Look::Elsewhere(other) => self.elsewhere = other,
            Look::Follow(there) => {
                self.elsewhere = None;
                self.of_tab = text.clone().unwrap_or_default();
                self.seen = text;
                self.origin = there.entries.origin;
                self.document = there.document;
                self.noted();
            }
        }
    }

    /// Shows what the other tab has open.
    pub(crate) fn join(&mut self, browser: &mut Browser) {
        if self.elsewhere.take().is_none() {
            return;
        }
        let text = browser.read(ENTRIES);
        let there = StoredEntries::read(&text).checked();
        if !there.entries.fragment.is_empty() {
            self.give_way(browser, there.document, there.entries.origin);
            self.of_tab.clone_from(&text);
            self.seen = Some(text);
        }
    }

    /// Saves; true when it was.
    pub(crate) fn save(&mut self, browser: &mut Browser, target: Target) -> bool {
        self.refresh(browser);
        if self.document == Document::default() {
            return false;
        }
        let save = saved_builds::save(&self.document, &self.origin, target, &self.builds, &browser.stamp());
        let Some(Save { build, origin, .. }) = save else { return false };
        if self.carry_out(browser, &[Write::build(&build)]).is_err() {
            return false;
        }
        (self.document, self.origin) = (build.document, origin);
        self.noted();
        true
    }

    pub(crate) fn open(&mut self, browser: &mut Browser, saved: &SavedBuild) {
        let (document, origin) = saved_builds::open(saved, None, browser.id());
        self.exchange(browser, document, origin);
    }

    pub(crate) fn delete(&mut self, browser: &mut Browser, saved: &SavedBuild) {
        let writes = trash::delete(saved, &browser.stamp().now);
        if self.carry_out(browser, &writes).is_ok()
            && let Some(origin) = trash::leave_build(&self.origin, &saved.build.id)
        {
            self.origin = origin;
        }
    }

    pub(crate) fn restore(&mut self, browser: &mut Browser, saved: &SavedBuild) {
        self.refresh(browser);
        let (_, writes) = trash::restore(saved, &self.builds, browser.id());
        let _ = self.carry_out(browser, &writes);
    }
}

/// A document but for its name, which a number may follow.
pub(crate) fn nameless(document: &Document) -> String {
    share::to_fragment(&Document { name: String::new(), ..document.clone() })
}

/// The same of a fragment.
pub(crate) fn nameless_fragment(fragment: &str) -> String {
    nameless(&share::from_fragment(fragment).document)
}
