//! The log of what is open: kept beside the entries, and with their build once they have one.

use super::Session;
use super::autosave::written;
use crate::browser::{address, clock, storage};
use leptos::prelude::*;
use linkwright::builds::{Build, log_to_line};
use linkwright::log::Log;
use linkwright::share::{self, Sent};
use linkwright::store::saved_builds::holder;
use linkwright::store::stored_entries::{Origin, StoredEntries};
use linkwright::store::{Refused, logs, unverified};

/// A log that the browser did not keep: it stands on this page only, and goes into every file.
#[derive(Clone, PartialEq)]
pub(crate) struct Unkept {
    /// Under which id it belongs.
    id: String,
    log: Log,
    /// Why it was not kept.
    pub(crate) why: Refused,
}

impl Session {
    /// Lets the log follow the entries to the build they come to belong to. There is none before the part of the page
    /// that writes one is here.
    pub(crate) fn keep_log_along(self) {
        Effect::new(move |before: Option<Origin>| {
            let now = self.origin.get();
            if let Some(before) = before {
                // Where the browser refuses, a notice says so, and the log stays where it is.
                let _ = self.carry_out(&logs::follow(&before, &now, |id| self.log_text(id)));
            }
            now
        });
    }

    /// What is kept under an id; empty when nothing is.
    pub(super) fn log_text(self, id: &str) -> String {
        storage::get(&logs::key(id)).unwrap_or_default()
    }

    /// The log of what is open, as it is kept, and whether all of it could be read.
    pub(crate) fn kept_log(self) -> (Log, bool) {
        self.origin.with_untracked(|origin| {
            let id = logs::id(origin);
            let (mut log, damaged) = logs::read(id, &self.log_text(id));
            // What was written down before the entries belonged to their build, and did not follow yet.
            let (earlier, damaged_too) = logs::read(&origin.id, &self.log_text(&origin.id));
            log.join(&earlier);
            self.join_unkept(&mut log, &[id, &origin.id]);
            let is_whole = damaged.is_none() && damaged_too.is_none();
            let aside = [id, &origin.id].iter().any(|id| !self.log_text(&logs::damaged_id(id)).is_empty());
            (log, is_whole && !aside)
        })
    }

    /// Keeps the log of what is open, joined with what other tabs wrote: the log then, and whether the browser kept it.
    pub(crate) fn keep_log(self, own: &Log) -> (Log, Result<(), Refused>) {
        let origin = self.origin.get_untracked();
        let (log, writes) = logs::keep(logs::id(&origin), own, &self.log_text(logs::id(&origin)));
        // The notice about full storage speaks of entries; this one has its own.
        let kept = writes.iter().try_for_each(written);
        let unkept = |why| Unkept { id: logs::id(&origin).to_string(), log: log.clone(), why };
        self.unkept_log.set(kept.err().map(unkept));
        (log, kept)
    }

    /// Takes in what the browser did not keep under one of these ids.
    fn join_unkept(self, log: &mut Log, ids: &[&str]) {
        self.unkept_log.with_untracked(|unkept| {
            if let Some(unkept) = unkept.as_ref().filter(|unkept| ids.contains(&unkept.id.as_str())) {
                log.join(&unkept.log);
            }
        });
    }

    /// Joins a log with what stands under an id.
    ///
    /// # Errors
    /// Why the browser refused it.
    pub(super) fn join_log(self, id: &str, log: &Log) -> Result<(), Refused> {
        self.carry_out(&logs::keep(id, log, &self.log_text(id)).1)?;
        self.log_changed.update(|count| *count += 1);
        Ok(())
    }

    /// The log of entries that give way goes to the record that holds them already.
    pub(super) fn log_joins_its_holder(self, own: &StoredEntries) {
        let log = logs::read(&own.origin.id, &self.log_text(&own.origin.id)).0;
        let holder = self.with_builds(|builds| holder(builds, &own.fragment).map(|saved| saved.build.id.clone()));
        if let Some(id) = holder.filter(|_| !log.is_empty()) {
            // Where the browser refuses, a notice says so, and the log stays where it is.
            let _ = self.join_log(&id, &log);
        }
    }

    /// The address to send with the log in it; nothing where that is too long, or leads to a file on this device.
    pub(crate) fn link_with_log(self, log: &Log) -> Option<String> {
        let fragment = share::with_log(&self.fragment_to_send(Sent::default()), &log_to_line(log))?;
        let fragment = self.origin.with_untracked(|origin| unverified::to_send(&fragment, origin).to_string());
        (!address::is_a_file()).then(|| address::with_fragment(&fragment))
    }

    /// A build with its log, for a file.
    pub(crate) fn with_log(self, build: &Build) -> Build {
        let (mut log, _) = logs::read(&build.id, &self.log_text(&build.id));
        let is_open = self.origin.with_untracked(|origin| origin.build.as_ref() == Some(&build.id));
        let of_entries = self.origin.with_untracked(|origin| origin.id.clone());
        self.join_unkept(&mut log, &[&build.id, if is_open { &of_entries } else { &build.id }]);
        Build { log, ..build.clone() }
    }

    /// What is open with its log as a build of its own, for a file that needs no room on the device.
    pub(crate) fn open_build_for_a_file(self, log: &Log) -> Build {
        let id = self.origin.with_untracked(|origin| origin.build.clone()).unwrap_or_else(clock::fresh_id);
        let document = self.document.get_untracked();
        Build { id, saved: clock::now(), document, log: log.clone(), ..Build::default() }
    }
}
