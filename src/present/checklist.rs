//! Fitting a link, step by step.

use super::words::say;
use crate::engine::sentence::{Said, spoken};
use crate::quantity::System;
use crate::report::Answer;

/// The title of the section.
pub const TITLE: &str = "Fitting it";

/// What becomes of ticks.
pub const TICKS: &str = "Ticks stay on this device. A tick clears when its numbers change.";

/// One step of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The sentence in inches: a tick belongs to it with its numbers, whatever units it is read in.
    pub key: String,
    /// The sentence in the reader's units.
    pub words: String,
}

/// The steps in the order of the work.
pub fn steps(answer: &Answer, system: System) -> Vec<Step> {
    let step = |said: &Said| Step { key: spoken(said, System::Inch), words: say(said, system) };
    answer.checklist.iter().map(step).collect()
}

/// What leads to the steps: how many there are, and how many are done.
pub fn summary(steps: &[Step], ticks: &[String]) -> String {
    let done = steps.iter().filter(|step| ticks.contains(&step.key)).count();
    let count = if steps.len() == 1 { "1 step".to_string() } else { format!("{} steps", steps.len()) };
    if done == 0 { count } else { format!("{count}, {done} done") }
}
