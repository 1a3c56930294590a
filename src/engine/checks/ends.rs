//! Checks on the ends: shank, thread, eye, bolt.

use super::{Case, Check, Outcome};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{loads, pins};
use crate::engine::sentence::{Said, said};
use crate::inputs;
use crate::order;
use crate::quantity::{Kind, ksi};
use crate::source::{MIL_HDBK_5J, Obtained, cite};

pub(super) static ROWS: &[Check] = &[
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
    Check {
        id: "bolt-shear",
        asks: "Does the bolt hold in shear?",
        part: "bolt",
        rule: false,
        optional: false,
        source: pins::DOUBLE_SHEAR_CAPACITY.formula.source,
        run: bolt_shear,
    },
    Check {
        id: "bolt-bending",
        asks: "Does the bolt stay straight?",
        part: "bolt",
        rule: false,
        optional: false,
        source: pins::BOLT_MOMENT.formula.source,
        run: bolt_bending,
    },
    Check {
        id: "ear-bearing",
        asks: "Does the bracket hold around the bolt?",
        part: "bracket ear",
        rule: false,
        optional: false,
        source: EAR_BEARING,
        run: ear_bearing,
    },
];

/// Bearing strength of a mild-steel bracket ear at edge distance 2 diameters: AISI 1025.
const EAR_BEARING_ULTIMATE: f64 = ksi(90.0);
const EAR_BEARING: crate::source::Cite =
    cite(&MIL_HDBK_5J, "Table 2.2.1.0(b), AISI 1025, edge distance 2 diameters", Obtained::Copied);

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
    let b_is_worse = match (&a.utilization, &b.utilization) {
        (Ok(first), Ok(second)) => order::exceeds(*second, *first),
        (Ok(_), Err(_)) => true,
        (Err(_), _) => false,
    };
    let (worse, mut kept) = if b_is_worse { (b, sheet_b) } else { (a, sheet_a) };
    sheet.lines.append(&mut kept.lines);
    if sheet.out_of_range.is_none() {
        sheet.out_of_range = kept.out_of_range;
    }
    worse
}

/// The letter of an end.
pub(super) fn letter(end: usize) -> &'static str {
    if end == 0 { "A" } else { "B" }
}

/// The largest radial force on an eye: traction alone, or traction and strike together.
fn radial(case: &Case, sheet: &mut Sheet) -> f64 {
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
        let used = sheet.work(&pins::UTILIZATION, &[force, case.given.known(&inputs::YIELD_FACTOR), capacity]);
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

fn bolt_yield(case: &Case, end: usize) -> Result<(f64, f64, &'static str, crate::source::Cite), Said> {
    let grade = case.given.bolt();
    let bore = case.made.ends[end].bore;
    match grade.strength(bore) {
        Some(row) => Ok((row.yield_strength, row.shear_ultimate, grade.label, row.cite)),
        None => Err(said!["A ", (grade.label), " bolt of ", (bore, FineLength), " is outside the table held here."]),
    }
}

fn bolt_shear(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let (_, shear, label, source) = match bolt_yield(case, end) {
            Ok(row) => row,
            Err(why) => return Outcome::unanswered(why),
        };
        let force = radial(case, sheet);
        let area = sheet.work(&pins::BOLT_AREA, &[case.made.ends[end].bore]);
        let shear = sheet.look_up("Shear strength of the bolt", shear, Kind::Stress, label, source);
        let capacity = sheet.work(&pins::DOUBLE_SHEAR_CAPACITY, &[area, shear]);
        let used = sheet.work(&pins::UTILIZATION, &[force, case.given.known(&inputs::ULTIMATE_FACTOR), capacity]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "Held on both sides, the bolt shears at ",
                    (capacity, Force),
                    ". Keep its thread out of the bracket, and never hang a link on one ear."
                ]
            }),
        )
    })
}

fn bolt_bending(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let (yielding, _, label, source) = match bolt_yield(case, end) {
            Ok(row) => row,
            Err(why) => return Outcome::unanswered(why),
        };
        let made = &case.made.ends[end];
        let force = radial(case, sheet);
        let (ear, spacer) = (case.given.known(&inputs::EAR), case.given.known(&inputs::SPACER));
        let moment = sheet.work(&pins::BOLT_MOMENT, &[force, ear, 0.0, spacer, made.ball_width]);
        let modulus = sheet.work(&pins::ROUND_MODULUS, &[made.bore]);
        let stress = sheet.work(&crate::engine::formulas::beams::BENDING_STRESS, &[moment, modulus]);
        let yielding = sheet.look_up("Yield strength of the bolt", yielding, Kind::Stress, label, source);
        let used = sheet.work(&pins::STRESS_UTILIZATION, &[stress, case.given.known(&inputs::YIELD_FACTOR), yielding]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "Between its ears the bolt bends to ",
                    (stress, Stress),
                    ". Long spacers and a bolt stepped down in size make this worse fast."
                ]
            }),
        )
    })
}

fn ear_bearing(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let force = radial(case, sheet);
        let both_ears = 2.0 * case.given.known(&inputs::EAR);
        let pressure = sheet.work(&pins::BEARING_STRESS, &[force, both_ears, made.bore]);
        let bearing = sheet.look_up(
            "Bearing strength of a mild-steel ear",
            EAR_BEARING_ULTIMATE,
            Kind::Stress,
            "AISI 1025",
            EAR_BEARING,
        );
        let used =
            sheet.work(&pins::STRESS_UTILIZATION, &[pressure, case.given.known(&inputs::ULTIMATE_FACTOR), bearing]);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "The bolt presses on each ear with ",
                    (pressure, Stress),
                    ", taking mild steel with two bolt diameters to its edge."
                ]
            }),
        )
    })
}
