//! What a bow leaves of a bar, beside printed values and beside other ways to the same number.

use std::f64::consts::PI;

use super::{link, tube};
use crate::dice::Dice;
use crate::links::{answer, find};
use linkwright::document::Role;
use linkwright::engine::fitting::hit::{BowedBar, bowed_bar};
use linkwright::engine::formula::Sheet;
use linkwright::quantity::{inch, ksi, lbf};

fn near(found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() < share, "{found} instead of {wanted}");
}

/// A uniform bar under a force and a hit at mid-span: inches, ksi and lbf.
fn uniform([outside, bore, length]: [f64; 3], [modulus, yielding]: [f64; 2], [axial, strike]: [f64; 2]) -> BowedBar {
    let (outside, bore, length) = (inch(outside), inch(bore), inch(length));
    let fourth = |d: f64| d.powi(4);
    let second_moment = PI / 64.0 * (fourth(outside) - fourth(bore));
    let critical = PI * PI * ksi(modulus) * second_moment / (length * length);
    let phase = PI / 2.0 * (lbf(axial) / critical).sqrt();
    BowedBar {
        length,
        outside_diameter: outside,
        bore,
        area: PI / 4.0 * (outside * outside - bore * bore),
        second_moment,
        modulus: 2.0 * second_moment / outside,
        yield_compression: ksi(yielding),
        yield_tension: ksi(yielding),
        critical,
        straight: f64::INFINITY,
        straightness: 0.002,
        offset: 0.0,
        axial: lbf(axial),
        axial_with_strike: lbf(axial),
        strike: lbf(strike),
        lever: length / 4.0 * phase.tan() / phase,
        column_factor: 1.5,
        yield_factor: 1.25,
        ductile: bore > 0.0,
    }
}

/// Check values of the calculation model: a 1-1/2 in bar of 7075, 50 in long, bowed by a 500th of its length; and a
/// 1-1/2 x .250 tube offset by 2 in.
#[test]
fn the_model_s_check_values_come_out() {
    let bar = uniform([1.5, 0.0, 50.0], [10_500.0, 64.0], [1000.0, 0.0]);
    near(bar.critical / lbf(1.0), 10_301.0, 5e-5);
    near(bar.buckles_at(inch(0.1), &mut Sheet::silent()) / lbf(1.0), 9_781.0, 5e-6);
    let tube = uniform([1.5, 1.0, 34.0], [29_000.0, 70.0], [4500.0, 0.0]);
    // Printed as 76.400 %.
    assert!((tube.under_force(inch(2.0), &mut Sheet::silent()) - 0.764).abs() < 5e-6);
}

/// A number by halving: where something that grows passes zero.
fn halved(mut low: f64, mut high: f64, over: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if over(middle) < 0.0 { low = middle } else { high = middle }
    }
    low
}

fn random_bar(dice: &mut Dice) -> BowedBar {
    let mut between = |low: f64, high: f64| low + (high - low) * dice.next(10_000) as f64 / 10_000.0;
    let outside = between(1.0, 2.5);
    let bore = outside * between(0.5, 0.9);
    let (length, yielding) = (between(20.0, 60.0), between(36.0, 120.0));
    let at_rest = uniform([outside, bore, length], [29_000.0, yielding], [1.0, 0.0]);
    let most = at_rest.critical.min(at_rest.area * at_rest.yield_compression) / lbf(1.0);
    uniform([outside, bore, length], [29_000.0, yielding], [most * between(0.02, 0.6), between(100.0, 5000.0)])
}

/// The load of first yield, by halving on the stress itself; and between the loads of the secant formula for the same
/// offset at the ends: a bow like a half wave bends less than an even offset, and 4/π of it more.
#[test]
fn the_bowed_column_is_where_its_stress_reaches_yield() {
    let mut dice = Dice(7);
    for _ in 0..400 {
        let bar = random_bar(&mut dice);
        let bow = bar.length * (0.002 + dice.next(1000) as f64 * 2e-5);
        let by_formula = bar.buckles_at(bow, &mut Sheet::silent());
        let by_halving = halved(0.0, bar.critical * (1.0 - 1e-12), |load| {
            load / bar.area + load * bow / (1.0 - load / bar.critical) / bar.modulus - bar.yield_compression
        });
        near(by_formula, by_halving, 1e-8);
        let secant = |offset: f64| {
            halved(0.0, bar.critical * (1.0 - 1e-12), |load| {
                let wave = PI / 2.0 * (load / bar.critical).sqrt();
                load / bar.area + load * offset / wave.cos() / bar.modulus - bar.yield_compression
            })
        };
        assert!(secant(bow) <= by_formula * (1.0 + 1e-9) && by_formula <= secant(bow * PI / 4.0) * (1.0 + 1e-9));
    }
}

/// Moment at mid-span of a bowed bar that is pressed and hit, by finite differences on its bent shape.
fn moment_by_differences(bar: &BowedBar, bow: f64) -> f64 {
    let pieces = 2000_usize;
    let step = bar.length / pieces as f64;
    let stiffness = bar.critical * bar.length * bar.length / (PI * PI);
    let force = bar.axial_with_strike;
    // EI · v″ = −N · (v + v_0) − M_0, with v nothing at both eyes; only the half up to mid-span, which is even.
    let half = pieces / 2;
    let first = |index: usize| {
        let x = index as f64 * step;
        bow * (PI * x / bar.length).sin() * force + bar.strike * x / 2.0
    };
    let diagonal = 2.0 * stiffness / (step * step) - force;
    let beside = -stiffness / (step * step);
    let mut carried: Vec<(f64, f64)> = vec![(0.0, 0.0)];
    for index in 1..=half {
        let (upper, below) = carried[index - 1];
        // At mid-span both neighbors are the same.
        let own = if index == half { 2.0 * beside } else { beside };
        let pivot = diagonal - own * upper;
        carried.push((beside / pivot, (first(index) - own * below) / pivot));
    }
    first(half) + force * carried[half].1
}

#[test]
fn the_moment_of_a_hit_on_a_bow_is_that_of_the_bent_shape() {
    let mut dice = Dice(11);
    for _ in 0..60 {
        let bar = random_bar(&mut dice);
        let bow = bar.length * dice.next(1000) as f64 * 1e-5;
        // The bow that was measured lies on top of the one that no straight bar is free of.
        let moment = moment_by_differences(&bar, bow + bar.straightness * bar.length);
        let stress = bar.axial_with_strike / bar.area + moment / bar.modulus;
        let told = bar.with_bow(bow, &mut Sheet::silent());
        near(told.hit, stress / bar.yield_compression, 2e-5);
        // The hit to first yield brings it exactly there.
        let [straight, bowed] = told.yields_at.expect("a hit");
        assert!(bowed <= straight);
        let at_yield = BowedBar { strike: bowed, ..bar };
        if bowed > 0.0 {
            near(at_yield.with_bow(bow, &mut Sheet::silent()).hit, 1.0, 1e-9);
        }
    }
}

/// Without any bow it is the link that the checks judge; with the one of a bar sold as straight it bends a little more.
#[test]
fn without_a_bow_it_is_the_link_of_the_checks() {
    for document in [tube(), link(Role::TieRod, "1026-dom", [4000.0, 48.0, 1.75, 0.25])] {
        let answer = answer(&document);
        let bar = bowed_bar(&document, 0).expect("a bar");
        let none = bar.with_bow(0.0, &mut Sheet::silent());
        near(none.column, find(&answer, "buckling").utilization.expect("a number"), 1e-12);
        near(none.left, 1.0, 1e-12);
        let ideal = BowedBar { straightness: 0.0, ..bar }.with_bow(0.0, &mut Sheet::silent());
        let by_checks = find(&answer, "bar-bending").utilization.expect("a number");
        near(ideal.hit, by_checks, 1e-9);
        assert!(none.hit > by_checks && none.hit < by_checks * 1.1, "{} {by_checks}", none.hit);
        assert!(bar.ductile);
    }
    let solid = link(Role::Lower, "7075-t6", [4000.0, 36.0, 2.0, 0.0]);
    assert!(!bowed_bar(&solid, 0).expect("a bar").ductile);
}

/// One total for both: as a column and in bending it is the bar that lies off by what was measured and by a 500th.
#[test]
fn column_and_bending_take_the_same_total() {
    let mut dice = Dice(5);
    for _ in 0..100 {
        let bar = random_bar(&mut dice);
        let measured = bar.length * dice.next(1000) as f64 * 1e-5;
        let total = measured + bar.length / 500.0;
        let told = bar.with_bow(measured, &mut Sheet::silent());
        near(told.bow, total, 1e-12);
        near(told.buckles_at, bar.buckles_at(total, &mut Sheet::silent()), 1e-12);
        near(told.force, bar.under_force(total, &mut Sheet::silent()), 1e-12);
        // All of it measured on an ideal bar is the same.
        let ideal = BowedBar { straightness: 0.0, ..bar }.with_bow(total, &mut Sheet::silent());
        near(told.hit, ideal.hit, 1e-12);
        near(told.hinge, ideal.hinge, 1e-12);
        assert!(told.hit > bar.with_bow(0.0, &mut Sheet::silent()).hit || measured == 0.0);
    }
    let mut sheet = Sheet::recording();
    random_bar(&mut Dice(9)).with_bow(inch(0.1), &mut sheet);
    let told = format!("{:?}", sheet.lines);
    assert!(told.contains("column and bending take the same total"), "the formula says so");
}

/// What is left falls with every bit of bow, and what is used grows.
#[test]
fn more_bow_always_leaves_less() {
    let mut dice = Dice(3);
    for _ in 0..100 {
        let bar = BowedBar { straight: f64::MAX, ..random_bar(&mut dice) };
        let mut before = bar.with_bow(0.0, &mut Sheet::silent());
        for step in 1..20 {
            let now = bar.with_bow(bar.length * f64::from(step) * 0.001, &mut Sheet::silent());
            assert!(now.buckles_at < before.buckles_at && now.left < before.left);
            assert!(now.column > before.column && now.force > before.force);
            assert!(now.hinge > before.hinge && now.hit > before.hit);
            before = now;
        }
    }
}
