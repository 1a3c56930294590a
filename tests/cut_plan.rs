//! Cut plans: beside the best ones of a general solver, and what must hold of every plan.
#![cfg(not(target_arch = "wasm32"))]

#[path = "cut_plan/best.rs"]
mod best;
#[path = "cut_plan/cases.rs"]
mod cases;
mod dice;
#[path = "cut_plan/every.rs"]
mod every;
#[allow(dead_code, reason = "not every helper is needed here")]
mod links;
#[path = "cut_plan/lists.rs"]
mod lists;

use linkwright::engine::shop::cut_plan::{Blank, CutPlan, Demand, Saw, Stock};
use linkwright::engine::tables::materials;
use linkwright::quantity::inch;

/// Blanks of a length each, by their counts.
fn blanks(of: &[(f64, usize)]) -> Vec<Blank> {
    let blank = |(at, (length, count)): (usize, &(f64, usize))| Blank {
        length: *length,
        count: *count,
        link: format!("Link {at}"),
        build: String::new(),
        provisional: false,
    };
    of.iter().enumerate().map(blank).collect()
}

/// The same as blanks of a 2 in bar of 7075.
fn demand(of: &[(f64, usize)]) -> Demand {
    let material = materials::default_row();
    Demand { material, outside_diameter: inch(2.0), wall: 0.0, blanks: blanks(of) }
}

/// New bars of one length, as many as are needed.
fn new_bars(length: f64) -> Stock {
    Stock { length, count: None, cost: None, remnant: false, label: String::new() }
}

/// One remnant.
fn remnant(length: f64) -> Stock {
    Stock { length, count: Some(1), cost: None, remnant: true, label: String::new() }
}

/// A saw that takes and needs nothing.
const NO_SAW: Saw = Saw { kerf: 0.0, trim: 0.0, grip: 0.0, keep: 0.0 };

/// The largest piece left of a new bar; of a remnant where no new bar is cut.
fn largest_left(plan: &CutPlan) -> f64 {
    let bought = plan.totals.new_bars > 0;
    let bars = plan.bars.iter().filter(|bar| bar.stock.remnant != bought);
    bars.map(|bar| bar.left).fold(0.0, f64::max)
}
