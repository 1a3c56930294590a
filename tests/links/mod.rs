//! A link or two that several tests begin with.

use linkwright::document::{Document, Use};
use linkwright::engine::report;
use linkwright::quantity::{inch, lbf};
use linkwright::report::{Answer, Finding};

/// The worked example: a 4,100 lb rig, driven hard, 38 in.
pub(crate) fn hard() -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    document.links[0].length = Some(inch(38.0));
    document
}

/// The same with its size and its rod ends decided.
pub(crate) fn sized(size: f64, a: &'static str, b: &'static str) -> Document {
    let mut document = hard();
    document.links[0].outside_diameter = Some(inch(size));
    (document.links[0].ends[0].rod_end, document.links[0].ends[1].rod_end) = (Some(a), Some(b));
    document
}

/// The answer for its only link.
pub(crate) fn answer(document: &Document) -> Answer {
    report(document).links[0].answer().expect("an answer").clone()
}

/// One of its findings.
pub(crate) fn find<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    answer.findings.iter().find(|it| it.id == id).expect("asked")
}
