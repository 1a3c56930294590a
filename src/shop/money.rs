//! Money without a currency, counted in whole cents and never in fractions of a computer's number.
//!
//! A rate may have four decimals. What it comes to is rounded once, to whole cents; half a cent goes away from zero.

use std::fmt;
use std::iter::Sum;

/// More than any charge of a shop: a larger one is a mistake.
const MOST_WHOLE: i64 = 1_000_000;

/// An amount of money.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Cents(pub i64);

/// What one unit costs, or a percentage: a decimal with four places, counted in ten-thousandths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Rate(pub i64);

/// How much is charged for, in thousandths of its unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Quantity(pub i64);

/// A quotient rounded to the nearest whole number, half away from zero.
fn rounded(value: i128, over: i128) -> i64 {
    let half = if value < 0 { -over / 2 } else { over / 2 };
    i64::try_from((value + half) / over).unwrap_or(if value < 0 { i64::MIN } else { i64::MAX })
}

impl Rate {
    /// A whole number and its ten-thousandths, as printed: `Rate::new(12, 5000)` is 12.50.
    pub const fn new(whole: i64, ten_thousandths: i64) -> Self {
        Self(whole * 10_000 + ten_thousandths)
    }

    /// What a quantity costs at this rate.
    pub fn times(self, quantity: Quantity) -> Cents {
        Cents(rounded(i128::from(self.0) * i128::from(quantity.0), 100_000))
    }

    /// This many percent of an amount.
    pub fn percent_of(self, amount: Cents) -> Cents {
        Cents(rounded(i128::from(self.0) * i128::from(amount.0), 1_000_000))
    }

    /// Reads what a person writes: `12.50`, `1,250.00`, `0.335`. No currency, no sign.
    ///
    /// # Errors
    /// A sentence that says what was read and what would work.
    pub fn read(text: &str) -> Result<Self, String> {
        decimal(text, 4).map(Self)
    }
}

impl Cents {
    /// Reads an amount: `12.50`, `1,250.00`.
    ///
    /// # Errors
    /// A sentence that says what was read and what would work.
    pub fn read(text: &str) -> Result<Self, String> {
        decimal(text, 2).map(Self)
    }
}

impl Quantity {
    /// So many pieces.
    pub fn pieces(count: usize) -> Self {
        Self(i64::try_from(count).unwrap_or(i64::MAX / 1_000).saturating_mul(1_000))
    }

    /// The nearest thousandth of a number of units, half up; nothing for what is no number.
    pub fn nearest(units: f64) -> Self {
        // Within what a float counts exactly; the last bits of a sum must not tip a half.
        let counted = (units * 1_000.0 * (1.0 + 1e-12)).round();
        Self(if counted.is_finite() { counted.clamp(0.0, 1e12) as i64 } else { 0 })
    }
}

/// Reads a decimal with so many places, digit by digit. A comma before exactly three digits sets off thousands, any
/// other single comma is a decimal comma; of a point and a comma the last is the decimal mark.
fn decimal(text: &str, places: usize) -> Result<i64, String> {
    let text = text.trim();
    let wanted = || {
        let read: String = text.chars().take(24).collect();
        format!("I read “{read}”. Type an amount such as 12.50 or 1,250.00, without a currency.")
    };
    if text.is_empty() || !text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',')) {
        return Err(wanted());
    }
    let mark = match (text.matches('.').count(), text.matches(',').count()) {
        (0, 0) => None,
        (0, 1) if in_groups(text, ',') => None,
        (0, 1) => Some(','),
        (0, _) => None,
        _ => text.chars().rfind(|c| !c.is_ascii_digit()),
    };
    let (whole, part) = mark.and_then(|mark| text.rsplit_once(mark)).unwrap_or((text, ""));
    if let Some(separator) = whole.chars().find(|c| !c.is_ascii_digit())
        && (Some(separator) == mark || !in_groups(whole, separator))
    {
        return Err(wanted());
    }
    if whole.is_empty() && part.is_empty() {
        return Err(wanted());
    }
    let (part, beyond) = part.split_at_checked(places).unwrap_or((part, ""));
    if beyond.chars().any(|c| c != '0') {
        return Err(format!("I read “{text}”. At most {places} digits may follow the decimal point."));
    }
    let digits: String = whole.chars().filter(char::is_ascii_digit).collect();
    let digits = format!("{}{part:0<places$}", digits.trim_start_matches('0'));
    let most = MOST_WHOLE * 10_i64.pow(u32::try_from(places).unwrap_or(0));
    let value = digits.parse::<i64>().ok().filter(|value| *value <= most);
    value.ok_or_else(|| {
        format!("I read “{}”. That is more than any charge of a shop.", text.chars().take(24).collect::<String>())
    })
}

/// One to three digits, not starting with a zero, then threes.
fn in_groups(run: &str, separator: char) -> bool {
    let mut groups = run.split(separator);
    let first = groups.next().unwrap_or_default();
    let digits = |group: &str| group.bytes().all(|byte| byte.is_ascii_digit());
    let opens = (1..=3).contains(&first.len()) && digits(first) && !first.starts_with('0');
    opens && groups.all(|group| group.len() == 3 && digits(group))
}

/// A whole number with a comma between thousands.
fn grouped(whole: u64) -> String {
    let digits = whole.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

impl fmt::Display for Cents {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.unsigned_abs();
        let sign = if self.0 < 0 { "-" } else { "" };
        write!(out, "{sign}{}.{:02}", grouped(size / 100), size % 100)
    }
}

impl fmt::Display for Rate {
    /// With two decimals, and up to four where they say something.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.unsigned_abs();
        let sign = if self.0 < 0 { "-" } else { "" };
        let part = format!("{:04}", size % 10_000);
        let (cents, finer) = part.split_at_checked(2).unwrap_or((&part, ""));
        write!(out, "{sign}{}.{cents}{}", size / 10_000, finer.trim_end_matches('0'))
    }
}

impl fmt::Display for Quantity {
    /// Without decimals that say nothing.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.unsigned_abs();
        let part = format!("{:03}", size % 1_000);
        let part = part.trim_end_matches('0');
        let point = if part.is_empty() { "" } else { "." };
        write!(out, "{}{point}{part}", size / 1_000)
    }
}

impl Sum for Cents {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        Self(amounts.fold(0, |sum: i64, amount| sum.saturating_add(amount.0)))
    }
}

impl std::ops::Neg for Cents {
    type Output = Self;

    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}
