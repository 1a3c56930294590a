//! What holds of every plan: each blank cut once, no bar over-filled, the same plan for the same list in any order.

use linkwright::engine::shop::cut_plan::{CutPlan, Demand, Saw, Stock, Why, cut_plan};
use linkwright::quantity::inch;
use linkwright::shop::money::Cents;

use super::dice::Dice;
use super::{demand, new_bars, remnant};

/// A list as a shop has them, in steps of 1/32 in or finer.
fn list(dice: &mut Dice) -> (Demand, Vec<Stock>, Saw) {
    let step = [0.125, 1.0 / 32.0, 1.0 / 64.0, 0.001][dice.next(4)];
    let different = 1 + dice.next(9);
    let mut of = Vec::new();
    let mut left = 30;
    for _ in 0..different {
        let count = (1 + dice.next(4)).min(left);
        of.push((inch(((8.0 + dice.next(42_000) as f64 / 1000.0) / step).round() * step), count));
        left -= count;
    }
    let lengths = [72.0, 96.0, 144.0, 144.0, 240.0];
    let mut stock = vec![new_bars(inch(lengths[dice.next(5)]))];
    if dice.next(3) == 0 {
        stock.push(Stock {
            count: Some(dice.next(4)),
            cost: Some(Cents(4200)),
            ..new_bars(inch(lengths[dice.next(5)]))
        });
    }
    stock.extend((0..dice.next(6)).map(|_| remnant(inch(10.0 + dice.next(80) as f64))));
    let kerf = inch([0.0, 0.0625, 0.09, 0.125][dice.next(4)]);
    let trim = inch([0.0, 0.125, 0.25][dice.next(3)]);
    let grip = inch([0.0, 2.0, 4.5][dice.next(3)]);
    (demand(&of), stock, Saw { kerf, trim, grip, keep: inch(12.0) })
}

/// What is wrong with a plan, reckoned without the solver.
fn wrong(plan: &CutPlan, wanted: &Demand, stock: &[Stock], saw: &Saw) -> Vec<String> {
    let mut told = Vec::new();
    for blank in &wanted.blanks {
        let same = |length: f64, link: &str| (length - blank.length).abs() < 1e-9 && link == blank.link;
        let pieces = plan.bars.iter().flat_map(|bar| &bar.pieces);
        let cut = pieces.filter(|piece| same(piece.length, &piece.link)).count();
        let left: usize = plan
            .not_cut
            .iter()
            .map(|not| &not.blank)
            .filter(|other| same(other.length, &other.link))
            .map(|b| b.count)
            .sum();
        if cut + left != blank.count {
            told.push(format!("{} of {}: {cut} cut, {left} not", blank.count, blank.link));
        }
    }
    for bar in &plan.bars {
        let mut at = if saw.trim > 0.0 { saw.trim + saw.kerf } else { 0.0 };
        for (index, piece) in bar.pieces.iter().enumerate() {
            if (piece.from - at).abs() > 1e-8 {
                told.push(format!("blank {index} begins at {}, not at {at}", piece.from));
            }
            at += piece.length + if index + 1 < bar.pieces.len() { saw.kerf } else { 0.0 };
        }
        let held = saw.trim.max(saw.grip);
        let end = at + if held > 0.0 { saw.kerf + held } else { 0.0 };
        if end > bar.stock.length + 1e-8 {
            told.push(format!("a bar of {} is filled to {end}", bar.stock.length));
        }
        let left = (bar.stock.length - at - saw.kerf).max(0.0);
        if (bar.left - left).abs() > 1e-8 || (left - saw.keep).abs() > 1e-8 && bar.kept != (left > saw.keep) {
            told.push(format!("{left} is left, not {}, kept: {}", bar.left, bar.kept));
        }
        if bar.pieces.is_empty() {
            told.push("a bar without a blank".to_string());
        }
    }
    for one in stock {
        let is = |other: &Stock| (other.length - one.length).abs() < 1e-9 && other.remnant == one.remnant;
        let there: Option<usize> = stock.iter().filter(|other| is(other)).map(|other| other.count).sum();
        let taken = plan.bars.iter().filter(|bar| is(&bar.stock)).count();
        if there.is_some_and(|there| taken > there) {
            told.push(format!("{taken} bars of {} are cut", one.length));
        }
    }
    let totals = &plan.totals;
    if (totals.bars - totals.blanks - totals.kept - totals.waste).abs() > 1e-8 {
        told.push(format!("the sums do not add up: {totals:?}"));
    }
    if plan.at_least > totals.new_bars && plan.not_cut.is_empty() {
        told.push(format!("at least {} bars, but {} are cut", plan.at_least, totals.new_bars));
    }
    told
}

#[test]
fn every_blank_is_cut_once_and_no_bar_is_over_filled() {
    let mut dice = Dice(3);
    let mut unproven = 0;
    for round in 0..400 {
        let (wanted, stock, saw) = list(&mut dice);
        let plan = cut_plan(&wanted, &stock, &saw);
        let told = wrong(&plan, &wanted, &stock, &saw);
        assert!(told.is_empty(), "round {round}: {}\n{wanted:?}\n{stock:?}\n{saw:?}", told.join("\n"));
        unproven += usize::from(!plan.proven);
    }
    assert_eq!(unproven, 0, "of 400 not one is left open");
}

#[test]
fn the_same_list_in_another_order_gives_the_same_plan() {
    let mut dice = Dice(5);
    for _ in 0..60 {
        let (mut wanted, mut stock, saw) = list(&mut dice);
        let plan = cut_plan(&wanted, &stock, &saw);
        for _ in 0..3 {
            let at = dice.next(wanted.blanks.len());
            wanted.blanks.rotate_left(at);
            wanted.blanks.reverse();
            let at = dice.next(stock.len());
            stock.rotate_right(at);
            assert_eq!(cut_plan(&wanted, &stock, &saw), plan);
        }
    }
}

/// Over 60 blanks of few lengths: most plans are proven to take as few bars as can be, and never fewer than go in by length
/// alone.
#[test]
fn long_lists_of_few_lengths_are_searched() {
    let mut dice = Dice(70);
    let (mut fewest, mut best, mut lists) = (0, 0, 0);
    for (many, different) in [(64, 8), (72, 12), (80, 10), (96, 6), (120, 10), (120, 24), (200, 10), (300, 12)] {
        for _ in 0..6 {
            let mut length = || inch(12.0 + dice.next(30 * 32) as f64 / 32.0);
            let of: Vec<(f64, usize)> = (0..different).map(|_| (length(), many / different)).collect();
            let (wanted, stock) = (demand(&of), [new_bars(inch(144.0)), remnant(inch(70.0))]);
            let plan = cut_plan(&wanted, &stock, &Saw::ASSUMED);
            assert_eq!(wrong(&plan, &wanted, &stock, &Saw::ASSUMED), [""; 0]);
            let bars = plan.totals.new_bars;
            let whole: f64 = of.iter().map(|(length, count)| length * *count as f64).sum();
            assert!(whole <= inch(144.0) * bars as f64 + inch(70.0) && plan.at_least <= bars, "{bars}");
            (fewest, best) = (fewest + usize::from(plan.fewest_is_proven()), best + usize::from(plan.proven));
            lists += 1;
        }
    }
    // By length alone 17 of them would be proven to take as few bars as can be.
    assert_eq!((fewest, best, lists), (39, 18, 48), "as few bars as can be, the largest piece too, of all");
}

#[test]
fn long_lists_get_a_quick_plan_that_says_how_good_it_is() {
    let mut dice = Dice(7);
    for many in [61, 120, 500] {
        let of: Vec<(f64, usize)> = (0..many).map(|_| (inch(8.0 + dice.next(4200) as f64 / 100.0), 1)).collect();
        let (wanted, stock) = (demand(&of), [new_bars(inch(144.0)), remnant(inch(70.0))]);
        let plan = cut_plan(&wanted, &stock, &Saw::ASSUMED);
        assert_eq!(wrong(&plan, &wanted, &stock, &Saw::ASSUMED), [""; 0]);
        assert!(plan.at_least > 0 && plan.not_cut.is_empty(), "{}", plan.at_least);
    }
    let plan = cut_plan(&demand(&[(inch(10.0), 501)]), &[new_bars(inch(144.0))], &Saw::ASSUMED);
    assert_eq!((plan.not_cut[0].why, plan.bars.len(), plan.proven), (Why::TooMany, 0, false));
}
