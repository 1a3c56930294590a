//! The cut plan: which blanks come from which bar.
//!
//! What is asked for, one after the other: every blank is cut; as few new bars as possible, where remnants cost nothing;
//! of such plans those whose new bars are shortest in all; of these the one that leaves the largest single piece of a new
//! bar. Where remnants suffice, the same is asked of the remnants: as few as possible, shortest in all, the largest piece
//! left. Lengths are whole numbers of nanometers, in which 1/64 in and 0.001 in are exact, so that a fit is exact.

mod choose;
mod demands;
mod pack;

pub use demands::{Demands, Source, demands};

use self::choose::{Kind, Question, choose};
use self::pack::{Blanks, Budget, Fill};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, sections};
use crate::engine::tables::materials::Material;
use crate::quantity::inch;

/// Blanks up to which the best plan is searched for; beyond, the quick plan stands.
const MOST_SEARCHED: usize = 60;
/// More blanks of one stock than any plan is asked for.
pub const MOST_BLANKS: usize = 500;
/// Steps of searching for one plan.
pub const MOST_NODES: usize = 300_000;
/// Longer than any bar, in meters: a longer length is a mistake.
const LONGEST: f64 = 50.0;

/// Pieces of one length to saw.
#[derive(Debug, Clone, PartialEq)]
pub struct Blank {
    /// Length to saw, facing included.
    pub length: f64,
    /// How many.
    pub count: usize,
    /// The link that becomes of it.
    pub link: String,
    /// The build that the link belongs to; empty where there is only one.
    pub build: String,
    /// Whether the length stands only until the rod ends are measured.
    pub provisional: bool,
}

/// What is to be cut from bars or tubes of one metal and size.
#[derive(Debug, Clone, PartialEq)]
pub struct Demand {
    /// The metal.
    pub material: &'static Material,
    /// Outside diameter.
    pub outside_diameter: f64,
    /// Wall of a tube, 0 for a solid bar.
    pub wall: f64,
    /// Pieces to saw.
    pub blanks: Vec<Blank>,
}

/// Bars of one length that a demand may be cut from.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// Length of each.
    pub length: f64,
    /// How many there are; `None` where more can be had.
    pub count: Option<usize>,
    /// What one costs, in whole cents; `None` where that is not known.
    pub cost: Option<i64>,
    /// Whether it is left from an earlier bar: such pieces are used first and cost nothing.
    pub remnant: bool,
    /// What it is called, so that it is found on the rack; may be empty.
    pub label: String,
}

/// What the saw takes and needs. All are lengths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Saw {
    /// Width of a cut.
    pub kerf: f64,
    /// What falls off both ends of every bar, remnants too; each of these cuts takes a kerf more.
    pub trim: f64,
    /// What the saw must still hold of a bar at its last cut.
    pub grip: f64,
    /// A piece left over is kept from this length on; a shorter one is scrap.
    pub keep: f64,
}

impl Saw {
    /// A band saw in a small shop: assumed, common practice, no source.
    pub const ASSUMED: Self = Self { kerf: inch(0.0625), trim: inch(0.125), grip: inch(2.0), keep: inch(12.0) };
}

/// One blank in its bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Its length.
    pub length: f64,
    /// From the end of the bar to where it begins.
    pub from: f64,
    /// The link that becomes of it.
    pub link: String,
    /// The build that the link belongs to.
    pub build: String,
    /// Whether the length stands only until the rod ends are measured.
    pub provisional: bool,
}

/// One bar with its cuts in their order.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// The stock it is.
    pub stock: Stock,
    /// Its blanks, the longest first.
    pub pieces: Vec<Piece>,
    /// What is left past the last cut.
    pub left: f64,
    /// Whether that is long enough to keep.
    pub kept: bool,
}

/// Why a blank stands in no bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// No stock is entered for it.
    NoStock,
    /// It is longer than any bar leaves room for.
    TooLong,
    /// The stock is used up.
    UsedUp,
    /// Its length is none.
    NoLength,
    /// There are more blanks than a plan is made for.
    TooMany,
}

/// Blanks that the plan does not cut.
#[derive(Debug, Clone, PartialEq)]
pub struct NotCut {
    /// Which.
    pub blank: Blank,
    /// Why.
    pub why: Why,
}

/// How the bars of one metal and size are cut.
#[derive(Debug, Clone, PartialEq)]
pub struct CutPlan {
    /// The metal.
    pub material: &'static Material,
    /// Outside diameter.
    pub outside_diameter: f64,
    /// Wall of a tube, 0 for a solid bar.
    pub wall: f64,
    /// The saw that was reckoned with.
    pub saw: Saw,
    /// Every bar that is cut, remnants first.
    pub bars: Vec<Bar>,
    /// What is not cut, and why; empty for a whole plan.
    pub not_cut: Vec<NotCut>,
    /// No plan needs fewer new bars than this.
    pub at_least: usize,
    /// Whether no plan is better: none needs fewer new bars, and none of as few leaves a larger piece.
    pub proven: bool,
    /// Steps that the search took.
    pub nodes: usize,
    /// Sums.
    pub totals: Totals,
}

impl CutPlan {
    /// Whether no plan needs fewer new bars, even where one that leaves a larger piece is not ruled out.
    pub fn fewest_is_proven(&self) -> bool {
        self.not_cut.is_empty() && self.at_least >= self.totals.new_bars
    }
}

/// Sums over a plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Totals {
    /// New bars.
    pub new_bars: usize,
    /// Remnants that are cut.
    pub remnants: usize,
    /// Length of all bars that are cut.
    pub bars: f64,
    /// Length of all blanks.
    pub blanks: f64,
    /// Length of all pieces kept.
    pub kept: f64,
    /// What is neither blank nor kept: cuts, trimmed ends and short pieces.
    pub waste: f64,
    /// Weight of the new bars, a force.
    pub weight_bought: f64,
    /// Weight of all blanks, a force.
    pub weight_cut: f64,
    /// What the new bars cost, in whole cents; `None` where one has no price.
    pub cost: Option<i64>,
}

/// A length in nanometers; `None` where it is no length of a bar.
fn nanometers(length: f64) -> Option<u64> {
    (length.is_finite() && (0.0..=LONGEST).contains(&length)).then(|| (length * 1e9).round() as u64)
}

fn meters(nanometers: u64) -> f64 {
    nanometers as f64 / 1e9
}

/// The saw in nanometers.
#[derive(Clone, Copy)]
struct Cuts {
    kerf: u64,
    /// Off a bar before its first blank.
    start: u64,
    /// At its end, the last cut included.
    end: u64,
}

impl Cuts {
    fn new(saw: &Saw) -> Self {
        let [kerf, trim, grip] = [saw.kerf, saw.trim, saw.grip].map(|length| nanometers(length).unwrap_or(0));
        let with_cut = |length: u64| if length > 0 { length + kerf } else { 0 };
        Self { kerf, start: with_cut(trim), end: with_cut(trim.max(grip)) }
    }

    /// Room for blanks that each come with a cut: where nothing is held at the end, the last one needs none.
    fn room(self, length: u64) -> u64 {
        (length + self.kerf).saturating_sub(self.start + self.end)
    }

    fn left(self, length: u64, load: u64) -> u64 {
        length.saturating_sub(self.start + load)
    }
}

/// The plan for one demand. Same lists in any order, same plan.
pub fn cut_plan(demand: &Demand, stock: &[Stock], saw: &Saw) -> CutPlan {
    let cuts = Cuts::new(saw);
    let mut not_cut = Vec::new();
    let kinds = kinds(stock, cuts);
    let widest = kinds.iter().map(|kind| kind.room).max();
    let mut wanted: Vec<(u64, Blank)> = Vec::new();
    let mut sorted = demand.blanks.clone();
    sorted.sort_by(|a, b| {
        b.length
            .total_cmp(&a.length)
            .then_with(|| (&a.build, &a.link, a.provisional).cmp(&(&b.build, &b.link, b.provisional)))
    });
    let mut so_far = 0;
    for blank in sorted.into_iter().filter(|blank| blank.count > 0) {
        let size = nanometers(blank.length).filter(|length| *length > 0).map(|length| length + cuts.kerf);
        let why = match (size, widest) {
            (None, _) => Some(Why::NoLength),
            (_, None) => Some(Why::NoStock),
            (Some(size), Some(widest)) if size > widest => Some(Why::TooLong),
            _ if blank.count > MOST_BLANKS - so_far => Some(Why::TooMany),
            _ => None,
        };
        match (why, size) {
            (Some(why), _) => not_cut.push(NotCut { blank, why }),
            (None, Some(size)) => {
                so_far += blank.count;
                wanted.push((size, blank));
            }
            (None, None) => {}
        }
    }
    let mut budget = Budget { spent: 0, most: if so_far > MOST_SEARCHED { 0 } else { MOST_NODES } };
    let (mut bars, over, at_least, proven) = search(&wanted, &kinds, &mut budget);
    not_cut.extend(over.into_iter().map(|blank| NotCut { blank, why: Why::UsedUp }));
    let mut plan = CutPlan {
        material: demand.material,
        outside_diameter: demand.outside_diameter,
        wall: demand.wall,
        saw: *saw,
        bars: Vec::new(),
        proven: proven && not_cut.is_empty(),
        not_cut,
        at_least,
        nodes: budget.spent,
        totals: Totals::default(),
    };
    let rack = Rack::new(stock);
    plan.bars = rack.bars(&mut bars, &wanted, &kinds, cuts, saw);
    plan.totals = totals(&plan);
    plan
}

/// A length of stock in the search: remnants come first, the shortest before the longer ones.
#[derive(Debug, Clone)]
struct Length {
    length: u64,
    room: u64,
    remnant: bool,
    limit: usize,
}

fn kinds(stock: &[Stock], cuts: Cuts) -> Vec<Length> {
    let mut kinds: Vec<Length> = Vec::new();
    for stock in stock {
        let Some(length) = nanometers(stock.length) else { continue };
        let (room, limit) = (cuts.room(length), stock.count.unwrap_or(MOST_BLANKS).min(MOST_BLANKS));
        if room <= cuts.kerf || limit == 0 {
            continue;
        }
        match kinds.iter_mut().find(|kind| kind.length == length && kind.remnant == stock.remnant) {
            Some(kind) => kind.limit = (kind.limit + limit).min(MOST_BLANKS),
            None => kinds.push(Length { length, room, remnant: stock.remnant, limit }),
        }
    }
    kinds.sort_by_key(|kind| (!kind.remnant, kind.length));
    kinds
}

fn greatest_common_divisor(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}

/// A bar of the search: which length of stock, and how many blanks of each size.
struct Filled {
    kind: usize,
    /// Sizes with their counts, the longest first.
    taken: Vec<(u64, usize)>,
}

/// The fills, what is left over for want of stock, the least number of new bars, and whether that is proven best.
fn search(wanted: &[(u64, Blank)], kinds: &[Length], budget: &mut Budget) -> (Vec<Filled>, Vec<Blank>, usize, bool) {
    let mut sizes: Vec<(u64, usize)> = Vec::new();
    for (size, blank) in wanted {
        match sizes.iter_mut().find(|(other, _)| other == size) {
            Some((_, count)) => *count += blank.count,
            None => sizes.push((*size, blank.count)),
        }
    }
    sizes.sort_by_key(|(size, _)| std::cmp::Reverse(*size));
    let pieces: usize = sizes.iter().map(|(_, count)| count).sum();
    // In the largest unit in which all blanks are whole, sums lie close together.
    let unit = sizes.iter().fold(0, |unit, (size, _)| greatest_common_divisor(unit, *size)).max(1);
    let blanks = Blanks {
        sizes: sizes.iter().map(|(size, _)| size / unit).collect(),
        counts: sizes.iter().map(|(_, count)| *count).collect(),
    };
    let side = |remnant: bool| -> (Vec<usize>, Vec<Kind>) {
        let useful = |kind: &Length| kind.remnant == remnant && kind.room / unit >= blanks.shortest();
        let of = |(index, kind): (usize, &Length)| {
            (index, Kind { length: kind.length, room: kind.room / unit, limit: kind.limit.min(pieces) })
        };
        kinds.iter().enumerate().filter(|(_, kind)| useful(kind)).map(of).unzip()
    };
    let ((mut numbers, free), (more, bought)) = (side(true), side(false));
    numbers.extend(more);
    let chosen = choose(Question { blanks: &blanks, unit, free, bought }, budget);
    let taken = |fill: &Fill| -> Vec<(u64, usize)> {
        let counted = sizes.iter().zip(&fill.taken).map(|((size, _), taken)| (*size, *taken));
        counted.filter(|(_, taken)| *taken > 0).collect()
    };
    let bars =
        chosen.fills.iter().filter_map(|fill| Some(Filled { kind: *numbers.get(fill.room)?, taken: taken(fill) }));
    let bars = bars.filter(|bar| !bar.taken.is_empty()).collect();
    let mut over = Vec::new();
    for ((size, _), count) in sizes.iter().zip(&chosen.over) {
        let mut count = *count;
        // The last of a length go without, as they would at the saw.
        for (_, blank) in wanted.iter().rev().filter(|(other, _)| other == size) {
            let short = count.min(blank.count);
            if short > 0 {
                over.push(Blank { count: short, ..blank.clone() });
            }
            count -= short;
        }
    }
    (bars, over, chosen.at_least, chosen.proven)
}

/// The stock in the order in which it is taken: what has a price before what has none, the cheapest first.
struct Rack(Vec<Stock>);

impl Rack {
    fn new(stock: &[Stock]) -> Self {
        let mut rack = stock.to_vec();
        rack.sort_by(|a, b| (a.cost.is_none(), a.cost, &a.label).cmp(&(b.cost.is_none(), b.cost, &b.label)));
        Self(rack)
    }

    /// Takes a bar of a length off the rack.
    fn take(&mut self, kind: &Length) -> Option<Stock> {
        let is = |stock: &&mut Stock| {
            stock.remnant == kind.remnant
                && nanometers(stock.length) == Some(kind.length)
                && stock.count.is_none_or(|count| count > 0)
        };
        let stock = self.0.iter_mut().find(is)?;
        stock.count = stock.count.map(|count| count - 1);
        Some(Stock { count: Some(1), ..stock.clone() })
    }

    /// The bars in the order in which they are cut, each with its blanks.
    fn bars(
        mut self,
        filled: &mut [Filled],
        wanted: &[(u64, Blank)],
        kinds: &[Length],
        cuts: Cuts,
        saw: &Saw,
    ) -> Vec<Bar> {
        // Remnants first, new bars from the longest; of one length the one with the longest blanks first.
        filled.sort_by(|a, b| a.kind.cmp(&b.kind).then_with(|| b.taken.cmp(&a.taken)));
        let mut waiting: Vec<(u64, Blank)> = wanted.to_vec();
        let mut bars = Vec::new();
        for one in filled.iter() {
            let Some((kind, stock)) = kinds.get(one.kind).and_then(|kind| Some((kind, self.take(kind)?))) else {
                continue;
            };
            let (mut at, mut pieces) = (cuts.start, Vec::new());
            for (size, count) in &one.taken {
                for _ in 0..*count {
                    let next = waiting.iter_mut().find(|(other, blank)| other == size && blank.count > 0);
                    let Some((_, blank)) = next else { continue };
                    blank.count -= 1;
                    pieces.push(Piece {
                        length: blank.length,
                        from: meters(at),
                        link: blank.link.clone(),
                        build: blank.build.clone(),
                        provisional: blank.provisional,
                    });
                    at += size;
                }
            }
            let left = cuts.left(kind.length, at - cuts.start);
            let kept = left > 0 && nanometers(saw.keep).is_some_and(|keep| left >= keep);
            bars.push(Bar { stock, pieces, left: meters(left), kept });
        }
        bars
    }
}

fn totals(plan: &CutPlan) -> Totals {
    let new = || plan.bars.iter().filter(|bar| !bar.stock.remnant);
    let sum = |lengths: &mut dyn Iterator<Item = f64>| meters(lengths.filter_map(nanometers).sum());
    let bars = sum(&mut plan.bars.iter().map(|bar| bar.stock.length));
    let blanks = sum(&mut plan.bars.iter().flat_map(|bar| &bar.pieces).map(|piece| piece.length));
    let kept = sum(&mut plan.bars.iter().filter(|bar| bar.kept).map(|bar| bar.left));
    let bought = sum(&mut new().map(|bar| bar.stock.length));
    let mut sheet = Sheet::silent();
    let bore = if plan.wall > 0.0 { (plan.outside_diameter - 2.0 * plan.wall).max(0.0) } else { 0.0 };
    let area = sheet.work(&sections::RING_AREA, &[plan.outside_diameter, bore]);
    let mut weight = |length: f64| sheet.work(&lengths::BAR_WEIGHT, &[plan.material.density, area, length]);
    Totals {
        new_bars: new().count(),
        remnants: plan.bars.len() - new().count(),
        bars,
        blanks,
        kept,
        waste: (bars - blanks - kept).max(0.0),
        weight_bought: weight(bought),
        weight_cut: weight(blanks),
        cost: new().map(|bar| bar.stock.cost).sum(),
    }
}
