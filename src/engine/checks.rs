//! What is asked of a link, one row per question, and the loop that asks.

use std::cell::{Cell, OnceCell};

use super::cross_sections::{SectionBuilder, Stretch};
use super::formula::{Line, Sheet};
use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::stepped::{self, Levers, Step};
use super::tables::materials::Strength;
use crate::inputs;
use crate::quantity;
use crate::report::{Finding, LinkGeometry, Loads, Topic, Verdict};
use crate::source::Cite;

mod actions;
mod bar;
mod bolts;
pub(super) mod bowed;
pub(super) mod columns;
mod ends;
mod engagement;
pub(super) mod fit;
mod seat;
pub(super) mod shank;
pub(super) mod tube;

use actions::{Actions, actions, buckles, of_capacity, of_length, of_strength};
pub(super) use actions::{actions_with, worst, zone};

/// A link under its loads, as a check sees it.
pub(super) struct Case<'a> {
    pub(super) given: &'a Values<'a>,
    pub(super) made: &'a LinkGeometry,
    pub(super) joints: [RodEndSpec; 2],
    pub(super) strength: &'a Strength,
    pub(super) stock: &'a SectionBuilder<'a>,
    pub(super) loads: &'a Loads,
    /// Changed defaults that the lengths rest on.
    pub(super) layout_changed: &'a [&'static str],
    /// Why the lengths cannot be told, where a formula for them was used beyond its range.
    pub(super) layout_out_of_range: Option<&'a Said>,
    /// Whether the force along the link was asked for, and whether the strike was.
    pub(super) asked: Cell<[bool; 2]>,
    /// Levers of the link under its compression with the factor on yield.
    pub(super) levers: &'a Levers<'a>,
    /// What the link is made of, from eye A to eye B.
    pub(super) stretches: &'a [Stretch],
    /// The link as it bends under a strike.
    pub(super) bending: &'a [Step],
    /// The link in compression.
    pub(super) compression_steps: &'a [Step],
    /// The compression at which the whole link buckles, were nothing to yield; worked out when first asked for.
    pub(super) critical_load: &'a OnceCell<f64>,
}

impl Case<'_> {
    /// The compression at which the whole link buckles, were nothing to yield.
    pub(super) fn critical_load(&self) -> f64 {
        *self.critical_load.get_or_init(|| stepped::critical_load(self.compression_steps))
    }

    /// Largest tension or compression along the link.
    pub(super) fn axial(&self) -> f64 {
        self.asked.set([true, self.asked.get()[1]]);
        self.loads.axial
    }

    /// Tension or compression acting together with a strike.
    pub(super) fn axial_with_strike(&self) -> f64 {
        self.asked.set([true, true]);
        self.loads.axial_with_strike
    }

    /// Force of the strike.
    pub(super) fn strike(&self) -> f64 {
        self.asked.set([self.asked.get()[0], true]);
        self.loads.strike
    }

    /// Why what a question rests on cannot be told, given which loads it asked for. A strike follows from how the link
    /// deflects, so it rests on the lengths too.
    fn out_of_range(&self, check: &Check, [axial, strike]: [bool; 2]) -> Option<&Said> {
        let loads = self.loads;
        let lengths = self.layout_out_of_range.filter(|_| check.of_lengths || strike);
        let axial = loads.axial_out_of_range.as_ref().filter(|_| axial);
        let strike = loads.strike_out_of_range.as_ref().filter(|_| strike);
        lengths.or(axial).or(strike)
    }

    /// The changed defaults that a question rests on, given which loads it asked for and what else.
    fn changed(&self, check: &Check, [axial, strike]: [bool; 2], mut own: Vec<&'static str>) -> Vec<&'static str> {
        let flats = [inputs::FLATS_START.id, inputs::FLATS_LENGTH.id, inputs::FLATS_WIDTH.id];
        let loads = [(axial, &self.loads.axial_changed), (strike, &self.loads.strike_changed)];
        let loads = loads.into_iter().filter(|(asked, _)| *asked).flat_map(|(_, changed)| changed);
        for id in self.layout_changed.iter().chain(loads) {
            let elsewhere = flats.contains(id) && check.topic != Topic::WrenchFlats || *id == inputs::FACING.id;
            if !elsewhere && !own.contains(id) {
                own.push(id);
            }
        }
        own
    }

    /// The distance from eye A of a place so far from the eye of an end.
    pub(super) fn station(&self, end: usize, from_eye: f64) -> f64 {
        if end == 0 { from_eye } else { self.made.length - from_eye }
    }
}

/// One question.
pub(super) struct Check {
    /// Kebab-case, never reused: tests, links and the page name it.
    pub(super) id: &'static str,
    /// What it is about, where others go by that.
    pub(super) topic: Topic,
    /// Whether it rests on the lengths of bar, shanks and holes; what it takes of the loads is noted as it asks.
    pub(super) of_lengths: bool,
    /// What is checked, as the list of checks names it.
    pub(super) title: &'static str,
    /// What the weak spot is called on the link.
    pub(super) part: &'static str,
    /// A rule of thumb or a matter of fit, which does not compete for the weakest part.
    pub(super) rule: bool,
    /// Whether it is answered only when the user enters something, and colors nothing until then.
    pub(super) optional: bool,
    /// The governing source.
    pub(super) source: Cite,
    /// Asks it.
    pub(super) run: fn(&Case, &mut Sheet) -> Outcome,
}

/// How a check came out, before it is put into words for the report.
pub(super) struct Outcome {
    /// Demand with its factor over capacity; `Err` says why it cannot be told.
    pub(super) utilization: Result<f64, Said>,
    /// Distance of the weak spot from eye A.
    pub(super) station: Option<f64>,
    /// The sentence for the rig owner.
    pub(super) says: Said,
    /// The same against failure, where the check fails later than its utilization passes 1: a tube that bends first.
    pub(super) to_failure: Option<f64>,
    /// How it came out as long as it does not fail, where that is not told by the utilization alone.
    pub(super) verdict: Option<Verdict>,
    /// Whether a search may recommend a link that comes out like this; what fails it never does.
    pub(super) recommendable: bool,
    /// It passes on this condition only.
    pub(super) condition: Option<Said>,
    /// The other answer, where an entry that nobody made decides; told beside the verdict.
    pub(super) otherwise: Option<Said>,
    /// What it is called and where it comes from, where the row says another thing than holds for this link.
    pub(super) instead: Option<(&'static str, Cite)>,
    /// Whether the question makes sense for this link at all.
    pub(super) applies: bool,
    /// What the weak spot is called, where the check's own name would not tell which it is.
    pub(super) part: Option<&'static str>,
}

/// From this share of the limit up, a strength check is called close.
pub(super) const CLOSE: f64 = 0.9;

impl Outcome {
    pub(super) fn new(utilization: f64, station: Option<f64>, says: Said) -> Self {
        Self {
            utilization: Ok(utilization),
            station,
            says,
            to_failure: None,
            verdict: None,
            recommendable: true,
            condition: None,
            otherwise: None,
            instead: None,
            applies: true,
            part: None,
        }
    }

    /// The question does not arise, so the report does not mention it.
    pub(super) fn does_not_arise() -> Self {
        Self { applies: false, ..Self::unanswered(Said::default()) }
    }

    pub(super) fn unanswered(because: Said) -> Self {
        Self { utilization: Err(because), ..Self::new(f64::NAN, None, Said::default()) }
    }
}

/// Every check, in the order a builder would ask.
pub(super) fn all() -> impl Iterator<Item = &'static Check> {
    bar::ROWS
        .iter()
        .chain(columns::ROWS)
        .chain(shank::ROWS)
        .chain(engagement::ROWS)
        .chain(ends::ROWS)
        .chain(bolts::ROWS)
        .chain(fit::ROWS)
}

/// The same in the order in which a search soonest learns that a link will not do: most fail at a shank, which takes a
/// few formulas, and how the whole link buckles takes the longest. In front of what it gives, the bar's findings belong.
pub(super) fn quick_first() -> impl Iterator<Item = &'static Check> {
    shank::ROWS
        .iter()
        .chain(engagement::ROWS)
        .chain(ends::ROWS)
        .chain(bolts::ROWS)
        .chain(fit::ROWS)
        .chain(bar::ROWS)
        .chain(columns::ROWS)
}

/// Whether a check is one of the bar's, which come first.
pub(super) fn of_the_bar(finding: &Finding) -> bool {
    bar::ROWS.iter().chain(columns::ROWS).any(|check| check.id == finding.id)
}

/// Asks one check; `None` when the question does not arise for this link.
pub(super) fn ask(check: &'static Check, case: &Case, mut sheet: Sheet) -> Option<Finding> {
    case.given.begin_trace();
    let outcome = (check.run)(case, &mut sheet);
    let asked = case.asked.take();
    let changed = case.changed(check, asked, case.given.take_trace());
    if !outcome.applies {
        return None;
    }
    let result = outcome.utilization.as_ref().ok().and_then(|used| sheet.result(*used)).cloned();
    let (verdict, utilization, says) =
        match (case.out_of_range(check, asked).cloned().or(sheet.out_of_range.take()), outcome.utilization) {
            (Some(why), _) => (Verdict::Unanswered, None, why),
            (None, Err(why)) => (Verdict::Unanswered, None, why),
            (None, Ok(used)) if !used.is_finite() => (
                Verdict::Unanswered,
                None,
                said!["These entries give no number here; check them for a value that cannot be."],
            ),
            (None, Ok(used)) => {
                let to_failure = outcome.to_failure.unwrap_or(used);
                let verdict = if quantity::exceeds(to_failure, 1.0) {
                    Verdict::Fails
                } else if let Some(verdict) = outcome.verdict {
                    verdict
                } else if outcome.condition.is_some() || (!check.rule && quantity::exceeds(used, CLOSE)) {
                    Verdict::Close
                } else {
                    Verdict::Passes
                };
                (verdict, Some(used), outcome.says)
            }
        };
    let result = result.filter(|_| utilization.is_some()).map(Line::Result);
    let working = result.into_iter().chain(sheet.lines).collect();
    Some(Finding {
        id: check.id,
        topic: check.topic,
        title: outcome.instead.map_or(check.title, |(title, _)| title),
        part: outcome.part.unwrap_or(check.part),
        station: outcome.station,
        rule: check.rule,
        verdict,
        utilization,
        to_failure: outcome.to_failure.or(utilization),
        recommendable: outcome.recommendable && verdict != Verdict::Fails,
        says,
        working,
        source: outcome.instead.map_or(check.source, |(_, source)| source),
        otherwise: outcome.otherwise,
        changed,
        optional: check.optional,
        condition: outcome.condition.filter(|_| verdict == Verdict::Close),
    })
}
