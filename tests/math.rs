//! Sines, powers, logarithms and their like: the same bits everywhere, and the values that the standard library gives.

use linkwright::engine::math::{
    arcsine, arctangent, cosine, cube_root, cubed, decimal_logarithm, direction, fourth, logarithm, power, sine,
    squared, tangent,
};

#[path = "math/bits.rs"]
mod bits;

/// As in the browser (`tests/web.rs`).
#[test]
fn not_one_bit_depends_on_where_it_runs() {
    assert_eq!(bits::sum(), bits::SUM);
}

#[test]
fn they_are_those_of_the_standard_library() {
    for step in -200_000..=200_000 {
        let value = f64::from(step) * 1.234_567e-4;
        let share = f64::from(step) / 200_000.0;
        let above_zero = value.abs() + 1e-9;
        let exponent = 4.0 * share;
        for (name, own, theirs) in [
            ("sine", sine(value), value.sin()),
            ("cosine", cosine(value), value.cos()),
            ("tangent", tangent(value), value.tan()),
            ("arcsine", arcsine(share), share.asin()),
            ("arctangent", arctangent(value), value.atan()),
            ("direction", direction(share, value), share.atan2(value)),
            ("logarithm", logarithm(above_zero), above_zero.ln()),
            ("decimal logarithm", decimal_logarithm(above_zero), above_zero.log10()),
            ("power", power(above_zero, exponent), above_zero.powf(exponent)),
            ("cube root", cube_root(value), value.cbrt()),
            ("squared", squared(value), value.powi(2)),
            ("cubed", cubed(value), value.powi(3)),
            ("fourth", fourth(value), value.powi(4)),
        ] {
            let slack = 1e-15 * theirs.abs().max(f64::MIN_POSITIVE);
            assert!((own - theirs).abs() <= slack, "{name} at {value}: {own} instead of {theirs}");
        }
    }
}

#[test]
fn what_has_no_value_is_no_number() {
    assert!(sine(f64::INFINITY).is_nan() && tangent(f64::NAN).is_nan());
    assert!(arcsine(1.000_1).is_nan() && logarithm(-1.0).is_nan() && power(-1.0, 0.5).is_nan());
}
