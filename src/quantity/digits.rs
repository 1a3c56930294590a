//! Decimal digits to the nearest `f64`, correctly rounded, as the standard library's reader would.
//!
//! That one carries a table of ten kilobytes that no packing makes smaller; a phone on a weak signal
//! fetches this file instead. Slower by microseconds, and held against the other by a test, bit for bit.

use super::long::Long;

/// Digits beyond these only matter by being there: no number halfway between two `f64` has more.
const MOST_DIGITS: usize = 800;

/// Powers of ten that an `f64` holds exactly.
const EXACT: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
    1e21, 1e22,
];

/// Reads `-12.5e-3`: digits, at most one point, an exponent of ten. What is too large becomes infinite.
pub fn parse(text: &str) -> Option<f64> {
    let (negative, rest) = signed(text);
    let (mantissa, exponent) = match rest.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, whole(exponent)?),
        None => (rest, 0),
    };
    let (before, after) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    if before.len() + after.len() == 0 {
        return None;
    }
    let mut digits: Vec<u8> = Vec::new();
    let mut power = exponent.saturating_sub(i64::try_from(after.len()).ok()?);
    let mut dropped = false;
    for byte in before.bytes().chain(after.bytes()) {
        let digit = byte.checked_sub(b'0').filter(|digit| *digit < 10)?;
        if digits.len() < MOST_DIGITS {
            // Zeros in front say nothing.
            if digit > 0 || !digits.is_empty() {
                digits.push(digit);
            }
        } else {
            power = power.saturating_add(1);
            dropped |= digit > 0;
        }
    }
    if dropped {
        digits.push(1);
        power = power.saturating_sub(1);
    }
    let value = nearest(&digits, power);
    Some(if negative { -value } else { value })
}

/// Whether a minus stands in front, and what follows the sign.
fn signed(text: &str) -> (bool, &str) {
    match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    }
}

/// A whole number with its sign; one beyond all reach stands for any that is.
fn whole(text: &str) -> Option<i64> {
    let (negative, digits) = signed(text);
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let value = digits.bytes().fold(0, |value: i64, byte| (value * 10 + i64::from(byte - b'0')).min(1_000_000));
    Some(if negative { -value } else { value })
}

/// The `f64` nearest to these digits times a power of ten, the even one where two are as near.
fn nearest(digits: &[u8], power: i64) -> f64 {
    let size = power.saturating_add(i64::try_from(digits.len()).unwrap_or(i64::MAX));
    if digits.is_empty() || size < -330 {
        return 0.0;
    }
    if size > 310 {
        return f64::INFINITY;
    }
    let places = usize::try_from(power.unsigned_abs()).unwrap_or(usize::MAX);
    if let (1..=15, Some(exact)) = (digits.len(), EXACT.get(places)) {
        let whole = digits.iter().fold(0.0, |whole, digit| whole * 10.0 + f64::from(*digit));
        // Both are exact, so one rounding is all there is.
        return if power < 0 { whole / exact } else { whole * exact };
    }
    let mut above = Long::of(digits);
    let mut below = Long::from(1);
    (0..places).for_each(|_| if power < 0 { below.times_plus(10, 0) } else { above.times_plus(10, 0) });
    // So many places to the left that the quotient has 54 or 55 bits.
    let shift = 54 - (above.bit_length() - below.bit_length());
    if shift > 0 {
        above.shift(shift)
    } else {
        below.shift(-shift)
    }
    let mut quotient: u64 = 0;
    below.shift(55);
    for _ in 0..56 {
        quotient <<= 1;
        if !above.less_than(&below) {
            above.minus(&below);
            quotient |= 1;
        }
        above.shift(1);
    }
    // Bits that the result has no room for: two or three, more where it is below the least normal number.
    let bits = 64 - i64::from(quotient.leading_zeros());
    let spare = (bits - 53).max(shift - 1074);
    if spare > bits + 1 {
        return 0.0;
    }
    let half = 1_u64 << (spare - 1);
    let (mut kept, rest) =
        (quotient.checked_shr(u32::try_from(spare).unwrap_or(64)).unwrap_or(0), quotient & (2 * half - 1));
    if rest > half || (rest == half && (!above.is_zero() || kept & 1 == 1)) {
        kept += 1;
    }
    // In two steps, since a single power of two may not be an `f64`.
    let scale = spare - shift;
    let first = scale.clamp(-1000, 900);
    kept as f64 * two_to(first) * two_to(scale - first)
}

/// A power of two that an `f64` holds exactly.
fn two_to(power: i64) -> f64 {
    u64::try_from(power + 1023).map_or(0.0, |biased| f64::from_bits(biased << 52))
}
