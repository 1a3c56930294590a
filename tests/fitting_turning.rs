//! A fitted link: which way it turns, whether it is still safe, and what a turn does to axle and wheels.

#[path = "fitting_turning/hands.rs"]
mod hands;
#[path = "fitting_turning/moves.rs"]
mod moves;
#[path = "fitting_turning/open_hit.rs"]
mod open_hit;
#[path = "fitting_turning/page.rs"]
mod page;
#[path = "fitting_turning/pairs.rs"]
mod pairs;
#[path = "fitting_turning/rig.rs"]
mod rig;
#[path = "fitting_turning/safe.rs"]
mod safe;
#[path = "fitting_turning/screw.rs"]
mod screw;
#[path = "fitting_turning/turns.rs"]
mod turns;
