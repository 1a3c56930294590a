//! Past the factors: the first lasting bend, what follows it, and what repeated loads do.

use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::engine::math::{cosine, power, squared};
use crate::quantity::{in2, in3, inch, ksi, lbf, lbf_in};

formula! {
    /// Strike at first yield of the bar.
    FIRST_YIELD_STRIKE: "Q_y" Force = "(F − N / A) · S / m";
    given yielding "F" Stress "yield strength", axial "N" Force "tension or compression along the link at that moment", area "A" Area "area", modulus "S" SectionModulus "section modulus", lever "m" Length "bending moment for each unit of the strike";
    code (yielding - axial / area) * modulus / lever;
    holds "F > N / A" => yielding > axial / area;
    source STATICS, "elastic superposition", Computed;
    example [ksi(66.0), 0.0, in2(3.0), in3(std::f64::consts::PI / 4.0), inch(10.0)] gives "5183.62788" of lbf(1.0), "2.0 in bar of 7075, 40 in long, no compression; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Drop from which a weight lands with a given force.
    DROP_FOR_FORCE: "h" FineLength = "δ / 2 · ((Q / w − 1)² − 1)";
    given deflection "δ" FineLength "deflection under the weight at rest", force "Q" Force "force it lands with", weight "w" Weight "weight that lands";
    code deflection / 2.0 * (squared(force / weight - 1.0) - 1.0);
    holds "Q ≥ 2 · w" => force >= 2.0 * weight;
    source GERE_GOODNO, "Eq. 2-53 solved for the drop, as public solutions quote it; a test derives it from the energy", Copied;
    example [inch(0.3), lbf(6000.0), lbf(2000.0)] gives "0.45" of inch(1.0), "own arithmetic";
}

formula! {
    /// Energy that the link takes up elastically.
    ELASTIC_ENERGY: "U_e" Moment = "Q² · c / 2";
    given force "Q" Force "force across the link", give "c" Compliance "deflection of the link at the point of impact, for each unit of force";
    code force * force * give / 2.0;
    source STATICS, "work of a spring", Computed;
    example [lbf(5_183.627_88), inch(1.0) / (lbf(6_067.200_812_245))] gives "2214.37" of lbf_in(1.0), "2.0 in bar of 7075, 40 in long, to first yield; own arithmetic";
}

formula! {
    /// Moment at which a whole section has yielded.
    PLASTIC_MOMENT: "M_p" Moment = "Z · F";
    given modulus "Z" SectionModulus "plastic modulus", yielding "F" Stress "yield strength";
    code modulus * yielding;
    source STATICS, "every fiber at yield; ductile metal only", Computed;
    example [in3(4.0 / 3.0), ksi(66.0)] gives "88000" of lbf_in(1.0), "2.0 in bar, 66 ksi; own arithmetic";
}

formula! {
    /// Moment at which a compressed tube forms a plastic hinge.
    HINGE_MOMENT: "M_pc" Moment = "F · Z · cos(π · N / (2 · A · F))";
    given yielding "F" Stress "yield strength", modulus "Z" SectionModulus "plastic modulus", axial "N" Force "compression along the link at that moment", area "A" Area "area";
    code yielding * modulus * cosine(PI * axial / (2.0 * area * yielding));
    holds "N < A · F" => axial < area * yielding;
    source STATICS, "exact for a thin tube, close for the walls used here", Memory;
    example [ksi(70.0), in3((8.0 - 1.5 * 1.5 * 1.5) / 6.0), lbf(2600.0), in2(PI / 4.0 * (4.0 - 2.25))] gives "53.9097" of lbf_in(1000.0), "2 x .250 tube of 70 ksi; own arithmetic";
}

formula! {
    /// Strike at which a plastic hinge forms at mid-span.
    HINGE_STRIKE: "P_h" Force = "P · M_pc / M";
    given strike "P" Force "the strike", hinge "M_pc" Moment "moment of the plastic hinge", moment "M" Moment "moment at mid-span under that strike";
    code strike * hinge / moment;
    holds "M > 0" => moment > 0.0;
    source STATICS, "moment in proportion to the strike, with the compression as it is", Computed;
    example [lbf(5000.0), lbf_in(53_958.0), lbf_in(45_000.0)] gives "5995.33" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Deflection of link and rest of the rig when the hinge forms.
    HINGE_DEFLECTION: "d" FineLength = "P_h · (c_1 + c_2)";
    given hinge "P_h" Force "strike that forms the hinge", link "c_1" Compliance "deflection of the link for each unit of force", rest "c_2" Compliance "deflection of everything else for each unit of force";
    code hinge * (link + rest);
    source STATICS, "springs one after the other", Computed;
    example [lbf(5500.0), inch(1.0) / lbf(15_000.0), inch(1.0) / lbf(5000.0)] gives "1.46667" of inch(1.0), "own arithmetic";
}

formula! {
    /// Bow left where the weight comes to rest on the plastic hinge: what its fall gives and the springs do not hold.
    BOW_BY_ENERGY: "b" FineLength = "(w · (h + d) − P_h · d / 2) / (P_h − w)";
    given weight "w" Weight "weight that strikes", drop "h" FineLength "how far it falls", deflection "d" FineLength "deflection when the hinge forms", hinge "P_h" Force "strike that forms the hinge";
    code (weight * (drop + deflection) - hinge * deflection / 2.0) / (hinge - weight);
    holds "P_h > w" => hinge > weight;
    source STATICS, "energy of the fall; the hinge resists with the same force all along", Computed;
    example [lbf(2300.0), inch(0.5), inch(1.478_83), lbf(5528.6)] gives "0.14352" of inch(1.0), "own arithmetic";
}

formula! {
    /// Bow that stays after a hit has put so much energy into bending the bar for good.
    BOW_LEFT: "d" FineLength = "U_p · L / (4 · M_p)";
    given energy "U_p" Moment "energy past first yield", length "L" Length "length between ball centers", moment "M_p" Moment "moment at which the whole section has yielded";
    code energy * length / (4.0 * moment);
    source STATICS, "one plastic hinge at the middle turns by U_p over M_p", Computed;
    example [lbf_in(4400.0), inch(40.0), lbf_in(88000.0)] gives "0.5" of inch(1.0), "own arithmetic";
}

formula! {
    /// Turns of a repeated stress after which notched bars of 7075-T6 broke in tests.
    NOTCHED_7075_LIFE: "n" Count = "C · (s_1 / (S − s_0))^3.63";
    given scale "C" Count "scale of the fitted curve", unit "s_1" Stress "unit of the fitted curve", stress "S" Stress "greatest stress of the turn, on the section that is left", floor "s_0" Stress "stress below which the fitted curve has no end";
    code scale * power(unit / (stress - floor), 3.63);
    holds "S > s_0" => stress > floor;
    source MIL_HDBK_5J, "Figure 3.7.6.1.8(c), notch factor 3.4: own fit to the lowest curve, taken for full reversal, which was not verified", Computed;
    example [630_957_344.48, ksi(1.0), ksi(14.9), ksi(3.74)] gives "99307" of 1.0, "own arithmetic; read off the curve: 14.9 ksi at 100,000";
}

listed! {FIRST_YIELD_STRIKE, DROP_FOR_FORCE, ELASTIC_ENERGY, HINGE_MOMENT, HINGE_STRIKE, HINGE_DEFLECTION, BOW_BY_ENERGY, BOW_LEFT, NOTCHED_7075_LIFE; references PLASTIC_MOMENT}
