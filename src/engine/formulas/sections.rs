//! Areas and moments of a round bar, a tube, and a round bar with two wrench flats.

use crate::engine::math::{arcsine, cubed, fourth, power, sine};
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{DEGREE, in2, in3, in4, inch, ksi};

/// Half angle of flats 1.75 in across on a 2.0 in bar: asin(0.875).
const FLATS_1_75_ON_2: f64 = 1.065_435_816_510_739_3;

formula! {
    /// Area of a round bar or tube.
    RING_AREA: "A" Area = "π / 4 · (D² − d²)";
    given outer "D" FineLength "outside diameter", inner "d" FineLength "bore, 0 for a solid bar";
    code PI / 4.0 * (outer * outer - inner * inner);
    holds "D > d" => outer > inner;
    source GEOMETRY, "ring", Computed;
    example [inch(2.0), inch(1.5)] gives "1.37444679" of in2(1.0), "tube 2.000 in with 0.250 in wall; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Second moment of area of a round bar or tube: how much its shape resists bending.
    RING_SECOND_MOMENT: "I" SecondMoment = "π / 64 · (D⁴ − d⁴)";
    given outer "D" FineLength "outside diameter", inner "d" FineLength "bore, 0 for a solid bar";
    code PI / 64.0 * (fourth(outer) - fourth(inner));
    holds "D > d" => outer > inner;
    source GEOMETRY, "ring", Computed;
    example [inch(2.0), inch(1.5)] gives "0.53689328" of in4(1.0), "tube 2.000 in with 0.250 in wall; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Section modulus of a round bar or tube: bending moment for each unit of stress at its surface.
    RING_SECTION_MODULUS: "S" SectionModulus = "π / 32 · (D⁴ − d⁴) / D";
    given outer "D" FineLength "outside diameter", inner "d" FineLength "bore, 0 for a solid bar";
    code PI / 32.0 * (fourth(outer) - fourth(inner)) / outer;
    holds "D > d" => outer > inner;
    source GEOMETRY, "ring", Computed;
    example [inch(2.0), inch(1.5)] gives "0.53689328" of in3(1.0), "tube 2.000 in with 0.250 in wall; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Plastic modulus of a round bar or tube: bending moment for each unit of stress once all of it yields.
    RING_PLASTIC_MODULUS: "Z" SectionModulus = "(D³ − d³) / 6";
    given outer "D" FineLength "outside diameter", inner "d" FineLength "bore, 0 for a solid bar";
    code (cubed(outer) - cubed(inner)) / 6.0;
    holds "D > d" => outer > inner;
    source GEOMETRY, "ring", Computed;
    example [inch(2.0), inch(1.5)] gives "0.770833333" of in3(1.0), "tube 2.000 in with 0.250 in wall; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Radius of gyration: how far from its middle a section's metal sits, on the whole.
    RADIUS_OF_GYRATION: "r" FineLength = "√(I / A)";
    given second_moment "I" SecondMoment "second moment of area", area "A" Area "area";
    code (second_moment / area).sqrt();
    source GEOMETRY, "definition", Computed;
    example [in4(PI / 4.0), in2(PI)] gives "0.5" of inch(1.0), "own arithmetic: a quarter of a 2 in diameter";
}

formula! {
    /// Half the angle that a pair of wrench flats leaves of the round.
    FLATS_HALF_ANGLE: "φ" Angle = "asin(w / D)";
    given width "w" FineLength "width across the flats", outer "D" FineLength "outside diameter";
    code arcsine(width / outer);
    holds "w ≤ D" => width <= outer;
    source GEOMETRY, "circular segment", Computed;
    example [inch(1.75), inch(2.0)] gives "61.0449756" of DEGREE, "2.0 in bar, flats 1.75 in across; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Area of a round bar with a pair of wrench flats.
    FLATS_AREA: "A" Area = "D² / 4 · (2 · φ + sin(2 · φ)) − π / 4 · d²";
    given outer "D" FineLength "outside diameter", angle "φ" Angle "half angle left by the flats", inner "d" FineLength "bore, 0 for a solid bar";
    code outer * outer / 4.0 * (2.0 * angle + sine(2.0 * angle)) - PI / 4.0 * inner * inner;
    holds "d < D · sin(φ)" => inner < outer * sine(angle);
    holds "φ ≤ π / 2" => angle <= PI / 2.0;
    source GEOMETRY, "circular segment", Computed;
    example [inch(2.0), FLATS_1_75_ON_2, 0.0] gives "2.97808674" of in2(1.0), "2.0 in bar, flats 1.75 in across; own arithmetic, independent tool: sectionproperties 3.10.2";
}

formula! {
    /// Second moment of area of a round bar with wrench flats, bent across the flats: the weak way.
    FLATS_WEAK_SECOND_MOMENT: "I" SecondMoment = "D⁴ / 16 · (φ / 2 − sin(4 · φ) / 8) − π / 64 · d⁴";
    given outer "D" FineLength "outside diameter", angle "φ" Angle "half angle left by the flats", inner "d" FineLength "bore, 0 for a solid bar";
    code fourth(outer) / 16.0 * (angle / 2.0 - sine(4.0 * angle) / 8.0) - PI / 64.0 * fourth(inner);
    holds "d < D · sin(φ)" => inner < outer * sine(angle);
    holds "φ ≤ π / 2" => angle <= PI / 2.0;
    source GEOMETRY, "circular segment", Computed;
    example [inch(2.0), FLATS_1_75_ON_2, inch(1.171_875)] gives "0.55266338" of in4(1.0), "2.0 in bar, flats 1.75 in across, bored 1.171875 in; own arithmetic, independent tool: sectionproperties 3.10.2";
}

formula! {
    /// Section modulus of a round bar with wrench flats, bent across the flats: the weak way.
    FLATS_WEAK_MODULUS: "S" SectionModulus = "I / (w / 2)";
    given second_moment "I" SecondMoment "second moment of area, the weak way", width "w" FineLength "width across the flats";
    code second_moment / (width / 2.0);
    source GEOMETRY, "definition", Computed;
    example [in4(0.645_238_664_65), inch(1.75)] gives "0.737415617" of in3(1.0), "2.0 in bar, flats 1.75 in across; own arithmetic, independent tool: sectionproperties 3.10.2";
}

formula! {
    /// Second moment of area of a round bar with wrench flats, bent along the flats: the strong way.
    FLATS_STRONG_SECOND_MOMENT: "I" SecondMoment = "D⁴ / 16 · (φ / 2 + sin(2 · φ) / 3 + sin(4 · φ) / 24) − π / 64 · d⁴";
    given outer "D" FineLength "outside diameter", angle "φ" Angle "half angle left by the flats", inner "d" FineLength "bore, 0 for a solid bar";
    code fourth(outer) / 16.0 * (angle / 2.0 + sine(2.0 * angle) / 3.0 + sine(4.0 * angle) / 24.0) - PI / 64.0 * fourth(inner);
    holds "d < D · sin(φ)" => inner < outer * sine(angle);
    holds "φ ≤ π / 2" => angle <= PI / 2.0;
    source GEOMETRY, "circular segment", Computed;
    example [inch(2.0), FLATS_1_75_ON_2, 0.0] gives "0.777616025" of in4(1.0), "2.0 in bar, flats 1.75 in across; own arithmetic, independent tool: sectionproperties 3.10.2";
}

formula! {
    /// Plastic modulus of a round bar with wrench flats, bent across the flats: the weak way.
    FLATS_WEAK_PLASTIC_MODULUS: "Z" SectionModulus = "(D³ − (D² − w²)^1.5) / 6 − d³ / 6";
    given outer "D" FineLength "outside diameter", width "w" FineLength "width across the flats", inner "d" FineLength "bore, 0 for a solid bar";
    code (cubed(outer) - power(outer * outer - width * width, 1.5)) / 6.0 - cubed(inner) / 6.0;
    holds "w ≤ D" => width <= outer;
    holds "d < w" => inner < width;
    source GEOMETRY, "circular segment", Computed;
    example [inch(2.0), inch(1.75), inch(1.171_875)] gives "0.91382402" of in3(1.0), "2.0 in bar, flats 1.75 in across, bored 1.171875 in; own arithmetic, independent tool: sectionproperties 3.10.2";
}

formula! {
    /// Plastic modulus of a round bar with wrench flats, bent along the flats: the strong way.
    FLATS_STRONG_PLASTIC_MODULUS: "Z" SectionModulus = "D² · w / 4 − w³ / 12 − d³ / 6";
    given outer "D" FineLength "outside diameter", width "w" FineLength "width across the flats", inner "d" FineLength "bore, 0 for a solid bar";
    code outer * outer * width / 4.0 - cubed(width) / 12.0 - cubed(inner) / 6.0;
    holds "w ≤ D" => width <= outer;
    holds "d < w" => inner < width;
    source GEOMETRY, "circular segment", Computed;
    example [inch(2.0), inch(1.75), 0.0] gives "1.30338542" of in3(1.0), "2.0 in bar, flats 1.75 in across; own arithmetic, independent tool: sectionproperties 3.10.2";
}

formula! {
    /// Outside diameter that leaves a bar as strong around its threaded hole as the shank in it.
    EQUAL_STRENGTH_DIAMETER: "D_o" FineLength = "√(D² + 4 · A_t · F_s / (π · F_b))";
    given thread "D" FineLength "thread diameter", area "A_t" Area "tensile stress area of the shank", shank "F_s" Stress "breaking strength of the shank", bar "F_b" Stress "breaking strength of the bar";
    code (thread * thread + 4.0 * area * shank / (PI * bar)).sqrt();
    source STATICS, "equal breaking load of ring and shank", Computed;
    example [inch(0.75), in2(0.373), ksi(150.0), ksi(77.0)] gives "1.21969899" of inch(1.0), "3/4-16 shank of 150 ksi in a 77 ksi bar; own arithmetic, independent tool: mpmath 1.4.1";
}

listed! {RING_AREA, RING_SECOND_MOMENT, RING_SECTION_MODULUS, RING_PLASTIC_MODULUS, RADIUS_OF_GYRATION, FLATS_HALF_ANGLE, FLATS_AREA, FLATS_WEAK_SECOND_MOMENT, FLATS_WEAK_MODULUS; references FLATS_STRONG_SECOND_MOMENT, FLATS_WEAK_PLASTIC_MODULUS, FLATS_STRONG_PLASTIC_MODULUS, EQUAL_STRENGTH_DIAMETER}
