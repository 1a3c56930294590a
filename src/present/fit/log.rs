//! The log of a bar, in lines.

use super::reading::shown;
use super::recheck::KIND;
use crate::log::{DRIVE_ON, Entry, EntryKind, HIT_VERDICT, LIMP, Log, NOT_JUDGED, Reading, STOP, Spot, reading_row};
use crate::quantity::{Kind, System, show};
use crate::report::Verdict;
use crate::store::Refused;

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
pub const DAMAGED: &str =
    "This log cannot be read whole; a copy of it is kept. Check this link as if nothing had been written down.";

/// Once something is in the log, with the time of day.
pub fn in_log(hour: &str) -> String {
    format!("In the log, {hour}.")
}

/// Where the same stands there already, with its time of day.
pub fn already_in(hour: &str) -> String {
    format!("Already in the log, {hour}.")
}

/// Where the browser does not keep it.
pub const fn not_kept(why: Refused) -> &'static str {
    match why {
        Refused::Full => "Not kept: this browser is full. Export the build as a file now.",
        Refused::Blocked => {
            "Not kept: this browser keeps nothing for this page, as in a private window. Export the build as a file now."
        }
    }
}

/// The button that exports what is open with its log.
pub const EXPORT: &str = "Export the build as a file";

/// Once it is exported.
pub fn exported(name: &str) -> String {
    format!("The build with its log is in your downloads: {name}.")
}

/// Where the browser takes no file.
pub const FILE_NOT_WRITTEN: &str = "This browser did not take the file. Copy a link with the log instead.";

/// The buttons of an entry.
pub const TAKE_OUT: &str = "Take it out";
/// Puts it back.
pub const UNDO: &str = "Undo";
/// What is said after either.
pub const TAKEN_OUT: &str = "Taken out.";
/// What is said once it is back.
pub const PUT_BACK: &str = "Back in the log.";

/// `3 entries`, of the bars that a link stands for; nothing where there are none.
pub fn entries_of(log: &Log, spots: &[Spot]) -> Option<String> {
    let count: usize = spots.iter().map(|spot| log.of_bar(spot).count()).sum();
    match count {
        0 => None,
        1 => Some("1 entry".to_string()),
        count => Some(format!("{count} entries")),
    }
}

/// Said while nothing was written down.
pub const NOTHING: &str = "Nothing yet. What you check, turn and fit can be put in here.";

/// Said of an entry from before another bar or rod end was entered.
pub const OF_ANOTHER: &str = "From an earlier link at this place.";

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

/// Said in Turn it while nothing was read since the last turn.
pub const TURNED_UNREAD: &str = "Turned since the last reading. Read both ends first, under “Is it still safe?”: until then these numbers count from the length of this build, not from where the bar is.";

/// Whether a bar was turned, by the log, after what stands of its readings was read.
pub fn is_turned_unread(log: &Log, spot: &Spot) -> bool {
    let turned = log.last(spot, EntryKind::Turned);
    let read = |id: &str| log.bars.get(spot)?.readings.get(id).filter(|noted| noted.value.is_some());
    let last = ["face-a", "face-b", "threads-a", "threads-b", "eye-to-eye"].into_iter().filter_map(read);
    turned.is_some_and(|turned| last.map(|noted| noted.at.as_str()).max().is_none_or(|read| read < turned.as_str()))
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
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct LogLine {
    /// The id of the entry.
    pub id: String,
    /// When, as ISO 8601 in UTC.
    pub at: String,
    /// What it was.
    pub title: &'static str,
    /// What was said and read.
    pub words: String,
    /// Whether another bar or other rod ends were made then.
    pub of_another: bool,
}

/// The lines of a bar, the newest first, with those that were taken out just now. `codes` are those of the link as it is:
/// of what is made, and of its order, by which entries were marked before.
pub fn lines(log: &Log, spot: &Spot, codes: &[String; 2], just_out: &[String], system: System) -> Vec<LogLine> {
    let of_bar = log.entries.iter().rev().filter(|entry| entry.spot == *spot);
    let shown = of_bar.filter(|entry| !entry.is_withdrawn() || just_out.contains(&entry.id));
    shown.map(|entry| line(entry, codes, system)).collect()
}

fn line(entry: &Entry, codes: &[String; 2], system: System) -> LogLine {
    let said = entry.words.trim();
    let readings = entry.readings.iter().filter_map(|(id, reading)| short(id, *reading, said, system));
    let words = Some(said.to_string()).filter(|words| !words.is_empty());
    let of_recheck = entry.readings.contains_key(KIND);
    LogLine {
        id: entry.id.clone(),
        at: entry.at.clone(),
        title: if of_recheck { EntryKind::Rechecked.label() } else { entry.kind.label() },
        words: words.into_iter().chain(readings).collect::<Vec<_>>().join(" · "),
        of_another: !entry.code.is_empty() && !codes.contains(&entry.code),
    }
}

/// A reading in a few words; nothing where the sentence of the entry says it, or where a look found nothing.
fn short(id: &str, reading: Reading, said: &str, system: System) -> Option<String> {
    let row = reading_row(id)?;
    let value = shown(row, Some(reading), system);
    if [HIT_VERDICT, TURNED_BY, "hit-dent"].contains(&id) || (!said.is_empty() && says(said, &value)) {
        return None;
    }
    let tight = |end: &str| format!("{end} nut {}", if reading.picked() == Some("yes") { "tight" } else { "loose" });
    Some(match id {
        "nut-a" => tight("A"),
        "nut-b" => tight("B"),
        "face-a" => format!("A {value} to the bar"),
        "face-b" => format!("B {value} to the bar"),
        "threads-a" => format!("A {value}"),
        "threads-b" => format!("B {value}"),
        "eye-to-eye" => format!("eye to eye {value}"),
        KIND => value,
        _ if matches!(reading.picked(), Some("no" | "none")) => return None,
        _ if reading.picked() == Some("yes") => row.label.trim_end_matches('?').to_string(),
        _ => format!("{}: {value}", row.label.trim_end_matches('?')),
    })
}

/// Whether a sentence holds a value as a word of its own: `3 threads` is not in `13 threads`.
fn says(said: &str, value: &str) -> bool {
    let apart = |letter: Option<char>| letter.is_none_or(|letter| !letter.is_alphanumeric() && letter != '.');
    said.match_indices(value).any(|(at, _)| {
        let (before, after) = (&said[..at], &said[at + value.len()..]);
        let before = before.chars().next_back();
        apart(before) && apart(after.chars().next().filter(|letter| *letter != '.'))
    })
}
