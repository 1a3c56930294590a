//! The confirmation: a text that asks for a yes, how far the order is, and what has changed since the yes.

use super::mounts;
use super::needed::failing;
use super::read_back::{picked, since_first_said, title, whose};
use crate::differences::{Change, Difference, differences};
use crate::document::{Document, Order, Stage, day_in_words};
use crate::engine::shop::code::{self, Code};
use crate::inputs::{At, FINISH, LENGTH, MEASURED_ON};
use crate::present::text::DISCLAIMER;
use crate::present::words::{Units, headline, length, letter, lower, thread, titled};
use crate::quantity::System;
use crate::report::{Answer, LinkReport};
use crate::share::{self, Sent};

/// What the text is good for.
const ASKS: &str =
    "Please read every line, and answer yes with the order code if all of it is right. Nothing is cut before.";

/// What it is not good for.
const DOES_NOT_ASK: &str = "Do not answer yes to this order: it fails as entered.";

/// Said above what may be sent along.
pub const GOES_ALONG: &str = "The link carries what is made and how many; the text also the day it is wanted. Tick what else goes along; prices never do.";

/// How a yes is taken and given, and where it is kept.
pub const HOW_A_YES_GOES: &str = "Read everything back, then record the yes: it is kept with the build on this device, with the time and the code, and never in a link. To answer somebody else’s order, send the code back with your yes.";

/// The text to send: what is made, in both units, with the order's code and the link that opens it. `date` is the day it
/// is sent, as the reader writes it; what of the order is ticked goes along, and no price ever does.
pub fn text(
    document: &Document,
    reports: &[LinkReport],
    code: Option<Code>,
    what: Sent,
    date: &str,
    address: Option<String>,
) -> String {
    let mut lines = vec![format!("Order to confirm, {date}")];
    if !document.name.is_empty() {
        lines.push(format!("Rig: {}", document.name));
    }
    let order = share::sent(document, what).order;
    lines.extend(Some(order.reference).filter(|text| !text.is_empty()).map(|text| format!("Your reference: {text}")));
    let wanted = day_in_words(&document.order.wanted);
    lines.extend(Some(wanted).filter(|day| !day.is_empty()).map(|day| format!("Wanted by: {day}")));
    for (link, report) in reports.iter().enumerate() {
        match report {
            LinkReport::Answer(answer) => lines.extend(link_lines(document, link, answer)),
            _ => lines.push(format!("{}: cannot be made from what is entered so far.", titled(document, link))),
        }
    }
    lines.extend(Some(order.remarks).filter(|text| !text.is_empty()).map(|text| format!("Remarks: {text}")));
    lines.extend(since_first_said(document, Units::Both));
    let failing = failing(document, reports);
    let fails = !failing.is_empty();
    lines.extend(failing);
    match code {
        Some(code) => {
            lines.push(format!("Order code: {} ({})", code.written(), code.spoken()));
            lines.push(if fails { DOES_NOT_ASK } else { ASKS }.to_string());
        }
        None => {
            lines.push("This order has no code yet: something is still missing, so it cannot be confirmed.".to_string())
        }
    }
    lines.push(DISCLAIMER.to_string());
    lines.extend(address);
    lines.join("\n")
}

/// What must be right of one link.
fn link_lines(document: &Document, link: usize, answer: &Answer) -> Vec<String> {
    let (made, place) = (&answer.link, At::of_link(document, link));
    let [given, bar] = [made.length, made.bar].map(|value| length(value, Units::Both));
    let [measured, finish] =
        [&MEASURED_ON, &FINISH].map(|choice| picked(choice, document, place).unwrap_or("Not said yet"));
    let mut lines = vec![
        titled(document, link),
        format!("Mount to mount, hole center to hole center: {given}. Measured: {}.", lower(measured)),
        format!("Eye to eye of the finished link, as set: {given}"),
        format!("Bar, face to face: {bar}"),
        headline(made, Units::Both),
    ];
    if made.provisional {
        lines.push("The bar length stands only until the rod ends are measured.".to_string());
    }
    for (end, made) in made.ends.iter().enumerate() {
        let whose = whose(document, At { end, ..place });
        lines.push(format!("End {}: {}, {} thread; {whose}", letter(end), thread(made.thread), made.hand.words()));
    }
    let says = |value, kind| mounts::written(value, kind, Units::Both);
    lines.extend(mounts::one_hand(made));
    lines.extend(mounts::readings(document, place, made, &says));
    lines.extend(mounts::said(document, place, &says));
    lines.push(format!("Finish: {}", lower(finish)));
    lines.push(format!("Calculation: {}", lower(answer.word())));
    lines
}

/// One stage of an order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StageRow {
    /// Which stage.
    pub stage: Stage,
    /// What it is called, with who and when where that is known.
    pub label: String,
    /// Whether the order has come so far.
    pub reached: bool,
    /// Whether this is where it stands.
    pub now: bool,
}

/// The stages of an order in their order; `spoken` says a time where the reader is.
pub fn stages(order: &Order, code: Option<Code>, spoken: impl Fn(&str) -> String) -> Vec<StageRow> {
    let yes = &order.yes;
    let label = |stage: Stage| match (stage, yes.by.as_str(), yes.at.as_str()) {
        (Stage::Confirmed, _, _) if !yes.is_given() => stage.label().to_string(),
        (Stage::Confirmed, "", "") => stage.label().to_string(),
        (Stage::Confirmed, "", at) => format!("{}, {}", stage.label(), spoken(at)),
        (Stage::Confirmed, by, "") => format!("{} by {by}", stage.label()),
        (Stage::Confirmed, by, at) => format!("{} by {by}, {}", stage.label(), spoken(at)),
        (Stage::ReadBack, _, _) if order.stage >= Stage::ReadBack && !is_read_back(order, code) => {
            "Read back, and changed since".to_string()
        }
        _ => stage.label().to_string(),
    };
    let reached = |stage| stage <= order.stage && (stage != Stage::ReadBack || is_read_back(order, code));
    let row = |stage| StageRow { stage, label: label(stage), reached: reached(stage), now: stage == order.stage };
    Stage::ALL.map(row).to_vec()
}

/// On the button that reads back what changed since the yes.
pub const READ_BACK_AGAIN: &str = "Read back again (takes the old yes back)";

/// What was cut to an order that has changed since, a sentence for each link; nothing while it is not cut.
pub fn already_cut(document: &Document, system: System) -> Vec<String> {
    if document.order.stage != Stage::Cut {
        return Vec::new();
    }
    let old = share::from_fragment(&document.order.yes.snapshot).document;
    let lengths = (0..old.links.len()).filter_map(|link| Some((link, LENGTH.value(&old, At::of_link(&old, link))?)));
    let sentence = |(link, value): (usize, f64)| {
        let (title, value) = (lower(&title(&old, link)), length(value, system));
        format!("Already cut to the old order: {title}, {value} mount to mount. Settle it with the customer.")
    };
    lengths.map(sentence).collect()
}

/// Why a bar must not be sawn yet though the order has its yes, a sentence for each link; nothing where every rod end was
/// measured.
pub fn not_yet_to_saw(document: &Document, reports: &[LinkReport]) -> Vec<String> {
    let open = |report: &LinkReport| report.answer().is_some_and(|answer| answer.link.provisional);
    let links = reports.iter().enumerate().filter(|(_, report)| open(report));
    links
        .map(|(link, _)| {
            let title = title(document, link);
            format!("{title}: provisional length. Measure the rod ends before the bar is sawn; a yes until then is to mount to mount.")
        })
        .collect()
}

/// Whether what is made now is what was read back.
pub fn is_read_back(order: &Order, code: Option<Code>) -> bool {
    code.is_some_and(|code| code.written() == order.read_back)
}

/// What is no longer as it was confirmed.
#[derive(Debug, Clone, PartialEq)]
pub struct Changed {
    /// What is wrong, for everybody to see.
    pub sentence: String,
    /// The entries that differ, before and now.
    pub differences: Vec<Difference>,
    /// The code that was confirmed, and the one of now; nothing where the order has none.
    pub codes: [Option<Code>; 2],
}

/// Whether anything was confirmed that can have changed since.
pub fn is_confirmed(order: &Order) -> bool {
    order.yes.is_given() || order.stage >= Stage::Confirmed
}

/// What has changed since the yes; nothing while there is no yes, or while everything is as it was confirmed. `code` is
/// the order's code as it is now, if it has one.
pub fn changed_since_yes(document: &Document, code: Option<Code>) -> Option<Changed> {
    let yes = &document.order.yes;
    if !is_confirmed(&document.order) {
        return None;
    }
    let codes = [code::read(&yes.code).ok(), code];
    let changed = |sentence: &str, differences| Some(Changed { sentence: sentence.to_string(), differences, codes });
    if !yes.is_given() {
        return changed("Nobody’s yes is recorded for this order. Do not cut: ask for it.", Vec::new());
    }
    let opened = share::from_fragment(&yes.snapshot);
    if !opened.notices.is_empty() {
        return changed("What was confirmed can no longer be read. Do not cut: ask for a new yes.", Vec::new());
    }
    let mut found = differences(&share::said_of(&opened.document), &share::said_of(document));
    // What is said now as it was taken then changes nothing.
    found.retain(|it| !matches!(&it.change, Change::Input { before, after, .. } if before.value == after.value));
    match (found.is_empty(), codes) {
        (true, [Some(then), Some(now)]) if then == now => None,
        (false, _) => changed("Changed since the yes. Do not cut: read it back and ask for a new yes.", found),
        (true, [_, None]) => changed(
            "The same entries no longer give a bar: this page computes it anew. Do not cut: ask for a new yes.",
            found,
        ),
        (true, [None, Some(_)]) => {
            changed("The code that was confirmed cannot be read. Do not cut: ask for a new yes.", found)
        }
        (true, _) => changed(
            "The same entries now give another bar: this page computes it anew. Do not cut: read it back and ask for a new yes.",
            found,
        ),
    }
}

impl Changed {
    /// All of it as lines of text.
    pub fn lines(&self, system: System) -> Vec<String> {
        let codes = match self.codes {
            [Some(then), Some(now)] if then != now => {
                Some(format!("Order code confirmed: {}; now: {}.", then.written(), now.written()))
            }
            _ => None,
        };
        let differences = self.differences.iter().map(|difference| format!("{}.", difference.sentence(system)));
        std::iter::once(self.sentence.clone()).chain(codes).chain(differences).collect()
    }
}
