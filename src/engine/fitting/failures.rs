//! What broke: looks of failed parts, what happened to each, the check that would have caught it, and what to change.

mod rows;

pub use rows::FAILURES;

use crate::engine::checks;
use crate::source::Cite;

/// A look of a failed part.
#[derive(Debug, PartialEq)]
pub struct Failure {
    /// Never reused once released; its drawing goes by it too.
    pub id: &'static str,
    /// Its name, short enough to stand under a small drawing.
    pub name: &'static str,
    /// What it looks like.
    pub looks: &'static str,
    /// What happened.
    pub happened: &'static str,
    /// What would have caught it before.
    pub caught_by: &'static [Catch],
    /// What to change before the new part goes in.
    pub change: &'static str,
    /// Whether it stops the rig where it stands.
    pub stops: bool,
    /// Where this comes from.
    pub source: Cite,
}

/// What would have caught a failure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Catch {
    /// A check of the link, by its id.
    Check(&'static str),
    /// A place of the Fit view.
    Fit(FitPart),
    /// Something else, in words.
    Habit(&'static str),
}

/// A place of the Fit view, as a failure refers to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FitPart {
    /// The check as fitted.
    AsFitted,
    /// Longer or shorter.
    Turn,
    /// Fitting, step by step.
    FitIt,
    /// Looking again.
    Recheck,
    /// After a hit.
    Hit,
    /// What to carry, and borrowed parts.
    Spares,
}

/// The failure with an id.
pub fn find(id: &str) -> Option<&'static Failure> {
    FAILURES.iter().find(|failure| failure.id == id)
}

/// What a check is called in the list of checks; none where there is no such check.
pub fn check_title(id: &str) -> Option<&'static str> {
    checks::all().find(|check| check.id == id).map(|check| check.title)
}
