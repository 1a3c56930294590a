//! Fitting a link, step by step: the list on paper, and by what a tick knows its step.

use super::words::say;
use crate::document::{Document, one_line};
use crate::engine::fitting::fitting_steps::{self, Step};
use crate::engine::sentence::spoken;
use crate::log::LONGEST_KEY;
use crate::quantity::System;
use crate::report::Answer;

/// The title of the section.
pub const TITLE: &str = "Fitting it";

/// The key of a tick: the step, and its sentence in inches, so that a tick belongs to its numbers, whatever units it is
/// read in.
pub fn key(step: &Step) -> String {
    one_line(&format!("{}: {}", step.id, spoken(&step.words, System::Inch)), LONGEST_KEY)
}

/// The steps of the printed sheet, in the order of the work.
pub fn steps(document: &Document, at: usize, answer: &Answer, system: System) -> Vec<String> {
    let steps = fitting_steps::steps(document, at, answer);
    steps.iter().filter(|step| step.is_on_paper()).map(|step| say(&step.words, system)).collect()
}

/// What leads to the steps: how many there are.
pub fn summary(document: &Document, at: usize, answer: &Answer) -> String {
    let steps = fitting_steps::steps(document, at, answer);
    match steps.iter().filter(|step| step.is_on_screen() && step.is_ticked()).count() {
        1 => "1 step".to_string(),
        count => format!("{count} steps, with torque"),
    }
}

/// What is read by ruler at both ends once it is set, or why it is not fitted.
pub fn essentials(document: &Document, at: usize, answer: &Answer, system: System) -> Vec<String> {
    let steps = fitting_steps::steps(document, at, answer);
    let shown = [fitting_steps::DO_NOT_FIT, "ruler-a", "ruler-b", "threads-showing"];
    steps.iter().filter(|step| shown.contains(&step.id)).map(|step| say(&step.words, system)).collect()
}
