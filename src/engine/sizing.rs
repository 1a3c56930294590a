//! Which size: the smallest that holds, what the trade fits, the larger of the two, and how firm that is.

use super::build::{self, Asked, LaidOutLink, Limit, build};
use super::fitted;
use super::formula::Sheet;
use super::formulas::{beams, sections};
use super::geometry::Section;
use super::given::{RodEndSpec, Values};
use super::habit::{self, Pick};
use super::loads;
use super::roots::crossing;
use super::sentence::{Said, said};
use super::tables::materials::Form;
use super::tables::{practice, rod_ends, stock, threads};
use crate::document::{Document, Role, Stock};
use crate::inputs::{self, At, Number};
use crate::order::{self, exceeds};
use crate::report::{Candidate, Firmness, Fitted, Sizing, Trade, Verdict};

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
    order::exceeds(factor * beams::BENDING_STRESS.value(&[moment, modulus]), strength.yield_tension)
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
        [Some(one), None] | [None, Some(one)] => vec![[one, one]],
        [None, None] => table.into_iter().map(|joint| [joint, joint]).collect(),
    }
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

/// The inputs whose limit is worth knowing. The drop is not: it is a calibrated part of the scenario.
static FIRM: [&Number; 3] = [&inputs::WEIGHT, &inputs::LENGTH, &inputs::TRACTION];

/// Steps in which a limit is first looked for: more load is not always worse, since a longer bar also gives more.
const SCAN: u32 = 8;

/// A lower limit below this share of the length tells nothing: the rod ends alone take that much.
const TELLING: f64 = 0.5;

/// How far each of weight, length and grip may go before the link as answered no longer passes, or, where it bends
/// already, fails; the length also downward, since a shorter link may ask more of its shanks. Values that may take any
/// value tell nothing and are left out.
///
/// Rounding the bar moves the engagement by a quarter of a step either way, so that what holds goes up
/// and down along the length. The limit is judged with the bar unrounded and the shanks wound out and in by that
/// much, the worst that rounding can do: out, a shank bends more; in, the link gives less and is hit harder.
pub(super) fn firmness(document: &Document, index: usize, section: Section, joints: [RodEndSpec; 2]) -> Vec<Firmness> {
    let place = At::of_link(document, index);
    let finest = inputs::ROUNDING.least;
    let step = inputs::ROUNDING.value(document, place).unwrap_or(finest).max(finest);
    let pitch = joints[0].thread.pitch.min(joints[1].thread.pitch);
    let shift = (step + finest) / 4.0 / pitch;
    let (fewest, most) = (inputs::VISIBLE_THREADS.least, inputs::VISIBLE_THREADS.most);
    let wound =
        |by: f64| inputs::VISIBLE_THREADS.value(document, place).map(|threads| (threads + by).max(fewest).min(most));
    let settings = [wound(shift), wound(-shift)];
    let shape: Option<LaidOutLink> =
        Values::new(document, index).and_then(|given| build::shape(&given, section, joints, Asked::EveryQuestion).ok());
    let limit = shape.as_ref().zip(Values::new(document, index)).map_or(Limit::Passing, |(shape, given)| {
        if build::over(&given, shape, Limit::Passing) > 0.0 { Limit::Failing } else { Limit::Passing }
    });
    // The size is held fixed; only the one input moves.
    FIRM.iter()
        .filter_map(|&input| {
            let now = input.value(document, place)?;
            let mut trial = document.clone();
            let over = |trial: &Document| {
                let Some(given) = Values::new(trial, index) else { return f64::INFINITY };
                // Only the length changes the link itself; the rest only changes what it must bear.
                let own = match &shape {
                    Some(shape) if input != &inputs::LENGTH => return build::over(&given, shape, limit),
                    _ => build::shape(&given, section, joints, Asked::EveryQuestion),
                };
                own.map_or(f64::INFINITY, |shape| build::over(&given, &shape, limit))
            };
            let mut over_at = |value: f64| {
                (input.set)(&mut trial, place, Some(value));
                if input != &inputs::LENGTH {
                    return over(&trial);
                }
                (inputs::ROUNDING.set)(&mut trial, place, Some(finest));
                let mut over_at = |visible| {
                    (inputs::VISIBLE_THREADS.set)(&mut trial, place, visible);
                    over(&trial)
                };
                over_at(settings[0]).max(over_at(settings[1]))
            };
            let most = first_failure(now, input.most, &mut over_at);
            let least = (input == &inputs::LENGTH)
                .then(|| first_failure(-now, -input.least, &mut |value| over_at(-value)).map(|limit| -limit))
                .flatten()
                .filter(|least| *least >= TELLING * now);
            let told = most.is_some() || least.is_some();
            told.then_some(Firmness { input: input.id, kind: input.kind, now, least, most })
        })
        .collect()
}

/// The value below the first one that fails, going up from `now`; `None` when none of those tried does.
///
/// `over` is what a link is asked for beyond what it has; above 0 it fails.
pub(super) fn first_failure(now: f64, most: f64, over: &mut impl FnMut(f64) -> f64) -> Option<f64> {
    let mut good = (now, over(now));
    if good.1 > 0.0 {
        return Some(now);
    }
    for count in 1..=SCAN {
        let value = now + (most - now) * f64::from(count) / f64::from(SCAN);
        let next = (value, over(value));
        if next.1 > 0.0 {
            return Some(crossing(good, next, 1e-9 * (most - now).abs(), &mut *over));
        }
        good = next;
    }
    None
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

/// The rod ends for a section the user decided: the smallest that hold, else the ones that come closest.
pub(super) fn joint_for(given: &Values, section: Section) -> Option<[RodEndSpec; 2]> {
    let joints = joints(given);
    holding_or_closest(given, section, &joints).map(|tried| tried.joints)
}

/// The sentence of the smallest rod ends that cannot be laid out.
pub(super) fn why_nothing_fits(given: &Values) -> Option<Said> {
    let section = *stock_sections(given).last()?;
    joints(given).into_iter().find_map(|pair| build(given, section, pair, Asked::WhetherItHolds).err())
}
