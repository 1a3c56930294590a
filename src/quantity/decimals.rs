//! An `f64` in decimal digits, correctly rounded, as the standard library's formatter would write it.
//!
//! The standard library has three algorithms for that, for speed, which a phone would have to fetch (DEVELOPERS.md says
//! what they weigh). Here every digit that a number has is worked out and then rounded. Held against the other by a test.

use super::digits::parse;
use super::long::Long;

/// With so many places after the point, as `{:.*}`; what lies halfway goes to the even digit. `NaN`, `inf` and `-inf`
/// where there are no digits.
pub fn fixed(value: f64, places: usize) -> String {
    without_digits(value).unwrap_or_else(|| {
        let digits = Digits::of(value);
        let count = digits.before + places as i64;
        digits.rounded(count, nearest_or_even).text(places)
    })
}

/// A finite number with one digit before the point and so many after it, and the power of ten to multiply that by, as
/// `{:.*e}`. Of others the word and 0.
pub fn scientific(value: f64, places: usize) -> (String, i64) {
    if let Some(word) = without_digits(value) {
        return (word, 0);
    }
    let mut digits = Digits::of(value).rounded(1 + places as i64, nearest_or_even);
    let power = if digits.all.is_empty() { 0 } else { digits.before - 1 };
    digits.before -= power;
    (digits.text(places), power)
}

/// In the fewest digits that lead back to it, without an exponent, as `{}`; what lies halfway goes up.
pub fn shortest(value: f64) -> String {
    without_digits(value).unwrap_or_else(|| {
        let digits = Digits::of(value);
        // What fifteen digits or fewer can say is found by the first look, but below the least normal number.
        let fewest = if value.is_normal() { 15 } else { 1 };
        // Below a power of two the next number is so near that only digits above it may lead back.
        let ways = (fewest..MOST).flat_map(|count| [nearest_or_up, up].map(|way| (count, way)));
        let mut texts = ways.map(|(count, way)| digits.clone().rounded(count, way).whole());
        texts.find(|text| parse(text) == Some(value)).unwrap_or_else(|| digits.rounded(MOST, nearest_or_up).whole())
    })
}

fn without_digits(value: f64) -> Option<String> {
    if value.is_finite() {
        return None;
    }
    let word = if value.is_nan() { "NaN" } else { "inf" };
    Some(if value < 0.0 { format!("-{word}") } else { word.to_string() })
}

/// As many digits lead back to any number.
const MOST: i64 = 17;
/// Bits of an `f64` (IEEE 754 binary64) that its fraction takes.
const FRACTION: i64 = 52;
/// The power of two of its last bit, in the least of all numbers.
const LEAST: i64 = -1074;
/// The greatest power of five that 32 bits hold, and which one it is.
const FIVES: (u32, i64) = (5_u32.pow(13), 13);

/// Whether the digits that are kept go up, told by them and by those that are dropped, which are not all zeros.
type Way = fn(&[u8], &[u8]) -> bool;

fn nearest_or_even(kept: &[u8], dropped: &[u8]) -> bool {
    let odd = kept.last().is_some_and(|last| last % 2 == 1);
    dropped[0] > 5 || (dropped[0] == 5 && (dropped.len() > 1 || odd))
}

fn nearest_or_up(_: &[u8], dropped: &[u8]) -> bool {
    dropped[0] >= 5
}

fn up(_: &[u8], _: &[u8]) -> bool {
    true
}

/// Digits of a number, without zeros at either end, and how many of them stand before the point: less than none
/// where zeros come first after it.
#[derive(Clone)]
struct Digits {
    negative: bool,
    all: Vec<u8>,
    before: i64,
}

impl Digits {
    /// Every digit that a finite number has.
    fn of(value: f64) -> Self {
        let bits = value.to_bits();
        let (exponent, fraction) = ((bits >> FRACTION & 0x7ff) as i64, bits & ((1 << FRACTION) - 1));
        let hidden = u64::from(exponent > 0) << FRACTION;
        let (whole, power) = (fraction | hidden, LEAST + (exponent - 1).max(0));
        let mut digits = Self { negative: value.is_sign_negative(), all: Vec::new(), before: 0 };
        if whole == 0 {
            return digits;
        }
        let even = whole.trailing_zeros();
        let (mut long, power) = (Long::from(whole >> even), power + i64::from(even));
        long.shift(power.max(0));
        // n / 2^k is n · 5^k / 10^k: as many fives, and the point moves as many places.
        let places = (-power).max(0);
        (0..places / FIVES.1).for_each(|_| long.times_plus(FIVES.0, 0));
        (0..places % FIVES.1).for_each(|_| long.times_plus(5, 0));
        // From the last digit to the first.
        while !long.is_zero() {
            let mut nine = long.divide_for_remainder(1_000_000_000);
            for _ in 0..9 {
                digits.all.push((nine % 10) as u8);
                nine /= 10;
            }
        }
        digits.trim();
        digits.all.reverse();
        digits.before = digits.all.len() as i64 - places;
        digits.trim();
        digits
    }

    /// Takes zeros off the end.
    fn trim(&mut self) {
        while self.all.last() == Some(&0) {
            self.all.pop();
        }
    }

    /// Rounded to so many digits.
    fn rounded(mut self, count: i64, goes_up: Way) -> Self {
        let Ok(count) = usize::try_from(count) else {
            // Less than a tenth of the last place.
            return Self { all: Vec::new(), before: 0, ..self };
        };
        let Some((kept, dropped)) = self.all.split_at_checked(count).filter(|(_, dropped)| !dropped.is_empty()) else {
            return self;
        };
        let up = goes_up(kept, dropped);
        self.all.truncate(count);
        if !up {
            self.trim();
            return self;
        }
        // Nines become zeros; what is carried past the first digit is a digit before it.
        while self.all.last() == Some(&9) {
            self.all.pop();
        }
        if let Some(last) = self.all.last_mut() {
            *last += 1;
        } else {
            self.all.push(1);
            self.before += 1;
        }
        self
    }

    /// Written with so many places after the point.
    fn text(&self, places: usize) -> String {
        let mut text = String::from(if self.negative { "-" } else { "" });
        let digit = |at: i64| {
            let digit = usize::try_from(at).ok().and_then(|at| self.all.get(at));
            char::from(b'0' + digit.unwrap_or(&0))
        };
        if self.before > 0 {
            text.extend((0..self.before).map(digit));
        } else {
            text.push('0');
        }
        if places > 0 {
            text.push('.');
            text.extend((self.before..self.before + places as i64).map(digit));
        }
        text
    }

    /// Written with all of them.
    fn whole(&self) -> String {
        self.text(usize::try_from(self.all.len() as i64 - self.before).unwrap_or(0))
    }
}

/// Without zeros after the point that say nothing.
pub fn trimmed(text: String) -> String {
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_string() } else { text }
}
