//! The jam nut on the end of the bar: whether it seats, and how tight it may be.

use super::ends::at_ends;
use super::{Case, Outcome, of_capacity, of_length, of_strength};
use crate::engine::formula::Sheet;
use crate::engine::formulas::jam_nut;
use crate::engine::sentence::said;
use crate::engine::tables::jam_torque;
use crate::engine::tables::materials::Form;
use crate::quantity;
use crate::quantity::{Kind, inch};

/// How much wider than the thread the countersink is (assumption).
const COUNTERSINK_OVER: f64 = inch(1.0 / 64.0);

pub(super) fn jam_nut_seat(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, jam_nut_at)
}

fn jam_nut_at(case: &Case, index: usize, sheet: &mut Sheet) -> Outcome {
    let end = &case.made.ends[index];
    let outside = case.made.outside_diameter;
    let across = end.jam_nut_across;
    if quantity::exceeds(across, outside) {
        return Outcome::new(
            of_length(across, outside, sheet),
            None,
            sheet.remark(|| {
                said![
                    "The jam nut is ",
                    (across, FineLength),
                    " across, wider than the bar: it needs a hardened washer, or a thicker bar."
                ]
            }),
        );
    }
    let joint = &case.joints[index];
    let torque = jam_torque::range(end.thread, sheet);
    let countersink = sheet.work(&jam_nut::COUNTERSINK, &[end.thread.major, COUNTERSINK_OVER]);
    let area = sheet.work(&jam_nut::SEAT_AREA, &[joint.nut.across_flats_min.unwrap_or(across), countersink]);
    let pressure = sheet.work(&jam_nut::SEAT_PRESSURE, &[torque.preload, area]);
    let yielding = if case.made.material.form == Form::Tube {
        case.strength.yield_tension
    } else {
        case.strength.yield_compression
    };
    let nut_shear = sheet.look_up(
        "Shear strength of the nut's thread",
        jam_torque::NUT_SHEAR,
        Kind::Stress,
        "jam nut",
        jam_torque::NUT_SHEAR_SOURCE,
    );
    let thread = joint.internal_shear_area.min(joint.external_shear_area);
    let height = joint.nut.thickness_min.unwrap_or(end.jam_nut);
    let nut_holds = sheet.work(&jam_nut::NUT_THREAD_LOAD, &[thread, height, end.thread.pitch, nut_shear]);
    let seat = of_strength(pressure, 1.0, yielding, sheet);
    let thread = of_capacity(torque.preload, 1.0, nut_holds, sheet);
    Outcome::new(
        seat.max(thread),
        None,
        sheet.remark(|| {
            said![
                "Tighten to ",
                (torque.least, Torque),
                " to ",
                (torque.most, Torque),
                ", with anti-seize on the shank and the nut against the bar. The nut locks; it carries nothing."
            ]
        }),
    )
}
