//! What a weight does when it lands on a link.

use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{in2, inch, ksi, lbf, lbf_in};

/// One pound-force per inch.
const LBF_PER_INCH: f64 = lbf(1.0) / inch(1.0);
/// What a 2.0 in steel bar, 10 in long and standing on end, gives under 500 lbf.
const BAR_ON_END: f64 = lbf(500.0) * inch(10.0) / (ksi(30000.0) * in2(PI));

formula! {
    /// How far the link and the rest of the rig deflect under the striking weight at rest.
    STATIC_DEFLECTION: "δ" FineLength = "w · (c_1 + c_2)";
    given weight "w" Weight "weight that strikes", give "c_1" Compliance "deflection of the link at the point of impact, for each unit of force", compliance "c_2" Compliance "deflection of everything else, for each unit of force";
    code weight * (give + compliance);
    source STATICS, "springs one after the other", Computed;
    example [lbf(2000.0), 1.0 / (6_067.200_812_245 * LBF_PER_INCH), inch(0.1) / lbf(1000.0)] gives "0.529641" of inch(1.0), "2.0 in bar, 40 in long, and 0.1 in of give for 1,000 lbf; own arithmetic";
}

formula! {
    /// Deflection of tires, springs and frame, for each unit of force.
    REST_COMPLIANCE: "c_2" Compliance = "d_s / W";
    given deflection "d_s" FineLength "deflection of the rest under the rig's weight", weight "W" Weight "weight of the rig";
    code deflection / weight;
    holds "W > 0" => weight > 0.0;
    source OURS, "the rest of the rig as one spring that its weight deflects by so much", Assumption;
    example [inch(1.0), lbf(4100.0)] gives "0.00024390" of 1.0 / LBF_PER_INCH, "own arithmetic";
}

formula! {
    /// Impact factor: how many times its own weight a falling weight comes to.
    IMPACT_FACTOR: "i" Ratio = "1 + √(1 + 2 · h / δ)";
    given drop "h" FineLength "how far it falls", deflection "δ" FineLength "deflection under the weight at rest";
    code 1.0 + (1.0 + 2.0 * drop / deflection).sqrt();
    holds "h ≥ 0" => drop >= 0.0;
    holds "δ > 0" => deflection > 0.0;
    source GERE_GOODNO, "Eq. 2-61 with 2-53, as public solutions quote them; a test derives it from the energy", Copied;
    example [inch(12.0), inch(2.0)] gives "4.606" of 1.0, "data of Gere 7e Prob. 2.8-5; own arithmetic";
}

formula! {
    /// Force of a falling weight.
    DROP_FORCE: "P" Force = "w · (1 + √(1 + 2 · h / δ))";
    given weight "w" Weight "weight that lands", drop "h" FineLength "how far it falls", deflection "δ" FineLength "deflection under the weight at rest";
    code weight * (1.0 + (1.0 + 2.0 * drop / deflection).sqrt());
    holds "h ≥ 0" => drop >= 0.0;
    holds "δ > 0" => deflection > 0.0;
    source GERE_GOODNO, "Eq. 2-53 times the stiffness, as public solutions quote it; a test derives it from the energy", Copied;
    // The textbook prints the stress; on π in² it is the force over π.
    example [lbf(500.0), inch(1.0), BAR_ON_END] gives "31061.5" of lbf(PI), "Wentzell, Machine Design, Ex. 7.1, p. 137: stress in psi on a 2 in round";
}

formula! {
    /// Stiffness of two springs one after the other.
    SERIES_STIFFNESS: "k" Stiffness = "k_1 · k_2 / (k_1 + k_2)";
    given first "k_1" Stiffness "stiffness of the link", second "k_2" Stiffness "stiffness of all that holds it";
    code first * second / (first + second);
    source STATICS, "springs one after the other", Computed;
    example [6_067.200_81 * LBF_PER_INCH, 3000.0 * LBF_PER_INCH] gives "2007.4114" of LBF_PER_INCH, "2.0 in bar, 40 in long, on 3,000 lbf/in; own arithmetic";
}

formula! {
    /// Force with which a moving weight is stopped.
    MOVING_MASS_FORCE: "P" Force = "√(2 · U · k)";
    given energy "U" Moment "energy of motion, force times distance", stiffness "k" Stiffness "stiffness of what stops it";
    code (2.0 * energy * stiffness).sqrt();
    source STATICS, "energy of motion goes into a spring", Computed;
    example [lbf_in(5415.525), 2_007.411_417_4 * LBF_PER_INCH] gives "4662.872" of lbf(1.0), "1,500 lb at 3 miles an hour; own arithmetic, independent tool: mpmath 1.4.1";
}

listed! {STATIC_DEFLECTION, REST_COMPLIANCE, DROP_FORCE; references IMPACT_FACTOR, SERIES_STIFFNESS, MOVING_MASS_FORCE}
