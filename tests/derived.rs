//! Formulas whose document nobody here has read, each derived once more from what it rests on: energy,
//! the thread's profile, or the bent shape of the link integrated step by step.

use std::f64::consts::PI;

use linkwright::engine::formulas::{beams, beyond, columns, impact, stepped, threads as formulas};
use linkwright::engine::tables::threads::{self, Limit};
use linkwright::quantity::{in2, in4, inch, ksi, lbf};

#[track_caller]
fn close(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance * expected.abs(), "{what}: {found}, derived {expected}");
}

#[test]
fn a_falling_weight_gives_up_its_energy_to_the_spring() {
    for (weight, drop, give) in
        [(2000.0, 0.5, 1.65e-4), (1500.0, 0.0, 2.0e-4), (4100.0, 1.3, 4.4e-4), (500.0, 12.0, 1e-3)]
    {
        let (w, h, c) = (lbf(weight), inch(drop), inch(give) / lbf(1.0));
        let force = impact::DROP_FORCE.value(&[w, h, w * c]);
        // The weight falls by the drop and by what the spring gives; the spring holds half force times give.
        close("energy", w * (h + force * c), force * force * c / 2.0, 1e-12);
        close("factor", impact::IMPACT_FACTOR.value(&[h, w * c]), force / w, 1e-12);
        assert!((beyond::DROP_FOR_FORCE.value(&[w * c, force, w]) - h).abs() < 1e-12);
    }
}

/// The part of one pitch, by counting, on which a ridge reaches across a cylinder. A ridge is sharp, its
/// flanks stand 30° to the radius, and at the pitch diameter it is half a pitch wide.
fn ridge(pitch: f64, reaches: impl Fn(f64) -> bool) -> f64 {
    const STEPS: u32 = 100_000;
    let inside = (0..STEPS).filter(|step| {
        let along = (f64::from(*step) + 0.5) / f64::from(STEPS) * pitch - pitch / 2.0;
        reaches(3.0_f64.sqrt() * (pitch / 4.0 - along.abs()))
    });
    inside.count() as f64 / f64::from(STEPS)
}

#[test]
fn sheared_areas_are_those_of_the_thread_form() {
    for thread in threads::ALL {
        let limits = thread.limits();
        let (minor, screw) = (limits.get(Limit::InternalMinorMax), limits.get(Limit::ExternalPitchMin));
        // The screw's ridges are cut off at the hole's minor diameter.
        let cut = ridge(thread.pitch, |out| screw / 2.0 + out > minor / 2.0);
        close(thread.id, thread.external_shear_area(), PI * minor * cut, 1e-4);
        let (major, hole) = (limits.get(Limit::ExternalMajorMin), limits.get(Limit::InternalPitchMax));
        // The hole's ridges are cut off at the screw's major diameter.
        let cut = ridge(thread.pitch, |inward| hole / 2.0 - inward < major / 2.0);
        close(thread.id, thread.internal_shear_area(), PI * major * cut, 1e-4);
    }
}

#[test]
fn minor_diameters_and_stress_areas_follow_from_the_basic_triangle() {
    for thread in threads::ALL {
        let height = thread.pitch * 3.0_f64.sqrt() / 2.0;
        let basic_minor = thread.major - 2.0 * 5.0 / 8.0 * height;
        let metric = formulas::EXTERNAL_MINOR_METRIC.value(&[thread.major, thread.pitch]);
        // The standards print their factors to eight decimals, not all of them right.
        close(thread.id, metric, basic_minor - height / 6.0, 2e-7);
        let inch = formulas::EXTERNAL_MINOR_INCH.value(&[thread.major, thread.pitch]);
        close(thread.id, inch, basic_minor - height / 8.0, 1e-8);
        // Midway between pitch diameter and minor diameter.
        let mean = (thread.basic_pitch_diameter() + metric) / 2.0;
        let area = formulas::TENSILE_STRESS_AREA_METRIC.value(&[thread.major, thread.pitch]);
        close(thread.id, area, PI / 4.0 * mean * mean, 1e-5);
    }
}

#[test]
fn in_a_softer_bar_the_bars_thread_must_bear_what_the_screws_would() {
    for thread in threads::ALL {
        let (screw, bar) = (ksi(150.0), ksi(77.0));
        let (area, outer, inner) =
            (thread.tensile_stress_area(), thread.external_shear_area(), thread.internal_shear_area());
        let like = formulas::EQUAL_STRENGTH_ENGAGEMENT.value(&[area, outer]);
        let ratio = formulas::STRENGTH_RATIO.value(&[outer, screw, inner, bar]);
        let unlike = formulas::UNLIKE_METALS_ENGAGEMENT.value(&[ratio, like]);
        assert!(ratio > 1.0, "{}", thread.id);
        let strip = |area: f64, engaged: f64, strength: f64| formulas::STRIP_LOAD.value(&[area, engaged, strength]);
        close(thread.id, strip(inner, unlike, bar), strip(outer, like, screw), 1e-12);
        // Where the weaker thread strips just as the shank breaks.
        let (shear_shank, shear_bar) = (ksi(90.0), ksi(42.0));
        let full = formulas::FULL_STRENGTH_ENGAGEMENT.value(&[area, screw, outer, shear_shank, inner, shear_bar]);
        let weaker = strip(outer, full, shear_shank).min(strip(inner, full, shear_bar));
        close(thread.id, weaker, area * screw, 1e-12);
    }
}

/// A piece of a link: length and stiffness in bending, E·I.
#[derive(Clone, Copy)]
struct Piece {
    length: f64,
    stiffness: f64,
}

/// Deflection along a link on two supports, in equal steps over each piece, by Runge and Kutta: the bending
/// moment is `moment(x)` and the push times the deflection. The slope at the first eye is found by shooting.
fn bent(pieces: &[Piece], push: f64, moment: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
    const STEPS: u32 = 400;
    let run = |slope: f64, loaded: f64| {
        let (mut x, mut y, mut g) = (0.0, 0.0, slope);
        let mut points = vec![(x, y)];
        for piece in pieces {
            let h = piece.length / f64::from(STEPS);
            // Steps end where pieces do, so a moment's kinks lie between steps.
            let turn = |x: f64, y: f64| -(loaded * moment(x) + push * y) / piece.stiffness;
            for _ in 0..STEPS {
                let (k1, l1) = (g, turn(x, y));
                let (k2, l2) = (g + h / 2.0 * l1, turn(x + h / 2.0, y + h / 2.0 * k1));
                let (k3, l3) = (g + h / 2.0 * l2, turn(x + h / 2.0, y + h / 2.0 * k2));
                let (k4, l4) = (g + h * l3, turn(x + h, y + h * k3));
                y += h / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
                g += h / 6.0 * (l1 + 2.0 * l2 + 2.0 * l3 + l4);
                x += h;
                points.push((x, y));
            }
        }
        points
    };
    let end = |points: &[(f64, f64)]| points.last().map_or(f64::NAN, |(_, y)| *y);
    let (loaded, free) = (run(0.0, 1.0), run(1.0, 0.0));
    let slope = -end(&loaded) / end(&free);
    loaded.iter().zip(&free).map(|((x, a), (_, b))| (*x, a + slope * b)).collect()
}

/// The deflection at a place that is a step's end.
fn at(points: &[(f64, f64)], x: f64) -> f64 {
    points.iter().min_by(|a, b| (a.0 - x).abs().total_cmp(&(b.0 - x).abs())).map_or(f64::NAN, |(_, y)| *y)
}

/// Moment of a load at `a` on a beam of length `l`.
fn simple(load: f64, a: f64, l: f64) -> impl Fn(f64) -> f64 {
    move |x: f64| load * if x < a { (l - a) / l * x } else { a / l * (l - x) }
}

#[test]
fn beams_bend_as_their_shape_integrates() {
    let (e, i, l, q) = (ksi(10_300.0), in4(PI / 4.0), inch(40.0), lbf(2000.0));
    for share in [0.25, 0.3, 0.5] {
        let a = share * l;
        let pieces = [Piece { length: a, stiffness: e * i }, Piece { length: l - a, stiffness: e * i }];
        let derived = at(&bent(&pieces, 0.0, simple(q, a, l)), a);
        close("under the load", beams::DEFLECTION_UNDER_LOAD.value(&[q, a, l - a, e, i, l]), derived, 1e-9);
        // The same by the work of a unit load, piece by piece.
        let unit = a * (l - a) / l;
        let give = stepped::PIECE_DEFLECTION.value(&[0.0, unit, a, e, i])
            + stepped::PIECE_DEFLECTION.value(&[unit, 0.0, l - a, e, i]);
        close("work of a unit load", q * give, derived, 1e-9);
        if share > 0.49 {
            close("stiffness at the middle", beams::MID_STIFFNESS.value(&[e, i, l]), q / derived, 1e-9);
        }
    }
}

#[test]
fn a_pushed_link_bends_as_its_shape_integrates() {
    let (e, i, l, q) = (ksi(10_300.0), in4(PI / 4.0), inch(40.0), lbf(2000.0));
    let euler = columns::EULER_LOAD.value(&[e, i, l]);
    for (share, of_euler) in [(0.25, 0.2), (0.3, 0.5), (0.5, 0.05), (0.5, 0.8)] {
        let (a, push) = (share * l, of_euler * euler);
        let pieces = [Piece { length: a, stiffness: e * i }, Piece { length: l - a, stiffness: e * i }];
        let points = bent(&pieces, push, simple(q, a, l));
        let wave = columns::WAVE_NUMBER.value(&[push, e, i]);
        for x in [a / 2.0, a] {
            let derived = simple(q, a, l)(x) + push * at(&points, x);
            close("moment", columns::BEAM_COLUMN_MOMENT.value(&[q, wave, l - a, x, l]), derived, 1e-8);
        }
        let half = columns::HALF_PHASE.value(&[push, euler]);
        close("half phase", half, wave * l / 2.0, 1e-12);
        if share > 0.49 {
            let moment = q * l / 4.0 + push * at(&points, a);
            close("moment grows", columns::MID_MOMENT_AMPLIFICATION.value(&[half]), moment / (q * l / 4.0), 1e-8);
            let still = q * l.powi(3) / (48.0 * e * i);
            close("bend grows", columns::MID_DEFLECTION_AMPLIFICATION.value(&[half]), at(&points, a) / still, 1e-8);
        }
    }
}

#[test]
fn a_push_off_the_center_line_stresses_as_the_shape_integrates() {
    let (e, area, i, l) = (ksi(10_300.0), in2(PI), in4(PI / 4.0), inch(40.0));
    let (push, offset) = (lbf(30_000.0), inch(0.1));
    let half = Piece { length: l / 2.0, stiffness: e * i };
    let middle = at(&bent(&[half, half], push, |_| push * offset), l / 2.0);
    let stress = push / area + push * (offset + middle) * inch(1.0) / i;
    let secant = columns::SECANT_STRESS.value(&[push, area, offset, inch(1.0), inch(0.5), l, e]);
    close("secant", secant, stress, 1e-8);
}

#[test]
fn a_bowed_link_yields_at_the_load_of_the_curve() {
    let (area, i, yielding) = (in2(PI), in4(PI / 4.0), ksi(64.0));
    for length in [24.0, 40.0, 60.0] {
        let (e, l) = (ksi(10_500.0), inch(length));
        let bow = l / 500.0;
        let euler = columns::EULER_LOAD.value(&[e, i, l]) / area;
        let crooked = columns::CROOKEDNESS.value(&[bow, inch(1.0), inch(0.5)]);
        let half_sum = columns::PERRY_HALF_SUM.value(&[yielding, crooked, euler]);
        let push = columns::PERRY_ROBERTSON_LOAD.value(&[area, half_sum, yielding, euler]);
        let half = Piece { length: l / 2.0, stiffness: e * i };
        let middle = at(&bent(&[half, half], push, |x| push * bow * (PI * x / l).sin()), l / 2.0);
        close("stress at the curve's load", push / area + push * (bow + middle) * inch(1.0) / i, yielding, 1e-8);
    }
}

#[test]
fn a_stepped_link_bends_and_buckles_as_its_shape_integrates() {
    let end = Piece { length: inch(1.5), stiffness: ksi(29_000.0) * in4(0.032_320_897_262) };
    let half = Piece { length: inch(16.5), stiffness: ksi(10_300.0) * in4(0.460_385_983_964) };
    let pieces = [end, half, half, end];
    let (l, a, q, push) = (inch(36.0), inch(18.0), lbf(2000.0), lbf(15_000.0));
    let points = bent(&pieces, push, simple(q, a, l));
    let derived = q * l / 4.0 + push * at(&points, a);
    let carried = |pieces: &[Piece]| {
        pieces.iter().fold((0.0, 1.0), |(u, g), piece| {
            let wave = (push / piece.stiffness).sqrt();
            let next = stepped::PIECE_LEVER.value(&[u, g, wave, piece.length]);
            (next, stepped::PIECE_SLOPE.value(&[u, g, wave, piece.length]))
        })
    };
    let (near, whole) = (carried(&pieces[..2]).0, carried(&pieces).0);
    close("moment", stepped::STEPPED_MOMENT.value(&[q, near, near, whole]), derived, 1e-7);

    // It buckles where a bend needs no load: below, a slope at one eye stays on its side; above, it crosses over.
    let arrives = |push: f64| {
        let mut state = (0.0, 1.0);
        for piece in &pieces {
            const STEPS: u32 = 2000;
            let h = piece.length / f64::from(STEPS);
            let k = push / piece.stiffness;
            for _ in 0..STEPS {
                let (y, g) = state;
                let step = |y: f64, g: f64| (g, -k * y);
                let (k1, l1) = step(y, g);
                let (k2, l2) = step(y + h / 2.0 * k1, g + h / 2.0 * l1);
                let (k3, l3) = step(y + h / 2.0 * k2, g + h / 2.0 * l2);
                let (k4, l4) = step(y + h * k3, g + h * l3);
                state = (y + h / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4), g + h / 6.0 * (l1 + 2.0 * l2 + 2.0 * l3 + l4));
            }
        }
        state.0
    };
    let (mut low, mut high) = (lbf(1_000.0), lbf(60_000.0));
    assert!(arrives(low) > 0.0 && arrives(high) < 0.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if arrives(middle) > 0.0 { low = middle } else { high = middle }
    }
    let balance = |push: f64| {
        columns::STEPPED_COLUMN_BALANCE.value(&[push, 1.0, end.stiffness, end.length, 1.0, half.stiffness, half.length])
    };
    assert!(balance(low * (1.0 - 1e-6)) < 0.0 && balance(low * (1.0 + 1e-6)) > 0.0, "{}", balance(low));
}
