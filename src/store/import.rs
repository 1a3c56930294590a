//! The builds of a file, imported beside those that are here; none replaces another.
//!
//! Serves the promise on full storage, too: what the page hands out when it has stopped can be imported as well.

use super::saved_builds::{SavedBuild, free_name};
use super::stored_entries::StoredEntries;
use super::{BEFORE, ENTRIES, trash};
use crate::builds::{self, Build};
use crate::document::Document;
use std::borrow::Cow;
use std::sync::Arc;

/// More complaints about a file than these help nobody.
const MOST_NOTICES: usize = 8;

/// What a file brings.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Import {
    /// The builds to write, in this order.
    pub builds: Vec<Build>,
    /// How many are here already.
    known: usize,
    /// How many of those to write lie in the trash.
    in_trash: usize,
    /// Whether a name was taken.
    renamed: bool,
    /// What could not be read, a sentence each.
    notices: Vec<String>,
}

/// Reads a file beside the records that are here.
pub fn read(text: &str, here: &[SavedBuild], mut new_id: impl FnMut() -> String) -> Import {
    let mut here = here.to_vec();
    let mut import = Import::default();
    // A file may well hold two that are alike.
    let before = here.len();
    let files = files_in(text);
    if files.is_empty() {
        import.notices.push("There is nothing in this file that could be imported.".to_string());
    }
    for (file, are_entries) in files {
        let read = match builds::from_text(&file) {
            Ok(read) => read,
            Err(sentence) => {
                import.notices.push(sentence);
                continue;
            }
        };
        import.notices.extend(read.notices);
        for mut build in read.builds {
            let has_it = |saved: &SavedBuild| {
                !saved.damaged && saved.build.has_all_of(&build) && (saved.is_open() || build.removed.is_some())
            };
            if here.iter().take(if are_entries { here.len() } else { before }).any(has_it) {
                import.known += 1;
                continue;
            }
            let taken = here.iter().any(|saved| saved.build.id == build.id);
            if build.id.is_empty() || trash::is_set_aside(&build) || taken {
                build.id = new_id();
            }
            if build.removed.is_some() {
                import.in_trash += 1;
            } else {
                let name = free_name(&here, &build.document.name);
                import.renamed |= name != build.document.name;
                build.document.name = name;
            }
            import.builds.push(build.clone());
            here.push(SavedBuild { fragment: String::new(), damaged: false, text: Arc::default(), build });
        }
    }
    import
}

impl Import {
    /// How it ended, a sentence each, once every build is written.
    pub fn notices(mut self) -> Vec<String> {
        let over = self.notices.len().saturating_sub(MOST_NOTICES);
        self.notices.truncate(MOST_NOTICES);
        if over > 0 {
            self.notices.push(format!("And {over} more like these."));
        }
        let added = self.builds.len();
        let all = added + self.known;
        let count = match (added, self.known) {
            (0, 0) => return self.notices,
            (0, _) => "Every build of this file is here already.".to_string(),
            (1, 0) => "1 build imported.".to_string(),
            (_, 0) => format!("{added} builds imported."),
            _ => format!("{added} of {all} builds imported; the others are here already."),
        };
        self.notices.insert(0, count);
        if self.in_trash > 0 {
            self.notices.insert(1, format!("{} of them lay in the bin, and do again.", self.in_trash));
        }
        if self.renamed {
            self.notices.insert(1, "Where a name was taken, the new one has a number after it.".to_string());
        }
        self.notices
    }

    /// The same, where only the first few could be written, and why.
    pub fn notices_broken_off(mut self, written: usize, why: &str) -> Vec<String> {
        self.notices.insert(0, format!("{why} Imported before that: {written} of the file’s builds."));
        self.notices
    }
}

/// The files in a text: one, or every record of what the page hands out when it has stopped, with the entries there.
/// Entries are marked: a build beside them may hold them.
fn files_in(text: &str) -> Vec<(Cow<'_, str>, bool)> {
    let parts: Vec<&str> = text.split("\nlinkwright.").collect();
    if parts.len() == 1 {
        return vec![(Cow::Borrowed(text), false)];
    }
    let (mut found, mut entries) = (Vec::new(), Vec::new());
    for (key, record) in parts.into_iter().skip(1).filter_map(|part| part.split_once('\n')) {
        // Editors on some systems end lines in their own way.
        let key = key.trim_end();
        if key.starts_with("build.") {
            found.push((Cow::Borrowed(record), false));
        } else if [ENTRIES, BEFORE].iter().any(|name| name.strip_prefix("linkwright.") == Some(key)) {
            let checked = StoredEntries::read(record).checked();
            if checked.document != Document::default() {
                let unverified = checked.entries.origin.unverified;
                let build = Build { document: checked.document, unverified, ..Build::default() };
                entries.push((Cow::Owned(builds::to_text(&[build])), true));
            }
        }
    }
    found.append(&mut entries);
    found
}
