//! Names and sizes in words: hands, threads, stock, lengths in the reader's units, and what a link and its job are called.

use crate::document::{Document, Hand, Link};
use crate::engine::sentence::{Phrase, spoken};
use crate::engine::tables::drills;
use crate::engine::tables::materials::Material;
use crate::engine::tables::threads::Thread;
use crate::inputs::{At, CHOICES, NUMBERS, USAGE, WEIGHT, pieces_of};
use crate::quantity::{self, Kind, System, measured, show};
use crate::report::{EndGeometry, LinkGeometry};

/// `RH` or `LH`, as stamped on parts.
pub const fn hand_mark(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "RH",
        Hand::Left => "LH",
    }
}

/// `A` or `B`.
pub const fn letter(end: usize) -> &'static str {
    if end == 0 { "A" } else { "B" }
}

/// A thread as people say it: `1-1/4-12`.
pub fn thread(thread: &'static Thread) -> &'static str {
    thread.label.split_once(" UN").map_or(thread.label, |(size, _)| size)
}

/// Units to write in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Units {
    /// One system: what the reader chose.
    In(System),
    /// Inches first, millimeters in brackets: for a text that somebody is sent.
    Both,
}

impl From<System> for Units {
    fn from(system: System) -> Self {
        Self::In(system)
    }
}

impl Units {
    /// A value as each system writes it.
    fn write(self, one: impl Fn(System) -> String) -> String {
        match self {
            Self::In(system) => one(system),
            Self::Both => format!("{} ({})", one(System::Inch), one(System::Metric)),
        }
    }
}

/// A stock size as people say it: `2 in`, or `1-3/4 in by 1/4 in wall`.
pub fn size(outside: f64, wall: f64, units: impl Into<Units>) -> String {
    let units = units.into();
    let outside = trade(outside, units);
    if wall > 0.0 { format!("{outside} by {} wall", trade(wall, units)) } else { outside }
}

/// The bar or tube of a link as it is bought, and what it is turned to where a skim pass is taken off it.
pub fn stock(made: &LinkGeometry, units: impl Into<Units>) -> String {
    let units = units.into();
    let bought = size(made.stock_diameter, made.wall, units);
    if made.is_skimmed() { format!("{bought} turned to {}", fit(made.outside_diameter, units)) } else { bought }
}

/// A length that is made or measured.
pub fn length(value: f64, units: impl Into<Units>) -> String {
    units.into().write(|system| measured(value, system))
}

/// The size of something bought.
pub fn trade(value: f64, units: impl Into<Units>) -> String {
    if let Units::In(system) = units.into() {
        return quantity::trade(value, system);
    }
    let [inch, metric] = [System::Inch, System::Metric].map(|system| quantity::trade(value, system));
    // One of the two may have both already.
    if metric.contains('(') {
        metric
    } else if inch.contains('(') {
        inch
    } else {
        format!("{inch} ({metric})")
    }
}

/// A fit or a thread, to the last digit that a caliper reads.
pub fn fit(value: f64, units: impl Into<Units>) -> String {
    units.into().write(|system| quantity::fit(value, system))
}

/// What to drill with before tapping: the drill commonly listed, by its name and across.
pub fn tap_drill(end: &EndGeometry, units: impl Into<Units>) -> String {
    let Some(drills::TapDrill { drill, .. }) = drills::tap_drill(end.thread) else { return String::new() };
    let units = units.into();
    if units == Units::In(System::Metric) && drill.system == System::Metric {
        return format!("{} across", drill.label);
    }
    let across = units.write(|system| show(drill.diameter, Kind::FineLength, system));
    format!("{}, {across} across", drill.label)
}

/// How wide the hole may be that the tap goes into.
pub fn hole(end: &EndGeometry, units: impl Into<Units>) -> String {
    let units = units.into();
    let [least, most] = end.hole.map(|hole| units.write(|system| show(hole, Kind::FineLength, system)));
    format!("{least} to {most} across")
}

/// The metal in as few words as distinguish it.
pub fn metal(made: &LinkGeometry) -> &'static str {
    short(made.material)
}

/// A material's name without what narrows it down.
pub fn short(material: &'static Material) -> &'static str {
    material.label.split(',').next().unwrap_or(material.label)
}

/// `1 piece`, `4 pieces`.
pub fn pieces(things: usize) -> String {
    if things > 1 { format!("{things} pieces") } else { "1 piece".to_string() }
}

/// Both threads by their sizes: `1-1/4-12`, or `1-1/4-12 at A, 7/8-14 at B`.
pub fn thread_sizes([a, b]: &[EndGeometry; 2]) -> String {
    let [a, b] = [a, b].map(|end| thread(end.thread));
    if a == b { a.to_string() } else { format!("{a} at A, {b} at B") }
}

/// Both threads in one phrase.
pub fn threads([a, b]: &[EndGeometry; 2]) -> String {
    if a.thread.id == b.thread.id {
        format!("{} rod ends", thread(a.thread))
    } else {
        format!("rod ends {} at A and {} at B", thread(a.thread), thread(b.thread))
    }
}

/// What to buy, in one sentence.
pub fn headline(made: &LinkGeometry, units: impl Into<Units>) -> String {
    let [a, b] = &made.ends;
    format!(
        "{} {}, {}, {} at A and {} at B",
        stock(made, units),
        metal(made),
        threads(&made.ends),
        hand_mark(a.hand),
        hand_mark(b.hand)
    )
}

/// What to mill for the wrench; nothing for a tube, or where the flats would not cut into the bar.
pub fn flats(made: &LinkGeometry, units: impl Into<Units>) -> Option<String> {
    let units = units.into();
    let flats = made.cut_flats()?;
    let fine = |value: f64| length(value, units);
    Some(format!(
        "Wrench flats: {} across, {} long, from {} off the face at A.",
        fine(flats.width),
        fine(flats.length),
        fine(flats.start)
    ))
}

/// The label of an input.
pub fn label(id: &str) -> &'static str {
    let number = NUMBERS.iter().find(|input| input.id == id).map(|input| input.label);
    let choice = || CHOICES.iter().find(|choice| choice.id == id).map(|choice| choice.label);
    number.or_else(choice).unwrap_or_default()
}

/// Said of entries that no link can be made of.
pub const IMPOSSIBLE: &str = "No link can be made of these entries.";

/// What is still needed, in one sentence.
pub fn still_needed(needs: &[&'static str]) -> String {
    // What follows a comma in a label only narrows it down.
    let name = |id: &&'static str| lower(label(id).split(',').next().unwrap_or_default());
    let mut labels: Vec<String> = needs.iter().map(name).collect();
    let last = labels.pop().unwrap_or_default();
    if labels.is_empty() {
        format!("Still needed: {last}.")
    } else {
        format!("Still needed: {} and {last}.", labels.join(", "))
    }
}

/// With a small first letter, to stand inside a sentence.
pub fn lower(words: &str) -> String {
    let mut words = words.to_string();
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    words
}

/// What the link is for: `4,100 lb, driven hard`.
pub fn job(document: &Document, system: System) -> String {
    let weight =
        WEIGHT.value(document, At::default()).map(|weight| show(weight, Kind::Weight, system)).unwrap_or_default();
    let used = USAGE.value(document, At::default());
    let used = used
        .and_then(|id| (USAGE.options)().into_iter().find(|option| option.id == id))
        .map_or("", |option| option.label);
    if weight.is_empty() || used.is_empty() { weight + &lower(used) } else { format!("{weight}, {}", lower(used)) }
}

/// A value in both unit systems, inches first.
pub fn both(value: f64, kind: Kind) -> String {
    Units::Both.write(|system| show(value, kind, system))
}

/// Which link it is, and how many of it: `Front lower links, 2 pieces`.
pub fn titled(document: &Document, at: usize) -> String {
    let title = document.links.get(at).map(Link::title).unwrap_or_default();
    format!("{title}, {}", pieces(pieces_of(document, at)))
}

/// The same with the name of the rig, to distinguish the sheets of two rigs.
pub fn sheet_name(document: &Document, at: usize) -> String {
    let titled = titled(document, at);
    if document.name.is_empty() { titled } else { format!("{}: {titled}", document.name) }
}

/// What a rig is called: by its name, else by what is known of it.
pub fn rig_title(document: &Document, system: System) -> String {
    if !document.name.is_empty() {
        return document.name.clone();
    }
    let job = job(document, system);
    if job.is_empty() { "Rig without a name".to_string() } else { format!("Rig of {job}") }
}

/// A value in the reader's units; a length as it stands in the lists.
pub fn value(value: f64, kind: Kind, system: System) -> String {
    if kind == Kind::Length { measured(value, system) } else { show(value, kind, system) }
}

/// A letter without width, at which no line breaks (U+2060, word joiner). Where it is pasted back it is dropped.
const JOINER: char = '\u{2060}';

/// Words that break no line inside a size, which would leave the 1/2 of a `1-1/2` on the next line.
pub fn unbroken(words: &str) -> String {
    let letters: Vec<char> = words.chars().collect();
    let mut out = String::with_capacity(words.len());
    for (index, letter) in letters.iter().enumerate() {
        out.push(*letter);
        let digit = |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(char::is_ascii_digit);
        if *letter == '-' && digit(index.checked_sub(1)) && digit(Some(index + 1)) {
            out.push(JOINER);
        }
    }
    out
}

/// A sentence in the reader's units, with no line broken inside a size.
pub fn say(said: &[Phrase], system: System) -> String {
    unbroken(&spoken(said, system))
}

/// A value in the units asked for; one that reads the same in both systems stands once.
pub fn in_units(value: f64, kind: Kind, units: impl Into<Units>) -> String {
    let one = |system| spoken(&[Phrase::Value(value, kind)], system);
    match units.into() {
        Units::In(system) => one(system),
        Units::Both => match [System::Inch, System::Metric].map(one) {
            [inch, metric] if inch == metric => inch,
            [inch, metric] => format!("{inch} ({metric})"),
        },
    }
}

/// A sentence in the units asked for, each value in both where both are.
pub fn say_in(said: &[Phrase], units: impl Into<Units>) -> String {
    let units = units.into();
    let one = |phrase: &Phrase| match phrase {
        Phrase::Words(words) => words.to_string(),
        Phrase::Value(value, kind) => in_units(*value, *kind, units),
        Phrase::Trade(size) => trade(*size, units),
    };
    said.iter().map(one).collect()
}

/// The changed defaults that something rests on, in a sentence; none where there are none.
pub fn uses_your_own(ids: &[&'static str], more: &[&'static str]) -> Option<String> {
    let mut names: Vec<String> = ids.iter().chain(more).map(|id| lower(label(id))).collect();
    names.sort();
    names.dedup();
    (!names.is_empty()).then(|| format!("Uses your own {}.", names.join(", ")))
}
