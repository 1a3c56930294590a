//! The whole rig: which link is worst, what it weighs, and every part to buy or make.

use super::bolt::FOOT;
use super::formulas::pins;
use super::given::Values;
use super::tables::inserts;
use super::tables::rod_ends;
use super::tables::threads::Thread;
use crate::document::{Document, Hand, Link, OWN_ROD_END, Role, Spacers};
use crate::inputs::{self, At, pieces_of};
use crate::report::{Answer, BoughtBolt, Cut, FewerSizes, LinkGeometry, LinkReport, Part, RigReport, Verdict};

/// Everything about a rig that follows from its links' reports, which stand in the order of its links.
pub(super) fn rig(document: &Document, reports: &[LinkReport]) -> RigReport {
    let mut worst_first: Vec<usize> = (0..document.links.len().min(reports.len())).collect();
    worst_first.sort_by(|a, b| {
        // What says most against the rig first; where that is the same, what uses most of its strength.
        let [(a_rank, a_used), (b_rank, b_used)] = [*a, *b].map(|index| severity(&reports[index]));
        b_rank.cmp(&a_rank).then(b_used.total_cmp(&a_used))
    });
    let mut rig = RigReport { worst_first, ..RigReport::default() };
    for (index, (link, report)) in document.links.iter().zip(reports).enumerate() {
        let pieces = pieces_of(document, index);
        rig.pieces += pieces;
        match report {
            LinkReport::Answer(answer) => {
                rig.weight += pieces as f64 * answer.link.bar_weight;
                count(&mut rig.parts, document, index, link, answer, pieces);
            }
            LinkReport::Impossible(_) => rig.impossible += pieces,
            LinkReport::Needs(needs) if needs.contains(&inputs::LENGTH.id) => rig.unmeasured += pieces,
            LinkReport::Needs(_) => rig.unfinished += pieces,
        }
        rig.open += usize::from(report.answer().is_none());
    }
    sort(&mut rig.parts);
    rig.verdict = verdict(reports);
    rig
}

/// The verdict of the whole rig.
fn verdict(reports: &[LinkReport]) -> Option<Verdict> {
    let answered = reports.iter().any(|report| report.answer().is_some());
    let verdicts = reports.iter().map(|report| match report {
        LinkReport::Answer(answer) => answer.verdict,
        LinkReport::Needs(_) => Verdict::Unanswered,
        LinkReport::Impossible(_) => Verdict::Fails,
    });
    verdicts.max().filter(|_| answered)
}

/// Every part of one link, for all its pieces.
pub(super) fn parts(document: &Document, index: usize, answer: &Answer) -> Vec<Part> {
    let mut parts = Vec::new();
    if let Some(link) = document.links.get(index) {
        let pieces = pieces_of(document, index);
        count(&mut parts, document, index, link, answer, pieces);
    }
    sort(&mut parts);
    parts
}

/// By kind, then the thickest first.
fn sort(parts: &mut [Part]) {
    parts.sort_by(|a, b| a.kind().cmp(&b.kind()).then(b.size().total_cmp(&a.size())));
}

/// How much a link says against the rig: one that cannot be made more than one that fails, one that still lacks an
/// entry less than any that is answered.
fn severity(report: &LinkReport) -> (u8, f64) {
    match report {
        LinkReport::Needs(_) => (0, 0.0),
        LinkReport::Impossible(_) => (6, 0.0),
        LinkReport::Answer(answer) => {
            let rank = match answer.verdict {
                Verdict::Passes => 1,
                Verdict::Close => 2,
                Verdict::Unanswered => 3,
                Verdict::Bends => 4,
                Verdict::Fails => 5,
            };
            let used = answer.weakest.and_then(|index| answer.findings.get(index)).and_then(|worst| worst.utilization);
            (rank, used.unwrap_or(0.0))
        }
    }
}

fn count(parts: &mut Vec<Part>, document: &Document, index: usize, link: &Link, answer: &Answer, pieces: usize) {
    let made = &answer.link;
    let place = At::of_link(document, index);
    let value = |input: &'static inputs::Number| input.value(document, place).unwrap_or(0.0);
    add(parts, bar(made, link.title(), pieces));
    let Some(given) = Values::new(document, index) else { return };
    let [spacer, ear, gap] = [&inputs::SPACER, &inputs::EAR, &inputs::GAP].map(value);
    for (end, made) in made.ends.iter().enumerate() {
        let hand = link.ends.get(end).and_then(|end| end.hand).unwrap_or(made.hand);
        let steel = inputs::shank_steel(document, At { end, ..place });
        add(parts, Part::RodEnd { name: made.rod_end, thread: made.thread, hand, steel, count: pieces });
        add(parts, Part::JamNut { thread: made.thread, hand, count: pieces });
        if let Some(insert) = made.insert {
            let inserts::Fitted { outside_diameter, wall, length, shoulder: flange, .. } = insert;
            let thread = made.thread;
            add(parts, Part::Insert { thread, hand, outside_diameter, wall, length, flange, count: pieces });
        }
        // The unthreaded length that two ears, the ball, its spacers and any gap ask for.
        let grip = made.ball_width + 2.0 * (spacer + ear + gap);
        let bolt = given.bolt(end, made.bore);
        let bought = bolt.map(|bolt| BoughtBolt { diameter: bolt.diameter, grade: bolt.grade.id, series: bolt.series });
        add(parts, Part::Bolt { bolt: bought, grip, count: pieces });
        add(parts, Part::LockNut { bolt: bought, count: pieces });
        if spacer > 0.0 {
            let diameter = bolt.map(|bolt| bolt.diameter);
            let foot = given.spacer_foot(end).or(diameter.map(|bolt| pins::SPACER_FOOT.value(&[FOOT, bolt])));
            let into = (given.spacers() == Spacers::HighMisalignment).then_some(made.bore);
            add(parts, Part::Spacer { bore: diameter, foot, into, long: spacer, count: 2 * pieces });
        }
    }
}

fn bar(made: &LinkGeometry, title: String, pieces: usize) -> Part {
    Part::Bar {
        material: made.material,
        outside_diameter: made.stock_diameter,
        wall: made.wall,
        cuts: vec![Cut { length: made.cut, count: pieces, links: vec![title] }],
    }
}

/// Whether two lengths are the same to anybody who measures.
fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-7
}

/// Whether two bolts come out of one drawer, but for their length.
fn same_bolt(a: Option<BoughtBolt>, b: Option<BoughtBolt>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => near(a.diameter, b.diameter) && a.grade == b.grade && a.series == b.series,
        (None, None) => true,
        _ => false,
    }
}

/// Puts a part with those that are the same, or at the end.
fn add(parts: &mut Vec<Part>, part: Part) {
    if let Some(same) = parts.iter_mut().find(|other| other.is_same(&part)) {
        same.more(&part);
    } else {
        parts.push(part);
    }
}

impl Part {
    /// In which order kinds of parts are listed.
    pub const fn kind(&self) -> u8 {
        match self {
            Self::Bar { .. } => 0,
            Self::Insert { .. } => 1,
            Self::RodEnd { .. } => 2,
            Self::JamNut { .. } => 3,
            Self::Bolt { .. } => 4,
            Self::LockNut { .. } => 5,
            Self::Spacer { .. } => 6,
        }
    }

    /// How thick it is: what its kind is sorted by.
    fn size(&self) -> f64 {
        match self {
            Self::Bar { outside_diameter, .. } => *outside_diameter,
            Self::Insert { thread, .. } | Self::RodEnd { thread, .. } | Self::JamNut { thread, .. } => thread.major,
            Self::Bolt { bolt, .. } | Self::LockNut { bolt, .. } => bolt.map_or(0.0, |bolt| bolt.diameter),
            Self::Spacer { bore, .. } => bore.unwrap_or(0.0),
        }
    }

    /// How many pieces.
    pub fn count(&self) -> usize {
        match self {
            Self::Bar { cuts, .. } => cuts.iter().map(|cut| cut.count).sum(),
            Self::Insert { count, .. }
            | Self::RodEnd { count, .. }
            | Self::JamNut { count, .. }
            | Self::Bolt { count, .. }
            | Self::LockNut { count, .. }
            | Self::Spacer { count, .. } => *count,
        }
    }

    /// Whether the two come out of the same drawer; bars that differ only in length come off the same stock.
    fn is_same(&self, other: &Self) -> bool {
        let thread = |a: (&Thread, Hand), b: (&Thread, Hand)| a.0.id == b.0.id && a.1 == b.1;
        match (self, other) {
            (
                Self::Bar { material, outside_diameter, wall, .. },
                Self::Bar { material: metal, outside_diameter: outside, wall: thick, .. },
            ) => material.id == metal.id && near(*outside_diameter, *outside) && near(*wall, *thick),
            (
                Self::RodEnd { name, thread: a, hand: x, steel, .. },
                Self::RodEnd { name: other, thread: b, hand: y, steel: its, .. },
            ) => name == other && steel == its && thread((a, *x), (b, *y)),
            (Self::JamNut { thread: a, hand: x, .. }, Self::JamNut { thread: b, hand: y, .. }) => {
                thread((a, *x), (b, *y))
            }
            (
                Self::Insert { thread: a, hand: x, outside_diameter, length, flange, .. },
                Self::Insert { thread: b, hand: y, outside_diameter: outside, length: long, flange: thick, .. },
            ) => {
                let sizes = [(outside_diameter, outside), (length, long), (flange, thick)];
                thread((a, *x), (b, *y)) && sizes.into_iter().all(|(one, other)| near(*one, *other))
            }
            (Self::Bolt { bolt, grip, .. }, Self::Bolt { bolt: other, grip: long, .. }) => {
                same_bolt(*bolt, *other) && near(*grip, *long)
            }
            (Self::LockNut { bolt, .. }, Self::LockNut { bolt: other, .. }) => same_bolt(*bolt, *other),
            (
                Self::Spacer { bore, foot, into, long, .. },
                Self::Spacer { bore: hole, foot: face, into: ball, long: reach, .. },
            ) => {
                let alike = |a: &Option<f64>, b: &Option<f64>| near(a.unwrap_or(0.0), b.unwrap_or(0.0));
                alike(bore, hole) && alike(foot, face) && alike(into, ball) && near(*long, *reach)
            }
            _ => false,
        }
    }

    fn more(&mut self, other: &Self) {
        match (self, other) {
            (Self::Bar { cuts, .. }, Self::Bar { cuts: more, .. }) => {
                more.iter().for_each(|cut| saw(cuts, cut.clone()));
            }
            (
                Self::Insert { count, .. }
                | Self::RodEnd { count, .. }
                | Self::JamNut { count, .. }
                | Self::Bolt { count, .. }
                | Self::LockNut { count, .. }
                | Self::Spacer { count, .. },
                other,
            ) => *count += other.count(),
            _ => {}
        }
    }
}

/// Puts a cut with those of the same length, or in its place among the others.
fn saw(cuts: &mut Vec<Cut>, cut: Cut) {
    if let Some(same) = cuts.iter_mut().find(|other| near(other.length, cut.length)) {
        same.count += cut.count;
        same.links.extend(cut.links);
        return;
    }
    let at = cuts.iter().position(|other| other.length < cut.length).unwrap_or(cuts.len());
    cuts.insert(at, cut);
}

/// For each rod end of the rig, the one already there that all of its links could take instead with every check
/// holding, and the least weight gained; the rod end with the fewest pieces first. `report_on` answers for one link.
/// The holes at both ends of a sway bar's end link come with parts that nobody makes here, so those keep their size.
pub(super) fn fewer_sizes(
    document: &Document,
    reports: &[LinkReport],
    report_on: fn(&Document, usize) -> LinkReport,
) -> Vec<FewerSizes> {
    let pieces = |index: usize| pieces_of(document, index);
    // Only links whose two ends are alike, and from the table: what somebody owns is not swapped.
    let used = |index: usize| {
        let made = &reports.get(index)?.answer()?.link;
        let [a, b] = made.ends.each_ref().map(|end| end.rod_end_id);
        (a == b && a != OWN_ROD_END).then_some(a)
    };
    let mut sizes: Vec<&'static str> = Vec::new();
    (0..document.links.len()).filter_map(used).for_each(|id| {
        if !sizes.contains(&id) {
            sizes.push(id);
        }
    });
    let mut found: Vec<FewerSizes> = Vec::new();
    for &size in &sizes {
        let links: Vec<usize> = (0..document.links.len()).filter(|index| used(*index) == Some(size)).collect();
        if links.iter().any(|index| document.links.get(*index).is_some_and(|link| link.role == Role::SwayLink)) {
            continue;
        }
        let mut trials: Vec<FewerSizes> = Vec::new();
        for &instead in sizes.iter().filter(|other| **other != size) {
            let mut trial = document.clone();
            for index in &links {
                if let Some(link) = trial.links.get_mut(*index) {
                    link.ends.iter_mut().for_each(|end| end.rod_end = Some(instead));
                }
            }
            let mut weight_change = 0.0;
            let passes = links.iter().all(|&index| {
                let after = report_on(&trial, index);
                let before = reports.get(index).and_then(LinkReport::answer);
                let (Some(after), Some(before)) = (after.answer(), before) else { return false };
                weight_change += pieces(index) as f64 * (after.link.bar_weight - before.link.bar_weight);
                // No worse than it stands now, and nothing that a search would not recommend.
                after.verdict <= before.verdict && after.findings.iter().all(|finding| finding.recommendable)
            });
            if passes {
                let bolts = [(document, size), (&trial, instead)].map(|(document, id)| {
                    let bore = rod_ends::find(id).map_or(0.0, |row| row.bore);
                    let given = links.first().and_then(|index| Values::new(document, *index));
                    given.and_then(|given| given.bolt(0, bore)).map_or(bore, |bolt| bolt.diameter)
                });
                trials.push(FewerSizes { links: links.clone(), from: size, to: instead, bolts, weight_change });
            }
        }
        trials.sort_by(|a, b| a.weight_change.total_cmp(&b.weight_change));
        found.extend(trials.into_iter().next());
    }
    found.sort_by_key(|advice| advice.links.iter().map(|index| pieces(*index)).sum::<usize>());
    found
}
