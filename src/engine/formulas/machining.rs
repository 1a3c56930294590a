//! Drilling and tapping the ends of a bar.

use crate::engine::math::{cubed, tangent};
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{deg, in2, in3, inch, lb_per_in3, lbf};

formula! {
    /// Length of a drill's point.
    DRILL_POINT: "l_p" FineLength = "d / (2 · tan(α / 2))";
    given diameter "d" FineLength "diameter of the drill", angle "α" Angle "angle of its point";
    code diameter / (2.0 * tangent(angle / 2.0));
    holds "α > 0" => angle > 0.0;
    holds "α < π" => angle < PI;
    source GEOMETRY, "cone", Computed;
    example [inch(1.0), deg(135.0)] gives "0.207106781" of inch(1.0), "135° point, for each unit of diameter; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Depth to drill, down to where the full diameter ends.
    FULL_DIAMETER_DEPTH: "h" FineLength = "t + c · P + n · P";
    given thread "t" FineLength "depth of full thread", chamfer "c" Count "threads that the tap's chamfer leaves unfinished", pitch "P" FineLength "pitch of the thread", clear "n" Count "clear pitches below the tap";
    code thread + chamfer * pitch + clear * pitch;
    source GEOMETRY, "along the hole", Computed;
    example [inch(1.5), 5.0, inch(0.0625), 1.0] gives "1.875" of inch(1.0), "3/4-16, plug tap of 5 threads (TM 9-254); own arithmetic";
}

formula! {
    /// Depth to drill, down to the point.
    TO_POINT_DEPTH: "h_p" FineLength = "h + l_p";
    given full "h" FineLength "depth to where the full diameter ends", point "l_p" FineLength "length of the drill's point";
    code full + point;
    source GEOMETRY, "along the hole", Computed;
    example [inch(1.875), inch(0.2065)] gives "2.0815" of inch(1.0), "own arithmetic";
}

formula! {
    /// Turns of the spindle in a minute.
    SPINDLE_SPEED: "N" Count = "12 · V / (π · D)";
    given speed "V" Count "cutting speed, feet a minute", diameter "D" InInches "diameter, inches";
    code 12.0 * speed / (PI * diameter);
    source GEOMETRY, "path of the cutting edge in one turn", Computed;
    example [200.0, 0.6875] gives "1111.2" of 1.0, "own arithmetic";
}

formula! {
    /// Cutting speed of a countersink.
    COUNTERSINK_SPEED: "V_k" Count = "s · V";
    given share "s" Ratio "share of the speed of a drill as wide", speed "V" Count "cutting speed of a drill, feet a minute";
    code share * speed;
    source SHOP_COURSE, "countersinking: a quarter of the speed of a drill as wide", Copied;
    example [0.25, 200.0] gives "50" of 1.0, "own arithmetic";
}

formula! {
    /// A cutting speed in meters a minute.
    METERS_A_MINUTE: "V_m" Count = "0.3048 · V";
    given speed "V" Count "cutting speed, feet a minute";
    code 0.3048 * speed;
    source NIST_SP_811, "foot to meter, exact", Memory;
    example [500.0] gives "152.4" of 1.0, "own arithmetic";
}

formula! {
    /// Diameter that a skim pass leaves of a bar.
    SKIMMED_DIAMETER: "D_f" FineLength = "D_s − s";
    given stock "D_s" FineLength "diameter of the bar as bought", skim "s" FineLength "what the pass takes off the diameter";
    code stock - skim;
    holds "D_s > s" => stock > skim;
    source GEOMETRY, "across the bar", Computed;
    example [inch(2.0), inch(0.03)] gives "1.970" of inch(1.0), "own arithmetic";
}

formula! {
    /// Diameter that an insert is turned to, so that it slips into its tube.
    INSERT_DIAMETER: "D_i" FineLength = "d − c";
    given bore "d" FineLength "bore of the tube", clearance "c" FineLength "how much smaller the insert is, across";
    code bore - clearance;
    holds "d > c" => bore > clearance;
    source GEOMETRY, "across the bore", Computed;
    example [inch(1.5), inch(0.004)] gives "1.496" of inch(1.0), "tube of 2 in by 1/4 in wall; own arithmetic";
}

formula! {
    /// Diameter of the holes for rosette welds in a tube.
    ROSETTE_HOLE: "d_r" FineLength = "D / 4";
    given outside "D" FineLength "outside diameter of the tube";
    code outside / 4.0;
    source PRACTICE, "a quarter of the tube across", Practice;
    example [inch(2.0)] gives "0.5" of inch(1.0), "own arithmetic";
}

formula! {
    /// Place of the holes for rosette welds: over the middle of what is in the tube.
    ROSETTE_PLACE: "x_r" FineLength = "(L_i − s) / 2";
    given long "L_i" FineLength "length of the insert or bung", flange "s" FineLength "thickness of its flange";
    code (long - flange) / 2.0;
    source GEOMETRY, "from the end of the tube", Computed;
    example [inch(1.875), inch(0.25)] gives "0.8125" of inch(1.0), "own arithmetic";
}

formula! {
    /// How far an insert or bung goes into its tube.
    INSIDE_THE_TUBE: "L_t" FineLength = "L_i − s";
    given long "L_i" FineLength "length of the insert or bung", flange "s" FineLength "thickness of its flange";
    code long - flange;
    source GEOMETRY, "along the insert", Computed;
    example [inch(1.875), inch(0.25)] gives "1.625" of inch(1.0), "own arithmetic";
}

formula! {
    /// Length that a tap goes in a minute.
    TAP_FEED: "f" FineLength = "N · P";
    given spindle "N" Count "turns a minute", pitch "P" FineLength "pitch of the thread";
    code spindle * pitch;
    source GEOMETRY, "one pitch a turn", Computed;
    example [120.0, inch(0.0625)] gives "7.5" of inch(1.0), "3/4-16 at 120 turns a minute; own arithmetic";
}

formula! {
    /// Turns of the spindle in a minute that the machine can give.
    SPINDLE_LIMIT: "N_m" Count = "min(N, N_1)";
    given asked "N" Count "turns a minute by the cutting speed", most "N_1" Count "most turns a minute of the machine";
    code asked.min(most);
    source GEOMETRY, "the lesser of the two", Computed;
    example [1111.2, 900.0] gives "900" of 1.0, "own arithmetic";
}

formula! {
    /// Minutes of drilling.
    DRILLING_TIME: "t_c" Count = "h_p / (f · N)";
    given depth "h_p" FineLength "depth to the drill point", feed "f" FineLength "feed for one turn", spindle "N" Count "turns a minute";
    code depth / (feed * spindle);
    holds "N > 0" => spindle > 0.0;
    holds "f > 0" => feed > 0.0;
    source GEOMETRY, "path over speed", Computed;
    example [inch(2.1), inch(0.007), 1000.0] gives "0.3" of 1.0, "own arithmetic";
}

formula! {
    /// Minutes of tapping, in and out again at the same speed.
    TAPPING_TIME: "t_c" Count = "2 · h / (P · N)";
    given depth "h" FineLength "depth that the tap's tip goes to", pitch "P" FineLength "pitch of the thread", spindle "N" Count "turns a minute";
    code 2.0 * depth / (pitch * spindle);
    holds "N > 0" => spindle > 0.0;
    source GEOMETRY, "path over speed", Computed;
    example [inch(1.875), inch(0.0625), 200.0] gives "0.3" of 1.0, "3/4-16, own arithmetic";
}

formula! {
    /// Minutes of turning.
    TURNING_TIME: "t_c" Count = "L / (f · N)";
    given length "L" Length "length of the bar", feed "f" FineLength "feed for one turn", spindle "N" Count "turns a minute";
    code length / (feed * spindle);
    holds "N > 0" => spindle > 0.0;
    holds "f > 0" => feed > 0.0;
    source GEOMETRY, "path over speed", Computed;
    example [inch(32.0), inch(0.008), 400.0] gives "10" of 1.0, "own arithmetic";
}

formula! {
    /// Minutes that a step takes: handling and cutting.
    STEP_TIME: "t" Count = "t_h + t_c";
    given handling "t_h" Count "minutes of setting and handling", cutting "t_c" Count "minutes of cutting";
    code handling + cutting;
    source GEOMETRY, "sum", Computed;
    example [3.0, 0.3] gives "3.3" of 1.0, "own arithmetic";
}

formula! {
    /// Diameter of a countersink.
    COUNTERSINK_DIAMETER: "D_c" FineLength = "D + w";
    given major "D" FineLength "basic major diameter", wider "w" FineLength "how much wider than the thread it is";
    code major + wider;
    source GEOMETRY, "across the hole", Computed;
    example [inch(1.25), inch(0.015_625)] gives "1.265625" of inch(1.0), "own arithmetic";
}

formula! {
    /// Volume of a drilled hole with its point.
    DRILLED_VOLUME: "V_d" SectionModulus = "π / 4 · d² · (h + l_p / 3)";
    given diameter "d" FineLength "diameter of the drill", full "h" FineLength "depth to where the full diameter ends", point "l_p" FineLength "length of the drill's point";
    code PI / 4.0 * diameter * diameter * (full + point / 3.0);
    source GEOMETRY, "cylinder and cone", Computed;
    example [inch(1.0), inch(4.0), inch(0.3)] gives "3.220132" of in3(1.0), "own arithmetic: 4.1 · π / 4";
}

formula! {
    /// What a tap cuts out of each unit of length of a drilled hole.
    TAPPED_AREA: "A_g" Area = "π / 32 · (D² − d²) + π / (12 · √3 · P) · (D³ − 3 · D · d² + 2 · d³)";
    given major "D" FineLength "basic major diameter", drilled "d" FineLength "diameter of the drilled hole", pitch "P" FineLength "pitch";
    code PI / 32.0 * (major * major - drilled * drilled)
        + PI / (12.0 * 3.0_f64.sqrt() * pitch) * (cubed(major) - 3.0 * major * drilled * drilled + 2.0 * cubed(drilled));
    holds "D > d" => major > drilled;
    source GEOMETRY, "groove of 60° with a flat of an eighth of the pitch, by its rings; a test integrates the thread", Computed;
    example [inch(0.75), inch(0.6875), inch(0.0625)] gives "0.02889499" of in2(1.0), "3/4-16 in an 11/16 hole; 200,000 rings summed apart from this engine";
}

formula! {
    /// Volume that a 90° countersink takes beyond the drilled hole.
    COUNTERSINK_VOLUME: "V_k" SectionModulus = "π / 24 · (D_c − d)² · (D_c + 2 · d)";
    given countersink "D_c" FineLength "diameter of the countersink", drilled "d" FineLength "diameter of the drilled hole";
    code PI / 24.0 * (countersink - drilled) * (countersink - drilled) * (countersink + 2.0 * drilled);
    source GEOMETRY, "frustum less the hole in it", Computed;
    example [inch(2.0), inch(1.0)] gives "0.523599" of in3(1.0), "frustum of 7 · π / 24 less π / 8; own arithmetic";
}

formula! {
    /// Volume of a threaded hole: drilled, tapped below its countersink, countersunk.
    THREADED_VOLUME: "V_h" SectionModulus = "V_d + A_g · (t − k) + V_k";
    given drilled "V_d" SectionModulus "volume of the drilled hole", groove "A_g" Area "what the tap cuts out of each unit of length", thread "t" FineLength "depth of full thread", countersink_depth "k" FineLength "depth of the countersink", countersink "V_k" SectionModulus "what the countersink takes";
    code drilled + groove * (thread - countersink_depth) + countersink;
    source GEOMETRY, "sum", Computed;
    example [in3(3.0), in2(0.05), inch(2.0), inch(0.05), in3(0.02)] gives "3.1175" of in3(1.0), "own arithmetic";
}

formula! {
    /// Volume that a pair of wrench flats takes.
    FLATS_VOLUME: "V_f" SectionModulus = "(A_o − A) · l";
    given full "A_o" Area "area of the round bar", left "A" Area "area between the flats", length "l" FineLength "length of the flats";
    code (full - left) * length;
    source GEOMETRY, "volume", Computed;
    example [in2(3.15), in2(2.95), inch(1.0)] gives "0.20" of in3(1.0), "own arithmetic";
}

formula! {
    /// Weight of the finished bar: drilled, tapped, countersunk, with its wrench flats.
    FINISHED_WEIGHT: "w" Weight = "ω · (A · B − V_A − V_B − V_f)";
    given density "ω" WeightDensity "weight of the metal by volume", area "A" Area "area of the bar", bar "B" Length "finished length of the bar", a "V_A" SectionModulus "volume of the hole at A", b "V_B" SectionModulus "volume of the hole at B", flats "V_f" SectionModulus "volume that the flats take";
    code density * (area * bar - a - b - flats);
    source GEOMETRY, "volume", Computed;
    example [lb_per_in3(0.1), in2(3.0), inch(30.0), in3(3.0), in3(2.0), in3(1.0)] gives "8.4" of lbf(1.0), "own arithmetic";
}

listed! {SKIMMED_DIAMETER, INSERT_DIAMETER, ROSETTE_HOLE, ROSETTE_PLACE, INSIDE_THE_TUBE, DRILL_POINT, FULL_DIAMETER_DEPTH, TO_POINT_DEPTH, SPINDLE_SPEED, COUNTERSINK_SPEED, METERS_A_MINUTE, SPINDLE_LIMIT, TAP_FEED, DRILLING_TIME, TAPPING_TIME, TURNING_TIME, STEP_TIME, COUNTERSINK_DIAMETER, DRILLED_VOLUME, TAPPED_AREA, COUNTERSINK_VOLUME, THREADED_VOLUME, FLATS_VOLUME, FINISHED_WEIGHT}
