//! The builds of a file, imported beside those that are here; none replaces another.
//!
//! Serves the promise on full storage, too: what the page hands out when it has stopped can be imported as well.

use super::saved_builds::{SavedBuild, free_name};
use super::stored_entries::StoredEntries;
use super::{BEFORE, ENTRIES, logs, trash};
use crate::builds::{self, Build, log_from_text};
use crate::document::Document;
use crate::log::Log;
use std::borrow::Cow;
use std::sync::Arc;

/// More complaints about a file than these help nobody.
const MOST_NOTICES: usize = 8;

/// What a file brings.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Import {
    /// The builds to write, in this order.
    pub builds: Vec<Build>,
    /// The logs to join with what stands under these ids.
    pub logs: Vec<(String, Log)>,
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
    for PartOfText { file, are_entries, log } in files {
        let read = match builds::from_text(&file) {
            Ok(read) => read,
            Err(sentence) => {
                import.notices.push(sentence);
                continue;
            }
        };
        import.notices.extend(read.notices);
        for mut build in read.builds {
            build.log.join(&log);
            let has_it = |saved: &SavedBuild| {
                !saved.damaged && saved.build.has_all_of(&build) && (saved.is_open() || build.removed.is_some())
            };
            let known = here.iter().take(if are_entries { here.len() } else { before }).find(|saved| has_it(saved));
            if let Some(known) = known {
                import.known += 1;
                import.logs.push((known.build.id.clone(), build.log));
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
            import.logs.push((build.id.clone(), std::mem::take(&mut build.log)));
            import.builds.push(build.clone());
            here.push(SavedBuild { fragment: String::new(), damaged: false, text: Arc::default(), build });
        }
    }
    import.logs.retain(|(_, log)| !log.is_empty());
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

/// One file in a text.
struct PartOfText<'a> {
    file: Cow<'a, str>,
    /// Whether it holds open entries, which a build beside it may hold, too.
    are_entries: bool,
    /// The log that stands beside it.
    log: Log,
}

/// The files in a text: one, or every record of what the page hands out when it has stopped, with the entries there.
fn files_in(text: &str) -> Vec<PartOfText<'_>> {
    let parts: Vec<&str> = text.split("\nlinkwright.").collect();
    if parts.len() == 1 {
        return vec![PartOfText { file: Cow::Borrowed(text), are_entries: false, log: Log::default() }];
    }
    // Editors on some systems end lines in their own way.
    let records = || {
        let named = parts.iter().skip(1).filter_map(|part| part.split_once('\n'));
        named.map(|(key, record)| (key.trim_end(), record))
    };
    let log_of = |id: &str| {
        let log = records().find(|(key, _)| key.strip_prefix("log.") == Some(id));
        log.map(|(_, record)| log_from_text(record).0).unwrap_or_default()
    };
    let (mut found, mut entries) = (Vec::new(), Vec::new());
    for (key, record) in records() {
        if let Some(id) = key.strip_prefix("build.") {
            found.push(PartOfText { file: Cow::Borrowed(record), are_entries: false, log: log_of(id) });
        } else if [ENTRIES, BEFORE].iter().any(|name| name.strip_prefix("linkwright.") == Some(key)) {
            let checked = StoredEntries::read(record).checked();
            if checked.document != Document::default() {
                let log = log_of(logs::id(&checked.entries.origin));
                let unverified = checked.entries.origin.unverified;
                let build = Build { document: checked.document, unverified, ..Build::default() };
                entries.push(PartOfText { file: Cow::Owned(builds::to_text(&[build])), are_entries: true, log });
            }
        }
    }
    found.append(&mut entries);
    found
}
