//! Other tabs: this one follows one that works on the same entries, and notices one that works on others.

use super::autosave::of_tab;
use super::{Session, View};
use crate::browser::{storage, window};
use leptos::prelude::*;
use linkwright::differences::followed;
use linkwright::document::Document;
use linkwright::store::logs::LOG;
use linkwright::store::other_tabs::{self, Look};
use linkwright::store::shop_lists::LIST;
use linkwright::store::stored_entries::StoredEntries;
use linkwright::store::{BUILD, DAMAGED, ENTRIES};
use std::time::Duration;

/// A file that another tab imports comes build by build.
const BUILD_BY_BUILD: Duration = Duration::from_millis(100);

impl Session {
    /// Follows what other tabs write.
    pub(super) fn watch_other_tabs(self) {
        let waiting = StoredValue::new(false);
        let read_soon = move || {
            if !waiting.get_value() {
                waiting.set_value(true);
                let read = move || {
                    waiting.set_value(false);
                    self.read_builds();
                };
                set_timeout(read, BUILD_BY_BUILD);
            }
        };
        window::on("storage", move |event| match storage::changed_key(&event).as_deref() {
            Some(ENTRIES) => self.look_at_shared(),
            Some("") => {
                read_soon();
                self.shop_changed.update(|count| *count += 1);
                self.log_changed.update(|count| *count += 1);
            }
            Some(key) if key.starts_with(BUILD) => read_soon(),
            Some(key) if key.starts_with(LOG) => self.log_changed.update(|count| *count += 1),
            Some(key) if key.starts_with(LIST) => self.shop_changed.update(|count| *count += 1),
            _ => {}
        });
        // A page restored by the Back button received no events meanwhile.
        window::on("pageshow", move |_| self.look_at_shared());
    }

    /// Reads storage itself: the event may be older than this tab's own last entry.
    fn look_at_shared(self) {
        let text = storage::get(ENTRIES);
        let own = self.entries();
        let seen = self.seen.get_value();
        match other_tabs::look(&own, &of_tab(), seen.as_deref(), text.as_deref()) {
            Look::Unchanged => self.other_tab.set(None),
            Look::OwnFirst => self.write(),
            Look::Elsewhere(other) => self.other_tab.set(other),
            Look::Follow(there) => {
                self.other_tab.set(None);
                self.note_seen(text);
                if let Some(damaged) = &there.damaged {
                    storage::set_quietly(DAMAGED, damaged);
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
    fn note_seen(self, text: Option<String>) {
        storage::set_of_tab(ENTRIES, text.as_deref().unwrap_or_default());
        self.seen.set_value(text);
    }

    /// Takes over another state of the same work; what is half typed here stays if it still fits.
    pub(super) fn follow(self, document: Document) {
        let at = self.link.get_untracked();
        let there = self.document.with_untracked(|now| followed(now, &document, at));
        if there.is_none() && self.view.get_untracked().is_of_one_link() && document.links.len() > 1 {
            // The link that is open is gone: never another one in its place, unnoticed.
            self.view.set(View::Rig);
        }
        self.link.set(there.unwrap_or(0));
        self.document.set(document);
    }

    /// Shows here what the other tab holds.
    pub(crate) fn show_other_tab(self) {
        let text = storage::get(ENTRIES);
        let there = self.check(StoredEntries::read(text.as_deref().unwrap_or_default()));
        self.other_tab.set(None);
        if !there.entries.fragment.is_empty() {
            self.give_way(there.document, there.entries.origin);
            self.note_seen(text);
        }
    }
}
