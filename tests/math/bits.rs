//! Many values of every function in one number, which is another one when the last bit of any of them is.

use linkwright::engine::math::{
    arcsine, arctangent, cosine, cube_root, decimal_logarithm, direction, logarithm, power, sine, tangent,
};

/// What the bits come to, on the host and in the browser.
pub(crate) const SUM: u64 = 0x35c2_105e_d231_3963;

/// The bits of ten thousand values of each, summed up.
pub(crate) fn sum() -> u64 {
    let bits = |step: i32| {
        let value = f64::from(step) * 0.001_234_567;
        let above_zero = value.abs() + 1e-6;
        let all = [
            sine(value),
            cosine(value),
            tangent(value),
            arcsine(f64::from(step) / 5_000.0),
            arctangent(value),
            direction(value, 1.0 - value),
            logarithm(above_zero),
            decimal_logarithm(above_zero),
            power(above_zero, 1.7 - value),
            cube_root(value),
        ];
        all.into_iter().fold(0, |sum: u64, value| sum.rotate_left(7).wrapping_add(value.to_bits()))
    };
    (-5_000..5_000).map(bits).fold(0, |sum, bits| sum.rotate_left(1).wrapping_add(bits))
}
