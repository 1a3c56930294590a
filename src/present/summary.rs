//! The line that stays in sight while typing, the page's name, and what is still needed.

use super::words::{IMPOSSIBLE, length, rig_title, still_needed, stock, threads};
use crate::document::Document;
use crate::inputs;
use crate::quantity::System;
use crate::report::{LinkReport, Verdict};

/// The title of the page while nothing is entered.
const NAME: &str = "Linkwright: size a suspension link and see why";

/// What to measure and enter first.
pub const MEASURE: &str =
    "Measure one link from hole center to hole center. Add what the rig weighs, loaded, and how you drive it.";

/// What comes of it.
pub const WHAT_YOU_GET: &str = "You get the bar, the rod ends, what to saw, tap and set, and how much margin it has. Every number opens its working.";

/// What the window, a bookmark and a file of the printed page are called: for one link, if `link` names it.
pub fn page_title(document: &Document, link: Option<usize>, system: System) -> String {
    if *document == Document::default() {
        return NAME.to_string();
    }
    let rig = rig_title(document, system);
    let link = link.filter(|_| document.links.len() > 1).and_then(|link| document.links.get(link));
    let link = link.map(|link| format!("{}, ", link.title())).unwrap_or_default();
    format!("{link}{rig}: Linkwright")
}

/// The answer for a link in one line; `stale` when it rests on an entry before the last one.
pub fn line(report: &LinkReport, document: &Document, link: usize, system: System, stale: bool) -> String {
    let line = match report {
        LinkReport::Answer(answer) => {
            let made = &answer.link;
            format!(
                "{}, {}, saw to {}. {}.",
                stock(made, system),
                threads(&made.ends),
                length(made.cut, system),
                answer.word()
            )
        }
        LinkReport::Impossible(_) => IMPOSSIBLE.to_string(),
        LinkReport::Needs(needs) => still_needed(needs),
    };
    // Of several links the one that is meant is named: the picker may be out of sight.
    let line = match document.links.get(link) {
        Some(link) if document.links.len() > 1 => format!("{}. {line}", link.title()),
        _ => line,
    };
    if stale { format!("From your last good entry: {line}") } else { line }
}

/// The same where it is made: a bar whose rod ends nobody measured is not sawn, whatever its size passes.
pub fn line_to_make(report: &LinkReport, document: &Document, link: usize, system: System, stale: bool) -> String {
    match report {
        LinkReport::Answer(answer) if answer.link.provisional && answer.verdict != Verdict::Fails => {
            let title = document.links.get(link).map(|link| format!("{}: ", link.title())).unwrap_or_default();
            format!("{title}do not saw yet, measure the rod ends. {} is provisional.", length(answer.link.cut, system))
        }
        _ => line(report, document, link, system, stale),
    }
}

/// Whether one of the first entries is missing, so that the page says what to measure.
pub fn is_first_visit(needs: &[&'static str]) -> bool {
    needs.iter().any(|id| [inputs::LENGTH.id, inputs::WEIGHT.id, inputs::USAGE.id].contains(id))
}
