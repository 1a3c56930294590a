//! What is asked of a link, one row per question, and the loop that asks.

use super::formula::{Said, Sheet, said};
use super::formulas::{beams, columns, sections};
use super::given::{Given, Joint};
use super::tables::materials::Strength;
use crate::inputs;
use crate::report::{Finding, Loads, Made, Verdict};
use crate::source::Cite;

mod bar;
mod ends;
mod fit;

/// A link under its loads, as a check sees it.
pub(super) struct Case<'a> {
    pub(super) given: &'a Given<'a>,
    pub(super) made: &'a Made,
    pub(super) joints: [Joint; 2],
    pub(super) strength: &'a Strength,
    /// Strength of a tube beside its weld.
    pub(super) beside_weld: Option<&'a Strength>,
    pub(super) loads: &'a Loads,
}

impl Case<'_> {
    /// The distance from eye A of a place so far from the eye of an end.
    pub(super) fn station(&self, end: usize, from_eye: f64) -> f64 {
        if end == 0 { from_eye } else { self.made.length - from_eye }
    }
}

/// One question.
pub(super) struct Check {
    /// Kebab-case, never reused: tests, links and the page name it.
    pub(super) id: &'static str,
    /// The question, as a rig owner would ask it.
    pub(super) asks: &'static str,
    /// What the weak spot is called on the link.
    pub(super) part: &'static str,
    /// A rule of thumb or a matter of fit, which does not compete for the weakest part.
    pub(super) rule: bool,
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
    /// From here up it is called close.
    pub(super) close_from: f64,
    /// Whether the question makes sense for this link at all.
    pub(super) applies: bool,
}

/// From this share of the limit up, a strength check is called close.
pub(super) const CLOSE: f64 = 0.9;

impl Outcome {
    pub(super) fn new(utilization: f64, station: Option<f64>, says: Said) -> Self {
        Self { utilization: Ok(utilization), station, says, close_from: CLOSE, applies: true }
    }

    /// The question does not arise, so the report does not mention it.
    pub(super) fn does_not_arise() -> Self {
        Self { applies: false, ..Self::unanswered(Vec::new()) }
    }

    pub(super) fn unanswered(because: Said) -> Self {
        Self { utilization: Err(because), station: None, says: Vec::new(), close_from: CLOSE, applies: true }
    }
}

/// Every check, in the order a builder would ask.
pub(super) fn all() -> impl Iterator<Item = &'static Check> {
    bar::ROWS.iter().chain(ends::ROWS).chain(fit::ROWS)
}

/// Asks one check; `None` when the question does not arise for this link.
pub(super) fn ask(check: &'static Check, case: &Case, mut sheet: Sheet) -> Option<Finding> {
    let outcome = (check.run)(case, &mut sheet);
    if !outcome.applies {
        return None;
    }
    let (verdict, utilization, says) = match (sheet.outside, outcome.utilization) {
        (Some(why), _) => (Verdict::Unanswered, None, why),
        (None, Err(why)) => (Verdict::Unanswered, None, why),
        (None, Ok(used)) if !used.is_finite() => (
            Verdict::Unanswered,
            None,
            said!["These entries give no number here; check them for a value that cannot be."],
        ),
        (None, Ok(used)) => {
            let verdict = if used > 1.0 {
                Verdict::Fails
            } else if used > outcome.close_from {
                Verdict::Close
            } else {
                Verdict::Holds
            };
            (verdict, Some(used), outcome.says)
        }
    };
    Some(Finding {
        id: check.id,
        asks: check.asks,
        part: check.part,
        station: outcome.station,
        rule: check.rule,
        verdict,
        utilization,
        says,
        working: sheet.lines,
        source: check.source,
    })
}

/// Bending moments at a station under the worst strike in its zone.
pub(super) struct Moments {
    /// While the link is pushed.
    pub(super) pushed: f64,
    /// While it is pulled; the strike alone, since a pull only straightens the bar.
    pub(super) pulled: f64,
}

/// The worst moments at a station; `None` when the push alone folds the bar.
pub(super) fn moments(case: &Case, station: f64, sheet: &mut Sheet) -> Option<Moments> {
    let length = case.made.length;
    let near = station.min(length - station).max(0.0);
    let zone = case.given.known(&inputs::STRIKE_ZONE);
    let strike = case.loads.strike;
    let outside_zone = near < zone * length;
    let pulled = if outside_zone {
        sheet.work(&beams::STRIKE_ENVELOPE_NEAR_END, &[strike, near, zone])
    } else {
        sheet.work(&beams::STRIKE_ENVELOPE_MIDDLE, &[strike, near, length])
    };
    let push = case.loads.axial_with_strike;
    if push < 1e-6 {
        return Some(Moments { pushed: pulled, pulled });
    }
    let second_moment = sheet.work(&sections::RING_SECOND_MOMENT, &[case.made.outside_diameter, case.made.bore]);
    let wave = sheet.work(&columns::WAVE_NUMBER, &[push, case.made.material.modulus_compression, second_moment]);
    if wave * length >= std::f64::consts::PI {
        return None;
    }
    let far = if outside_zone { (1.0 - zone) * length } else { length - near };
    let pushed = sheet.work(&columns::BEAM_COLUMN_MOMENT, &[strike, wave, far, near, length]);
    Some(Moments { pushed, pulled })
}

/// The outcome when the push alone folds the bar.
pub(super) fn folds(case: &Case, sheet: &mut Sheet) -> Outcome {
    let second_moment = sections::RING_SECOND_MOMENT.value(&[case.made.outside_diameter, case.made.bore]);
    let euler =
        sheet.work(&columns::EULER_LOAD, &[case.made.material.modulus_compression, second_moment, case.made.length]);
    let used = case.loads.axial_with_strike * case.given.known(&inputs::COLUMN_FACTOR) / euler;
    Outcome::new(
        used.max(1.01),
        Some(case.made.length / 2.0),
        said!["The push along the link alone folds this bar; it is far too thin for its length."],
    )
}

/// What a section has against a push or a pull together with a moment.
#[derive(Clone, Copy)]
pub(super) struct SectionUse {
    pub(super) area: f64,
    pub(super) modulus: f64,
    pub(super) yield_tension: f64,
    pub(super) yield_compression: f64,
}

impl SectionUse {
    /// Utilization with the yield factor, and the stress that decides it.
    pub(super) fn worst(&self, case: &Case, moments: &Moments, sheet: &mut Sheet) -> (f64, f64) {
        let axial = case.loads.axial_with_strike;
        let factor = case.given.known(&inputs::YIELD_FACTOR);
        let pressed = sheet.work(&beams::COMBINED_STRESS, &[axial, self.area, moments.pushed, self.modulus]);
        let stretched = sheet.work(&beams::COMBINED_STRESS, &[axial, self.area, moments.pulled, self.modulus]);
        let far_side = sheet.work(&beams::TENSION_SIDE_STRESS, &[axial, self.area, moments.pushed, self.modulus]);
        let uses = [
            (pressed, self.yield_compression, "pushed, on the pressed side"),
            (stretched, self.yield_tension, "pulled, on the stretched side"),
            (far_side, self.yield_tension, "pushed, on the stretched side"),
        ];
        let mut worst = uses[0];
        for row in uses {
            if row.0 / row.1 > worst.0 / worst.1 {
                worst = row;
            }
        }
        sheet.chose(|| said!["Worst when ", (worst.2), ": ", (worst.0, Stress), " against ", (worst.1, Stress), "."]);
        let used = sheet.work(&super::formulas::pins::STRESS_UTILIZATION, &[worst.0, factor, worst.1]);
        (used, worst.0)
    }
}
