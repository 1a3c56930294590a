//! Bolts, eyes and bracket ears.

use crate::engine::math::cubed;
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{in2, in3, inch, ksi, lbf, lbf_in};

formula! {
    /// Area of a round bolt.
    BOLT_AREA: "A" Area = "π / 4 · d²";
    given diameter "d" FineLength "diameter";
    code PI / 4.0 * diameter * diameter;
    source GEOMETRY, "circle", Computed;
    example [inch(1.0)] gives "0.785398" of in2(1.0), "own arithmetic";
}

formula! {
    /// Load at which a bolt held on both sides shears.
    DOUBLE_SHEAR_CAPACITY: "P_v" Force = "2 · A · F_s";
    given area "A" Area "area of the bolt where it shears", shear "F_s" Stress "shear strength of the bolt";
    code 2.0 * area * shear;
    source STATICS, "two shear planes", Computed;
    example [in2(0.351), ksi(90.0)] gives "63.18" of lbf(1000.0), "3/4-16 grade 8, thread in both shear planes; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Bending moment in a bolt between the ears of its bracket.
    BOLT_MOMENT: "M" Moment = "P / 2 · (t / 2 + g + s + w / 4)";
    given force "P" Force "force on the eye", ear "t" FineLength "thickness of one ear", gap "g" FineLength "play on one side", spacer "s" FineLength "spacer on one side", ball "w" FineLength "width of the ball";
    code force / 2.0 * (ear / 2.0 + gap + spacer + ball / 4.0);
    source STATICS, "the ball presses evenly over its width, each ear at its middle", Computed;
    example [lbf(8000.0), inch(0.25), 0.0, inch(0.375), inch(1.0)] gives "3000" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Diameter of a spacer's face on the ear, where none is given.
    SPACER_FOOT: "D_o" FineLength = "k_o · d";
    given share "k_o" Ratio "face in bolt diameters", diameter "d" FineLength "diameter of the bolt";
    code share * diameter;
    source OURS, "usual spacers; measure yours", Assumption;
    example [1.6, inch(0.625)] gives "1" of inch(1.0), "own arithmetic";
}

formula! {
    /// Bending moment at which a clamped stack of ears, spacers and ball begins to open.
    CLAMP_MOMENT: "M_c" Moment = "k · F_i · (D_o² + d²) / (8 · D_o)";
    given scatter "k" Percent "share of the preload that is sure to be there", preload "F_i" Force "preload of the bolt", foot "D_o" FineLength "outside diameter of the stack where it is least", diameter "d" FineLength "diameter of the bolt";
    code scatter * preload * (foot * foot + diameter * diameter) / (8.0 * foot);
    holds "D_o > d" => foot > diameter;
    source STATICS, "bending stress at the edge of a ring equals its even pressure", Computed;
    example [0.75, lbf(20000.0), inch(1.0), inch(0.5)] gives "2343.75" of lbf_in(1.0), "own arithmetic";
}

formula! {
    /// Section modulus of a round bolt or shank.
    ROUND_MODULUS: "S" SectionModulus = "π · d³ / 32";
    given diameter "d" FineLength "diameter";
    code PI * cubed(diameter) / 32.0;
    source GEOMETRY, "circle", Computed;
    example [inch(2.0)] gives "0.785398" of in3(1.0), "own arithmetic";
}

formula! {
    /// Area of metal on both sides of the ball.
    EYE_AREA: "A_e" Area = "(D_h − D_r) · H";
    given head "D_h" FineLength "diameter of the head", race "D_r" FineLength "hole in the head that holds the race", width "H" FineLength "width of the head";
    code (head - race) * width;
    holds "D_h > D_r" => head > race;
    source GEOMETRY, "smallest section of the head", Computed;
    example [inch(2.775), inch(2.125), inch(1.015)] gives "0.65975" of in2(1.0), "sizes of SAE AS81935/1A dash 16; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Tension at which the head opens.
    EYE_LOAD: "P_e" Force = "A_e · F";
    given area "A_e" Area "area of metal on both sides of the ball", strength "F" Stress "strength of the head";
    code area * strength;
    source STATICS, "even stress over both sides; bending of the ring is not counted", Computed;
    example [in2(0.5), ksi(132.0)] gives "66" of lbf(1000.0), "own arithmetic";
}

formula! {
    /// Pressure of a bolt on its hole.
    BEARING_STRESS: "σ_b" Stress = "P / (t · d)";
    given force "P" Force "force on the eye", thickness "t" FineLength "thickness that the bolt presses on", diameter "d" FineLength "diameter of the bolt";
    code force / (thickness * diameter);
    source STATICS, "even pressure over thickness times diameter", Computed;
    example [lbf(10000.0), inch(0.5), inch(1.0)] gives "20" of ksi(1.0), "own arithmetic";
}

formula! {
    /// Two forces at right angles together.
    RESULTANT: "R" Force = "√(N² + V²)";
    given along "N" Force "force along the link", across "V" Force "force across it";
    code (along * along + across * across).sqrt();
    source GEOMETRY, "right triangle", Computed;
    example [lbf(3000.0), lbf(4000.0)] gives "5000" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Utilization of a part: demand with its factor over capacity.
    UTILIZATION: "U" Percent = "n · S / R";
    given demand "S" Force "force it bears", factor "n" Ratio "factor", capacity "R" Force "force it can bear";
    code factor * demand / capacity;
    holds "R > 0" => capacity > 0.0;
    source STATICS, "definition; 100 % is the limit", Computed;
    example [lbf(8000.0), 1.5, lbf(16000.0)] gives "75" of 0.01, "own arithmetic";
}

formula! {
    /// Utilization of the metal: stress with its factor over strength.
    STRESS_UTILIZATION: "U" Percent = "n · σ / R";
    given demand "σ" Stress "stress it bears", factor "n" Ratio "factor", capacity "R" Stress "stress it can bear";
    code factor * demand / capacity;
    holds "R > 0" => capacity > 0.0;
    source STATICS, "definition; 100 % is the limit", Computed;
    example [ksi(40.0), 1.25, ksi(64.0)] gives "78.125" of 0.01, "own arithmetic";
}

formula! {
    /// Utilization of the metal, under loads that have their factor already.
    STRESS_SHARE: "U" Percent = "σ / R";
    given demand "σ" Stress "stress under the loads with their factor", capacity "R" Stress "stress it can bear";
    code demand / capacity;
    holds "R > 0" => capacity > 0.0;
    source STATICS, "definition; 100 % is the limit", Computed;
    example [ksi(48.0), ksi(64.0)] gives "75" of 0.01, "own arithmetic";
}

formula! {
    /// Utilization of a bending strength.
    MOMENT_SHARE: "U" Percent = "M / M_r";
    given demand "M" Moment "bending moment", capacity "M_r" Moment "moment that can be borne";
    code demand / capacity;
    holds "M_r > 0" => capacity > 0.0;
    source STATICS, "definition; 100 % is the limit", Computed;
    example [lbf_in(40_000.0), lbf_in(50_000.0)] gives "80" of 0.01, "own arithmetic";
}

formula! {
    /// Utilization of a length: required over available.
    LENGTH_SHARE: "U" Percent = "a / b";
    given asked "a" FineLength "length required", there "b" FineLength "length available";
    code asked / there;
    holds "b > 0" => there > 0.0;
    source GEOMETRY, "definition; 100 % is the limit", Computed;
    example [inch(1.0), inch(1.6)] gives "62.5" of 0.01, "own arithmetic";
}

listed! {
    BOLT_AREA,
    DOUBLE_SHEAR_CAPACITY,
    BOLT_MOMENT,
    SPACER_FOOT,
    CLAMP_MOMENT,
    ROUND_MODULUS,
    EYE_AREA,
    EYE_LOAD,
    BEARING_STRESS,
    RESULTANT,
    UTILIZATION,
    STRESS_UTILIZATION,
    STRESS_SHARE,
    MOMENT_SHARE,
    LENGTH_SHARE,
}
