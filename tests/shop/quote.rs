//! What an order costs: an example worked by hand, what has no price, and that a total is the sum of its lines.

use std::sync::OnceLock;

use linkwright::document::{Document, Finish, Link, Position, SuppliedBy};
use linkwright::engine::report;
use linkwright::engine::shop::cut_plan::Saw;
use linkwright::engine::shop::quote::{How, Line, Quote, quote};
use linkwright::engine::shop::stock::{offers, standing, take};
use linkwright::quantity::{inch, lbf};
use linkwright::shop::money::{Cents, Rate};
use linkwright::shop::prices::Charge;
use linkwright::shop::{Kind, Lists, demo};

use super::stock::{hard, lists};
use crate::dice::Dice;

/// The worked example from the invented stock: two links of 2-1/4 in bar, sawn at 32-15/16 in.
fn taken() -> Document {
    static TAKEN: OnceLock<Document> = OnceLock::new();
    TAKEN.get_or_init(|| take(&hard(), 0, &offers(&hard(), 0, &demo::lists(), &Saw::ASSUMED).offers[0])).clone()
}

fn quoted(document: &Document, lists: &Lists) -> Quote {
    quote(document, &report(document).links, lists)
}

const HEAD: &str = "Name,Charge,Price,Per,From links,Percent,Days,Thread,Metal,Outside diameter (in)\n";

/// A price book alone.
fn book(rows: &[&str]) -> Lists {
    let wide = |row: &&str| format!("{row}{}\n", ",".repeat(9_usize.saturating_sub(row.matches(',').count())));
    lists(&[(Kind::Prices, format!("{HEAD}{}", rows.iter().map(wide).collect::<String>()))])
}

fn amounts(quote: &Quote, charge: Charge) -> Vec<String> {
    quote.lines.iter().filter(|line| line.item.charge == charge).map(|line| line.amount.to_string()).collect()
}

/// What has no listed weight: how many of how many.
fn open(quote: &Quote) -> Vec<(Charge, usize, usize)> {
    quote.unweighed.iter().filter(|it| it.count > 0).map(|it| (it.charge, it.count, it.of)).collect()
}

/// Two blanks of 2.25 in, 32.9375 in long: 2 × π/4 × 2.25² × 32.9375 × 0.101 lb/in³ = 26.454 lb, 304.22 at 11.50.
#[test]
fn an_order_worked_by_hand() {
    let quote = quoted(&taken(), &demo::lists());
    let expected = [
        (Charge::Material, "304.22"),
        (Charge::Saw, "8.00"),          // 2 at 4.00
        (Charge::Face, "14.00"),        // 4 ends at 3.50
        (Charge::DrillAndTap, "90.00"), // 4 ends at 22.50, the price of this thread
        (Charge::Flats, "18.00"),       // 2 at 9.00
        (Charge::SetUp, "35.00"),
        (Charge::RodEnd, "128.00"), // 2 right-hand at 64.00, from the list
        (Charge::RodEnd, "128.00"), // 2 left-hand
        (Charge::JamNut, "10.50"),  // 2 at 5.25
        (Charge::JamNut, "10.50"),
        (Charge::Bolt, "29.60"),   // 4 at 7.40
        (Charge::LockNut, "8.40"), // 4 at 2.10
        (Charge::Order, "12.00"),
        (Charge::Packing, "8.50"),
    ];
    let lines: Vec<(Charge, String)> = quote.lines.iter().map(|it| (it.item.charge, it.amount.to_string())).collect();
    let expected: Vec<(Charge, String)> = expected.map(|(charge, amount)| (charge, amount.to_string())).to_vec();
    assert_eq!(lines[..expected.len()], expected);
    // Two bars of 32.8125 in, 13.177 lb each, less four holes of 1-1/4 in thread, some 2.8 in deep: about 0.101 × 4 × 1.227
    // × 2.8 = 1.4 lb; and four rod ends of 3.4 lb: about 38.5 lb in all.
    assert!((quote.weight / lbf(1.0) - 38.5).abs() < 0.5, "{}", quote.weight / lbf(1.0));
    assert!((quote.longest - inch(32.8125)).abs() < 1e-9);
    assert_eq!(open(&quote), [(Charge::JamNut, 4, 4), (Charge::Bolt, 4, 4), (Charge::LockNut, 4, 4)]);
    assert_eq!(amounts(&quote, Charge::Shipping), ["36.48"]); // 38.405 lb at 0.95
    assert_eq!(quote.subtotal.to_string(), "841.20");
    assert_eq!(amounts(&quote, Charge::Tax), ["66.39"]); // 8.25 % of 804.72: shipping is not taxed
    assert_eq!(quote.total.to_string(), "907.59");
    assert_eq!((quote.days, quote.links, quote.discount), (Some(5), 2, Cents(0)));
    assert!(quote.missing.is_empty() && quote.unanswered.is_empty());
}

#[test]
fn what_has_no_price_is_named_and_never_nothing() {
    let quote = quoted(&taken(), &Lists::default());
    assert!(quote.lines.is_empty() && quote.total == Cents(0) && quote.tax.is_none() && quote.days.is_none());
    let missing: Vec<Charge> = quote.missing.iter().map(|item| item.charge).collect();
    for charge in [
        Charge::Material,
        Charge::Saw,
        Charge::Face,
        Charge::DrillAndTap,
        Charge::Flats,
        Charge::SetUp,
        Charge::RodEnd,
        Charge::JamNut,
        Charge::Bolt,
        Charge::LockNut,
        Charge::Shipping,
    ] {
        assert!(missing.contains(&charge), "{charge:?}");
    }
    // A price of 0 is a line that says so.
    let quote = quoted(&taken(), &book(&["Included,Saw,0"]));
    assert_eq!(amounts(&quote, Charge::Saw), ["0.00"]);
    assert!(quote.missing.iter().all(|item| item.charge != Charge::Saw));
}

#[test]
fn the_closest_row_is_taken() {
    let cases: [(&[&str], &str); 6] = [
        (&["any,Drill and tap,10,end"], "40.00"),
        (&["any,Drill and tap,10,end", "this,Drill and tap,20,end,,,,1-1/4-12"], "80.00"),
        (&["this,Drill and tap,20,end,,,,1-1/4-12", "any,Drill and tap,10,end"], "80.00"),
        (&["other,Drill and tap,20,end,,,,7/8-14", "any,Drill and tap,10,end"], "40.00"),
        (&["a,Drill and tap,20,end,,,,1-1/4-12,7075-t6,2.25", "b,Drill and tap,30,end,,,,1-1/4-12"], "80.00"),
        (&["many,Drill and tap,5,end,3", "few,Drill and tap,10,end,2", "one,Drill and tap,12,end"], "40.00"),
    ];
    for (rows, amount) in cases {
        assert_eq!(amounts(&quoted(&taken(), &book(rows)), Charge::DrillAndTap), [amount], "{rows:?}");
    }
    let quote = quoted(&taken(), &book(&["other,Drill and tap,20,end,,,,7/8-14"]));
    assert!(
        quote.missing.iter().any(|item| item.charge == Charge::DrillAndTap),
        "a row for another thread is no price"
    );
    let quote = quoted(&taken(), &book(&["wrong,Drill and tap,20,lb"]));
    assert!(
        quote.missing.iter().any(|item| item.charge == Charge::DrillAndTap),
        "a row that makes no sense is no price"
    );
}

/// Lengths by hand: two blanks of 32.9375 in are 65.875 in, 5.490 ft, 1673.225 mm and 1.673 m; they weigh
/// 26.454 lb, 11.999 kg.
#[test]
fn material_is_charged_in_any_unit() {
    for (per, amount) in [
        ("in", "658.75"),
        ("ft", "54.90"),
        ("mm", "16,732.25"),
        ("m", "16.73"),
        ("lb", "264.54"),
        ("kg", "119.99"),
        ("piece", "20.00"),
    ] {
        let quote = quoted(&taken(), &book(&[&format!("bar,Material,10,{per}")]));
        assert_eq!(amounts(&quote, Charge::Material), [amount], "{per}");
    }
}

#[test]
fn breaks_taxes_and_the_least_order() {
    let mut document = taken();
    document.links[0].quantity = Some(8.0);
    let rows = [
        "saw,Saw,0.335,piece",
        "four,Quantity break,,,4,5",
        "eight,Quantity break,,,8,12.5",
        "ten,Quantity break,,,10,50",
        "order,Each order,1",
        "least,Least order,20",
        "ship,Shipping,4,order",
        "state,Tax without shipping,,,,10",
        "town,Tax with shipping,,,,1",
    ];
    let quote = quoted(&document, &book(&rows));
    // 8 × 0.335 = 2.68; 12.5 % of that are 0.335, so 0.34; with the order 3.34, so 16.66 are missing up to 20; shipping
    // 4.00; a tenth of 20.00, and a hundredth of 24.00.
    assert_eq!(amounts(&quote, Charge::Saw), ["2.68"]);
    assert_eq!(quote.discount, Cents(-34));
    assert_eq!(amounts(&quote, Charge::Least), ["16.66"]);
    assert_eq!(quote.subtotal, Cents(2400));
    assert_eq!((quote.tax, quote.total), (Some(Cents(224)), Cents(2624)));
}

#[test]
fn what_is_charged_once_an_order_is_charged_once() {
    let mut document = taken();
    let rear = Link { position: Position::Rear, ..document.links[0].clone() };
    document.links.push(rear);
    let quote =
        quoted(&document, &book(&["set,Set up,35,order", "saw,Saw,4,piece", "a,Lead time,,,,,3", "d,Face,1,end,,,2"]));
    assert_eq!(amounts(&quote, Charge::SetUp), ["35.00"]);
    assert_eq!(amounts(&quote, Charge::Saw), ["8.00", "8.00"]);
    assert_eq!(quote.days, Some(5), "the days of a row count once");
    assert_eq!(quote.links, 4);
}

#[test]
fn what_the_customer_brings_is_not_charged() {
    let mut document = taken();
    for end in &mut document.links[0].ends {
        end.supplied_by = Some(SuppliedBy::Customer);
    }
    let quote = quoted(&document, &demo::lists());
    assert!(amounts(&quote, Charge::RodEnd).is_empty() && quote.theirs == 4);
    assert!(quote.missing.iter().all(|item| item.charge != Charge::RodEnd));
}

#[test]
fn a_finish_is_charged_where_it_was_asked_for() {
    for (finish, charge, amount, days) in [
        (Finish::Polished, Charge::Polish, "29.64", 5), // 65.875 in at 0.45 is 29.64375
        (Finish::Anodized, Charge::Anodize, "28.00", 13), // and eight days more
    ] {
        let mut document = taken();
        document.links[0].finish = Some(finish);
        let quote = quoted(&document, &demo::lists());
        assert_eq!((amounts(&quote, charge), quote.days), (vec![amount.to_string()], Some(days)));
    }
    let quote = quoted(&taken(), &demo::lists());
    assert!(amounts(&quote, Charge::Polish).is_empty() && amounts(&quote, Charge::Anodize).is_empty());
}

#[test]
fn a_link_without_an_answer_is_said_not_to_be_in_it() {
    let mut document = taken();
    document.links.push(Link::default());
    let quote = quoted(&document, &demo::lists());
    assert_eq!((quote.unanswered.as_slice(), quote.links), ([1].as_slice(), 2));
    let nothing = quoted(&Document::default(), &demo::lists());
    assert!(nothing.lines.is_empty() && nothing.links == 0 && nothing.missing.is_empty());
}

/// What a line says it is: worked again in whole numbers.
fn worked_again(line: &Line) -> i128 {
    let rounded = |value: i128, over: i128| (2 * value + over) / (2 * over);
    match line.how {
        How::Rate { quantity, rate, .. } => rounded(i128::from(quantity.0) * i128::from(rate.0), 100_000),
        How::Percent { percent, of } => {
            let amount = rounded(i128::from(percent.0) * i128::from(of.0), 1_000_000);
            if line.item.charge == Charge::Break { -amount } else { amount }
        }
        How::UpTo(_) => i128::from(line.amount.0),
    }
}

#[test]
fn every_total_is_the_sum_of_its_lines() {
    let mut dice = Dice(6);
    let (document, mut seen) = (taken(), 0);
    let mut documents = vec![document.clone()];
    for quantity in [1.0, 5.0, 20.0] {
        let mut other = document.clone();
        other.links[0].quantity = Some(quantity);
        other.links.push(Link {
            finish: Some(Finish::Anodized),
            position: Position::Rear,
            ..document.links[0].clone()
        });
        documents.push(other);
    }
    let reports: Vec<_> = documents.iter().map(report).collect();
    for _ in 0..200 {
        let mut lists = demo::lists();
        for entry in &mut lists.prices.rows {
            entry.row.price = entry.row.price.map(|_| Rate(dice.next(3_000_000) as i64));
            entry.row.percent = entry.row.percent.map(|_| Rate(dice.next(300_000) as i64));
            entry.row.from = entry.row.from.map(|_| dice.next(12) as u32);
        }
        for _ in 0..dice.next(12) {
            let at = dice.next(lists.prices.rows.len());
            lists.prices.rows.remove(at);
        }
        let at = dice.next(documents.len());
        let quote = quote(&documents[at], &reports[at].links, &lists);
        let sum: i64 = quote.lines.iter().map(|line| line.amount.0).sum();
        assert_eq!(quote.total.0, sum);
        assert_eq!(quote.subtotal.0 + quote.tax.map_or(0, |tax| tax.0), sum);
        for line in &quote.lines {
            assert_eq!(i128::from(line.amount.0), worked_again(line), "{line:?}");
            assert!(!quote.missing.contains(&line.item), "priced and missing: {line:?}");
            seen += 1;
        }
    }
    assert!(seen > 1_500, "{seen}");
}

/// Flats as wide as the bar, or wider, are nobody's work: every reader of the link agrees that nothing is milled.
#[test]
fn only_flats_that_are_milled_are_charged() {
    for (under, charged) in [(0.25, true), (0.0, false), (-0.125, false)] {
        let mut document = taken();
        document.links[0].flats_width = Some(inch(2.25 - under));
        let answers = report(&document).links;
        let made = &answers[0].answer().expect("an answer").link;
        assert_eq!((made.cut_flats().is_some(), made.flats.is_some()), (charged, true), "{under}");
        let quote = quoted(&document, &demo::lists());
        assert_eq!(amounts(&quote, Charge::Flats), if charged { vec!["18.00"] } else { Vec::new() }, "{under}");
    }
}

/// Four jam nuts of 0.45 and 0.5 lb, and eight spacers of 0.25 lb, on top of bars and rod ends.
#[test]
fn parts_are_weighed_where_a_list_gives_their_weight() {
    let mut document = taken();
    document.links[0].spacer = Some(inch(0.5));
    let before = quoted(&document, &demo::lists());
    assert!(open(&before).contains(&(Charge::Spacer, 8, 8)), "{:?}", before.unweighed);
    let mut lists = demo::lists();
    lists.nuts.rows[0].row.weight = Some(lbf(0.45));
    lists.nuts.rows[1].row.weight = Some(lbf(0.5));
    lists.rod_ends.rows[2].row.spacer_weight = Some(lbf(0.25));
    lists.rod_ends.rows[2].row.spacer = Some(inch(0.375));
    let nuts = quoted(&document, &lists);
    assert!((nuts.weight - before.weight - lbf(1.9)).abs() < 1e-9, "spacers of another length are not those");
    lists.rod_ends.rows[2].row.spacer = Some(inch(0.5));
    let quote = quoted(&document, &lists);
    assert!((quote.weight - before.weight - lbf(3.9)).abs() < 1e-9);
    assert_eq!(open(&quote), [(Charge::Bolt, 4, 4), (Charge::LockNut, 4, 4)]);
    // Shipping follows: 3.9 lb more at 0.95.
    let shipping =
        |quote: &Quote| quote.lines.iter().find(|it| it.item.charge == Charge::Shipping).map(|it| it.amount.0);
    let more = shipping(&quote).zip(shipping(&before)).map(|(now, before)| now - before);
    assert!(more.is_some_and(|more| (370..=371).contains(&more)), "{more:?}");
    lists.nuts.rows[1].row.weight = None;
    assert_eq!(open(&quoted(&document, &lists))[0], (Charge::JamNut, 2, 4), "one hand of them");
}

#[test]
fn a_skim_pass_is_charged_and_the_bar_that_is_bought() {
    let mut document = taken();
    document.links[0].skim = Some(inch(0.03));
    let quote = quoted(&document, &demo::lists());
    // 65.875 in at 0.335 is 22.068; the blank weighs what it does without the pass.
    assert_eq!(amounts(&quote, Charge::Skim), ["22.07"]);
    assert_eq!(amounts(&quote, Charge::Material), ["304.22"]);
    let report = report(&document);
    let needed = standing(&document, 0, report.links[0].answer().expect("an answer"), &demo::lists(), &Saw::ASSUMED);
    assert!(needed.iter().all(|part| part.to_order() == Some(0)), "{needed:?}");
}
