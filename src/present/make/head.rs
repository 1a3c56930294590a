//! The head of the Make view: what is made, in a sentence, and whether its lengths may be sawn.

use crate::document::Document;
use crate::inputs::pieces_of;
use crate::present::saved::file_name;
use crate::present::words::{headline, pieces};
use crate::quantity::System;
use crate::report::Answer;

/// Above everything else where the link fails.
pub const DO_NOT_MAKE: &str = "Do not make this link: it fails as entered. Settle what fails before anything is cut.";

/// Said while lengths rest on rod ends that nobody measured.
pub const DO_NOT_SAW: &str =
    "Do not saw yet: measure your rod ends. These lengths rest on published sizes, and yours may differ.";

/// What is made, in a sentence: `Make 2 pieces: 2-1/4 in solid bar, 7075-T6/T651, …`.
pub fn title(document: &Document, at: usize, answer: &Answer, system: System) -> String {
    format!("Make {}: {}", pieces(pieces_of(document, at)), headline(&answer.link, system))
}

/// Whether the lengths must not be sawn yet.
pub fn do_not_saw(answer: &Answer) -> Option<&'static str> {
    answer.link.provisional.then_some(DO_NOT_SAW)
}

/// A name for a file of a link or of the rig: `linkwright-trail-rig-front-lower-links.dxf`.
pub fn name_of_file(title: &str, ending: &str) -> String {
    file_name(title).replace(".json", &format!(".{ending}"))
}
