//! What the reader is told: plain data with every number in SI and every sentence ready to be shown.

use std::sync::Arc;

use crate::document::{Hand, Role};
use crate::engine::formula::Line;
use crate::engine::sentence::Said;
use crate::engine::tables::materials::Material;
use crate::engine::tables::threads::Thread;
use crate::quantity::Kind;
use crate::source::Cite;

mod prove;
mod rig;

pub use rig::{Cut, FewerSizes, Part, Placed, Plan, RigReport};

pub use prove::{Along, Axle, Beyond, InMetal, MetalSize, Note, PartAlong, Sensitivity, Station};

/// The report on a document: one per link, in the same order.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The links.
    pub links: Vec<LinkReport>,
}

/// What can be said about one link.
#[derive(Debug, Clone, PartialEq)]
pub enum LinkReport {
    /// Entries are missing; their input ids, in the order of the form.
    Needs(Vec<&'static str>),
    /// Everything is there but no link can be made of it; why, in a sentence.
    Impossible(Said),
    /// The answer.
    Answer(Arc<Answer>),
}

impl LinkReport {
    /// The answer, if there is one.
    pub fn answer(&self) -> Option<&Answer> {
        match self {
            Self::Answer(answer) => Some(answer),
            _ => None,
        }
    }
}

/// Everything about one link.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// What it locates.
    pub role: Role,
    /// The link that is answered for: the user's choice where there is one, else the recommendation.
    pub link: LinkGeometry,
    /// The recommendation.
    pub sizing: Sizing,
    /// The forces it must bear.
    pub loads: Loads,
    /// Its parts, in order from eye A.
    pub parts: Vec<PartAlong>,
    /// Every check, in the order of the checks table.
    pub findings: Vec<Finding>,
    /// What is worth knowing beside the checks.
    pub notes: Vec<Note>,
    /// Index of the weakest strength or stability finding.
    pub weakest: Option<usize>,
    /// The worst verdict of all findings.
    pub verdict: Verdict,
    /// What to mind before acting on this.
    pub cautions: Vec<Said>,
    /// How to fit it, step by step.
    pub checklist: Vec<Said>,
    /// Values nobody gave, with the input that would replace each.
    pub assumed: Vec<Assumption>,
}

impl Answer {
    /// The finding that uses most of what it may, if one does.
    pub fn weakest_finding(&self) -> Option<&Finding> {
        self.findings.get(self.weakest?)
    }

    /// How a steering link takes the greatest push, whether that governs or not: long and slender, it often folds
    /// before anything breaks.
    pub fn buckling(&self) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.id == "buckling" && self.role.steers())
    }
}

/// A default that the answer rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Assumption {
    /// The input's id.
    pub input: &'static str,
    /// The value in force, SI.
    pub value: f64,
    /// What it measures.
    pub kind: Kind,
    /// Whether the user changed it.
    pub changed: bool,
}

/// A link as it would be made.
#[derive(Debug, Clone, PartialEq)]
pub struct LinkGeometry {
    /// What the bar is made of.
    pub material: &'static Material,
    /// Outside diameter.
    pub outside_diameter: f64,
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
    /// Depth of full thread in the bar.
    pub tapped_depth: f64,
    /// Drill depth to the shoulder.
    pub drill_depth: f64,
    /// Drill depth to the point.
    pub drill_point: f64,
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

/// The forces one link must bear.
#[derive(Debug, Clone, PartialEq)]
pub struct Loads {
    /// Largest push or pull along the link, with shock.
    pub axial: f64,
    /// Push or pull acting together with a strike.
    pub axial_with_strike: f64,
    /// Weight that lands on the bar.
    pub strike_weight: f64,
    /// How far it falls.
    pub drop: f64,
    /// The force it lands with at the middle.
    pub strike: f64,
    /// Where its zone begins, as a share of the length.
    pub zone: f64,
    /// What the force along the link comes from, as the beginning of a sentence that the force ends.
    pub from: &'static str,
    /// The axle's forces, for links that hold it against drive and brakes.
    pub axle: Option<Axle>,
    /// Ids of the changed defaults that the force along the link rests on.
    pub axial_changed: Vec<&'static str>,
    /// Ids of the changed defaults that the strike rests on.
    pub strike_changed: Vec<&'static str>,
    /// What was assumed, as one sentence.
    pub story: Said,
    /// The working.
    pub working: Vec<Line>,
}

/// The answer to one check.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Which check.
    pub id: &'static str,
    /// What was asked.
    pub asks: &'static str,
    /// What the weak spot is called on the link.
    pub part: &'static str,
    /// Distance of the weak spot from eye A, when it sits at one.
    pub station: Option<f64>,
    /// Strength and stability findings compete for the weakest part; rules of thumb do not.
    pub rule: bool,
    /// How it came out.
    pub verdict: Verdict,
    /// Demand with its factor over capacity; 1 is the limit. Absent when unanswered.
    pub utilization: Option<f64>,
    /// The same against failure, where it fails later than its utilization passes 1: a tube that bends first.
    pub to_failure: Option<f64>,
    /// Whether a search may recommend a link that comes out like this.
    pub recommendable: bool,
    /// It passes on this condition only.
    pub condition: Option<Said>,
    /// One or two sentences for the rig owner.
    pub says: Said,
    /// The working.
    pub working: Vec<Line>,
    /// The governing source.
    pub source: Cite,
    /// Ids of the changed defaults that this rests on.
    pub changed: Vec<&'static str>,
    /// Whether only an entry that nobody must make brings an answer, such as a maker's rating.
    pub optional: bool,
}

impl Finding {
    /// Whether it waits for an entry that nobody must make: it says nothing for or against the link.
    pub fn is_left_open(&self) -> bool {
        self.optional && self.verdict == Verdict::Unanswered
    }
}

/// How a check came out, the best first, so that the greatest of several is the verdict of the whole. A check that only
/// an entry of the user's could answer is left out of it: see [`Finding::is_left_open`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// It passes.
    Passes,
    /// It passes with little margin, or only on a condition that it names.
    Close,
    /// It cannot be judged from what is known; never as good as a pass.
    Unanswered,
    /// It takes a permanent bend but carries on.
    Bends,
    /// It fails.
    Fails,
}

/// A size that was tried.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Outside diameter.
    pub outside_diameter: f64,
    /// Wall, 0 for a solid bar.
    pub wall: f64,
    /// Rod end id.
    pub rod_end: &'static str,
    /// Thread id.
    pub thread: &'static str,
    /// Highest utilization of any check, 1 is the limit.
    pub utilization: f64,
    /// The check that decides it.
    pub decides: &'static str,
    /// Whether every check holds.
    pub feasible: bool,
}

/// The recommendation.
#[derive(Debug, Clone, PartialEq)]
pub struct Sizing {
    /// The smallest that holds by the numbers; `None` when no stock size does.
    pub by_numbers: Option<Candidate>,
    /// What builders fit (common practice, no source).
    pub by_trade: Option<Trade>,
    /// The larger of the two: what is recommended.
    pub recommended: Option<Candidate>,
    /// Which of the two governs, and why.
    pub governs: Said,
    /// Whether the user chose a size other than the recommended.
    pub overridden: bool,
}

/// What the trade fits for a job.
#[derive(Debug, Clone, PartialEq)]
pub struct Trade {
    /// Least diameter it would fit.
    pub least: f64,
    /// Most diameter it would fit.
    pub most: f64,
    /// Its usual shank thread.
    pub thread: &'static str,
    /// The rule in words.
    pub words: &'static str,
}

/// How far one input may go. At least one of the two limits is there.
#[derive(Debug, Clone, PartialEq)]
pub struct Firmness {
    /// The input's id.
    pub input: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// Its value now.
    pub now: f64,
    /// The least value at which the link still passes; `None` when going down never fails it, or is not asked.
    pub least: Option<f64>,
    /// The most value at which the link still passes; `None` when going up never fails it.
    pub most: Option<f64>,
}
