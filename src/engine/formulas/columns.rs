//! A link as a column, straight, bowed or bent, and as a beam-column.

use crate::engine::math::{cosine, cubed, power, sine, tangent};
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{INCH, in2, in4, inch, ksi, lbf, lbf_in, mm, mpa};

/// Wave number of a 2.0 in bar of 10,300 ksi under 10,000 lbf.
const WAVE_10_000_LBF: f64 = 0.035_158_994_550_486_35 / INCH;
/// Half the phase at half the critical load: π / 2 · √0.5.
const PHASE_AT_HALF: f64 = PI / 2.0 * std::f64::consts::FRAC_1_SQRT_2;

formula! {
    /// Critical load of a long straight link.
    EULER_LOAD: "P_e" Force = "π² · E · I / L²";
    given modulus "E" Stress "modulus of elasticity in compression", second_moment "I" SecondMoment "second moment of area", length "L" Length "length between ball centers";
    code PI * PI * modulus * second_moment / (length * length);
    source SHIGLEY, "Eq. 4-43, ends free to turn", Read;
    example [ksi(10500.0), in4(PI / 4.0), inch(40.0)] gives "50869.6727" of lbf(1.0), "2.0 in bar of 7075, 40 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Diameter of a round bar with a given critical load.
    EULER_DIAMETER: "d" FineLength = "(64 · P · L² / (π³ · E))^0.25";
    given compression "P" Force "compression, with its factor", length "L" Length "length between ball centers", modulus "E" Stress "modulus of elasticity in compression";
    code power(64.0 * compression * length * length / (cubed(PI) * modulus), 0.25);
    source SHIGLEY, "Ex. 4-17, p. 187", Read;
    example [4.0 * 22_000.0, 1.5, mpa(207_000.0)] gives "37.48" of mm(1.0), "Shigley 9e Ex. 4-17";
}

formula! {
    /// Slenderness: length in radii of gyration.
    SLENDERNESS: "λ" Ratio = "L / r";
    given length "L" Length "length between ball centers", radius "r" FineLength "radius of gyration";
    code length / radius;
    source SHIGLEY, "columns, pp. 184 to 187", Read;
    example [inch(40.0), inch(0.625)] gives "64.0" of 1.0, "tube 2.000 in with 0.250 in wall, 40 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Slenderness at which the short-column curve meets the long-column curve.
    TRANSITION_SLENDERNESS: "λ_t" Ratio = "√(2 · π² · E / F_y)";
    given modulus "E" Stress "modulus of elasticity in compression", yielding "F_y" Stress "yield strength in compression";
    code (2.0 * PI * PI * modulus / yielding).sqrt();
    source SHIGLEY, "columns, pp. 184 to 187", Read;
    example [ksi(10500.0), ksi(64.0)] gives "56.9075034" of 1.0, "7075 bar; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Critical load of a short link, by the Johnson curve.
    JOHNSON_LOAD: "P_J" Force = "A · F_y · (1 − F_y · λ² / (4 · π² · E))";
    given area "A" Area "area", yielding "F_y" Stress "yield strength in compression", slenderness "λ" Ratio "slenderness", modulus "E" Stress "modulus of elasticity in compression";
    code area * yielding * (1.0 - yielding * slenderness * slenderness / (4.0 * PI * PI * modulus));
    holds "λ ≤ √(2 · π² · E / F_y)" => slenderness <= (2.0 * PI * PI * modulus / yielding).sqrt();
    source SHIGLEY, "Eq. 4-46", Read;
    // The printed solution goes on with the rounded slenderness.
    example [in2(0.601_320_468_851), ksi(37.5), 82.3, ksi(30000.0)] gives "17714" of lbf(1.0), "Shigley instructor solution: 7/8 in round, 18 in long, slenderness 82.3";
}

formula! {
    /// Critical load of a long link, from its slenderness.
    EULER_COLUMN_LOAD: "P_e" Force = "π² · E · A / λ²";
    given area "A" Area "area", slenderness "λ" Ratio "slenderness", modulus "E" Stress "modulus of elasticity in compression";
    code PI * PI * modulus * area / (slenderness * slenderness);
    holds "λ > 0" => slenderness > 0.0;
    source SHIGLEY, "columns, pp. 184 to 187", Read;
    example [in2(PI), 80.0, ksi(10500.0)] gives "50869.6727" of lbf(1.0), "2.0 in bar of 7075, 40 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Wave number of a link in compression: how fast its bent shape would turn back on itself.
    WAVE_NUMBER: "k" PerLength = "√(N / (E · I))";
    given force "N" Force "compression along the link", modulus "E" Stress "modulus of elasticity in compression", second_moment "I" SecondMoment "second moment of area";
    code (force / (modulus * second_moment)).sqrt();
    holds "N ≥ 0" => force >= 0.0;
    source TIMOSHENKO_GERE, "beam-columns; a test integrates the bent shape", Memory;
    example [lbf(10000.0), ksi(10300.0), in4(PI / 4.0)] gives "0.03515899455" of 1.0 / INCH, "2.0 in bar; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Bending moment in a link that is in compression and hit at the same time.
    BEAM_COLUMN_MOMENT: "M" Moment = "Q · sin(k · b) · sin(k · x) / (k · sin(k · L))";
    given load "Q" Force "strike force", k "k" PerLength "wave number", b "b" Length "from the strike to the far eye", x "x" Length "from the near eye to the place asked about, not past the strike", length "L" Length "length between ball centers";
    code load * sine(k * b) * sine(k * x) / (k * sine(k * length));
    holds "k · L < π" => k * length < PI;
    source TIMOSHENKO_GERE, "beam-column with one load across it; a test integrates the bent shape", Memory;
    example [lbf(2000.0), WAVE_10_000_LBF, inch(20.0), inch(20.0), inch(40.0)] gives "24111.5786" of lbf_in(1.0), "2.0 in bar, 40 in long, 10,000 lbf compression; own arithmetic, independent tool: PyNiteFEA 3.2.0";
}

formula! {
    /// Deflection of a link that is in compression and hit, under the strike.
    BEAM_COLUMN_DEFLECTION: "δ" FineLength = "(M − M_0) / N";
    given moment "M" Moment "moment under the strike while in compression", simple "M_0" Moment "moment under the strike alone", compression "N" Force "compression along the link";
    code (moment - simple) / compression;
    holds "N > 0" => compression > 0.0;
    source STATICS, "compression times deflection is the moment it adds", Computed;
    example [lbf_in(30_942.782_937), lbf_in(20000.0), lbf(20000.0)] gives "0.547139147" of inch(1.0), "2.0 in bar, 40 in long, 20,000 lbf compression, 2,000 lbf strike; own arithmetic, independent tool: PyNiteFEA 3.2.0";
}

formula! {
    /// Half the wave number times the length, from the compression as a share of the critical load.
    HALF_PHASE: "u" Ratio = "π / 2 · √(N / P_e)";
    given compression "N" Force "compression along the link", euler "P_e" Force "critical load";
    code PI / 2.0 * (compression / euler).sqrt();
    holds "N < P_e" => compression < euler;
    holds "N ≥ 0" => compression >= 0.0;
    source TIMOSHENKO_GERE, "beam-columns; a test integrates the bent shape", Memory;
    example [lbf(25000.0), lbf(50000.0)] gives "1.1107" of 1.0, "half the critical load; own arithmetic";
}

formula! {
    /// How many times larger compression makes the moment of a load at the middle.
    MID_MOMENT_AMPLIFICATION: "m_M" Ratio = "tan(u) / u";
    given u "u" Ratio "half the wave number times the length";
    code tangent(u) / u;
    holds "u > 0" => u > 0.0;
    holds "u < π / 2" => u < PI / 2.0;
    source TIMOSHENKO_GERE, "beam-column with one load at the middle; a test integrates the bent shape", Memory;
    example [PHASE_AT_HALF] gives "1.81682813" of 1.0, "half the critical load; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// How many times larger compression makes the deflection of a load at the middle.
    MID_DEFLECTION_AMPLIFICATION: "m_δ" Ratio = "3 · (tan(u) − u) / u³";
    given u "u" Ratio "half the wave number times the length";
    code 3.0 * (tangent(u) - u) / cubed(u);
    holds "u > 0" => u > 0.0;
    holds "u < π / 2" => u < PI / 2.0;
    source TIMOSHENKO_GERE, "beam-column with one load at the middle; a test integrates the bent shape", Memory;
    example [PHASE_AT_HALF] gives "1.98628782" of 1.0, "half the critical load; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Greatest stress in a straight link in compression off its center line, by the secant formula.
    SECANT_STRESS: "σ" Stress = "N / A · (1 + e · c / (r² · cos(L / (2 · r) · √(N / (A · E)))))";
    given compression "N" Force "compression along the link", area "A" Area "area", offset "e" FineLength "offset of the load", surface "c" FineLength "from the middle of the section to its surface", radius "r" FineLength "radius of gyration", length "L" Length "length between ball centers", modulus "E" Stress "modulus of elasticity in compression";
    code compression / area * (1.0 + offset * surface / (radius * radius * cosine(length / (2.0 * radius) * (compression / (area * modulus)).sqrt())));
    holds "L / (2 · r) · √(N / (A · E)) < π / 2" => length / (2.0 * radius) * (compression / (area * modulus)).sqrt() < PI / 2.0;
    source SHIGLEY, "Eq. 4-50; a test integrates the bent shape", Memory;
    example [lbf(40000.0), in2(PI), inch(0.1), inch(1.0), inch(0.5), inch(40.0), ksi(10300.0)] gives "43.844595" of ksi(1.0), "2.0 in bar, 40 in long, 0.1 in off; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Bow of a bar that is not straight, as the column curve counts it.
    CROOKEDNESS: "η" Ratio = "d_0 · c / r²";
    given bow "d_0" FineLength "bow at the middle", surface "c" FineLength "from the middle of the section to its surface", radius "r" FineLength "radius of gyration";
    code bow * surface / (radius * radius);
    source CASE_CHILVER_ROSS, "p. 439, Eqs. 18.33 to 18.36, initially curved strut", Copied;
    example [inch(0.08), inch(1.0), inch(0.5)] gives "0.32" of 1.0, "2.0 in bar, 40 in long, bow of a 500th; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Half sum of yield and critical stress that the bowed-column curve is built on.
    PERRY_HALF_SUM: "b" Stress = "(F_y + (1 + η) · F_e) / 2";
    given yielding "F_y" Stress "yield strength in compression", crookedness "η" Ratio "bow as the curve counts it", critical "F_e" Stress "critical load of the straight link over its area";
    code (yielding + (1.0 + crookedness) * critical) / 2.0;
    source CASE_CHILVER_ROSS, "p. 439, Eqs. 18.33 to 18.36, initially curved strut", Copied;
    example [ksi(64.0), 0.32, ksi(15.883_894_583)] gives "42.4833704" of ksi(1.0), "2.0 in bar of 7075, 40 in long, bow of a 500th; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Load at which a bowed link first yields in compression, by the Perry-Robertson curve.
    PERRY_ROBERTSON_LOAD: "P" Force = "A · (b − √(b² − F_y · F_e))";
    given area "A" Area "area", half_sum "b" Stress "half sum of yield and critical stress", yielding "F_y" Stress "yield strength in compression", critical "F_e" Stress "critical load of the straight link over its area";
    code area * (half_sum - (half_sum * half_sum - yielding * critical).sqrt());
    holds "b² ≥ F_y · F_e" => half_sum * half_sum >= yielding * critical;
    source CASE_CHILVER_ROSS, "p. 439, Eqs. 18.33 to 18.36, initially curved strut", Copied;
    example [in2(PI), ksi(42.483_370_424_78), ksi(64.0), ksi(15.883_894_583)] gives "45261.768" of lbf(1.0), "2.0 in bar of 7075, 40 in long, bow of a 500th; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Bow of a bar that is sold as straight.
    STRAIGHTNESS: "d_0" FineLength = "b · L";
    given share "b" Percent "bow over length", length "L" Length "length between ball centers";
    code share * length;
    source OURS, "a 500th of the length unless something better is known", Assumption;
    example [0.002, inch(50.0)] gives "0.1" of inch(1.0), "own arithmetic";
}

formula! {
    /// Bow of a link after a hit has left a permanent set in it.
    BOW_AFTER_SET: "d" FineLength = "d_0 + s";
    given bow "d_0" FineLength "bow of the straight link", set "s" FineLength "permanent set";
    code bow + set;
    source GEOMETRY, "both bows on the same side", Computed;
    example [inch(0.076), inch(0.002)] gives "0.078" of inch(1.0), "own arithmetic";
}

formula! {
    /// Greatest moment in a bent bar in tension.
    BENT_MOMENT_TENSION: "M" Moment = "N · e_o";
    given load "N" Force "tension, with its factor", offset "e_o" FineLength "offset of the bar from the line between its eyes";
    code load * offset;
    source STATICS, "lever; straightening is not counted on", Computed;
    example [lbf(5625.0), inch(2.0)] gives "11250" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Greatest moment in a bent bar in compression.
    BENT_MOMENT: "M" Moment = "N · e_o / (1 − N / P_e)";
    given load "N" Force "compression, with its factor", offset "e_o" FineLength "offset of the bar from the line between its eyes", critical "P_e" Force "critical load of the straight bar";
    code load * offset / (1.0 - load / critical);
    holds "N < P_e" => load < critical;
    source TIMOSHENKO_GERE, "bar with an initial bow", Memory;
    example [lbf(5625.0), inch(2.0), lbf(49_374.553_571)] gives "12696.44" of lbf_in(1.0), "1-1/2 in tube, wall 1/4 in, 34 in long, offset 2 in; own arithmetic";
}

formula! {
    /// What is zero when a link with weaker ends buckles; below zero it is stable.
    STEPPED_COLUMN_BALANCE: "g" Ratio = "tan(√(P / (E_1 · I_1)) · a) · tan(√(P / (E_2 · I_2)) · b) − √(E_2 · I_2 / (E_1 · I_1))";
    given compression "P" Force "compression along the link", end_modulus "E_1" Stress "modulus of elasticity of the ends", end_moment "I_1" SecondMoment "second moment of area of the ends", end "a" Length "length of each end", modulus "E_2" Stress "modulus of elasticity of the middle", second_moment "I_2" SecondMoment "second moment of area of the middle", half "b" Length "half the length of the middle";
    code tangent((compression / (end_modulus * end_moment)).sqrt() * end) * tangent((compression / (modulus * second_moment)).sqrt() * half) - (modulus * second_moment / (end_modulus * end_moment)).sqrt();
    holds "√(P / (E_1 · I_1)) · a < π / 2" => (compression / (end_modulus * end_moment)).sqrt() * end < PI / 2.0;
    holds "√(P / (E_2 · I_2)) · b < π / 2" => (compression / (modulus * second_moment)).sqrt() * half < PI / 2.0;
    source TIMOSHENKO_GERE, "bar of stepped section; a test integrates the bent shape", Memory;
    example [lbf(30000.0), ksi(29000.0), in4(0.032_320_897_262), inch(1.5), ksi(10300.0), in4(0.460_385_983_964), inch(16.5)] gives "-1.20885071" of 1.0, "1.75 in bar with 0.9008 in steel ends, 36 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Compression at which a section yields all over.
    SQUASH_LOAD: "P" Force = "A · F_y";
    given area "A" Area "area", yielding "F_y" Stress "yield strength in compression";
    code area * yielding;
    source STATICS, "even stress", Computed;
    example [in2(2.0), ksi(40.0)] gives "80000" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Diameter in walls up to which a round tube bends as a whole before its wall buckles.
    THIN_TUBE: "q" Ratio = "0.11 · E / F_y";
    given modulus "E" Stress "modulus of elasticity in compression", yielding "F_y" Stress "yield strength in compression";
    code 0.11 * modulus / yielding;
    source AISC_360, "Table B4.1a, round tube in compression: a limit from tests, which nothing here derives", Memory;
    example [ksi(29000.0), ksi(70.0)] gives "45.571" of 1.0, "drawn tube of 70 ksi; own arithmetic";
}

formula! {
    /// Most diameters over wall at which a tube forms a plastic hinge before its wall buckles.
    COMPACT_TUBE: "q_p" Ratio = "0.07 · E / F_y";
    given modulus "E" Stress "modulus of elasticity", yielding "F_y" Stress "yield strength";
    code 0.07 * modulus / yielding;
    source AISC_360, "Table B4.1b, round tube in bending, compact", Memory;
    example [ksi(29_000.0), ksi(70.0)] gives "29" of 1.0, "own arithmetic";
}

listed! {EULER_LOAD, TRANSITION_SLENDERNESS, JOHNSON_LOAD, EULER_COLUMN_LOAD, WAVE_NUMBER, BEAM_COLUMN_DEFLECTION, CROOKEDNESS, PERRY_HALF_SUM, PERRY_ROBERTSON_LOAD, STRAIGHTNESS, BOW_AFTER_SET, BENT_MOMENT_TENSION, BENT_MOMENT, SQUASH_LOAD, THIN_TUBE, COMPACT_TUBE; references EULER_DIAMETER, SLENDERNESS, BEAM_COLUMN_MOMENT, HALF_PHASE, MID_MOMENT_AMPLIFICATION, MID_DEFLECTION_AMPLIFICATION, SECANT_STRESS, STEPPED_COLUMN_BALANCE}
