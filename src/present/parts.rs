//! Every part to buy or make, for one link or for the whole rig, and whether fewer sizes of rod end would do.

mod names;

use super::words::{Units, length, lower, pieces, titled, trade, unbroken, value};
use crate::document::Document;
use crate::engine;
use crate::engine::tables::rod_ends;
use crate::quantity::{Kind, System, in_all};
use crate::report::{Answer, Cut, FewerSizes, Part, WholeRig};

/// What cannot be known here.
pub const BOLT_LENGTH: &str = "A bolt’s length is its grip plus washers and nut: measure your bracket.";

/// Where every other choice of rod ends fails a check.
pub const NO_FEWER_SIZES: &str = "No rod-end size can be done without: every other choice fails a check.";

/// One kind of part in a list.
#[derive(Debug, Clone, PartialEq)]
pub struct PartRow {
    /// What it is called, with its sizes.
    pub name: String,
    /// How much of it.
    pub amount: Amount,
}

/// How much of a part.
#[derive(Debug, Clone, PartialEq)]
pub enum Amount {
    /// So many pieces.
    Pieces(usize),
    /// What to saw off a bar, in phrases.
    Saw(String),
}

impl Amount {
    /// The amount as text.
    pub fn words(&self) -> String {
        match self {
            Self::Pieces(count) => count.to_string(),
            Self::Saw(saw) => saw.clone(),
        }
    }
}

/// The rows of a list of parts, in its order.
pub fn rows(parts: &[Part], units: impl Into<Units>) -> Vec<PartRow> {
    let units = units.into();
    let amount = |part: &Part| match part {
        Part::Bar { cuts, .. } => Amount::Saw(saw(cuts, part.count(), units)),
        _ => Amount::Pieces(part.count()),
    };
    parts.iter().map(|part| PartRow { name: names::name(part, units), amount: amount(part) }).collect()
}

/// The same as lines of text, in both units.
pub fn text(parts: &[Part]) -> Vec<String> {
    let line = |row: PartRow| format!("{}: {}", row.name, row.amount.words());
    rows(parts, Units::Both).into_iter().map(line).chain([BOLT_LENGTH.to_string()]).collect()
}

/// The parts of one link.
#[derive(Debug, Clone, PartialEq)]
pub struct LinkParts {
    /// `Parts for front lower links, 2 pieces`.
    pub title: String,
    /// What to saw and how much to buy, for a list that is folded away.
    pub summary: String,
    /// A row for each kind.
    pub rows: Vec<PartRow>,
}

/// Everything to buy and make for one link.
pub fn of_link(document: &Document, at: usize, answer: &Answer, system: System) -> LinkParts {
    let mut parts = engine::parts(document, at, answer);
    // Every cut is of this link: it need not be named.
    for part in &mut parts {
        if let Part::Bar { cuts, .. } = part {
            cuts.iter_mut().for_each(|cut| cut.links.clear());
        }
    }
    let title = format!("Parts for {}", lower(&titled(document, at)));
    let bought = parts.iter().filter(|part| !matches!(part, Part::Bar { .. })).map(Part::count).sum();
    let cuts: Vec<String> = parts.iter().filter_map(|part| cuts(part, system.into())).collect();
    let summary = format!("saw {}; {} to buy", cuts.join(", "), pieces(bought));
    LinkParts { title, summary: unbroken(&summary), rows: rows(&parts, system) }
}

/// The parts of the whole rig.
#[derive(Debug, Clone, PartialEq)]
pub struct RigParts {
    /// How many links are not counted, for want of an answer.
    pub missing: Option<String>,
    /// A row for each kind.
    pub rows: Vec<PartRow>,
    /// What the bars weigh together.
    pub weight: String,
}

/// Everything to buy and make, summed over the links; `None` while nothing is to be made.
pub fn whole_rig(whole: &WholeRig, system: System) -> Option<RigParts> {
    let rig = &whole.rig;
    if rig.parts.is_empty() {
        return None;
    }
    let (open, all) = (rig.unmeasured + rig.unfinished + rig.impossible, rig.pieces);
    let missing = match open {
        0 => None,
        1 => Some(format!("1 of {all} links has no answer: its parts are not counted here.")),
        open => Some(format!("{open} of {all} links have no answer: their parts are not counted here.")),
    };
    let weight = value(rig.weight, Kind::Weight, system);
    Some(RigParts {
        missing,
        rows: rows(&rig.parts, system),
        weight: format!("All bars together weigh {weight}, without rod ends, nuts and bolts."),
    })
}

/// A way to buy one rod-end size fewer, in a sentence.
pub fn fewer_sizes_sentence(document: &Document, way: &FewerSizes, system: System) -> String {
    let links = way.links.iter().filter_map(|index| document.links.get(*index));
    let links: Vec<String> = links.map(|link| lower(&link.title())).collect();
    let label = |id: &str| {
        let label = rod_ends::find(id).map_or("", |row| row.label);
        label.split_once(", ").map_or(label.to_string(), |(name, rest)| format!("{name} ({rest})"))
    };
    let [before, then] = way.bolts.map(|bolt| trade(bolt, system));
    let bolts = if before == then {
        String::new()
    } else {
        format!(" Their bolts become {then} instead of {before}: brackets and whatever else they bolt to must take it.")
    };
    format!(
        "One size fewer if {links} take {to} instead of {from}: no check fails, and the bars become {weight} {change} in all.{bolts}",
        links = links.join(", "),
        to = label(way.to),
        from = label(way.from),
        weight = value(way.weight_change.abs(), Kind::Weight, system),
        change = if way.weight_change >= 0.0 { "heavier" } else { "lighter" },
    )
}

/// What to saw off a bar: every length by itself, so that nobody takes the sum for the length of one.
fn saw(cuts: &[Cut], count: usize, units: Units) -> String {
    let each: Vec<String> = cuts.iter().map(|cut| one_cut(cut, units)).collect();
    let whole = |system| in_all(cuts.iter().map(|cut| (cut.count as f64, cut.length)), system);
    let whole = match units {
        Units::In(system) => whole(system),
        Units::Both => format!("{} ({})", whole(System::Inch), whole(System::Metric)),
    };
    // One piece is its own sum.
    let sum = if count > 1 { format!("; total {whole}, plus saw kerf") } else { String::new() };
    format!("saw {}, {}{sum}", pieces(count), each.join(", "))
}

/// `2 × 32-7/8 in (front lower links)`.
fn one_cut(cut: &Cut, units: Units) -> String {
    let links: Vec<String> = cut.links.iter().map(|title| lower(title)).collect();
    // No comma: the line breaks at those.
    let whose = if links.is_empty() { String::new() } else { format!(" ({})", links.join(" and ")) };
    format!("{} × {}{whose}", cut.count, length(cut.length, units))
}

/// What to saw off a bar, without the sum; nothing for other parts.
fn cuts(part: &Part, units: Units) -> Option<String> {
    let Part::Bar { cuts, .. } = part else { return None };
    Some(cuts.iter().map(|cut| one_cut(cut, units)).collect::<Vec<_>>().join(", "))
}
