//! Checks on the rod ends: shank, thread, eye.

use super::{Case, Check, Outcome, of_capacity};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{loads, pins};
use crate::engine::sentence::said;
use crate::inputs;
use crate::quantity;
use crate::report::Topic;

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "eye",
        topic: Topic::Other,
        of_lengths: false,
        title: "Rod-end eye",
        part: "rod-end eye",
        rule: false,
        optional: false,
        source: pins::EYE_AREA.formula.source,
        run: eye,
    },
    Check {
        id: "maker-rating",
        topic: Topic::Other,
        of_lengths: false,
        title: "Maker's static rating",
        part: "rod end, by its maker's rating",
        rule: false,
        optional: true,
        source: pins::RESULTANT.formula.source,
        run: maker_rating,
    },
];

/// Asks at both ends and keeps the worse answer with its working; ends that are alike are asked once.
pub(super) fn at_ends(case: &Case, sheet: &mut Sheet, ask: fn(&Case, usize, &mut Sheet) -> Outcome) -> Outcome {
    if are_alike(case) {
        return ask(case, 0, sheet);
    }
    let [(a, sheet_a), (b, sheet_b)] = [0, 1].map(|end| {
        let mut own = Sheet::like(sheet);
        (ask(case, end, &mut own), own)
    });
    // What fails says most, then what is unknown, then what passes on a condition, then what is used most.
    let to_failure =
        |outcome: &Outcome| outcome.utilization.as_ref().ok().map(|used| outcome.to_failure.unwrap_or(*used));
    let rank = |outcome: &Outcome| match to_failure(outcome) {
        Some(used) if quantity::exceeds(used, 1.0) => 3,
        None => 2,
        Some(_) => u8::from(outcome.condition.is_some()),
    };
    let b_is_worse = match (&a.utilization, &b.utilization) {
        (Ok(_), Ok(_)) if rank(&a) == 3 && rank(&b) == 3 => {
            to_failure(&b).zip(to_failure(&a)).is_some_and(|(second, first)| quantity::exceeds(second, first))
        }
        (Ok(first), Ok(second)) if rank(&a) == rank(&b) => quantity::exceeds(*second, *first),
        _ => rank(&b) > rank(&a),
    };
    let (worse, other, kept) = if b_is_worse { (b, a, sheet_b) } else { (a, b, sheet_a) };
    sheet.take_over(kept);
    // What stands in the way at the other end stands in the way of the link.
    let condition = match (worse.condition, other.condition) {
        (Some(own), Some(more)) if own != more => {
            let mut both = own;
            both.extend(said!["; "]);
            both.extend(more);
            Some(both)
        }
        (own, more) => own.or(more),
    };
    Outcome { condition, recommendable: worse.recommendable && other.recommendable, ..worse }
}

/// Whether both ends have the same rod end and the same entries.
fn are_alike(case: &Case) -> bool {
    case.made.ends[0].rod_end_id == case.made.ends[1].rod_end_id && case.given.link.ends[0] == case.given.link.ends[1]
}

/// Which end is meant: ends that are alike are asked once, for both.
pub(super) fn end_name(case: &Case, end: usize) -> &'static str {
    match end {
        _ if are_alike(case) => "either end",
        0 => "end A",
        _ => "end B",
    }
}

/// The letter of an end.
pub(super) fn letter(end: usize) -> &'static str {
    if end == 0 { "A" } else { "B" }
}

/// The largest radial force on an eye: traction alone, or traction and strike together.
pub(super) fn radial(case: &Case, sheet: &mut Sheet) -> f64 {
    let reaction = sheet.work(&loads::STRIKE_REACTION, &[case.strike(), case.given.known(&inputs::STRIKE_ZONE)]);
    let together = sheet.work(&pins::RESULTANT, &[case.axial_with_strike(), reaction]);
    sheet.choose(|| {
        said![
            "Force on the eye: ",
            (together, Force),
            " with the strike, ",
            (case.axial(), Force),
            " without; the larger counts."
        ]
    });
    together.max(case.axial())
}

fn eye(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let head = case.joints[end].head;
        let (Some(diameter), Some(thickness), Some(hole)) = (head.diameter, head.thickness, head.hole) else {
            let missing = if head.diameter.is_some() && head.thickness.is_some() {
                "the hole in this rod end's head is not published"
            } else {
                "head diameter, head thickness and ball width of your rod end are not all entered"
            };
            return Outcome::unanswered(sheet.remark(|| {
                said![
                    "End ",
                    (letter(end)),
                    ": ",
                    (missing),
                    ". From 5/8 in up the eye is weaker than the shank: measure it, or go by the maker's static rating."
                ]
            }));
        };
        let force = radial(case, sheet);
        if hole.assumed {
            sheet.choose(|| {
                said![
                    "The hole in the head is taken as ",
                    (hole.diameter, FineLength),
                    ", from bore and ball width: an assumption."
                ]
            });
        }
        let area = sheet.work(&pins::EYE_AREA, &[diameter, hole.diameter, thickness]);
        let capacity = sheet.work(&pins::EYE_LOAD, &[area, case.given.shank_yield(end)]);
        let used = of_capacity(force, case.given.known(&inputs::YIELD_FACTOR), capacity, sheet);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| said![
                "The ring of metal around the ball at end ", (letter(end)), " opens at ", (capacity, Force),
                ", going by its size and the shank's steel, with bending of the ring not counted: the maker's rating takes precedence."
            ]),
        )
    })
}

fn maker_rating(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let Some(rating) = case.given.number_at(&inputs::RATING, end) else {
            return Outcome::unanswered(sheet.remark(|| {
                said![
                    "Enter the maker's static radial rating to check against it. It takes precedence over anything worked out here."
                ]
            }));
        };
        let force = radial(case, sheet);
        let used = of_capacity(force, case.given.known(&inputs::RATING_FACTOR), rating, sheet);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "The eye takes ",
                    (force, Force),
                    ", and its maker rates it at ",
                    (rating, Force),
                    "; required is a rating of ",
                    (case.given.known(&inputs::RATING_FACTOR), Ratio),
                    " times that force."
                ]
            }),
        )
    })
}
