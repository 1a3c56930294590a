//! Shares and factors that turn a rig's weight into what one link must bear.

use crate::engine::formula::{formula, listed};
use crate::quantity::lbf;

formula! {
    /// Part of the rig's weight that comes down on a lower link.
    STRIKE_WEIGHT: "w" Weight = "s · W";
    given s "s" Percent "share of the rig's weight", w "W" Weight "weight of the rig";
    code s * w;
    source OURS, "strike scenario", Assumption;
    example [0.5, lbf(4200.0)] gives "2100" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Part of the rig's weight that comes down on an upper link or a tie rod.
    UPPER_STRIKE_WEIGHT: "w" Weight = "u · s · W";
    given u "u" Percent "what an upper link takes of a lower link's strike", s "s" Percent "share of the rig's weight on a lower link", w "W" Weight "weight of the rig";
    code u * s * w;
    source OURS, "strike scenario", Assumption;
    example [0.15, 0.5, lbf(4200.0)] gives "315" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force with shock.
    SHOCKED_FORCE: "N_s" Force = "k · N";
    given k "k" Ratio "shock factor for this use", n "N" Force "force without shock";
    code k * n;
    source OURS, "shock factor", Assumption;
    example [1.5, lbf(3500.0)] gives "5250" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Force along the link at the moment of a strike.
    FORCE_WITH_STRIKE: "N_w" Force = "c · N_s";
    given c "c" Percent "share of the force acting together with the strike", n "N_s" Force "largest force along the link";
    code c * n;
    source OURS, "strike scenario", Assumption;
    example [0.5, lbf(5250.0)] gives "2625" of lbf(1.0), "own arithmetic";
}

formula! {
    /// Largest reaction at one eye while a strike falls anywhere in its zone.
    STRIKE_REACTION: "R" Force = "P · (1 − z)";
    given p "P" Force "strike force", z "z" Percent "distance of the zone from the eye, as a share of the length";
    code p * (1.0 - z);
    source STATICS, "simple beam", Computed;
    example [lbf(4000.0), 0.25] gives "3000" of lbf(1.0), "own arithmetic";
}

listed! {STRIKE_WEIGHT, UPPER_STRIKE_WEIGHT, SHOCKED_FORCE, FORCE_WITH_STRIKE, STRIKE_REACTION}
