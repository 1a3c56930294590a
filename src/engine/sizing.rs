//! Which size: the smallest that holds, what the trade fits, the larger of the two, and how firm that is.

use super::build::{Asked, build};
use super::fitted;
use super::formula::Sheet;
use super::formulas::{beams, sections};
use super::geometry::Section;
use super::given::{RodEndSpec, Values};
use super::habit::{self, Pick};
use super::loads;
use super::sentence::{Said, said};
use super::tables::materials::Form;
use super::tables::{practice, rod_ends, stock, threads};
use crate::document::{OWN_ROD_END, Role, Stock};
use crate::inputs;
use crate::quantity::{self, exceeds};
use crate::report::{Candidate, Fitted, Sizing, Trade, Verdict};

/// A size that was tried, with what is needed to build it again.
#[derive(Clone)]
pub(super) struct SizedCandidate {
    pub(super) section: Section,
    pub(super) joints: [RodEndSpec; 2],
    pub(super) candidate: Candidate,
    pub(super) verdict: Verdict,
}

impl SizedCandidate {
    /// What is compared with a habit.
    fn pick(&self) -> Pick {
        Pick {
            size: self.section.size(),
            thread: self.candidate.thread,
            class: habit::smaller_class(&self.joints),
            decides: self.candidate.decides,
        }
    }
}

/// The outcome of a search.
pub(super) struct Search {
    pub(super) by_numbers: Option<SizedCandidate>,
    pub(super) recommended: Option<SizedCandidate>,
    pub(super) by_trade: Option<Trade>,
    pub(super) governs: Said,
}

/// Searches stock sizes, smallest first, and rod ends, smallest thread first.
pub(super) fn search(given: &Values) -> Search {
    let sections = stock_sections(given);
    let joints = joints(given);
    let promising: Vec<Section> = sections.iter().copied().filter(|section| !hopeless(given, *section)).collect();
    let by_numbers = promising.iter().find_map(|section| first_joint(given, *section, &joints, |_| {}));
    let by_trade = habit::trade(given);
    let (recommended, governs) = larger_of(given, by_numbers.as_ref(), by_trade.as_ref(), &promising, &joints);
    Search { by_numbers, recommended, by_trade, governs }
}

/// One size down and one size up, by section modulus; up, the first that passes.
pub(super) fn neighbors(given: &Values, of: &Candidate) -> [Option<Candidate>; 2] {
    let (sections, joints) = (stock_sections(given), joints(given));
    let at = of.size().modulus();
    let class = threads::find(of.thread).and_then(practice::class);
    let down = sections.iter().rev().find(|section| exceeds(at, section.size().modulus()));
    let mut up = sections.iter().filter(|section| exceeds(section.size().modulus(), at)).peekable();
    let next = up.peek().copied();
    // Nobody steps up a bar in order to step down its rod ends.
    let no_smaller = of_class(&joints, habit::larger_class, |its| its >= class);
    let found = [
        down.and_then(|section| best_joint(given, *section, &joints, &[])),
        up.find_map(|section| first_joint(given, *section, &no_smaller, |_| {}))
            .or_else(|| next.and_then(|section| holding_or_closest(given, *section, &no_smaller))),
    ];
    found.map(|tried| tried.map(|tried| tried.candidate))
}

/// The next size that comes out better, or at least with more in hand: the bar larger where `the_bar` is what is asked for
/// most, else the rod ends, since a larger bar does nothing for them.
pub(super) fn next_up(given: &Values, at: &SizedCandidate, the_bar: bool) -> Option<Candidate> {
    let (sections, joints) = (stock_sections(given), joints(given));
    let (modulus, class) = (at.section.size().modulus(), habit::larger_class(&at.joints));
    let larger_bar = || {
        let sections = sections.iter().filter(|section| exceeds(section.size().modulus(), modulus));
        let joints = of_class(&joints, habit::larger_class, |its| its >= class);
        sections.filter_map(move |section| first_joint(given, *section, &joints, |_| {}))
    };
    let larger_ends = || {
        let sections = sections.iter().filter(|section| !exceeds(modulus, section.size().modulus()));
        let joints = of_class(&joints, habit::larger_class, |its| its > class);
        sections.filter_map(move |section| first_joint(given, *section, &joints, |_| {}))
    };
    let better = |tried: &SizedCandidate| exceeds(at.candidate.utilization, tried.candidate.utilization);
    let outright = |tried: &SizedCandidate| tried.verdict < at.verdict;
    let found = if the_bar {
        larger_bar().find(outright).or_else(|| larger_bar().find(better))
    } else {
        larger_ends().find(outright).or_else(|| larger_ends().find(better)).or_else(|| larger_bar().find(better))
    };
    found.map(|tried| tried.candidate)
}

/// Whether a section cannot hold whatever its rod ends are: a weight that is only set down already counts twice, and
/// that alone, without compression, bends the middle of the bar for good. It saves a search most of its work.
fn hopeless(given: &Values, section: Section) -> bool {
    let Some(strength) = section.strength(given.material()) else { return true };
    let sheet = &mut Sheet::silent();
    let section = section.finished(given, sheet);
    let strike = match given.number(&inputs::OWN_STRIKE) {
        Some(force) => force,
        None => 2.0 * loads::strike_weight(given, sheet),
    };
    let length = given.known(&inputs::LENGTH);
    let moment = beams::MOMENT_OF_STRIKE.value(&[strike, length / 2.0, length / 2.0, length]);
    let size = [section.outside_diameter, section.bore()];
    // A steel tube may yield through before it fails; any other bar must stay below first yield, with its factor.
    let (modulus, factor) = if given.material().form == Form::Tube {
        (sections::RING_PLASTIC_MODULUS.value(&size), 1.0)
    } else {
        (sections::RING_SECTION_MODULUS.value(&size), given.known(&inputs::YIELD_FACTOR))
    };
    quantity::exceeds(factor * beams::BENDING_STRESS.value(&[moment, modulus]), strength.yield_tension)
}

/// What is in stock for this link, smallest section modulus first.
pub(super) fn stock_sections(given: &Values) -> Vec<Section> {
    if given.material().form == Form::Tube {
        return stock::TUBES.iter().map(|&(outside_diameter, wall)| Section { outside_diameter, wall }).collect();
    }
    let sway_link = given.link.role == Role::SwayLink;
    let mut sizes = Vec::new();
    if given.stock() == Stock::Metric {
        sizes.extend(stock::METRIC_SWAY_LINK_BARS.iter().filter(|_| sway_link));
        sizes.extend(stock::METRIC_BARS);
    } else {
        sizes.extend(stock::SWAY_LINK_BARS.iter().filter(|_| sway_link));
        sizes.extend(stock::BARS);
        // Links across the rig and in the steering are also made of the sizes in between.
        if !given.link.role.drives() {
            sizes.extend(stock::BARS_BETWEEN);
            sizes.sort_by(f64::total_cmp);
        }
    }
    sizes.into_iter().map(|outside_diameter| Section { outside_diameter, wall: 0.0 }).collect()
}

/// The pairs of rod ends to try: what the user decided stays, the rest takes each size in turn.
fn joints(given: &Values) -> Vec<[RodEndSpec; 2]> {
    let chosen = [given.chosen_joint(0), given.chosen_joint(1)];
    let family = given.family();
    let mut table: Vec<RodEndSpec> =
        rod_ends::ALL.iter().filter(|row| row.family == family).filter_map(RodEndSpec::of_table).collect();
    table.sort_by(|a, b| a.thread.major.total_cmp(&b.thread.major));
    match chosen {
        [Some(a), Some(b)] => vec![[a, b]],
        [Some(one), None] if one.id == OWN_ROD_END => beside_own(&table, one, |other| [one, other]),
        [None, Some(one)] if one.id == OWN_ROD_END => beside_own(&table, one, |other| [other, one]),
        [Some(one), None] | [None, Some(one)] => vec![[one, one]],
        [None, None] => table.into_iter().map(|joint| [joint, joint]).collect(),
    }
}

/// The pairs of one measured rod end with the table's of its thread, or with all where the table has none of it: a
/// reading says nothing of the rod end at the other end.
fn beside_own(
    table: &[RodEndSpec],
    own: RodEndSpec,
    pair: impl Fn(RodEndSpec) -> [RodEndSpec; 2],
) -> Vec<[RodEndSpec; 2]> {
    let alike = table.iter().copied().filter(|joint| joint.thread.id == own.thread.id).map(&pair).collect::<Vec<_>>();
    if alike.is_empty() { table.iter().copied().map(pair).collect() } else { alike }
}

fn try_one(given: &Values, section: Section, joints: [RodEndSpec; 2], asked: Asked) -> Option<SizedCandidate> {
    let built = build(given, section, joints, asked).ok()?;
    let judged = built.judged;
    Some(SizedCandidate { section, joints, candidate: judged.candidate(section, joints), verdict: judged.verdict() })
}

/// The first rod ends that hold, told of those before them that do not.
fn first_joint(
    given: &Values,
    section: Section,
    joints: &[[RodEndSpec; 2]],
    mut failed: impl FnMut(SizedCandidate),
) -> Option<SizedCandidate> {
    for pair in joints {
        match try_one(given, section, *pair, Asked::WhetherItHolds) {
            Some(tried) if tried.candidate.feasible => return Some(tried),
            other => other.into_iter().for_each(&mut failed),
        }
    }
    None
}

/// The first rod ends that hold, else the ones that come closest.
fn holding_or_closest(given: &Values, section: Section, joints: &[[RodEndSpec; 2]]) -> Option<SizedCandidate> {
    let mut failed = Vec::new();
    first_joint(given, section, joints, |tried| failed.push(tried))
        .or_else(|| best_joint(given, section, joints, &failed))
}

/// The rod end that comes closest to holding. Of those that `failed` before it is known how much they use at least.
fn best_joint(
    given: &Values,
    section: Section,
    joints: &[[RodEndSpec; 2]],
    failed: &[SizedCandidate],
) -> Option<SizedCandidate> {
    let mut best: Option<SizedCandidate> = None;
    // Rod ends that do not go in are nobody's nearest, unless there are no others.
    let goes_in = |pair: &&[RodEndSpec; 2]| pair.iter().all(|joint| section.takes(joint.thread));
    let mut go_in: Vec<&[RodEndSpec; 2]> = joints.iter().filter(goes_in).collect();
    if go_in.is_empty() {
        go_in.extend(joints);
    }
    // The largest first: what it uses shuts out most of the others at their first question. Of those that use the same,
    // the smallest.
    for pair in go_in.into_iter().rev() {
        let most = best.as_ref().map_or(f64::INFINITY, |best| best.candidate.utilization);
        let same = |before: &&SizedCandidate| {
            before.section == section
                && before.joints.each_ref().map(|joint| joint.id) == pair.each_ref().map(|joint| joint.id)
        };
        if failed.iter().find(same).is_some_and(|before| before.candidate.utilization > most) {
            continue;
        }
        let tried = try_one(given, section, *pair, Asked::WhetherUnder(most));
        if let Some(tried) = tried.filter(|tried| best.is_none() || tried.candidate.utilization <= most) {
            best = Some(tried);
        }
    }
    best
}

/// The smallest that passes, made no smaller than what builders usually fit, by section modulus and by class of thread.
fn larger_of(
    given: &Values,
    numbers: Option<&SizedCandidate>,
    trade: Option<&Trade>,
    sections: &[Section],
    joints: &[[RodEndSpec; 2]],
) -> (Option<SizedCandidate>, Said) {
    let Some(numbers) = numbers else {
        return (None, said!["No stock size passes every check with these entries."]);
    };
    let Some(trade) = trade else {
        let says = said!["Smallest that passes; there is no common practice for this link in this metal."];
        return (Some(numbers.clone()), says);
    };
    let mine = numbers.pick();
    if mine.reaches(trade) {
        let chosen = [0, 1].iter().any(|end| given.chosen_joint(*end).is_some());
        return (Some(numbers.clone()), habit::calculation_reaches(&mine, trade, chosen));
    }
    let all = sections;
    let mut sections = usual(trade, sections);
    sections.retain(|section| !exceeds(mine.size.modulus(), section.size().modulus()));
    let first_of =
        |joints: &[[RodEndSpec; 2]]| sections.iter().find_map(|section| first_joint(given, *section, joints, |_| {}));
    let asked = mine.class.max(trade.class.min(largest_class(joints)));
    if let Some(both) = first_of(&of_class(joints, habit::smaller_class, |class| class >= asked)) {
        let says = habit::practice_decides(given.link.role, &mine, &both.pick(), trade);
        return (Some(both), says);
    }
    // The bar is made as large as is usual all the same, and the rod ends as near to it as pass; else the bar as large as
    // passes.
    let mut classes: Vec<Option<usize>> = joints.iter().map(habit::smaller_class).collect();
    classes.sort_unstable();
    classes.dedup();
    classes.retain(|class| (mine.class..=asked).contains(class));
    let near = || classes.iter().rev().map(|near| of_class(joints, habit::smaller_class, |class| class == *near));
    let smaller_bar = |joints: &[[RodEndSpec; 2]]| {
        let smaller = all.iter().rev().filter(|section| {
            let size = section.size();
            !size.is_as_large_as(trade.least) && size.is_as_large_as(mine.size)
        });
        smaller.map(|section| first_joint(given, *section, joints, |_| {})).find_map(|found| found)
    };
    let nearest =
        near().find_map(|joints| first_of(&joints)).or_else(|| near().find_map(|joints| smaller_bar(&joints)));
    let pick = nearest.as_ref().map(SizedCandidate::pick);
    let ends = habit::strengths_end(given, &usual(trade, &stock_sections(given)));
    let says = habit::practice_fails(&mine, pick.as_ref(), trade, ends);
    (nearest.or_else(|| Some(numbers.clone())), says)
}

/// Of sections those no smaller than what is usual, smallest first.
fn usual(trade: &Trade, sections: &[Section]) -> Vec<Section> {
    sections.iter().copied().filter(|section| section.size().is_as_large_as(trade.least)).collect()
}

/// The largest class there is to choose from.
fn largest_class(joints: &[[RodEndSpec; 2]]) -> Option<usize> {
    joints.iter().map(habit::smaller_class).max().flatten()
}

/// The pairs whose class, by one of their threads, is one that is asked for.
fn of_class(
    joints: &[[RodEndSpec; 2]],
    class: fn(&[RodEndSpec; 2]) -> Option<usize>,
    is: impl Fn(Option<usize>) -> bool,
) -> Vec<[RodEndSpec; 2]> {
    joints.iter().filter(|pair| is(class(pair))).copied().collect()
}

/// A larger size stands in for what is usual from so much less utilization on (assumption).
const MARKEDLY: f64 = 0.1;

/// Where nothing passes: the first size no smaller than what is usual that can be laid out, unless a larger one comes out
/// better: one that bends instead of one that fails, or one that is asked for markedly less.
pub(super) fn usual_or_better(given: &Values, trade: &Trade) -> Option<SizedCandidate> {
    let joints = joints(given);
    let asked = trade.class.min(largest_class(&joints));
    let joints = of_class(&joints, habit::smaller_class, |class| class >= asked);
    let better = |tried: &SizedCandidate, best: &SizedCandidate| {
        let used_less = exceeds((1.0 - MARKEDLY) * best.candidate.utilization, tried.candidate.utilization);
        tried.verdict < best.verdict || (tried.verdict == best.verdict && used_less)
    };
    let mut best: Option<SizedCandidate> = None;
    for section in usual(trade, &stock_sections(given)) {
        let fitting = joints.iter().find_map(|pair| try_one(given, section, *pair, Asked::EveryQuestion));
        if let Some(tried) = fitting
            && best.as_ref().is_none_or(|best| better(&tried, best))
        {
            best = Some(tried);
        }
    }
    best
}

/// The report's part on sizing.
pub(super) fn sizing(search: &Search, fitted: Option<Fitted>, overridden: bool) -> Sizing {
    let keep = |tried: &Option<SizedCandidate>| tried.as_ref().map(|tried| tried.candidate.clone());
    Sizing {
        by_numbers: keep(&search.by_numbers),
        by_trade: search.by_trade.clone(),
        recommended: keep(&search.recommended),
        governs: fitted.as_ref().map_or_else(|| search.governs.clone(), fitted::governs),
        overridden,
        next_up: None,
        fitted,
    }
}

/// The largest size that can be laid out at all, for showing what gives first when nothing holds.
pub(super) fn largest(given: &Values) -> Option<SizedCandidate> {
    let joints = joints(given);
    stock_sections(given).into_iter().rev().find_map(|section| best_joint(given, section, &joints, &[]))
}

/// Whether stock has no larger section with a published strength.
pub(super) fn is_largest(given: &Values, section: Section) -> bool {
    let larger = |other: &Section| exceeds(other.size().modulus(), section.size().modulus());
    !stock_sections(given).iter().any(|other| larger(other) && other.strength(given.material()).is_some())
}

/// Where larger sizes than a section are stocked but no strength is published for any of them: up to where it is.
pub(super) fn strengths_end_after(given: &Values, section: Section) -> Option<Said> {
    let mut larger = stock_sections(given);
    larger.retain(|other| exceeds(other.size().modulus(), section.size().modulus()));
    habit::strengths_end(given, &larger)
}

/// The rod ends for a section the user decided: of those that are no less than what is usual for the job, the smallest
/// that pass, else the ones that come closest; where none of those can be laid out, of all.
pub(super) fn joint_for(given: &Values, section: Section) -> Option<[RodEndSpec; 2]> {
    for_section(given, section).map(|tried| tried.joints)
}

fn for_section(given: &Values, section: Section) -> Option<SizedCandidate> {
    let all = joints(given);
    let usual = habit::trade(given).map_or_else(Vec::new, |trade| {
        let least = trade.class.min(largest_class(&all));
        of_class(&all, habit::smaller_class, |class| class >= least)
    });
    holding_or_closest(given, section, &usual).or_else(|| holding_or_closest(given, section, &all))
}

/// The tube of a diameter whose wall nobody gave: the thinnest in stock that passes, else the one that comes closest.
pub(super) fn tube_of(given: &Values, outside_diameter: f64) -> Option<Section> {
    let same = |tube: &&(f64, f64)| !quantity::exceeds((tube.0 - outside_diameter).abs(), 1e-6);
    let sections = stock::TUBES.iter().filter(same).map(|&(_, wall)| Section { outside_diameter, wall });
    let mut tried = sections.filter_map(|section| for_section(given, section)).collect::<Vec<_>>();
    tried.sort_by(|a, b| {
        let key = |it: &SizedCandidate| {
            (!it.candidate.feasible, if it.candidate.feasible { it.section.wall } else { it.candidate.utilization })
        };
        let (a, b) = (key(a), key(b));
        a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
    });
    tried.first().map(|it| it.section)
}

/// The sentence of the smallest rod ends that cannot be laid out.
pub(super) fn why_nothing_fits(given: &Values) -> Option<Said> {
    let section = *stock_sections(given).last()?;
    joints(given).into_iter().find_map(|pair| build(given, section, pair, Asked::WhetherItHolds).err())
}
