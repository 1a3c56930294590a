//! The rod end's shank: bending where it leaves the bar, and tension.

use super::ends::{at_ends, end_name, letter};
use super::{Actions, Case, Check, Outcome, actions, buckles, of_capacity, worst};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{pins, threads};
use crate::engine::roots::crossing;
use crate::engine::sentence::{Said, said};
use crate::inputs;
use crate::quantity;
use crate::quantity::Kind;
use crate::report::Topic;

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "shank-bending",
        topic: Topic::Other,
        of_lengths: true,
        title: "Rod-end shank bending at the jam nut",
        part: "rod-end shank at the jam nut",
        rule: false,
        optional: false,
        source: pins::ROUND_MODULUS.formula.source,
        run: shank_bending,
    },
    Check {
        id: "shank-tension",
        topic: Topic::Other,
        of_lengths: false,
        title: "Rod-end shank in tension",
        part: "rod-end shank",
        rule: false,
        optional: false,
        source: threads::SHANK_LOAD.formula.source,
        run: shank_tension,
    },
];

/// The loads on the shank of an end whose bar face is so far from its eye; `None` when the link buckles before that.
fn at_face(case: &Case, end: usize, eye_to_face: f64, sheet: &mut Sheet) -> Option<Actions> {
    actions(case, case.station(end, eye_to_face), sheet)
}

/// Share of its yield strength that the shank is asked for with so much of it inside the bar.
fn used_at(case: &Case, end: usize, inserted: f64, sheet: &mut Sheet) -> f64 {
    let made = &case.made.ends[end];
    let section = case.stock.shank(made, case.given.shank_yield(end), sheet);
    at_face(case, end, made.eye_to_end - inserted, sheet)
        .map_or(f64::INFINITY, |actions| worst(&section, &actions, sheet).0)
}

/// Length of shank inside the bar at which it reaches its limit in bending when it is wound out, if it does so before
/// the least engagement.
pub(in crate::engine) fn stop(case: &Case, end: usize) -> Option<f64> {
    let made = &case.made.ends[end];
    let least = made.least + made.not_full;
    let over =
        |wound_out: f64| used_at(case, end, made.inserted - wound_out, &mut Sheet::silent()) - (1.0 + quantity::SLACK);
    let (now, most) = (over(0.0), made.inserted - least);
    if most <= 0.0 || now > 0.0 {
        return (now > 0.0).then_some(made.inserted);
    }
    let at_least = over(most);
    (at_least > 0.0).then(|| made.inserted - crossing((0.0, now), (most, at_least), 1e-7, over))
}

/// Asked as set and at the outward stop: owners adjust, so a search goes by the longer setting. A link that stands goes
/// by its setting, and its stop moves in.
fn shank_bending(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let Some(actions) = at_face(case, end, made.eye_to_face, sheet) else { return buckles(case, sheet) };
        let section = case.stock.shank(made, case.given.shank_yield(end), sheet);
        let (as_set, stress) = worst(&section, &actions, sheet);
        let wound_out = made.stop.inserted < made.inserted;
        // The same way, so that only its result is shown.
        let mut apart = Sheet::like(sheet);
        let at_stop = if wound_out { used_at(case, end, made.stop.inserted, &mut apart) } else { as_set };
        if let Some(result) = apart.result(at_stop) {
            let mut line = said!["At the outward stop: "];
            line.extend(result.clone());
            sheet.conclude(at_stop, || line);
        }
        sheet.choose(|| {
            said![
                "Wound out to ",
                (made.stop.visible_threads.max(made.visible_threads), Ratio),
                " threads showing, the same way: ",
                (at_stop, Percent),
                "."
            ]
        });
        let used = as_set.max(at_stop);
        let needs_stop = !quantity::exceeds(as_set, 1.0) && quantity::exceeds(used, 1.0);
        let most_showing = if needs_stop && sheet.is_recording() {
            let inserted = stop(case, end).unwrap_or(made.inserted);
            made.visible_threads + (made.inserted - inserted) / made.thread.pitch
        } else {
            f64::NAN
        };
        if most_showing.is_finite() {
            sheet.record(|| Line::Solved {
                what: "Threads showing at which the shank reaches its limit",
                value: most_showing,
                kind: Kind::Ratio,
                how: "found by winding the shank out, the same way, until it is at 100 %",
            });
        }
        // A search goes by whether there is a condition, and reads no words.
        let condition = needs_stop.then(|| {
            sheet.remark(|| {
                said!["with no more than ", (most_showing, Ratio), " threads showing at ", (end_name(case, end))]
            })
        });
        let mut says = sheet.remark(|| {
            said![
                "With ",
                (made.eye_to_face, Length),
                " from eye to bar, the shank at end ",
                (letter(end)),
                " works at ",
                (stress, Stress),
                " in bending, factor included; it yields at ",
                (section.yield_tension, Stress),
                ". "
            ]
        });
        says.extend(sheet.remark(|| match &condition {
            Some(_) => said![
                "Wound out further it would reach its limit: leave no more than ",
                (most_showing, Ratio),
                " threads showing."
            ],
            None => said![
                "At the outward stop, ",
                (made.stop.visible_threads.max(made.visible_threads), Ratio),
                " threads showing, it is at ",
                (used, Percent),
                " of that."
            ],
        }));
        let otherwise = if sheet.is_recording() { if_alloy(case, end, used) } else { None };
        if let Some(otherwise) = &otherwise {
            says.extend(said![" "]);
            says.extend(otherwise.clone());
        }
        Outcome {
            to_failure: Some(as_set),
            recommendable: !quantity::exceeds(used, 1.0),
            condition,
            otherwise,
            ..Outcome::new(used, Some(case.station(end, made.eye_to_face)), says)
        }
    })
}

/// The other answer, where nobody has said what the shank is made of.
fn if_alloy(case: &Case, end: usize, used: f64) -> Option<Said> {
    let answered = case.given.link.ends.get(end).is_none_or(|end| end.shank_steel.is_some());
    let own = [&inputs::SHANK_ULTIMATE, &inputs::SHANK_YIELD].iter().any(|input| case.given.is_decided(input));
    let yielding = case.made.ends[end].shank_yield;
    (!answered && !own && quantity::exceeds(inputs::ALLOY_YIELD, yielding)).then(|| {
        said![
            "The steel of the rod end at ",
            (end_name(case, end)),
            " is not known, so its shank counts as low-carbon. If it is heat-treated alloy, stamped or on its maker's sheet, the shank is at ",
            (used * yielding / inputs::ALLOY_YIELD, Percent),
            ": say so under Rod ends."
        ]
    })
}

fn shank_tension(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let capacity =
            sheet.work(&threads::SHANK_LOAD, &[made.thread.tensile_stress_area(), case.given.shank_yield(end)]);
        let used = of_capacity(case.axial(), case.given.known(&inputs::YIELD_FACTOR), capacity, sheet);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said!["In tension alone the shank at end ", (letter(end)), " yields at ", (capacity, Force), "."]
            }),
        )
    })
}
