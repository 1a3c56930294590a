//! Screw threads: basic form, class limits, stress areas, stripping.
//!
//! The class limits of ASME B1.1 hold in inches only and those of ISO 965-1 in millimeters only, so
//! their symbols are plain numbers of inches, millimeters or micrometers.

use crate::engine::math::{cube_root, power, squared};
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{in2, inch, ksi, lbf, mm};

/// One square inch of thread for each inch of engagement.
const IN2_PER_IN: f64 = inch(1.0);

formula! {
    /// Basic pitch diameter.
    BASIC_PITCH_DIAMETER: "d_2" FineLength = "D − 0.64951905 · P";
    given major "D" FineLength "basic major diameter", pitch "P" FineLength "pitch";
    code major - 0.649_519_05 * pitch;
    source ASME_B1_1, "basic form; ISO 724 alike", Copied;
    example [inch(0.75), inch(0.0625)] gives "0.7094" of inch(1.0), "Machinery's Handbook 31 Table 4b, 3/4-16";
}

formula! {
    /// Basic minor diameter of the hole.
    BASIC_MINOR_DIAMETER: "D_1" FineLength = "D − 1.08253175 · P";
    given major "D" FineLength "basic major diameter", pitch "P" FineLength "pitch";
    code major - 1.082_531_75 * pitch;
    source ASME_B1_1, "basic form; ISO 724 alike", Copied;
    example [inch(0.875), inch(1.0 / 14.0)] gives "0.7977" of inch(1.0), "Machinery's Handbook 31 Table 4b, 7/8-14";
}

formula! {
    /// Minor diameter of an inch screw with rounded root.
    EXTERNAL_MINOR_INCH: "d_3" FineLength = "D − 1.19078493 · P";
    given major "D" FineLength "basic major diameter", pitch "P" FineLength "pitch";
    code major - 1.190_784_93 * pitch;
    source ASME_B1_1, "UNR form", Copied;
    example [inch(0.75), inch(0.0625)] gives "0.675576" of inch(1.0), "3/4-16, independent tool: mpmath 1.4.1; the handbook prints .6763";
}

formula! {
    /// Minor diameter of a metric screw.
    EXTERNAL_MINOR_METRIC: "d_3" FineLength = "D − 1.22686869 · P";
    given major "D" FineLength "basic major diameter", pitch "P" FineLength "pitch";
    code major - 1.226_868_69 * pitch;
    source ISO_898_1, "§9.1.6.1; a test derives it from the basic triangle", Memory;
    example [mm(16.0), mm(2.0)] gives "13.546" of mm(1.0), "M16x2, reference table of this project";
}

formula! {
    /// Tensile stress area of an inch screw.
    TENSILE_STRESS_AREA_INCH: "A_t" Area = "π / 4 · (D − 0.9743 · P)²";
    given major "D" FineLength "basic major diameter", pitch "P" FineLength "pitch";
    code PI / 4.0 * squared(major - 0.9743 * pitch);
    source ASME_B1_1, "Appendix B", Copied;
    example [inch(1.25), inch(1.0 / 12.0)] gives "1.073" of in2(1.0), "Machinery's Handbook 31 Table 4b, 1-1/4-12";
}

formula! {
    /// Tensile stress area of a metric screw.
    TENSILE_STRESS_AREA_METRIC: "A_t" Area = "π / 4 · (D − 0.9382 · P)²";
    given major "D" FineLength "basic major diameter", pitch "P" FineLength "pitch";
    code PI / 4.0 * squared(major - 0.9382 * pitch);
    source ISO_898_1, "§9.1.6.1, in public reprints", Copied;
    example [mm(24.0), mm(2.0)] gives "384" of mm(1.0) * mm(1.0), "ISO 898-1, M24x2, from memory";
}

formula! {
    /// Pitch-diameter tolerance, class 2A, in inches.
    UN_PITCH_TOLERANCE: "T_d2" InInches = "0.0015 · ∛D + 0.0015 · √L_E + 0.015 · ∛(P²)";
    given major "D" InInches "basic major diameter in inches", length "L_E" InInches "length of engagement in inches", pitch "P" InInches "pitch in inches";
    code 0.0015 * cube_root(major) + 0.0015 * length.sqrt() + 0.015 * cube_root(pitch * pitch);
    source ASME_B1_1, "§5.8.1(c), as a public program transcribes it", Copied;
    example [0.75, 0.75, 0.0625] gives "0.0050" of 1.0, "3/4-16: pitch diameter .7079 to .7029, table from memory";
}

formula! {
    /// Allowance, class 2A, in inches.
    UN_ALLOWANCE: "e_s" InInches = "0.300 · T_d2";
    given tolerance "T_d2" InInches "pitch-diameter tolerance in inches";
    code 0.300 * tolerance;
    source ASME_B1_1, "§5.8.1(a), as a public program transcribes it", Copied;
    example [0.0050] gives "0.0015" of 1.0, "3/4-16, table from memory";
}

formula! {
    /// Pitch-diameter tolerance, class 2B, in inches.
    UN_INTERNAL_PITCH_TOLERANCE: "T_D2" InInches = "1.30 · T_d2";
    given tolerance "T_d2" InInches "pitch-diameter tolerance of class 2A in inches";
    code 1.30 * tolerance;
    source ASME_B1_1, "§5.8.2(b), as a public program transcribes it", Copied;
    example [0.0050] gives "0.0065" of 1.0, "3/4-16: .7094 to .7159, table from memory";
}

formula! {
    /// Major-diameter tolerance, class 2A, in inches.
    UN_MAJOR_TOLERANCE: "T_d" InInches = "0.060 · ∛(P²)";
    given pitch "P" InInches "pitch in inches";
    code 0.060 * cube_root(pitch * pitch);
    source ASME_B1_1, "major-diameter tolerance table", Copied;
    example [0.0625] gives "0.0094" of 1.0, "ASME B1.1 major-diameter tolerance table, 16 threads per inch";
}

formula! {
    /// Minor-diameter tolerance, class 2B, in inches.
    UN_MINOR_TOLERANCE: "T_D1" InInches = "0.25 · P − 0.40 · P²";
    given pitch "P" InInches "pitch in inches";
    code 0.25 * pitch - 0.40 * pitch * pitch;
    source ASME_B1_1, "§5.8.2(c)(1), from 1/4 in up, as a public program transcribes it", Copied;
    example [0.0625] gives "0.0141" of 1.0, "3/4-16: .682 to .696, table from memory";
}

formula! {
    /// Fundamental deviation g, in micrometers.
    ISO_DEVIATION: "e_s" InMicrometers = "15 + 11 · P";
    given pitch "P" InMillimeters "pitch in millimeters";
    code 15.0 + 11.0 * pitch;
    source ISO_965_1, "§13.1, as a public program transcribes it", Copied;
    example [2.0] gives "37" of 1.0, "table value 38 after rounding to preferred numbers, from memory";
}

formula! {
    /// Major-diameter tolerance, grade 6, in micrometers.
    ISO_MAJOR_TOLERANCE: "T_d" InMicrometers = "180 · ∛(P²) − 3.15 / √P";
    given pitch "P" InMillimeters "pitch in millimeters";
    code 180.0 * cube_root(pitch * pitch) - 3.15 / pitch.sqrt();
    source ISO_965_1, "§13.3, as a public program transcribes it", Copied;
    example [2.0] gives "283.5" of 1.0, "M16x2; table value 280, from memory";
}

formula! {
    /// Pitch-diameter tolerance, grade 6, in micrometers.
    ISO_PITCH_TOLERANCE: "T_d2" InMicrometers = "90 · P^0.4 · d^0.1";
    given pitch "P" InMillimeters "pitch in millimeters", diameter "d" InMillimeters "geometric mean of the diameter step in millimeters";
    code 90.0 * power(pitch, 0.4) * power(diameter, 0.1);
    source ISO_965_1, "§13.4, as a public program transcribes it", Copied;
    example [2.0, 15.840] gives "156.5" of 1.0, "M16x2; table value 160, from memory";
}

formula! {
    /// Pitch-diameter tolerance of the hole, grade 6, in micrometers.
    ISO_INTERNAL_PITCH_TOLERANCE: "T_D2" InMicrometers = "1.32 · T_d2";
    given tolerance "T_d2" InMicrometers "pitch-diameter tolerance in micrometers";
    code 1.32 * tolerance;
    source ISO_965_1, "§13.4; its Tables 5 and 6 agree to their rounding", Memory;
    example [156.5] gives "206.6" of 1.0, "M16x2; table value 212, from memory";
}

formula! {
    /// Minor-diameter tolerance of the hole, grade 6, in micrometers.
    ISO_MINOR_TOLERANCE: "T_D1" InMicrometers = "230 · P^0.7";
    given pitch "P" InMillimeters "pitch in millimeters";
    code 230.0 * power(pitch, 0.7);
    holds "P ≥ 1" => pitch >= 1.0;
    source ISO_965_1, "§13.3.2, as a public program transcribes it", Copied;
    example [2.0] gives "373.6" of 1.0, "M16x2; table value 375, from memory";
}

formula! {
    /// Area that shears when the screw's own thread strips, for each length of engagement.
    EXTERNAL_SHEAR_AREA: "A_s" AreaPerLength = "π / P · D_1 · (P / 2 + (d_2 − D_1) / √3)";
    given pitch "P" FineLength "pitch", minor "D_1" FineLength "largest minor diameter of the hole", pitch_diameter "d_2" FineLength "least pitch diameter of the screw";
    code PI / pitch * minor * (pitch / 2.0 + (pitch_diameter - minor) / 3.0_f64.sqrt());
    holds "D_1 − d_2 < P · √3 / 2" => minor - pitch_diameter < pitch * 3.0_f64.sqrt() / 2.0;
    source ASME_B1_1, "Appendix B, as a public program transcribes it; a test derives it from the thread form", Copied;
    example [inch(0.0625), inch(0.696), inch(0.7029)] gives "1.2326" of IN2_PER_IN, "3/4-16 2A/2B, independent tool: mpmath 1.4.1";
}

formula! {
    /// Area that shears when the bar's own thread strips, for each length of engagement.
    INTERNAL_SHEAR_AREA: "A_n" AreaPerLength = "π / P · d · (P / 2 + (d − D_2) / √3)";
    given pitch "P" FineLength "pitch", major "d" FineLength "least major diameter of the screw", pitch_diameter "D_2" FineLength "largest pitch diameter of the hole";
    code PI / pitch * major * (pitch / 2.0 + (major - pitch_diameter) / 3.0_f64.sqrt());
    holds "D_2 − d < P · √3 / 2" => pitch_diameter - major < pitch * 3.0_f64.sqrt() / 2.0;
    source ASME_B1_1, "Appendix B, as a public program transcribes it; a test derives it from the thread form", Copied;
    example [inch(1.0 / 12.0), inch(1.2368), inch(1.2039)] gives "2.8284" of IN2_PER_IN, "1-1/4-12 2A/2B, independent tool: mpmath 1.4.1";
}

formula! {
    /// Engagement at which screw and thread are equally strong, in like metals.
    EQUAL_STRENGTH_ENGAGEMENT: "e_1" FineLength = "2 · A_t / A_s";
    given area "A_t" Area "tensile stress area", shear "A_s" AreaPerLength "shear area of the screw's thread per length";
    code 2.0 * area / shear;
    source FED_STD_H28, "formula (1)", Copied;
    example [in2(0.372_960), inch(1.232_644)] gives "0.60514" of inch(1.0), "3/4-16, independent tool: mpmath 1.4.1";
}

formula! {
    /// How much stronger the screw's thread is than the bar's, for like engagement.
    STRENGTH_RATIO: "j" Ratio = "A_s · F_s / (A_n · F_n)";
    given external "A_s" AreaPerLength "shear area of the screw's thread per length", screw "F_s" Stress "strength of the screw", internal "A_n" AreaPerLength "shear area of the bar's thread per length", bar "F_n" Stress "strength of the bar";
    code external * screw / (internal * bar);
    source FED_STD_H28, "J; a test derives it from the strip loads", Memory;
    example [inch(1.232_644), ksi(150.0), inch(1.6586), ksi(77.0)] gives "1.4478" of 1.0, "3/4-16 in 7075, independent tool: mpmath 1.4.1";
}

formula! {
    /// Engagement with a hard screw in a softer bar.
    UNLIKE_METALS_ENGAGEMENT: "e_Q" FineLength = "max(1, j) · e_1";
    given ratio "j" Ratio "strength ratio", equal "e_1" FineLength "engagement for like metals";
    code ratio.max(1.0) * equal;
    source FED_STD_H28, "Q; a test derives it from the strip loads", Memory;
    example [1.4478, inch(0.605_138)] gives "0.8761" of inch(1.0), "3/4-16 in 7075, independent tool: mpmath 1.4.1";
}

formula! {
    /// Engagement at which the thread is as strong as the shank.
    FULL_STRENGTH_ENGAGEMENT: "e_s" FineLength = "A_t · F_t / min(A_s · F_s, A_n · F_n)";
    given area "A_t" Area "tensile stress area", ultimate "F_t" Stress "breaking strength of the shank", external "A_s" AreaPerLength "shear area of the shank's thread per length", shank "F_s" Stress "shear strength of the shank", internal "A_n" AreaPerLength "shear area of the bar's thread per length", bar "F_n" Stress "shear strength of the bar";
    code area * ultimate / (external * shank).min(internal * bar);
    source STATICS, "the weaker thread strips just as the shank breaks", Computed;
    example [in2(1.072_94), ksi(150.0), inch(2.104_23), ksi(90.0), inch(2.828_42), ksi(46.0)] gives "1.237" of inch(1.0), "1-1/4-12, 150 ksi shank in 7075: reference table of this project";
}

formula! {
    /// Engagement at which the weaker thread bears a load with its factor.
    LOAD_ENGAGEMENT: "e_N" FineLength = "n · N / min(A_s · F_s, A_n · F_n)";
    given factor "n" Ratio "factor on stripping", load "N" Force "largest force along the link", external "A_s" AreaPerLength "shear area of the shank's thread", shank "F_s" Stress "shear strength of the shank", internal "A_n" AreaPerLength "shear area of the bar's thread", bar "F_n" Stress "shear strength of the bar or insert";
    code factor * load / (external * shank).min(internal * bar);
    source FED_STD_H28, "shear areas, solved for the length", Memory;
    example [3.0, lbf(7363.0), 1.45 * IN2_PER_IN, ksi(90.0), 1.958_475_4 * IN2_PER_IN, ksi(42.0)] gives "0.26854" of inch(1.0), "7/8-14 in 7075; own arithmetic";
}

formula! {
    /// Load at which the thread pulls out by the one-third rule.
    ONE_THIRD_PULL_OUT: "P_3" Force = "π · d_2 · F_s · e / 3";
    given pitch_diameter "d_2" FineLength "pitch diameter", shear "F_s" Stress "shear strength", engaged "e" FineLength "engaged thread";
    code PI * pitch_diameter * shear * engaged / 3.0;
    source NASA_RP_1228, "pull-out, factor 1/3", Copied;
    example [inch(0.7094), ksi(46.0), inch(1.125)] gives "38.4441" of lbf(1000.0), "3/4-16 in 7075, independent tool: mpmath 1.4.1";
}

formula! {
    /// Engagement at which the thread is as strong as the shank, by the one-third rule.
    ONE_THIRD_ENGAGEMENT: "e_3" FineLength = "3 · A_t · F_t / (π · d_2 · F_s)";
    given area "A_t" Area "tensile stress area", ultimate "F_t" Stress "breaking strength of the shank", pitch_diameter "d_2" FineLength "pitch diameter", shear "F_s" Stress "shear strength of the bar";
    code 3.0 * area * ultimate / (PI * pitch_diameter * shear);
    source NASA_RP_1228, "pull-out, factor 1/3", Copied;
    example [in2(1.072_94), ksi(150.0), inch(1.195_87), ksi(46.0)] gives "2.794" of inch(1.0), "own arithmetic";
}

formula! {
    /// Load at which a thread strips.
    STRIP_LOAD: "P_s" Force = "A_s · e · F_s";
    given area "A_s" AreaPerLength "shear area per length", engaged "e" FineLength "engaged thread", shear "F_s" Stress "shear strength";
    code area * engaged * shear;
    source STATICS, "sheared area times shear strength", Computed;
    example [inch(2.828_42), inch(1.237), ksi(46.0)] gives "160.9" of lbf(1000.0), "own arithmetic";
}

formula! {
    /// Tension at which the shank yields.
    SHANK_LOAD: "P_t" Force = "A_t · F_y";
    given area "A_t" Area "tensile stress area", strength "F_y" Stress "yield strength of the shank";
    code area * strength;
    source ASME_B1_1, "Appendix B, stress area", Copied;
    example [in2(0.373), ksi(120.0)] gives "44.76" of lbf(1000.0), "own arithmetic";
}

formula! {
    /// Percent of full thread that a drilled hole leaves.
    PERCENT_OF_THREAD: "p" Percent = "(D − d_h) / (1.299038 · P)";
    given major "D" FineLength "basic major diameter", hole "d_h" FineLength "drilled hole", pitch "P" FineLength "pitch";
    code (major - hole) / (1.299_038 * pitch);
    source MH31, "percent of full thread", Copied;
    example [inch(0.75), inch(0.6875), inch(0.0625)] gives "76.98" of 0.01, "3/4-16 with an 11/16 drill, independent tool: mpmath 1.4.1";
}

formula! {
    /// Change of length for one turn of a bar with opposite hands.
    LENGTH_PER_TURN_OPPOSITE_HANDS: "p_t" FineLength = "P_A + P_B";
    given a "P_A" FineLength "pitch at end A", b "P_B" FineLength "pitch at end B";
    code a + b;
    source GEOMETRY, "thread", Computed;
    example [inch(0.0625), inch(0.0625)] gives "0.125" of inch(1.0), "own arithmetic";
}

formula! {
    /// Change of length for one turn of a bar with like hands.
    LENGTH_PER_TURN_SAME_HAND: "p_t" FineLength = "P_A − P_B";
    given a "P_A" FineLength "pitch at end A", b "P_B" FineLength "pitch at end B";
    code a - b;
    source GEOMETRY, "thread", Computed;
    example [inch(0.0625), inch(0.0625)] gives "0" of inch(1.0), "own arithmetic";
}

listed! {BASIC_PITCH_DIAMETER, BASIC_MINOR_DIAMETER, EXTERNAL_MINOR_INCH, EXTERNAL_MINOR_METRIC, TENSILE_STRESS_AREA_INCH, TENSILE_STRESS_AREA_METRIC, UN_PITCH_TOLERANCE, UN_ALLOWANCE, UN_INTERNAL_PITCH_TOLERANCE, UN_MAJOR_TOLERANCE, UN_MINOR_TOLERANCE, ISO_DEVIATION, ISO_MAJOR_TOLERANCE, ISO_PITCH_TOLERANCE, ISO_INTERNAL_PITCH_TOLERANCE, ISO_MINOR_TOLERANCE, EXTERNAL_SHEAR_AREA, INTERNAL_SHEAR_AREA, FULL_STRENGTH_ENGAGEMENT, LOAD_ENGAGEMENT, ONE_THIRD_ENGAGEMENT, STRIP_LOAD, SHANK_LOAD, PERCENT_OF_THREAD, LENGTH_PER_TURN_OPPOSITE_HANDS, LENGTH_PER_TURN_SAME_HAND; references EQUAL_STRENGTH_ENGAGEMENT, STRENGTH_RATIO, UNLIKE_METALS_ENGAGEMENT, ONE_THIRD_PULL_OUT}
