//! What the reader is told: plain data with every number in SI and every sentence ready to be shown.

use std::sync::Arc;

use crate::document::Role;
use crate::engine::formula::Line;
use crate::engine::sentence::Said;
use crate::engine::tables::practice::{GoesBy, Size};
use crate::quantity::Kind;
use crate::source::Cite;

mod geometry;
mod prove;
mod rig;

pub use geometry::{
    Adjustment, EndGeometry, EngagementMark, EngagementRule, Flats, LinkGeometry, OutwardStop, Reach, StopBy,
};
pub use rig::{BoughtBolt, Cut, FewerSizes, Part, Placed, Plan, RigReport, WholeRig};

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
    /// The worst verdict of all findings; what cannot be judged makes it [`Verdict::Close`] at best.
    pub verdict: Verdict,
    /// On what the link passes only: the conditions of its checks, and what could not be judged.
    pub conditions: Vec<Said>,
    /// Of a tube that takes small bends: strike to first yield, and that of a solid 7075 bar of its diameter.
    pub beside_7075: Option<[f64; 2]>,
    /// What to mind before acting on this.
    pub cautions: Vec<Said>,
    /// Values nobody gave, with the input that would replace each.
    pub assumed: Vec<Assumption>,
}

impl Answer {
    /// The finding that uses most of what it may, if one does.
    pub fn weakest_finding(&self) -> Option<&Finding> {
        self.findings.get(self.weakest?)
    }

    /// Whether some check passes with little margin, or bends.
    pub fn has_little_margin(&self) -> bool {
        self.findings.iter().any(|finding| matches!(finding.verdict, Verdict::Close | Verdict::Bends))
    }

    /// The word for how the link came out.
    pub fn word(&self) -> &'static str {
        let conditional = self.verdict == Verdict::Close && !self.conditions.is_empty();
        if conditional { ON_A_CONDITION } else { self.verdict.word() }
    }

    /// How a steering link takes the greatest compression, whether that governs or not: long and slender, it often buckles
    /// before anything breaks.
    pub fn buckling(&self) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.topic == Topic::Buckling && self.role.steers())
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

/// The forces one link must bear.
#[derive(Debug, Clone, PartialEq)]
pub struct Loads {
    /// Largest tension or compression along the link, with shock.
    pub axial: f64,
    /// Tension or compression acting together with a strike.
    pub axial_with_strike: f64,
    /// Weight that lands on the bar.
    pub strike_weight: f64,
    /// How far it falls.
    pub drop: f64,
    /// The force it lands with at the middle.
    pub strike: f64,
    /// Where its zone begins, as a share of the length.
    pub zone: f64,
    /// What the force along the link comes from, as a noun phrase.
    pub from: &'static str,
    /// What the reader should know of that force; empty for most links.
    pub remark: Said,
    /// What makes it less certain than usual; empty for most links.
    pub caution: Said,
    /// The axle's forces, for links that hold it against drive and brakes.
    pub axle: Option<Axle>,
    /// Ids of the changed defaults that the force along the link rests on.
    pub axial_changed: Vec<&'static str>,
    /// Ids of the changed defaults that the strike rests on.
    pub strike_changed: Vec<&'static str>,
    /// Why the force along the link cannot be told, where a formula for it was used beyond its range.
    pub axial_out_of_range: Option<Said>,
    /// The same for the strike.
    pub strike_out_of_range: Option<Said>,
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
    /// What it is about, where others go by that.
    pub topic: Topic,
    /// What was checked, as the list of checks names it.
    pub title: &'static str,
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
    /// The other answer, where an entry that nobody made decides.
    pub otherwise: Option<Said>,
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
    /// The word for how it came out.
    pub fn word(&self) -> &'static str {
        if self.verdict == Verdict::Close && self.condition.is_some() { ON_A_CONDITION } else { self.verdict.word() }
    }

    /// Whether it waits for an entry that nobody must make: it says nothing for or against the link.
    pub fn is_left_open(&self) -> bool {
        self.optional && self.verdict == Verdict::Unanswered
    }
}

/// What a check is about, where more than the check itself goes by it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Topic {
    /// Bending of the bar at mid-span: without it nothing can be said of a size.
    BarBending,
    /// Buckling of the whole link, which sits at no one place.
    Buckling,
    /// Wrench flats, the only part that goes by where they lie.
    WrenchFlats,
    /// Anything else.
    Other,
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

/// The word for what passes only on a condition.
const ON_A_CONDITION: &str = "Passes, on a condition";

impl Verdict {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Passes => "Passes",
            Self::Close => "Passes, little margin",
            Self::Unanswered => "Not judged",
            Self::Bends => "Bends, does not break",
            Self::Fails => "Fails",
        }
    }
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

impl Candidate {
    /// Its bar or tube.
    pub const fn size(&self) -> Size {
        Size { outside_diameter: self.outside_diameter, wall: self.wall }
    }
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
    /// The next size that passes with more in hand, where the recommended one passes with little margin or bends: a larger
    /// bar, or larger rod ends where those are asked for most.
    pub next_up: Option<Candidate>,
    /// Where no stock size passes: what is fitted all the same, and what would help.
    pub fitted: Option<Fitted>,
}

/// What is fitted by common practice where no stock size passes, or a larger size that comes out better; without a habit,
/// the largest in stock.
#[derive(Debug, Clone, PartialEq)]
pub struct Fitted {
    /// What builders usually fit, where they have a habit.
    pub habit: Option<Trade>,
    /// That size, judged.
    pub candidate: Candidate,
    /// The rig weight it is good to with everything else as it is; `None` when it passes at none.
    pub good_to: Option<f64>,
    /// The part that yields first.
    pub yields_first: &'static str,
    /// How it comes out.
    pub verdict: Verdict,
    /// What would help, the most helpful first.
    pub cures: Vec<Said>,
    /// Where larger sizes are stocked but no strength is published for them: up to where it is.
    pub strengths_end: Option<Said>,
}

impl Trade {
    /// Whether it is a habit about rod ends alone.
    pub fn is_of_rod_ends(&self) -> bool {
        self.goes_by == GoesBy::RodEnds
    }
}

/// What builders usually fit for a job (common practice, no source).
#[derive(Debug, Clone, PartialEq)]
pub struct Trade {
    /// The least they fit.
    pub least: Size,
    /// The most they usually fit.
    pub most: Size,
    /// Id of its rod ends' thread.
    pub thread: &'static str,
    /// The class of that thread, by which inch and metric threads are compared.
    pub class: Option<usize>,
    /// What it goes by; where by the rod ends alone, the sizes are only what takes them.
    pub goes_by: GoesBy,
    /// What is fitted, as a noun phrase.
    pub name: Said,
    /// The habit in a sentence.
    pub words: Said,
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
    /// Whether the limits are those to failure, since the link is past passing already: it bends.
    pub to_failure: bool,
}
