//! Making and setting: drilling, tapping, weights, turns.

use super::Tolerance::{Absolute, Exact, Relative};
use super::{MPMATH, rows};
use crate::engine::formulas::lengths::BAR_WEIGHT;
use crate::engine::formulas::machining::{DRILL_POINT, FULL_DIAMETER_DEPTH, TAP_FEED};
use crate::engine::formulas::sections::RING_AREA;
use crate::engine::formulas::threads::{LENGTH_PER_TURN_OPPOSITE_HANDS, LENGTH_PER_TURN_SAME_HAND};
use crate::quantity::{deg, inch, lb_per_in3, lbf, threads_per_inch};

rows! {
    "Machining" {
        "tap-feed", "3/4-16 at 120 turns a minute: advance of the tap in a minute" = 7.5 "in" in inch(1.0), Exact; "worked out by hand", Computed
            => TAP_FEED.value(&[120.0, threads_per_inch(16.0)]);
        "drill-point-135", "Drill point of 135°: length for each unit of diameter" = 0.207106781 "" in 1.0, Absolute(1e-5); MPMATH, Computed
            => DRILL_POINT.value(&[1.0, deg(135.0)]);
        "blind-hole", "3/4-16, 1.500 in of full thread, 5 threads of chamfer, 1 pitch clear: depth" = 1.875 "in" in inch(1.0), Exact; "TM 9-254 chamfer, worked out by hand", Computed
            => FULL_DIAMETER_DEPTH.value(&[inch(1.5), 5.0, threads_per_inch(16.0), 1.0]);
    }
    "Weight" {
        "bar-weight", "Bar 2.0 in, 40 in long, 0.101 lb/in³: weight" = 12.6920343 "lb" in lbf(1.0), Relative(1e-4); MPMATH, Computed
            => BAR_WEIGHT.value(&[lb_per_in3(0.101), RING_AREA.value(&[inch(2.0), 0.0]), inch(40.0)]);
        "tube-weight", "Tube 2.000 in, wall 0.250 in, 40 in long, 0.283 lb/in³: weight" = 15.5587376 "lb" in lbf(1.0), Relative(1e-4); MPMATH, Computed
            => BAR_WEIGHT.value(&[lb_per_in3(0.283), RING_AREA.value(&[inch(2.0), inch(1.5)]), inch(40.0)]);
    }
    "Adjustment" {
        "turn-3-4-16", "3/4-16, right and left hand: change of length for a turn" = 0.125 "in" in inch(1.0), Exact; "worked out by hand", Computed
            => LENGTH_PER_TURN_OPPOSITE_HANDS.value(&[threads_per_inch(16.0), threads_per_inch(16.0)]);
        "turn-like-hands", "3/4-16, both right hand: change of length for a turn" = 0.0 "in" in inch(1.0), Exact; "worked out by hand", Computed
            => LENGTH_PER_TURN_SAME_HAND.value(&[threads_per_inch(16.0), threads_per_inch(16.0)]);
        "turn-1-1-4-12", "1-1/4-12, right and left hand: change of length for a turn" = 0.166666667 "in" in inch(1.0), Absolute(1e-9); "worked out by hand", Computed
            => LENGTH_PER_TURN_OPPOSITE_HANDS.value(&[threads_per_inch(12.0), threads_per_inch(12.0)]);
    }
}
