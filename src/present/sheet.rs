//! One link on a sheet of paper, for the saw and the lathe: what is cut and drilled first, then what is bought and set.

use super::adjustment::{self, Adjustment};
use super::answer::{self, Head};
use super::checklist;
use super::ends::{self, Ends};
use super::parts::{self, LinkParts};
use crate::document::Document;
use crate::quantity::System;
use crate::report::Answer;

/// Everything on the sheet, in its order.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// What to buy and make, and whether it passes.
    pub head: Head,
    /// What to drill, tap and set.
    pub ends: Ends,
    /// What to buy.
    pub parts: LinkParts,
    /// How far it adjusts.
    pub adjustment: Adjustment,
    /// The most urgent cautions.
    pub cautions: Vec<String>,
    /// How to fit it.
    pub steps: Vec<String>,
}

/// The sheet for a link.
pub fn sheet(document: &Document, at: usize, answer: &Answer, system: System) -> Sheet {
    Sheet {
        head: answer::head(document, at, answer, system),
        ends: ends::ends(&answer.link, system),
        parts: parts::of_link(document, at, answer, system),
        adjustment: adjustment::adjustment(answer, system),
        cautions: answer::cautions(answer, system).first,
        steps: checklist::steps(document, at, answer, system),
    }
}
