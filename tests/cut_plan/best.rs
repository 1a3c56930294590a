//! The best plans of 1,000 random shop lists, which a general solver found: see make.py.

use std::path::Path;

use linkwright::engine::shop::cut_plan::{CutPlan, Saw, Stock, cut_plan};

use super::{demand, largest_left};

/// One row of the table; lengths in meters.
struct Row {
    line: usize,
    blanks: Vec<(f64, usize)>,
    stock: Vec<Stock>,
    saw: Saw,
    new_bars: usize,
    total_length: f64,
    largest_left: f64,
}

fn whole(cell: &str) -> usize {
    cell.parse().unwrap_or_else(|why| panic!("{cell:?}: {why}"))
}

fn rows() -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cut_plan/instances.csv");
    let text = std::fs::read_to_string(&path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
    let row = |(line, text): (usize, &str)| {
        let cells: Vec<&str> = text.split(',').collect();
        let unit = whole(cells[0]);
        let length = |cell: &str| (whole(cell) * unit) as f64 / 1e9;
        let pairs = |cell: &str| -> Vec<(f64, Option<usize>)> {
            let pair = |pair: &str| match pair.split_once('x') {
                Some((one, count)) => (length(one), Some(whole(count))),
                None => (length(pair), None),
            };
            cell.split(';').filter(|pair| !pair.is_empty()).map(pair).collect()
        };
        let stock = |(length, count): (f64, Option<usize>), remnant: bool| {
            let count = if remnant { Some(1) } else { count };
            Stock { length, count, cost: None, remnant, label: String::new() }
        };
        let new = pairs(cells[4]).into_iter().map(|pair| stock(pair, false));
        Row {
            line: line + 2,
            saw: Saw { kerf: length(cells[1]), trim: length(cells[2]), grip: length(cells[3]), keep: 0.0 },
            stock: new.chain(pairs(cells[5]).into_iter().map(|pair| stock(pair, true))).collect(),
            blanks: pairs(cells[6]).into_iter().map(|(length, count)| (length, count.expect("a count"))).collect(),
            new_bars: whole(cells[7]),
            total_length: length(cells[8]),
            largest_left: length(cells[9]),
        }
    };
    text.lines().skip(1).enumerate().map(row).collect()
}

fn planned(row: &Row) -> CutPlan {
    cut_plan(&demand(&row.blanks), &row.stock, &row.saw)
}

/// A piece that is longer by less counts as no longer: see the solver.
const CLOSE: f64 = 0.5e-3;

#[test]
fn no_general_solver_finds_a_better_plan() {
    let rows = rows();
    let mut told = Vec::new();
    let (mut slowest, mut not_proven) = ((0, 0), Vec::new());
    for row in &rows {
        let plan = planned(row);
        if plan.proven {
            slowest = slowest.max((plan.nodes, row.line));
        }
        // Where remnants suffice, the total is that of the remnants.
        let bought = row.new_bars > 0;
        let cut: f64 = plan.bars.iter().filter(|bar| bar.stock.remnant != bought).map(|bar| bar.stock.length).sum();
        let left = largest_left(&plan);
        let few = plan.totals.new_bars == row.new_bars && plan.fewest_is_proven() && plan.at_least == row.new_bars;
        let large = left > row.largest_left - CLOSE && left < row.largest_left + 1e-9;
        if !few || (cut - row.total_length).abs() > 1e-9 || plan.proven && !large {
            let best = (row.new_bars, row.total_length, row.largest_left);
            let found = (plan.totals.new_bars, cut, left);
            told.push(format!("line {}: {found:?}, best {best:?}, {} nodes", row.line, plan.nodes));
        }
        if !plan.proven {
            not_proven.push(row.line);
        }
    }
    assert!(told.is_empty(), "{} of {}\n{}", told.len(), rows.len(), told.join("\n"));
    assert_eq!(rows.len(), 1000);
    // All take as few bars as can be and leave the largest piece that can be left, proven.
    assert!(not_proven.is_empty(), "{not_proven:?}");
    // The slowest: 30 blanks, no two alike, from bars of 20 ft with three remnants.
    assert_eq!(slowest, (47_432, 736));
}
