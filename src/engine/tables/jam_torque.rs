//! Tightening torque of jam nuts.

use super::threads::Thread;
use crate::engine::formula::Sheet;
use crate::engine::formulas::jam_nut;
use crate::quantity::{Kind, POUND_FORCE, inch, ksi, mpa};
use crate::source::{AC_43_13, Cite, OURS, Obtained, cite};

/// A range of torque with anti-seize on the shank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorqueRange {
    /// Least, N·m.
    pub least: f64,
    /// Most, N·m.
    pub most: f64,
    /// Preload that the most gives, N.
    pub preload: f64,
}

/// Torque coefficient that the printed torques rest on (Shigley Table 8-15, cadmium plated).
pub const COEFFICIENT_PLATED: f64 = 0.16;

/// Torque coefficient of a bolt as received (Shigley Table 8-15, zinc plated).
pub const COEFFICIENT_AS_RECEIVED: f64 = 0.20;

/// What anti-seize on the shank leaves of a printed torque (common practice, no source).
pub const ANTI_SEIZE_SHARE: f64 = 0.7;

/// Shear strength taken for a jam nut's thread: 0.6 of 90 ksi.
pub const NUT_SHEAR: f64 = ksi(54.0);
/// Nobody publishes it for jam nuts.
pub const NUT_SHEAR_SOURCE: Cite = cite(&OURS, "0.6 of a breaking strength of 90 ksi", Obtained::Assumption);

/// Stress in the shank where no torque is printed: what the printed ones come to (assumption).
const PRELOAD_STRESS: [f64; 2] = [mpa(170.0), mpa(205.0)];
/// Where that comes from.
const SAME_STRESS: Cite =
    cite(&OURS, "170 to 205 MPa in the shank, what the printed inch sizes come to", Obtained::Assumption);

const fn lbf_ft(value: f64) -> f64 {
    value * POUND_FORCE * inch(12.0)
}

/// Thread id, least and most, lbf·ft on plated threads without a lubricant.
static PRINTED: &[(&str, f64, f64)] = &[
    ("3/8-24", 95.0 / 12.0, 110.0 / 12.0),
    ("7/16-20", 270.0 / 12.0, 300.0 / 12.0),
    ("1/2-20", 24.0, 34.0),
    ("5/8-18", 50.0, 65.0),
    ("3/4-16", 108.0, 125.0),
    ("7/8-14", 125.0, 150.0),
    ("1-14", 183.0, 275.0),
    ("1-1/4-12", 450.0, 550.0),
];

/// Where a printed torque stands; the table itself marks the two largest as estimated.
fn place(thread: &str) -> &'static str {
    if ["1-14", "1-1/4-12"].contains(&thread) {
        "Table 7-1, shear-type nuts on oil-free cadmium-plated threads, marked as estimated there"
    } else {
        "Table 7-1, shear-type nuts on oil-free cadmium-plated threads"
    }
}

/// The torque range for a thread's jam nut with anti-seize on the shank and the nut against the bar, with the preload
/// of its upper end: from the printed range where the table has it, else from the same stress in the shank.
pub fn range(thread: &Thread, sheet: &mut Sheet) -> TorqueRange {
    let coefficient = sheet.work(&jam_nut::ANTI_SEIZE, &[ANTI_SEIZE_SHARE, COEFFICIENT_PLATED]);
    if let Some((least, most)) = printed(thread) {
        let source = cite(&AC_43_13, place(thread.id), Obtained::Copied);
        let [least, most] = [("Least printed torque", least), ("Most printed torque", most)].map(|(what, torque)| {
            let printed = sheet.look_up(what, torque, Kind::Torque, thread.label, source);
            sheet.work(&jam_nut::ANTI_SEIZE_TORQUE, &[ANTI_SEIZE_SHARE, printed])
        });
        let preload = sheet.work(&jam_nut::PRELOAD, &[most, coefficient, thread.major]);
        return TorqueRange { least, most, preload };
    }
    let area = thread.tensile_stress_area();
    let [(least, _), (most, preload)] = PRELOAD_STRESS.map(|stress| {
        let stress = sheet.look_up("Stress in the shank", stress, Kind::Stress, thread.label, SAME_STRESS);
        let preload = sheet.work(&jam_nut::STRESS_PRELOAD, &[stress, area]);
        (sheet.work(&jam_nut::TORQUE, &[coefficient, preload, thread.major]), preload)
    });
    TorqueRange { least, most, preload }
}

/// The printed range for a thread, on plated threads without a lubricant.
pub fn printed(thread: &Thread) -> Option<(f64, f64)> {
    PRINTED.iter().find(|(id, ..)| *id == thread.id).map(|(_, least, most)| (lbf_ft(*least), lbf_ft(*most)))
}
