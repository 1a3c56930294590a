//! The saved builds on this device, read and written as the library's `store` decides.

use super::{Session, View};
use crate::browser::{clock, files, storage};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::builds::{Build, Earlier};
use linkwright::present::saved::notices;
use linkwright::present::words::rig_title;
use linkwright::store::saved_builds::{self, Save, SavedBuild, Target};
use linkwright::store::{BUILD, Refused, Write, import, logs, trash};

/// How saving ended.
pub(crate) enum Saving {
    /// Under this title, which took the place of one that was called otherwise.
    Done(String, Option<Box<Build>>),
    /// Another tab or an earlier visit saved something else meanwhile.
    Changed,
    /// The browser refused.
    Refused(Refused),
}

impl Saving {
    /// How it ended, in a sentence; none where the reader must decide first.
    pub(crate) fn sentence(&self) -> Option<String> {
        match self {
            Self::Done(title, before) => {
                Some(notices::saved(Ok(title), before.as_ref().map(|build| build.document.name.as_str())))
            }
            Self::Changed => None,
            Self::Refused(refused) => Some(notices::saved(Err(*refused), None)),
        }
    }
}

impl Session {
    /// Looks at every record, the newest first; only what is new or was written since is read.
    pub(crate) fn read_builds(self) {
        let before = self.builds.try_update_untracked(Option::take).flatten();
        let (builds, differ) = saved_builds::refresh(before, storage::records(BUILD));
        if differ {
            self.builds.set(Some(builds));
        } else {
            self.builds.update_untracked(|before| *before = Some(builds));
        }
    }

    /// Looks at the records, which are read if they were not yet.
    pub(crate) fn with_builds<T>(self, look: impl FnOnce(&[SavedBuild]) -> T) -> T {
        if self.builds.with_untracked(Option::is_none) {
            self.read_builds();
        }
        self.builds.with_untracked(|builds| look(builds.as_deref().unwrap_or_default()))
    }

    /// The record of an id. What was read before may be older than what another tab did since.
    pub(crate) fn saved_build(self, id: &str) -> Option<SavedBuild> {
        storage::get(&format!("{BUILD}{id}")).map(|text| SavedBuild::read(id, text))
    }

    fn write_build(self, build: &Build) -> Result<(), Refused> {
        self.carry_out(&[Write::build(build)])
    }

    /// Saves the document that is open.
    pub(crate) fn save(self, target: Target) -> Saving {
        let (document, origin) = (self.document.get_untracked(), self.origin.get_untracked());
        self.read_builds();
        if self.with_builds(<[_]>::is_empty) {
            spawn_local(async {
                // How the browser answers is said where the files are.
                let _ = files::persist().await;
            });
        }
        let save = self.with_builds(|builds| saved_builds::save(&document, &origin, target, builds, &clock::stamp()));
        let Some(Save { build, origin, renamed }) = save else { return Saving::Changed };
        if let Err(refused) = self.write_build(&build) {
            return Saving::Refused(refused);
        }
        if document != build.document {
            self.edit(|document| document.name.clone_from(&build.document.name));
        }
        self.origin.set(origin);
        Saving::Done(rig_title(&build.document, self.units.get_untracked()), renamed)
    }

    /// Opens a saved build, or an earlier version of it.
    pub(crate) fn open_build(self, id: &str, version: Option<&Earlier>) {
        let Some(saved) = self.saved_build(id) else { return };
        let (document, origin) = saved_builds::open(&saved, version, clock::fresh_id());
        let view = View::to_open(&document);
        self.exchange(document, origin);
        self.open_view(view);
    }

    /// Saves a build, too, as it was before it was saved under another name.
    pub(crate) fn keep_too(self, build: &Build) -> Result<(), Refused> {
        self.write_build(&saved_builds::keep_too(build, clock::fresh_id()))
    }

    /// Saves a second one like it, and says what that is called.
    pub(crate) fn duplicate(self, saved: &SavedBuild) -> Result<String, Refused> {
        let name = rig_title(&saved.build.document, self.units.get_untracked());
        let build = self.with_builds(|builds| saved_builds::duplicate(saved, &name, builds, &clock::stamp()));
        self.write_build(&build).map(|()| build.document.name)
    }

    /// Puts a build into the trash.
    pub(crate) fn delete(self, saved: &SavedBuild) -> Result<(), Refused> {
        self.carry_out(&trash::delete(saved, &clock::now()))?;
        if let Some(origin) = self.origin.with_untracked(|origin| trash::leave_build(origin, &saved.build.id)) {
            self.origin.set(origin);
        }
        Ok(())
    }

    /// Takes a build out of the trash, and says what it is called now.
    pub(crate) fn restore(self, saved: &SavedBuild) -> Result<String, Refused> {
        let (build, writes) = self.with_builds(|builds| trash::restore(saved, builds, clock::fresh_id()));
        let log = self.log_text(&saved.build.id);
        self.carry_out(&writes)?;
        self.carry_out(&logs::along(&writes, &log))?;
        Ok(rig_title(&build.document, self.units.get_untracked()))
    }

    /// Forgets a record for good.
    pub(crate) fn delete_for_good(self, id: &str) {
        // What is taken away needs no room.
        let _ = self.carry_out(&[Write::forget(id)]);
    }

    /// Takes the builds of a file in; none of them replaces one that is here. Says how it ended, a sentence each.
    pub(crate) fn import(self, text: &str) -> Vec<String> {
        let import = self.with_builds(|builds| import::read(text, builds, clock::fresh_id));
        for (written, build) in import.builds.iter().enumerate() {
            // One by one without a look at all records in between.
            let write = Write::build(build);
            if let Err(refused) = storage::set(&write.key, &write.text) {
                self.note_storage(Err(refused));
                self.read_builds();
                return import.notices_broken_off(written, notices::refused(refused));
            }
        }
        self.read_builds();
        for (id, log) in &import.logs {
            // Where the browser refuses, a notice says so.
            let _ = self.join_log(id, log);
        }
        import.notices()
    }
}
