//! Drilling and tapping the ends of a bar.

use crate::engine::math::tangent;
use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{deg, inch};

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
    /// Diameter that a skim pass leaves of a bar.
    SKIMMED_DIAMETER: "D_f" FineLength = "D_s − s";
    given stock "D_s" FineLength "diameter of the bar as bought", skim "s" FineLength "what the pass takes off the diameter";
    code stock - skim;
    holds "D_s > s" => stock > skim;
    source GEOMETRY, "across the bar", Computed;
    example [inch(2.0), inch(0.03)] gives "1.970" of inch(1.0), "own arithmetic";
}

formula! {
    /// Length that a tap goes in a minute.
    TAP_FEED: "f" FineLength = "N · P";
    given spindle "N" Count "turns a minute", pitch "P" FineLength "pitch of the thread";
    code spindle * pitch;
    source GEOMETRY, "one pitch a turn", Computed;
    example [120.0, inch(0.0625)] gives "7.5" of inch(1.0), "3/4-16 at 120 turns a minute; own arithmetic";
}

listed! {SKIMMED_DIAMETER, DRILL_POINT, FULL_DIAMETER_DEPTH; references TO_POINT_DEPTH, SPINDLE_SPEED, TAP_FEED}
