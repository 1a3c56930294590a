//! What the Saved view holds itself, and what the buttons of a build do.

use crate::app::session::Session;
use crate::browser::{files, page};
use leptos::prelude::*;
use linkwright::builds::{self, Build};
use linkwright::present::saved::{damaged_file_name, file_name, notices, title_of};
use linkwright::store::saved_builds::SavedBuild;

/// What can be done on the spot about what was just done.
#[derive(Clone, PartialEq)]
pub(super) enum Offer {
    /// The build of this id was deleted: it can be restored.
    Restore(String),
    /// This build was saved under another name: it can be kept under its own, too.
    KeepToo(Box<Build>),
}

/// What the view holds.
#[derive(Clone, Copy)]
pub(super) struct SavedState {
    session: Session,
    /// What was just done, a sentence each.
    pub(super) notices: RwSignal<Vec<String>>,
    /// What can be done about it.
    pub(super) offer: RwSignal<Option<Offer>>,
    /// The id of the build that the next press deletes for good.
    pub(super) armed: RwSignal<Option<String>>,
}

impl SavedState {
    pub(super) fn new(session: Session) -> Self {
        Self { session, notices: RwSignal::new(Vec::new()), offer: RwSignal::new(None), armed: RwSignal::new(None) }
    }

    /// Says what was done, a sentence each; what was offered before has passed.
    pub(super) fn say_all(self, sentences: Vec<String>) {
        self.offer.set(None);
        self.notices.set(sentences);
    }

    /// The same, in one sentence.
    pub(super) fn say(self, sentence: String) {
        self.say_all(vec![sentence]);
    }

    /// A build as it is on the device now, and what it is called. Only two presses in a row delete for good.
    fn build(self, id: &str) -> Option<(SavedBuild, String)> {
        self.armed.set(None);
        let saved = self.session.saved_build(id)?;
        let name = title_of(&saved, self.session.units.get_untracked());
        Some((saved, name))
    }

    /// Something about the record of an id, anew when the records change; empty once the record is gone.
    pub(super) fn of_record<T: Default>(self, id: StoredValue<String>, of: impl FnOnce(&SavedBuild) -> T) -> T {
        self.session.builds.with(|builds| {
            let saved = builds.iter().flatten().find(|saved| id.with_value(|id| saved.build.id == *id));
            saved.map(of).unwrap_or_default()
        })
    }

    /// Opens a build.
    pub(super) fn open(self, id: &str) {
        self.session.open_build(id, None);
    }

    /// Opens an earlier version of a build.
    pub(super) fn open_version(self, id: &str, index: usize) {
        if let Some((saved, _)) = self.build(id)
            && let Some(earlier) = saved.build.earlier.get(index)
        {
            self.session.open_build(id, Some(earlier));
        }
    }

    /// Saves a second one like it.
    pub(super) fn duplicate(self, id: &str) {
        if let Some((saved, _)) = self.build(id) {
            let copy = self.session.duplicate(&saved);
            self.say(notices::duplicated(copy.as_deref().map_err(|refused| *refused)));
        }
    }

    /// Hands a build out as a file; a damaged record as it is.
    pub(super) fn export(self, id: &str) {
        match self.build(id) {
            Some((saved, _)) if saved.damaged => {
                let file = damaged_file_name(id);
                self.say(notices::exported(&file, files::download(&file, &saved.text)));
            }
            Some((saved, name)) => self.export_all(&file_name(&name), &[saved.build]),
            None => {}
        }
    }

    /// Hands builds out as one file.
    pub(super) fn export_all(self, file: &str, builds: &[Build]) {
        let builds: Vec<Build> = builds.iter().map(|build| self.session.with_log(build)).collect();
        self.say(notices::exported(file, files::download(file, &builds::to_text(&builds))));
    }

    /// Puts a build into the trash; where there is no room for that, it can only go for good.
    pub(super) fn delete(self, id: &str) {
        let Some((saved, name)) = self.build(id) else { return };
        let deleted = self.session.delete(&saved);
        self.say(notices::deleted(&name, deleted));
        if deleted.is_ok() {
            self.offer.set(Some(Offer::Restore(id.to_string())));
            page::focus_soon("bring-back".to_string());
        } else {
            self.armed.set(Some(id.to_string()));
        }
    }

    /// Takes a build out of the trash.
    pub(super) fn restore(self, id: &str) {
        if let Some((saved, _)) = self.build(id) {
            let restored = self.session.restore(&saved);
            self.say(notices::restored(restored.as_deref().map_err(|refused| *refused)));
            page::show("saved-title");
        }
    }

    /// Keeps a build under the name that it had.
    pub(super) fn keep_too(self, build: &Build) {
        let kept = self.session.keep_too(build).map(|()| build.document.name.as_str());
        self.say(notices::saved_too(kept));
        page::show("saved-title");
    }

    /// Whether the next press deletes this build for good.
    pub(super) fn is_armed(self, id: &str) -> bool {
        self.armed.with(|armed| armed.as_deref() == Some(id))
    }

    /// Deletes a build for good at the second press in a row.
    pub(super) fn delete_for_good(self, id: &str) {
        let armed = self.armed.with_untracked(|armed| armed.as_deref() == Some(id));
        let Some((_, name)) = self.build(id) else { return };
        if armed {
            self.session.delete_for_good(id);
            self.say(notices::gone(&name));
            page::show("saved-title");
        } else {
            self.armed.set(Some(id.to_string()));
        }
    }
}
