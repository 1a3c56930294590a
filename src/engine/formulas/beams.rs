//! A link as a beam that rests on its two ball centers.

use crate::engine::math::cubed;
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{in2, in3, in4, inch, ksi, lbf, lbf_in};

/// One pound-force per inch.
const LBF_PER_INCH: f64 = lbf(1.0) / inch(1.0);

formula! {
    /// Force that one eye bears of a load between the ends.
    SUPPORT_REACTION: "R" Force = "Q · b / L";
    given load "Q" Force "load across the link", far "b" Length "from the load to the other eye", length "L" Length "length between ball centers";
    code load * far / length;
    holds "b ≤ L" => far <= length;
    source STATICS, "simple beam", Computed;
    example [lbf(2000.0), inch(28.0), inch(40.0)] gives "1400" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Bending moment right under a load between the ends.
    MOMENT_UNDER_LOAD: "M" Moment = "Q · a · b / L";
    given load "Q" Force "load across the link", a "a" Length "from one eye to the load", b "b" Length "from the load to the other eye", length "L" Length "length between ball centers";
    code load * a * b / length;
    source STATICS, "simple beam", Computed;
    example [lbf(2000.0), inch(20.0), inch(20.0), inch(40.0)] gives "20000" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// How far the link bends right under a load between the ends.
    DEFLECTION_UNDER_LOAD: "δ" FineLength = "Q · a² · b² / (3 · E · I · L)";
    given load "Q" Force "load across the link", a "a" Length "from one eye to the load", b "b" Length "from the load to the other eye", modulus "E" Stress "stiffness of the metal (its modulus of elasticity)", second_moment "I" SecondMoment "second moment of area", length "L" Length "length between ball centers";
    code load * a * a * b * b / (3.0 * modulus * second_moment * length);
    source TIMOSHENKO, "simple beam, load anywhere; a test integrates the beam", Memory;
    example [lbf(2000.0), inch(12.0), inch(28.0), ksi(10300.0), in4(PI / 4.0), inch(40.0)] gives "0.232595" of inch(1.0), "2.0 in bar, 40 in long; own arithmetic, independent tool: PyNiteFEA 3.2.0";
}

formula! {
    /// Load at the middle for each unit of length that the link bends.
    MID_STIFFNESS: "k" Stiffness = "48 · E · I / L³";
    given modulus "E" Stress "stiffness of the metal (its modulus of elasticity)", second_moment "I" SecondMoment "second moment of area", length "L" Length "length between ball centers";
    code 48.0 * modulus * second_moment / cubed(length);
    source TIMOSHENKO, "simple beam, load at the middle; a test integrates the beam", Memory;
    example [ksi(10300.0), in4(PI / 4.0), inch(40.0)] gives "6067.20081" of LBF_PER_INCH, "2.0 in bar, 40 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Load along the link for each unit of length that it gets shorter.
    AXIAL_STIFFNESS: "k" Stiffness = "E · A / L";
    given modulus "E" Stress "stiffness of the metal (its modulus of elasticity)", area "A" Area "area", length "L" Length "length";
    code modulus * area / length;
    source STATICS, "Hooke's law", Computed;
    example [ksi(30000.0), in2(PI), inch(36.0)] gives "2617.99388" of 1000.0 * LBF_PER_INCH, "2.0 in bar, 36 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Load at the middle from which on the link stays bent.
    FIRST_YIELD_MID_LOAD: "Q_y" Force = "4 · S · F / L";
    given modulus "S" SectionModulus "section modulus", yielding "F" Stress "yield strength", length "L" Length "length between ball centers";
    code 4.0 * modulus * yielding / length;
    source STATICS, "simple beam, load at the middle", Computed;
    example [in3(PI / 4.0), ksi(66.0), inch(40.0)] gives "5183.62788" of lbf(1.0), "2.0 in bar of 7075, 40 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Load at the middle at which a link of ductile metal collapses.
    COLLAPSE_MID_LOAD: "Q_p" Force = "4 · Z · F / L";
    given modulus "Z" SectionModulus "plastic modulus", yielding "F" Stress "yield strength", length "L" Length "length between ball centers";
    code 4.0 * modulus * yielding / length;
    source STATICS, "one plastic hinge at the middle; ductile metal only", Computed;
    example [in3(4.0 / 3.0), ksi(66.0), inch(40.0)] gives "8800.0" of lbf(1.0), "2.0 in bar, 40 in long, 66 ksi; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Bending moment at a place on the near side of a strike.
    MOMENT_OF_STRIKE: "M" Moment = "Q · x · b / L";
    given strike "Q" Force "strike force", x "x" Length "from the eye on that side of the strike to the place asked about", far "b" Length "from the strike to the other eye", length "L" Length "length between ball centers";
    code strike * x * far / length;
    holds "x ≤ L" => x <= length;
    holds "b ≤ L" => far <= length;
    source STATICS, "simple beam", Computed;
    example [lbf(4000.0), inch(2.0), inch(30.0), inch(40.0)] gives "6000" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Stress at the surface from bending.
    BENDING_STRESS: "σ" Stress = "M / S";
    given moment "M" Moment "bending moment", modulus "S" SectionModulus "section modulus";
    code moment / modulus;
    source STATICS, "elastic bending", Computed;
    example [lbf_in(20000.0), in3(PI / 4.0)] gives "25.465" of ksi(1.0), "own arithmetic";
}

formula! {
    /// Stress from an axial force alone.
    AXIAL_STRESS: "σ" Stress = "N / A";
    given force "N" Force "force along the link", area "A" Area "area";
    code force / area;
    source STATICS, "definition", Computed;
    example [lbf(25000.0), in2(0.373)] gives "67.02" of ksi(1.0), "Shigley 9e Ex. 8-3(a)";
}

formula! {
    /// Stress from an axial force together with bending, on the side where they add up.
    COMBINED_STRESS: "σ" Stress = "N / A + M / S";
    given force "N" Force "force along the link", area "A" Area "area", moment "M" Moment "bending moment", modulus "S" SectionModulus "section modulus";
    code force / area + moment / modulus;
    source STATICS, "elastic superposition", Computed;
    example [lbf(10000.0), in2(2.0), lbf_in(20000.0), in3(0.8)] gives "30" of ksi(1.0), "own arithmetic";
}

formula! {
    /// Stress on the tension side of a link in compression and bending.
    TENSION_SIDE_STRESS: "σ" Stress = "M / S − N / A";
    given force "N" Force "compression along the link", area "A" Area "area", moment "M" Moment "bending moment", modulus "S" SectionModulus "section modulus";
    code moment / modulus - force / area;
    source STATICS, "elastic superposition", Computed;
    example [lbf(10000.0), in2(2.0), lbf_in(20000.0), in3(0.8)] gives "20" of ksi(1.0), "own arithmetic";
}

listed! {MOMENT_OF_STRIKE, BENDING_STRESS, AXIAL_STRESS, COMBINED_STRESS, TENSION_SIDE_STRESS; references SUPPORT_REACTION, MOMENT_UNDER_LOAD, DEFLECTION_UNDER_LOAD, MID_STIFFNESS, AXIAL_STIFFNESS, FIRST_YIELD_MID_LOAD, COLLAPSE_MID_LOAD}
