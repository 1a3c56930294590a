//! Many sines in one number, which is another one when the last bit of any of them is.

use linkwright::engine::angles::{cosine, sine, tangent};

/// What the bits come to, on the host and in the browser.
pub(crate) const SUM: u64 = 0x0318_4296_bc53_33d7;

/// The bits of what ten thousand angles have, summed up.
pub(crate) fn sum() -> u64 {
    let bits = |step| {
        let angle = f64::from(step) * 0.001_234_567;
        [sine(angle), cosine(angle), tangent(angle)].map(f64::to_bits).into_iter().fold(0, u64::wrapping_add)
    };
    (-5_000..5_000).map(bits).fold(0, |sum, bits| sum.rotate_left(1).wrapping_add(bits))
}
