//! Tightening a jam nut against the bar.

use crate::engine::math::{arctangent, cosine, tangent};
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{DEGREE, deg, in2, inch, ksi, lbf, lbf_in};

/// Mean diameter of a 3/4-16 thread, from its printed minor-diameter area 0.351 in².
const MEAN_3_4_16: f64 = inch(0.709_255_546_03);
/// One pound-force per inch.
const LBF_PER_INCH: f64 = lbf(1.0) / inch(1.0);

formula! {
    /// Torque that gives a screw or a jam nut its preload.
    TORQUE: "T" Torque = "K · F_i · d";
    given coefficient "K" Ratio "torque coefficient", preload "F_i" Force "preload", diameter "d" FineLength "thread diameter";
    code coefficient * preload * diameter;
    source SHIGLEY, "Eq. 8-27", Read;
    example [0.2, lbf(25000.0), inch(0.75)] gives "3750" of lbf_in(1.0), "data of Shigley 9e Ex. 8-3(b); own arithmetic";
}

formula! {
    /// Preload that a torque gives a jam nut.
    PRELOAD: "F_i" Force = "T / (K · d)";
    given torque "T" Torque "torque", coefficient "K" Ratio "torque coefficient", diameter "d" FineLength "thread diameter";
    code torque / (coefficient * diameter);
    holds "K > 0" => coefficient > 0.0;
    source SHIGLEY, "Eq. 8-27", Read;
    example [lbf_in(3750.0), 0.2, inch(0.75)] gives "25000" of lbf(1.0), "data of Shigley 9e Ex. 8-3(b); own arithmetic";
}

formula! {
    /// Preload from the stress that tightening puts in a shank.
    STRESS_PRELOAD: "F_i" Force = "σ · A_t";
    given stress "σ" Stress "stress in the shank", area "A_t" Area "tensile stress area of the shank";
    code stress * area;
    source STATICS, "even stress", Computed;
    example [ksi(30.0), in2(0.373)] gives "11190" of lbf(1.0), "own arithmetic";
}

formula! {
    /// What anti-seize leaves of a torque, or of a torque coefficient, printed for plated threads.
    ANTI_SEIZE: "K" Ratio = "k · K_t";
    given share "k" Percent "share that anti-seize leaves", table "K_t" Ratio "torque coefficient of the plated thread";
    code share * table;
    source PRACTICE, "torque cut by about 30 % with anti-seize or against aluminum", Practice;
    example [0.7, 0.16] gives "0.112" of 1.0, "own arithmetic";
}

formula! {
    /// Torque with anti-seize for the preload that a printed torque gives on plated threads.
    ANTI_SEIZE_TORQUE: "T" Torque = "k · T_t";
    given share "k" Percent "share that anti-seize leaves", table "T_t" Torque "printed torque";
    code share * table;
    source PRACTICE, "torque cut by about 30 % with anti-seize or against aluminum", Practice;
    example [0.7, lbf_in(6600.0)] gives "4620" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Diameter of the countersink in the face of the bar.
    COUNTERSINK: "D_c" FineLength = "D + c";
    given major "D" FineLength "thread diameter", over "c" FineLength "how much wider the countersink is";
    code major + over;
    source OURS, "90° countersink, 1/64 in wider than the thread", Assumption;
    example [inch(1.25), inch(0.015_625)] gives "1.265625" of inch(1.0), "own arithmetic";
}

formula! {
    /// Angle at which a thread climbs.
    LEAD_ANGLE: "ψ" Angle = "atan(P / (π · d_m))";
    given pitch "P" FineLength "pitch of the thread", mean "d_m" FineLength "mean diameter of the thread";
    code arctangent(pitch / (PI * mean));
    source GEOMETRY, "thread unrolled", Computed;
    example [inch(0.0625), MEAN_3_4_16] gives "1.60670512" of DEGREE, "3/4-16; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Torque coefficient that friction gives.
    TORQUE_COEFFICIENT: "K" Ratio = "d_m / (2 · d) · (tan(ψ) + f / cos(α)) / (1 − f · tan(ψ) / cos(α)) + 0.625 · f_c";
    given mean "d_m" FineLength "mean diameter of the thread", diameter "d" FineLength "thread diameter", lead "ψ" Angle "angle at which the thread climbs", flank "α" Angle "half the angle between the flanks", thread "f" Ratio "friction in the thread", face "f_c" Ratio "friction under the nut";
    code mean / (2.0 * diameter) * (tangent(lead) + thread / cosine(flank)) / (1.0 - thread * tangent(lead) / cosine(flank)) + 0.625 * face;
    holds "f · tan(ψ) < cos(α)" => thread * tangent(lead) < cosine(flank);
    source SHIGLEY, "Eq. 8-26, p. 438", Read;
    example [MEAN_3_4_16, inch(0.75), deg(1.606_705_117_5), deg(30.0), 0.15, 0.15] gives "0.189375268" of 1.0, "3/4-16, friction 0.15; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Preload that is a share of the proof load.
    PROOF_SHARE_PRELOAD: "F_i" Force = "k · A_t · F_p";
    given share "k" Percent "share of the proof load", area "A_t" Area "tensile stress area of the thread", proof "F_p" Stress "proof strength";
    code share * area * proof;
    source SHIGLEY, "Eqs. 8-31 and 8-32; 0.75 for bolts that are taken out again", Memory;
    example [0.4, in2(0.373), ksi(120.0)] gives "17.904" of lbf(1000.0), "own arithmetic";
}

formula! {
    /// Load at which the thread of a jam nut strips.
    NUT_THREAD_LOAD: "P_n" Force = "A_s · (H − P) · F_s";
    given area "A_s" AreaPerLength "area that shears, for each length of thread", height "H" FineLength "least thickness of the jam nut", pitch "P" FineLength "pitch of the thread", shear "F_s" Stress "shear strength of the weaker thread";
    code area * (height - pitch) * shear;
    holds "H > P" => height > pitch;
    source OURS, "sheared area times shear strength; one pitch is taken off for the chamfers of the nut", Assumption;
    example [in2(1.232_643_68) / inch(1.0), inch(0.398), inch(0.0625), ksi(54.0)] gives "22.332" of lbf(1000.0), "3/4-16 jam nut of 54 ksi; own arithmetic";
}

formula! {
    /// Area of the bar that a jam nut presses on.
    SEAT_AREA: "A_n" Area = "π / 4 · (w² − D²)";
    given width "w" FineLength "width across the nut's flats", diameter "D" FineLength "diameter of the thread or of its countersink";
    code PI / 4.0 * (width * width - diameter * diameter);
    holds "w > D" => width > diameter;
    source GEOMETRY, "ring", Computed;
    example [inch(1.875), inch(1.25)] gives "1.5340" of in2(1.0), "own arithmetic";
}

formula! {
    /// Pressure under a jam nut.
    SEAT_PRESSURE: "p" Stress = "F_i / A_n";
    given preload "F_i" Force "preload", area "A_n" Area "area that the nut presses on";
    code preload / area;
    source STATICS, "even pressure", Computed;
    example [lbf(24000.0), in2(1.5)] gives "16" of ksi(1.0), "own arithmetic";
}

formula! {
    /// Share of a tension that the tightened thread itself feels.
    JOINT_SHARE: "C" Ratio = "k_b / (k_b + k_m)";
    given bolt "k_b" Stiffness "stiffness of the tensioned thread", member "k_m" Stiffness "stiffness of what it clamps";
    code bolt / (bolt + member);
    source SHIGLEY, "p. 439, Ex. 8-3", Read;
    example [6.5e6 * LBF_PER_INCH, 13.8e6 * LBF_PER_INCH] gives "0.32" of 1.0, "Shigley 9e p. 439, Ex. 8-3";
}

listed! {TORQUE, PRELOAD, STRESS_PRELOAD, ANTI_SEIZE, ANTI_SEIZE_TORQUE, COUNTERSINK, PROOF_SHARE_PRELOAD, NUT_THREAD_LOAD, SEAT_AREA, SEAT_PRESSURE; references LEAD_ANGLE, TORQUE_COEFFICIENT, JOINT_SHARE}
