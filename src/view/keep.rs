//! How the entries outlive the page: in the address, in what the browser keeps, and beside another tab.

use super::changing::{Changing, Pause, whenever};
use super::held::{Held, Work};
use super::moments::{after, at_window};
use super::shelf::Kept;
use super::state::{Bench, Leaf};
use super::storage::{self, ADDRESS, BEFORE, ENTRIES, LEAF, TICKS, Trouble, UNITS};
use linkwright::differences::followed;
use linkwright::document::Document;
use linkwright::quantity::System;
use linkwright::share::{self, Opened};
use std::time::Duration;

impl Bench {
    /// Takes what the address brings when the page opens; else what was kept.
    pub(super) fn arrive(self) {
        let brought = storage::fragment();
        let opened = share::from_fragment(&brought);
        let text = storage::kept(ENTRIES);
        let there = text.as_deref().map(Held::read).unwrap_or_default();
        self.seen.set(text);
        self.before.set(Some(Held::kept(BEFORE)).filter(|before| !before.fragment.is_empty()));
        if brought.is_empty() || opened.document == Document::default() {
            // A link that brings nothing leaves the entries alone.
            self.told.set(if brought.is_empty() { Vec::new() } else { opened.told });
            self.take(there);
            return;
        }
        let plain = share::to_fragment(&opened.document);
        let tab = storage::of_tab(ENTRIES).map(|text| Held::read(&text)).unwrap_or_default();
        // The same page loaded anew, from an address that it wrote itself.
        let again =
            !tab.fragment.is_empty() && (tab.fragment == plain || storage::of_tab(ADDRESS).as_ref() == Some(&brought));
        if !again {
            // What this tab wrote before is no longer its address, also if it is left before it writes the new one.
            storage::keep_of_tab(ADDRESS, "");
        }
        if there.fragment == plain && !again {
            self.told.set(if there.work.doubt.is_empty() { opened.told } else { Vec::new() });
            self.take(there);
        } else if !again {
            self.receive(opened, there);
        } else if tab.work.id != there.work.id {
            // Another tab works on something else meanwhile.
            self.take(tab);
        } else {
            // This tab may have slept or gone back while another one went on with the same work.
            if tab.fragment != there.fragment {
                self.lay_aside(tab);
            }
            self.take(there);
        }
    }

    /// The address was changed while the page is open: by a link, by the reader, by a way back.
    pub(super) fn address_changed(self) {
        let brought = storage::fragment();
        let opened = share::from_fragment(&brought);
        let own = self.held();
        if opened.document == Document::default() {
            // Nothing came: what is on the bench stays, and the address says so again.
            self.told.set(if brought.is_empty() { Vec::new() } else { opened.told });
            storage::write_fragment(&own.fragment);
        } else if own.fragment == share::to_fragment(&opened.document) {
            self.told.set(opened.told);
        } else {
            self.told.set(Vec::new());
            self.receive(opened, own);
            // At once: a second step back would find the address of the first one written over.
            self.write();
        }
    }

    /// Puts a link on the bench, in the place of what is the reader's own.
    fn receive(self, opened: Opened, own: Held) {
        let plain = share::to_fragment(&opened.document);
        let before = self.before.get_untracked().filter(|before| before.fragment == plain);
        if !own.is_as_received() {
            self.lay_aside(own);
        }
        let before = before.map(|before| self.newest(before));
        let recalculated = opened.recalculated;
        self.take(before.unwrap_or_else(|| {
            let mut work = Work { base: plain.clone(), doubt: opened.told, ..Work::fresh() };
            // The address of doubtful numbers says nothing of it; what holds them here may.
            self.doubts_of(&plain).iter().for_each(|doubt| work.doubt(doubt));
            self.leaf.set(Leaf::to_open(&opened.document));
            Held { fragment: plain, work }
        }));
        if recalculated {
            self.told.update(|told| told.push(share::RECALCULATED.to_string()));
        }
    }

    /// Puts kept entries on the bench.
    fn take(self, held: Held) {
        let (held, document, recalculated) = held.checked();
        if recalculated {
            self.told.update(|told| told.push(share::RECALCULATED.to_string()));
        }
        self.elsewhere.set(None);
        self.work.set(if held.work.id.is_empty() { Work::fresh() } else { held.work });
        self.replace(document);
        self.offer_no_longer_what_is_here();
    }

    /// Nobody is offered what stands before them.
    pub(super) fn offer_no_longer_what_is_here(self) {
        let here = |before: &Held| before.fragment == self.document.with_untracked(fragment_of);
        if self.before.with_untracked(|before| before.as_ref().is_some_and(here)) {
            self.before.set(None);
        }
    }

    /// Offers entries as the reader's own earlier ones; those that were offered before go to the bin.
    fn offer(self, held: Held) {
        if self.set_aside(&Held::kept(BEFORE)).is_ok() {
            self.note(storage::keep(BEFORE, &held.write()));
            self.before.set(Some(held));
        }
    }

    /// The same work as another tab holds it by now, if one does.
    fn newest(self, held: Held) -> Held {
        let there = Held::kept(ENTRIES);
        if there.work.id == held.work.id { there } else { held }
    }

    /// Work that takes an old state up again, apart from a tab that went on with it.
    pub(super) fn apart(self, work: Work) -> Work {
        if Held::kept(ENTRIES).work.id == work.id { Work { id: storage::fresh_id(), ..work } } else { work }
    }

    /// What makes the same entries doubtful where they are kept.
    fn doubts_of(self, fragment: &str) -> Vec<String> {
        let doubts = |kept: &Kept| kept.build.doubt.clone();
        let same = |kept: &&Kept| !kept.damaged && kept.fragment == fragment;
        self.records(|records| records.iter().filter(same).flat_map(doubts).collect())
    }

    /// Sets entries aside that something else takes the place of, and offers them, unless a build holds them.
    fn lay_aside(self, own: Held) {
        // What was read before may be older than what happened in other tabs since.
        self.read_shelf();
        if !own.fragment.is_empty() && !self.is_saved(&own.fragment) {
            // What finds no room here is not written over where it stands.
            let _ = self.set_aside(&own);
            self.offer(own);
        }
    }

    /// Puts something else on the bench; what was on it is set aside and offered.
    pub(super) fn exchange(self, document: Document, work: Work) {
        self.lay_aside(self.held());
        self.told.set(Vec::new());
        self.elsewhere.set(None);
        self.work.set(work);
        self.replace(document);
    }

    /// Empties the form; what was in it is set aside.
    pub(super) fn clear(self) {
        self.exchange(Document::default(), Work::fresh());
    }

    /// Offers the entries that were set aside no longer; they stay in the bin.
    pub(super) fn forget_earlier(self) {
        if self.set_aside(&Held::kept(BEFORE)).is_ok() {
            storage::keep_quietly(BEFORE, "");
        }
        self.before.set(None);
    }

    /// Returns to the entries from before a link was opened.
    pub(super) fn back_to_own(self) {
        if let Some(own) = self.before.get_untracked() {
            self.forget_earlier();
            self.told.set(Vec::new());
            self.take(self.newest(own));
            storage::show("answer");
        }
    }

    /// The reader has compared the numbers.
    pub(super) fn clear_doubt(self) {
        let held = self.held();
        self.work.update(|work| work.doubt.clear());
        // The build itself is as sound as what equals it.
        let record = held.work.build.as_ref().and_then(|id| self.record(id));
        if let Some(mut kept) = record.filter(|kept| !kept.damaged && kept.fragment == held.fragment) {
            kept.build.doubt.clear();
            // Where it cannot be kept, it is told, and the doubt comes back with the build.
            let _ = self.put(&kept.build);
        }
    }

    /// Writes document, units and ticks where the next visit finds them.
    pub(super) fn save_on_change(self) {
        // A browser takes longer to change its address than the engine to size a link, so that waits for a pause.
        let pause = Pause::new();
        self.pace.whenever(move || {
            self.document.track();
            self.work.track();
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
        let held = self.held();
        self.keep_held(held.clone());
        if storage::is_live() {
            storage::write_fragment(&held.fragment);
        }
    }

    /// Keeps the entries.
    fn keep(self) {
        self.keep_held(self.held());
    }

    fn keep_held(self, mut held: Held) {
        // What a page that has stopped still holds was set aside already.
        if !storage::is_live() {
            return;
        }
        // What equals a saved build, or an earlier version of it, is that build, whichever way it came here.
        if held.work.build.is_none() && !held.fragment.is_empty() {
            let same = self.shelf.with_untracked(|shelf| {
                let open = || shelf.iter().flatten().filter(|kept| kept.lies_open());
                let same = open().find(|kept| kept.fragment == held.fragment);
                let same = same.or_else(|| open().find(|kept| kept.was(&held.fragment)));
                same.map(|kept| kept.build.id.clone())
            });
            // Another tab may have deleted it a moment ago.
            if let Some(kept) = same.and_then(|id| self.record(&id)).filter(Kept::lies_open) {
                if kept.fragment == held.fragment {
                    kept.build.doubt.iter().for_each(|doubt| held.work.doubt(doubt));
                }
                held.work = Work { build: Some(kept.build.id), base: kept.fragment, ..held.work };
                self.work.set(held.work.clone());
            }
        }
        let text = held.write();
        // What this tab has written already may have given way to another tab's since: that stands until something changes.
        if self.unkept.get_untracked() || storage::of_tab(ENTRIES).unwrap_or_default() != text {
            let kept = self.keep_entries(&held, &text);
            self.unkept.set(kept.is_err());
            self.note(kept);
            storage::keep_of_tab(ENTRIES, &text);
        }
    }

    /// Keeps the entries for every tab. What is there and was not seen here, or is other work, is set aside first.
    fn keep_entries(self, held: &Held, text: &str) -> Result<(), Trouble> {
        let there = storage::kept(ENTRIES).unwrap_or_default();
        if there == text {
            return Ok(());
        }
        let other = Held::read(&there);
        let unseen = self.seen.with_untracked(|seen| seen.as_deref().unwrap_or_default() != there);
        if (unseen || other.work.id != held.work.id) && other.fragment != held.fragment {
            self.set_aside(&other)?;
        }
        storage::keep(ENTRIES, text)?;
        self.seen.set(Some(text.to_string()));
        Ok(())
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
    pub(super) fn held(self) -> Held {
        Held { fragment: self.document.with_untracked(fragment_of), work: self.work.get_untracked() }
    }

    /// The document as a fragment; empty when nothing was entered.
    pub(super) fn fragment(self) -> String {
        self.document.with(fragment_of)
    }

    /// The address to send: of numbers in doubt one that says so where it is opened, until somebody compared them.
    pub(super) fn link(self) -> String {
        let doubtful = self.work.with(|work| !work.doubt.is_empty());
        let fragment = self.fragment();
        storage::address(if doubtful { share::unchecked(&fragment) } else { &fragment })
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
            Some(key) if key.is_empty() || key.starts_with(storage::BUILD) => read_soon(),
            _ => {}
        });
        // A page that a way back brings to life again has heard nothing meanwhile.
        at_window("pageshow", move |_| self.look_across());
    }

    /// What is kept now counts, not what the event says: it may be older than this tab's own last entry.
    fn look_across(self) {
        let text = storage::kept(ENTRIES);
        if self.seen.with_untracked(|seen| *seen == text) {
            self.elsewhere.set(None);
            return;
        }
        let there = text.as_deref().map(Held::read).unwrap_or_default();
        let (there, document, _) = there.checked();
        let own = self.held();
        if storage::of_tab(ENTRIES).unwrap_or_default() != own.write() {
            // What was typed here a moment ago comes first; what is there is set aside, and the other tab follows.
            self.write();
            return;
        }
        if there.work.id != own.work.id {
            let other = !there.fragment.is_empty() && there.fragment != own.fragment;
            self.elsewhere.set(other.then_some(there));
            return;
        }
        self.elsewhere.set(None);
        self.saw(text);
        if there.work != own.work {
            self.work.set(there.work.clone());
        }
        if there.fragment != own.fragment {
            self.follow(document);
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
        let there = text.as_deref().map(Held::read).unwrap_or_default();
        let (there, document, _) = there.checked();
        self.elsewhere.set(None);
        if !there.fragment.is_empty() {
            self.exchange(document, there.work);
            self.saw(text);
        }
    }
}

/// A pause that long means that nobody is typing.
const PAUSE: Duration = Duration::from_millis(250);

fn fragment_of(document: &Document) -> String {
    if *document == Document::default() { String::new() } else { share::to_fragment(document) }
}
