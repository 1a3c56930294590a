//! What the loads do at a place of a link, and the one line in which a utilization is told.

use super::{Case, Outcome};
use crate::engine::cross_sections::CrossSection;
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{beams, pins, stepped as stepped_formulas};
use crate::engine::sentence::said;
use crate::engine::stepped::{Levers, in_zone};
use crate::inputs;
use crate::quantity::Kind;

/// What a strike and an axial force do at a station, with the factor on yield already in them.
pub(in crate::engine) struct Actions {
    /// Tension or compression along the link together with the strike.
    pub(in crate::engine) axial: f64,
    /// The greatest tension or compression, without a strike.
    pub(in crate::engine) alone: f64,
    /// Moment while the link is in compression.
    pub(in crate::engine) in_compression: f64,
    /// Moment while it is in tension; the strike alone, since tension only straightens the bar.
    pub(in crate::engine) in_tension: f64,
}

/// Where the zone of strikes begins and ends.
pub(in crate::engine) fn zone(case: &Case) -> [f64; 2] {
    let length = case.made.length;
    let begins = (case.given.known(&inputs::STRIKE_ZONE) * length).min(length / 2.0);
    [begins, length - begins]
}

/// The worst actions at a station; `None` when the compression alone buckles the link.
///
/// One force is taken over the whole zone, that of the drop at mid-span.
pub(in crate::engine) fn actions(case: &Case, station: f64, sheet: &mut Sheet) -> Option<Actions> {
    actions_with(case, station, case.given.known(&inputs::YIELD_FACTOR), case.levers, sheet)
}

/// The worst actions at a station with all loads multiplied by a factor, which the levers were carried under too.
pub(in crate::engine) fn actions_with(
    case: &Case,
    station: f64,
    factor: f64,
    levers: &Levers,
    sheet: &mut Sheet,
) -> Option<Actions> {
    let length = case.made.length;
    let zone = zone(case);
    sheet.choose(|| said!["Strike, axial force with it and axial force alone, each with the factor:"]);
    let strike = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.strike()]);
    let axial = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.axial_with_strike()]);
    let alone = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.axial()]);
    // Without compression, the strike on the place itself bends it most, or the one at the edge of the zone.
    let at = in_zone(station, zone);
    let (near, far) = if station <= at { (station, length - at) } else { (length - station, at) };
    let in_tension = sheet.work(&beams::MOMENT_OF_STRIKE, &[strike, near.max(0.0), far, length]);
    if axial < 1e-6 {
        return Some(Actions { axial, alone, in_compression: in_tension, in_tension });
    }
    if !levers.stand() {
        return None;
    }
    let (near, far) = levers.worst(station, zone);
    if sheet.is_recording() {
        carried(case, near, far, levers, sheet);
    }
    let in_compression = sheet.work(&stepped_formulas::STEPPED_MOMENT, &[strike, near, far, levers.whole()]);
    Some(Actions { axial, alone, in_compression, in_tension })
}

/// How the levers came about, for whoever wants to do it again.
fn carried(case: &Case, near: f64, far: f64, levers: &Levers, sheet: &mut Sheet) {
    sheet.choose(|| {
        let mut said = said![
            "In compression the link is a beam-column, worked out by transfer matrix: a lever u and its slope u′ are carried from each eye over every piece of the link, beginning with u = 0 and u′ = 1: u = u_1 · cos(k · l) + u′_1 · sin(k · l) / k and u′ = u′_1 · cos(k · l) − k · u_1 · sin(k · l), with k = √(N / (E · I)) of the piece. The pieces from eye A:"
        ];
        for (index, stretch) in case.stretches.iter().enumerate() {
            let section = &stretch.section;
            said.extend(said![(if index == 0 { " " } else { "; " }), (stretch.part), " ", (stretch.to - stretch.from, FineLength), ", I = "]);
            said.extend(said![(section.second_moment, SecondMoment), ", E = ", (section.modulus_compression, Stress)]);
        }
        said.extend(said!["."]);
        said
    });
    let mut found = |what, value| {
        sheet.record(|| Line::Solved {
            what,
            value,
            kind: Kind::FineLength,
            how: "carried piece by piece by transfer matrix",
        });
    };
    found("Lever of this place", near);
    found("Lever of the strike, from the other eye", far);
    found("Lever from eye to eye", levers.whole());
}

/// The outcome when the compression alone buckles the bar.
pub(in crate::engine) fn buckles(case: &Case, sheet: &mut Sheet) -> Outcome {
    let factor = case.given.known(&inputs::YIELD_FACTOR);
    let compression = sheet.work(&stepped_formulas::FACTORED_LOAD, &[factor, case.axial_with_strike()]);
    let used = of_capacity(compression, 1.0, case.critical_load(), sheet);
    Outcome::new(
        used.max(1.01),
        Some(case.made.length / 2.0),
        sheet.remark(|| {
            said!["The compression along the link alone buckles this bar; it is far too thin for its length."]
        }),
    )
}

/// Share of its yield strength that a section is asked for, and the stress that decides it.
pub(in crate::engine) fn worst(section: &CrossSection, actions: &Actions, sheet: &mut Sheet) -> (f64, f64) {
    let Actions { axial, alone, in_compression, in_tension } = *actions;
    let compression_side = sheet.work(&beams::COMBINED_STRESS, &[axial, section.area, in_compression, section.modulus]);
    let tension_side = sheet.work(&beams::COMBINED_STRESS, &[axial, section.area, in_tension, section.modulus]);
    let far_side = sheet.work(&beams::TENSION_SIDE_STRESS, &[axial, section.area, in_compression, section.modulus]);
    let straight = sheet.work(&beams::AXIAL_STRESS, &[alone, section.area]);
    let [tension, compression] = [section.yield_tension, section.yield_compression];
    // Stress, what it is held against, when, and the moment that it comes from with the axial force.
    let uses = [
        (compression_side, compression, "in compression, on the compression side", Some(in_compression)),
        (tension_side, tension, "in tension, on the tension side", Some(in_tension)),
        (far_side, tension, "in compression, on the tension side", Some(in_compression)),
        (straight, compression, "in the largest compression, without a strike", None),
        (straight, tension, "in the largest tension, without a strike", None),
    ];
    let mut worst = uses[0];
    for row in uses {
        if row.0 / row.1 > worst.0 / worst.1 {
            worst = row;
        }
    }
    let (stress, strength, when, moment) = worst;
    sheet.choose(|| said!["Worst ", (when), ": ", (stress, Stress), " against ", (strength, Stress), "."]);
    let used = sheet.work(&pins::STRESS_SHARE, &[stress, strength]);
    sheet.conclude(used, || match moment {
        Some(moment) => said![
            "M ",
            (moment, Moment),
            " on S ",
            (section.modulus, SectionModulus),
            ": ",
            (stress, Stress),
            " with the axial force, of ",
            (strength, Stress),
            ": ",
            (used, Percent),
            "."
        ],
        None => said![
            "N ",
            (alone, Force),
            " on A ",
            (section.area, Area),
            ": ",
            (stress, Stress),
            ", of ",
            (strength, Stress),
            ": ",
            (used, Percent),
            "."
        ],
    });
    (used, stress)
}

/// Utilization of a force with its factor, with its result in one line.
pub(in crate::engine) fn of_capacity(force: f64, factor: f64, capacity: f64, sheet: &mut Sheet) -> f64 {
    let used = sheet.work(&pins::UTILIZATION, &[force, factor, capacity]);
    sheet.conclude(used, || {
        said![
            (force, Force),
            " times the factor of ",
            (factor, Ratio),
            ", of ",
            (capacity, Force),
            ": ",
            (used, Percent),
            "."
        ]
    });
    used
}

/// Utilization of a stress with its factor, with its result in one line.
pub(in crate::engine) fn of_strength(stress: f64, factor: f64, strength: f64, sheet: &mut Sheet) -> f64 {
    let used = sheet.work(&pins::STRESS_UTILIZATION, &[stress, factor, strength]);
    sheet.conclude(used, || {
        said![
            (stress, Stress),
            " times the factor of ",
            (factor, Ratio),
            ", of ",
            (strength, Stress),
            ": ",
            (used, Percent),
            "."
        ]
    });
    used
}

/// Utilization of a length that is required, with its result in one line.
pub(in crate::engine) fn of_length(required: f64, there: f64, sheet: &mut Sheet) -> f64 {
    let used = sheet.work(&pins::LENGTH_SHARE, &[required, there]);
    sheet.conclude(used, || said![(required, FineLength), ", of ", (there, FineLength), ": ", (used, Percent), "."]);
    used
}
