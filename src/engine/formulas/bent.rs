//! A link that a hit has bent: its bow from eye to eye, what is left of it, and the hit that bends it on.

use crate::engine::formula::{formula, listed};
use crate::quantity::{in2, in3, inch, ksi, lbf, lbf_in};

formula! {
    /// Bow from eye to eye, of a bend that was measured with a shorter string.
    BOW_BETWEEN_EYES: "d" FineLength = "b · (L / s)²";
    given gap "b" FineLength "deepest gap between string and bar", length "L" Length "length between ball centers", string "s" Length "length of the string";
    code gap * (length / string) * (length / string);
    holds "s > 0" => string > 0.0;
    source GEOMETRY, "an even curve that runs on to the eyes; a kink comes out smaller", Computed;
    example [inch(0.25), inch(38.0), inch(32.0)] gives "0.3525" of inch(1.0), "own arithmetic";
}

formula! {
    /// Bow of a link that was hit, by which its buckling and its bending are judged alike.
    WHOLE_BOW: "d" FineLength = "d_0 + d_m";
    given straight "d_0" FineLength "bow that no straight bar is free of", measured "d_m" FineLength "bow that was measured, from eye to eye";
    code straight + measured;
    source OURS, "both bows on the same side; column and bending take the same total, the safe side", Assumption;
    example [inch(0.076), inch(0.1)] gives "0.176" of inch(1.0), "own arithmetic";
}

formula! {
    /// Share of its buckling load that a bent link still has.
    CAPACITY_LEFT: "q" Percent = "P_b / P_s";
    given bent "P_b" Force "load at which the bent link buckles", straight "P_s" Force "load at which it buckled when it was straight";
    code bent / straight;
    holds "P_s > 0" => straight > 0.0;
    source STATICS, "definition", Computed;
    example [lbf(15_000.0), lbf(20_000.0)] gives "75" of 0.01, "own arithmetic";
}

formula! {
    /// Moment at mid-span of a hit there, in compression.
    STRIKE_MOMENT: "M_s" Moment = "Q · u";
    given strike "Q" Force "the hit", lever "u" Length "moment at mid-span for each unit of the hit";
    code strike * lever;
    source STATICS, "lever, carried from piece to piece under the compression", Computed;
    example [lbf(4_000.0), inch(10.0)] gives "40000" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Moment at mid-span of a bent link that is hit on the side it bows to.
    MOMENT_WITH_BOW: "M" Moment = "M_s + M_b";
    given strike "M_s" Moment "moment of the hit, in compression", bow "M_b" Moment "moment of the compression on its bow";
    code strike + bow;
    source STATICS, "both under the same compression, so they add", Computed;
    example [lbf_in(40_000.0), lbf_in(5_000.0)] gives "45000" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Hit under which a bent link first yields further.
    STRIKE_ON_BOW: "Q" Force = "(S · (F − N / A) − M_b) / u";
    given modulus "S" SectionModulus "section modulus", yielding "F" Stress "yield strength", axial "N" Force "compression along the link at that moment", area "A" Area "area", bow "M_b" Moment "moment of the compression on its bow", lever "u" Length "moment at mid-span for each unit of the hit";
    code (modulus * (yielding - axial / area) - bow) / lever;
    holds "u > 0" => lever > 0.0;
    source STATICS, "combined stress turned over for the hit", Computed;
    example [in3(0.5), ksi(70.0), lbf(2_000.0), in2(1.0), lbf_in(4_000.0), inch(10.0)] gives "3000" of lbf(1.0), "own arithmetic";
}

listed! {BOW_BETWEEN_EYES, WHOLE_BOW, CAPACITY_LEFT, STRIKE_MOMENT, MOMENT_WITH_BOW, STRIKE_ON_BOW}
