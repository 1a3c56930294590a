//! Checks on the bar: bending between the ends, at the tapped ends, at the flats, and buckling.

use super::{Case, Check, Outcome, SectionUse, folds, moments};
use crate::engine::formula::{Said, Sheet, said};
use crate::engine::formulas::{beams, columns, pins, sections};
use crate::engine::tables::materials::{Form, Strength};
use crate::inputs;
use crate::quantity::Kind;
use crate::report::MadeEnd;

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "bar-bending",
        asks: "Does the bar spring back when it lands on a rock?",
        part: "middle of the bar",
        rule: false,
        source: columns::BEAM_COLUMN_MOMENT.source,
        run: bar_bending,
    },
    Check {
        id: "tapped-end",
        asks: "Is enough metal left around the threaded holes?",
        part: "bar at the threaded hole",
        rule: false,
        source: sections::RING_SECTION_MODULUS.source,
        run: tapped_end,
    },
    Check {
        id: "wrench-flats",
        asks: "Do the wrench flats leave enough?",
        part: "wrench flats",
        rule: false,
        source: sections::FLATS_WEAK_SECOND_MOMENT.source,
        run: wrench_flats,
    },
    Check {
        id: "buckling",
        asks: "Does it stay straight under the greatest push?",
        part: "whole link, pushed",
        rule: false,
        source: columns::JOHNSON_LOAD.source,
        run: buckling,
    },
];

/// A ring of the bar's metal with its yield strengths.
fn ring(case: &Case, bore: f64, sheet: &mut Sheet) -> SectionUse {
    let outside = case.made.outside_diameter;
    SectionUse {
        area: sheet.work(&sections::RING_AREA, &[outside, bore]),
        modulus: sheet.work(&sections::RING_SECTION_MODULUS, &[outside, bore]),
        yield_tension: yield_tension(case, sheet),
        yield_compression: yield_compression(case, sheet),
    }
}

fn yield_tension(case: &Case, sheet: &mut Sheet) -> f64 {
    strength(case, case.strength, sheet, "Yield strength, pulled", |row| row.yield_tension)
}

fn yield_compression(case: &Case, sheet: &mut Sheet) -> f64 {
    strength(case, case.strength, sheet, "Yield strength, pressed", |row| row.yield_compression)
}

fn strength(case: &Case, row: &Strength, sheet: &mut Sheet, what: &'static str, of: fn(&Strength) -> f64) -> f64 {
    sheet.look_up(what, of(row), Kind::Stress, case.made.material.label, row.cite)
}

fn bar_bending(case: &Case, sheet: &mut Sheet) -> Outcome {
    let middle = case.made.length / 2.0;
    let Some(moments) = moments(case, middle, sheet) else { return folds(case, sheet) };
    let section = ring(case, case.made.bore, sheet);
    let (used, stress) = section.worst(case, &moments, sheet);
    Outcome::new(
        used,
        Some(middle),
        said![
            "The strike bends the middle of the bar to ",
            (stress, Stress),
            "; it stays bent from ",
            (section.yield_compression.min(section.yield_tension), Stress),
            "."
        ],
    )
}

fn tapped_end(case: &Case, sheet: &mut Sheet) -> Outcome {
    if case.made.material.form == Form::Tube {
        return beside_weld(case, sheet);
    }
    let section = |end: &MadeEnd, station: f64, sheet: &mut Sheet| {
        let (outside, hole) = (case.made.outside_diameter, end.thread.major);
        if outside > hole {
            return Ok(ring(case, hole, sheet));
        }
        let says = said!["The threaded hole is as wide as the bar."];
        Err(Outcome::new(hole / outside + 1.0, Some(station), says))
    };
    bottom_of_thread(case, sheet, section, |stress| {
        said!["At the bottom of the thread the metal around the hole works at ", (stress, Stress), "."]
    })
}

fn beside_weld(case: &Case, sheet: &mut Sheet) -> Outcome {
    let Some(weld) = case.beside_weld else {
        return Outcome::unanswered(said![
            "No published strength beside a weld is held for this tube, so its ends cannot be judged."
        ]);
    };
    let size = [case.made.outside_diameter, case.made.bore];
    let section = SectionUse {
        area: sheet.work(&sections::RING_AREA, &size),
        modulus: sheet.work(&sections::RING_SECTION_MODULUS, &size),
        yield_tension: strength(case, weld, sheet, "Yield beside the weld, pulled", |row| row.yield_tension),
        yield_compression: strength(case, weld, sheet, "Yield beside the weld, pressed", |row| row.yield_compression),
    };
    bottom_of_thread(
        case,
        sheet,
        |_, _, _| Ok(section),
        |stress| {
            said![
                "Where the threaded insert is welded in, the tube works at ",
                (stress, Stress),
                "; the weld takes away what drawing gave it."
            ]
        },
    )
}

/// The worse of the two ends at the bottom of its thread: the moment grows away from the eye, so that is
/// the worst place of the hole.
fn bottom_of_thread(
    case: &Case,
    sheet: &mut Sheet,
    section: impl Fn(&MadeEnd, f64, &mut Sheet) -> Result<SectionUse, Outcome>,
    says: impl Fn(f64) -> Said,
) -> Outcome {
    let mut worst = (f64::NAN, 0.0, 0.0);
    for (index, end) in case.made.ends.iter().enumerate() {
        let station = case.station(index, end.eye_to_face + end.tapped_depth);
        let Some(moments) = moments(case, station, sheet) else { return folds(case, sheet) };
        let section = match section(end, station, sheet) {
            Ok(section) => section,
            Err(outcome) => return outcome,
        };
        let (used, stress) = section.worst(case, &moments, sheet);
        if index == 0 || used > worst.0 {
            worst = (used, station, stress);
        }
    }
    let (used, station, stress) = worst;
    Outcome::new(used, Some(station), says(stress))
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
    let face = case.made.ends[0].eye_to_face;
    let station = (face + flats.start + flats.length).min(case.made.length - face);
    // Flats may reach past the middle, where the moment is greatest.
    let middle = case.made.length / 2.0;
    let station = if station > middle { middle.max(face + flats.start) } else { station };
    let Some(moments) = moments(case, station, sheet) else { return folds(case, sheet) };
    let angle = sheet.work(&sections::FLATS_HALF_ANGLE, &[flats.width, outside]);
    // Flats over a tapped hole leave only the metal around it.
    let [a, b] = &case.made.ends;
    let over_a = flats.start < a.drill_point;
    let over_b = flats.start + flats.length > case.made.bar - b.drill_point;
    let hole = |over: bool, major: f64| if over { major } else { 0.0 };
    let bore = hole(over_a, a.thread.major).max(hole(over_b, b.thread.major));
    if over_a || over_b {
        sheet.chose(|| said!["The flats lie over a drilled hole, so the hole is taken out of the section."]);
    }
    if bore >= flats.width {
        return Outcome::new(
            1.0 + bore / flats.width,
            Some(station),
            said![
                "The flats are cut into the threaded hole. Move them past ",
                (a.drill_point, Length),
                " from the face."
            ],
        );
    }
    let second_moment = sheet.work(&sections::FLATS_WEAK_SECOND_MOMENT, &[outside, angle, bore]);
    let section = SectionUse {
        area: sheet.work(&sections::FLATS_AREA, &[outside, angle, bore]),
        modulus: sheet.work(&sections::FLATS_WEAK_MODULUS, &[second_moment, flats.width]),
        yield_tension: yield_tension(case, sheet),
        yield_compression: yield_compression(case, sheet),
    };
    let (used, stress) = section.worst(case, &moments, sheet);
    Outcome::new(used, Some(station), said!["Hit across the flats, the bar works there at ", (stress, Stress), "."])
}

fn buckling(case: &Case, sheet: &mut Sheet) -> Outcome {
    let material = case.made.material;
    let (outside, bore) = (case.made.outside_diameter, case.made.bore);
    let area = sheet.work(&sections::RING_AREA, &[outside, bore]);
    let second_moment = sheet.work(&sections::RING_SECOND_MOMENT, &[outside, bore]);
    let radius = sheet.work(&sections::RADIUS_OF_GYRATION, &[second_moment, area]);
    let slenderness = sheet.work(&columns::SLENDERNESS, &[case.made.length, radius]);
    let yielding = yield_compression(case, sheet);
    let transition = sheet.work(&columns::TRANSITION_SLENDERNESS, &[material.modulus_compression, yielding]);
    let capacity = if slenderness < transition {
        sheet.chose(|| {
            said![
                "Slenderness ",
                (slenderness, Ratio),
                " is below ",
                (transition, Ratio),
                ": the short-column curve governs."
            ]
        });
        sheet.work(&columns::JOHNSON_LOAD, &[area, yielding, slenderness, material.modulus_compression])
    } else {
        sheet.chose(|| {
            said![
                "Slenderness ",
                (slenderness, Ratio),
                " is ",
                (transition, Ratio),
                " or more: the long-column curve governs."
            ]
        });
        sheet.work(&columns::EULER_COLUMN_LOAD, &[area, slenderness, material.modulus_compression])
    };
    let push = case.loads.axial;
    let used = sheet.work(&pins::UTILIZATION, &[push, case.given.known(&inputs::COLUMN_FACTOR), capacity]);
    sheet.work(&beams::AXIAL_STRESS, &[push, area]);
    Outcome::new(
        used,
        Some(case.made.length / 2.0),
        said!["It folds at a push of ", (capacity, Force), "; the greatest push here is ", (push, Force), "."],
    )
}
