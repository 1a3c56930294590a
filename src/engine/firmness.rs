//! How far weight, length and grip may each go while the size stays as it is.

use super::build::{self, Asked, LaidOutLink, Limit};
use super::geometry::Section;
use super::given::{RodEndSpec, Values};
use super::roots::crossing;
use crate::document::Document;
use crate::inputs::{self, At, Number};
use crate::report::Firmness;

/// The inputs whose limit is worth knowing. The drop is not: it is a calibrated part of the scenario.
static FIRM: [&Number; 3] = [&inputs::WEIGHT, &inputs::LENGTH, &inputs::TRACTION];

/// Steps in which a limit is first looked for: more load is not always worse, since a longer bar also gives more.
const SCAN: u32 = 8;

/// A lower limit below this share of the length tells nothing: the rod ends alone take that much.
const TELLING: f64 = 0.5;

/// How far each of weight, length and grip may go before the link as answered no longer passes, or, where it bends
/// already, fails; the length also downward, since a shorter link may ask more of its shanks. Values that may take any
/// value tell nothing and are left out.
///
/// Rounding the bar moves the engagement by a quarter of a step either way, so that what holds goes up
/// and down along the length. The limit is judged with the bar unrounded and the shanks wound out and in by that
/// much, the worst that rounding can do: out, a shank bends more; in, the link gives less and is hit harder.
pub(super) fn firmness(document: &Document, index: usize, section: Section, joints: [RodEndSpec; 2]) -> Vec<Firmness> {
    let place = At::of_link(document, index);
    let finest = inputs::ROUNDING.least;
    let step = inputs::ROUNDING.value(document, place).unwrap_or(finest).max(finest);
    let pitch = joints[0].thread.pitch.min(joints[1].thread.pitch);
    let shift = (step + finest) / 4.0 / pitch;
    let (fewest, most) = (inputs::VISIBLE_THREADS.least, inputs::VISIBLE_THREADS.most);
    let wound =
        |by: f64| inputs::VISIBLE_THREADS.value(document, place).map(|threads| (threads + by).max(fewest).min(most));
    let settings = [wound(shift), wound(-shift)];
    let shape: Option<LaidOutLink> =
        Values::new(document, index).and_then(|given| build::shape(&given, section, joints, Asked::EveryQuestion).ok());
    let limit = shape.as_ref().zip(Values::new(document, index)).map_or(Limit::Passing, |(shape, given)| {
        if build::over(&given, shape, Limit::Passing) > 0.0 { Limit::Failing } else { Limit::Passing }
    });
    // The size is held fixed; only the one input moves.
    FIRM.iter()
        .filter_map(|&input| {
            let now = input.value(document, place)?;
            let mut trial = document.clone();
            let over = |trial: &Document| {
                let Some(given) = Values::new(trial, index) else { return f64::INFINITY };
                // Only the length changes the link itself; the rest only changes what it must bear.
                let own = match &shape {
                    Some(shape) if input != &inputs::LENGTH => return build::over(&given, shape, limit),
                    _ => build::shape(&given, section, joints, Asked::EveryQuestion),
                };
                own.map_or(f64::INFINITY, |shape| build::over(&given, &shape, limit))
            };
            let mut over_at = |value: f64| {
                (input.set)(&mut trial, place, Some(value));
                if input != &inputs::LENGTH {
                    return over(&trial);
                }
                (inputs::ROUNDING.set)(&mut trial, place, Some(finest));
                let mut over_at = |visible| {
                    (inputs::VISIBLE_THREADS.set)(&mut trial, place, visible);
                    over(&trial)
                };
                over_at(settings[0]).max(over_at(settings[1]))
            };
            let most = first_failure(now, input.most, &mut over_at);
            let least = (input == &inputs::LENGTH)
                .then(|| first_failure(-now, -input.least, &mut |value| over_at(-value)).map(|limit| -limit))
                .flatten()
                .filter(|least| *least >= TELLING * now);
            let limited = most.is_some() || least.is_some();
            limited.then_some(Firmness {
                input: input.id,
                kind: input.kind,
                now,
                least,
                most,
                to_failure: limit == Limit::Failing,
            })
        })
        .collect()
}

/// The value below the first one that fails, going up from `now`; `None` when none of those tried does.
///
/// `over` is what a link is asked for beyond what it has; above 0 it fails.
pub(super) fn first_failure(now: f64, most: f64, over: &mut impl FnMut(f64) -> f64) -> Option<f64> {
    let mut good = (now, over(now));
    if good.1 > 0.0 {
        return Some(now);
    }
    for count in 1..=SCAN {
        let value = now + (most - now) * f64::from(count) / f64::from(SCAN);
        let next = (value, over(value));
        if next.1 > 0.0 {
            return Some(crossing(good, next, 1e-9 * (most - now).abs(), &mut *over));
        }
        good = next;
    }
    None
}
