//! Why this size: calculation against common practice, the sizes around it, the margin, and what was assumed.

use super::words::{label, lower, say, size, thread, unbroken, value};
use crate::engine::tables::threads;
use crate::inputs::{NUMBERS, has_no_second_path};
use crate::quantity::{Kind, System, show_at_most};
use crate::report::{Answer, Assumption, Candidate, Firmness};

/// What the margin table says.
pub const MARGIN_CAPTION: &str =
    "The same size does as well when one of these alone goes this far; common practice may ask for more before that.";

/// Which rule decides, and what the sizes around it would do.
#[derive(Debug, Clone, PartialEq)]
pub struct WhyThisSize {
    /// Which rule decides, and why.
    pub governs: String,
    /// Said where the user chose another size.
    pub chosen: Option<&'static str>,
    /// The sizes that were compared, the smallest first.
    pub candidates: Vec<CandidateRow>,
    /// What builders usually fit.
    pub practice: Option<String>,
}

/// One size that was compared.
#[derive(Debug, Clone, PartialEq)]
pub struct CandidateRow {
    /// Its place among them.
    pub name: &'static str,
    /// Its bar or tube.
    pub bar: String,
    /// The thread of its rod ends.
    pub thread: &'static str,
    /// Its highest utilization, and whether it is recommended against.
    pub utilization: String,
    /// The check that decides it.
    pub decides: &'static str,
    /// Whether it is the one to take.
    pub recommended: bool,
}

/// Why an answer has the size it has; `neighbors` are one size down and one up.
pub fn why(answer: &Answer, [smaller, larger]: &[Option<Candidate>; 2], system: System) -> WhyThisSize {
    let sizing = &answer.sizing;
    // For steering and track bars practice and calculation are one answer, the larger.
    let one_answer = has_no_second_path(answer.role);
    let (smaller, by_numbers) = if one_answer { (&None, &None) } else { (smaller, &sizing.by_numbers) };
    // A size that is both stands there once.
    let both = by_numbers.is_some() && *by_numbers == sizing.recommended;
    let (by_numbers, recommended) =
        if both { (&None, "Recommended, smallest that passes") } else { (by_numbers, "Recommended") };
    let sizes = [
        ("One size down", smaller),
        ("Smallest that passes", by_numbers),
        (recommended, &sizing.recommended),
        ("One size up", larger),
    ];
    let row = |(name, size): (&'static str, &Option<Candidate>)| Some(candidate(name, size.as_ref()?, system));
    let governs = say(&sizing.governs, system);
    let practice = sizing.by_trade.as_ref().map(|trade| {
        let words = say(&trade.words, system);
        // What was just said is not said again.
        if governs.contains(&words) {
            "Common practice has no source.".to_string()
        } else {
            format!("Builders usually fit {words}. Common practice, no source.")
        }
    });
    WhyThisSize {
        governs,
        chosen: sizing
            .overridden
            .then_some("You chose another size than the recommended one; the rest of this page answers for yours."),
        candidates: sizes.into_iter().filter_map(row).collect(),
        practice,
    }
}

fn candidate(name: &'static str, candidate: &Candidate, system: System) -> CandidateRow {
    let against = if candidate.feasible { "" } else { ", not recommended" };
    CandidateRow {
        name,
        bar: size(candidate.outside_diameter, candidate.wall, system),
        thread: threads::find(candidate.thread).map_or(candidate.thread, thread),
        utilization: value(candidate.utilization, Kind::Percent, system) + against,
        decides: candidate.decides,
        recommended: name.starts_with("Recommended"),
    }
}

/// How far each entry may go while the size stays as it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Margin {
    /// How far the first entries may go, for a table that is folded away.
    pub summary: String,
    /// The head of the last column: what the link does between those limits.
    pub head: &'static str,
    /// A row for each entry.
    pub rows: Vec<MarginRow>,
}

impl Margin {
    /// What stands on the fold of the table.
    pub fn heading(&self) -> String {
        format!("Margin: {}", self.summary)
    }
}

/// How far one entry may go.
#[derive(Debug, Clone, PartialEq)]
pub struct MarginRow {
    /// The entry.
    pub entry: &'static str,
    /// Its value.
    pub now: String,
    /// Between which values the link does as well.
    pub within: String,
}

/// The margin of an answer; `None` where there is none. Rows that are not `current` belong to the answer
/// before and only keep the place.
pub fn margin(rows: &[Firmness], current: bool, system: System) -> Option<Margin> {
    // A limit at the entry itself means that it does not pass even now; the verdict says so already.
    if rows.is_empty() || rows.iter().any(|row| row.most.is_some_and(|most| most <= row.now * (1.0 + 1e-9))) {
        return None;
    }
    let row = |row: &Firmness| MarginRow {
        entry: label(row.input),
        now: if current { value(row.now, row.kind, system) } else { "…".to_string() },
        within: if current { unbroken(&within(row, system)) } else { "…".to_string() },
    };
    let head = if rows.iter().any(|row| row.to_failure) { "Does not fail" } else { "Passes" };
    let rows: Vec<MarginRow> = rows.iter().map(row).collect();
    let brief = |row: &MarginRow| format!("{} {}", lower(row.entry.split(',').next().unwrap_or_default()), row.within);
    let summary = rows.iter().take(2).map(brief).collect::<Vec<_>>().join("; ");
    Some(Margin { summary, head, rows })
}

/// Between which values of one entry the link does as well.
fn within(row: &Firmness, system: System) -> String {
    let most = row.most.map(|most| show_at_most(most, row.kind, system));
    let least = row.least.map(|least| value(least, row.kind, system));
    match (least, most) {
        (Some(least), Some(most)) => format!("from {least} to {most}"),
        (None, Some(most)) => format!("up to {most}"),
        (Some(least), None) => format!("from {least} up"),
        (None, None) => String::new(),
    }
}

/// A value that was assumed, or a default that was changed.
#[derive(Debug, Clone, PartialEq)]
pub struct AssumedRow {
    /// What it is.
    pub name: &'static str,
    /// Its value.
    pub now: String,
    /// Where it comes from.
    pub source: &'static str,
    /// Whether it is the user's own.
    pub changed: bool,
}

/// Every assumed value with what stands behind it.
pub fn assumed(assumed: &[Assumption], system: System) -> Vec<AssumedRow> {
    let row = |one: &Assumption| AssumedRow {
        name: label(one.input),
        now: value(one.value, one.kind, system),
        source: if one.changed {
            "your entry"
        } else {
            NUMBERS.iter().find(|number| number.id == one.input).map_or("", |number| number.default_kind.words())
        },
        changed: one.changed,
    };
    assumed.iter().map(row).collect()
}

/// What leads to the assumed values.
pub fn assumed_summary(count: usize) -> String {
    format!("{count} assumed values you can change under “Change a default”")
}
