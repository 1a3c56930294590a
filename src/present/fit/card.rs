//! The pocket card: every link of the rig on one page.

use super::log::turned_since;
use super::which_ends;
use crate::document::Document;
use crate::engine::fitting::card::{CardEnd, CardLink, card_link};
use crate::engine::fitting::hands::nut_tightens;
use crate::engine::fitting::{quarters, quarters_below, threads};
use crate::log::{self, Entry, EntryKind, Log, STOP, Spot};
use crate::present::words::{self, hand_mark, letter};
use crate::quantity::{Kind, System, fit, plain, show};
use crate::report::LinkReport;

/// Its name on paper.
pub const TITLE: &str = "Pocket card";

/// What it is for, beside its button.
pub const HELP: &str = "One page for the glove box: stops, torque and which way to turn, for every link of the rig.";

/// What holds for every link.
pub const RULES: [&str; 5] = [
    "One right-hand and one left-hand end: loosen both jam nuts first, and tighten both last, with the bar held so that it cannot turn, anti-seize on the shanks.",
    "Each nut as seen from its own eye: a left-hand nut tightens counterclockwise and loosens clockwise, a right-hand nut the other way round.",
    "Never wind an end out past its stop. Too short at the stop: order a longer bar.",
    "Both links of a pair alike. Both eyes square to their brackets. A new line of paint across each nut and bar.",
    "A bent, cracked or gouged link is replaced. Makers’ ratings, local rules and a licensed engineer take precedence.",
];

/// Said where a published series stands in for the rod ends.
pub const PROVISIONAL: &str =
    "The rod ends were not measured: these stops stand on a published series. Measure before you trust them.";

/// What the card says of a link.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardBlock {
    /// Which link.
    pub title: String,
    /// How long it is set, and how far it may go.
    pub lengths: String,
    /// Which way to turn it.
    pub turning: String,
    /// A line for each end.
    pub ends: [String; 2],
    /// The bolts through the eyes, and what the log says was turned on each bar.
    pub more: Vec<String>,
    /// What keeps it from being fitted or trusted as it stands.
    pub stops: Vec<String>,
}

/// The blocks of the card, a link each; those without an answer say so, and those with an open hit in the log.
pub fn blocks(document: &Document, reports: &[LinkReport], log: &Log, system: System) -> Vec<CardBlock> {
    let block = |(link, report): (usize, &LinkReport)| {
        let title = words::titled(document, link);
        let hits = log.open_hits(document, link).map(|(bar, entry)| hit_line(&bar, entry));
        let block = match report.answer() {
            Some(answer) => {
                let ends = which_ends(&answer.link);
                let mut block = of_link(title, &ends, &card_link(document, link, answer), system);
                block.more.extend(turns(document, link, log, system));
                block
            }
            None => CardBlock {
                title,
                lengths: String::new(),
                turning: String::new(),
                ends: [String::new(), String::new()],
                more: Vec::new(),
                stops: vec!["No answer yet: its entries are not complete.".to_string()],
            },
        };
        CardBlock { stops: hits.chain(block.stops).collect(), ..block }
    };
    reports.iter().enumerate().map(block).collect()
}

/// What every link of the card says alike, taken out of the blocks: it is said once above them.
pub fn said_once(blocks: &mut [CardBlock]) -> Vec<String> {
    let [first, rest @ ..] = &*blocks else { return Vec::new() };
    if rest.is_empty() {
        return Vec::new();
    }
    // What speaks of “this link” stays with it.
    let everywhere = |block: &CardBlock| block.stops.iter().any(|stop| stop == PROVISIONAL);
    let stops: Vec<String> = blocks.iter().all(everywhere).then(|| PROVISIONAL.to_string()).into_iter().collect();
    let turning = Some(first.turning.clone()).filter(|turning| !turning.is_empty());
    let turning = turning.filter(|turning| rest.iter().all(|block| block.turning == *turning));
    for block in blocks {
        block.stops.retain(|stop| !stops.contains(stop));
        if turning.is_some() {
            block.turning.clear();
        }
    }
    stops.into_iter().chain(turning).collect()
}

/// What stands first at a link while a hit is open against one of its bars.
fn hit_line(bar: &str, entry: &Entry) -> String {
    if entry.hit_verdict() == Some(STOP) {
        format!("{bar}: stop. A hit is in the log: do not drive on it.")
    } else {
        format!("{bar}: limp home only. A hit is in the log: replace it before the next run.")
    }
}

/// What was turned on each bar since it was made as it is, by the log.
fn turns(document: &Document, link: usize, log: &Log, system: System) -> Vec<String> {
    let turned = |spot: &Spot| log.of_bar(spot).any(|entry| entry.kind == EntryKind::Turned);
    let bars = log::bars(document, link).into_iter().filter(|(spot, _)| turned(spot));
    bars.map(|(spot, bar)| format!("{bar}, by the log: {}", turned_since(log, &spot, "", system))).collect()
}

/// The bolts in one line.
fn bolts(bolts: [Option<(f64, f64)>; 2], system: System) -> String {
    let one =
        |(diameter, torque)| format!("{}, {}", words::trade(diameter, system), show(torque, Kind::Torque, system));
    match bolts.map(|bolt| bolt.map(one)) {
        [Some(a), Some(b)] if a == b => format!("Bolts {a}, clean and dry thread."),
        [a, b] => {
            let told = [a, b].map(|bolt| bolt.unwrap_or("ask its maker for the torque".to_string()));
            format!("Bolt at A: {}. Bolt at B: {}. Clean and dry thread.", told[0], told[1])
        }
    }
}

fn of_link(title: String, which: &str, link: &CardLink, system: System) -> CardBlock {
    let long = |value: f64| words::length(value, system);
    let lengths =
        format!("Eye to eye {}. Shortest {}, longest {}.", long(link.length), long(link.shortest), long(link.longest));
    let per_turn = show(link.per_turn, Kind::FineLength, system);
    let lengths = if link.turning.is_some() { format!("{lengths} One turn: {per_turn}.") } else { lengths };
    let turning = match link.turning {
        Some(turning) => format!("{which} {turning}"),
        None => "Both ends have the same hand: turning the bar does not change its length, and one end can unscrew without anybody noticing. Unbolt one eye, leave the other nut tight, and turn that eye half a turn at a time.".to_string(),
    };
    let ends = [0, 1].map(|end| end_line(end, &link.ends[end], system));
    let fails = link.fails.then_some("A part of this link fails. Do not fit it.");
    let provisional = link.provisional.then_some(PROVISIONAL);
    let never_bent = link.never_bent.then_some("Bent: do not drive it, not even home.");
    let stops = [fails, provisional, never_bent].into_iter().flatten().map(str::to_string).collect();
    CardBlock { title, lengths, turning, ends, more: vec![bolts(link.bolts, system)], stops }
}

fn end_line(at: usize, end: &CardEnd, system: System) -> String {
    let tightens = nut_tightens(end.hand).words();
    let least = plain(end.torque.least, Kind::Torque, system);
    let most = show(end.torque.most, Kind::Torque, system);
    format!(
        "{} {} {}: {} showing, at most {}; eye center to bar face {}. Jam nut, {} wrench: tighten {tightens}, {least} to {most}.",
        letter(at),
        words::thread(end.thread),
        hand_mark(end.hand),
        threads(end.showing),
        quarters(quarters_below(end.most_showing)),
        fit(end.eye_to_face, system),
        words::trade(end.wrench, system),
    )
}
