//! Numbers as they are said over the phone: fractions in words, threads, hands, and digits where two sound alike.

use crate::document::Hand;
use crate::engine::fitting::hands::nut_tightens;
use crate::engine::tables::threads::Thread;
use crate::present::words::letter;
use crate::quantity::{INCH, Kind, System, show};

/// Words below twenty.
const SMALL: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];

/// Words of the tens.
const TENS: [&str; 10] = ["", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// What the parts of an inch are called, one of them and several.
const PARTS: [(u64, [&str; 2]); 6] = [
    (2, ["half", "halves"]),
    (4, ["quarter", "quarters"]),
    (8, ["eighth", "eighths"]),
    (16, ["sixteenth", "sixteenths"]),
    (32, ["thirty-second", "thirty-seconds"]),
    (64, ["sixty-fourth", "sixty-fourths"]),
];

/// A whole number in words: `nine hundred twenty-seven`.
pub fn whole(number: u64) -> String {
    let small = |number: u64| SMALL.get(number as usize).copied().unwrap_or_default();
    match number {
        0..20 => small(number).to_string(),
        20..100 => {
            let tens = TENS.get((number / 10) as usize).copied().unwrap_or_default();
            if number.is_multiple_of(10) { tens.to_string() } else { format!("{tens}-{}", small(number % 10)) }
        }
        100..1_000 => followed(format!("{} hundred", small(number / 100)), number % 100),
        1_000..1_000_000 => followed(format!("{} thousand", whole(number / 1_000)), number % 1_000),
        _ => digits(&number.to_string()),
    }
}

/// A round number, and what is left of it.
fn followed(round: String, rest: u64) -> String {
    if rest == 0 { round } else { format!("{round} {}", whole(rest)) }
}

/// Digits one by one: `five-zero`.
pub fn digits(text: &str) -> String {
    let words = text.chars().filter_map(|digit| SMALL.get(digit.to_digit(10)? as usize).copied());
    words.collect::<Vec<_>>().join("-")
}

/// Whether a number sounds like another one: fifteen like fifty.
const fn sounds_alike(number: u64) -> bool {
    let end = number % 100;
    matches!(end, 13..=19) || (end >= 30 && end.is_multiple_of(10))
}

/// A whole number in words, with its digits where it sounds like another: `fifty, five-zero`.
pub fn clear(number: u64) -> String {
    let words = whole(number);
    if sounds_alike(number) { format!("{words}, {},", digits(&number.to_string())) } else { words }
}

/// The same at the end of a phrase, without the comma that leads on.
fn last(words: &str) -> &str {
    words.trim_end_matches(',')
}

/// A number of inches that is a whole count of sixty-fourths: `thirty-six and a half`, `thirteen sixteenths`.
fn in_sixty_fourths(count: u64) -> String {
    let (inches, mut over, mut under) = (count / 64, count % 64, 64);
    if over == 0 {
        return last(&clear(inches)).to_string();
    }
    while over % 2 == 0 {
        over /= 2;
        under /= 2;
    }
    let [one, several] = PARTS.iter().find(|(parts, _)| *parts == under).map_or(["", ""], |(_, names)| *names);
    let part = match (over, under) {
        (1, 2 | 4) if inches > 0 => format!("a {one}"),
        (1, 8) if inches > 0 => format!("an {one}"),
        (1, _) => format!("one {one}"),
        _ => format!("{} {several}", whole(over)),
    };
    if inches == 0 { part } else { format!("{} and {part}", clear(inches)) }
}

/// A decimal as it is written, in words: `nine hundred twenty-seven point one`.
fn decimal(written: &str) -> String {
    let (before, after) = written.split_once('.').unwrap_or((written, ""));
    let whole = before.parse::<u64>().map_or_else(|_| digits(before), clear);
    let after = after.trim_end_matches('0');
    if after.is_empty() {
        last(&whole).to_string()
    } else {
        format!("{whole} point {}", digits(after).replace('-', " "))
    }
}

/// The number of a length as a reader of a system writes it, without its unit: thousandths of an inch, tenths of a
/// millimeter.
fn figures(value: f64, system: System) -> String {
    let shown = match system {
        System::Inch => show(value, Kind::FineLength, system),
        System::Metric => show(value, Kind::Length, system),
    };
    shown.split(' ').next().unwrap_or_default().to_string()
}

/// A length in words, without its unit: `thirty-six and a half`; a length that lies on no sixty-fourth of an inch as a
/// decimal. Nothing where it is no length.
pub fn number_of(value: f64, system: System) -> String {
    if !value.is_finite() || value < 0.0 {
        return String::new();
    }
    let written = figures(value, system);
    let sixty_fourths = (value / INCH * 64.0).round();
    if system == System::Inch && figures(sixty_fourths / 64.0 * INCH, system) == written {
        // A link's length in sixty-fourths of an inch fits any integer.
        return in_sixty_fourths(sixty_fourths as u64);
    }
    decimal(&written)
}

/// A length in words and in figures: `thirty-six and a half, that is 36.500 inches`.
pub fn length(value: f64, system: System) -> String {
    let words = number_of(value, system);
    if words.is_empty() {
        return "not known".to_string();
    }
    let figures = figures(value, system);
    match system {
        System::Inch => format!("{words}, that is {figures} inches"),
        System::Metric => format!("{words} millimeters, that is {figures} mm"),
    }
}

/// A thread: `one and a quarter, twelve threads to the inch`, `M twenty by one point five`.
pub fn thread(thread: &Thread) -> String {
    let size = number_of(thread.major, thread.system);
    match thread.system {
        System::Inch => {
            // Threads to the inch are whole numbers in every row.
            let per_inch = (INCH / thread.pitch).round() as u64;
            format!("{size}, {} threads to the inch", clear(per_inch))
        }
        System::Metric => {
            // A pitch may have two digits after the point: 1.75.
            let pitch = show(thread.pitch, Kind::FineLength, System::Metric);
            let pitch = decimal(pitch.split(' ').next().unwrap_or_default());
            if size.contains(',') { format!("M {size}, by {pitch}") } else { format!("M {size} by {pitch}") }
        }
    }
}

/// The hand at an end: `left-hand thread at end B: it tightens counterclockwise`.
pub fn hand(hand: Hand, end: usize) -> String {
    format!("{} thread at end {}: it tightens {}", hand.words(), letter(end), nut_tightens(hand).words())
}

/// A count of pieces: `two pieces`, `fifteen, one-five, pieces`.
pub fn pieces(count: u64) -> String {
    if count == 1 { "one piece".to_string() } else { format!("{} pieces", clear(count)) }
}
