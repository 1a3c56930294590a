//! Checks on the bar: bending between the ends, at the tapped ends, at the flats.

use super::{Case, Check, Outcome, actions, actions_with, buckles, tube, worst};
use crate::engine::cross_sections::CrossSection;
use crate::engine::formula::Sheet;
use crate::engine::formulas::{sections, stepped};
use crate::engine::sentence::{Said, said};
use crate::engine::stepped::Levers;
use crate::engine::tables::materials::Form;
use crate::inputs;
use crate::quantity;
use crate::report::{EndGeometry, Topic};

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "bar-bending",
        topic: Topic::BarBending,
        of_lengths: true,
        title: "Bar bending in the hit",
        part: "middle of the bar",
        rule: false,
        optional: false,
        source: stepped::STEPPED_MOMENT.formula.source,
        run: bar_bending,
    },
    Check {
        id: "tapped-end",
        topic: Topic::Other,
        of_lengths: true,
        title: "Bar at the threaded holes",
        part: "bar at the threaded hole",
        rule: false,
        optional: false,
        source: sections::RING_SECTION_MODULUS.formula.source,
        run: tapped_end,
    },
    Check {
        id: "wrench-flats",
        topic: Topic::WrenchFlats,
        of_lengths: true,
        title: "Bar at the wrench flats",
        part: "wrench flats",
        rule: false,
        optional: false,
        source: sections::FLATS_WEAK_SECOND_MOMENT.formula.source,
        run: wrench_flats,
    },
];

fn bar_bending(case: &Case, sheet: &mut Sheet) -> Outcome {
    let middle = case.made.length / 2.0;
    let section = case.stock.plain(sheet);
    if tube::is_ductile(case, &section) {
        return tube::bending(case, section, sheet);
    }
    let Some(actions) = actions(case, middle, sheet) else { return buckles(case, sheet) };
    let (used, stress) = worst(&section, &actions, sheet);
    Outcome::new(
        used,
        Some(middle),
        sheet.remark(|| {
            let yielding = section.yield_compression.min(section.yield_tension);
            if case.loads.strike > 0.0 {
                said![
                    "With its factor, the hit works the middle of the bar at ",
                    (stress, Stress),
                    "; it yields at ",
                    (yielding, Stress),
                    "."
                ]
            } else {
                said![
                    "No hit is assumed. In tension and compression, factor included, the bar works at ",
                    (stress, Stress),
                    "; it yields at ",
                    (yielding, Stress),
                    "."
                ]
            }
        }),
    )
}

fn tapped_end(case: &Case, sheet: &mut Sheet) -> Outcome {
    if case.made.material.form == Form::Tube {
        return tube::beside_weld(case, sheet);
    }
    let tapped = |end: &EndGeometry, sheet: &mut Sheet| case.stock.tapped(end, sheet);
    let drilled = |end: &EndGeometry, sheet: &mut Sheet| case.stock.drilled(end, sheet);
    // The moment grows away from the eye, so each part of the hole is worst at its bottom.
    let places: [(Depth, Section); 2] = [(|end| end.tapped_depth, &tapped), (|end| end.drill_point, &drilled)];
    let factor = case.given.known(&inputs::YIELD_FACTOR);
    in_the_hole(case, sheet, factor, case.levers, &places, |stress| {
        said!["At the bottom of the hole the metal around it works at ", (stress, Stress), ", factor included."]
    })
}

/// How deep a place of a hole lies.
pub(super) type Depth = fn(&EndGeometry) -> f64;
/// What the link is around it.
pub(super) type Section<'a> = &'a dyn Fn(&EndGeometry, &mut Sheet) -> CrossSection;

/// The worst of some places in the holes of both ends.
pub(super) fn in_the_hole(
    case: &Case,
    sheet: &mut Sheet,
    factor: f64,
    levers: &Levers,
    places: &[(Depth, Section)],
    says: impl Fn(f64) -> Said,
) -> Outcome {
    let mut highest = (f64::NAN, 0.0, 0.0);
    for (index, end) in case.made.ends.iter().enumerate() {
        for (depth, section) in places {
            // Past the middle it only gets better again.
            let station = case.station(index, (end.eye_to_face + depth(end)).min(case.made.length / 2.0));
            let Some(actions) = actions_with(case, station, factor, levers, sheet) else { return buckles(case, sheet) };
            let section = section(end, sheet);
            let (used, stress) = worst(&section, &actions, sheet);
            if highest.0.is_nan() || quantity::exceeds(used, highest.0) {
                highest = (used, station, stress);
            }
        }
    }
    let (used, station, stress) = highest;
    Outcome::new(used, Some(station), sheet.remark(|| says(stress)))
}

fn wrench_flats(case: &Case, sheet: &mut Sheet) -> Outcome {
    let Some(flats) = case.made.flats else {
        return Outcome::does_not_arise();
    };
    let outside = case.made.outside_diameter;
    if flats.width >= outside {
        return Outcome::unanswered(said![
            "Flats ",
            (flats.width, FineLength),
            " across do not cut into a bar of ",
            (outside, FineLength),
            "."
        ]);
    }
    // The stretches know where flats lie over a hole, and every one of them is flats for a part of their length.
    let (mut used, mut stress, mut station) = (0.0, 0.0, None);
    let mut over_hole = false;
    let face = case.made.ends[0].eye_to_face;
    let middle = case.made.length / 2.0;
    for (from, to, bore) in case.stock.flats_stretches() {
        // Inside its stretch, the place nearest the middle bends most.
        let at = middle.max(face + from).min(face + to);
        let Some(actions) = actions(case, at, sheet) else { return buckles(case, sheet) };
        let section = case.stock.flats(flats.width, bore, sheet);
        let now = worst(&section, &actions, sheet);
        over_hole |= bore > 0.0;
        if station.is_none() || now.0 > used {
            (used, stress, station) = (now.0, now.1, Some(at));
        }
    }
    if over_hole {
        sheet.choose(|| said!["The flats lie over a drilled hole, so the hole is taken out of the section."]);
    }
    let says = sheet.remark(|| {
        said!["At the wrench flats, hit across them, the bar works at ", (stress, Stress), ", factor included."]
    });
    Outcome::new(used, station, says)
}
