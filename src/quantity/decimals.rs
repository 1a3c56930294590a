//! An `f64` in decimal digits, correctly rounded, as the standard library's formatter would write it.
//!
//! That one is made for speed in three ways, at five kilobytes of the program after packing. Here all digits that the
//! number really has are worked out and then rounded; held against the other by a test, letter for letter.

use super::digits::parse;
use super::long::Long;

/// What stands for a value without digits, as the standard library writes it.
fn no_number(value: f64) -> Option<String> {
    let size = if value.is_nan() { "NaN" } else { "inf" };
    (!value.is_finite()).then(|| format!("{}{size}", minus(value)))
}

fn minus(value: f64) -> &'static str {
    if value.is_sign_negative() && !value.is_nan() { "-" } else { "" }
}

/// With so many places after the point, as `{:.*}`; what lies halfway goes to the even digit.
pub fn fixed(value: f64, places: usize) -> String {
    no_number(value).unwrap_or_else(|| Digits::of(value).rounded_to_place(places as i64).text(value, places))
}

/// With one digit before the point and so many after it, and the power of ten to multiply that by, as `{:.*e}`.
pub fn scientific(value: f64, places: usize) -> (String, i64) {
    if let Some(words) = no_number(value) {
        return (words, 0);
    }
    let mut digits = Digits::of(value).rounded_to_count(1 + places as i64);
    let power = digits.before - i64::from(!digits.all.is_empty());
    digits.before -= power;
    (digits.text(value, places), power)
}

/// In the fewest digits that lead back to it, without an exponent, as `{}`.
pub fn shortest(value: f64) -> String {
    if let Some(words) = no_number(value) {
        return words;
    }
    // No `f64` needs more than seventeen; what has fifteen or fewer is found by the first look.
    let with = |count| Digits::of(value).rounded_to_count(count).whole(value);
    let fewer = (15..17).map(with).find(|text| parse(text) == Some(value));
    fewer.unwrap_or_else(|| with(17))
}

/// Digits of a number, without zeros at either end, and how many of them stand before the point: less than none
/// where zeros come first after it.
struct Digits {
    all: Vec<u8>,
    before: i64,
}

impl Digits {
    /// Every digit that a number has.
    fn of(value: f64) -> Self {
        let bits = value.to_bits();
        let (exponent, fraction) = ((bits >> 52 & 0x7ff) as i64, bits & ((1 << 52) - 1));
        let (whole, mut power) = if exponent == 0 { (fraction, -1074) } else { (fraction | 1 << 52, exponent - 1075) };
        if whole == 0 {
            return Self { all: Vec::new(), before: 0 };
        }
        let even = whole.trailing_zeros();
        power += i64::from(even);
        let mut long = Long::from(whole >> even);
        // A half is five tenths.
        let halves = (-power).max(0);
        (0..halves / 13).for_each(|_| long.times_plus(5_u32.pow(13), 0));
        (0..halves % 13).for_each(|_| long.times_plus(5, 0));
        long.shift(power.max(0));
        let mut all = Vec::new();
        while long.is_some() {
            let mut nine = long.divide(1_000_000_000);
            for _ in 0..9 {
                all.push((nine % 10) as u8);
                nine /= 10;
            }
        }
        let unused = all.iter().rev().take_while(|digit| **digit == 0).count();
        all.truncate(all.len() - unused);
        all.reverse();
        let before = all.len() as i64 - halves;
        Self { all, before }.bare()
    }

    /// Without zeros at the end.
    fn bare(mut self) -> Self {
        while self.all.last() == Some(&0) {
            self.all.pop();
        }
        self
    }

    /// Rounded to so many places after the point.
    fn rounded_to_place(self, places: i64) -> Self {
        let count = self.before + places;
        self.rounded_to_count(count)
    }

    /// Rounded to so many digits.
    fn rounded_to_count(mut self, count: i64) -> Self {
        let Ok(count) = usize::try_from(count) else { return Self { all: Vec::new(), before: 0 } };
        let Some((kept, dropped)) = self.all.split_at_checked(count).filter(|(_, dropped)| !dropped.is_empty()) else {
            return self;
        };
        let odd = kept.last().is_some_and(|last| last % 2 == 1);
        let up = dropped[0] > 5 || (dropped[0] == 5 && (dropped.len() > 1 || odd));
        self.all.truncate(count);
        if !up {
            return self.bare();
        }
        // Nines become tens, and what is carried past the first digit is a digit before it.
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
    fn text(&self, value: f64, places: usize) -> String {
        let mut text = minus(value).to_string();
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
    fn whole(&self, value: f64) -> String {
        self.text(value, usize::try_from(self.all.len() as i64 - self.before).unwrap_or(0))
    }
}
