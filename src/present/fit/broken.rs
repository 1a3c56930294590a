//! What broke? The looks of failed parts to pick from, and what each tells.

use super::Place;
use crate::engine::fitting::failures::{Catch, FAILURES, Failure, FitPart, check_title, find};
use crate::present::drawing::{Drawing, failure};
use crate::report::Answer;

/// What stands on the section.
pub const TITLE: &str = "What broke? Pick what it looks like";

/// How to use it.
pub const HELP: &str = "Pick the picture nearest to what you hold in your hand.";

/// Said of a failure that stops the rig.
pub const STOPS: &str = "Do not drive on with it.";

/// A look to pick.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    /// Its id.
    pub id: &'static str,
    /// Its name.
    pub name: &'static str,
    /// A small drawing of it.
    pub drawing: Drawing,
}

/// Where something leads that would have caught it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leads {
    /// To a check, by its id.
    Check(&'static str),
    /// To a place of this view.
    Place(Place),
    /// Nowhere on the page.
    Nowhere,
}

/// What one look tells.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// Its name.
    pub name: &'static str,
    /// What it looks like.
    pub looks: &'static str,
    /// What happened.
    pub happened: &'static str,
    /// What would have caught it, each with where it leads.
    pub caught_by: Vec<(String, Leads)>,
    /// What to change.
    pub change: &'static str,
    /// Whether it stops the rig.
    pub stops: bool,
    /// Where this comes from.
    pub source: String,
    /// The drawing of it.
    pub drawing: Drawing,
}

/// Every look.
pub fn looks() -> Vec<Look> {
    FAILURES.iter().map(|row| Look { id: row.id, name: row.name, drawing: drawing(row) }).collect()
}

fn drawing(row: &Failure) -> Drawing {
    failure::failure(row.id, row.looks)
}

/// What a look tells. A check leads to where it stands only where this link has it.
pub fn told(id: &str, answer: Option<&Answer>) -> Option<Told> {
    let row = find(id)?;
    let caught = |catch: &Catch| match *catch {
        Catch::Check(id) => {
            let title = check_title(id).unwrap_or_default();
            let Some(answer) = answer else { return (format!("Check: {title}"), Leads::Nowhere) };
            if answer.findings.iter().any(|finding| finding.id == id) {
                (format!("Check: {title}"), Leads::Check(id))
            } else {
                (format!("Check: {title} (does not arise for this link as entered)"), Leads::Nowhere)
            }
        }
        Catch::Fit(part) => (format!("Fit: {}", place(part).title()), Leads::Place(place(part))),
        Catch::Habit(words) => (words.to_string(), Leads::Nowhere),
    };
    Some(Told {
        name: row.name,
        looks: row.looks,
        happened: row.happened,
        caught_by: row.caught_by.iter().map(caught).collect(),
        change: row.change,
        stops: row.stops,
        source: row.source.words(),
        drawing: drawing(row),
    })
}

const fn place(part: FitPart) -> Place {
    match part {
        FitPart::AsFitted => Place::Safe,
        FitPart::Turn => Place::Turn,
        FitPart::FitIt => Place::FitIt,
        FitPart::Recheck => Place::Recheck,
        FitPart::Hit => Place::Hit,
        FitPart::Spares => Place::Spares,
    }
}
