//! The cut plan: which blanks come from which bar.
//!
//! What is asked for, one after the other: every blank is cut; as few new bars as possible, where remnants cost nothing;
//! of such plans those whose new bars are shortest in all; of these the one that leaves the largest single piece of a new
//! bar. Where remnants suffice, the same is asked of the remnants: as few as possible, shortest in all, the largest piece
//! left. Lengths are whole numbers of nanometers, in which 1/64 in and 0.001 in are exact, so that a fit is exact.

mod choose;
mod demands;
pub mod from_lists;
mod pack;
mod rack;
mod simplex;
mod weigh;

pub use demands::{Demands, Source, demands};

use self::pack::Budget;
use self::rack::{Cuts, Rack, kinds, meters, nanometers, search};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, sections};
use crate::engine::tables::materials::Material;
use crate::quantity::inch;
use crate::shop::money::Cents;

/// Up to so many blanks all steps are taken; of a longer list each step takes longer, and there are fewer.
const MOST_SEARCHED: usize = 60;
/// More blanks of one stock than any plan is asked for.
pub const MOST_BLANKS: usize = 500;
/// Steps of searching for one plan.
pub const MOST_NODES: usize = 200_000;
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
    /// What one costs; `None` where that is not known.
    pub cost: Option<Cents>,
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

    /// How many blanks of one length a bar gives, as the cut plan saws it.
    pub fn blanks_of(&self, bar: f64, blank: f64) -> usize {
        let cuts = Cuts::new(self);
        match (nanometers(bar), nanometers(blank)) {
            (Some(bar), Some(blank)) if blank > 0 => {
                usize::try_from(cuts.room(bar) / (blank + cuts.kerf)).unwrap_or(usize::MAX)
            }
            _ => 0,
        }
    }
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
    /// What the new bars cost; `None` where one has no price.
    pub cost: Option<Cents>,
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
    let mut budget = Budget { spent: 0, most: MOST_NODES * MOST_SEARCHED / so_far.max(MOST_SEARCHED) };
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
