//! How saving, copying, deleting and exporting ended, a sentence each.

use crate::store::Refused;

/// What something is called, or why it was not done.
pub type Outcome<'a> = Result<&'a str, Refused>;

/// A file that was chosen is longer than any of ours.
pub const FILE_TOO_LONG: &str = "This file is far too long to be one of ours. Nothing from it was used.";

/// The browser could not read a file that was chosen.
pub const FILE_NOT_READ: &str = "The browser could not read this file.";

/// Why the browser did not store something.
pub const fn refused(why: Refused) -> &'static str {
    match why {
        Refused::Blocked => "This browser keeps nothing for this page, as in a private window.",
        Refused::Full => "The space this browser gives to the page is full: the last change was not kept.",
    }
}

/// How saving ended; `renamed_from` is what the build was called before, where its name changed.
pub fn saved(outcome: Outcome<'_>, renamed_from: Option<&str>) -> String {
    match (outcome, renamed_from) {
        (Ok(title), None) => format!("Saved as “{title}”."),
        (Ok(title), Some(before)) => {
            format!("Saved over “{before}”, now called “{title}”. What it was is its earlier version.")
        }
        (Err(why), _) => format!("Not saved. {} Copy the link or export a file instead.", refused(why)),
    }
}

/// What the button is called that saves a build under its old name, too.
pub fn keep_too_label(name: &str) -> String {
    format!("Keep “{name}” too")
}

/// How saving the build under its old name, too, ended.
pub fn saved_too(outcome: Outcome<'_>) -> String {
    match outcome {
        Ok(name) => format!("“{name}” is kept too."),
        Err(why) => format!("Not kept. {}", refused(why)),
    }
}

/// How copying a build ended.
pub fn duplicated(outcome: Outcome<'_>) -> String {
    match outcome {
        Ok(name) => format!("Copied as “{name}”."),
        Err(why) => format!("Not copied. {}", refused(why)),
    }
}

/// How deleting a build ended. Where there is no room for the note that it was deleted, it can only go for good.
pub fn deleted(name: &str, outcome: Result<(), Refused>) -> String {
    match outcome {
        Ok(()) => format!("“{name}” is in the bin, at the end of this page."),
        Err(why) => {
            let why = refused(why);
            format!("Not deleted. {why} Export “{name}” if you may want it back, then delete it for good.")
        }
    }
}

/// How taking a build out of the trash ended.
pub fn restored(outcome: Outcome<'_>) -> String {
    match outcome {
        Ok(name) => format!("“{name}” is back among the saved builds."),
        Err(why) => format!("Not brought back. {}", refused(why)),
    }
}

/// A build was deleted for good.
pub fn gone(name: &str) -> String {
    format!("“{name}” is gone for good.")
}

/// How handing out a file ended.
pub fn exported(file: &str, done: bool) -> String {
    if done {
        format!("“{file}” went to your downloads.")
    } else {
        "The browser refused to write a file.".to_string()
    }
}
