//! Impact: falling and moving weights.

use super::Tolerance::{Absolute, Exact, Relative};
use super::{LBF_PER_INCH, rows};
use crate::engine::formulas::beams::{AXIAL_STIFFNESS, AXIAL_STRESS, MID_STIFFNESS};
use crate::engine::formulas::impact::{
    DROP_FORCE, IMPACT_FACTOR, MOVING_MASS_FORCE, SERIES_STIFFNESS, STATIC_DEFLECTION,
};
use crate::engine::formulas::sections::{RING_AREA, RING_SECOND_MOMENT};
use crate::quantity::{KSI, inch, ksi, lbf, lbf_in};

const ROUND: [f64; 2] = [inch(2.0), 0.0];

/// Steel bar 2.0 in round, standing on end.
fn on_end(length: f64) -> f64 {
    AXIAL_STIFFNESS.value(&[ksi(30_000.0), RING_AREA.value(&ROUND), inch(length)])
}

rows! {
    "Impact" {
        "falling-weight-stress", "500 lb falls 1 in on a 2 in steel bar on end, 10 in long: stress" = 31061.5 "psi" in KSI / 1000.0, Absolute(0.5); "Wentzell, Machine Design, Ex. 7.1, p. 137", Read
            => {
                let rest = STATIC_DEFLECTION.value(&[lbf(500.0), 1.0 / on_end(10.0), 0.0]);
                AXIAL_STRESS.value(&[DROP_FORCE.value(&[lbf(500.0), inch(1.0), rest]), RING_AREA.value(&ROUND)])
            };
        "moving-weight-deflection", "2,000 lb at 5 miles an hour against a 2 in steel bar on end, 36 in long: shortening" = 0.1238 "in" in inch(1.0), Absolute(0.0001); "Wentzell, Machine Design, Ex. 7.2, p. 139", Read
            => {
                // The textbook takes 386 in/s² for gravity; 5 miles an hour is 88 in/s.
                let energy = lbf_in(2000.0 / 386.0 * 88.0 * 88.0 / 2.0);
                STATIC_DEFLECTION.value(&[MOVING_MASS_FORCE.value(&[energy, on_end(36.0)]), 1.0 / on_end(36.0), 0.0])
            };
        "falling-weight-shortening", "1 lb falls 12 in on a spring of 0.5 lb/in: shortening" = 9.21 "in" in inch(1.0), Absolute(0.005); "Gere and Goodno 7e, Prob. 2.8-5", Read
            => {
                let spring = 0.5 * LBF_PER_INCH;
                let rest = STATIC_DEFLECTION.value(&[lbf(1.0), 1.0 / spring, 0.0]);
                STATIC_DEFLECTION.value(&[DROP_FORCE.value(&[lbf(1.0), inch(12.0), rest]), 1.0 / spring, 0.0])
            };
        "suddenly-applied", "Weight set down all at once: times its own weight" = 2.0 "" in 1.0, Exact; "Timoshenko; Shigley", Computed
            => IMPACT_FACTOR.value(&[0.0, inch(0.3)]);
        "moving-weight-force", "1,500 lb at 3 miles an hour on a 2.0 in bar, 40 in long, held by 3,000 lbf/in (worked back from the result): force" = 4662.87175 "lbf" in lbf(1.0), Relative(1e-4); "energy balance, mpmath 1.4.1", Computed
            => {
                let bar = MID_STIFFNESS.value(&[ksi(10_300.0), RING_SECOND_MOMENT.value(&ROUND), inch(40.0)]);
                MOVING_MASS_FORCE.value(&[lbf_in(5415.525), SERIES_STIFFNESS.value(&[bar, 3000.0 * LBF_PER_INCH])])
            };
    }
}
