//! Axle: link forces from rigid-body solves.

use super::Tolerance::Absolute;
use super::rows;
use crate::engine::formulas::axle::{LINK_ARM, LOWER_PAIR, PER_LINK, SLOPED_LOWER_PAIR, THREE_LINK_LOWER, UPPER_PAIR};
use crate::quantity::{deg, inch, lbf};

const SPACE: &str = "numpy 2.4.6, six equations in three dimensions";

/// Push of the ground, upper and lower mount height of every row.
const AXLE: [f64; 3] = [lbf(3000.0), inch(25.5), inch(16.5)];

fn three_link(offset: f64) -> f64 {
    THREE_LINK_LOWER.value(&[LOWER_PAIR.value(&AXLE), UPPER_PAIR.value(&AXLE), inch(offset), inch(40.0)])
}

rows! {
    "Axle" {
        "upper-pair", "3,000 lbf at the ground, mounts 16.5 and 25.5 in high: pull in the uppers together" = 5500.0 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => UPPER_PAIR.value(&AXLE);
        "upper-at-30", "The same: each of two uppers at 30°" = 3175.42648 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => PER_LINK.value(&[UPPER_PAIR.value(&AXLE), 1.0, 2.0, deg(30.0)]);
        "sloped-lowers", "The same, lowers sloping 4°, uppers 2° and mounted 3 in behind: lowers together, push negative" = -8457.3168 "lbf" in lbf(1.0), Absolute(0.01); "numpy 2.4.6, two equations", Computed
            => {
                let upper = LINK_ARM.value(&[inch(25.5), inch(-3.0), deg(2.0)]);
                let lower = LINK_ARM.value(&[inch(16.5), 0.0, deg(4.0)]);
                -SLOPED_LOWER_PAIR.value(&[lbf(3000.0), upper, deg(2.0), lower, deg(4.0)])
            };
        "three-link-near", "Three links, upper 6 in to one side: lower on that side, push negative" = -5075.0 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => -three_link(6.0);
        "three-link-far", "Three links, upper 6 in to one side: other lower, push negative" = -3425.0 "lbf" in lbf(1.0), Absolute(0.01); SPACE, Computed
            => -three_link(-6.0);
    }
}
