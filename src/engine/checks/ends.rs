//! Checks on the rod ends: shank, thread, eye.

use super::{CLOSE, Case, Check, Outcome, actions, actions_under, folds, worst};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{loads, pins, threads};
use crate::engine::sentence::said;
use crate::engine::tables::SHEAR_SHARE;
use crate::engine::tables::materials::Form;
use crate::inputs;
use crate::order;
use crate::quantity::Kind;

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "shank-bending",
        asks: "Does the rod end's shank bend where it leaves the bar?",
        part: "rod-end shank at the jam nut",
        rule: false,
        optional: false,
        source: pins::ROUND_MODULUS.formula.source,
        run: shank_bending,
    },
    Check {
        id: "thread-stripping",
        asks: "Do the threads hold when the link is pulled?",
        part: "thread in the bar",
        rule: false,
        optional: false,
        source: threads::INTERNAL_SHEAR_AREA.formula.source,
        run: thread_stripping,
    },
    Check {
        id: "shank-tension",
        asks: "Does the shank hold when the link is pulled?",
        part: "rod-end shank",
        rule: false,
        optional: false,
        source: threads::SHANK_LOAD.formula.source,
        run: shank_tension,
    },
    Check {
        id: "eye",
        asks: "Does the eye hold?",
        part: "rod-end eye",
        rule: false,
        optional: false,
        source: pins::EYE_AREA.formula.source,
        run: eye,
    },
    Check {
        id: "maker-rating",
        asks: "Is it within the maker's rating?",
        part: "rod end, by its maker's rating",
        rule: false,
        optional: true,
        source: pins::RESULTANT.formula.source,
        run: maker_rating,
    },
];

/// Asks at both ends and keeps the worse answer with its working; ends that are alike are asked once.
pub(super) fn at_ends(case: &Case, sheet: &mut Sheet, ask: fn(&Case, usize, &mut Sheet) -> Outcome) -> Outcome {
    let alike = case.made.ends[0].rod_end_id == case.made.ends[1].rod_end_id
        && case.given.link.ends[0] == case.given.link.ends[1];
    if alike {
        return ask(case, 0, sheet);
    }
    let [(a, sheet_a), (b, sheet_b)] = [0, 1].map(|end| {
        let mut own = Sheet::like(sheet);
        (ask(case, end, &mut own), own)
    });
    // What fails says most, then what is unknown, then what passes on a condition, then what is used most.
    let rank = |outcome: &Outcome| match outcome.utilization {
        Ok(used) if order::exceeds(used, 1.0) => 3,
        Err(_) => 2,
        Ok(_) => u8::from(outcome.condition.is_some()),
    };
    let b_is_worse = match (&a.utilization, &b.utilization) {
        (Ok(first), Ok(second)) if rank(&a) == rank(&b) => order::exceeds(*second, *first),
        _ => rank(&b) > rank(&a),
    };
    let (worse, mut kept) = if b_is_worse { (b, sheet_b) } else { (a, sheet_a) };
    sheet.lines.append(&mut kept.lines);
    if sheet.out_of_range.is_none() {
        sheet.out_of_range = kept.out_of_range;
    }
    worse
}

pub(super) fn letter(end: usize) -> &'static str {
    if end == 0 { "A" } else { "B" }
}

fn shank_bending(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let from_eye = made.eye_to_face;
        let station = case.station(end, from_eye);
        let Some(actions) = actions(case, station, sheet) else { return folds(case, sheet) };
        let section = case.stock.shank(made, sheet);
        let yielding = section.yield_tension;
        let (used, stress) = worst(&section, &actions, sheet);
        let mut says = sheet.remark(|| {
            said![
                "With ",
                (from_eye, Length),
                " from eye to bar, the shank at end ",
                (letter(end)),
                " bends to ",
                (stress, Stress),
                ", factor included; it stays bent from ",
                (yielding, Stress),
                ". Every visible thread more makes it worse."
            ]
        });
        // The same weight and drop nearer the eye are stopped in less distance. The scenario was calibrated without
        // that, so it does not fail a link, but nobody should be surprised by it.
        let edge = case.loads.strike_at_edges[0].max(case.loads.strike_at_edges[1]);
        let harder = || {
            let harder = actions_under(case, station, edge, &mut Sheet::silent());
            harder.map_or(f64::INFINITY, |harder| worst(&section, &harder, &mut Sheet::silent()).0)
        };
        // In a search nobody is told, and whether it is close counts for nothing.
        let surprised = sheet.is_recording() && used <= 1.0 && harder() > 1.0;
        if surprised {
            says.extend(said![
                " The same drop right where its zone begins, near the eye, would land with ",
                (edge, Force),
                " and ask for more than the shank has: let rocks meet the middle, or take a stronger rod end."
            ]);
        }
        let close_from = if surprised { 0.0 } else { CLOSE };
        Outcome { close_from, ..Outcome::new(used, Some(station), says) }
    })
}

fn thread_stripping(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let bar_shear = if case.made.material.form == Form::Tube {
            case.given.known(&inputs::INSERT_SHEAR)
        } else {
            sheet.look_up(
                "Shear strength of the bar",
                case.strength.shear_ultimate,
                Kind::Stress,
                case.made.material.label,
                case.strength.cite,
            )
        };
        let limits = case.joints[end].limits;
        let inside = sheet.work(
            &threads::INTERNAL_SHEAR_AREA,
            &[made.thread.pitch, limits.external_major_min, limits.internal_pitch_max],
        );
        let outside = sheet.work(
            &threads::EXTERNAL_SHEAR_AREA,
            &[made.thread.pitch, limits.internal_minor_max, limits.external_pitch_min],
        );
        // Judged at the longest the link may ever be set, where the least thread is left.
        let engaged = made.least.min(made.engagement).max(0.0);
        let shank_shear = SHEAR_SHARE * case.given.known(&inputs::SHANK_ULTIMATE);
        let bar = sheet.work(&threads::STRIP_LOAD, &[inside, engaged, bar_shear]);
        let shank = sheet.work(&threads::STRIP_LOAD, &[outside, engaged, shank_shear]);
        sheet.choose(|| {
            if bar <= shank {
                said!["The bar's own thread strips first."]
            } else {
                said!["The shank's thread strips first."]
            }
        });
        let capacity = bar.min(shank);
        let used =
            sheet.work(&pins::UTILIZATION, &[case.axial(), case.given.known(&inputs::ULTIMATE_FACTOR), capacity]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "With the least thread it may ever have, end ",
                    (letter(end)),
                    " still holds ",
                    (capacity, Force),
                    " before its thread strips; the greatest pull here is ",
                    (case.axial(), Force),
                    "."
                ]
            }),
        )
    })
}

fn shank_tension(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let capacity = sheet.work(&threads::SHANK_LOAD, &[made.thread.tensile_stress_area(), case.given.shank_yield()]);
        let used = sheet.work(&pins::UTILIZATION, &[case.axial(), case.given.known(&inputs::YIELD_FACTOR), capacity]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| said!["Pulled straight, the shank stretches for good at ", (capacity, Force), "."]),
        )
    })
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
        let Some((row, race)) = case.joints[end].head.and_then(|row| row.race_bore.map(|race| (row, race))) else {
            return Outcome::unanswered(sheet.remark(|| said![
                "The hole in this rod end's head is not known. From 5/8 in up the eye is weaker than the shank: go by the maker's static rating."
            ]));
        };
        let force = radial(case, sheet);
        let area = sheet.work(&pins::EYE_AREA, &[row.head_diameter, race, row.head_width]);
        let capacity = sheet.work(&pins::EYE_LOAD, &[area, case.given.shank_yield()]);
        let used = sheet.work(&pins::UTILIZATION, &[force, case.given.known(&inputs::YIELD_FACTOR), capacity]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| said![
                "The ring of metal around the ball opens at ",
                (capacity, Force),
                ", going by its size and the shank's steel, with bending of the ring not counted: the maker's rating wins over this."
            ]),
        )
    })
}

fn maker_rating(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let Some(rating) = case.given.number_at(&inputs::RATING, end) else {
            return Outcome::unanswered(sheet.remark(|| {
                said![
                    "Enter the maker's static radial rating to check against it. It wins over anything worked out here."
                ]
            }));
        };
        let force = radial(case, sheet);
        let used = sheet.work(&pins::UTILIZATION, &[force, case.given.known(&inputs::RATING_FACTOR), rating]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "The eye sees ",
                    (force, Force),
                    ", and its maker rates it at ",
                    (rating, Force),
                    "; asked for is ",
                    (case.given.known(&inputs::RATING_FACTOR), Ratio),
                    " times what it sees."
                ]
            }),
        )
    })
}
