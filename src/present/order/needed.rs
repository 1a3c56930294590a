//! What an order still needs, in the order in which one asks on the phone.

mod ends;

use super::read_back::picked;
use crate::document::{Document, ORDER_TEXTS, Position, day_in_words};
use crate::engine::sentence::spoken;
use crate::inputs::{At, Choice, FINISH, LENGTH, MEASURED_ON, Number, POSITION, QUANTITY, ROLE, SEAT, USAGE, WEIGHT};
use crate::present::ends::SizeRow;
use crate::present::words::{self, rig_title};
use crate::quantity::System;
use crate::report::{LinkGeometry, LinkReport, Verdict};

/// Said beneath the lengths of every link.
pub const COPY_IN_RIG: &str = "One link to the other axle or side: in the Rig view.";

/// What stands on the button that adds the links of one axle at the other.
pub fn copy_axle_label(from: Position, copied: usize) -> String {
    let to = match from {
        Position::Front => Position::Rear,
        Position::Rear => Position::Front,
    };
    let links = if copied == 1 { "1 link".to_string() } else { format!("{copied} links") };
    format!("Copy the {} axle to the {}: {links}", from.word(), to.word())
}

/// How a question stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// Somebody said it.
    Said,
    /// It is taken as is usual; nobody was asked.
    ByDefault,
    /// It is needed before the bar can be cut.
    Missing,
    /// Nobody has said it, and the bar can be cut without it.
    LeftOpen,
}

impl State {
    /// Its name, for the style sheets.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Said => "said",
            Self::ByDefault => "by-default",
            Self::Missing => "missing",
            Self::LeftOpen => "left-open",
        }
    }

    /// The word beside the question.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Said => "Said",
            Self::ByDefault => "Not asked yet",
            Self::Missing => "Still needed",
            Self::LeftOpen => "Left open",
        }
    }
}

/// One question.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// As one asks it.
    pub question: String,
    /// What is known, in the reader's units.
    pub known: String,
    /// How it stands.
    pub state: State,
    /// Ids of the inputs that answer it, and of the order's texts; `name` is the rig's.
    pub inputs: Vec<&'static str>,
    /// Which end it is about, where it is about one.
    pub end: Option<usize>,
}

impl Row {
    fn new(question: &str, (known, state): (String, State), inputs: &[&'static str]) -> Self {
        Self { question: question.to_string(), known, state, inputs: inputs.to_vec(), end: None }
    }
}

/// What nobody has said.
const NOTHING: &str = "Not said yet.";

/// Every question about one link, in the order in which one asks them.
pub fn rows(document: &Document, link: usize, report: &LinkReport, system: System) -> Vec<Row> {
    let place = At::of_link(document, link);
    let mut rows = Vec::new();
    if let LinkReport::Impossible(why) = report {
        let known = words::unbroken(&spoken(why, system));
        rows.push(Row::new("What must be settled first?", (known, State::Missing), &[]));
    }
    rows.push(which_link(document, link, place));
    rows.push(Row::new("Which rig is it on?", rig(document, system), &["name"]));
    let length = number(&LENGTH, document, place, system);
    rows.push(Row::new("How far is it from hole center to hole center, mount to mount?", length, &[LENGTH.id]));
    let measured = known_or_missing(&MEASURED_ON, document, place);
    rows.push(Row::new("How was that measured?", measured, &[MEASURED_ON.id]));
    for end in [0, 1] {
        rows.extend(ends::rod_end(document, At { end, ..place }, report, system));
    }
    for end in [0, 1] {
        rows.push(ends::thread(document, At { end, ..place }, report));
    }
    for end in [0, 1] {
        rows.push(ends::bolt(document, At { end, ..place }, report, system));
    }
    rows.push(ends::bracket(document, place, report, system));
    rows.push(Row::new("How is the rig used?", choice(&USAGE, document, place), &[USAGE.id]));
    let weight = number(&WEIGHT, document, place, system);
    rows.push(Row::new("What does the rig weigh, loaded as it is driven?", weight, &[WEIGHT.id]));
    let pieces = number(&QUANTITY, document, place, system);
    rows.push(Row::new("How many of this link are to be made?", pieces, &[QUANTITY.id]));
    rows.push(finish(document, place));
    rows.extend(of_order(document));
    rows
}

/// The lengths that people mix up, each by its full name.
pub fn named_lengths(made: &LinkGeometry, system: System) -> Vec<SizeRow> {
    let length = |value| words::length(value, system);
    let bar = if made.provisional { "Bar, provisional" } else { "Bar, face to face" };
    vec![
        SizeRow { name: "Mount to mount, on the rig", value: length(made.length) },
        SizeRow { name: "Eye to eye, as set", value: length(made.length) },
        SizeRow { name: bar, value: length(made.bar) },
        SizeRow { name: "Saw to", value: length(made.cut) },
    ]
}

/// How many questions must be answered before the bar can be cut.
pub fn missing(rows: &[Row]) -> usize {
    rows.iter().filter(|row| row.state == State::Missing).count()
}

/// The same in words: `3 still needed`. Of several links each that lacks something is named. Each of the entries that
/// were `not_taken` is needed as well.
pub fn still_needed(document: &Document, reports: &[LinkReport], not_taken: usize, system: System) -> String {
    let lacking = |(link, report): (usize, &LinkReport)| {
        let count = missing(&rows(document, link, report, system));
        (count > 0).then_some((link, count))
    };
    let lacking: Vec<(usize, usize)> = reports.iter().enumerate().filter_map(lacking).collect();
    let count: usize = lacking.iter().map(|(_, count)| count).sum::<usize>() + not_taken;
    match (count, document.links.len()) {
        (0, _) => "Nothing is missing.".to_string(),
        (count, _) if document.links.len() == 1 || lacking.is_empty() => format!("{count} still needed"),
        (count, _) => {
            let numbers: Vec<String> = lacking.iter().map(|(link, _)| (link + 1).to_string()).collect();
            format!("{count} still needed, of links {}", numbers.join(", "))
        }
    }
}

/// The links that fail as entered, a sentence each.
pub fn failing(document: &Document, reports: &[LinkReport]) -> Vec<String> {
    let fails = |report: &LinkReport| report.answer().is_some_and(|answer| answer.verdict == Verdict::Fails);
    let links = reports.iter().enumerate().filter(|(_, report)| fails(report));
    links
        .map(|(link, _)| {
            let title = words::titled(document, link);
            format!("{title}: it fails as entered. Do not order or make it: settle what fails first.")
        })
        .collect()
}

/// What keeps an order from its yes, a sentence each: a link that fails, one without an answer, what must still be said.
pub fn obstacles(document: &Document, reports: &[LinkReport], system: System) -> Vec<String> {
    let mut obstacles = failing(document, reports);
    for (link, report) in reports.iter().enumerate() {
        let title = words::titled(document, link);
        let missing = missing(&rows(document, link, report, system));
        match report {
            LinkReport::Answer(_) if missing > 0 => {
                obstacles.push(format!("{title}: {missing} of the questions must still be answered."));
            }
            LinkReport::Answer(_) => {}
            LinkReport::Needs(_) | LinkReport::Impossible(_) => {
                obstacles.push(format!("{title}: it cannot be made from what is entered so far."));
            }
        }
    }
    obstacles
}

/// Which link it is. The usual link needs no entry, so only an entry that says so tells that it was asked.
fn which_link(document: &Document, link: usize, place: At) -> Row {
    let title = document.links.get(link).map(crate::document::Link::title).unwrap_or_default();
    let said = [&ROLE, &POSITION, &SEAT].iter().any(|choice| (choice.get)(document, place).is_some());
    let known = if said { (title, State::Said) } else { (taken(&words::lower(&title)), State::ByDefault) };
    Row::new("Which link is it?", known, &[ROLE.id, POSITION.id, SEAT.id])
}

/// What the rig is called.
fn rig(document: &Document, system: System) -> (String, State) {
    let state = if document.name.is_empty() { State::LeftOpen } else { State::Said };
    (rig_title(document, system), state)
}

/// The finish, and what it does to threads.
fn finish(document: &Document, place: At) -> Row {
    let said = (FINISH.get)(document, place);
    let option = (FINISH.options)().into_iter().find(|option| Some(option.id) == FINISH.value(document, place));
    let (label, help) = option.map_or(("", ""), |option| (option.label, option.help));
    let known = match (said, help) {
        (None, _) => (format!("{label}, as is usual."), State::ByDefault),
        (Some(_), "") => (label.to_string(), State::Said),
        (Some(_), help) => (format!("{label}. {help}"), State::Said),
    };
    Row::new("How is the bar finished?", known, &[FINISH.id])
}

/// What else an order says. The bar can be cut without it.
fn of_order(document: &Document) -> Vec<Row> {
    let questions = [
        ("order-remarks", "Is there anything else the shop should know?"),
        ("order-reference", "What is the customer’s own reference?"),
        ("order-wanted", "When is it wanted?"),
    ];
    let row = |(id, question): (&'static str, &str)| {
        let text = ORDER_TEXTS.iter().find(|text| text.id == id);
        let said = text.map_or("", |text| (text.get)(&document.order));
        let known = match text {
            _ if said.is_empty() => (NOTHING.to_string(), State::LeftOpen),
            Some(text) if text.is_day() => (day_in_words(said), State::Said),
            _ => (said.to_string(), State::Said),
        };
        Row::new(question, known, &[id])
    };
    questions.into_iter().map(row).collect()
}

/// A value that nobody was asked for.
fn taken(value: &str) -> String {
    format!("Taken as {value}.")
}

/// A number as far as it is known; without a value it is missing.
fn number(input: &Number, document: &Document, place: At, system: System) -> (String, State) {
    match (input.decided(document, place), input.value(document, place)) {
        (Some(value), _) => (words::value(value, input.kind, system), State::Said),
        (None, Some(value)) => (taken(&words::value(value, input.kind, system)), State::ByDefault),
        (None, None) => (NOTHING.to_string(), State::Missing),
    }
}

/// The label of what is picked, or picked by default; without either it is missing.
fn choice(choice: &Choice, document: &Document, place: At) -> (String, State) {
    match (picked(choice, document, place), (choice.get)(document, place)) {
        (Some(label), Some(_)) => (label.to_string(), State::Said),
        (Some(label), None) => (taken(&words::lower(label)), State::ByDefault),
        (None, _) => (NOTHING.to_string(), State::Missing),
    }
}

/// The same for a choice that can be answered with “not known”: then it is missing all the same.
fn known_or_missing(asked: &Choice, document: &Document, place: At) -> (String, State) {
    let (known, state) = choice(asked, document, place);
    if (asked.get)(document, place) == Some("not-known") { (known, State::Missing) } else { (known, state) }
}
