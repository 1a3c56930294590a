//! What to carry for a rig: each rod end in both hands, its nuts and bolts, and for each kind of bar one at the longest.

use crate::document::{Document, Hand};
use crate::engine::tables::materials::Material;
use crate::engine::tables::threads::Thread;
use crate::engine::{self};
use crate::quantity::exceeds;
use crate::report::{LinkGeometry, LinkReport, Part};

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
    /// What it is, and how many of it to carry.
    pub part: Part,
    /// Whether the rig itself has such a part: of a hand that it does not use, one is carried all the same.
    pub fitted: bool,
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
    for (index, report) in reports.iter().enumerate() {
        if let Some(answer) = report.answer() {
            spares.provisional |= answer.link.provisional;
            stand_in(&mut spares.bars, index, &answer.link);
        }
    }
    for part in &rig.parts {
        for (part, fitted) in one_of(part) {
            match spares.parts.iter_mut().find(|spare| spare.part == part) {
                Some(same) => same.fitted |= fitted,
                None => spares.parts.push(Spare { part, fitted }),
            }
        }
    }
    spares.bars.sort_by(|a, b| b.outside_diameter.total_cmp(&a.outside_diameter).then(b.length.total_cmp(&a.length)));
    for bar in &mut spares.bars {
        settle(bar, reports);
    }
    spares
}

/// What is carried of a part of the rig: one gets home, of what is threaded for a hand one of each, of spacers a pair.
/// Whether the rig itself has it stands beside.
fn one_of(part: &Part) -> Vec<(Part, bool)> {
    let mut one = part.clone();
    let of_each_hand = |of: Hand, with: &dyn Fn(Hand) -> Part| {
        [Hand::Right, Hand::Left].into_iter().map(|hand| (with(hand), hand == of)).collect()
    };
    match &mut one {
        Part::Bar { .. } | Part::Insert { .. } => Vec::new(),
        Part::Bolt { count, .. } | Part::LockNut { count, .. } => {
            *count = 1;
            vec![(one, true)]
        }
        Part::Spacer { count, .. } => {
            *count = 2;
            vec![(one, true)]
        }
        Part::RodEnd { name, thread, hand, steel, .. } => {
            let (name, thread, steel) = (*name, *thread, *steel);
            of_each_hand(*hand, &|hand| Part::RodEnd { name, thread, hand, steel, count: 1 })
        }
        Part::JamNut { thread, hand, .. } => {
            let thread = *thread;
            of_each_hand(*hand, &|hand| Part::JamNut { thread, hand, count: 1 })
        }
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
