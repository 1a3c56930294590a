//! Cutting from the shop's lists: which rows may be cut, and what a cut takes off them and puts back.

use super::{NO_SAW, demand};
use linkwright::engine::shop::cut_plan::from_lists::{Taken, cut, rack};
use linkwright::engine::shop::cut_plan::{Saw, cut_plan};
use linkwright::engine::tables::materials;
use linkwright::quantity::inch;
use linkwright::shop::money::{Cents, Rate};
use linkwright::shop::{self, Entry, Kind, Lists, Per, Piece, Stock};

/// A row of bars of 2 in of the metal that is wanted.
fn row(name: &str, length: f64, count: Option<u32>, piece: Piece) -> Stock {
    Stock {
        name: name.to_string(),
        metal: Some(materials::default_row().id),
        outside_diameter: Some(inch(2.0)),
        length: Some(inch(length)),
        count,
        piece: Some(piece),
        ..Stock::default()
    }
}

fn lists(rows: Vec<Stock>) -> Lists {
    let mut lists = Lists::default();
    lists.bars.rows = rows.into_iter().map(|row| Entry { row, ..Entry::default() }).collect();
    lists
}

#[test]
fn only_rows_that_fit_are_cut() {
    let fits = row("fits", 144.0, Some(3), Piece::Full);
    let rows = vec![
        fits.clone(),
        Stock { outside_diameter: Some(inch(2.25)), ..fits.clone() },
        Stock { metal: Some("6061-T6"), ..fits.clone() },
        Stock { count: Some(0), ..fits.clone() },
        Stock { length: None, ..fits },
        row("left over", 41.0, None, Piece::Remnant),
    ];
    let found = rack(&demand(&[(inch(30.0), 2)]), &lists(rows), inch(240.0));
    assert!(!found.assumed);
    let told: Vec<(&str, Option<usize>, bool)> =
        found.stock.iter().map(|stock| (stock.label.as_str(), stock.count, stock.remnant)).collect();
    // A remnant that nobody counted is one piece.
    assert_eq!(told, [("fits", Some(3), false), ("left over", Some(1), true)]);
}

#[test]
fn without_a_full_bar_a_length_is_assumed() {
    let found =
        rack(&demand(&[(inch(30.0), 2)]), &lists(vec![row("rest", 41.0, Some(1), Piece::Remnant)]), inch(240.0));
    assert!(found.assumed && found.stock.len() == 2);
    let bought = found.stock.iter().find(|stock| !stock.remnant).expect("a full bar");
    assert!(bought.count.is_none() && bought.cost.is_none() && (bought.length - inch(240.0)).abs() < 1e-9);
}

#[test]
fn a_price_by_length_or_weight_is_that_of_the_whole_bar() {
    let priced =
        |per| Stock { price: Some(Rate::new(12, 5000)), per: Some(per), ..row("bar", 144.0, None, Piece::Full) };
    let cost = |per| rack(&demand(&[(inch(30.0), 1)]), &lists(vec![priced(per)]), inch(1.0)).stock[0].cost;
    assert_eq!(cost(Per::Foot), Some(Cents(12 * 1250)));
    assert_eq!(cost(Per::Inch), Some(Cents(144 * 1250)));
    // 0.101 lb/in³ over π/4 (2 in)² × 144 in is 45.7 lb.
    let by_weight = cost(Per::Pound).expect("a price").0 as f64;
    assert!((by_weight / 1250.0 - 0.101 * std::f64::consts::PI * 144.0).abs() < 0.2, "{by_weight}");
}

#[test]
fn a_cut_takes_bars_off_and_puts_remnants_in() {
    let mut lists =
        lists(vec![row("Demo bar", 144.0, Some(2), Piece::Full), row("Demo rest", 41.0, Some(1), Piece::Remnant)]);
    let demand = demand(&[(inch(40.0), 4)]);
    let found = rack(&demand, &lists, inch(1.0));
    let plan = cut_plan(&demand, &found.stock, &Saw { keep: inch(12.0), ..NO_SAW });
    assert!(plan.not_cut.is_empty());
    let taken = cut(&plan, &mut lists);
    assert_eq!(taken, Taken { used: 2, kept: 1 });
    let left: Vec<(String, Option<u32>, bool)> =
        lists.bars.rows.iter().map(|entry| (entry.row.name.clone(), entry.row.count, entry.row.is_remnant())).collect();
    assert_eq!(
        left,
        [("Demo bar".to_string(), Some(1), false), ("Demo bar".to_string(), Some(1), true)],
        "the remnant is used up, 24 in of the bar are kept"
    );
    assert!((lists.bars.rows[1].row.length.unwrap_or(0.0) - inch(24.0)).abs() < 1e-9);
    // What is kept is a file that reads back.
    let mut again = Lists::default();
    assert!(shop::read(&mut again, Kind::Bars, &shop::write(&lists, Kind::Bars)).is_ok());
    assert_eq!(again.bars.rows.len(), 2);
}
