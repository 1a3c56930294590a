//! Cautions where the decision is made.

use super::sentence::{Said, said};
use crate::report::{Answer, Verdict};

/// What to mind before acting on an answer, most important first.
pub(super) fn cautions(answer: &Answer, copied_end: Option<usize>) -> Vec<Said> {
    let mut cautions = Vec::new();
    if answer.verdict == Verdict::Fails {
        cautions.push(said!["At least one part fails below. Do not build this link as it stands."]);
    }
    if !answer.link.adjustment.opposite_hands {
        cautions.push(if answer.link.adjustment.per_turn > 0.0 {
            said!["Both ends have the same hand: turning the bar winds one end out while the other goes in, and changes the length only by the difference of their pitches. One end can unscrew without anybody noticing. Use one right-hand and one left-hand end."]
        } else {
            said!["Both ends have the same hand: turning the bar does not change its length, and one end can unscrew without anybody noticing. Use one right-hand and one left-hand end."]
        });
    }
    if answer.role.steers() {
        cautions.push(said!["Steering is safety critical and regulated: your local rules and the makers of its parts decide, and a licensed engineer should check it. Never straighten or weld a steering link, and never mount it in single shear."]);
    }
    if let Some(end) = copied_end {
        let [entered, copied] = if end == 1 { ["A", "B"] } else { ["B", "A"] };
        cautions.push(said![
            "Only the rod end at ",
            (entered),
            " was entered; the one at ",
            (copied),
            " is taken to be the same. Enter it if it differs."
        ]);
    }
    if !answer.loads.caution.is_empty() {
        cautions.push(answer.loads.caution.clone());
    }
    cautions.push(said!["This is an estimate for planning, not a certificate. A rod-end maker's rating, your local rules and a licensed engineer take precedence."]);
    cautions.push(said!["Links carry people. If this rig sees public roads, or the link is welded, repaired or outside the usual, have a licensed engineer check it."]);
    for words in answer.link.material.cautions {
        cautions.push(said![(*words)]);
    }
    cautions.push(said!["A part that passes these numbers can still crack with time. Replace a link that is bent, cracked or deeply gouged; never straighten it."]);
    cautions
}
