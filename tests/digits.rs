//! Digits become the same number here as in the standard library, bit for bit, and numbers the same digits.
#![cfg(not(target_arch = "wasm32"))]

mod dice;

use linkwright::quantity::decimals::{fixed, scientific, shortest};
use linkwright::quantity::digits::parse;

/// A number of any size, or none.
fn any(dice: &mut dice::Dice) -> f64 {
    let mut part = || dice.next(1 << 30) as u64;
    f64::from_bits(part() << 34 ^ part() << 17 ^ part())
}

/// Both readers agree on a text.
fn agree(text: &str) {
    let (ours, theirs) = (parse(text), text.parse::<f64>().ok());
    assert_eq!(ours.map(f64::to_bits), theirs.map(f64::to_bits), "{text}: {ours:?}, elsewhere {theirs:?}");
}

#[test]
fn known_hard_ones_agree() {
    for text in [
        "0",
        "-0",
        "0.0",
        "1",
        "1.",
        ".5",
        "+3",
        "1e0",
        "1E5",
        "1e+5",
        "1e-5",
        "00012.500",
        "9007199254740993",
        "9007199254740992.5",
        "9007199254740993e0",
        "1e22",
        "1e23",
        "1e308",
        "1.7976931348623157e308",
        "1.7976931348623158e308",
        "1.7976931348623159e308",
        "1e309",
        "1e999999999999",
        "2.2250738585072014e-308",
        "2.2250738585072011e-308",
        "4.9406564584124654e-324",
        "2.4703282292062327e-324",
        "2.4703282292062328e-324",
        "1e-400",
        "1e-99999999999",
        "0e99999999",
        "5e-324",
        "0.1",
        "0.3",
        "8.5",
        "123456789012345678901234567890",
        "0.000000000000000000000000000000000000000000000001",
        "6.02214076e23",
        "179769313486231580793728971405301e276",
        "7.2057594037927933e16",
        "9.5e-323",
        "1.0000000000000002",
        "1.00000000000000011102230246251565",
        "1.000000000000000111022302462515654042363166809082031250",
        "1.000000000000000111022302462515654042363166809082031251",
        "1.000000000000000111022302462515654042363166809082031249",
    ] {
        agree(text);
        agree(&format!("-{text}"));
    }
}

#[test]
fn what_is_no_number_is_none() {
    for text in
        ["", "-", "+", ".", "e5", "1e", "1e+", "1e1.5", "1.2.3", "--1", "1 ", " 1", "1_0", "0x10", "½", "1e½", "１"]
    {
        agree(text);
    }
    // The other reader takes these words for numbers; nobody enters them.
    for text in ["inf", "NaN", "infinity"] {
        assert_eq!(parse(text), None, "{text}");
    }
}

#[test]
fn a_million_random_ones_agree() {
    dice::in_four_threads(1_905, |mut dice| {
        for _ in 0..30_000 {
            let value = any(&mut dice);
            if value.is_finite() {
                agree(&format!("{value:e}"));
                agree(&format!("{value:.17e}"));
                // Halfway to the next one, and a hair beside it.
                let next = f64::from_bits(value.to_bits() + 1);
                if value.abs() < 1e10 && value.abs() > 1e-10 && next.is_finite() {
                    agree(&format!("{:.40}", value));
                    let digits = format!("{:.60e}", value);
                    agree(&digits.replace('e', "5e"));
                }
            }
            let places = dice.next(30);
            let digits: String = (0..=places).map(|_| char::from(b'0' + dice.next(10) as u8)).collect();
            agree(&digits);
            agree(&format!("{digits}e{}", dice.next(700) as i64 - 350));
            agree(&format!("0.{digits}"));
            agree(&format!("{}.{digits}", dice.next(5_000)));
        }
    });
}

#[test]
fn very_long_ones_agree() {
    for digit in ['0', '1', '5', '9'] {
        let many: String = std::iter::repeat_n(digit, 3_000).collect();
        for text in
            [many.clone(), format!("1.{many}"), format!("1.{many}1"), format!("0.{many}7"), format!("{many}e-3000")]
        {
            agree(&text);
        }
    }
}

/// Both writers agree on a number.
fn written_alike(value: f64, places: usize) {
    assert_eq!(fixed(value, places), format!("{value:.places$}"), "{value:e} to {places} places");
    let (mantissa, power) = scientific(value, places);
    assert_eq!(format!("{mantissa}e{power}"), format!("{value:.places$e}"), "{value:e} with {places} places");
}

/// The same, in the fewest digits.
fn shortest_alike(value: f64) {
    assert_eq!(shortest(value), value.to_string(), "{value:e}");
}

/// Where the next number below is nearer than the one above.
#[test]
fn powers_of_two_are_written_alike() {
    (-1074..1024).for_each(|power| shortest_alike(2_f64.powi(power)));
}

#[test]
fn known_hard_ones_are_written_alike() {
    for value in [
        0.0,
        1.0,
        0.5,
        1.5,
        2.5,
        0.25,
        0.35,
        0.125,
        0.375,
        9.5,
        99.5,
        9.995,
        0.9995,
        999.95,
        1e9,
        1e15,
        1e16,
        1e21,
        1e22,
        1e23,
        1e300,
        0.1,
        0.3,
        0.001,
        0.0005,
        0.05,
        0.06,
        0.04,
        1e-7,
        1e-300,
        1e-310,
        5e-324,
        f64::MIN_POSITIVE,
        f64::MAX,
        2_f64.powi(-24),
        2_f64.powi(-44),
        2_f64.powi(89),
        123_456_789.123_456_79,
        36.5,
        927.1,
        0.062_5,
        1.0 / 3.0,
        2.0 / 3.0,
    ] {
        for value in [value, -value] {
            (0..20).for_each(|places| written_alike(value, places));
            shortest_alike(value);
        }
    }
}

#[test]
fn what_has_no_digits_is_a_word() {
    for (value, word) in [(f64::NAN, "NaN"), (f64::INFINITY, "inf"), (f64::NEG_INFINITY, "-inf")] {
        assert_eq!((fixed(value, 2).as_str(), shortest(value).as_str()), (word, word));
        assert_eq!(scientific(value, 2), (word.to_string(), 0));
    }
}

#[test]
fn random_ones_are_written_alike() {
    dice::in_four_threads(2_611, |mut dice| {
        for _ in 0..20_000 {
            // What the page shows: a few digits, and quotients of them, often right between two that could be shown.
            let (over, under) = (dice.next(2_000_000) as f64, 10_f64.powi(dice.next(7) as i32));
            let (places, parts) = (dice.next(12), f64::from(1 << dice.next(8)));
            for value in [over / under, -over / parts, over / under / 25.4, any(&mut dice)] {
                if value.is_finite() {
                    written_alike(value, places);
                    shortest_alike(value);
                }
            }
        }
    });
}
