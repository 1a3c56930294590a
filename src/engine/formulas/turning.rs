//! What is read on a fitted link, what turning it does, and how far that moves an axle or a wheel.

use crate::engine::formula::{formula, listed};
use crate::engine::math::{cosine, sine};
use crate::quantity::{deg, inch};

formula! {
    /// Shank in the bar, from the threads counted past the jam nut.
    INSERTED_BY_COUNT: "e" FineLength = "T − J − n · P";
    given thread "T" FineLength "thread length of the shank", nut "J" FineLength "thickness of the jam nut", count "n" Ratio "threads counted past the jam nut", pitch "P" FineLength "pitch of the thread";
    code thread - nut - count * pitch;
    source GEOMETRY, "along the shank", Computed;
    example [inch(2.343), inch(0.718_75), 2.0, inch(1.0 / 12.0)] gives "1.45758" of inch(1.0), "own arithmetic";
}

formula! {
    /// Threads that show past the jam nut.
    THREADS_SHOWING: "n" Ratio = "(T − J − e) / P";
    given thread "T" FineLength "thread length of the shank", nut "J" FineLength "thickness of the jam nut", inserted "e" FineLength "length of shank in the bar", pitch "P" FineLength "pitch of the thread";
    code (thread - nut - inserted) / pitch;
    holds "P > 0" => pitch > 0.0;
    source GEOMETRY, "along the shank", Computed;
    example [inch(2.0), inch(0.5), inch(1.375), inch(0.0625)] gives "2" of 1.0, "own arithmetic";
}

formula! {
    /// Full thread engaged, as fitted.
    FULL_AS_FITTED: "e_f" FineLength = "e − u";
    given inserted "e" FineLength "length of shank in the bar", not_full "u" FineLength "what of it is no full thread: lead chamfer and countersink";
    code inserted - not_full;
    source GEOMETRY, "along the shank", Computed;
    example [inch(1.5), inch(0.125)] gives "1.375" of inch(1.0), "own arithmetic";
}

formula! {
    /// A length along a shank in threads.
    IN_THREADS: "n" Ratio = "e / P";
    given length "e" FineLength "length along the shank", pitch "P" FineLength "pitch of the thread";
    code length / pitch;
    holds "P > 0" => pitch > 0.0;
    source GEOMETRY, "thread", Computed;
    example [inch(1.25), inch(0.0625)] gives "20" of 1.0, "own arithmetic";
}

formula! {
    /// Engagement in diameters of the thread.
    IN_DIAMETERS: "k" Ratio = "e_f / D";
    given engagement "e_f" FineLength "full thread engaged", diameter "D" FineLength "thread diameter";
    code engagement / diameter;
    holds "D > 0" => diameter > 0.0;
    source GEOMETRY, "definition", Computed;
    example [inch(1.5), inch(0.75)] gives "2" of 1.0, "own arithmetic";
}

formula! {
    /// Change of length that so many flats of the bar give.
    CHANGE_BY_FLATS: "Δ" FineLength = "f · p / 6";
    given flats "f" Count "flats, each a sixth of a turn", per_turn "p" FineLength "change of length for one turn";
    code flats * per_turn / 6.0;
    source GEOMETRY, "thread", Computed;
    example [9.0, inch(0.125)] gives "0.1875" of inch(1.0), "own arithmetic";
}

formula! {
    /// Change of length that half turns of one eye give, with its bolt out.
    CHANGE_BY_HALF_TURNS: "Δ" FineLength = "m · P / 2";
    given half_turns "m" Count "half turns of the eye", pitch "P" FineLength "pitch of its thread";
    code half_turns * pitch / 2.0;
    source GEOMETRY, "thread", Computed;
    example [3.0, inch(0.0625)] gives "0.09375" of inch(1.0), "own arithmetic";
}

formula! {
    /// Change of length that half turns of both eyes give, one after the other with its bolt out.
    CHANGE_BY_BOTH_EYES: "Δ" FineLength = "(m · P_a + n · P_b) / 2";
    given at_a "m" Count "half turns of the eye at A", pitch_a "P_a" FineLength "pitch of the thread at A", at_b "n" Count "half turns of the eye at B", pitch_b "P_b" FineLength "pitch of the thread at B";
    code (at_a * pitch_a + at_b * pitch_b) / 2.0;
    source GEOMETRY, "thread", Computed;
    example [3.0, inch(0.0625), 2.0, inch(0.083_333_333_333)] gives "0.177083" of inch(1.0), "own arithmetic: 3/32 + 1/12";
}

formula! {
    /// What the error of a tape comes to in turns.
    TURNS_OF_TAPE: "n_u" Ratio = "u / p";
    given error "u" FineLength "what a tape may be off by", per_turn "p" FineLength "change of length for one turn";
    code error / per_turn;
    holds "p > 0" => per_turn > 0.0;
    source GEOMETRY, "thread", Computed;
    example [inch(0.0625), inch(0.125)] gives "0.5" of 1.0, "own arithmetic";
}

formula! {
    /// Run of a link along the rig: its reach in the direction of travel.
    LINK_RUN: "R" Length = "ℓ · cos(θ) · cos(β)";
    given length "ℓ" Length "length of the link, eye to eye", plan "θ" Angle "angle to straight ahead, seen from above", slope "β" Angle "slope seen from the side, up toward the frame";
    code length * cosine(plan) * cosine(slope);
    source GEOMETRY, "projection", Computed;
    example [inch(40.0), deg(60.0), deg(0.0)] gives "20" of inch(1.0), "own arithmetic";
}

formula! {
    /// Rise of a link from the axle to the frame.
    LINK_RISE: "V" Length = "ℓ · cos(θ) · sin(β)";
    given length "ℓ" Length "length of the link, eye to eye", plan "θ" Angle "angle to straight ahead, seen from above", slope "β" Angle "slope seen from the side, up toward the frame";
    code length * cosine(plan) * sine(slope);
    source GEOMETRY, "projection", Computed;
    example [inch(40.0), deg(0.0), deg(30.0)] gives "20" of inch(1.0), "own arithmetic";
}

formula! {
    /// Reach of a link across the rig.
    LINK_ACROSS: "y" Length = "ℓ · sin(θ)";
    given length "ℓ" Length "length of the link, eye to eye", plan "θ" Angle "angle to straight ahead, seen from above";
    code length * sine(plan);
    source GEOMETRY, "projection", Computed;
    example [inch(40.0), deg(30.0)] gives "20" of inch(1.0), "own arithmetic";
}

formula! {
    /// How far an axle moves toward the frame's end of its links when it is tilted and one pair of links stays as it is.
    AXLE_SHIFT: "x" Length = "R + d · sin(δ) − √(R² + V² − (V + d − d · cos(δ))²)";
    given run "R" Length "run of the links that stay", rise "V" Length "rise of the links that stay", arm "d" Length "height of their mount over the middle of the axle; negative under it", tilt "δ" Angle "how far the axle is tilted, pinion up";
    code run + arm * sine(tilt) - (run * run + rise * rise - (rise + arm - arm * cosine(tilt)) * (rise + arm - arm * cosine(tilt))).sqrt();
    holds "R² + V² > (V + d − d · cos(δ))²" => run * run + rise * rise > (rise + arm - arm * cosine(tilt)) * (rise + arm - arm * cosine(tilt));
    source GEOMETRY, "axle as a rigid body seen from the side, its middle held at its height by the springs", Computed;
    example [inch(40.0), 0.0, inch(-4.0), deg(90.0)] gives "-3.7995" of inch(1.0), "own arithmetic: −4 + 40 − √(40² − 4²)";
}

formula! {
    /// Length of a link with the axle tilted and moved.
    LENGTH_THERE: "ℓ_n" Length = "√((R − x + d · sin(δ))² + (V + d − d · cos(δ))² + y²)";
    given run "R" Length "run of the link", rise "V" Length "rise of the link", across "y" Length "reach of the link across the rig", arm "d" Length "height of its mount over the middle of the axle; negative under it", tilt "δ" Angle "how far the axle is tilted, pinion up", shift "x" Length "how far the axle moves toward the frame’s end of its links";
    code ((run - shift + arm * sine(tilt)) * (run - shift + arm * sine(tilt)) + (rise + arm - arm * cosine(tilt)) * (rise + arm - arm * cosine(tilt)) + across * across).sqrt();
    source GEOMETRY, "axle as a rigid body seen from the side, its middle held at its height by the springs", Computed;
    example [inch(30.0), 0.0, 0.0, inch(10.0), deg(90.0), 0.0] gives "41.2311" of inch(1.0), "own arithmetic: √(40² + 10²)";
}

formula! {
    /// Length of a track bar with the axle moved away from the bar's frame end.
    TRACK_BAR_THERE: "ℓ_n" Length = "√((ℓ · cos(β) + s)² + (ℓ · sin(β))²)";
    given length "ℓ" Length "length of the bar, eye to eye", slope "β" Angle "slope of the bar, seen from the front", shift "s" Length "how far the axle moves away from the bar’s frame end";
    code ((length * cosine(slope) + shift) * (length * cosine(slope) + shift) + (length * sine(slope)) * (length * sine(slope))).sqrt();
    source GEOMETRY, "axle held at its height by the springs", Computed;
    example [inch(50.0), deg(0.0), inch(0.5)] gives "50.5" of inch(1.0), "own arithmetic";
}

formula! {
    /// Change of a tie rod's length for a change of toe.
    TIE_ROD_CHANGE: "Δ" FineLength = "t · r / D";
    given toe "t" FineLength "change of toe, both wheels together, across the tire", arm "r" Length "steering arm", tire "D" Length "tire diameter";
    code toe * arm / tire;
    holds "D > 0" => tire > 0.0;
    source GEOMETRY, "steering arms straight ahead: each wheel's arm and tire turn by the same angle, t = 2 · D · sin, Δ = 2 · r · sin", Computed;
    example [inch(0.125), inch(6.5), inch(37.0)] gives "0.0219595" of inch(1.0), "own arithmetic";
}

listed! {INSERTED_BY_COUNT, THREADS_SHOWING, FULL_AS_FITTED, IN_THREADS, IN_DIAMETERS, CHANGE_BY_FLATS, CHANGE_BY_HALF_TURNS, CHANGE_BY_BOTH_EYES, TURNS_OF_TAPE, LINK_RUN, LINK_RISE, LINK_ACROSS, AXLE_SHIFT, LENGTH_THERE, TRACK_BAR_THERE, TIE_ROD_CHANGE}
