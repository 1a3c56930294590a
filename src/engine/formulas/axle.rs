//! From the grip of the tires to the force along each link of a solid axle.

use crate::engine::formula::{formula, listed};
use crate::engine::math::{cosine, sine};
use crate::quantity::{deg, inch, lbf};

formula! {
    /// Traction of the ground on one axle.
    TRACTION: "F" Force = "μ · s · W";
    given grip "μ" Ratio "grip of tire on ground", share "s" Percent "share of the rig's weight on this axle", weight "W" Weight "weight of the rig";
    code grip * share * weight;
    source STATICS, "dry friction", Computed;
    example [1.0, 0.6, lbf(5000.0)] gives "3000" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force in all lower links together.
    LOWER_PAIR: "N_L" Force = "F · h_U / (h_U − h_L)";
    given traction "F" Force "traction of the ground on the axle", upper "h_U" Length "height of the upper mounts on the axle", lower "h_L" Length "height of the lower mounts on the axle";
    code traction * upper / (upper - lower);
    holds "h_U > h_L" => upper > lower;
    source STATICS, "solid axle, level links", Computed;
    example [lbf(3000.0), inch(25.5), inch(16.5)] gives "8500" of lbf(1.0), "own arithmetic, independent tool: numpy 2.4.6 rigid-body solve";
}

formula! {
    /// Force in all upper links together.
    UPPER_PAIR: "N_U" Force = "F · h_L / (h_U − h_L)";
    given traction "F" Force "traction of the ground on the axle", upper "h_U" Length "height of the upper mounts on the axle", lower "h_L" Length "height of the lower mounts on the axle";
    code traction * lower / (upper - lower);
    holds "h_U > h_L" => upper > lower;
    source STATICS, "solid axle, level links", Computed;
    example [lbf(3000.0), inch(25.5), inch(16.5)] gives "5500.0" of lbf(1.0), "own arithmetic, independent tool: numpy 2.4.6 rigid-body solve";
}

formula! {
    /// Force in one link of several.
    PER_LINK: "N" Force = "N_p · f / (n · cos(θ))";
    given pair "N_p" Force "force in all of them together", uneven "f" Ratio "how much more than an even share one may take", count "n" Count "links that share it", angle "θ" Angle "angle to straight ahead, seen from above";
    code pair * uneven / (count * cosine(angle));
    holds "n ≥ 1" => count >= 1.0;
    holds "θ < π / 2" => angle < std::f64::consts::PI / 2.0;
    source STATICS, "solid axle", Computed;
    example [lbf(5500.0), 1.0, 2.0, deg(30.0)] gives "3175.42648" of lbf(1.0), "each of two uppers at 30°; own arithmetic, independent tool: numpy 2.4.6 solve in three dimensions";
}

formula! {
    /// Side load in one of several converging upper links that hold the axle sideways, without shock.
    CONVERGING_SIDE: "N_q" Force = "F / (n · sin(θ))";
    given grip "F" Force "grip of the axle's tires", count "n" Count "upper links that share it", angle "θ" Angle "angle to straight ahead, seen from above";
    code grip / (count * sine(angle));
    holds "n ≥ 2" => count >= 2.0;
    holds "θ > 0" => angle > 0.0;
    source STATICS, "one side in compression, the other in tension; the lower links run straight and take none", Computed;
    example [lbf(2460.0), 2.0, deg(30.0)] gives "2460" of lbf(1.0), "4,100 lb, 60 % on the axle; own arithmetic";
}

formula! {
    /// Force in one converging upper link in the worst direction of the grip, with shock.
    CONVERGING_UPPER: "N" Force = "k · √(N_t² + N_q²)";
    given shock "k" Ratio "shock factor for this use", traction "N_t" Force "force from traction alone", side "N_q" Force "force from a side load alone";
    code shock * (traction * traction + side * side).sqrt();
    source STATICS, "drive and side force share one friction circle: the largest of N_t · cos(φ) + N_q · sin(φ)", Computed;
    example [1.5, lbf(2_682.754_250_8), lbf(2460.0)] gives "5459.8" of lbf(1.0), "4,100 lb, driven hard, uppers at 30°, mounts 17 and 26 in high; own arithmetic";
}

formula! {
    /// Bound on the force in one converging upper link: full traction and a full side load at the same moment.
    CONVERGING_BOUND: "N_b" Force = "k · (N_t + N_q)";
    given shock "k" Ratio "shock factor for this use", traction "N_t" Force "force from traction alone", side "N_q" Force "force from a side load alone";
    code shock * (traction + side);
    source STATICS, "sum of both, as if different wheels gave them", Computed;
    example [1.5, lbf(2_682.754_250_8), lbf(2460.0)] gives "7714.1" of lbf(1.0), "the same link; own arithmetic";
}

formula! {
    /// Mount height on other tires, where nothing better is known.
    SCALED_HEIGHT: "h" Length = "h_r · D / D_r";
    given reference "h_r" Length "mount height on the reference tires", tire "D" Length "tire diameter", reference_tire "D_r" Length "diameter of the reference tires";
    code reference * tire / reference_tire;
    source OURS, "mount heights grow with the tires", Assumption;
    example [inch(17.0), inch(40.0), inch(37.0)] gives "18.378" of inch(1.0), "own arithmetic";
}

formula! {
    /// Force that uneven grip adds to one lower link and takes from the other.
    YAW_COUPLE: "ΔN" Force = "F · y / s";
    given traction "F" Force "traction of the ground on the axle", offset "y" Length "how far to one side it acts", spread "s" Length "distance between the lower links";
    code traction * offset / spread;
    source STATICS, "parallel lower links take the turning effect", Computed;
    example [lbf(3000.0), inch(32.5), inch(40.0)] gives "2437.5" of lbf(1.0), "all the grip at one wheel; own arithmetic, agrees with a solve in three dimensions";
}

formula! {
    /// Force in the lower link on the side that grips.
    UNEVEN_LOWER: "N" Force = "N_e + ΔN / cos(θ)";
    given even "N_e" Force "force with even grip", added "ΔN" Force "force that uneven grip adds along the rig", angle "θ" Angle "angle to straight ahead, seen from above";
    code even + added / cosine(angle);
    holds "θ < π / 2" => angle < std::f64::consts::PI / 2.0;
    source STATICS, "sum along the link", Computed;
    example [lbf(4250.0), lbf(2437.5), 0.0] gives "6687.5" of lbf(1.0), "all the grip at one wheel; own arithmetic, agrees with a solve in three dimensions";
}

formula! {
    /// Compression in one lower link of a three-link axle, whose single upper link sits to one side.
    THREE_LINK_LOWER: "N" Force = "N_L / 2 + N_U · y / s";
    given lower "N_L" Force "force in both lower links together", upper "N_U" Force "force in the upper link", offset "y" Length "how far the upper link sits toward this lower link", spread "s" Length "distance between the lower links";
    code lower / 2.0 + upper * offset / spread;
    source STATICS, "solid axle, level links", Computed;
    example [lbf(8500.0), lbf(5500.0), inch(6.0), inch(40.0)] gives "5075" of lbf(1.0), "own arithmetic, independent tool: numpy 2.4.6 solve in three dimensions";
}

formula! {
    /// Distance at which a sloping link passes the place where the tire meets the ground.
    LINK_ARM: "a" Length = "h · cos(β) − x · sin(β)";
    given height "h" Length "height of its mount on the axle", ahead "x" Length "how far its mount sits ahead of the axle", slope "β" Angle "its slope, seen from the side";
    code height * cosine(slope) - ahead * sine(slope);
    source STATICS, "distance from a point to a line", Computed;
    example [inch(25.5), inch(-3.0), deg(2.0)] gives "25.5892" of inch(1.0), "own arithmetic";
}

formula! {
    /// Force in all lower links together, when the links slope.
    SLOPED_LOWER_PAIR: "N_L" Force = "F · a_U / (a_U · cos(β_L) − a_L · cos(β_U))";
    given traction "F" Force "traction of the ground on the axle", upper "a_U" Length "distance of the upper links from where the tire meets the ground", upper_slope "β_U" Angle "slope of the upper links", lower "a_L" Length "distance of the lower links from where the tire meets the ground", lower_slope "β_L" Angle "slope of the lower links";
    code traction * upper / (upper * cosine(lower_slope) - lower * cosine(upper_slope));
    holds "a_U · cos(β_L) > a_L · cos(β_U)" => upper * cosine(lower_slope) > lower * cosine(upper_slope);
    source STATICS, "solid axle, sloping links", Computed;
    example [lbf(3000.0), inch(25.589_164_5), deg(2.0), inch(16.459_806_8), deg(4.0)] gives "8457.317" of lbf(1.0), "slopes of 4° below and 2° above; own arithmetic, independent tool: numpy 2.4.6 solve of two equations";
}

listed! {TRACTION, LOWER_PAIR, UPPER_PAIR, PER_LINK, CONVERGING_SIDE, CONVERGING_UPPER, CONVERGING_BOUND, YAW_COUPLE, UNEVEN_LOWER; references SCALED_HEIGHT, THREE_LINK_LOWER, LINK_ARM, SLOPED_LOWER_PAIR}
