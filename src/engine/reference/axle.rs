//! Axle: link forces from rigid-body solves.

use super::Tolerance::{Absolute, Relative};
use super::rows;
use crate::engine::formulas::axle::{LINK_ARM, LOWER_PAIR, PER_LINK, SLOPED_LOWER_PAIR, THREE_LINK_LOWER, UPPER_PAIR};
use crate::engine::formulas::steering::{RAM_FORCE, SCRUB_TORQUE};
use crate::quantity::{deg, inch, ksi, lbf, mm};

const SPACE: &str = "numpy 2.4.6, six equations in three dimensions";

/// Traction of the ground, upper and lower mount height of every row.
const AXLE: [f64; 3] = [lbf(3000.0), inch(25.5), inch(16.5)];

fn three_link(offset: f64) -> f64 {
    THREE_LINK_LOWER.value(&[LOWER_PAIR.value(&AXLE), UPPER_PAIR.value(&AXLE), inch(offset), inch(40.0)])
}

rows! {
    "Axle" {
        "upper-pair", "3,000 lbf at the ground, mounts 16.5 and 25.5 in high: tension in the uppers together" = 5500.0 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => UPPER_PAIR.value(&AXLE);
        "upper-at-30", "The same: each of two uppers at 30°" = 3175.42648 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => PER_LINK.value(&[UPPER_PAIR.value(&AXLE), 1.0, 2.0, deg(30.0)]);
        "sloped-lowers", "The same, lowers sloping 4°, uppers 2° and mounted 3 in behind: lowers together, compression negative" = -8457.3168 "lbf" in lbf(1.0), Absolute(0.01); "numpy 2.4.6, two equations", Computed
            => {
                let upper = LINK_ARM.value(&[inch(25.5), inch(-3.0), deg(2.0)]);
                let lower = LINK_ARM.value(&[inch(16.5), 0.0, deg(4.0)]);
                -SLOPED_LOWER_PAIR.value(&[lbf(3000.0), upper, deg(2.0), lower, deg(4.0)])
            };
        "three-link-near", "Three links, upper 6 in to one side: lower on that side, compression negative" = -5075.0 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => -three_link(6.0);
        "three-link-far", "Three links, upper 6 in to one side: other lower, compression negative" = -3425.0 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => -three_link(-6.0);
    }
    "Steering" {
        "scrub-radius", "Tire 25 mm off its steering axis, print of 250 mm: radius it rubs at" = 87.0 "mm" in mm(1.0), Absolute(0.5); "Barton and Fieldhouse, p. 82, Ex. E2.1", Read
            => SCRUB_TORQUE.value(&[1.0, 1.0, mm(25.0), mm(250.0)]);
        "scrub-torque", "The same under 11.8 kN with friction 0.58: twist to turn the wheel" = 594.0 "N·m" in 1.0, Relative(0.005); "Barton and Fieldhouse, Ex. E2.1, which goes on with the rounded radius", Read
            => SCRUB_TORQUE.value(&[0.58, 11_800.0, mm(25.0), mm(250.0)]);
        "cylinder", "Cylinder of 2 in at 1,500 psi: force" = 4712.38898 "lbf" in lbf(1.0), Relative(1e-8); "hand arithmetic", Computed
            => RAM_FORCE.value(&[ksi(1.5), inch(2.0)]);
    }
}
