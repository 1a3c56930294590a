//! Puts one link together and asks every check of it.

use std::cell::OnceCell;

use super::adjustment;
use super::beyond;
use super::bolt;
use super::checks::{self, Case};
use super::cross_sections::{SectionBuilder, Stretch, bending_steps, compression_steps};
use super::formula::Sheet;
use super::geometry::{self, Section};
use super::given::{RodEndSpec, Values};
use super::loads;
use super::profile;
use super::stepped::{Levers, Step};
use super::tables::materials::{self, Strength};
use crate::document::Document;
use crate::engine::sentence::{Said, said};
use crate::inputs;
use crate::quantity;
use crate::report::{Along, Beyond, Candidate, Finding, LinkGeometry, Loads, Note, Topic, Verdict};

#[cfg(test)]
mod tests;

/// A link with everything that was asked of it.
pub(super) struct Built {
    pub(super) made: LinkGeometry,
    /// What it is made of, in order from eye A.
    pub(super) stretches: Vec<Stretch>,
    pub(super) judged: Judged,
}

/// What was asked of a link and what came out.
pub(super) struct Judged {
    pub(super) loads: Loads,
    pub(super) findings: Vec<Finding>,
    /// What is worth knowing beside the checks; empty in a search.
    pub(super) notes: Vec<Note>,
    /// What the bar bears past its factors; none in a search, and none when the compression alone buckles it.
    pub(super) beyond: Option<Beyond>,
    /// Compression at which the link buckles, by the column curves; not a number in a search.
    pub(super) buckling: f64,
    /// Lengths of shank inside the bar at which each shank reaches its limit when wound out; none in a search.
    shank_stops: [Option<f64>; 2],
}

/// More questions than there are.
const QUESTIONS: usize = 24;

/// How much is asked of a link that is put together.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Asked {
    /// Only whether it holds: nothing is asked after the first answer that it does not.
    WhetherItHolds,
    /// Whether it is used by no more than that: nothing is asked after the first answer that it is.
    WhetherUnder(f64),
    /// Every question.
    EveryQuestion,
    /// Every question with its working.
    Everything,
}

/// A link laid out, before any load is on it. It stays the same while only loads change.
pub(super) struct LaidOutLink {
    made: LinkGeometry,
    joints: [RodEndSpec; 2],
    strength: &'static Strength,
    beside_weld: Option<&'static Strength>,
    stretches: Vec<Stretch>,
    bending: Vec<Step>,
    compression_steps: Vec<Step>,
    /// Compression at which the whole link buckles, were nothing to yield; worked out when first asked for.
    critical_load: OnceCell<f64>,
    layout_changed: Vec<&'static str>,
    out_of_range: Option<Said>,
}

/// Puts a link together.
///
/// # Errors
/// A sentence when no link of this section and these rod ends can be made.
pub(super) fn build(given: &Values, section: Section, joints: [RodEndSpec; 2], asked: Asked) -> Result<Built, Said> {
    let shape = shape(given, section, joints, asked)?;
    given.note(asked == Asked::Everything);
    let judged = judge(given, &shape, asked);
    given.note(true);
    let mut made = shape.made;
    for (end, stop) in made.ends.iter_mut().zip(judged.shank_stops) {
        adjustment::set_stop(end, stop);
    }
    made.adjustment = adjustment::adjustment(&made.ends, &mut Sheet::silent());
    Ok(Built { made, stretches: shape.stretches, judged })
}

/// Lays a link out.
///
/// # Errors
/// A sentence when no link of this section and these rod ends can be made.
pub(super) fn shape(
    given: &Values,
    section: Section,
    joints: [RodEndSpec; 2],
    asked: Asked,
) -> Result<LaidOutLink, Said> {
    given.note(asked == Asked::Everything);
    let shape = lay_out(given, section, joints, asked);
    given.note(true);
    shape
}

fn lay_out(given: &Values, section: Section, joints: [RodEndSpec; 2], asked: Asked) -> Result<LaidOutLink, Said> {
    if let Some(why) = bolt::does_not_fit(given, &joints) {
        return Err(why);
    }
    let material = given.material();
    let Some(strength) = section.strength(material) else {
        return Err(said![
            "No published strength is held for ",
            (material.label),
            " at ",
            (section.outside_diameter, FineLength),
            " outside diameter, so this size cannot be judged."
        ]);
    };
    let kept = material.is_hardened_tube() && given.link.hardened_after_welding;
    let welded = if kept { Some(material) } else { material.welded.and_then(materials::find) };
    let beside_weld = welded.and_then(|row| section.strength(row));
    if section.wall > 0.0 && section.bore() <= 0.0 {
        return Err(said![
            "A wall of ",
            (section.wall, FineLength),
            " does not go into a tube of ",
            (section.outside_diameter, FineLength),
            ": nothing would be left of its bore."
        ]);
    }
    if let Some(why) = checks::columns::bent_solid_bar(given) {
        return Err(why);
    }
    let mut sheet = asked.sheet();
    let axial = loads::largest_axial(given);
    given.begin_trace();
    let mut made = geometry::lay_out(given, section, joints, strength, axial, &mut sheet)?;
    let layout_changed = given.take_trace();
    // Not a length: only the checks of the shank rest on it.
    for (end, geometry) in made.ends.iter_mut().enumerate() {
        geometry.shank_yield = given.shank_yield(end);
    }
    let stretches = SectionBuilder { made: &made, strength, beside_weld }.along()?;
    let (bending, compression_steps) = (bending_steps(&stretches), compression_steps(&stretches));
    let out_of_range = sheet.out_of_range;
    let critical_load = OnceCell::new();
    Ok(LaidOutLink {
        made,
        joints,
        strength,
        beside_weld,
        stretches,
        bending,
        compression_steps,
        critical_load,
        layout_changed,
        out_of_range,
    })
}

/// How far the worst check is past a limit, for a link that is laid out already.
pub(super) fn over(given: &Values, shape: &LaidOutLink, limit: Limit) -> f64 {
    given.note(false);
    let judged = judge(given, shape, Asked::EveryQuestion);
    given.note(true);
    judged.over(limit)
}

/// Up to where a link is followed: until it no longer passes, or, for one that bends already, until it fails.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Limit {
    /// A check's utilization passes 1.
    Passing,
    /// A check fails.
    Failing,
}

/// Bending and strength along a link.
pub(super) fn along(document: &Document, index: usize, section: Section, joints: [RodEndSpec; 2]) -> Along {
    let Some(given) = &Values::new(document, index) else { return Along::default() };
    let Ok(shape) = shape(given, section, joints, Asked::EveryQuestion) else { return Along::default() };
    let loads = loads::on_link(given, &shape.bending, &mut Sheet::silent());
    profile::along(&shape.case(given, &loads, &shape.levers(given, &loads), &shape.sections()))
}

/// A link as a bow is judged on it; none where that cannot be told.
pub(super) fn bowed_bar(
    document: &Document,
    index: usize,
    section: Section,
    joints: [RodEndSpec; 2],
) -> Option<checks::bowed::BowedBar> {
    let given = &Values::new(document, index)?;
    let shape = shape(given, section, joints, Asked::EveryQuestion).ok()?;
    let loads = loads::on_link(given, &shape.bending, &mut Sheet::silent());
    checks::bowed::bowed_bar(&shape.case(given, &loads, &shape.levers(given, &loads), &shape.sections()))
}

impl LaidOutLink {
    fn sections(&self) -> SectionBuilder<'_> {
        SectionBuilder { made: &self.made, strength: self.strength, beside_weld: self.beside_weld }
    }

    fn levers(&self, given: &Values, loads: &Loads) -> Levers<'_> {
        Levers::new(&self.compression_steps, given.known(&inputs::YIELD_FACTOR) * loads.axial_with_strike)
    }

    /// The link under its loads.
    fn case<'a>(
        &'a self,
        given: &'a Values,
        loads: &'a Loads,
        levers: &'a Levers<'a>,
        stock: &'a SectionBuilder<'a>,
    ) -> Case<'a> {
        Case {
            given,
            made: &self.made,
            joints: self.joints,
            strength: self.strength,
            stock,
            loads,
            levers,
            stretches: &self.stretches,
            bending: &self.bending,
            compression_steps: &self.compression_steps,
            critical_load: &self.critical_load,
            layout_changed: &self.layout_changed,
            layout_out_of_range: self.out_of_range.as_ref(),
            asked: Default::default(),
        }
    }
}

/// Puts loads on a link and asks every question.
fn judge(given: &Values, shape: &LaidOutLink, asked: Asked) -> Judged {
    let mut sheet = asked.sheet();
    let loads = loads::on_link(given, &shape.bending, &mut sheet);
    let (levers, stock) = (shape.levers(given, &loads), shape.sections());
    let case = shape.case(given, &loads, &levers, &stock);
    let mut findings = Vec::with_capacity(QUESTIONS);
    let mut ask = |check| {
        let Some(finding) = checks::ask(check, &case, asked.sheet()) else { return true };
        let goes_on = asked.goes_on(&finding);
        findings.push(finding);
        goes_on
    };
    if asked == Asked::Everything {
        checks::all().all(ask);
    } else {
        checks::quick_first().all(&mut ask);
        let of_the_bar = findings.iter().filter(|finding| checks::of_the_bar(finding)).count();
        findings.rotate_right(of_the_bar);
    }
    let (mut notes, mut limits, mut buckling, mut shank_stops) = (Vec::new(), None, f64::NAN, [None, None]);
    if asked == Asked::Everything {
        let mut working = asked.sheet();
        // Past first yield a strike is weighed against the force along the link.
        let in_range = case.layout_out_of_range.is_none() && loads.axial_out_of_range.is_none();
        limits =
            in_range.then(|| beyond::limits(&case, &shape.bending, &shape.compression_steps, &mut working)).flatten();
        let after = limits.as_ref().map(|limits| beyond::beyond_yield(&case, limits, working));
        notes = after.into_iter().chain([beyond::fatigue(&case, asked.sheet())]).collect();
        buckling = checks::columns::buckling_load(&case, &mut Sheet::silent());
        shank_stops = [0, 1].map(|end| checks::shank::stop(&case, end));
    }
    Judged { notes, beyond: limits, buckling, shank_stops, findings, loads }
}

impl Asked {
    /// A sheet that keeps its working when somebody will read it.
    fn sheet(self) -> Sheet {
        if self == Self::Everything { Sheet::recording() } else { Sheet::silent() }
    }

    /// Whether anything is left to ask after a finding.
    fn goes_on(self, finding: &Finding) -> bool {
        match self {
            Self::WhetherItHolds => finding.recommendable,
            Self::WhetherUnder(most) => {
                !(Judged::decides(finding) && finding.utilization.is_some_and(|used| used > most))
            }
            Self::EveryQuestion | Self::Everything => true,
        }
    }
}

impl Judged {
    /// The finding with the highest utilization, of those that `count`.
    pub(super) fn highest(&self, count: impl Fn(&Finding) -> bool) -> Option<usize> {
        let mut highest: Option<(usize, f64)> = None;
        for (index, finding) in self.findings.iter().enumerate().filter(|(_, finding)| count(finding)) {
            if let Some(used) = finding.utilization
                && highest.is_none_or(|(_, most)| quantity::exceeds(used, most))
            {
                highest = Some((index, used));
            }
        }
        highest.map(|(index, _)| index)
    }

    /// The check on bending of the bar, when it could not be answered: without it nothing can be said of a size.
    pub(super) fn main_question_open(&self) -> Option<&Finding> {
        self.findings
            .iter()
            .find(|finding| finding.topic == Topic::BarBending && finding.verdict == Verdict::Unanswered)
    }

    /// The verdict of the whole: the worst of its parts. What cannot be judged makes a condition of it, unless only an
    /// entry of the user's could answer it.
    pub(super) fn verdict(&self) -> Verdict {
        let counted = self.findings.iter().filter(|finding| !finding.is_left_open());
        match counted.map(|finding| finding.verdict).max() {
            Some(Verdict::Unanswered) => Verdict::Close,
            Some(worst) => worst,
            None => Verdict::Unanswered,
        }
    }

    /// On what the link passes only.
    pub(super) fn conditions(&self) -> Vec<Said> {
        let open = |finding: &Finding| finding.verdict == Verdict::Unanswered && !finding.is_left_open();
        let each = self.findings.iter().filter_map(|finding| match &finding.condition {
            Some(condition) => Some(condition.clone()),
            None if open(finding) => Some(said!["the ", (finding.part), " is not judged"]),
            None => None,
        });
        let mut conditions: Vec<Said> = Vec::new();
        for condition in each {
            if !conditions.contains(&condition) {
                conditions.push(condition);
            }
        }
        conditions
    }

    /// Whether a search may recommend the link: no check fails or leaves it to be wound no further, and the ones that
    /// decide a size were answered.
    pub(super) fn recommendable(&self) -> bool {
        self.main_question_open().is_none() && self.findings.iter().all(|finding| finding.recommendable)
    }

    /// The limit that it is worth following to from where it stands.
    pub(super) fn limit(&self) -> Limit {
        if self.over(Limit::Passing) > 0.0 { Limit::Failing } else { Limit::Passing }
    }

    /// How far the worst check is past a limit, as a share of it; above 0 it is.
    pub(super) fn over(&self, limit: Limit) -> f64 {
        if self.main_question_open().is_some() {
            return f64::INFINITY;
        }
        let measured = self.findings.iter().filter_map(|finding| match limit {
            Limit::Passing => finding.utilization,
            Limit::Failing => finding.to_failure,
        });
        measured.reduce(f64::max).map_or(f64::INFINITY, |used| used - (1.0 + quantity::SLACK))
    }

    /// Whether a finding counts for a size: a rule of thumb only does when it is broken.
    fn decides(finding: &Finding) -> bool {
        !finding.rule || finding.verdict == Verdict::Fails
    }

    /// What a search keeps of it.
    pub(super) fn candidate(&self, section: Section, joints: [RodEndSpec; 2]) -> Candidate {
        let highest = self.highest(Self::decides).and_then(|index| self.findings.get(index));
        // The larger of two unlike ends names the size.
        let joint = if joints[1].thread.major > joints[0].thread.major { joints[1] } else { joints[0] };
        Candidate {
            outside_diameter: section.outside_diameter,
            wall: section.wall,
            rod_end: joint.id,
            thread: joint.thread.id,
            utilization: highest.and_then(|finding| finding.utilization).unwrap_or(f64::INFINITY),
            decides: highest.map_or("", |finding| finding.part),
            feasible: self.recommendable(),
        }
    }
}
