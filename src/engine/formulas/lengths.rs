//! The three lengths of a link, the thread at its ends, and its weight.

use std::f64::consts::PI;

use crate::engine::formula::{formula, listed};
use crate::quantity::{in2, inch, lb_per_in3, lbf};

formula! {
    /// Eye center to bar face, which a ruler can read.
    EYE_TO_FACE: "S" FineLength = "F − e";
    given eye "F" FineLength "eye center to shank end", engagement "e" FineLength "engaged thread";
    code eye - engagement;
    source GEOMETRY, "along the shank", Computed;
    example [inch(4.125), inch(1.499)] gives "2.626" of inch(1.0), "own arithmetic";
}

formula! {
    /// Engaged thread, read from outside with a ruler.
    ENGAGEMENT_FROM_OUTSIDE: "e" FineLength = "F − S";
    given eye "F" FineLength "eye center to shank end", face "S" FineLength "eye center to bar face";
    code eye - face;
    source GEOMETRY, "along the shank", Computed;
    example [inch(4.125), inch(2.625)] gives "1.5" of inch(1.0), "own arithmetic";
}

formula! {
    /// Visible thread past the jam nut.
    VISIBLE_THREAD: "s" FineLength = "T − J − e";
    given thread "T" FineLength "thread length of the shank", nut "J" FineLength "thickness of the jam nut", engagement "e" FineLength "engaged thread";
    code thread - nut - engagement;
    source GEOMETRY, "along the shank", Computed;
    example [inch(2.343), inch(0.718_75), inch(1.5)] gives "0.12425" of inch(1.0), "own arithmetic";
}

formula! {
    /// Engaged thread as first set.
    DESIGN_ENGAGEMENT: "e" FineLength = "T − J − v · P";
    given thread "T" FineLength "thread length of the shank", nut "J" FineLength "thickness of the jam nut", visible "v" Ratio "visible threads wanted", pitch "P" FineLength "pitch of the thread";
    code thread - nut - visible * pitch;
    source GEOMETRY, "along the shank", Computed;
    example [inch(2.343), inch(0.718_75), 1.5, inch(1.0 / 12.0)] gives "1.49925" of inch(1.0), "own arithmetic";
}

formula! {
    /// Finished length of the bar.
    BAR_LENGTH: "B" Length = "L − S_A − S_B";
    given length "L" Length "mount to mount", a "S_A" FineLength "eye center to bar face at end A", b "S_B" FineLength "eye center to bar face at end B";
    code length - a - b;
    source GEOMETRY, "along the link", Computed;
    example [inch(38.0), inch(2.625), inch(2.625)] gives "32.75" of inch(1.0), "own arithmetic";
}

formula! {
    /// Eye to eye, of a link as it is set.
    EYE_TO_EYE: "L" Length = "B + S_A + S_B";
    given bar "B" Length "finished length of the bar", a "S_A" FineLength "eye center to bar face at end A", b "S_B" FineLength "eye center to bar face at end B";
    code bar + a + b;
    source GEOMETRY, "along the link", Computed;
    example [inch(32.75), inch(2.625), inch(2.75)] gives "38.125" of inch(1.0), "own arithmetic";
}

formula! {
    /// Length to saw.
    CUT_LENGTH: "C" Length = "B + 2 · f";
    given bar "B" Length "finished length of the bar", facing "f" FineLength "what facing takes off each end";
    code bar + 2.0 * facing;
    source GEOMETRY, "along the bar", Computed;
    example [inch(32.75), inch(0.0625)] gives "32.875" of inch(1.0), "own arithmetic";
}

formula! {
    /// Most engaged thread that the hole allows.
    MOST_BY_HOLE: "e_h" FineLength = "t − P";
    given depth "t" FineLength "depth of full thread in the bar", pitch "P" FineLength "pitch of the thread";
    code depth - pitch;
    source GEOMETRY, "one pitch clear of the bottom", Computed;
    example [inch(2.5), inch(0.0625)] gives "2.4375" of inch(1.0), "own arithmetic";
}

formula! {
    /// Engagement required, in thread diameters.
    LEAST_BY_DIAMETERS: "e_k" FineLength = "k · D";
    given many "k" Ratio "how many diameters", diameter "D" FineLength "thread diameter";
    code many * diameter;
    source PRACTICE, "diameters of thread", Practice;
    example [1.5, inch(1.25)] gives "1.875" of inch(1.0), "own arithmetic";
}

formula! {
    /// Solid bar left between the points of the two holes.
    HOLE_WEB: "m" Length = "B − h_A − h_B";
    given bar "B" Length "finished length of the bar", a "h_A" FineLength "depth to the drill point at end A", b "h_B" FineLength "depth to the drill point at end B";
    code bar - a - b;
    source GEOMETRY, "along the bar", Computed;
    example [inch(32.75), inch(3.25), inch(3.25)] gives "26.25" of inch(1.0), "own arithmetic";
}

formula! {
    /// Wall of metal around the thread.
    WALL_AROUND_THREAD: "t_w" FineLength = "(D_o − D) / 2";
    given outside "D_o" FineLength "outside diameter of the bar", diameter "D" FineLength "thread diameter";
    code (outside - diameter) / 2.0;
    source GEOMETRY, "across the bar", Computed;
    example [inch(2.0), inch(1.25)] gives "0.375" of inch(1.0), "own arithmetic";
}

formula! {
    /// Weight of the bar before it is drilled.
    BAR_WEIGHT: "w_b" Weight = "ω · A · L";
    given density "ω" WeightDensity "weight of the metal by volume", area "A" Area "area of the section", length "L" Length "length of the bar";
    code density * area * length;
    source GEOMETRY, "volume", Computed;
    example [lb_per_in3(0.101), in2(PI), inch(40.0)] gives "12.6920343" of lbf(1.0), "2.0 in bar of 7075, 40 in long; own arithmetic, independent tool: mpmath 1.4.1";
}

formula! {
    /// Weight that a hole takes away.
    HOLE_WEIGHT: "w_h" Weight = "ω · π / 4 · d² · t";
    given density "ω" WeightDensity "weight of the metal by volume", diameter "d" FineLength "diameter of the hole", depth "t" FineLength "depth of the hole";
    code density * PI / 4.0 * diameter * diameter * depth;
    source GEOMETRY, "volume", Computed;
    example [lb_per_in3(0.1), inch(1.0), inch(4.0)] gives "0.314159" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Turns that a change of length takes.
    LENGTH_TURNS: "n" Turns = "Δ / p";
    given change "Δ" FineLength "change of length", per_turn "p" FineLength "change of length for one turn";
    code change / per_turn;
    source GEOMETRY, "thread", Computed;
    example [inch(0.25), inch(0.125)] gives "2" of 1.0, "own arithmetic";
}

formula! {
    /// Diameter of a tube in walls.
    DIAMETER_OVER_WALL: "q" Ratio = "D / t";
    given outside "D" FineLength "outside diameter", wall "t" FineLength "wall";
    code outside / wall;
    holds "t > 0" => wall > 0.0;
    source GEOMETRY, "definition", Computed;
    example [inch(2.0), inch(0.25)] gives "8" of 1.0, "own arithmetic";
}

formula! {
    /// Share of the most that is allowed.
    RATIO_SHARE: "U" Percent = "a / b";
    given there "a" Ratio "what there is", most "b" Ratio "the most that is allowed";
    code there / most;
    holds "b > 0" => most > 0.0;
    source GEOMETRY, "definition; 100 % is the limit", Computed;
    example [8.0, 40.0] gives "20" of 0.01, "own arithmetic";
}

formula! {
    /// Depth of a 90° countersink at the mouth of a hole.
    COUNTERSINK_DEPTH: "k" FineLength = "(D_c − D_1) / 2";
    given countersink "D_c" FineLength "diameter of the countersink", minor "D_1" FineLength "basic minor diameter of the hole";
    code (countersink - minor) / 2.0;
    source GEOMETRY, "cone of 90°", Computed;
    example [inch(1.265_625), inch(1.159_789_020_83)] gives "0.052918" of inch(1.0), "1-1/4-12, countersunk 1/64 in wider than its thread; own arithmetic";
}

formula! {
    /// Full thread engaged: the lead chamfer of the shank and the countersink of the hole do not count.
    FULL_THREAD: "e_f" FineLength = "e − n · P − k";
    given inserted "e" FineLength "length of shank in the bar", lead "n" Ratio "threads that the lead chamfer takes", pitch "P" FineLength "pitch of the thread", countersink "k" FineLength "depth of the countersink";
    code inserted - lead * pitch - countersink;
    source GEOMETRY, "lengths along the shank", Computed;
    example [inch(1.499_25), 1.0, inch(1.0 / 12.0), inch(0.052_918)] gives "1.3630" of inch(1.0), "1-1/4-12 with 1-1/2 threads showing; own arithmetic";
}

listed! {EYE_TO_FACE, ENGAGEMENT_FROM_OUTSIDE, VISIBLE_THREAD, DESIGN_ENGAGEMENT, BAR_LENGTH, EYE_TO_EYE, CUT_LENGTH, MOST_BY_HOLE, LEAST_BY_DIAMETERS, HOLE_WEB, WALL_AROUND_THREAD, BAR_WEIGHT, HOLE_WEIGHT, DIAMETER_OVER_WALL, RATIO_SHARE, COUNTERSINK_DEPTH, FULL_THREAD, LENGTH_TURNS}
