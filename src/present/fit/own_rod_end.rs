//! Rod ends that a published series stands in for, and the field that they are entered in.

use crate::document::{Document, OWN_ROD_END};
use crate::inputs::{At, ROD_END};
use crate::present::field::key;
use crate::present::words::letter;
use crate::report::{LinkGeometry, LinkReport};

/// On the button that leads to the field.
pub const ENTER: &str = "Enter it as your own rod end";

/// A rod end that nobody measured.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unmeasured {
    /// Of which link of the build.
    pub link: usize,
    /// At which end, 0 for A.
    pub end: usize,
    /// Which it is, in words.
    pub title: String,
}

impl Unmeasured {
    /// The id of the field in the Size view, which asks which rod end it is.
    pub fn field(&self, document: &Document) -> String {
        let place = At { end: self.end, ..At::of_link(document, self.link) };
        format!("in-{}", key(ROD_END.id, ROD_END.scope, place))
    }
}

/// The ends of a link that a series stands in for.
pub fn of_link(link: usize, geometry: &LinkGeometry) -> Vec<Unmeasured> {
    let ends = geometry.ends.iter().enumerate().filter(|(_, end)| end.rod_end_id != OWN_ROD_END);
    ends.map(|(end, _)| Unmeasured { link, end, title: format!("end {}", letter(end)) }).collect()
}

/// Of every link of the rig with an answer the first such end.
pub fn of_rig(document: &Document, reports: &[LinkReport]) -> Vec<Unmeasured> {
    let first = |(link, report): (usize, &LinkReport)| {
        let found = of_link(link, &report.answer()?.link).into_iter().next()?;
        let title = document.links.get(link)?.title();
        Some(Unmeasured { title: format!("{title}, {}", found.title), ..found })
    };
    reports.iter().enumerate().filter_map(first).collect()
}
