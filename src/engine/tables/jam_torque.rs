//! Tightening torque of jam nuts.

use super::threads::Thread;
use crate::engine::formulas::jam_nut;
use crate::quantity::{POUND_FORCE, inch, ksi};
use crate::source::{AC_43_13, Cite, OURS, Obtained, cite};

/// A range of torque, dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorqueRange {
    /// Least, N·m.
    pub least: f64,
    /// Most, N·m.
    pub most: f64,
    /// Where it comes from.
    pub cite: Cite,
}

/// Torque coefficient of a nut as received (Shigley Table 8-15, zinc plated).
pub const COEFFICIENT_AS_RECEIVED: f64 = 0.20;

/// Shear strength taken for a jam nut's thread: 0.6 of 90 ksi.
pub const NUT_SHEAR: f64 = ksi(54.0);
/// Nobody publishes it for jam nuts.
pub const NUT_SHEAR_SOURCE: Cite = cite(&OURS, "0.6 of a breaking strength of 90 ksi", Obtained::Assumption);

/// Stress in the shank where no torque is printed, about the middle of what the printed ones come to (assumption).
const PRELOAD_STRESS: [f64; 2] = [ksi(18.0), ksi(22.0)];

const fn lbf_ft(value: f64) -> f64 {
    value * POUND_FORCE * inch(12.0)
}

/// Thread id, least and most, lbf·ft dry.
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

/// The torque range for a thread's jam nut, dry: printed where the table has it, else from the same stress in the shank.
pub fn range(thread: &Thread) -> TorqueRange {
    if let Some((_, least, most)) = PRINTED.iter().find(|(id, ..)| *id == thread.id) {
        return TorqueRange {
            least: lbf_ft(*least),
            most: lbf_ft(*most),
            cite: cite(&AC_43_13, place(thread.id), Obtained::Copied),
        };
    }
    let torque = |stress: f64| {
        jam_nut::TORQUE.value(&[COEFFICIENT_AS_RECEIVED, stress * thread.tensile_stress_area(), thread.major])
    };
    TorqueRange {
        least: torque(PRELOAD_STRESS[0]),
        most: torque(PRELOAD_STRESS[1]),
        cite: cite(&OURS, "same stress in the shank as the printed inch sizes", Obtained::Assumption),
    }
}
