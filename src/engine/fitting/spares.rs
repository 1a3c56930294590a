//! What to carry for a rig: each rod end in both hands, its nuts and bolts, and for each kind of bar one at the longest.

use crate::document::{Document, Hand};
use crate::engine::tables::materials::Material;
use crate::engine::tables::threads::Thread;
use crate::engine::{self};
use crate::quantity::exceeds;
use crate::report::{BoughtBolt, LinkGeometry, LinkReport, Part};

/// What to carry. Lengths SI.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Spares {
    /// Spare bars, the thickest first.
    pub bars: Vec<SpareBar>,
    /// Everything else, in the order of the list.
    pub parts: Vec<Spare>,
    /// Links of the rig without an answer, for which nothing is listed.
    pub open: usize,
    /// Whether some length stands on a published series instead of a rod end that was measured.
    pub provisional: bool,
}

/// So many of one part.
#[derive(Debug, Clone, PartialEq)]
pub struct Spare {
    /// What it is.
    pub part: SparePart,
    /// How many to carry.
    pub count: usize,
    /// Whether the rig itself has such a part: of a hand that it does not use, one is carried all the same.
    pub fitted: bool,
}

/// A part to carry.
#[derive(Debug, Clone, PartialEq)]
pub enum SparePart {
    /// A rod end.
    RodEnd {
        /// As the tables name it.
        name: &'static str,
        /// Thread of its shank.
        thread: &'static Thread,
        /// Hole in its ball.
        bore: f64,
        /// Which way it is cut.
        hand: Hand,
    },
    /// A jam nut.
    JamNut {
        /// Its thread.
        thread: &'static Thread,
        /// Which way it is cut.
        hand: Hand,
    },
    /// A bolt with its lock nut.
    Bolt {
        /// Which bolt; `None` while only the user knows.
        bolt: Option<BoughtBolt>,
        /// The least length without thread.
        grip: f64,
    },
    /// A spacer.
    Spacer {
        /// Hole for the bolt; `None` while only the user knows.
        bore: Option<f64>,
        /// From face to face.
        long: f64,
    },
}

/// A bar that stands in for every link of its kind.
#[derive(Debug, Clone, PartialEq)]
pub struct SpareBar {
    /// What it is made of.
    pub material: &'static Material,
    /// Outside diameter.
    pub outside_diameter: f64,
    /// Wall of a tube, 0 for a solid bar.
    pub wall: f64,
    /// Threads and hands at its two ends.
    pub ends: [(&'static Thread, Hand); 2],
    /// Finished length: that of the longest it stands in for.
    pub length: f64,
    /// The links it is for, by their place in the list, and how it does for each.
    pub links: Vec<StandsIn>,
}

/// How a spare bar does for a link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StandsIn {
    /// Which link.
    pub link: usize,
    /// Eye to eye that is wanted.
    pub wanted: f64,
    /// Eye to eye with both ends wound right in.
    pub shortest: f64,
    /// Whether it can be set to what is wanted.
    pub fits: bool,
}

/// What to carry for a rig, from the reports on its links in their order.
pub fn spares(document: &Document, reports: &[LinkReport]) -> Spares {
    let rig = engine::rig(document, reports);
    let mut spares = Spares { open: rig.open, ..Spares::default() };
    let answers = || reports.iter().enumerate().filter_map(|(index, report)| Some((index, report.answer()?)));
    for (index, answer) in answers() {
        spares.provisional |= answer.link.provisional;
        for end in &answer.link.ends {
            for hand in [Hand::Right, Hand::Left] {
                let fitted = hand == end.hand;
                add(
                    &mut spares.parts,
                    SparePart::RodEnd { name: end.rod_end, thread: end.thread, bore: end.bore, hand },
                    1,
                    fitted,
                );
                add(&mut spares.parts, SparePart::JamNut { thread: end.thread, hand }, 1, fitted);
            }
        }
        stand_in(&mut spares.bars, index, &answer.link);
    }
    for part in &rig.parts {
        match *part {
            Part::Bolt { bolt, grip, .. } => add(&mut spares.parts, SparePart::Bolt { bolt, grip }, 1, true),
            Part::Spacer { bore, long, .. } => add(&mut spares.parts, SparePart::Spacer { bore, long }, 2, true),
            _ => {}
        }
    }
    spares.parts.sort_by(|a, b| rank(&a.part).cmp(&rank(&b.part)).then(size(&b.part).total_cmp(&size(&a.part))));
    spares.bars.sort_by(|a, b| b.outside_diameter.total_cmp(&a.outside_diameter).then(b.length.total_cmp(&a.length)));
    for bar in &mut spares.bars {
        settle(bar, reports);
    }
    spares
}

/// Puts a part with those that are the same, or at the end: one of a kind is enough to get home.
fn add(parts: &mut Vec<Spare>, part: SparePart, count: usize, fitted: bool) {
    match parts.iter_mut().find(|other| other.part == part) {
        Some(same) => same.fitted |= fitted,
        None => parts.push(Spare { part, count, fitted }),
    }
}

const fn rank(part: &SparePart) -> u8 {
    match part {
        SparePart::RodEnd { .. } => 0,
        SparePart::JamNut { .. } => 1,
        SparePart::Bolt { .. } => 2,
        SparePart::Spacer { .. } => 3,
    }
}

fn size(part: &SparePart) -> f64 {
    match part {
        SparePart::RodEnd { thread, .. } | SparePart::JamNut { thread, .. } => thread.major,
        SparePart::Bolt { bolt, .. } => bolt.map_or(0.0, |bolt| bolt.diameter),
        SparePart::Spacer { bore, .. } => bore.unwrap_or(0.0),
    }
}

/// Puts a link to the bar of its kind; a bar may be turned end for end.
fn stand_in(bars: &mut Vec<SpareBar>, link: usize, made: &LinkGeometry) {
    let ends = made.ends.each_ref().map(|end| (end.thread, end.hand));
    let same_ends = |a: &[(&Thread, Hand); 2], b: &[(&Thread, Hand); 2]| {
        (0..2).all(|end| a[end].0.id == b[end].0.id && a[end].1 == b[end].1)
    };
    let turned = [ends[1], ends[0]];
    let near = |a: f64, b: f64| (a - b).abs() < 1e-7;
    let place = StandsIn { link, wanted: made.length, shortest: f64::NAN, fits: false };
    let same = bars.iter_mut().find(|bar| {
        bar.material.id == made.material.id
            && near(bar.outside_diameter, made.outside_diameter)
            && near(bar.wall, made.wall)
            && (same_ends(&bar.ends, &ends) || same_ends(&bar.ends, &turned))
    });
    match same {
        Some(bar) => {
            bar.length = bar.length.max(made.bar);
            bar.links.push(place);
        }
        None => bars.push(SpareBar {
            material: made.material,
            outside_diameter: made.outside_diameter,
            wall: made.wall,
            ends,
            length: made.bar,
            links: vec![place],
        }),
    }
}

/// Once the length of a bar is known: for which links it can be wound in far enough, with their own rod ends.
fn settle(bar: &mut SpareBar, reports: &[LinkReport]) {
    for place in &mut bar.links {
        let Some(answer) = reports.get(place.link).and_then(LinkReport::answer) else { continue };
        let made = &answer.link;
        let faces: f64 = made.ends.iter().map(|end| end.eye_to_face - end.reach.in_limit).sum();
        place.shortest = bar.length + faces;
        place.fits = !exceeds(place.shortest, made.length);
    }
}
