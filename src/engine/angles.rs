//! Sine, cosine and tangent, the same to the last bit in a test and in every browser. Their angles are those of links
//! and bars; the standard library's also take 1e300, for which a phone would fetch three kilobytes more.

use std::f64::consts::FRAC_PI_2;

/// Beyond so many quarter turns an angle of a link is a mistake, and none of the three is a number.
const MOST: f64 = 1e5;
/// A right angle in two parts: the first 33 bits, of which any count up to [`MOST`] is exact, and what is left.
const RIGHT: (f64, f64) = (1.570_796_326_734_125_6, 6.077_100_506_506_192e-11);

/// Whole right angles in an angle, the nearest, and what is beyond them.
fn in_right_angles(angle: f64) -> (i32, f64) {
    let count = (angle / FRAC_PI_2).round_ties_even();
    if count.abs() <= MOST { (count as i32, (angle - count * RIGHT.0) - count * RIGHT.1) } else { (0, f64::NAN) }
}

/// What the powers of an angle are multiplied by in the two series: ±1/n! for the power n, cosine's where it is even.
/// What is left out after the last is below 1e-16.
const SERIES: [f64; 17] = {
    let mut series = [1.0; 17];
    let mut power = 1;
    while power < series.len() {
        let turn = if power % 2 == 0 { -1.0 } else { 1.0 };
        series[power] = turn * series[power - 1] / power as f64;
        power += 1;
    }
    series
};

/// The series of sine (`odd`) or cosine, for half a right angle at most.
fn series(angle: f64, odd: bool) -> f64 {
    let square = angle * angle;
    let terms = SERIES.iter().skip(usize::from(odd)).step_by(2);
    let sum = terms.rev().fold(0.0, |sum, term| sum * square + term);
    if odd { angle * sum } else { sum }
}

/// The sine of an angle in radians; no number for more than 100,000 right angles.
pub fn sine(angle: f64) -> f64 {
    let (count, rest) = in_right_angles(angle);
    let value = series(rest, count & 1 == 0);
    if count & 2 == 0 { value } else { -value }
}

/// The cosine of an angle in radians; no number for more than 100,000 right angles.
pub fn cosine(angle: f64) -> f64 {
    let (count, rest) = in_right_angles(angle);
    let value = series(rest, count & 1 == 1);
    if (count + 1) & 2 == 0 { value } else { -value }
}

/// The tangent of an angle in radians; no number for more than 100,000 right angles.
pub fn tangent(angle: f64) -> f64 {
    sine(angle) / cosine(angle)
}
