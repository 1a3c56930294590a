//! Saved builds as a file that people can read, and back: versioned, every value with its unit, bit for bit.
//!
//! What the device keeps of one build is the same text as a file of that build alone.

mod log;
mod pieces;

use crate::document::{Document, Link, MOST_LINKS, ORDER_TEXTS, Order, Position, is_time, one_line, tidy_name};
use crate::inputs::{At, CHOICES, NUMBERS, Scope};
use crate::log::Log;
use crate::quantity::{self, Kind, System};
use crate::share;
use serde_json::{Map, Value, json};

/// What such a file says it is.
const FORMAT: &str = "linkwright builds";

/// The version this program writes; it grows when an older page could misread a file.
pub const VERSION: f64 = 2.0;

/// The version before it, whose checks were those of the links of its time.
const EARLIER: f64 = 1.0;

/// What a file says about its numbers.
const UNITS: &str = "Every value carries its unit: in, mm, m, lb, kg, kN, N, ksi, MPa, Pa, deg, rad. lb and kg are weights or forces. A number without one is a share, a factor or a count.";

/// More builds than anybody has; a longer file is a mistake.
const MOST_BUILDS: usize = 2_000;

/// Earlier versions kept of one build; the oldest go first.
pub const MOST_EARLIER: usize = 60;

/// More reasons why one build is unverified, or longer ones, help nobody.
const MOST_UNVERIFIED: usize = 8;
const LONGEST_REASON: usize = 400;

/// More values that could not be read are counted, not named.
const MOST_LOST: usize = 6;

/// The longest text that is read at all, in bytes.
const LONGEST: usize = 10_000_000;

/// A document that was saved, with what it was before.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Build {
    /// Tells it from others on the device: small letters, digits and `-`.
    pub id: String,
    /// When it was saved, as ISO 8601 in UTC; empty when not known.
    pub saved: String,
    /// When it was put into the bin.
    pub removed: Option<String>,
    /// What was saved.
    pub document: Document,
    /// What was saved before, the oldest first.
    pub earlier: Vec<Earlier>,
    /// Why its numbers must be compared before they are used, a sentence each; it stays until somebody did.
    pub unverified: Vec<String>,
    /// What was read and done on the rig. In a file only: on the device it is a record of its own, for it goes on with
    /// every reading.
    pub log: Log,
}

/// An earlier version.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Earlier {
    /// When it was saved.
    pub saved: String,
    /// What was saved, as a link's fragment.
    pub fragment: String,
    /// Why its numbers must be compared before they are used.
    pub unverified: Vec<String>,
}

/// What came out of a file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Read {
    /// The builds.
    pub builds: Vec<Build>,
    /// What the reader should know, a sentence each.
    pub notices: Vec<String>,
}

impl Build {
    /// Takes a new version in; the one it had becomes an earlier one, with its reasons. The same document again is no
    /// new version.
    pub fn save(&mut self, document: &Document, now: &str) {
        self.removed = None;
        if self.document == *document {
            return;
        }
        let before = std::mem::replace(&mut self.document, document.clone());
        let saved = std::mem::replace(&mut self.saved, now.to_string());
        let unverified = std::mem::take(&mut self.unverified);
        self.earlier.push(Earlier { saved, fragment: share::to_fragment(&before), unverified });
        let over = self.earlier.len().saturating_sub(MOST_EARLIER);
        self.earlier.drain(..over);
    }

    /// Whether the other one would add nothing to this one, whatever ids and numbers after their names they have.
    pub fn has_all_of(&self, other: &Self) -> bool {
        let [mut one, mut two] = [self.document.clone(), other.document.clone()];
        for document in [&mut one, &mut two] {
            document.name = numbered(&document.name).0;
        }
        one == two && (other.earlier.is_empty() || self.earlier == other.earlier)
    }
}

/// A name without the number after it, and that number: `Mine (2)` is the second `Mine`.
pub fn numbered(name: &str) -> (String, u32) {
    let parts = name.strip_suffix(')').and_then(|name| name.rsplit_once(" ("));
    let number = parts.and_then(|(_, number)| number.parse().ok()).filter(|number| (2..10_000).contains(number));
    parts.zip(number).map_or_else(|| (name.to_string(), 1), |((stem, _), number)| (stem.to_string(), number))
}

/// Whether a text can be an id.
pub fn is_id(text: &str) -> bool {
    (1..=60).contains(&text.len())
        && text.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-')
}

/// A log as it is kept on the device, the same as in a file; empty where there is none.
pub fn log_to_text(log: &Log) -> String {
    if log.is_empty() { String::new() } else { format!("{:#}\n", log::written(log)) }
}

/// The same in one line, for a link: only what the bars are now and what stands, not what was taken back.
pub fn log_to_line(log: &Log) -> String {
    let entries = log.entries.iter().filter(|entry| !entry.is_withdrawn()).cloned().collect();
    log::written(&Log { entries, ..log.clone() }).to_string()
}

/// Reads such a text, and whether all of it could be read.
pub fn log_from_text(text: &str) -> (Log, bool) {
    if text.is_empty() {
        return (Log::default(), true);
    }
    serde_json::from_str(text).map_or_else(|_| (Log::default(), false), |value| log::read(&value))
}

/// The text of a file.
pub fn to_text(builds: &[Build]) -> String {
    let builds: Vec<Value> = builds.iter().map(written).collect();
    let file = json!({ "format": FORMAT, "version": number(VERSION), "units": UNITS, "builds": builds });
    format!("{file:#}\n")
}

fn written(build: &Build) -> Value {
    let links = 0..build.document.links.len();
    let links: Vec<Value> = links.map(|link| link_of(&build.document, link)).collect();
    let mut table = Map::new();
    let mut put = |name: &str, value: Value| table.insert(name.to_string(), value);
    put("id", json!(build.id));
    put("name", json!(build.document.name));
    put("saved", json!(build.saved));
    if let Some(removed) = &build.removed {
        put("removed", json!(removed));
    }
    put("rig", rig_of(&build.document));
    put("links", json!(links));
    let order = order_of(&build.document.order);
    if !order.is_empty() {
        put("order", Value::Object(order));
    }
    put("check", json!(check(&build.document, share::VERSION)));
    if !build.unverified.is_empty() {
        put("doubt", json!(build.unverified));
    }
    let earlier = build.earlier.iter().map(|earlier| {
        let mut table = json!({ "saved": earlier.saved, "link": earlier.fragment });
        if let (Some(table), false) = (table.as_object_mut(), earlier.unverified.is_empty()) {
            table.insert("doubt".to_string(), json!(earlier.unverified));
        }
        table
    });
    if !build.earlier.is_empty() {
        put("earlier", earlier.collect());
    }
    if !build.log.is_empty() {
        put("log", log::written(&build.log));
    }
    Value::Object(table)
}

/// A plain number, without a point where it is a whole one.
fn number(value: f64) -> Value {
    // Any whole number below this has an exact integer.
    if value.fract() == 0.0 && value.abs() < 1e15 { json!(value as i64) } else { json!(value) }
}

/// The check over a document: that of its link, as a version wrote it.
fn check(document: &Document, of_links: &str) -> String {
    let fragment = share::to_fragment_of(document, of_links);
    fragment.rsplit_once("crc=").map(|(_, check)| check.to_string()).unwrap_or_default()
}

/// Everything decided at one place, by the ids of its inputs.
fn decided(document: &Document, scope: Scope, place: At) -> Map<String, Value> {
    let numbers = NUMBERS.iter().filter(|input| input.scope == scope).filter_map(|input| {
        let value = (input.get)(document, place)?;
        Some((input.id.to_string(), number_of(value, input.kind)))
    });
    let choices = CHOICES.iter().filter(|choice| choice.scope == scope).filter_map(|choice| {
        let id = (choice.get)(document, place)?;
        Some((choice.id.to_string(), json!(id)))
    });
    choices.chain(numbers).collect()
}

fn rig_of(document: &Document) -> Value {
    let mut members = decided(document, Scope::Rig, At::default());
    for axle in Position::ALL {
        let own = decided(document, Scope::Axle, At::of_axle(axle.index()));
        if !own.is_empty() {
            members.insert(axle.word().to_string(), Value::Object(own));
        }
    }
    Value::Object(members)
}

/// The texts of an order, by their ids.
fn order_of(order: &Order) -> Map<String, Value> {
    let texts = ORDER_TEXTS.iter().map(|text| (text.id.to_string(), json!((text.get)(order))));
    texts.filter(|(_, text)| text != "").collect()
}

const ENDS: [&str; 2] = ["a", "b"];

fn link_of(document: &Document, link: usize) -> Value {
    let place = At::of_link(document, link);
    let mut members = decided(document, Scope::Link, place);
    for (end, letter) in ENDS.into_iter().enumerate() {
        let own = decided(document, Scope::End, At { end, ..place });
        if !own.is_empty() {
            members.insert(letter.to_string(), Value::Object(own));
        }
    }
    if let Some(made) = document.links.get(link).and_then(pieces::written) {
        members.insert(pieces::MADE.to_string(), made);
    }
    Value::Object(members)
}

/// The SI unit of a kind that has one and can be entered.
const fn si_unit(kind: Kind) -> &'static str {
    match kind {
        Kind::Length | Kind::FineLength => "m",
        Kind::Force | Kind::Weight => "N",
        Kind::Stress | Kind::Pressure => "Pa",
        Kind::Angle => "rad",
        Kind::Stiffness => "N/m",
        Kind::Compliance => "m/N",
        _ => "",
    }
}

/// A value with its unit, a space between them; a plain number where it has none.
fn number_of(value: f64, kind: Kind) -> Value {
    match (share::in_a_unit(value, kind), si_unit(kind)) {
        (Some((digits, unit)), _) => json!(format!("{digits} {unit}")),
        (None, "") => number(value),
        (None, unit) => json!(format!("{value} {unit}")),
    }
}

/// Reads such a value, and what somebody wrote by hand as they would type it.
fn read_number(value: &Value, kind: Kind) -> Option<f64> {
    let text = match value {
        Value::Number(number) if si_unit(kind).is_empty() => return number.as_f64().map(share::or_nothing),
        Value::String(text) => text.trim(),
        _ => return None,
    };
    let (digits, unit) = text.split_once(' ').unwrap_or((text, ""));
    // A stiffness without a unit was written before it had one: it goes by its unit's name below.
    if !unit.is_empty() && unit == si_unit(kind) && kind != Kind::Stiffness {
        return share::read_number(digits, kind);
    }
    let exact = if unit.is_empty() { None } else { share::read_number(&format!("{digits}{unit}"), kind) };
    exact.or_else(|| quantity::read(text, kind, System::Inch).ok())
}

/// Reads a file.
///
/// # Errors
/// A sentence, when the text is no file of builds or nothing of it can be used.
pub fn from_text(text: &str) -> Result<Read, String> {
    if text.len() > LONGEST {
        return Err("This file is far too long to be one of ours. Nothing from it was used.".to_string());
    }
    let whole: Value = serde_json::from_str(text.trim_start_matches('\u{feff}')).map_err(|why| {
        let line = why.line();
        format!("This file cannot be read: it is cut off or damaged in line {line}. Nothing from it was used.")
    })?;
    if whole.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err("This is not a file of saved builds. Nothing from it was used.".to_string());
    }
    let version = whole.get("version").and_then(Value::as_f64);
    let of_links = if version == Some(VERSION) {
        share::VERSION
    } else if version == Some(EARLIER) {
        share::EARLIER_CALCULATION
    } else {
        return Err(
            "This file was written by another version of this page, which this one does not know. Nothing from it was used."
                .to_string(),
        );
    };
    let mut read = Read::default();
    let builds = list(&whole, "builds");
    if builds.is_empty() {
        return Err("There is no build in this file.".to_string());
    }
    for build in builds.iter().take(MOST_BUILDS) {
        let build = build_from(build, of_links);
        read.notices.extend(build.unverified.iter().cloned());
        read.builds.push(build);
    }
    if builds.len() > MOST_BUILDS {
        read.notices.push(format!("Only the first {MOST_BUILDS} builds of the file were read."));
    }
    Ok(read)
}

/// The values of a list in a table; none where there is no such list.
fn list<'a>(table: &'a Value, name: &str) -> &'a [Value] {
    table.get(name).and_then(Value::as_array).map(Vec::as_slice).unwrap_or_default()
}

/// One build, with at most a few reasons why it is unverified.
fn build_from(table: &Value, of_links: &str) -> Build {
    let words = |name: &str| table.get(name).and_then(Value::as_str).unwrap_or_default();
    let time = |name: &str| Some(words(name)).filter(|text| is_time(text)).unwrap_or_default().to_string();
    let mut lost = Vec::new();
    let mut document = Document { name: tidy_name(words("name")), ..Document::default() };
    if let Some(rig) = table.get("rig") {
        take(&mut document, rig, Scope::Rig, At::default(), &mut lost);
    }
    let links = list(table, "links");
    if links.len() > MOST_LINKS {
        lost.push(format!("the links after the first {MOST_LINKS}"));
    }
    document.links = vec![Link::default(); links.len().clamp(1, MOST_LINKS)];
    for (link, table) in links.iter().take(MOST_LINKS).enumerate() {
        take(&mut document, table, Scope::Link, At { link, ..At::default() }, &mut lost);
    }
    for (name, value) in table.get("order").and_then(Value::as_object).into_iter().flatten() {
        let text = ORDER_TEXTS.iter().find(|text| text.id == name).zip(value.as_str());
        if !text.is_some_and(|(text, value)| (text.set)(&mut document.order, value)) {
            lost.push(named(name));
        }
    }
    let removed = table.get("removed").map(|_| time("removed"));
    let earlier = list(table, "earlier").iter().filter_map(|earlier| {
        let fragment = earlier.get("link").and_then(Value::as_str)?.to_string();
        let saved = earlier.get("saved").and_then(Value::as_str).filter(|text| is_time(text)).unwrap_or_default();
        Some(Earlier { saved: saved.to_string(), fragment, unverified: reasons_of(earlier) })
    });
    let id = Some(words("id")).filter(|id| is_id(id)).unwrap_or_default().to_string();
    let earlier: Vec<Earlier> = earlier.collect();
    let over = earlier.len().saturating_sub(MOST_EARLIER);
    let earlier = earlier.into_iter().skip(over).collect();
    let (log, whole_log) = table.get("log").map_or_else(|| (Log::default(), true), log::read);
    if !whole_log {
        lost.push("a part of its log".to_string());
    }
    let mut build = Build { id, saved: time("saved"), removed, earlier, document, unverified: Vec::new(), log };
    let name = if build.document.name.is_empty() { "A build without a name" } else { &build.document.name };
    let mut unverified = Vec::new();
    if !lost.is_empty() {
        let more = lost.len().saturating_sub(MOST_LOST);
        lost.truncate(MOST_LOST);
        let more = if more > 0 { format!(" and {more} more") } else { String::new() };
        unverified.push(format!("{name}: this could not be read and was left out: {}{more}.", lost.join(", ")));
    }
    if words("check") != check(&build.document, of_links) {
        unverified.push(format!(
            "{name} was changed or damaged outside of this page. Compare every number before you use it."
        ));
    }
    for sentence in reasons_of(table) {
        if !unverified.contains(&sentence) {
            unverified.push(sentence);
        }
    }
    unverified.truncate(MOST_UNVERIFIED);
    build.unverified = unverified;
    build
}

/// The reasons why it is unverified that stand in a table.
fn reasons_of(table: &Value) -> Vec<String> {
    let reasons = list(table, "doubt").iter().filter_map(Value::as_str);
    reasons.take(MOST_UNVERIFIED).map(|sentence| one_line(sentence, LONGEST_REASON)).collect()
}

/// Takes everything decided at one place out of a table, with what is nested in it.
fn take(document: &mut Document, table: &Value, scope: Scope, place: At, lost: &mut Vec<String>) {
    for (name, value) in table.as_object().into_iter().flatten() {
        let inner = match scope {
            Scope::Rig => Position::ALL
                .iter()
                .find(|axle| axle.word() == name)
                .map(|axle| (Scope::Axle, At::of_axle(axle.index()))),
            Scope::Link => ENDS.iter().position(|letter| letter == name).map(|end| (Scope::End, At { end, ..place })),
            Scope::Axle | Scope::End => None,
        };
        if let Some((scope, place)) = inner {
            take(document, value, scope, place, lost);
        } else if scope == Scope::Link && name == pieces::MADE {
            let made = document.links.get_mut(place.link).map(|link| &mut link.made);
            lost.extend(made.map(|made| pieces::read(made, value)).unwrap_or_default());
        } else if !decide(document, name, value, scope, place) {
            lost.push(named(name));
        }
    }
}

/// A name that means nothing here, as the reader sees it.
fn named(name: &str) -> String {
    format!("“{}”", name.chars().take(24).collect::<String>())
}

/// Decides one input, if there is such a one and it takes this value.
fn decide(document: &mut Document, name: &str, value: &Value, scope: Scope, place: At) -> bool {
    if let Some(input) = NUMBERS.iter().find(|input| input.id == name && input.scope == scope) {
        let number = read_number(value, input.kind).filter(|number| input.accepts(*number));
        if number.is_some() {
            (input.set)(document, place, number);
        }
        return number.is_some();
    }
    let choice = CHOICES.iter().find(|choice| choice.id == name && choice.scope == scope);
    choice.zip(value.as_str()).is_some_and(|(choice, id)| (choice.set)(document, place, Some(id)))
}
