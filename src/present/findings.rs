//! Every check as a line that opens its working: worst first, strength before fit, then what is worth knowing beside them.

use super::words::{say, uses_your_own};
use crate::engine::formula::Line;
use crate::quantity::{Kind, System, show};
use crate::report::{Answer, Finding, Note, Verdict};

/// How to read the list.
pub const HOW_TO_READ: &str = "Tap a check to see how it was worked out. 100 % is the limit, with your factors already in it. From 90 % up, strength has little margin. Steel tube is judged by its first yield without a factor: it passes outright to about 80 %, and bends above 100 %. Matters of fit pass up to their limit.";

/// Checks that pass below this share of their limit stand behind one line.
const FAR_BELOW: f64 = 0.63;

/// Everything that the list of checks shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Checks {
    /// Strength, then fit.
    pub groups: [Group; 2],
    /// Notes that are no verdict, then where the lengths and the forces come from.
    pub notes: Vec<Row>,
}

/// Checks of one sort, the worst first.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Group {
    /// What they are.
    pub title: &'static str,
    /// Those that do not pass, or pass near their limit.
    pub near: Vec<Row>,
    /// Those that pass far below their limit, or wait for an entry.
    pub far: Vec<Row>,
    /// The one line that stands before `far`.
    pub far_line: String,
}

/// A line that opens.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Which check or note.
    pub id: &'static str,
    /// How it came out, and the word for it; none where it is no verdict.
    pub verdict: Option<(Verdict, &'static str)>,
    /// The share of its limit.
    pub used: Option<String>,
    /// What was checked.
    pub title: &'static str,
    /// How it came out, in words.
    pub sentence: String,
    /// The changed defaults that it rests on.
    pub changed: Option<String>,
    /// Where it comes from, to stand under its working.
    pub source: Option<String>,
}

impl Checks {
    /// Every line, in order.
    pub fn rows(&self) -> impl Iterator<Item = &Row> {
        let of_groups = self.groups.iter().flat_map(|group| group.near.iter().chain(&group.far));
        of_groups.chain(&self.notes)
    }

    /// A line by its id.
    pub fn find(&self, id: &str) -> Option<&Row> {
        self.rows().find(|row| row.id == id)
    }
}

/// The list of checks of an answer.
pub fn checks(answer: &Answer, system: System) -> Checks {
    let mut sorted: Vec<&Finding> = answer.findings.iter().collect();
    let used = |finding: &Finding| finding.utilization.unwrap_or(0.0);
    sorted.sort_by(|a, b| b.verdict.cmp(&a.verdict).then(used(b).total_cmp(&used(a))));
    let (fit, strength): (Vec<&Finding>, Vec<&Finding>) = sorted.into_iter().partition(|finding| finding.rule);
    let notes = answer.notes.iter().map(|note| of_note(note, system)).chain(ABOUT.map(|about| about.row()));
    Checks {
        groups: [
            group("Strength, weakest first", &strength, system),
            group("Fit, closest to its limit first", &fit, system),
        ],
        notes: notes.collect(),
    }
}

fn group(title: &'static str, findings: &[&Finding], system: System) -> Group {
    let (far, near): (Vec<&Finding>, Vec<&Finding>) = findings.iter().copied().partition(|finding| is_far(finding));
    let rows = |findings: Vec<&Finding>| findings.into_iter().map(|finding| of_finding(finding, system)).collect();
    let far_line = format!("{} more, none above 63 % or waiting for an entry", far.len());
    Group { title, near: rows(near), far: rows(far), far_line }
}

/// Whether it passes far below its limit, or says nothing for or against the link.
fn is_far(finding: &Finding) -> bool {
    let passes = finding.verdict == Verdict::Passes;
    finding.is_left_open() || passes && finding.utilization.is_some_and(|used| used < FAR_BELOW)
}

fn of_finding(finding: &Finding, system: System) -> Row {
    let mut sentence = say(&finding.says, system);
    if finding.rule {
        sentence.push_str(" A rule of thumb or of fit, not of strength.");
    }
    Row {
        id: finding.id,
        verdict: Some((finding.verdict, finding.word())),
        used: finding.utilization.map(|used| show(used, Kind::Percent, system)),
        title: finding.title,
        sentence,
        changed: uses_your_own(&finding.changed, &[]),
        source: Some(format!("Source: {}. {}.", finding.source.words(), finding.source.source.title)),
    }
}

fn of_note(note: &Note, system: System) -> Row {
    Row {
        id: note.id,
        verdict: None,
        used: None,
        title: note.title,
        sentence: say(&note.says, system),
        changed: None,
        source: Some(format!("Source: {}.", note.source.words())),
    }
}

/// A calculation that no check stands for.
struct About {
    id: &'static str,
    title: &'static str,
    sentence: &'static str,
    working: fn(&Answer) -> &[Line],
}

/// What the checks begin with.
const ABOUT: [About; 2] = [
    About {
        id: "lengths",
        title: "How the lengths come out",
        sentence: "Bar, engagement, drill depths, weight and the least thread.",
        working: |answer| &answer.link.working,
    },
    About {
        id: "loads",
        title: "Where the forces come from",
        sentence: "Traction along the link and the strike across it.",
        working: |answer| &answer.loads.working,
    },
];

impl About {
    fn row(&self) -> Row {
        Row {
            id: self.id,
            verdict: None,
            used: None,
            title: self.title,
            sentence: self.sentence.to_string(),
            changed: None,
            source: None,
        }
    }
}

/// The calculation behind a line, by its id.
pub fn working<'a>(answer: &'a Answer, id: &str) -> &'a [Line] {
    let finding = answer.findings.iter().find(|finding| finding.id == id).map(|finding| finding.working.as_slice());
    let note = || answer.notes.iter().find(|note| note.id == id).map(|note| note.working.as_slice());
    let about = || ABOUT.iter().find(|about| about.id == id).map(|about| (about.working)(answer));
    finding.or_else(note).or_else(about).unwrap_or_default()
}
