//! Exact cents: what is read, what is rounded, what is written.

use linkwright::shop::money::{Cents, Quantity, Rate};

use crate::dice::Dice;

#[test]
fn amounts_are_read_to_the_digit() {
    let cases = [
        ("12.50", Some(1250)),
        ("1,250.00", Some(125_000)),
        ("1,250", Some(125_000)),
        ("0", Some(0)),
        (".5", Some(50)),
        ("7.", Some(700)),
        ("12,50", Some(1250)),
        ("1.250,00", Some(125_000)),
        (" 0.07 ", Some(7)),
        ("0.070", Some(7)),
        ("1,000,000.00", Some(100_000_000)),
        // Twice a number that no float holds exactly.
        ("90071.99", Some(9_007_199)),
        ("1,000,000.01", None),
        ("0.075", None),
        ("1,25,0", None),
        ("12.50.1", None),
        ("$12.50", None),
        ("-3", None),
        ("1e3", None),
        ("NaN", None),
        ("", None),
        (".", None),
        (",", None),
        ("=1+1", None),
        ("٣", None),
        ("99999999999999999999999999", None),
    ];
    for (text, cents) in cases {
        assert_eq!(Cents::read(text).ok(), cents.map(Cents), "{text:?}");
    }
    for text in ["$12.50", "twelve", "12.505"] {
        let why = Cents::read(text).expect_err("no amount");
        assert!(why.contains(text) && why.ends_with('.'), "{why}");
    }
}

#[test]
fn rates_have_four_decimals() {
    for (text, shown) in [
        ("0.335", "0.335"),
        ("12.5", "12.50"),
        ("1,250", "1250.00"),
        ("0.0001", "0.0001"),
        ("8.25", "8.25"),
        ("0,335", "0.335"),
        ("4", "4.00"),
    ] {
        let rate = Rate::read(text).expect("a rate");
        assert_eq!(rate.to_string(), shown, "{text:?}");
        assert_eq!(Rate::read(shown), Ok(rate), "{shown} reads back");
    }
    assert!(Rate::read("0.00005").is_err(), "a fifth decimal");
}

/// By hand. Half a cent goes away from zero; a float would give 1.00 for 3 × 0.335, which it holds as 0.33500000000000002.
#[test]
fn a_line_is_rounded_once() {
    let cases = [
        ("0.335", 3.0, "1.01"),
        ("0.335", 1.0, "0.34"),
        ("1.005", 1.0, "1.01"),
        ("2.675", 1.0, "2.68"),
        ("0.0049", 1.0, "0.00"),
        ("0.005", 1.0, "0.01"),
        ("1.85", 65.75, "121.64"),   // 121.6375
        ("11.50", 12.692, "145.96"), // 145.958
        ("0.0001", 1000.0, "0.10"),
        ("1,000,000", 1000.0, "1,000,000,000.00"),
        ("19.99", 0.0, "0.00"),
    ];
    for (rate, quantity, amount) in cases {
        let rate = Rate::read(rate).expect("a rate");
        assert_eq!(rate.times(Quantity::nearest(quantity)).to_string(), amount, "{quantity} at {rate}");
    }
}

#[test]
fn a_percentage_is_rounded_once() {
    for (percent, of, amount) in
        [("8.25", 10_000, 825), ("8.25", 1_234, 102), ("8.875", 2_000, 178), ("50", 1, 1), ("0.4999", 100, 0)]
    {
        let percent = Rate::read(percent).expect("a percentage");
        assert_eq!(percent.percent_of(Cents(of)), Cents(amount), "{percent} % of {of}");
    }
    assert_eq!(Rate::new(5, 0).percent_of(Cents(-1_010)), Cents(-51), "half a cent away from zero");
}

#[test]
fn quantities_are_counted_in_thousandths() {
    for (units, shown) in [(65.75, "65.75"), (2.0, "2"), (0.0625, "0.063"), (12.0004, "12"), (1234.5, "1234.5")] {
        assert_eq!(Quantity::nearest(units).to_string(), shown);
    }
    for nothing in [f64::NAN, f64::INFINITY, -1.0] {
        assert_eq!(Quantity::nearest(nothing), Quantity(0), "{nothing}");
    }
}

#[test]
fn what_is_written_reads_back() {
    let mut dice = Dice(19);
    for _ in 0..5_000 {
        let cents = Cents(dice.next(100_000_000) as i64);
        assert_eq!(Cents::read(&cents.to_string()), Ok(cents));
        let rate = Rate(dice.next(1_000_000_000) as i64);
        assert_eq!(Rate::read(&rate.to_string()), Ok(rate));
    }
}
