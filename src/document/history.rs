//! What was done with an order, by whom and when: one step after another, kept as one text that people can read.

use super::{Stage, is_code, is_time, tidy_reference};

/// As many steps as are kept; of more, the oldest go.
pub const MOST_STEPS: usize = 40;

/// Stands between two steps.
const BETWEEN: &str = " | ";

/// Stands for a time or a code that nobody knows.
const NOT_KNOWN: &str = "-";

/// The id of a yes that was taken back.
const TAKEN_BACK: &str = "taken-back";

/// What happened to an order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Happened {
    /// It came to a stage.
    Reached(Stage),
    /// Its yes was taken back.
    YesTakenBack,
}

impl Happened {
    /// Never reused once released: links and files carry it.
    const fn id(self) -> &'static str {
        match self {
            Self::Reached(stage) => stage.id(),
            Self::YesTakenBack => TAKEN_BACK,
        }
    }

    fn of_id(id: &str) -> Option<Self> {
        if id == TAKEN_BACK {
            return Some(Self::YesTakenBack);
        }
        Stage::ALL.into_iter().find(|stage| stage.id() == id).map(Self::Reached)
    }
}

/// One step of an order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// What happened.
    pub what: Happened,
    /// Who asked, heard it read back, said yes or cut; empty when nobody was named.
    pub by: String,
    /// When, as ISO 8601; empty when that is not known.
    pub at: String,
    /// The order code then; empty when there was none.
    pub code: String,
}

/// The steps of an order, the oldest first.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct History(String);

impl History {
    /// As links and files carry it: `asked 2026-11-30T10:00:00.000Z - The owner | read-back …`.
    pub fn text(&self) -> &str {
        &self.0
    }

    /// Reads such a text; `None` when it is none.
    pub fn read(text: &str) -> Option<Self> {
        let steps: Option<Vec<Step>> = text.split(BETWEEN).filter(|step| !step.is_empty()).map(step_of).collect();
        let steps = steps.filter(|steps| steps.len() <= MOST_STEPS)?;
        let read = Self::of(&steps);
        (read.0 == text).then_some(read)
    }

    /// The steps, the oldest first.
    pub fn steps(&self) -> Vec<Step> {
        self.0.split(BETWEEN).filter_map(step_of).collect()
    }

    /// Adds a step. What cannot stand in it is left open.
    pub fn add(&mut self, step: &Step) {
        let mut steps = self.steps();
        steps.push(step.clone());
        let oldest = steps.len().saturating_sub(MOST_STEPS);
        *self = Self::of(steps.get(oldest..).unwrap_or_default());
    }

    fn of(steps: &[Step]) -> Self {
        let steps: Vec<String> = steps.iter().map(written).collect();
        Self(steps.join(BETWEEN))
    }
}

/// A step as it is kept. The name stands last, since it may have spaces.
fn written(step: &Step) -> String {
    let known = |text: &str, may: bool| if may && !text.is_empty() { text.to_string() } else { NOT_KNOWN.to_string() };
    let [at, code] = [known(&step.at, is_time(&step.at)), known(&step.code, is_code(&step.code))];
    let by = tidy_reference(&step.by.replace('|', "/"));
    format!("{} {at} {code} {by}", step.what.id()).trim_end().to_string()
}

/// Reads a step as it is kept.
fn step_of(text: &str) -> Option<Step> {
    let mut parts = text.splitn(4, ' ');
    let [what, at, code] = [parts.next()?, parts.next()?, parts.next()?];
    let known = |text: &str| if text == NOT_KNOWN { String::new() } else { text.to_string() };
    let by = parts.next().unwrap_or_default().to_string();
    Some(Step { what: Happened::of_id(what)?, by, at: known(at), code: known(code) })
}
