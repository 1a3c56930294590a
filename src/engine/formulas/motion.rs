//! How far an axle rolls, and what that asks of the balls of its links.

use crate::engine::formula::{formula, listed};
use crate::engine::math::arcsine;
use crate::quantity::{deg, inch};

formula! {
    /// How far the axle rolls when one wheel goes up and the other goes down.
    AXLE_ROLL: "φ" Angle = "asin(2 · t / T)";
    given travel "t" Length "how far each wheel goes from ride height", track "T" Length "track width";
    code arcsine(2.0 * travel / track);
    holds "2 · t ≤ T" => 2.0 * travel <= track;
    source GEOMETRY, "right triangle over the track", Computed;
    example [inch(5.0), inch(65.0)] gives "8.8499" of deg(1.0), "own arithmetic";
}

formula! {
    /// Twist that each ball of a link takes.
    TWIST_PER_BALL: "φ_b" Angle = "φ / 2";
    given roll "φ" Angle "how far the axle rolls, which twists a link along the rig by as much";
    code roll / 2.0;
    source OURS, "both balls turn alike until one stops", Assumption;
    example [deg(8.85)] gives "4.425" of deg(1.0), "own arithmetic";
}

formula! {
    /// Utilization of a rod end's misalignment.
    TILT_SHARE: "U" Percent = "φ_b / α";
    given twist "φ_b" Angle "twist that the ball takes", tilt "α" Angle "how far the ball may tilt each way";
    code twist / tilt;
    holds "α > 0" => tilt > 0.0;
    source GEOMETRY, "definition; 100 % is the limit", Computed;
    example [deg(4.5), deg(12.0)] gives "37.5" of 0.01, "own arithmetic";
}

listed! {AXLE_ROLL, TWIST_PER_BALL, TILT_SHARE}
