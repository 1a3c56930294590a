//! The saved builds on this device: read and written as the library's `store` decides.

use super::state::{Bench, Leaf};
use super::storage::{self, Trouble};
use super::words;
use linkwright::builds::{Build, Earlier};
use linkwright::document::Document;
use linkwright::store::saved_builds::{self, Save, SavedBuild, Target};
use linkwright::store::{BUILD, Write, import, trash};

/// What a saved build is called.
pub(super) fn title_of(bench: Bench, saved: &SavedBuild) -> String {
    if saved.damaged { "A damaged record".to_string() } else { title(bench, &saved.build.document) }
}

/// What a document is called: by its name, else by what is known of it.
pub(super) fn title(bench: Bench, document: &Document) -> String {
    if !document.name.is_empty() {
        return document.name.clone();
    }
    let job = words::job(document, bench.system.get());
    if job.is_empty() { "Rig without a name".to_string() } else { format!("Rig of {job}") }
}

/// How saving ended.
pub(super) enum Saving {
    /// Under this title, which took the place of one that was called otherwise.
    Done(String, Option<Box<Build>>),
    /// Another tab or an earlier visit saved something else meanwhile.
    Changed,
    /// The browser keeps nothing.
    Trouble(Trouble),
}

impl Bench {
    /// Looks at every record, the newest first; only what is new or was written since is read.
    pub(super) fn read_shelf(self) {
        let (builds, differ) = saved_builds::refresh(self.shelf.take(), storage::records(BUILD));
        if differ {
            self.shelf.set(Some(builds));
        } else {
            self.shelf.update_untracked(|shelf| *shelf = Some(builds));
        }
    }

    /// Looks at the records, which are read if they were not yet.
    pub(super) fn records<T>(self, look: impl FnOnce(&[SavedBuild]) -> T) -> T {
        if self.shelf.with_untracked(Option::is_none) {
            self.read_shelf();
        }
        self.shelf.with_untracked(|shelf| look(shelf.as_deref().unwrap_or_default()))
    }

    /// The record of an id.
    pub(super) fn record(self, id: &str) -> Option<SavedBuild> {
        // What was read before may be older than what another tab did since.
        storage::kept(&format!("{BUILD}{id}")).map(|text| SavedBuild::read(id, text))
    }

    /// Writes a record.
    fn put(self, build: &Build) -> Result<(), Trouble> {
        self.carry_out(&[Write::build(build)])
    }

    /// The document on the bench, saved.
    pub(super) fn save(self, target: Target) -> Saving {
        let (document, origin) = (self.document.get_untracked(), self.origin.get_untracked());
        self.read_shelf();
        let save = self.records(|builds| saved_builds::save(&document, &origin, target, builds, &storage::stamp()));
        let Some(Save { build, origin, renamed }) = save else { return Saving::Changed };
        if let Err(trouble) = self.put(&build) {
            return Saving::Trouble(trouble);
        }
        if document != build.document {
            self.document.update(|document| document.name.clone_from(&build.document.name));
        }
        self.origin.set(origin);
        Saving::Done(title(self, &build.document), renamed)
    }

    /// Puts a saved build on the bench, or an earlier version of it.
    pub(super) fn open_build(self, id: &str, version: Option<&Earlier>) {
        let Some(saved) = self.record(id) else { return };
        let (document, origin) = saved_builds::open(&saved, version, storage::fresh_id());
        let leaf = Leaf::to_open(&document);
        self.exchange(document, origin);
        self.turn_to(leaf);
    }

    /// Keeps a build as it was before it was saved under another name.
    pub(super) fn keep_too(self, build: &Build) -> Result<(), Trouble> {
        self.put(&saved_builds::keep_too(build, storage::fresh_id()))
    }

    /// A second one like it.
    pub(super) fn duplicate(self, saved: &SavedBuild) -> Result<String, Trouble> {
        let name = title(self, &saved.build.document);
        let build = self.records(|builds| saved_builds::duplicate(saved, &name, builds, &storage::stamp()));
        self.put(&build).map(|()| build.document.name)
    }

    /// Puts a build into the trash.
    pub(super) fn bin(self, saved: &SavedBuild) -> Result<(), Trouble> {
        self.carry_out(&trash::delete(saved, &storage::now()))?;
        if let Some(origin) = self.origin.with_untracked(|origin| trash::leave_build(origin, &saved.build.id)) {
            self.origin.set(origin);
        }
        Ok(())
    }

    /// Takes a build out of the trash, and says what it is called now.
    pub(super) fn bring_back(self, saved: &SavedBuild) -> Result<String, Trouble> {
        let (build, writes) = self.records(|builds| trash::restore(saved, builds, storage::fresh_id()));
        self.carry_out(&writes)?;
        Ok(title(self, &build.document))
    }

    /// Forgets a record for good.
    pub(super) fn forget(self, id: &str) {
        // What is taken away needs no room.
        let _ = self.carry_out(&[Write::forget(id)]);
    }

    /// Takes the builds of a file in; none of them replaces one that is here.
    pub(super) fn take_in(self, text: &str) -> Vec<String> {
        let import = self.records(|builds| import::read(text, builds, storage::fresh_id));
        for (written, build) in import.builds.iter().enumerate() {
            // One by one without a look at all records in between.
            let write = Write::build(build);
            if let Err(trouble) = storage::keep(&write.key, &write.text) {
                self.note(Err(trouble));
                self.read_shelf();
                return import.notices_broken_off(written, trouble.sentence());
            }
        }
        self.read_shelf();
        import.notices()
    }
}
