//! What the Saved view explains.

/// Something else was saved under the same build meanwhile.
pub const CLASH: &str =
    "Something else was saved under this build meanwhile, in another tab or window. Which do you want?";

/// In place of the list while nothing is saved.
pub const NOTHING_SAVED: &str = "Save the current build, or import a file below.";

/// In place of the list where a search finds nothing.
pub const NOTHING_FOUND: &str = "No build has these words in its name or its links.";

/// What is in the trash.
pub const TRASH: &str = "Builds you deleted, and entries that something else took the place of before they were saved.";

/// What can be done with a record that cannot be read.
pub const DAMAGED: &str = "Nothing else is lost by it. Export it as it is, for somebody who can mend it.";

/// What a file is, and what importing one does.
pub const FILE: &str = "The file is plain text with every value and its unit. Importing adds builds and replaces none.";

/// Beside two rigs that were entered alike.
pub const SAME_ENTRIES: &str = "Both have the same entries.";

/// Where builds are kept, and whether the browser promised not to clear them.
pub const fn where_kept(promised: bool) -> &'static str {
    if promised {
        "Builds are kept in this browser, on this device only. It has promised to keep them until you delete them."
    } else {
        "Builds are kept in this browser, on this device only. It may clear them when it runs out of space, and clears them with its history. Keep a file of what matters."
    }
}
