//! The rack of a cut plan: which rows of the shop's lists a demand may be cut from, and what a cut takes off them and
//! puts back.

use super::{CutPlan, Demand, Stock};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, sections};
use crate::engine::shop::quote::{in_length, in_weight};
use crate::shop::{self, BARS, Kind, Lists, Per, TUBES};

/// Readings within a hundredth of a millimeter are one reading.
const SAME: f64 = 1e-5;

/// What a demand may be cut from.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rack {
    /// The bars.
    pub stock: Vec<Stock>,
    /// Whether no list names a full bar of this metal and size, so that a length was assumed.
    pub assumed: bool,
}

/// The bars of the shop's lists that a demand may be cut from; where no full one is listed, as many as are needed of an
/// `assumed` length.
pub fn rack(demand: &Demand, lists: &Lists, assumed: f64) -> Rack {
    let stock: Vec<Stock> = rows(demand, lists).into_iter().map(|(_, row)| stock(demand, row)).collect();
    let listed = stock.iter().any(|stock| !stock.remnant);
    let more =
        (!listed).then(|| Stock { length: assumed, count: None, cost: None, remnant: false, label: String::new() });
    Rack { stock: stock.into_iter().chain(more).collect(), assumed: !listed }
}

/// What was taken off the lists for a plan, and put into them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Taken {
    /// Bars and remnants taken off.
    pub used: usize,
    /// Remnants put in.
    pub kept: usize,
}

/// Takes the bars of a plan off the lists and puts the pieces that are kept into them. A bar that no list names takes
/// nothing off.
pub fn cut(plan: &CutPlan, lists: &mut Lists) -> Taken {
    let demand = Demand {
        material: plan.material,
        outside_diameter: plan.outside_diameter,
        wall: plan.wall,
        blanks: Vec::new(),
    };
    let mut taken = Taken::default();
    for bar in &plan.bars {
        let found = rows(&demand, lists).into_iter().find(|(_, row)| {
            row.is_remnant() == bar.stock.remnant
                && row.name == bar.stock.label
                && row.length.is_some_and(|length| (length - bar.stock.length).abs() < SAME)
        });
        if let Some(row) = found.map(|(row, _)| row) {
            lists.cut_up(kind(plan.wall), row);
            taken.used += 1;
        }
        if bar.kept {
            let name = if bar.stock.label.is_empty() { "Remnant" } else { bar.stock.label.as_str() };
            lists.keep_remnant(name, plan.material.id, [plan.outside_diameter, plan.wall, bar.left]);
            taken.kept += 1;
        }
    }
    taken
}

/// The list that bars, or tubes of a wall, stand in.
pub const fn kind(wall: f64) -> Kind {
    if wall > 0.0 { Kind::Tubes } else { Kind::Bars }
}

/// The rows that a demand may be cut from, each with its place in its list.
fn rows<'a>(demand: &Demand, lists: &'a Lists) -> Vec<(usize, &'a shop::Stock)> {
    let (list, columns) = if demand.wall > 0.0 { (&lists.tubes, TUBES) } else { (&lists.bars, BARS) };
    let fits = |row: &shop::Stock| {
        row.metal.zip(row.outside_diameter).is_some_and(|(metal, outside_diameter)| {
            demand.is_cut_from(metal, outside_diameter, row.wall.unwrap_or(0.0))
        })
    };
    let all = list.rows.iter().enumerate();
    let ready = all.filter(|(_, entry)| entry.lacks(columns).is_empty());
    ready.map(|(at, entry)| (at, &entry.row)).filter(|(_, row)| fits(row) && row.count != Some(0)).collect()
}

fn stock(demand: &Demand, row: &shop::Stock) -> Stock {
    let length = row.length.unwrap_or(0.0);
    let cost = row.price.zip(row.per).map(|(rate, per)| {
        let quantity = match per {
            Per::Pound | Per::Kilogram => Some(in_weight(weight(demand, length), per)),
            _ => in_length(length, per),
        };
        quantity.map(|quantity| rate.times(quantity))
    });
    // A remnant that nobody counted is one piece.
    let count = row.count.or_else(|| row.is_remnant().then_some(1));
    Stock {
        length,
        count: count.map(|count| count as usize),
        cost: cost.flatten(),
        remnant: row.is_remnant(),
        label: row.name.clone(),
    }
}

/// What so much of the bar or tube weighs.
fn weight(demand: &Demand, length: f64) -> f64 {
    let mut sheet = Sheet::silent();
    let bore = if demand.wall > 0.0 { (demand.outside_diameter - 2.0 * demand.wall).max(0.0) } else { 0.0 };
    let area = sheet.work(&sections::RING_AREA, &[demand.outside_diameter, bore]);
    sheet.work(&lengths::BAR_WEIGHT, &[demand.material.density, area, length])
}
