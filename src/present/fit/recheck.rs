//! Rechecks on the page: what is due by the log, what to look at, and what goes into the log and a calendar.

use super::calendar::{self, Bar};
use super::standing;
use crate::engine::fitting::Standing;
use crate::engine::fitting::dates::Day;
use crate::engine::fitting::recheck::{self, LastTimes, Look, Occasion, due, looks, outcome};
use crate::engine::sentence::spoken;
use crate::log::{EntryKind, LONGEST_KEY, Log, Spot};
use crate::present::words::say;
use crate::quantity::System;
use crate::report::{Answer, Verdict};

/// The id of the reading that tells which recheck it is.
pub const KIND: &str = "recheck-kind";

/// What is filled in by hand on the printed list.
pub const DATE_AND_NAME: &str = "Date ____________________   Name ________________________________";

/// Said where somebody wants to put a recheck into the log that nothing was ticked of.
pub const TICK_FIRST: &str = "Tick what you looked at first.";

/// The occasion of an id; before an outing while nothing is picked.
pub fn occasion(id: Option<&str>) -> Occasion {
    Occasion::ALL.into_iter().find(|occasion| id == Some(occasion.id())).unwrap_or(Occasion::Outing)
}

/// What the log of a bar knows, as times in ISO 8601.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Last {
    fitted: Option<String>,
    turned: Option<String>,
    rechecked: Option<String>,
    half_year: Option<String>,
}

/// Reads the last times of a bar out of its log.
pub fn last(log: &Log, spot: &Spot) -> Last {
    let half_year = log.of_bar(spot).find(|entry| {
        entry.kind == EntryKind::Rechecked
            && entry.readings.get(KIND).and_then(|reading| reading.picked()) == Some(Occasion::HalfYear.id())
    });
    Last {
        fitted: log.last(spot, EntryKind::Fitted),
        turned: log.last(spot, EntryKind::Turned),
        rechecked: log.last(spot, EntryKind::Rechecked),
        half_year: half_year.map(|entry| entry.at.clone()),
    }
}

impl Last {
    fn times(&self) -> LastTimes<'_> {
        LastTimes {
            fitted: self.fitted.as_deref(),
            turned: self.turned.as_deref(),
            rechecked: self.rechecked.as_deref(),
            half_year: self.half_year.as_deref(),
        }
    }
}

/// Whether something is due, ready to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct DueRow {
    /// The occasion.
    pub title: &'static str,
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// What to say of it.
    pub says: String,
    /// What the occasion means, and where the interval comes from.
    pub help: String,
}

/// What is due today; `hit` while one is open against this bar.
pub fn due_rows(last: &Last, today: &str, hit: bool, system: System) -> Vec<DueRow> {
    let row = |due: recheck::Due| {
        let word = match due.standing {
            Standing::Good => "Not due",
            Standing::Watch => "Due",
            other => standing::word(other),
        };
        let (mark, word) = standing::unless_hit(standing::mark(due.standing), word, hit);
        let help = format!("{} Interval: {}.", due.occasion.help(), due.occasion.source().words());
        DueRow { title: due.occasion.label(), mark, word, says: say(&due.says, system), help }
    };
    due(last.times(), today).into_iter().map(row).collect()
}

/// One thing to look at, ready to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LookRow {
    /// By what a tick knows it.
    pub key: String,
    /// What to look at.
    pub words: String,
    /// Where it stops being in order.
    pub limit: String,
    /// Where that limit comes from.
    pub source: String,
}

fn key(occasion: Occasion, look: &Look) -> String {
    let limit = spoken(&look.limit, System::Inch);
    crate::document::one_line(&format!("recheck {} {}: {limit}", occasion.id(), look.id), LONGEST_KEY)
}

/// What to look at on an occasion.
pub fn look_rows(answer: &Answer, occasion: Occasion, system: System) -> Vec<LookRow> {
    let row = |look: Look| LookRow {
        key: key(occasion, &look),
        words: say(&look.words, system),
        limit: say(&look.limit, system),
        source: look.source.sentence(),
    };
    looks(answer, occasion).into_iter().map(row).collect()
}

/// What a recheck came to, ready to be shown and put into the log.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// What was found.
    pub says: String,
    /// A recheck only where everything was in order: what was left out must stay due.
    pub kind: EntryKind,
}

/// Sums up what is ticked; `hit` while one is open against this bar.
pub fn sum_up(
    answer: &Answer,
    occasion: Occasion,
    ticked: impl Fn(&str) -> bool,
    hit: bool,
    system: System,
) -> Outcome {
    let looks = looks(answer, occasion);
    let ticks: Vec<bool> = looks.iter().map(|look| ticked(&key(occasion, look))).collect();
    let found = outcome(answer, occasion, &looks, &ticks);
    let good = found.standing == Standing::Good;
    let word = if good { "In order" } else { standing::word(found.standing) };
    let (mark, word) = standing::unless_hit(standing::mark(found.standing), word, hit);
    let kind = if good && !hit { EntryKind::Rechecked } else { EntryKind::Note };
    // Looks at threads and nuts say nothing of the damage, and are no recheck while it is open.
    let says = if good && hit { standing::HIT_OPEN_SAYS.to_string() } else { say(&found.says, system) };
    Outcome { mark, word, says, kind }
}

/// What the button says that hands the rechecks over.
pub const CALENDAR: &str = "Calendar file: every six months";

/// The calendar file of a bar, with its name; nothing where the day of today cannot be read.
pub fn calendar_file(bar: Bar, last: &Last, answer: &Answer, now: &str, system: System) -> Option<(String, String)> {
    let today = Day::of_iso(now)?;
    let due = due(last.times(), now);
    let first_drive = due.iter().any(|due| due.occasion == Occasion::FirstDrive && due.standing == Standing::Watch);
    let half_year = due.iter().find(|due| due.occasion == Occasion::HalfYear).and_then(|due| due.on);
    // What has no date is to be done now, so the first falls on today.
    let reminders = calendar::reminders(half_year, first_drive, today);
    let lines: Vec<String> = look_rows(answer, Occasion::HalfYear, system)
        .into_iter()
        .map(|row| format!("{} {}", row.words, row.limit).replace('\u{2060}', ""))
        .collect();
    Some((calendar::file_name(bar), calendar::file(bar, &reminders, &lines, now)))
}
