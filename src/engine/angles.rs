//! Sine, cosine and tangent, the same to the last bit in a test and in every browser. Their angles are those of links
//! and bars; the standard library's also take 1e300, for which a phone would fetch three kilobytes more.

use std::f64::consts::FRAC_PI_2;

/// Beyond so many quarter turns an angle of a link is a mistake, and none of the three is a number.
const MOST: f64 = 1e5;
/// A right angle in two parts: the first 33 bits, of which any count up to [`MOST`] is exact, and what is left.
const RIGHT: (f64, f64) = (1.570_796_326_734_125_6, 6.077_100_506_506_192e-11);

/// Whole right angles in an angle, the nearest, and what is beyond them.
fn in_right_angles(angle: f64) -> (i32, f64) {
    let count = (angle / FRAC_PI_2).round();
    if count.abs() <= MOST { (count as i32, (angle - count * RIGHT.0) - count * RIGHT.1) } else { (0, f64::NAN) }
}

/// The series of sine (`odd`) or cosine, for half a right angle at most: what is left out is below 1e-16 of it.
fn series(angle: f64, odd: bool) -> f64 {
    const LAST: i32 = 16;
    let square = angle * angle;
    let mut sum = 1.0;
    let mut next = if odd { LAST - 1 } else { LAST };
    while next > 1 {
        sum = 1.0 - sum * square / f64::from(next * (next - 1));
        next -= 2;
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_those_of_the_standard_library() {
        for step in -2_000_000..=2_000_000 {
            let angle = f64::from(step) * 1.234_567e-5;
            for (own, theirs) in [(sine(angle), angle.sin()), (cosine(angle), angle.cos())] {
                assert!((own - theirs).abs() <= 2.3e-16, "at {angle}: {own} instead of {theirs}");
            }
            let (own, theirs) = (tangent(angle), angle.tan());
            assert!((own - theirs).abs() <= 5e-16 * theirs.abs().max(1e-300), "at {angle}: {own} instead of {theirs}");
        }
        for small in [0.0, 1e-300, 1e-20, 1e-9, -1e-9] {
            assert_eq!((sine(small), cosine(small), tangent(small)), (small, 1.0, small));
        }
    }

    #[test]
    fn an_angle_that_cannot_be_has_none() {
        for angle in [1e6, -1e6, f64::INFINITY, f64::NAN] {
            assert!(sine(angle).is_nan() && cosine(angle).is_nan() && tangent(angle).is_nan(), "{angle}");
        }
        assert!(sine(1.5e5).is_finite());
    }
}
