//! Columns: straight, crooked, eccentric and stepped.

use super::Tolerance::{Absolute, Relative};
use super::{MPMATH, root, rows};
use crate::engine::formulas::columns::{
    CROOKEDNESS, EULER_DIAMETER, EULER_LOAD, JOHNSON_LOAD, PERRY_HALF_SUM, PERRY_ROBERTSON_LOAD, SECANT_STRESS,
    SLENDERNESS, STEPPED_COLUMN_BALANCE, TRANSITION_SLENDERNESS,
};
use crate::engine::formulas::sections::{RADIUS_OF_GYRATION, RING_AREA, RING_SECOND_MOMENT};
use crate::engine::stepped::{Step, critical_load};
use crate::quantity::{inch, ksi, lbf, mm, mpa};

const ROUND: [f64; 2] = [inch(2.0), 0.0];
const LENGTH: f64 = inch(40.0);

fn radius(section: &[f64; 2]) -> f64 {
    RADIUS_OF_GYRATION.value(&[RING_SECOND_MOMENT.value(section), RING_AREA.value(section)])
}

fn secant_load() -> f64 {
    let (area, radius) = (RING_AREA.value(&ROUND), radius(&ROUND));
    root(lbf(1.0), lbf(49_000.0), |compression| {
        SECANT_STRESS.value(&[compression, area, inch(0.1), inch(1.0), radius, LENGTH, ksi(10_300.0)]) - ksi(64.0)
    })
}

fn crooked_load() -> f64 {
    let area = RING_AREA.value(&ROUND);
    let crookedness = CROOKEDNESS.value(&[LENGTH / 500.0, inch(1.0), radius(&ROUND)]);
    let critical = EULER_LOAD.value(&[ksi(10_300.0), RING_SECOND_MOMENT.value(&ROUND), LENGTH]) / area;
    let half_sum = PERRY_HALF_SUM.value(&[ksi(64.0), crookedness, critical]);
    PERRY_ROBERTSON_LOAD.value(&[area, half_sum, ksi(64.0), critical])
}

fn stepped_load() -> f64 {
    let end = RING_SECOND_MOMENT.value(&[inch(0.9008), 0.0]);
    let middle = RING_SECOND_MOMENT.value(&[inch(1.75), 0.0]);
    // Above the critical load of the middle alone the lowest root cannot lie.
    let most = 0.999_999 * EULER_LOAD.value(&[ksi(10_300.0), middle, inch(33.0)]);
    root(lbf(1.0), most, |compression| {
        STEPPED_COLUMN_BALANCE.value(&[compression, ksi(29_000.0), end, inch(1.5), ksi(10_300.0), middle, inch(16.5)])
    })
}

rows! {
    "Columns" {
        "shigley-4-17", "Shigley Ex. 4-17: round strut, 1.5 m, 4 times 22 kN, 207 GPa: diameter" = 37.48 "mm" in mm(1.0), Absolute(0.01); "Shigley 9e, p. 187, Ex. 4-17", Read
            => EULER_DIAMETER.value(&[4.0 * 22_000.0, 1.5, mpa(207_000.0)]);
        "shigley-johnson", "Round 7/8 in, 18 in long, 37.5 ksi, 30,000 ksi: short-column load" = 17714.0 "lbf" in lbf(1.0), Absolute(5.0); "Shigley instructor solution, chapter 4", Read
            => {
                let section = [inch(0.875), 0.0];
                JOHNSON_LOAD.value(&[RING_AREA.value(&section), ksi(37.5), SLENDERNESS.value(&[inch(18.0), radius(&section)]), ksi(30_000.0)])
            };
        "euler-7075", "Bar 2.0 in, 40 in long, 10,500 ksi: critical load" = 50869.6727 "lbf" in lbf(1.0), Relative(1e-5); MPMATH, Computed
            => EULER_LOAD.value(&[ksi(10_500.0), RING_SECOND_MOMENT.value(&ROUND), LENGTH]);
        "transition-7075", "64 ksi, 10,500 ksi: slenderness where the curves meet" = 56.9075034 "" in 1.0, Absolute(0.01); MPMATH, Computed
            => TRANSITION_SLENDERNESS.value(&[ksi(10_500.0), ksi(64.0)]);
        "tube-slenderness", "Tube 2.000 in, wall 0.250 in, 40 in long: slenderness" = 64.0 "" in 1.0, Absolute(0.01); MPMATH, Computed
            => SLENDERNESS.value(&[LENGTH, radius(&[inch(2.0), inch(1.5)])]);
        "secant-7075", "Bar 2.0 in, 40 in long, compression 0.10 in off, 64 ksi: load at first yield" = 43179.2623 "lbf" in lbf(1.0), Relative(1e-4); "secant formula, mpmath 1.4.1 by halving", Computed
            => secant_load();
        "crooked-7075", "Bar 2.0 in, 40 in long, bow of a 500th, 64 ksi: load at first yield" = 45261.7683 "lbf" in lbf(1.0), Relative(1e-4); MPMATH, Computed
            => crooked_load();
        "stepped-column", "Bar 1.75 in with 1.5 in steel shanks of 0.9008 in, 36 in long: critical load" = 35970.1938 "lbf" in lbf(1.0), Relative(1e-4); "mpmath 1.4.1; finite elements with scipy 1.17.1 agree to 1e-7", Computed
            => stepped_load();
        "stepped-column-carried", "The same link, carried from piece to piece: critical load" = 35970.1938 "lbf" in lbf(1.0), Relative(1e-7); "mpmath 1.4.1; finite elements with scipy 1.17.1 agree to 1e-7", Computed
            => {
                let step = |length: f64, modulus: f64, diameter: f64| Step {
                    length: inch(length),
                    modulus: ksi(modulus),
                    second_moment: RING_SECOND_MOMENT.value(&[inch(diameter), 0.0]),
                };
                let shank = step(1.5, 29_000.0, 0.9008);
                critical_load(&[shank, step(33.0, 10_300.0, 1.75), shank])
            };
        "solid-model-buckling", "Steel bar 2.0 in, 40 in long, as a solid model: critical load" = 138399.0 "lbf" in lbf(1.0), Relative(0.02); "CalculiX 2.20 with gmsh 4.8.4", Computed
            => EULER_LOAD.value(&[ksi(29_000.0), RING_SECOND_MOMENT.value(&ROUND), LENGTH]);
    }
}
