//! The log of a bar, in lines.

use super::reading::shown;
use crate::log::{DRIVE_ON, Entry, EntryKind, LIMP, Log, NOT_JUDGED, STOP, Spot, reading_row};
use crate::quantity::{Kind, System, show};
use crate::report::Verdict;

/// The title of the section.
pub const TITLE: &str = "Log";

/// Where it is kept.
pub const HELP: &str = "Kept with this build on this device, and in its file. No link carries it but the one you copy here, and no size changes with it.";

/// The button that copies such a link.
pub const COPY_WITH_LOG: &str = "Copy a link with the log";

/// Once it is copied.
pub const COPIED_WITH_LOG: &str =
    "The link is on your clipboard. Whoever opens it sees what you wrote down, of every bar of this build.";

/// Where the browser does not let the page copy.
pub const NOT_COPIED: &str =
    "This browser did not copy. Export the build as a file under “Saved” instead: it carries the log.";

/// Where there is no such link.
pub const NO_LINK_WITH_LOG: &str =
    "The log is too long for a link. Export the build as a file under “Saved”: it carries the log.";

/// Where the page itself lies on the device.
pub const NO_LINK_OF_A_FILE: &str = "This page is a file on this device, and no link to it opens elsewhere. Export the build as a file under “Saved”: it carries the log.";

/// Said where a part of what was kept could not be read.
pub const DAMAGED: &str = "A part of the log of this build could not be read. It stays in this browser as it was found; check this link as if nothing had been written down.";

/// Said while nothing was written down.
pub const NOTHING: &str = "Nothing yet. What you check, turn and fit can be put in here.";

/// Said of an entry from before the link was changed.
pub const OF_ANOTHER: &str = "The link was a different one then.";

/// The row of what a turn changed the length by.
pub const TURNED_BY: &str = "turned-by";

/// Above the choice of a time.
pub const SINCE: &str = "What did I turn since";

/// What was turned on a bar after a time, in all; every turn where the time is empty.
pub fn turned_since(log: &Log, spot: &Spot, since: &str, system: System) -> String {
    let turns = log.of_bar(spot).filter(|entry| entry.kind == EntryKind::Turned && entry.at.as_str() > since);
    let changes: Vec<f64> = turns.filter_map(|entry| entry.readings.get(TURNED_BY)?.number()).collect();
    let all: f64 = changes.iter().sum();
    let times = match changes.len() {
        0 => return "Nothing, by this log.".to_string(),
        1 => "turned once".to_string(),
        count => format!("turned {count} times"),
    };
    let by = show(all.abs(), Kind::FineLength, system);
    match all {
        all if all.abs() < 1e-9 => format!("Back where it was: {times}."),
        all if all > 0.0 => format!("{by} longer in all: {times}."),
        _ => format!("{by} shorter in all: {times}."),
    }
}

/// What stands above every place of a bar that was hit, until it is replaced.
pub fn open_hit(entry: &Entry, time: &str) -> String {
    if entry.hit_verdict() == Some(STOP) {
        format!(
            "Stop. A hit is in the log, {time}: {} Do not drive on this link. What stands below says nothing of that damage.",
            entry.words
        )
    } else {
        format!(
            "Limp home only. A hit is in the log, {time}: {} Replace this bar before the next run. What stands below says nothing of that damage.",
            entry.words
        )
    }
}

/// The button that ends it.
pub const REPLACED: &str = "The damaged part was replaced";

/// The verdict of a look after a hit, as the log keeps it.
pub const fn hit_verdict(mark: Verdict) -> &'static str {
    match mark {
        Verdict::Passes => DRIVE_ON,
        Verdict::Close | Verdict::Bends => LIMP,
        Verdict::Unanswered => NOT_JUDGED,
        Verdict::Fails => STOP,
    }
}

/// A line of the log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LogLine {
    /// The id of the entry.
    pub id: String,
    /// When, as ISO 8601 in UTC.
    pub at: String,
    /// What it was.
    pub title: &'static str,
    /// What was said and read.
    pub words: String,
    /// Whether the link was a different one then.
    pub of_another: bool,
}

/// The lines of a bar, the newest first. `code` is that of the link as it is.
pub fn lines(log: &Log, spot: &Spot, code: &str, system: System) -> Vec<LogLine> {
    log.of_bar(spot).map(|entry| line(entry, code, system)).collect()
}

fn line(entry: &Entry, code: &str, system: System) -> LogLine {
    let readings = entry.readings.iter().filter_map(|(id, reading)| {
        let row = reading_row(id)?;
        Some(format!("{}: {}", row.label, shown(row, Some(*reading), system)))
    });
    let words = Some(entry.words.clone()).filter(|words| !words.is_empty());
    LogLine {
        id: entry.id.clone(),
        at: entry.at.clone(),
        title: entry.kind.label(),
        words: words.into_iter().chain(readings).collect::<Vec<_>>().join(" · "),
        of_another: !entry.code.is_empty() && entry.code != code,
    }
}
