//! What was done with an order, by whom and when, as a short list.

use crate::document::{Happened, Order, Stage, Step};

/// Said above the list.
pub const TITLE: &str = "What was done, by whom and when";

/// Said beneath the field for a name.
pub const WHOSE_NAME: &str =
    "The name goes with the step you press: who asked, heard it read back, said yes, or cut it.";

/// A step of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HistoryRow {
    /// What happened, and who it was.
    pub what: String,
    /// When.
    pub when: String,
    /// The order code then.
    pub code: String,
}

/// The list, the oldest step first; `spoken` says a time where the reader is.
pub fn history(order: &Order, spoken: impl Fn(&str) -> String) -> Vec<HistoryRow> {
    let row = |step: &Step| HistoryRow {
        what: what(step),
        when: Some(spoken(&step.at)).filter(|time| !time.is_empty()).unwrap_or("Time not known".to_string()),
        code: if step.code.is_empty() { "No code yet".to_string() } else { format!("Code {}", step.code) },
    };
    order.steps().iter().map(row).collect()
}

fn what(step: &Step) -> String {
    let by = &step.by;
    match (step.what, by.is_empty()) {
        (Happened::Reached(Stage::Asked), true) => "Asked for, nobody named".to_string(),
        (Happened::Reached(Stage::Asked), false) => format!("Asked for by {by}"),
        (Happened::Reached(Stage::ReadBack), true) => "Read back, nobody named".to_string(),
        (Happened::Reached(Stage::ReadBack), false) => format!("Read back to {by}"),
        (Happened::Reached(Stage::Confirmed), true) => "Confirmed, nobody named".to_string(),
        (Happened::Reached(Stage::Confirmed), false) => format!("Confirmed by {by}"),
        (Happened::Reached(Stage::Cut), true) => "Cut, nobody named".to_string(),
        (Happened::Reached(Stage::Cut), false) => format!("Cut by {by}"),
        (Happened::YesTakenBack, true) => "Yes taken back, nobody named".to_string(),
        (Happened::YesTakenBack, false) => format!("Yes taken back by {by}"),
    }
}
