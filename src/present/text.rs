//! The answer for a link as lines of text in both units, for a message or a phone call.

use super::answer::STALE;
use super::verdict::{buckling_text, weakest};
use super::words::{Units, both, flats, headline, job, length, letter, lower, sheet_name, thread};
use super::{ends, parts};
use crate::document::Document;
use crate::engine;
use crate::inputs::{At, WEIGHT};
use crate::quantity::{Kind, System, show};
use crate::report::{Answer, EndGeometry};

/// How far to trust what is sent.
pub const DISCLAIMER: &str = "An estimate for planning, not a certificate.";

/// The sentences of the screen for one link. `stale` says that an entry was not taken; `address` is the link to it, where
/// it opens elsewhere.
pub fn plain_text(document: &Document, at: usize, answer: &Answer, stale: bool, address: Option<String>) -> String {
    let made = &answer.link;
    let mut lines: Vec<String> = stale.then(|| STALE.to_string()).into_iter().collect();
    lines.push(sheet_name(document, at));
    lines.push(format!("{} mount to mount", length(made.length, Units::Both)));
    lines.push(rig_line(document));
    lines.push(headline(made, Units::Both));
    lines.push(verdict_line(answer));
    lines.extend(buckling_text(answer));
    let [bar, cut] = [made.bar, made.cut].map(|value| length(value, Units::Both));
    lines.push(format!("Bar, face to face: {bar}. Saw to {cut}."));
    if made.provisional {
        lines.push("Provisional: measure your rod ends before you saw.".to_string());
    }
    lines.push(format!("Bar weight, each: {}", both(made.bar_weight, Kind::Weight)));
    lines.extend(made.ends.iter().enumerate().map(|(index, end)| end_line(index, end, made.bore > 0.0)));
    lines.extend(flats(made, Units::Both));
    lines.push("Parts:".to_string());
    lines.extend(parts::text(&engine::parts(document, at, answer)));
    lines.push(DISCLAIMER.to_string());
    lines.extend(address);
    lines.join("\n")
}

/// What the rig weighs in both units, and how it is driven.
pub fn rig_line(document: &Document) -> String {
    let weight = WEIGHT.value(document, At::default()).map(|weight| show(weight, Kind::Weight, System::Metric));
    format!("Rig: {} ({})", job(document, System::Inch), weight.unwrap_or_default())
}

fn verdict_line(answer: &Answer) -> String {
    let (word, says) = (answer.word(), weakest(answer, Units::Both));
    // What breaks a rule says so itself.
    if says.starts_with(word) { says } else { format!("{word}. {says}") }
}

fn end_line(index: usize, end: &EndGeometry, tube: bool) -> String {
    let rows = ends::rows(end, tube, Units::Both);
    let rows: Vec<String> = rows.into_iter().map(|row| format!("{}: {}", lower(row.name), row.value)).collect();
    format!("End {}: {}, {}; {}", letter(index), thread(end.thread), end.hand.words(), rows.join("; "))
}
