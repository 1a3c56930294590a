//! What pushes on links that steer, and on those that hold an axle sideways or tie a sway bar down.

use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::engine::math::cosine;
use crate::quantity::{INCH, deg, inch, ksi, lbf, lbf_in, mm};

formula! {
    /// Weight that stands on one wheel.
    WHEEL_WEIGHT: "W_w" Weight = "s · W / 2";
    given share "s" Percent "share of the rig's weight on that axle", weight "W" Weight "weight of the rig";
    code share * weight / 2.0;
    source STATICS, "both wheels of an axle bear alike", Computed;
    example [0.6, lbf(4000.0)] gives "1200" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Twist it takes to turn a wheel on the spot.
    SCRUB_TORQUE: "M" Moment = "μ · W_w · √(d² + (a / 3)²)";
    given grip "μ" Ratio "grip of tire on rock", weight "W_w" Weight "weight on the wheel", offset "d" Length "from the steering axis to the middle of the tire, on the ground", patch "a" Length "across the tire's print";
    code grip * weight * (offset * offset + (patch / 3.0) * (patch / 3.0)).sqrt();
    source STATICS, "the print rubs at a third of its width around the steering axis; printed so in a textbook example", Copied;
    example [0.58, 11_800.0, mm(25.0), mm(250.0)] gives "595.4" of 1.0, "data of Barton and Fieldhouse E2.1, which prints 594 N·m; own arithmetic";
}

formula! {
    /// Force of so many wheels turned on the spot.
    SCRUB_FORCE: "N" Force = "n · M / r";
    given wheels "n" Count "wheels that this link turns", torque "M" Moment "twist that a wheel takes", arm "r" Length "steering arm";
    code wheels * torque / arm;
    source STATICS, "lever", Computed;
    example [1.0, lbf_in(6500.0), inch(6.5)] gives "1000" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force when a wheel runs against something that does not move and the other three push the rig on.
    OBSTACLE_FORCE: "N" Force = "k · μ · (W − W_w) · d / r";
    given shock "k" Ratio "shock factor for this use", grip "μ" Ratio "grip of tire on rock", rig "W" Weight "weight of the rig", wheel "W_w" Weight "weight on the wheel that is stopped", offset "d" Length "from the steering axis to the middle of the tire, on the ground", arm "r" Length "steering arm";
    code shock * grip * (rig - wheel) * offset / arm;
    holds "W ≥ W_w" => rig >= wheel;
    source STATICS, "lever; the other wheels push with what their grip allows, times shock", Assumption;
    example [1.5, 1.0, lbf(5000.0), lbf(1500.0), inch(4.0), inch(6.5)] gives "3230.8" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force of a steering box at the end of its pitman arm.
    BOX_FORCE: "N" Force = "T / l";
    given torque "T" Moment "greatest output torque", arm "l" Length "pitman arm";
    code torque / arm;
    source PRACTICE, "power steering box of 20,000 lbf·in on a 6 in arm", Practice;
    example [lbf_in(20000.0), inch(6.0)] gives "3333.3" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force of a hydraulic ram, pushing with its full bore.
    RAM_FORCE: "N" Force = "p · π / 4 · D²";
    given pressure "p" Pressure "greatest pressure", bore "D" FineLength "bore";
    code pressure * PI / 4.0 * bore * bore;
    source STATICS, "pressure times area", Computed;
    example [ksi(1.5), inch(2.0)] gives "4712.389" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force of an axle that goes sideways until its tires slide.
    SIDE_LOAD: "N" Force = "k · μ · s · W / cos(β)";
    given shock "k" Ratio "shock factor for this use", grip "μ" Ratio "grip of tire on rock", share "s" Percent "share of the rig's weight on that axle", weight "W" Weight "weight of the rig", slope "β" Angle "slope of the bar, seen from the front";
    code shock * grip * share * weight / cosine(slope);
    holds "β < π / 2" => slope < PI / 2.0;
    source STATICS, "both tires slide; the bar holds the part along it", Computed;
    example [1.25, 1.0, 0.6, lbf(4000.0), deg(20.0)] gives "3192.5" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force of a sway bar at full travel, one wheel up and the other down.
    // The bar twists by the travel of both ends over the arm, and its force goes with the twist. Both ends travel by t
    // here. Had one end alone traveled by t when the rate was measured, the bar had twisted half as far: m is 2. Had
    // both traveled by t in opposite directions, as far: m is 1.
    SWAY_FORCE: "N" Force = "k · m · R · t";
    given shock "k" Ratio "shock factor for this use", arms "m" Count "ends that travel, for each that traveled when the rate was measured", rate "R" Stiffness "rate of the bar: force at one end over the travel of that end", travel "t" Length "travel of each end";
    code shock * arms * rate * travel;
    source STATICS, "a spring that is twisted from both ends", Computed;
    example [1.0, 2.0, lbf(200.0) / INCH, inch(5.0)] gives "2000" of lbf(1.0), "rate measured with the other end held; own arithmetic";
}

listed! {WHEEL_WEIGHT, SCRUB_TORQUE, SCRUB_FORCE, OBSTACLE_FORCE, BOX_FORCE, RAM_FORCE, SIDE_LOAD, SWAY_FORCE}
