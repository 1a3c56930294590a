//! What is read back before an order is taken: every number in words and in figures, and what differs from what was
//! first said.

use super::needed::failing;
use super::{mounts, spoken};
use crate::differences::{Change, Difference, differences};
use crate::document::{Document, SuppliedBy, day_in_words};
use crate::engine::shop::code::Code;
use crate::inputs::{At, Choice, FINISH, MEASURED_ON, pieces_of};
use crate::present::verdict::weakest;
use crate::present::words::{self, Units, in_units, job, length, letter, lower, metal};
use crate::quantity::System;
use crate::report::{Answer, EndGeometry, LinkGeometry, LinkReport, Verdict};
use crate::share;

/// Said beneath the script.
pub const FIRST_SAID: &str = "What differs from what was first said is read back as well.";

/// All that is read aloud of a link that fails.
const FAILS: &str = "This link fails as entered. I cannot take the order.";

/// What tells the reader of the page where to enter something, and nobody on the phone.
const FOR_THE_PAGE: &str = ": say so under Rod ends";

/// A part of what is read back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// What it is about: the rig, one link, or the order.
    pub heading: String,
    /// What is read back of it, a line each.
    pub lines: Vec<String>,
}

/// What is read back of a whole order: the rig, each link, then the order.
pub fn sections(document: &Document, reports: &[LinkReport], code: Option<Code>, system: System) -> Vec<Section> {
    let section = |heading: &str, lines| Section { heading: heading.to_string(), lines };
    let mut sections = vec![section("Rig", vec![for_what(document, system)])];
    for (link, report) in reports.iter().enumerate() {
        let lines = match report {
            LinkReport::Answer(answer) if answer.verdict == Verdict::Fails => vec![FAILS.to_string()],
            LinkReport::Answer(answer) => link_lines(document, link, answer, system),
            _ => vec![format!("{}: this link cannot be made from what is entered so far.", title(document, link))],
        };
        sections.push(Section { heading: heading(document, link), lines });
    }
    // Nobody is asked to agree to what cannot be made.
    if !failing(document, reports).is_empty() {
        if document.links.len() > 1 {
            sections.push(section("Order", vec!["I cannot take the order.".to_string()]));
        }
        return sections;
    }
    let mut lines = of_order(document);
    lines.extend(since_first_said(document, system));
    lines.push(match code {
        Some(code) => format!("The order code is {}, spelled {}.", code.written(), code.spoken()),
        None => "There is no order code yet: something is still missing.".to_string(),
    });
    lines.push("Is every one of these right?".to_string());
    sections.push(section("Order", lines));
    sections
}

/// The same as lines of text, with an empty line above each heading but the first.
pub fn script(document: &Document, reports: &[LinkReport], code: Option<Code>, system: System) -> Vec<String> {
    let mut lines = Vec::new();
    for section in sections(document, reports, code, system) {
        if !lines.is_empty() {
            lines.push(String::new());
        }
        lines.push(section.heading);
        lines.extend(section.lines);
    }
    lines
}

/// What stands above one link: which of several it is, and its name.
pub(super) fn heading(document: &Document, link: usize) -> String {
    match document.links.len() {
        0 | 1 => title(document, link),
        links => format!("Link {} of {links}: {}", link + 1, title(document, link)),
    }
}

/// What is read back of one link, a line each.
pub fn link_lines(document: &Document, link: usize, answer: &Answer, system: System) -> Vec<String> {
    let (made, place) = (&answer.link, At::of_link(document, link));
    let count = pieces_of(document, link);
    let mut lines = vec![format!("{}: {}.", title(document, link), spoken::pieces(count as u64))];
    let measured = match (MEASURED_ON.get)(document, place) {
        Some("rig") => "measured on the rig at ride height",
        Some("old-link") => "measured on the old link, eye center to eye center",
        _ => "nobody has said how it was measured",
    };
    let [as_given, bar] = [made.length, made.bar].map(|value| spoken::length(value, system));
    lines.push(format!("Mount to mount on the rig: {as_given}, hole center to hole center; {measured}."));
    lines.push(format!("Eye to eye of the finished link, as set: {as_given}, eye center to eye center."));
    lines.push(format!("The bar alone: {bar}, face to face."));
    let (other, name) = match system {
        System::Inch => (System::Metric, "millimeters"),
        System::Metric => (System::Inch, "inches"),
    };
    let [given, finished] = [made.length, made.bar].map(|value| length(value, other));
    lines.push(format!("The same in {name}: {given} mount to mount, and a bar of {finished}."));
    if made.provisional {
        lines.push("The bar length stands only until the rod ends are measured.".to_string());
    }
    for (end, made) in made.ends.iter().enumerate() {
        lines.push(end_line(document, At { end, ..place }, made));
    }
    let says = |value, _| spoken::length(value, system);
    lines.extend(mounts::readings(document, place, made, &says));
    lines.extend(mounts::said(document, place, &says));
    if made.ends[0].hand == made.ends[1].hand {
        let hand = made.ends[0].hand.words();
        lines.push(format!(
            "Both ends are {hand}. One right-hand and one left-hand end would let you set the length by turning the bar."
        ));
    }
    let finish = picked(&FINISH, document, place).unwrap_or_default();
    let size = words::stock(made, system);
    lines.push(format!("Made of {size} {}, {}.", metal(made), lower(finish)));
    lines.push(across(made, system));
    // Read back for a yes, so what the calculation says of it must be heard too.
    let (word, says) = (answer.word(), weakest(answer, system).replace(FOR_THE_PAGE, ""));
    lines.push(format!("Calculation: {}", if says.starts_with(word) { says } else { format!("{word}. {says}") }));
    lines
}

/// Outside diameter and wall, in the units that the stock is sold in.
fn across(made: &LinkGeometry, system: System) -> String {
    // The name it is sold under stands first in either system.
    let name = words::trade(made.outside_diameter, system);
    let sold =
        if name.split('(').next().is_some_and(|name| name.contains("mm")) { System::Metric } else { System::Inch };
    let [outside, wall] = [made.outside_diameter, made.wall].map(|value| spoken::length(value, sold));
    if made.wall > 0.0 {
        format!("Outside diameter: {outside}. Wall: {wall}.")
    } else {
        format!("Outside diameter: {outside}.")
    }
}

/// Thread, hand and owner of the rod end at one end.
fn end_line(document: &Document, place: At, made: &EndGeometry) -> String {
    format!(
        "End {}: {}, that is {}; {}; {}.",
        letter(place.end),
        spoken::thread(made.thread),
        words::thread(made.thread),
        spoken::hand(made.hand, place.end),
        whose(document, place)
    )
}

/// Who brings the rod end at one end, as it is told to the customer.
pub(super) fn whose(document: &Document, place: At) -> &'static str {
    match document.links.get(place.link).and_then(|link| link.ends.get(place.end)?.supplied_by) {
        Some(SuppliedBy::Shop) => "the rod end comes from us",
        Some(SuppliedBy::Customer) => "the rod end is your own",
        _ => "nobody has said whose the rod end is",
    }
}

/// Which rig the order is for.
fn for_what(document: &Document, system: System) -> String {
    let job = job(document, system);
    let job = if job.is_empty() { "a rig of which nothing is said yet".to_string() } else { format!("a rig of {job}") };
    if document.name.is_empty() { format!("For {job}.") } else { format!("For “{}”, {job}.", document.name) }
}

/// What else the order says.
fn of_order(document: &Document) -> Vec<String> {
    let order = &document.order;
    let wanted = day_in_words(&order.wanted);
    let texts = [("Your reference", &order.reference), ("Wanted by", &wanted), ("Remarks", &order.remarks)];
    texts.into_iter().filter(|(_, text)| !text.is_empty()).map(|(name, text)| format!("{name}: {text}.")).collect()
}

/// What differs from what was first said; nothing where that was not kept.
pub fn since_first_said(document: &Document, units: impl Into<Units>) -> Vec<String> {
    let units = units.into();
    let first = &document.order.first_said;
    if first.is_empty() {
        return Vec::new();
    }
    let opened = share::from_fragment(first);
    if !opened.notices.is_empty() {
        return vec!["What was first said can no longer be read, so nothing can be compared with it.".to_string()];
    }
    if opened.document == Document::default() {
        return Vec::new();
    }
    let mut found = differences(&share::said_of(&opened.document), &share::said_of(document));
    // What was left open then and is known now takes nothing back.
    found.retain(|difference| !matches!(&difference.change, Change::Input { before, .. } if !before.own));
    if found.is_empty() {
        return vec!["Nothing that you first said has changed.".to_string()];
    }
    let number = |value: f64, kind| in_units(value, kind, units);
    let sentence =
        |difference: &Difference| format!("Changed since you first said it: {}.", difference.sentence_with(&number));
    found.iter().map(sentence).collect()
}

/// The name of a link.
pub(super) fn title(document: &Document, link: usize) -> String {
    document.links.get(link).map(crate::document::Link::title).unwrap_or_default()
}

/// The label of what is picked, or picked by default; nothing where neither is.
pub(super) fn picked(choice: &Choice, document: &Document, place: At) -> Option<&'static str> {
    let id = choice.value(document, place)?;
    (choice.options)().into_iter().find(|option| option.id == id).map(|option| option.label)
}
