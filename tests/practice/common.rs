//! A link of a rig, and what the engine answers.

use linkwright::document::{Document, Link, Role, Use};
use linkwright::engine::report;
use linkwright::engine::sentence::spoken;
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::{Answer, Finding, LinkReport};

/// One link: its role, the rig's weight in lb, its length in in, and how the rig is used.
pub(crate) fn job(role: Role, weight: f64, length: f64, usage: Use) -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(weight)), Some(usage));
    document.links = vec![Link { role, length: Some(inch(length)), ..Link::default() }];
    document
}

pub(crate) fn answer(document: &Document) -> Answer {
    match &report(document).links[0] {
        LinkReport::Answer(answer) => answer.as_ref().clone(),
        LinkReport::Impossible(why) => panic!("{}", spoken(why, System::Inch)),
        LinkReport::Needs(needs) => panic!("{needs:?}"),
    }
}

pub(crate) fn find<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    answer.findings.iter().find(|finding| finding.id == id).unwrap_or_else(|| panic!("{id} was not asked"))
}
