//! Measuring, bolting and tightening a link on the rig.

use crate::engine::formula::{formula, listed};
use crate::quantity::{inch, lbf_in};

formula! {
    /// Mean of three readings.
    MEAN_OF_THREE: "L_m" Length = "(L_1 + L_2 + L_3) / 3";
    given first "L_1" Length "first reading", second "L_2" Length "second reading", third "L_3" Length "third reading";
    code (first + second + third) / 3.0;
    source GEOMETRY, "mean", Computed;
    example [inch(36.5), inch(36.5625), inch(36.53125)] gives "36.53125" of inch(1.0), "own arithmetic";
}

formula! {
    /// Mean of two readings.
    MEAN_OF_TWO: "L_m" Length = "(L_1 + L_2) / 2";
    given first "L_1" Length "one reading", second "L_2" Length "the other reading";
    code (first + second) / 2.0;
    source GEOMETRY, "mean", Computed;
    example [inch(36.5), inch(36.5625)] gives "36.53125" of inch(1.0), "own arithmetic";
}

formula! {
    /// Pitch of a thread from a count.
    COUNTED_PITCH: "P" FineLength = "c / n";
    given over "c" FineLength "length that was counted over", threads "n" Count "threads counted";
    code over / threads;
    holds "n > 0" => threads > 0.0;
    source GEOMETRY, "definition", Computed;
    example [inch(1.0), 16.0] gives "0.0625" of inch(1.0), "own arithmetic";
}

formula! {
    /// How far a counted pitch may be off.
    PITCH_ERROR: "ε_P" FineLength = "P · k / n";
    given pitch "P" FineLength "pitch from the count", miscount "k" Count "threads that a count may be off", threads "n" Count "threads counted";
    code pitch * miscount / threads;
    holds "n > 0" => threads > 0.0;
    source OURS, "a count is good to one thread", Assumption;
    example [inch(0.0625), 1.0, 16.0] gives "0.00390625" of inch(1.0), "own arithmetic";
}

formula! {
    /// Torque to set with a crow-foot adapter in line with the wrench.
    CROW_FOOT: "T_s" Torque = "T · L / (L + E)";
    given torque "T" Torque "torque the nut is to get", wrench "L" FineLength "wrench, from the hand to the middle of its square", adapter "E" FineLength "adapter, from the middle of the square to the middle of the nut";
    code torque * wrench / (wrench + adapter);
    holds "L > 0" => wrench > 0.0;
    source STATICS, "one force at the hand, two levers", Computed;
    example [lbf_in(1200.0), inch(18.0), inch(2.0)] gives "1080" of lbf_in(1.0), "100 lbf·ft, 18 in wrench, 2 in adapter; own arithmetic";
}

formula! {
    /// Least length of a bolt without thread.
    BOLT_GRIP: "G" FineLength = "b + 2 · (t + s + g)";
    given ball "b" FineLength "width of the ball", ear "t" FineLength "thickness of an ear", spacer "s" FineLength "spacer on each side", gap "g" FineLength "gap on each side that nothing fills";
    code ball + 2.0 * (ear + spacer + gap);
    source GEOMETRY, "along the bolt", Computed;
    example [inch(0.875), inch(0.25), inch(0.5), inch(0.0625)] gives "2.5" of inch(1.0), "own arithmetic";
}

formula! {
    /// Least length of a bolt under its head.
    BOLT_LENGTH: "L_b" FineLength = "G + k · d + n · P";
    given grip "G" FineLength "least length without thread", nut "k" Ratio "height of the lock nut in bolt diameters", diameter "d" FineLength "diameter of the bolt", past "n" Count "threads past the nut", pitch "P" FineLength "pitch of the bolt";
    code grip + nut * diameter + past * pitch;
    source OURS, "without washers; a lock nut as high as its bolt is thick, two threads past it", Assumption;
    example [inch(1.875), 1.0, inch(0.625), 2.0, inch(1.0 / 18.0)] gives "2.6111" of inch(1.0), "5/8-18; own arithmetic";
}

formula! {
    /// Thread of a bolt that lies inside an ear.
    THREAD_IN_EAR: "x" FineLength = "G − g_b";
    given grip "G" FineLength "length without thread that is needed", plain "g_b" FineLength "length without thread that the bolt has";
    code grip - plain;
    source GEOMETRY, "along the bolt", Computed;
    example [inch(1.875), inch(1.75)] gives "0.125" of inch(1.0), "own arithmetic";
}

formula! {
    /// Bow from which a bar is looked at as after a hit.
    BOW_TO_LOOK_AT: "y" FineLength = "k · L";
    given share "k" Percent "share of the length", length "L" Length "eye to eye";
    code share * length;
    source PRACTICE, "1 % of the length of a suspension link, none on steering", Practice;
    example [0.01, inch(38.0)] gives "0.38" of inch(1.0), "own arithmetic";
}

listed! {MEAN_OF_THREE, MEAN_OF_TWO, COUNTED_PITCH, PITCH_ERROR, CROW_FOOT, BOLT_GRIP, BOLT_LENGTH, THREAD_IN_EAR, BOW_TO_LOOK_AT}
