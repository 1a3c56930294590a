//! The scale of engagement: the lengths of thread that have a name, with the link as set among them.

use crate::present::words::fit;
use crate::quantity::System;
use crate::quantity::exceeds;
use crate::report::{EndGeometry, EngagementMark};

/// A length of thread on the scale.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Mark {
    /// How much full thread.
    pub length: String,
    /// What it is called; of the link as set, how far that can go.
    pub name: String,
    /// Where the link as set is against it.
    pub reached: Reached,
    /// Its source; empty for the link as set.
    pub source: String,
}

/// Where the link as set is against a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Reached {
    /// The mark is the link as set.
    #[default]
    AsSet,
    /// It has that much thread.
    Yes,
    /// It has less.
    No,
}

impl Reached {
    /// The word for it; none for the link as set.
    pub const fn word(self) -> &'static str {
        match self {
            Self::AsSet => "",
            Self::Yes => "reached",
            Self::No => "not reached",
        }
    }
}

/// The marks of an end: those that are not reached, the link as set, those that are; each the longest first.
pub(super) fn marks(end: &EndGeometry, system: System) -> Vec<Mark> {
    let fine = |value: f64| fit(value, system);
    let mut sorted: Vec<&EngagementMark> = end.marks.iter().collect();
    sorted.sort_by(|a, b| b.length.total_cmp(&a.length));
    let range = if exceeds(end.least, end.most) {
        "As set. No setting of this rod end has enough thread in the bar.".to_string()
    } else {
        format!("As set. It can go from {} to {}.", fine(end.least), fine(end.most))
    };
    let as_set = Mark { length: fine(end.engagement), name: range, reached: Reached::AsSet, source: String::new() };
    let mark = |mark: &EngagementMark| Mark {
        length: fine(mark.length),
        name: mark.name.to_string(),
        reached: if mark.reached { Reached::Yes } else { Reached::No },
        source: mark.source.words(),
    };
    let (reached, missed): (Vec<&EngagementMark>, Vec<_>) = sorted.into_iter().partition(|mark| mark.reached);
    let mut marks: Vec<Mark> = missed.into_iter().map(mark).collect();
    marks.push(as_set);
    marks.extend(reached.into_iter().map(mark));
    marks
}
