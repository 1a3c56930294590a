//! A document as a link's fragment, and back. The fragment never reaches a server.
//!
//! `3&weight=4100lb&use=hard&length=38in&crc=…`: a version, then only what was decided, then a check
//! over everything before it. Values come back bit for bit, but for those that are as good as nothing.

mod log;
mod order;
pub(crate) mod pieces;
mod text;

pub use log::with_log;
pub use order::{Sent, made_of, said_of, sent, snapshot, to_send};

use crate::document::{Document, Link, MOST_LINKS, Position, tidy_name};
use crate::inputs::{At, CHOICES, NUMBERS, Scope, places};
use crate::quantity::{DEGREE, INCH, Kind, POUND_FORCE, STANDARD_GRAVITY, trimmed};
use text::{from_ascii, in_ascii};

/// The version this program writes. The texts of an order did not raise it: a page that does not know them says that
/// they were left out, and misreads no number.
pub const VERSION: &str = "3";

/// The version before it, whose answers came from an earlier calculation.
pub(crate) const EARLIER_CALCULATION: &str = "2";

/// The first version, which knew one axle: what it says of an axle holds for both.
const ONE_AXLE: &str = "1";

/// Said once where entries come from an earlier version.
pub const RECALCULATED: &str = "Recalculated: these entries were made with an earlier version. The hit, thread engagement, tubes, bolts, buckling and the side load on converging uppers are worked out anew, so the answer may differ from the one you saw.";

/// Values of an axle that version 1 kept for the rig.
const FORMERLY_OF_THE_RIG: [&str; 4] = ["axle-share", "lower-height", "upper-height", "flex"];

/// No rig with its order makes a longer fragment: the order holds two snapshots of all entries, three letters for each
/// of theirs at most.
const LONGEST: usize = 450_000;

/// More complaints than this help nobody.
const MOST_NOTICES: usize = 20;

/// What came out of a fragment.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Opened {
    /// The document, as far as it could be read.
    pub document: Document,
    /// What the reader should know, a sentence each; empty when all is well.
    pub notices: Vec<String>,
    /// Whether it comes from an earlier version, so that its answer may differ: see [`RECALCULATED`].
    pub recalculated: bool,
    /// The text of the log that was sent along; empty where none was. No document holds it.
    pub log: String,
}

/// A unit as `times / over` in SI, and its name.
type Unit = (&'static str, f64, f64);

/// Units that make values short; the exact SI number stands in when neither fits.
fn units(kind: Kind) -> &'static [Unit] {
    match kind {
        Kind::Length | Kind::FineLength => &[("in", INCH, 1.0), ("mm", 0.001, 1.0)],
        Kind::Weight | Kind::Force => &[("lb", POUND_FORCE, 1.0), ("kg", STANDARD_GRAVITY, 1.0), ("kN", 1000.0, 1.0)],
        Kind::Stress | Kind::Pressure => &[("ksi", crate::quantity::KSI, 1.0), ("MPa", 1e6, 1.0)],
        Kind::Angle => &[("deg", DEGREE, 1.0)],
        // The only stiffness in a link was once written as a force for each inch, and still is; "N/m" says what is not.
        Kind::Stiffness => &[
            ("lb", POUND_FORCE, INCH),
            ("kg", STANDARD_GRAVITY, INCH),
            ("kN", 1000.0, INCH),
            ("N", 1.0, INCH),
            ("N/m", 1.0, 1.0),
        ],
        _ => &[],
    }
}

/// What a number without a unit is in.
const fn bare(kind: Kind) -> (f64, f64) {
    if matches!(kind, Kind::Stiffness) { (1.0, INCH) } else { (1.0, 1.0) }
}

/// A value in the unit that makes it shortest, in digits that lead back to it bit for bit; without a unit it is SI.
fn write_number(value: f64, kind: Kind) -> String {
    let exact = value.to_string();
    in_a_unit(value, kind)
        .filter(|(digits, unit)| kind == Kind::Stiffness || digits.len() + unit.len() < exact.len())
        .map_or(exact, |(digits, unit)| digits + unit)
}

/// A value's digits in the usual unit that needs the fewest, if some unit leads back to it bit for bit.
pub(crate) fn in_a_unit(value: f64, kind: Kind) -> Option<(String, &'static str)> {
    let mut best: Option<(String, &'static str)> = None;
    for (unit, times, over) in units(kind) {
        // Rounding the quotient finds the number a person typed; it only counts if it leads back exactly.
        let quotient = value * over / times;
        let typed = trimmed(format!("{quotient:.8}"));
        let leads_back =
            |digits: &str| digits.parse::<f64>().is_ok_and(|it| (it * times / over).to_bits() == value.to_bits());
        let digits = if leads_back(&typed) { typed } else { quotient.to_string() };
        let shorter = best.as_ref().is_none_or(|(other, of)| digits.len() + unit.len() < other.len() + of.len());
        if shorter && leads_back(&digits) {
            best = Some((digits, unit));
        }
    }
    best
}

/// Reads what [`write_number`] writes.
pub(crate) fn read_number(text: &str, kind: Kind) -> Option<f64> {
    let (digits, (times, over)) = units(kind)
        .iter()
        .find_map(|(unit, times, over)| text.strip_suffix(unit).map(|digits| (digits, (*times, *over))))
        .unwrap_or((text, bare(kind)));
    let plain = digits.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | 'e'));
    let value = digits.parse::<f64>().ok().filter(|_| plain);
    value.map(|value| or_nothing(value * times / over))
}

/// A billionth of a thousandth of anything is nothing; written out in full it could fill a link.
pub(crate) fn or_nothing(value: f64) -> f64 {
    if value.abs() < 1e-12 { 0.0 } else { value }
}

/// The key of an input at a place: `length`, `rod-end.b`, `3.length` for the third link, `rear.flex`.
fn key(id: &str, scope: Scope, place: At) -> String {
    let mut key = String::new();
    if scope == Scope::Axle {
        key.push_str(Position::ALL.get(place.axle).map_or("", |axle| axle.word()));
        key.push('.');
    } else if place.link > 0 && scope != Scope::Rig {
        key.push_str(&(place.link + 1).to_string());
        key.push('.');
    }
    key.push_str(id);
    if scope == Scope::End {
        key.push_str(if place.end == 0 { ".a" } else { ".b" });
    }
    key
}

/// Reads a key back into an input's id and a place.
fn read_key(key: &str) -> Option<(&str, At)> {
    for axle in Position::ALL {
        if let Some(id) = key.strip_prefix(axle.word()).and_then(|rest| rest.strip_prefix('.')) {
            return Some((id, At::of_axle(axle.index())));
        }
    }
    let (link, rest) = match key.split_once('.') {
        Some((number, rest)) if number.bytes().all(|b| b.is_ascii_digit()) && !number.is_empty() => {
            (number.parse::<usize>().ok()?.checked_sub(1)?, rest)
        }
        _ => (0, key),
    };
    let (id, end) = match rest.rsplit_once('.') {
        Some((id, "a")) => (id, 0),
        Some((id, "b")) => (id, 1),
        Some(_) => return None,
        None => (rest, 0),
    };
    Some((id, At { link, end, axle: 0 }))
}

/// The fragment of a document, without the leading `#`.
pub fn to_fragment(document: &Document) -> String {
    to_fragment_of(document, VERSION)
}

/// The same as a version of this page wrote it that had two axles.
pub(crate) fn to_fragment_of(document: &Document, version: &str) -> String {
    let mut parts = vec![version.to_string()];
    if document.links.len() > 1 {
        parts.push(format!("links={}", document.links.len()));
    }
    if !document.name.is_empty() {
        parts.push(format!("name={}", in_ascii(&document.name)));
    }
    for input in NUMBERS {
        for place in places(document, input.scope) {
            if let Some(value) = (input.get)(document, place) {
                parts.push(format!("{}={}", key(input.id, input.scope, place), write_number(value, input.kind)));
            }
        }
    }
    for choice in CHOICES {
        for place in places(document, choice.scope) {
            if let Some(id) = (choice.get)(document, place) {
                parts.push(format!("{}={id}", key(choice.id, choice.scope, place)));
            }
        }
    }
    order::write(&document.order, &mut parts);
    pieces::write(document, &mut parts);
    let body = parts.join("&");
    let check = check(body.as_bytes());
    format!("{body}&crc={check:08x}")
}

/// A fragment without its check, for unverified numbers: whoever opens it is told to compare them.
pub fn unchecked(fragment: &str) -> &str {
    fragment.rsplit_once("&crc=").map_or(fragment, |(body, _)| body)
}

/// Opens a fragment, with or without the leading `#`.
pub fn from_fragment(fragment: &str) -> Opened {
    let fragment = fragment.trim().trim_start_matches('#');
    let mut notices = Vec::new();
    let mut document = Document::default();
    if fragment.len() > LONGEST {
        notices.push("This link is far too long to be one of ours. Nothing from it was used.".to_string());
        return Opened { document, notices, ..Opened::default() };
    }
    let (body, intact) = match fragment.rsplit_once("&crc=") {
        Some((body, printed)) => (
            body,
            printed.len() == 8
                && u32::from_str_radix(printed, 16)
                    .is_ok_and(|read| format!("{read:08x}") == printed && read == check(body.as_bytes())),
        ),
        None => (fragment, false),
    };
    let mut parts = body.split('&');
    let version = parts.next().unwrap_or_default();
    if ![VERSION, EARLIER_CALCULATION, ONE_AXLE].contains(&version) {
        notices.push(format!(
            "This link says it is of version “{}”, which this page does not know. Nothing from it was used.",
            clip(version)
        ));
        return Opened { document, notices, ..Opened::default() };
    }
    if !fragment.contains("crc=") {
        notices.push("This link lacks the check at its end: its numbers were in doubt where it came from, or a part of it is missing. Compare every number with the sender before you use it.".to_string());
    } else if !intact {
        notices.push("This link was damaged on its way: a part of it is missing or changed. What could be read is below; compare every number with the sender before you use it.".to_string());
    }
    let mut seen: Vec<&str> = Vec::new();
    let mut sent_log = String::new();
    for part in parts {
        if notices.len() >= MOST_NOTICES {
            notices.push("There is more that could not be read; the rest of the link was left out.".to_string());
            break;
        }
        let Some((name, value)) = part.split_once('=') else {
            notices.push(format!("“{}” in the link means nothing here and was left out.", clip(part)));
            continue;
        };
        if seen.contains(&name) {
            notices.push(format!("“{}” stands twice in the link; the first one counts.", clip(name)));
            continue;
        }
        seen.push(name);
        if name == "links" {
            match value.parse::<usize>().ok().filter(|count| (1..=MOST_LINKS).contains(count)) {
                Some(count) if seen.len() == 1 => document.links = vec![Link::default(); count],
                Some(_) => notices.push(
                    "The link says how many links it holds after their values, which we never write; the count was left out."
                        .to_string(),
                ),
                None => notices.push(format!("The link asks for {} links, which cannot be.", clip(value))),
            }
            continue;
        }
        if name == "name" && version != ONE_AXLE {
            match from_ascii(value).filter(|read| !read.is_empty() && tidy_name(read) == *read) {
                Some(read) => document.name = read,
                None => notices.push("The name in the link cannot be read and was left out.".to_string()),
            }
            continue;
        }
        if name == log::LOG {
            match from_ascii(value) {
                Some(read) => sent_log = read,
                None => notices.push("The log in the link cannot be read and was left out.".to_string()),
            }
            continue;
        }
        let beside = order::take(&mut document.order, name, value).or_else(|| pieces::take(&mut document, name, value));
        if let Some(taken) = beside {
            notices.extend(taken.err());
            continue;
        }
        let taken = if version == ONE_AXLE && FORMERLY_OF_THE_RIG.contains(&name) {
            Position::ALL.iter().try_for_each(|axle| take(&mut document, &format!("{}.{name}", axle.word()), value))
        } else {
            take(&mut document, name, value)
        };
        if let Err(sentence) = taken {
            notices.push(sentence);
        }
    }
    let recalculated = version != VERSION && document != Document::default();
    Opened { document, notices, recalculated, log: sent_log }
}

fn take(document: &mut Document, name: &str, value: &str) -> Result<(), String> {
    let unknown = || format!("“{}” in the link is not known here and was left out.", clip(name));
    let (id, place) = read_key(name).ok_or_else(unknown)?;
    if place.link >= document.links.len() {
        return Err(unknown());
    }
    if let Some(input) = NUMBERS.iter().find(|input| input.id == id) {
        if key(input.id, input.scope, place) != name {
            return Err(unknown());
        }
        let number = read_number(value, input.kind).ok_or_else(|| {
            format!("{}: “{}” in the link is not a number and was left out.", input.label, clip(value))
        })?;
        if !input.accepts(number) {
            return Err(format!(
                "{}: the value in the link is outside what is allowed here and was left out.",
                input.label
            ));
        }
        (input.set)(document, place, Some(number));
        return Ok(());
    }
    let choice = CHOICES.iter().find(|choice| choice.id == id).ok_or_else(unknown)?;
    if key(choice.id, choice.scope, place) != name {
        return Err(unknown());
    }
    if (choice.set)(document, place, Some(value)) {
        Ok(())
    } else {
        Err(format!("{}: “{}” in the link is not known here and was left out.", choice.label, clip(value)))
    }
}

/// At most 24 characters of something foreign.
fn clip(text: &str) -> String {
    let mut clipped: String = text.chars().take(24).collect();
    if text.chars().count() > 24 {
        clipped.push('…');
    }
    clipped
}

/// CRC-32 (the polynomial of Ethernet and zip), which notices every change of up to four neighboring characters.
fn check(bytes: &[u8]) -> u32 {
    let mut crc = u32::MAX;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            let carry = crc & 1;
            crc >>= 1;
            if carry == 1 {
                crc ^= 0xEDB8_8320;
            }
        }
    }
    !crc
}
