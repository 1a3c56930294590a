//! What pushes on links that steer, and on those that hold an axle sideways or tie a sway bar down.

use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{inch, ksi, lbf, lbf_in, mm};

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
    /// Force when a wheel runs against something that does not move.
    OBSTACLE_FORCE: "N" Force = "k · μ · W_w · d / r";
    given shock "k" Ratio "shock factor for this use", grip "μ" Ratio "grip of tire on rock", weight "W_w" Weight "weight on the wheel", offset "d" Length "from the steering axis to the middle of the tire, on the ground", arm "r" Length "steering arm";
    code shock * grip * weight * offset / arm;
    source STATICS, "lever; the push is taken as what grip allows, times shock", Assumption;
    example [1.5, 1.0, lbf(1300.0), inch(4.0), inch(6.5)] gives "1200" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Push of a hydraulic cylinder.
    CYLINDER_FORCE: "N" Force = "p · π / 4 · (D² − d²)";
    given pressure "p" Pressure "greatest pressure", bore "D" FineLength "bore", rod "d" FineLength "rod, where it leaves at both ends";
    code pressure * PI / 4.0 * (bore * bore - rod * rod);
    holds "D > d" => bore > rod;
    source STATICS, "pressure times area", Computed;
    example [ksi(1.5), inch(2.0), 0.0] gives "4712.389" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force of an axle that goes sideways until its tires slide.
    SIDE_LOAD: "N" Force = "k · μ · s · W";
    given shock "k" Ratio "shock factor for this use", grip "μ" Ratio "grip of tire on rock", share "s" Percent "share of the rig's weight on that axle", weight "W" Weight "weight of the rig";
    code shock * grip * share * weight;
    source STATICS, "both tires slide", Computed;
    example [1.25, 1.0, 0.6, lbf(4000.0)] gives "3000" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force of a sway bar at full travel.
    SWAY_FORCE: "N" Force = "k · q · t / t_1";
    given shock "k" Ratio "shock factor for this use", rate "q" Force "force for one unit of travel", travel "t" Length "travel of the bar's end", unit "t_1" Length "that unit";
    code shock * rate * travel / unit;
    source STATICS, "a spring", Computed;
    example [1.0, lbf(200.0), inch(5.0), inch(1.0)] gives "1000" of lbf(1.0), "own arithmetic";
}

listed! {WHEEL_WEIGHT, SCRUB_TORQUE, SCRUB_FORCE, OBSTACLE_FORCE, CYLINDER_FORCE, SIDE_LOAD, SWAY_FORCE}
