//! Where something crosses zero is found, and in few looks: each look is a whole link worked out.

use linkwright::engine::roots::{crossing, last_good};

type Curve = fn(f64) -> f64;

/// Where `over` crosses zero between 0 and 1, and in how many looks.
fn found(hair: f64, over: impl Fn(f64) -> f64) -> (f64, u32) {
    let mut looks = 0;
    let last = crossing((0.0, over(0.0)), (1.0, over(1.0)), hair, |value| {
        looks += 1;
        over(value)
    });
    assert!(over(last) <= 0.0, "{last} is over already");
    assert!(over(last + hair) > 0.0, "{last} is not the last");
    (last, looks)
}

#[test]
fn a_straight_line_is_found_at_once() {
    for at in [0.001, 0.3, 0.5, 0.77, 0.999] {
        let (last, looks) = found(1e-9, |value| value - at);
        assert!((last - at).abs() <= 1e-9 && looks <= 3, "{at}: {last} in {looks}");
    }
}

#[test]
fn a_curve_takes_few_looks_and_a_jump_no_more_than_halving() {
    let smooth: [(&str, Curve, u32); 4] = [
        ("square", |value| value * value - 0.3, 10),
        ("root", |value| value.sqrt() - 0.2, 10),
        ("high power", |value| value.powi(9) - 0.001, 18),
        ("flat, then steep", |value| (20.0 * (value - 0.9)).exp() - 1.0, 22),
    ];
    for (name, over, most) in smooth {
        let (_, looks) = found(1e-10, over);
        assert!(looks <= most, "{name} took {looks} looks");
    }
    let (last, looks) = found(1e-9, |value| if value > 0.7 { f64::INFINITY } else { -1.0 });
    assert!((last - 0.7).abs() <= 1e-9 && looks <= 31, "a jump took {looks} looks to {last}");
    let (_, looks) = found(1e-9, |value| if value > 0.7 { 5.0 } else { -0.001 });
    assert!(looks <= 88, "a jump to a number took {looks} looks");
}

#[test]
fn a_hair_finer_than_numbers_ends_all_the_same() {
    let mut looks = 0;
    let last = crossing((1.0, -1.0), (2.0, 1.0), 0.0, |value| {
        looks += 1;
        value - 1.6
    });
    assert!((last - 1.6).abs() < 1e-15 && looks < 200, "{last} in {looks}");
}

#[test]
fn going_down_the_greatest_value_that_will_do_is_found() {
    for limit in [1.5, 4.0, 9.99] {
        let found = last_good(10.0, 1.0, |value| value - limit).expect("one will do");
        assert!((found - limit).abs() < 1e-8 && found <= limit, "{limit}: {found}");
        // Where it jumps, and where nothing can be told above.
        let found =
            last_good(10.0, 1.0, |value| if value > limit { f64::INFINITY } else { -0.1 }).expect("one will do");
        assert!((found - limit).abs() < 1e-7, "{limit}: {found}");
    }
    assert_eq!(last_good(10.0, 1.0, |_| 0.2), None);
}
