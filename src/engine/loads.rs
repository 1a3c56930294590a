//! What one link must bear: traction along it and a strike across it, each with its working.

use super::formula::{Line, Sheet};
use super::formulas::{impact, loads};
use super::given::Values;
use super::sentence::{Said, said};
use super::stepped::{self, Step};
use super::tables::uses;
use crate::document::Role;
use crate::inputs;
use crate::quantity::{Kind, inch};
use crate::report::Loads;

mod axial;

pub(super) use axial::refusal;

/// The weight that lands on the bar; track bars, drag links and sway-bar links are not landed on.
pub(super) fn strike_weight(given: &Values, sheet: &mut Sheet) -> f64 {
    let (share, weight) = (given.known(&inputs::STRIKE_SHARE), given.known(&inputs::WEIGHT));
    match given.link.role {
        Role::Lower => sheet.work(&loads::STRIKE_WEIGHT, &[share, weight]),
        Role::Upper | Role::TieRod => {
            given.rests_on_choice(&inputs::TIE_ROD_SIDE);
            sheet.work(&loads::UPPER_STRIKE_WEIGHT, &[given.known(&inputs::UPPER_STRIKE), share, weight])
        }
        Role::TrackBar | Role::DragLink | Role::SwayLink => 0.0,
    }
}

/// The force of a strike at mid-span. The weight is stopped by the link and by the rest of the rig, two springs one after
/// the other. One force stands for the whole zone: with the rest of the rig deflecting too, the same drop lands only a
/// few percent harder near an eye.
fn strike_force(given: &Values, steps: &[Step], weight: f64, sheet: &mut Sheet) -> f64 {
    if let Some(force) = given.number(&inputs::OWN_STRIKE) {
        sheet.choose(|| said!["Your own strike is used: ", (force, Force), "."]);
        return force;
    }
    if weight <= 0.0 {
        return 0.0;
    }
    let compliance = stepped::deflection_per_force(steps, given.known(&inputs::LENGTH) / 2.0);
    sheet.record(|| Line::Solved {
        what: "Deflection of the link at the point of impact, for each unit of force",
        value: compliance,
        kind: Kind::Compliance,
        how: "added up over shanks, threaded holes, flats and bar",
    });
    let deflection = at_rest(given, weight, compliance, sheet);
    sheet.work(&impact::DROP_FORCE, &[weight, given.known(&inputs::DROP), deflection])
}

/// How far the rest of the rig deflects, for each unit of force.
pub(super) fn rest_compliance(given: &Values, sheet: &mut Sheet) -> f64 {
    sheet.work(&impact::REST_COMPLIANCE, &[given.known(&inputs::REST_DEFLECTION), given.known(&inputs::WEIGHT)])
}

/// How far a link and the rest of the rig deflect under a weight at rest.
pub(super) fn at_rest(given: &Values, weight: f64, compliance: f64, sheet: &mut Sheet) -> f64 {
    let rest = rest_compliance(given, sheet);
    sheet.work(&impact::STATIC_DEFLECTION, &[weight, compliance, rest])
}

/// The largest tension or compression along a link, without a strike.
pub(super) fn largest_axial(given: &Values) -> f64 {
    axial::axial(given, &mut Sheet::silent()).force
}

/// Every force on a link.
pub(super) fn on_link(given: &Values, steps: &[Step], sheet: &mut Sheet) -> Loads {
    given.begin_trace();
    let axial = axial::axial(given, sheet);
    let (axial_changed, axial_out_of_range) = (given.take_trace(), sheet.out_of_range.take());
    given.begin_trace();
    let with = sheet.work(&loads::FORCE_WITH_STRIKE, &[given.known(&inputs::AXIAL_SHARE_WITH_STRIKE), axial.force]);
    let weight = strike_weight(given, sheet);
    let zone = given.known(&inputs::STRIKE_ZONE);
    let strike = strike_force(given, steps, weight, sheet);
    Loads {
        strike_changed: given.take_trace(),
        axial_changed,
        axial_out_of_range,
        strike_out_of_range: sheet.out_of_range.take(),
        axle: axial.axle,
        from: axial.from,
        axial: axial.force,
        remark: axial.remark,
        caution: axial.caution,
        axial_with_strike: with,
        strike_weight: weight,
        drop: given.known(&inputs::DROP),
        strike,
        zone,
        story: Said::default(),
        working: std::mem::take(&mut sheet.lines),
    }
}

/// What the link is sized for, in words.
pub(super) fn story(given: &Values, loads: &Loads) -> Said {
    let mut said = sized_for(given, loads);
    if let Some(usage) = given.document.rig.usage {
        let scenario = uses::scenario(usage).label.to_ascii_lowercase();
        said.extend(said![
            " Assumed for “",
            scenario,
            "”: calibrated so that sizes come out as builders fit them, and no limit on what a rock can do."
        ]);
    }
    if !loads.remark.is_empty() {
        said.extend(said![" "]);
        said.extend(loads.remark.clone());
    }
    said
}

/// The hit and the force along the link, one whole sentence for each case.
fn sized_for(given: &Values, loads: &Loads) -> Said {
    let Loads { strike_weight: weight, drop, strike, axial_with_strike: with, axial, from, .. } = *loads;
    if given.number(&inputs::OWN_STRIKE).is_some() {
        return said![
            "Your own strike of ",
            (strike, Force),
            " at mid-span, with ",
            (with, Force),
            " tension or compression; also ",
            (axial, Force),
            " tension or compression alone (",
            (from),
            ")."
        ];
    }
    if weight <= 0.0 {
        return said![(axial, Force), " tension or compression (", (from), "), with no strike."];
    }
    let share = weight / given.known(&inputs::WEIGHT);
    if drop > LEAST_DROP {
        said![
            (share, Percent),
            " of the rig (",
            (weight, Weight),
            ") dropped ",
            (drop, FineLength),
            " onto mid-span = ",
            (strike, Force),
            ", with ",
            (with, Force),
            " tension or compression; also ",
            (axial, Force),
            " tension or compression alone (",
            (from),
            ")."
        ]
    } else {
        said![
            (share, Percent),
            " of the rig (",
            (weight, Weight),
            ") set down suddenly at mid-span = ",
            (strike, Force),
            ", with ",
            (with, Force),
            " tension or compression; also ",
            (axial, Force),
            " tension or compression alone (",
            (from),
            ")."
        ]
    }
}

/// A drop smaller than this is called none, m.
const LEAST_DROP: f64 = inch(0.001);
