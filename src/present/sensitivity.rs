//! What would change the answer: each value a tenth higher, and how far this very link may go.

use super::words::{label, value};
use crate::inputs;
use crate::quantity::{Kind, System, show, show_at_most};
use crate::report::{Answer, Firmness, Sensitivity, Verdict};

/// The heads of the table's columns.
pub const HEAD: [&str; 4] = ["Value", "A tenth more", "Then used", "Passes as far as"];

/// In place of the table while there is no answer.
pub const NOTHING_YET: &str = "Nothing to show until there is an answer.";

/// One value raised by a tenth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The value's name.
    pub name: &'static str,
    /// What it is now and then.
    pub raised: String,
    /// What the weakest part is then asked for.
    pub used: String,
    /// By how much that changes, and which part it is.
    pub change: String,
    /// How far the value may go.
    pub limit: String,
}

/// How to read the table; nothing where there is no row.
pub fn how_to_read(rows: &[Sensitivity], system: System) -> Option<String> {
    let now = show(rows.first()?.used_now, Kind::Percent, system);
    Some(format!(
        "The size stays as it is. Now its weakest part is at {now} of its limit. Each row raises one value alone by a tenth, the strongest first."
    ))
}

/// The rows of the table.
pub fn rows(rows: &[Sensitivity], system: System) -> Vec<Row> {
    rows.iter().map(|of| row(of, system)).collect()
}

fn row(of: &Sensitivity, system: System) -> Row {
    let limit = match of.limit {
        Some(limit) if (limit - of.now).abs() <= 1e-9 * of.now.abs() => "does not pass now".to_string(),
        Some(limit) if of.used_then > of.used_now => show_at_most(limit, of.kind, system),
        Some(limit) => value(limit, of.kind, system),
        None => "any value you can enter".to_string(),
    };
    let change = (of.used_then - of.used_now) * 100.0;
    let sign = if change > 0.0 { "+" } else { "−" };
    Row {
        name: label(of.input),
        raised: format!("{} → {}", value(of.now, of.kind, system), value(of.more, of.kind, system)),
        used: show(of.used_then, Kind::Percent, system),
        change: format!("{sign}{:.1} points; {}", change.abs(), of.decides),
        limit,
    }
}

/// How far this very link may go, one entry at a time; nothing where it fails. Limits that are `of_before`, while they
/// are worked out anew, only keep their place.
pub fn furthest(answer: &Answer, firmness: &[Firmness], of_before: bool, system: System) -> Option<String> {
    if answer.verdict == Verdict::Fails {
        return None;
    }
    let named = [(inputs::WEIGHT.id, "a rig of ", Kind::Weight), (inputs::LENGTH.id, "a length of ", Kind::Length)];
    let limits: Vec<String> = named
        .into_iter()
        .filter_map(|(id, name, kind)| {
            let limit = firmness.iter().find(|row| row.input == id)?.most?;
            let limit = if of_before { "…".to_string() } else { show_at_most(limit, kind, system) };
            Some(format!("{name}{limit}"))
        })
        .collect();
    let sentence = || format!("With nothing else changed, this link passes up to {}.", limits.join(", or "));
    (!limits.is_empty()).then(sentence)
}
