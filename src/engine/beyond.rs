//! Past the checks: where the bar first stays bent and what follows, and what repeated loads do. Notes, not verdicts.

use super::checks::{Case, zone};
use super::formula::{Line, Sheet};
use super::formulas::{beams, beyond, sections};
use super::loads;
use super::sentence::{Said, said};
use super::stepped::{self, Levers, Step, in_zone};
use super::tables::materials;
use crate::inputs;
use crate::quantity::{Kind, ksi};
use crate::report::{Beyond, Note};
use crate::source::{Obtained, PRACTICE, cite};

/// Scale, unit and floor of the curve fitted to notched 7075 bar.
const LIFE_SCALE: f64 = 630_957_344.48;
const LIFE_UNIT: f64 = ksi(1.0);
const LIFE_FLOOR: f64 = ksi(3.74);
/// Cycles between which that curve was read.
const LIFE_READ: [f64; 2] = [1e4, 1e7];

/// What the middle of the bar bears before it yields, and after.
pub(super) fn limits(case: &Case, bending: &[Step], compression_steps: &[Step], sheet: &mut Sheet) -> Option<Beyond> {
    let made = case.made;
    let (length, axial) = (made.length, case.loads.axial_with_strike);
    let levers = Levers::new(compression_steps, axial);
    if !levers.stand() {
        return None;
    }
    let middle = length / 2.0;
    let section = case.stock.plain(sheet);
    let unit = levers.moment(middle, middle);
    let lever = |what, value, sheet: &mut Sheet| {
        sheet.record(|| Line::Solved { what, value, kind: Kind::Length, how: "carried piece by piece" });
        value
    };
    let in_compression = lever("Moment at the middle for each unit of the strike, in compression", unit, sheet);
    let in_tension = lever("The same, in tension: the strike alone", length / 4.0, sheet);
    let by = |yielding, lever, sheet: &mut Sheet| {
        sheet.work(&beyond::FIRST_YIELD_STRIKE, &[yielding, axial, section.area, section.modulus, lever])
    };
    let first_yield =
        by(section.yield_compression, in_compression, sheet).min(by(section.yield_tension, in_tension, sheet));
    // A compression that yields the bar by itself leaves nothing to say about a strike.
    if first_yield <= 0.0 || sheet.out_of_range.is_some() {
        return None;
    }
    let give = stepped::deflection_per_force(bending, middle);
    let energy = sheet.work(&beyond::ELASTIC_ENERGY, &[first_yield, give]);
    let weight = case.loads.strike_weight;
    let drop =
        (case.given.number(&inputs::OWN_STRIKE).is_none() && weight > 0.0 && first_yield >= 2.0 * weight).then(|| {
            let rest = loads::at_rest(case.given, weight, give, sheet);
            sheet.work(&beyond::DROP_FOR_FORCE, &[rest, first_yield, weight])
        });
    let hinge = made.material.ductile.then(|| {
        let modulus = sheet.work(&sections::RING_PLASTIC_MODULUS, &[made.outside_diameter, made.bore]);
        let yielding = section.yield_tension.min(section.yield_compression);
        let moment = sheet.work(&beyond::HINGE_MOMENT, &[yielding, modulus, axial, section.area]);
        // The hinge forms when the moment of so many units of load reaches it.
        let collapse = sheet.work(&beyond::HINGE_STRIKE, &[1.0, moment, in_compression]);
        (collapse, sheet.work(&beyond::BOW_LEFT, &[energy, length, moment]))
    });
    Some(Beyond {
        first_yield,
        deflection: case.loads.strike * give,
        energy,
        drop,
        collapse: hinge.map(|hinge| hinge.0),
        bow: hinge.map(|hinge| hinge.1),
    })
}

/// The same in words.
pub(super) fn beyond_yield(case: &Case, limits: &Beyond, sheet: Sheet) -> Note {
    let mut says = said!["Without any factor, the middle of the bar yields first under ", (limits.first_yield, Force)];
    if case.strike() > 0.0 {
        says.extend(said![", ", (limits.first_yield / case.strike(), Ratio), " times the strike assumed"]);
    }
    if let Some(drop) = limits.drop {
        says.extend(said!["; the same weight would have to drop from ", (drop, FineLength)]);
    }
    says.extend(said![". Up to there it takes up ", (limits.energy, Moment), " and stays elastic. "]);
    match (limits.collapse, limits.bow) {
        (Some(collapse), Some(bow)) if case.strength.elongation.is_none_or(|stretch| stretch >= 0.1) => {
            says.extend(said![
                "Past that this metal bends slowly; a plastic hinge forms at ",
                (collapse, Force),
                ", and a hit with as much energy again leaves a bow of about ",
                (bow, FineLength),
                ". Replace a link that took a bow."
            ]);
        }
        (Some(collapse), Some(bow)) => says.extend(said![
            "Past that this metal bends on, though its makers promise little stretch; a plastic hinge forms at ",
            (collapse, Force),
            ", and a hit with as much energy again leaves a bow of about ",
            (bow, FineLength),
            ". Replace a link that took a bow."
        ]),
        _ => says.extend(said!["Past that count on nothing: this metal takes little bending before it cracks."]),
    }
    Note {
        id: "beyond-yield",
        title: "A harder hit",
        says,
        source: beyond::FIRST_YIELD_STRIKE.formula.source,
        working: sheet.lines,
    }
}

/// What repeated loads do at the threads, as far as anything is published.
pub(super) fn fatigue(case: &Case, mut sheet: Sheet) -> Note {
    let says = match cycles(case, &mut sheet) {
        Some(says) => says,
        None => said![
            "No test data on notched parts are held for this metal, and none cover its welds. Threads cut what a metal bears again and again to between a third and a half (from memory). Look at the threads and the weld after every hard outing."
        ],
    };
    let source = if sheet.lines.is_empty() {
        cite(&PRACTICE, "threads and repeated loads", Obtained::Practice)
    } else {
        beyond::NOTCHED_7075_LIFE.formula.source
    };
    Note { id: "fatigue", title: "Fatigue, for information", says, source, working: sheet.lines }
}

fn cycles(case: &Case, sheet: &mut Sheet) -> Option<Said> {
    if case.made.material.id != materials::DEFAULT {
        return None;
    }
    let end = case.made.ends.iter().max_by(|a, b| a.thread.major.total_cmp(&b.thread.major))?;
    let section = case.stock.tapped(end, sheet);
    let traction = sheet.work(&beams::AXIAL_STRESS, &[case.axial(), section.area]);
    let moment = {
        let station = (end.eye_to_face + end.tapped_depth).min(case.made.length / 2.0);
        let at = in_zone(station, zone(case));
        sheet.work(&beams::MOMENT_OF_STRIKE, &[case.strike(), station.min(at), case.made.length - at, case.made.length])
    };
    let struck =
        sheet.work(&beams::COMBINED_STRESS, &[case.axial_with_strike(), section.area, moment, section.modulus]);
    let mut says = said!["It colors nothing. "];
    let struck = (case.loads.strike > 0.0).then_some((struck, "Each full strike"));
    for (stress, when) in [Some((traction, "Each full cycle of tension and compression")), struck].into_iter().flatten()
    {
        says.extend(said![(when), " works the metal around the thread to ", (stress, Stress), ", which it bears "]);
        says.extend(said![(life(stress, sheet)), ". "]);
    }
    says.extend(said![
        "That is when notched rolled bar broke in tests in clean air, by a curve fitted here to a published figure and taken, unverified, for tension and compression alike. Salt, scratches and chatter in the thread take more, and for the rod end's steel no such data are held."
    ]);
    Some(says)
}

/// How many cycles of a stress notched bar stood, in words no finer than the curve.
fn life(stress: f64, sheet: &mut Sheet) -> &'static str {
    if stress <= LIFE_FLOOR {
        return "more often than the fitted curve tells, though aluminum has no stress that is safe for ever";
    }
    let cycles = sheet.work(&beyond::NOTCHED_7075_LIFE, &[LIFE_SCALE, LIFE_UNIT, stress, LIFE_FLOOR]);
    if cycles < LIFE_READ[0] {
        "fewer than ten thousand times"
    } else if cycles < 1e5 {
        "some tens of thousands of times"
    } else if cycles < 1e6 {
        "some hundreds of thousands of times"
    } else if cycles < LIFE_READ[1] {
        "some millions of times"
    } else {
        "more than ten million times"
    }
}
