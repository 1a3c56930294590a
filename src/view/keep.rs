//! How the entries outlive the page: in the address, in what the browser keeps, and beside another tab.

use super::state::{Bench, Leaf};
use super::storage::{self, BEFORE, ENTRIES, LEAF, RECEIVED, TICKS, TOLD, Trouble, UNITS, WORK};
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::quantity::System;
use linkwright::share;

/// Which piece of work is on the bench. Tabs that hold the same one follow each other.
#[derive(Clone, PartialEq, Eq, Default)]
pub(super) struct Work {
    /// Made anew whenever something else comes onto the bench.
    pub(super) id: String,
    /// The saved build it belongs to.
    pub(super) build: Option<String>,
    /// What that build held when it was last read or saved here, as a fragment.
    pub(super) base: String,
}

impl Work {
    /// Another piece of work, which belongs to no build.
    pub(super) fn fresh() -> Self {
        Self { id: storage::fresh_id(), ..Self::default() }
    }

    fn read(text: &str) -> Self {
        let mut lines = text.lines().map(str::to_string);
        let id = lines.next().unwrap_or_default();
        let build = lines.next().filter(|build| !build.is_empty());
        Self { id, build, base: lines.next().unwrap_or_default() }
    }

    fn write(&self) -> String {
        format!("{}\n{}\n{}", self.id, self.build.as_deref().unwrap_or_default(), self.base)
    }

    /// The one that any tab worked on last.
    fn kept() -> Self {
        storage::kept(WORK).map(|text| Self::read(&text)).unwrap_or_default()
    }
}

impl Bench {
    /// Takes what the address brings; else what was kept. The reader's own entries are never lost to a link.
    pub(super) fn arrive(self) {
        let brought = storage::fragment();
        let own = storage::kept(ENTRIES);
        let opened = share::from_fragment(&brought);
        if brought.is_empty() || opened.document == Document::default() {
            // A link that brings nothing leaves the entries alone.
            let mut told = if brought.is_empty() { Vec::new() } else { opened.told };
            if let Some(own) = &own {
                let kept = share::from_fragment(own);
                if !kept.told.is_empty() {
                    told.push(DAMAGED.to_string());
                    storage::keep_quietly(storage::DAMAGED, own);
                }
                self.replace(kept.document);
            }
            self.work.set(Some(Work::kept()).filter(|work| !work.id.is_empty()).unwrap_or_else(Work::fresh));
            self.told.set(told);
            self.offer_earlier(own.as_ref());
            return;
        }
        let plain = share::to_fragment(&opened.document);
        let tab = storage::of_tab(ENTRIES);
        if own.as_ref() == Some(&plain) {
            self.work.set(Work::kept());
        } else if tab.as_ref() == Some(&plain) {
            // The same page loaded anew, while another tab works on something else.
            self.work.set(storage::of_tab(WORK).map(|text| Work::read(&text)).unwrap_or_else(Work::fresh));
        } else {
            let received = storage::kept(RECEIVED);
            let theirs = received.is_some() && received == own;
            if let (Some(own), false) = (&own, theirs) {
                storage::keep_quietly(BEFORE, own);
            }
            storage::keep_quietly(RECEIVED, &plain);
            storage::keep_quietly(TOLD, &opened.told.join("\n"));
            self.work.set(Work::fresh());
        }
        // A damaged link stays damaged over a reload, though its address was written anew.
        let untouched = storage::kept(RECEIVED).as_ref() == Some(&plain);
        let kept = storage::kept(TOLD).filter(|_| untouched).unwrap_or_default();
        let told = if opened.told.is_empty() { kept.lines().map(str::to_string).collect() } else { opened.told };
        self.told.set(told);
        self.offer_earlier(Some(&plain));
        self.replace(opened.document);
    }

    /// Offers the entries that were set aside, unless they are the ones on the bench.
    fn offer_earlier(self, now: Option<&String>) {
        self.before.set(storage::kept(BEFORE).filter(|before| Some(before) != now));
    }

    /// Puts something else on the bench; what was on it is set aside and offered.
    pub(super) fn exchange(self, document: Document, work: Work) {
        let own = self.fragment_untracked();
        if !own.is_empty() && !self.is_saved(&own) {
            storage::keep_quietly(BEFORE, &own);
            self.before.set(Some(own));
        }
        self.told.set(Vec::new());
        self.work.set(work);
        self.replace(document);
    }

    /// Empties the form; what was in it is set aside.
    pub(super) fn clear(self) {
        self.exchange(Document::default(), Work::fresh());
    }

    /// Offers the entries that were set aside no longer; they stay in the bin.
    pub(super) fn forget_earlier(self) {
        storage::keep_quietly(BEFORE, "");
        self.before.set(None);
    }

    /// Returns to the entries from before a link was opened.
    pub(super) fn back_to_own(self) {
        if let Some(own) = self.before.get_untracked() {
            self.forget_earlier();
            self.told.set(Vec::new());
            storage::keep_quietly(RECEIVED, "");
            self.work.set(Work::fresh());
            self.replace(share::from_fragment(&own).document);
        }
    }

    /// Writes document, units and ticks where the next visit finds them.
    pub(super) fn save_on_change(self) {
        // The answer comes first: a browser takes longer to change its address than the engine to size a link.
        let waits = StoredValue::new(false);
        Effect::new(move |_| {
            self.document.track();
            self.work.track();
            self.shelf.track();
            if !waits.get_value() {
                waits.set_value(true);
                let write = move || {
                    waits.set_value(false);
                    self.write();
                };
                set_timeout(write, std::time::Duration::ZERO);
            }
        });
        Effect::new(move |_| {
            storage::keep_quietly(UNITS, if self.system.get() == System::Metric { "metric" } else { "" });
        });
        Effect::new(move |_| {
            let leaf = self.leaf.get();
            let name = Leaf::NAMES.into_iter().find(|(other, _)| *other == leaf).map_or("", |(_, name)| name);
            storage::keep_quietly(LEAF, name);
        });
        Effect::new(move |_| storage::keep_quietly(TICKS, &self.ticks.get().join("\n")));
        // Whoever leaves right after a key loses nothing.
        window_event_listener_untyped("pagehide", move |_| self.write());
        // Not before the first answer stands there.
        set_timeout(move || self.read_shelf(), std::time::Duration::from_millis(30));
    }

    /// Keeps the entries, in the address too.
    fn write(self) {
        let (fragment, mut work) = (self.fragment_untracked(), self.work.get_untracked());
        // What equals a saved build is that build, whichever way it came here.
        if work.build.is_none() && !fragment.is_empty() {
            let same = self.shelf.with_untracked(|shelf| {
                let shelf = shelf.iter().flatten().filter(|kept| kept.lies_open());
                shelf.filter(|kept| kept.fragment == fragment).map(|kept| kept.build.id.clone()).next()
            });
            if same.is_some() {
                work = Work { build: same, base: fragment.clone(), ..work };
                self.work.set(work.clone());
            }
        }
        let text = work.write();
        // What this tab has written already may have given way to another tab's since: that stands until something changes.
        let written =
            storage::of_tab(ENTRIES).unwrap_or_default() == fragment && storage::of_tab(WORK).as_ref() == Some(&text);
        if !written {
            let (stored, there) = (Work::kept(), storage::kept(ENTRIES).unwrap_or_default());
            if stored.id != work.id && !there.is_empty() && there != fragment {
                self.set_aside(&there, &stored.id);
            }
            self.note(storage::keep(WORK, &text).and_then(|()| storage::keep(ENTRIES, &fragment)));
            storage::keep_of_tab(WORK, &text);
            storage::keep_of_tab(ENTRIES, &fragment);
        }
        storage::write_fragment(&fragment);
    }

    /// Notes whether something could be kept.
    pub(super) fn note(self, kept: Result<(), Trouble>) {
        if self.trouble.with_untracked(|trouble| *trouble != kept.err()) {
            self.trouble.set(kept.err());
        }
    }

    /// The document as a fragment; empty when nothing was entered.
    pub(super) fn fragment(self) -> String {
        self.document.with(fragment_of)
    }

    /// The same, asked once.
    pub(super) fn fragment_untracked(self) -> String {
        self.document.with_untracked(fragment_of)
    }

    /// Follows another tab that works on the same thing, and notices one that works on another.
    pub(super) fn mind_other_tabs(self) {
        window_event_listener_untyped("storage", move |event| match storage::changed_key(&event).as_deref() {
            Some(ENTRIES | WORK) => self.look_across(),
            Some(key) if key.starts_with(storage::BUILD) => self.read_shelf(),
            Some("") => self.read_shelf(),
            _ => {}
        });
    }

    /// What is kept now counts, not what the event says: it may be older than this tab's own last entry.
    fn look_across(self) {
        let (work, there) = (Work::kept(), storage::kept(ENTRIES).unwrap_or_default());
        let own = self.fragment_untracked();
        if work.id != self.work.with_untracked(|own| own.id.clone()) {
            self.elsewhere.set(Some(there).filter(|there| !there.is_empty() && *there != own));
            return;
        }
        self.elsewhere.set(None);
        if self.work.with_untracked(|own| *own != work) {
            self.work.set(work);
        }
        if there != own {
            self.follow(&there);
        }
    }

    /// Takes over what another tab entered; what is half typed here stays if it still fits.
    fn follow(self, fragment: &str) {
        let document = share::from_fragment(fragment).document;
        let document = if fragment.is_empty() { Document::default() } else { document };
        let last = document.links.len().saturating_sub(1);
        self.at.update(|at| *at = (*at).min(last));
        self.document.set(document);
    }

    /// Shows here what the other tab holds.
    pub(super) fn join(self) {
        let (work, there) = (Work::kept(), storage::kept(ENTRIES).unwrap_or_default());
        self.elsewhere.set(None);
        self.exchange(share::from_fragment(&there).document, work);
    }
}

/// Said when the kept entries do not pass their own check.
const DAMAGED: &str = "What this browser kept of your entries was damaged. What could be read is below; check every number before you use it.";

fn fragment_of(document: &Document) -> String {
    if *document == Document::default() { String::new() } else { share::to_fragment(document) }
}
