//! A link as it would be made: lengths, threads, engagement, adjustment.

use crate::document::Hand;
use crate::engine::formula::Line;
use crate::engine::tables::inserts;
use crate::engine::tables::materials::Material;
use crate::engine::tables::threads::Thread;
use crate::quantity::exceeds;
use crate::source::Cite;

/// A link as it would be made.
#[derive(Debug, Clone, PartialEq)]
pub struct LinkGeometry {
    /// What the bar is made of.
    pub material: &'static Material,
    /// Outside diameter as finished.
    pub outside_diameter: f64,
    /// Outside diameter as bought: larger where a skim pass is turned off a bar.
    pub stock_diameter: f64,
    /// Wall of a tube, 0 for a solid bar.
    pub wall: f64,
    /// Bore of a tube, 0 for a solid bar.
    pub bore: f64,
    /// Mount to mount, and eye to eye as set.
    pub length: f64,
    /// Finished bar length.
    pub bar: f64,
    /// Length to saw.
    pub cut: f64,
    /// Whether bar and cut length stand only until the rod ends are measured: a series is a stand-in for them.
    pub provisional: bool,
    /// Weight of the bar without rod ends.
    pub bar_weight: f64,
    /// End A and end B.
    pub ends: [EndGeometry; 2],
    /// Wrench flats: start from face A, length, width across. `None` for tubes.
    pub flats: Option<Flats>,
    /// How far it can be made longer and shorter.
    pub adjustment: Adjustment,
    /// How the lengths and the least engagements came out.
    pub working: Vec<Line>,
}

impl LinkGeometry {
    /// Whether a skim pass is turned off the bar.
    pub fn is_skimmed(&self) -> bool {
        exceeds(self.stock_diameter, self.outside_diameter)
    }

    /// The wrench flats that are milled; none where they are as wide as the bar, so that nothing is cut.
    pub fn cut_flats(&self) -> Option<Flats> {
        self.flats.filter(|flats| flats.width < self.outside_diameter)
    }
}

/// Wrench flats on a bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flats {
    /// From face A to where they begin.
    pub start: f64,
    /// Along the bar.
    pub length: f64,
    /// Across.
    pub width: f64,
}

/// One end of a link as it would be made. All lengths SI.
#[derive(Debug, Clone, PartialEq)]
pub struct EndGeometry {
    /// The rod end's name on screen.
    pub rod_end: &'static str,
    /// Its id in the table, or the id for the user's own.
    pub rod_end_id: &'static str,
    /// Shank thread.
    pub thread: &'static Thread,
    /// Hand of thread.
    pub hand: Hand,
    /// Hole in the ball.
    pub bore: f64,
    /// Face to face of the ball.
    pub ball_width: f64,
    /// Head diameter, when the table has it.
    pub head_diameter: Option<f64>,
    /// Eye center to shank end.
    pub eye_to_end: f64,
    /// Thread length of the shank.
    pub thread_length: f64,
    /// Jam-nut thickness.
    pub jam_nut: f64,
    /// Jam-nut width across flats.
    pub jam_nut_across: f64,
    /// Breaking strength of the shank.
    pub shank_ultimate: f64,
    /// Yield strength of the shank.
    pub shank_yield: f64,
    /// Length of shank inside the bar as set, lead and countersink included: what a ruler tells.
    pub inserted: f64,
    /// What of that length is no full thread.
    pub not_full: f64,
    /// Full thread engaged as set.
    pub engagement: f64,
    /// Least full thread engaged, by one diameter, the load, or the user.
    pub least: f64,
    /// Most full thread that can be engaged.
    pub most: f64,
    /// The lines on the engagement scale, named and sourced.
    pub marks: Vec<EngagementMark>,
    /// Visible thread past the jam nut as set, as a length.
    pub visible: f64,
    /// The same in threads.
    pub visible_threads: f64,
    /// Eye center to bar face: what a ruler reads.
    pub eye_to_face: f64,
    /// Least and most diameter of the hole before it is tapped.
    pub hole: [f64; 2],
    /// Diameter of the 90° countersink at the mouth of the hole.
    pub countersink: f64,
    /// Depth of full thread in the bar.
    pub tapped_depth: f64,
    /// Drill depth to the shoulder.
    pub drill_depth: f64,
    /// Drill depth to the point.
    pub drill_point: f64,
    /// The threaded insert of a tube; a bar is tapped itself.
    pub insert: Option<inserts::Fitted>,
    /// Where winding out ends.
    pub stop: OutwardStop,
    /// How far this end may be wound out and in.
    pub reach: Reach,
}

/// The setting beyond which an end may not be wound out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutwardStop {
    /// Length of shank still inside the bar there.
    pub inserted: f64,
    /// Threads that show past the jam nut there.
    pub visible_threads: f64,
    /// What sets it.
    pub by: StopBy,
}

/// What sets the outward stop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StopBy {
    /// Three visible threads: common practice.
    VisibleThreads,
    /// The least engagement.
    Engagement,
    /// The shank reaches its limit in bending.
    ShankBending,
}

/// The rule behind a line on the engagement scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EngagementRule {
    /// The thread is as strong as the shank.
    Shank,
    /// The one-third rule for tapped aluminum.
    OneThird,
    /// Common practice in the metal of the bar.
    Practice,
    /// One diameter.
    OneDiameter,
    /// The largest load with its factor.
    Load,
    /// What the user requires.
    Yours,
}

/// A named line on the engagement scale.
#[derive(Debug, Clone, PartialEq)]
pub struct EngagementMark {
    /// Its rule.
    pub rule: EngagementRule,
    /// Its name.
    pub name: &'static str,
    /// The engagement it asks for.
    pub length: f64,
    /// Whether the link as set reaches it.
    pub reached: bool,
    /// Where it comes from.
    pub source: Cite,
}

/// How far an end, or the whole link, may be wound from where it is set. Lengths SI, never negative.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Reach {
    /// Longer, keeping 0 to 3 visible threads.
    pub out_good: f64,
    /// Shorter, keeping 0 to 3 visible threads.
    pub in_good: f64,
    /// Longer, to least engagement.
    pub out_limit: f64,
    /// Shorter, to the hard stop.
    pub in_limit: f64,
}

/// Adjustment of the whole link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Adjustment {
    /// In lengths.
    pub reach: Reach,
    /// Change of length for one turn of the bar; 0 when turning the bar does not change it.
    pub per_turn: f64,
    /// Turns of the bar out and in within good practice.
    pub turns_good: [f64; 2],
    /// Turns of the bar out and in to the hard limits.
    pub turns_limit: [f64; 2],
    /// Whether the ends have opposite hands.
    pub opposite_hands: bool,
    /// Which way to turn the bar, seen from end A; `None` when turning it does not change the length.
    pub turning: Option<&'static str>,
}
