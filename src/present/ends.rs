//! Each end of a link: what is bought and set, what is drilled and tapped, and how much thread is enough.

mod scale;

pub use scale::{Mark, Reached};

use super::words::{self, Units, fit, hand_mark, hole, length, letter, tap_drill, trade, unbroken};
use crate::engine::fitting;
use crate::quantity::System;
use crate::report::{EndGeometry, LinkGeometry};

/// The title of the section.
pub const TITLE: &str = "The two ends";

/// A size with its name.
#[derive(Debug, Clone, PartialEq)]
pub struct SizeRow {
    /// What it is.
    pub name: &'static str,
    /// The size.
    pub value: String,
}

/// One end of a link.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct End {
    /// `End A`.
    pub letter: String,
    /// The same with thread and hand.
    pub title: String,
    /// What is bought and set.
    pub set: Vec<SizeRow>,
    /// What is drilled and tapped.
    pub shop: Vec<SizeRow>,
    /// The lengths of thread with a name, the longest first, with the link as set among them.
    pub scale: Vec<Mark>,
}

/// Both ends of a link.
#[derive(Debug, Clone, PartialEq)]
pub struct Ends {
    /// The essential sizes, for a section that is folded away.
    pub summary: String,
    /// What to drill and tap, for the same.
    pub shop_summary: String,
    /// End A and end B.
    pub ends: Vec<End>,
    /// What to mill for the wrench, where anything is milled.
    pub flats: Option<String>,
}

/// Both ends of a link in one unit system.
pub fn ends(made: &LinkGeometry, system: System) -> Ends {
    let tube = made.bore > 0.0;
    let end = |(index, end): (usize, &EndGeometry)| {
        let letter = format!("End {}", letter(index));
        End {
            title: format!("{letter}: {}, {}", words::thread(end.thread), end.hand.words()),
            letter,
            set: set_rows(end, system.into()),
            shop: shop_rows(end, tube, system.into()),
            scale: scale::marks(end, system),
        }
    };
    Ends {
        summary: unbroken(&summary(made, system)),
        shop_summary: unbroken(&shop_summary(made, tube, system)),
        ends: made.ends.iter().enumerate().map(end).collect(),
        flats: words::flats(made, system),
    }
}

/// Every size of one end: what is bought and set, then what is drilled and tapped.
pub fn rows(end: &EndGeometry, tube: bool, units: impl Into<Units>) -> Vec<SizeRow> {
    let units = units.into();
    let mut rows = set_rows(end, units);
    rows.extend(shop_rows(end, tube, units));
    rows
}

/// Thread in sight past the jam nut, to a quarter of a turn: `about 1-1/2 threads`.
pub fn threads_showing(end: &EndGeometry) -> String {
    format!("about {}", fitting::threads(end.visible_threads))
}

fn row(name: &'static str, value: String) -> SizeRow {
    SizeRow { name, value }
}

fn set_rows(end: &EndGeometry, units: Units) -> Vec<SizeRow> {
    let nut = format!("{} thick, {} wrench", length(end.jam_nut, units), length(end.jam_nut_across, units));
    vec![
        row("Rod end", end.rod_end.to_string()),
        row("Eye center to bar face", length(end.eye_to_face, units)),
        row("Full thread in the bar", fit(end.engagement, units)),
        row("Thread showing", threads_showing(end)),
        row("Jam nut", nut),
        row("Bolt hole in the ball", trade(end.bore, units)),
    ]
}

fn shop_rows(end: &EndGeometry, tube: bool, units: Units) -> Vec<SizeRow> {
    let deep = |value: f64| format!("{} deep", length(value, units));
    let tapped = row("Tap, full thread", deep(end.tapped_depth));
    // A welded insert comes tapped; nothing is drilled.
    if tube {
        let welded_in = end.insert.map(|insert| {
            let rosettes = if insert.rosettes { ", with rosette welds" } else { "" };
            let flange = fit(insert.shoulder, units);
            let kind = insert.kind.label;
            let flange = if insert.kind.has_flange { format!(", flange {flange}") } else { String::new() };
            row("Welded into the tube", format!("{kind}{flange}{rosettes}"))
        });
        return welded_in.into_iter().chain([tapped]).collect();
    }
    vec![
        row("Tap drill", tap_drill(end, units)),
        row("Hole before tapping", hole(end, units)),
        row("Drill to the shoulder", deep(end.drill_depth)),
        row("Drill to the point", deep(end.drill_point)),
        tapped,
    ]
}

fn summary(made: &LinkGeometry, system: System) -> String {
    let [a, b] = made.ends.each_ref().map(|end| hand_mark(end.hand));
    let engaged = at_both(made, |end| fit(end.engagement, system));
    format!("{}, {a} at A and {b} at B, full thread in the bar {engaged}", words::threads(&made.ends))
}

fn shop_summary(made: &LinkGeometry, tube: bool, system: System) -> String {
    let tap = at_both(made, |end| format!("{} deep", length(end.tapped_depth, system)));
    if tube {
        return format!("inserts tapped {tap}");
    }
    let drill = at_both(made, |end| length(end.drill_depth, system));
    format!("tap {tap}, drill {drill} to the shoulder")
}

/// A size that both ends have, or that of each.
fn at_both(made: &LinkGeometry, size: impl Fn(&EndGeometry) -> String) -> String {
    let [a, b] = made.ends.each_ref().map(size);
    if a == b { a } else { format!("{a} at A and {b} at B") }
}
