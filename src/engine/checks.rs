//! What is asked of a link, one row per question, and the loop that asks.

use std::cell::{Cell, OnceCell};

use super::cross_sections::{CrossSection, SectionBuilder, Stretch};
use super::formula::{Line, Sheet};
use super::formulas::{beams, pins, stepped as stepped_formulas};
use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::stepped::{self, Levers, Step, in_zone};
use super::tables::materials::Strength;
use crate::inputs;
use crate::order;
use crate::quantity::Kind;
use crate::report::{Finding, LinkGeometry, Loads, Topic, Verdict};
use crate::source::Cite;

mod bar;
mod bolts;
pub(super) mod columns;
mod ends;
mod engagement;
mod fit;
mod seat;
pub(super) mod shank;
pub(super) mod tube;

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
    /// The question, as a rig owner would ask it.
    pub(super) asks: &'static str,
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
    /// From here up it is called close.
    pub(super) close_from: f64,
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
            close_from: CLOSE,
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
    let (verdict, utilization, says) =
        match (case.out_of_range(check, asked).cloned().or(sheet.out_of_range), outcome.utilization) {
            (Some(why), _) => (Verdict::Unanswered, None, why),
            (None, Err(why)) => (Verdict::Unanswered, None, why),
            (None, Ok(used)) if !used.is_finite() => (
                Verdict::Unanswered,
                None,
                said!["These entries give no number here; check them for a value that cannot be."],
            ),
            (None, Ok(used)) => {
                let to_failure = outcome.to_failure.unwrap_or(used);
                let verdict = if order::exceeds(to_failure, 1.0) {
                    Verdict::Fails
                } else if let Some(verdict) = outcome.verdict {
                    verdict
                } else if outcome.condition.is_some() || (!check.rule && order::exceeds(used, outcome.close_from)) {
                    Verdict::Close
                } else {
                    Verdict::Passes
                };
                (verdict, Some(used), outcome.says)
            }
        };
    Some(Finding {
        id: check.id,
        topic: check.topic,
        asks: check.asks,
        part: outcome.part.unwrap_or(check.part),
        station: outcome.station,
        rule: check.rule,
        verdict,
        utilization,
        to_failure: outcome.to_failure.or(utilization),
        recommendable: outcome.recommendable && verdict != Verdict::Fails,
        says,
        working: sheet.lines,
        source: check.source,
        changed,
        optional: check.optional,
        condition: outcome.condition.filter(|_| verdict == Verdict::Close),
    })
}

/// What a strike and an axial force do at a station, with the factor on yield already in them.
pub(super) struct Actions {
    /// Tension or compression along the link together with the strike.
    pub(super) axial: f64,
    /// The greatest tension or compression, without a strike.
    pub(super) alone: f64,
    /// Moment while the link is in compression.
    pub(super) in_compression: f64,
    /// Moment while it is in tension; the strike alone, since tension only straightens the bar.
    pub(super) in_tension: f64,
}

/// Where the zone of strikes begins and ends.
pub(super) fn zone(case: &Case) -> [f64; 2] {
    let length = case.made.length;
    let begins = (case.given.known(&inputs::STRIKE_ZONE) * length).min(length / 2.0);
    [begins, length - begins]
}

/// The worst actions at a station; `None` when the compression alone buckles the link.
///
/// One force is taken over the whole zone, that of the drop at mid-span.
pub(super) fn actions(case: &Case, station: f64, sheet: &mut Sheet) -> Option<Actions> {
    actions_with(case, station, case.given.known(&inputs::YIELD_FACTOR), case.levers, sheet)
}

/// The worst actions at a station with all loads multiplied by a factor, which the levers were carried under too.
pub(super) fn actions_with(
    case: &Case,
    station: f64,
    factor: f64,
    levers: &Levers,
    sheet: &mut Sheet,
) -> Option<Actions> {
    let length = case.made.length;
    let zone = zone(case);
    sheet.choose(|| said!["Strike, axial force with it and axial force alone, each with the factor:"]);
    let strike = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.strike()]);
    let axial = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.axial_with_strike()]);
    let alone = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.axial()]);
    // Without compression, the strike on the place itself bends it most, or the one at the edge of the zone.
    let at = in_zone(station, zone);
    let (near, far) = if station <= at { (station, length - at) } else { (length - station, at) };
    let in_tension = sheet.work(&beams::MOMENT_OF_STRIKE, &[strike, near.max(0.0), far, length]);
    if axial < 1e-6 {
        return Some(Actions { axial, alone, in_compression: in_tension, in_tension });
    }
    if !levers.stand() {
        return None;
    }
    let (near, far) = levers.worst(station, zone);
    if sheet.is_recording() {
        carried(case, near, far, levers, sheet);
    }
    let in_compression = sheet.work(&stepped_formulas::STEPPED_MOMENT, &[strike, near, far, levers.whole()]);
    Some(Actions { axial, alone, in_compression, in_tension })
}

/// How the levers came about, for whoever wants to do it again.
fn carried(case: &Case, near: f64, far: f64, levers: &Levers, sheet: &mut Sheet) {
    sheet.choose(|| {
        let mut said = said![
            "In compression the link is a beam-column, worked out by transfer matrix: a lever u and its slope u′ are carried from each eye over every piece of the link, beginning with u = 0 and u′ = 1: u = u_1 · cos(k · l) + u′_1 · sin(k · l) / k and u′ = u′_1 · cos(k · l) − k · u_1 · sin(k · l), with k = √(N / (E · I)) of the piece. The pieces from eye A:"
        ];
        for (index, stretch) in case.stretches.iter().enumerate() {
            let section = &stretch.section;
            said.extend(said![(if index == 0 { " " } else { "; " }), (stretch.part), " ", (stretch.to - stretch.from, FineLength), ", I = "]);
            said.extend(said![(section.second_moment, SecondMoment), ", E = ", (section.modulus_compression, Stress)]);
        }
        said.extend(said!["."]);
        said
    });
    let mut found = |what, value| {
        sheet.record(|| Line::Solved {
            what,
            value,
            kind: Kind::FineLength,
            how: "carried piece by piece by transfer matrix",
        });
    };
    found("Lever of this place", near);
    found("Lever of the strike, from the other eye", far);
    found("Lever from eye to eye", levers.whole());
}

/// The outcome when the compression alone buckles the bar.
pub(super) fn buckles(case: &Case, sheet: &mut Sheet) -> Outcome {
    let factor = case.given.known(&inputs::YIELD_FACTOR);
    let compression = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.axial_with_strike()]);
    let used = sheet.work(&pins::UTILIZATION, &[compression, 1.0, case.critical_load()]);
    Outcome::new(
        used.max(1.01),
        Some(case.made.length / 2.0),
        sheet.remark(|| {
            said!["The compression along the link alone buckles this bar; it is far too thin for its length."]
        }),
    )
}

/// Share of its yield strength that a section is asked for, and the stress that decides it.
pub(super) fn worst(section: &CrossSection, actions: &Actions, sheet: &mut Sheet) -> (f64, f64) {
    let Actions { axial, alone, in_compression, in_tension } = *actions;
    let compression_side = sheet.work(&beams::COMBINED_STRESS, &[axial, section.area, in_compression, section.modulus]);
    let tension_side = sheet.work(&beams::COMBINED_STRESS, &[axial, section.area, in_tension, section.modulus]);
    let far_side = sheet.work(&beams::TENSION_SIDE_STRESS, &[axial, section.area, in_compression, section.modulus]);
    let straight = sheet.work(&beams::AXIAL_STRESS, &[alone, section.area]);
    let uses = [
        (compression_side, section.yield_compression, "in compression, on the compression side"),
        (tension_side, section.yield_tension, "in tension, on the tension side"),
        (far_side, section.yield_tension, "in compression, on the tension side"),
        (straight, section.yield_compression, "in the largest compression, without a strike"),
        (straight, section.yield_tension, "in the largest tension, without a strike"),
    ];
    let mut worst = uses[0];
    for row in uses {
        if row.0 / row.1 > worst.0 / worst.1 {
            worst = row;
        }
    }
    sheet.choose(|| said!["Worst ", (worst.2), ": ", (worst.0, Stress), " against ", (worst.1, Stress), "."]);
    (sheet.work(&pins::STRESS_SHARE, &[worst.0, worst.1]), worst.0)
}
