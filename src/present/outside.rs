//! Every value from outside beside what the engine gives for it here and now.

use super::words::thread;
use crate::engine::reference::{self, Reference, Tabled};
use crate::quantity::{Kind, System, inch, mm, trimmed};

/// The heads of the columns of a subject's table.
pub const HEAD: [&str; 4] = ["Value", "Expected", "Here", "Differs by"];

/// What the comparison is.
pub const ABOUT: &str = "Do not take this page’s word for it: values that others printed, or that other tools worked out, beside what the same engine gives here and now. Random links worked out by finite elements are compared in this project’s own tests.";

/// What is used where a thread's formula and its table differ.
pub const WEAKER_COUNTS: &str = "Where formula and table differ, the weaker of the two is used.";

/// Every value from outside, compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// How many agree, in one sentence.
    pub count: String,
    /// The values, subject by subject.
    pub subjects: Vec<Subject>,
    /// Every tabled thread value.
    pub threads: Vec<ThreadRow>,
}

/// The values of one subject.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Subject {
    /// Its name, with how many of its values agree.
    pub title: String,
    /// Its values.
    pub rows: Vec<Row>,
}

/// A value from outside.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// What it is the value of.
    pub name: &'static str,
    /// Where it stands, and how it was obtained.
    pub source: String,
    /// The value as printed.
    pub expected: String,
    /// What the engine gives.
    pub found: String,
    /// By what share the two differ.
    pub difference: String,
    /// Whether that is close enough.
    pub agrees: bool,
}

/// A tabled value of a thread beside the same by formula, each ready to be written as a value of its kind.
#[derive(Debug, Clone, PartialEq)]
pub struct ThreadRow {
    /// Thread and limit.
    pub name: String,
    /// As tabled.
    pub tabled: f64,
    /// By formula.
    pub by_formula: f64,
    /// What both measure.
    pub kind: Kind,
    /// Whether the two agree to the digits printed.
    pub agrees: bool,
    /// What is known about a difference.
    pub why: Option<&'static str>,
    /// Where the value is tabled.
    pub source: String,
}

impl Row {
    /// Whether the two agree, in a word.
    pub const fn agreement(&self) -> &'static str {
        if self.agrees { "agrees" } else { "DIFFERS" }
    }
}

impl ThreadRow {
    /// Whether the two agree, in a word: a known difference is no alarm.
    pub const fn agreement(&self) -> &'static str {
        if self.agrees { "agrees" } else { "differs" }
    }

    /// Whether the values differ, as is known and explained.
    pub const fn is_explained(&self) -> bool {
        !self.agrees && self.why.is_some()
    }

    /// Whether the values agree, or differ as is known and explained.
    pub const fn is_accounted_for(&self) -> bool {
        self.agrees != self.why.is_some()
    }
}

impl Compared {
    /// The title of the tables of threads.
    pub fn threads_title(&self) -> String {
        format!("Thread limits and stress areas, every tabled value held: {}", self.threads.len())
    }
}

/// Works out every value anew and compares it.
pub fn compare() -> Compared {
    let all: Vec<&Reference> = reference::all().collect();
    let subjects: Vec<Subject> = all.chunk_by(|a, b| a.subject == b.subject).map(subject).collect();
    let threads: Vec<ThreadRow> = reference::tabled().iter().map(thread_row).collect();
    Compared { count: count(&subjects, &threads), subjects, threads }
}

fn count(subjects: &[Subject], threads: &[ThreadRow]) -> String {
    let of_subjects = subjects.iter().map(Subject::agreeing).sum::<usize>();
    let explained = threads.iter().filter(|row| row.is_explained()).count();
    let agree = of_subjects + threads.iter().filter(|row| row.is_accounted_for()).count() - explained;
    let all = subjects.iter().map(|subject| subject.rows.len()).sum::<usize>() + threads.len();
    format!("{agree} of {all} agree; {explained} differ as explained.")
}

impl Subject {
    fn agreeing(&self) -> usize {
        self.rows.iter().filter(|row| row.agrees).count()
    }
}

fn subject(of: &[&Reference]) -> Subject {
    let name = of.first().map_or("", |value| value.subject);
    let agree = of.iter().filter(|value| value.agrees()).count();
    Subject { title: format!("{name}: {agree} of {}", of.len()), rows: of.iter().map(|value| row(value)).collect() }
}

fn row(of: &Reference) -> Row {
    let found = of.found();
    let digits = |value: f64| format!("{} {}", significant(value), of.unit).trim_end().to_string();
    let difference = if of.expected == 0.0 { found - of.expected } else { (found - of.expected) / of.expected.abs() };
    Row {
        name: of.name,
        source: format!("{} ({})", of.source, of.obtained.words()),
        expected: digits(of.expected),
        found: digits(found),
        difference: if difference.is_finite() && difference != 0.0 {
            format!("{difference:.1e}")
        } else {
            difference.abs().to_string()
        },
        agrees: of.agrees(),
    }
}

fn thread_row(of: &Tabled) -> ThreadRow {
    // A limit is printed in the unit of its table, whatever the reader's units are.
    let (kind, unit) = match (of.what, of.thread.system) {
        ("stress area", _) => (Kind::Area, 1.0),
        (_, System::Inch) => (Kind::InInches, inch(1.0)),
        (_, System::Metric) => (Kind::InMillimeters, mm(1.0)),
    };
    ThreadRow {
        name: format!("{}, {}", thread(of.thread), of.what),
        tabled: of.tabled / unit,
        by_formula: of.by_formula / unit,
        kind,
        agrees: of.agrees(),
        why: of.why,
        source: of.cite.words(),
    }
}

/// Eight digits, which is more than most sources print, without trailing noise.
fn significant(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return value.to_string();
    }
    let written = format!("{value:.7e}");
    let power: i32 = written.split_once('e').and_then(|(_, power)| power.parse().ok()).unwrap_or(0);
    let places = (7 - power).clamp(0, 12).unsigned_abs() as usize;
    trimmed(format!("{value:.places$}"))
}
