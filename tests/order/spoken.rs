//! Numbers as people say them.

use linkwright::document::Hand;
use linkwright::engine::tables::threads;
use linkwright::present::order::spoken::{clear, digits, hand, length, number_of, pieces, thread, whole};
use linkwright::quantity::{System, inch, mm};

#[test]
fn whole_numbers() {
    for (number, words) in [
        (0, "zero"),
        (7, "seven"),
        (12, "twelve"),
        (20, "twenty"),
        (21, "twenty-one"),
        (99, "ninety-nine"),
        (100, "one hundred"),
        (110, "one hundred ten"),
        (927, "nine hundred twenty-seven"),
        (1000, "one thousand"),
        (2438, "two thousand four hundred thirty-eight"),
        (4100, "four thousand one hundred"),
        (12_345_678, "one-two-three-four-five-six-seven-eight"),
    ] {
        assert_eq!(whole(number), words);
    }
    assert_eq!(digits("50"), "five-zero");
}

#[test]
fn numbers_that_sound_alike_are_said_digit_by_digit_too() {
    for (number, words) in [
        (15, "fifteen, one-five,"),
        (50, "fifty, five-zero,"),
        (13, "thirteen, one-three,"),
        (30, "thirty, three-zero,"),
        (915, "nine hundred fifteen, nine-one-five,"),
        (950, "nine hundred fifty, nine-five-zero,"),
        (12, "twelve"),
        (20, "twenty"),
        (51, "fifty-one"),
        (36, "thirty-six"),
    ] {
        assert_eq!(clear(number), words);
    }
}

#[test]
fn inches() {
    for (inches, words) in [
        (36.5, "thirty-six and a half, that is 36.500 inches"),
        (36.25, "thirty-six and a quarter, that is 36.250 inches"),
        (36.75, "thirty-six and three quarters, that is 36.750 inches"),
        (38.125, "thirty-eight and an eighth, that is 38.125 inches"),
        (38.625, "thirty-eight and five eighths, that is 38.625 inches"),
        (0.8125, "thirteen sixteenths, that is 0.813 inches"),
        (0.5, "one half, that is 0.500 inches"),
        (0.25, "one quarter, that is 0.250 inches"),
        (0.125, "one eighth, that is 0.125 inches"),
        (0.0, "zero, that is 0.000 inches"),
        (31.0 + 1.0 / 16.0, "thirty-one and one sixteenth, that is 31.063 inches"),
        (31.0 + 17.0 / 32.0, "thirty-one and seventeen thirty-seconds, that is 31.531 inches"),
        (31.0 + 1.0 / 64.0, "thirty-one and one sixty-fourth, that is 31.016 inches"),
        (31.0 + 63.0 / 64.0, "thirty-one and sixty-three sixty-fourths, that is 31.984 inches"),
        (15.0, "fifteen, one-five, that is 15.000 inches"),
        (50.0, "fifty, five-zero, that is 50.000 inches"),
        (15.5, "fifteen, one-five, and a half, that is 15.500 inches"),
        (50.5, "fifty, five-zero, and a half, that is 50.500 inches"),
        (36.502, "thirty-six point five zero two, that is 36.502 inches"),
        (1.4992, "one point four nine nine, that is 1.499 inches"),
    ] {
        assert_eq!(length(inch(inches), System::Inch), words);
    }
}

#[test]
fn millimeters() {
    for (millimeters, words) in [
        (927.0, "nine hundred twenty-seven millimeters, that is 927.0 mm"),
        (927.1, "nine hundred twenty-seven point one millimeters, that is 927.1 mm"),
        (915.0, "nine hundred fifteen, nine-one-five millimeters, that is 915.0 mm"),
        (950.4, "nine hundred fifty, nine-five-zero, point four millimeters, that is 950.4 mm"),
        (1002.0, "one thousand two millimeters, that is 1002.0 mm"),
    ] {
        assert_eq!(length(mm(millimeters), System::Metric), words);
    }
}

#[test]
fn what_is_no_length_is_not_said() {
    for value in [f64::NAN, f64::INFINITY, -1.0] {
        assert_eq!(number_of(value, System::Inch), "");
        assert_eq!(length(value, System::Metric), "not known");
    }
}

/// Every sixty-fourth up to 100 in, read back from its words.
#[test]
fn every_sixty_fourth_is_said_as_itself() {
    let parts =
        [("half", 32), ("quarter", 16), ("eighth", 8), ("sixteenth", 4), ("thirty-second", 2), ("sixty-fourth", 1)];
    let counts: Vec<(String, u64)> = (0..100).map(|number| (whole(number), number)).collect();
    let number = |words: &str| match words {
        "a" | "an" => 1,
        words => counts.iter().find(|(known, _)| known == words).unwrap_or_else(|| panic!("{words}")).1,
    };
    for count in 0..6400_u64 {
        let said = number_of(inch(count as f64 / 64.0), System::Inch);
        // The digits said beside a number are left out: `fifteen, one-five, and a half`.
        let words = match said.split_once(", ") {
            Some((number, rest)) => {
                rest.split_once(", ").map_or(number.to_string(), |(_, part)| format!("{number} {part}"))
            }
            None => said.clone(),
        };
        let (inches, part) = match words.split_once(" and ") {
            Some((inches, part)) => (number(inches), Some(part)),
            None if words.contains(' ') => (0, Some(words.as_str())),
            None => (number(&words), None),
        };
        let part = part.map_or(0, |part| {
            let (over, name) = part.split_once(' ').expect("a part has a name");
            let name = name.trim_end_matches('s');
            let of = parts.iter().find(|(known, _)| *known == name).unwrap_or_else(|| panic!("{name}")).1;
            number(over) * of
        });
        assert_eq!(inches * 64 + part, count, "{said}");
    }
}

#[test]
fn every_thread_is_said() {
    for (id, words) in [
        ("1-1/4-12", "one and a quarter, twelve threads to the inch"),
        ("1-14", "one, fourteen, one-four, threads to the inch"),
        ("3/4-16", "three quarters, sixteen, one-six, threads to the inch"),
        ("5/16-24", "five sixteenths, twenty-four threads to the inch"),
        ("9/16-18", "nine sixteenths, eighteen, one-eight, threads to the inch"),
        ("1/2-20", "one half, twenty threads to the inch"),
        ("M20x1.5", "M twenty by one point five"),
        ("M12x1.75", "M twelve by one point seven five"),
        ("M14x2", "M fourteen, one-four, by two"),
        ("M30x3.5", "M thirty, three-zero, by three point five"),
    ] {
        assert_eq!(thread(threads::find(id).expect("a row")), words);
    }
    let mut said: Vec<String> = threads::ALL.iter().map(thread).collect();
    said.sort();
    said.dedup();
    assert_eq!(said.len(), threads::ALL.len(), "no two sound the same");
}

#[test]
fn hands_and_counts() {
    assert_eq!(hand(Hand::Left, 1), "left-hand thread at end B: it tightens counterclockwise");
    assert_eq!(hand(Hand::Right, 0), "right-hand thread at end A: it tightens clockwise");
    assert_eq!([1, 2, 15].map(pieces), ["one piece", "two pieces", "fifteen, one-five, pieces"]);
}
