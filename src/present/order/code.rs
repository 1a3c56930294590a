//! The order code as the page shows it, and what comparing a code with it gives.

use crate::document::Document;
use crate::engine::shop::code::Compared;
use crate::present::words::{lower, titled};

/// In place of the code.
pub const NO_CODE_YET: &str = "No code yet: it stands for what is made, and a link still lacks something.";

/// Said beneath the field for a code.
pub const HELP: &str =
    "The same entries give the same code on any device: it changes with anything that is made otherwise.";

/// What a comparison says, with the class of its verdict.
pub fn compared(document: &Document, compared: Compared) -> (&'static str, String) {
    match compared {
        Compared::Order => ("same", "The same: this code belongs to what stands here.".to_string()),
        Compared::Link(link) => {
            ("same", format!("The same: this code belongs to the {}.", lower(&titled(document, link))))
        }
        Compared::Another => (
            "differs",
            "Another bar: this code does not belong to what stands here. Read every number back.".to_string(),
        ),
        Compared::NothingYet => {
            ("open", "A code, but nothing here to compare it with: a link still lacks something.".to_string())
        }
        Compared::NoCode(why) => ("open", why.sentence()),
    }
}
