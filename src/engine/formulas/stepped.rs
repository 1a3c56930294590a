//! A link whose section changes along its length, carried exactly from piece to piece.

use crate::engine::math::{cosine, sine};
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{INCH, in2, in4, inch, ksi, lbf};

/// Wave number of a 2.0 in bar of 10,300 ksi under 10,000 lbf.
const WAVE_10_000_LBF: f64 = 0.035_158_994_550_486_35 / INCH;

formula! {
    /// Lever at the end of a piece of a beam-column, carried over it by transfer matrix.
    PIECE_LEVER: "u" Length = "u_1 · cos(k · l) + u′_1 · sin(k · l) / k";
    given lever "u_1" Length "lever where the piece begins, 0 at the eye", slope "u′_1" Ratio "slope of the lever where the piece begins, 1 at the eye", wave "k" PerLength "wave number of the piece", length "l" Length "length of the piece";
    code lever * cosine(wave * length) + slope * sine(wave * length) / wave;
    holds "k > 0" => wave > 0.0;
    source TIMOSHENKO_GERE, "beam-columns, one piece of constant section; a test integrates the bent shape", Memory;
    example [0.0, 1.0, WAVE_10_000_LBF, inch(20.0)] gives "18.39207" of inch(1.0), "half of a 2.0 in bar, 40 in long; own arithmetic";
}

formula! {
    /// Slope of the lever at the end of a piece of a beam-column, carried over it by transfer matrix.
    PIECE_SLOPE: "u′" Ratio = "u′_1 · cos(k · l) − k · u_1 · sin(k · l)";
    given lever "u_1" Length "lever where the piece begins, 0 at the eye", slope "u′_1" Ratio "slope of the lever where the piece begins, 1 at the eye", wave "k" PerLength "wave number of the piece", length "l" Length "length of the piece";
    code slope * cosine(wave * length) - wave * lever * sine(wave * length);
    source TIMOSHENKO_GERE, "beam-columns, one piece of constant section; a test integrates the bent shape", Memory;
    example [0.0, 1.0, WAVE_10_000_LBF, inch(20.0)] gives "0.76279" of 1.0, "half of a 2.0 in bar, 40 in long; own arithmetic";
}

formula! {
    /// Bending moment in a link of several sections that is in compression and hit at the same time.
    STEPPED_MOMENT: "M" Moment = "Q · u · v / w";
    given load "Q" Force "strike force", near "u" Length "lever at the place asked about, carried from the eye on that side of the strike", far "v" Length "lever at the strike, carried from the other eye", whole "w" Length "lever carried from eye to eye; nothing is left of it when the compression alone buckles the link";
    code load * near * far / whole;
    holds "w > 0" => whole > 0.0;
    source TIMOSHENKO_GERE, "beam-column with one load across it, by transfer matrix; a test integrates the bent shape", Memory;
    // With one section the levers are sines over the wave number.
    example [lbf(2000.0), 18.392_065_79 * INCH, 18.392_065_79 * INCH, 28.058_559_70 * INCH] gives "24111.6" of crate::quantity::lbf_in(1.0), "2.0 in bar, 40 in long, 10,000 lbf compression; own arithmetic, independent tool: PyNiteFEA 3.2.0";
}

formula! {
    /// What one piece adds to the deflection of the link under a load across it.
    PIECE_DEFLECTION: "c" Compliance = "(m_1² + m_1 · m_2 + m_2²) · l / (3 · E · I)";
    given first "m_1" Length "moment where the piece begins, for each unit of the load", last "m_2" Length "moment where it ends, for each unit of the load", length "l" Length "length of the piece", modulus "E" Stress "stiffness of the metal (its modulus of elasticity)", second_moment "I" SecondMoment "second moment of area of the piece";
    code (first * first + first * last + last * last) * length / (3.0 * modulus * second_moment);
    source TIMOSHENKO, "work of a unit load; shear is not counted; a test integrates the beam", Memory;
    example [0.0, inch(10.0), inch(20.0), ksi(10300.0), in4(PI / 4.0)] gives "0.0824103" of inch(1.0) / lbf(1000.0), "half of a 2.0 in bar, 40 in long, hit at the middle; own arithmetic, half of 1 / 6067.20081 lbf/in";
}

formula! {
    /// Slenderness of a plain link with the same critical load.
    EQUIVALENT_SLENDERNESS: "λ" Ratio = "π · √(E · A / P_s)";
    given modulus "E" Stress "modulus of elasticity in compression", area "A" Area "area of the plain bar", critical "P_s" Force "critical load of the link with its weaker ends";
    code PI * (modulus * area / critical).sqrt();
    holds "P_s > 0" => critical > 0.0;
    source SHIGLEY, "Eq. 4-43 solved for the slenderness", Computed;
    example [ksi(10500.0), in2(PI), 50_869.672_7 * lbf(1.0)] gives "80.000" of 1.0, "2.0 in bar of 7075, 40 in long; own arithmetic";
}

formula! {
    /// Load with its factor, taken before anything is worked out from it.
    FACTORED_LOAD: "Q_n" Force = "n · Q";
    given factor "n" Ratio "factor on yield", load "Q" Force "load";
    code factor * load;
    source OURS, "factor on the loads, so that what compression adds to the bending is counted too", Assumption;
    example [1.25, lbf(4000.0)] gives "5000" of lbf(1.0), "own arithmetic";
}

listed! {PIECE_LEVER, PIECE_SLOPE, STEPPED_MOMENT, PIECE_DEFLECTION, EQUIVALENT_SLENDERNESS, FACTORED_LOAD}
