//! Sine, cosine and tangent against those of the standard library.

use linkwright::engine::angles::{cosine, sine, tangent};

#[path = "angles/bits.rs"]
mod bits;

/// As in the browser (`tests/web.rs`).
#[test]
fn not_one_bit_depends_on_where_it_runs() {
    assert_eq!(bits::sum(), bits::SUM);
}

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
