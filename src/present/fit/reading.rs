//! A reading on the rig as a field: what is typed, what stands there, and why an entry is refused.

use crate::engine::fitting::threads;
use crate::log::{Reading, ReadingKind, ReadingRow};
use crate::quantity::{self, System};

/// The rows that count threads.
const THREADS: [&str; 2] = ["threads-a", "threads-b"];

/// What a field for a number holds while nobody types.
pub fn typed(row: &ReadingRow, reading: Option<Reading>, system: System) -> String {
    match (row.holds, reading) {
        (ReadingKind::Number { kind, .. }, Some(Reading::Number(value))) => quantity::plain(value, kind, system),
        _ => String::new(),
    }
}

/// Reads what was typed; an empty field takes the reading back.
///
/// # Errors
/// A sentence that says what would work.
pub fn read(row: &ReadingRow, text: &str, system: System) -> Result<Option<Reading>, String> {
    let text = text.trim();
    let ReadingKind::Number { kind, least, most } = row.holds else { return Ok(row.pick(text)) };
    if text.is_empty() {
        return Ok(None);
    }
    let value = quantity::read(text, kind, system).map_err(|misread| misread.sentence())?;
    let reading = Reading::Number(value);
    if row.takes(reading) {
        return Ok(Some(reading));
    }
    let [value, least, most] = [value, least, most].map(|value| quantity::show(value, kind, system));
    Err(format!("I read {value}. This can be from {least} to {most}: measure again."))
}

/// A reading in words, with its unit; empty where there is none.
pub fn shown(row: &ReadingRow, reading: Option<Reading>, system: System) -> String {
    match (row.holds, reading) {
        (_, Some(Reading::Number(count))) if THREADS.contains(&row.id) => threads(count),
        (ReadingKind::Number { kind, .. }, Some(Reading::Number(value))) => quantity::show(value, kind, system),
        (ReadingKind::Pick(picks), Some(Reading::Pick(id))) => {
            picks.iter().find(|(of, _)| *of == id).map(|(_, label)| (*label).to_string()).unwrap_or_default()
        }
        _ => String::new(),
    }
}
