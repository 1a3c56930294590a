//! How each value moves the answer: what the weakest part is asked for when one of them grows by a tenth, and how far
//! each may go the harmful way before something fails. The size stays as it is.

use super::build::{Asked, Judged, build};
use super::firmness::{firmness, first_failure};
use super::geometry::Section;
use super::given::{RodEndSpec, Values};
use crate::document::Document;
use crate::inputs::{self, At, Group, Number, Scope};
use crate::report::Sensitivity;

/// Other values that move a link's margin, beside everything about loads and factors.
static OTHERS: [&Number; 9] = [
    &inputs::LENGTH,
    &inputs::WEIGHT,
    &inputs::VISIBLE_THREADS,
    &inputs::SHANK_YIELD,
    &inputs::SHANK_ULTIMATE,
    &inputs::INSERT_SHEAR,
    &inputs::EAR,
    &inputs::SPACER,
    &inputs::FLEX,
];
/// A value grows by this share of itself, or of its range where it is 0.
const STEP: f64 = 0.1;
const STEP_FROM_NOTHING: f64 = 0.002;
/// A change below this share of the limit is none.
const NO_CHANGE: f64 = 5e-4;

/// Every value that moves the answer, the strongest first.
pub(super) fn rank(document: &Document, index: usize, section: Section, joints: [RodEndSpec; 2]) -> Vec<Sensitivity> {
    let asked = |document: &Document| {
        let given = Values::new(document, index)?;
        build(&given, section, joints, Asked::EveryQuestion).ok().map(|built| built.judged)
    };
    let Some(built) = asked(document) else { return Vec::new() };
    let Some((now, _)) = weakest(&built) else { return Vec::new() };
    let followed = built.limit();
    let counted = |input: &&&Number| {
        let loads = matches!(input.group, Group::Loads | Group::Factors) && input.scope != Scope::End;
        // Nobody hangs an axle on a tenth of a link more.
        (loads && **input != &inputs::COUNT) || OTHERS.contains(*input)
    };
    // The length's limit has to hold whatever rounding does to the bar.
    let length = firmness(document, index, section, joints).into_iter().find(|row| row.input == inputs::LENGTH.id);
    let mut rows: Vec<Sensitivity> = inputs::NUMBERS
        .iter()
        .filter(counted)
        .filter_map(|&input| {
            let place = At::of_link(document, index);
            let value = input.value(document, place)?;
            let step = if value > 0.0 { STEP * value } else { STEP_FROM_NOTHING * input.most };
            let more = (value + step).min(input.most);
            let mut trial = document.clone();
            let mut at = |value: f64| {
                (input.set)(&mut trial, place, Some(value));
                asked(&trial)
            };
            let (then, decides) = at(more).as_ref().and_then(weakest)?;
            if (then - now).abs() < NO_CHANGE || more <= value {
                return None;
            }
            let mut over = |value: f64| at(value).map_or(f64::INFINITY, |built| built.over(followed));
            let harmful = if then > now { input.most } else { input.least };
            // Going down is going up with the sign turned.
            let limit = if then > now {
                first_failure(value, harmful, &mut over)
            } else {
                first_failure(-value, -harmful, &mut |value| over(-value)).map(|limit| -limit)
            };
            let limit = if input == &inputs::LENGTH {
                length.as_ref().and_then(|row| if then > now { row.most } else { row.least })
            } else {
                limit
            };
            Some(Sensitivity {
                input: input.id,
                kind: input.kind,
                now: value,
                more,
                used_now: now,
                used_then: then,
                decides,
                limit,
            })
        })
        .collect();
    rows.sort_by(|a, b| (b.used_then - b.used_now).abs().total_cmp(&(a.used_then - a.used_now).abs()));
    rows
}

/// What the weakest part is asked for, and what it is.
fn weakest(built: &Judged) -> Option<(f64, &'static str)> {
    let finding = built.highest(|finding| !finding.rule).and_then(|index| built.findings.get(index))?;
    finding.utilization.map(|used| (used, finding.part))
}
