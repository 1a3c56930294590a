//! The whole rig: what it is called, how it came out, how its links stand, and the same as lines of text.

use super::text::{DISCLAIMER, rig_line};
use super::words::{Units, both, headline, job, length, lower, still_needed, titled};
use super::{parts, verdict};
use crate::document::Document;
use crate::inputs;
use crate::quantity::{Kind, System};
use crate::report::{Answer, LinkReport, Verdict, WholeRig};

/// How far the plan is to scale, and what it is good for.
pub const PLAN_NOTE: &str = "Lengths, angles, track and wheelbase to scale; where on its axle a link is bolted is assumed. Touch a number to open that link.";

/// What adding a layout does.
pub const ADDING_NOTE: &str = "Only what the axle does not have yet is added. Pairs are entered once; if left and right differ, enter them separately in the list above.";

/// A verdict with the word for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Judged {
    /// How it came out.
    pub verdict: Verdict,
    /// The word for that.
    pub word: &'static str,
}

/// The head of the view.
#[derive(Debug, Clone, PartialEq)]
pub struct Head {
    /// What rig it is: `Rig of 4,100 lb, driven hard`.
    pub kicker: String,
    /// Its name; without one, how many links are to be made for it.
    pub title: String,
    /// How it came out; `None` while no link is answered.
    pub judged: Option<Judged>,
    /// How its links stand.
    pub status: String,
}

/// What the view begins with.
pub fn head(whole: &WholeRig, system: System) -> Head {
    let name = &whole.document.name;
    let unanswered = whole.rig.open == whole.links.len();
    let job = job(&whole.document, system);
    Head {
        kicker: if unanswered { "The whole rig".to_string() } else { format!("Rig of {job}") },
        title: if name.is_empty() { links_to_make(whole.rig.pieces) } else { name.clone() },
        judged: judged(whole),
        status: status(whole, !name.is_empty()),
    }
}

/// The line that stays in sight below the view.
pub fn summary(whole: &WholeRig) -> String {
    status(whole, true)
}

/// The verdict of the rig, in the word of the link which decides it.
fn judged(whole: &WholeRig) -> Option<Judged> {
    let verdict = whole.rig.verdict?;
    let decides = whole.links.iter().filter_map(LinkReport::answer).find(|answer| answer.verdict == verdict);
    Some(Judged { verdict, word: decides.map_or(verdict.word(), Answer::word) })
}

/// How the links stand together; begins with how many they are, where nothing else says so.
fn status(whole: &WholeRig, counted: bool) -> String {
    let rig = &whole.rig;
    let count = links_to_make(rig.pieces);
    if rig.unmeasured >= rig.pieces {
        return if counted { format!("{count}, none entered yet.") } else { "None entered yet.".to_string() };
    }
    let mut sentences = Vec::new();
    if counted {
        sentences.push(format!("{count}."));
    }
    sentences.extend(worst(whole));
    match rig.unmeasured {
        0 => {}
        1 => sentences.push("1 link still needs its length.".to_string()),
        count => sentences.push(format!("{count} links still need their lengths.")),
    }
    // What the rig lacks, each of its links lacks.
    let of_rig = inputs::still_needed_by_rig(&whole.document);
    match rig.unfinished {
        _ if !of_rig.is_empty() => sentences.push(still_needed(&of_rig)),
        0 => {}
        1 => sentences.push("1 link still needs an entry.".to_string()),
        count => sentences.push(format!("{count} links still need an entry.")),
    }
    if rig.impossible > 0 {
        sentences.push(format!("{} cannot be made as entered.", links(rig.impossible)));
    }
    sentences.join(" ")
}

/// Which link says most against the rig, and what; nothing while none says anything.
fn worst(whole: &WholeRig) -> Option<String> {
    let index = *whole.rig.worst_first.first()?;
    let says = match whole.links.get(index)? {
        LinkReport::Answer(answer) => lower(answer.word()),
        LinkReport::Impossible(_) => "cannot be made as entered".to_string(),
        LinkReport::Needs(_) => return None,
    };
    Some(format!("Worst: {}, {says}.", lower(&whole.document.links.get(index)?.title())))
}

/// `1 link to make`, `13 links to make`: a pair counts as two.
fn links_to_make(count: usize) -> String {
    if count == 1 { "1 link to make".to_string() } else { format!("{count} links to make") }
}

/// How many entries the links to make are, where some of them are entered together.
pub fn entries_line(whole: &WholeRig) -> Option<String> {
    let (entries, pieces) = (whole.links.len(), whole.rig.pieces);
    let said = if entries == 1 { "1 entry".to_string() } else { format!("{entries} entries") };
    (entries < pieces).then(|| format!("{said} for {pieces} links: links that are alike are entered once."))
}

/// `1 link`, `13 links`.
fn links(count: usize) -> String {
    if count == 1 { "1 link".to_string() } else { format!("{count} links") }
}

/// Which link it is, under the number that it has on the plan and in the list, so that two people on a call mean the
/// same one.
pub fn numbered(document: &Document, index: usize) -> String {
    format!("{}. {}", index + 1, titled(document, index))
}

/// The links by the numbers that they have on the plan and in the list, to pick one.
pub fn picker_titles(document: &Document) -> Vec<String> {
    document.links.iter().enumerate().map(|(index, link)| format!("{}. {}", index + 1, link.title())).collect()
}

/// What the button back to the list is called.
pub const fn back_label(all_entered: bool) -> &'static str {
    if all_entered { "All entered: back to the rig" } else { "Back to the rig" }
}

/// The rig as lines of text with both units, for a message; `link` is the address that opens it elsewhere.
pub fn text(whole: &WholeRig, link: Option<String>) -> String {
    let document = &whole.document;
    let mut lines = Vec::new();
    if !document.name.is_empty() {
        lines.push(document.name.clone());
    }
    if document.rig.weight.is_some() {
        lines.push(rig_line(document));
    }
    lines.push(summary(whole));
    for &index in &whole.rig.worst_first {
        lines.push(numbered(document, index));
        match whole.links.get(index).and_then(LinkReport::answer) {
            Some(answer) => {
                let made = &answer.link;
                lines.push(format!(
                    "{} mount to mount: {}. Saw to {}. {}.",
                    length(made.length, Units::Both),
                    headline(made, Units::Both),
                    length(made.cut, Units::Both),
                    answer.word()
                ));
                lines.extend(verdict::buckling_text(answer));
            }
            None => lines.push("No answer yet.".to_string()),
        }
    }
    lines.push("Parts:".to_string());
    lines.extend(parts::text(&whole.rig.parts));
    lines.push(format!("All bars together: {}", both(whole.rig.weight, Kind::Weight)));
    lines.push(DISCLAIMER.to_string());
    lines.extend(link);
    lines.join("\n")
}
