//! Tightening torque of the bolts through the eyes, by grade, size and thread.

use super::bolt_threads::BoltSize;
use super::bolts::Grade;
use crate::document::BoltSeries;
use crate::quantity::{POUND_FORCE, inch};
use crate::source::{Cite, IFI_GUIDE, Obtained, SAE_J1701M, cite};

/// A published torque.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoltTorque {
    /// The torque, N·m.
    pub torque: f64,
    /// The state of the thread that it is for.
    pub on: &'static str,
    /// Where it stands.
    pub cite: Cite,
}

const PLATED: &str = "plated bolt, clean thread, no oil and no anti-seize";
const AS_RECEIVED: &str = "bolt as it comes, clean thread, no added oil and no anti-seize";

/// Grade, size, thread, and torque on plated threads, lbf·ft.
static INCH: &[(&str, &str, BoltSeries, f64)] = &[
    ("grade-5", "3/8", BoltSeries::Coarse, 23.0),
    ("grade-5", "7/16", BoltSeries::Coarse, 37.0),
    ("grade-5", "1/2", BoltSeries::Coarse, 57.0),
    ("grade-5", "9/16", BoltSeries::Coarse, 82.0),
    ("grade-5", "5/8", BoltSeries::Coarse, 112.0),
    ("grade-5", "3/4", BoltSeries::Coarse, 200.0),
    ("grade-5", "7/8", BoltSeries::Coarse, 322.0),
    ("grade-5", "1", BoltSeries::Coarse, 483.0),
    ("grade-5", "3/8", BoltSeries::Fine, 26.0),
    ("grade-5", "7/16", BoltSeries::Fine, 41.0),
    ("grade-5", "1/2", BoltSeries::Fine, 64.0),
    ("grade-5", "9/16", BoltSeries::Fine, 91.0),
    ("grade-5", "5/8", BoltSeries::Fine, 128.0),
    ("grade-5", "3/4", BoltSeries::Fine, 223.0),
    ("grade-5", "7/8", BoltSeries::Fine, 355.0),
    ("grade-5", "1", BoltSeries::Fine, 529.0),
    ("grade-8", "3/8", BoltSeries::Coarse, 33.0),
    ("grade-8", "7/16", BoltSeries::Coarse, 52.0),
    ("grade-8", "1/2", BoltSeries::Coarse, 80.0),
    ("grade-8", "9/16", BoltSeries::Coarse, 115.0),
    ("grade-8", "5/8", BoltSeries::Coarse, 159.0),
    ("grade-8", "3/4", BoltSeries::Coarse, 282.0),
    ("grade-8", "7/8", BoltSeries::Coarse, 454.0),
    ("grade-8", "1", BoltSeries::Coarse, 682.0),
    ("grade-8", "3/8", BoltSeries::Fine, 37.0),
    ("grade-8", "7/16", BoltSeries::Fine, 58.0),
    ("grade-8", "1/2", BoltSeries::Fine, 90.0),
    ("grade-8", "9/16", BoltSeries::Fine, 129.0),
    ("grade-8", "5/8", BoltSeries::Fine, 180.0),
    ("grade-8", "3/4", BoltSeries::Fine, 315.0),
    ("grade-8", "7/8", BoltSeries::Fine, 501.0),
    ("grade-8", "1", BoltSeries::Fine, 746.0),
];

/// Size, then class 8.8 and 10.9 coarse, then both fine, N·m.
static METRIC: &[(&str, [f64; 4])] = &[
    ("M8", [20.0, 27.0, 21.0, 29.0]),
    ("M10", [39.0, 54.0, 41.0, 57.0]),
    ("M12", [68.0, 94.0, 75.0, 103.0]),
    ("M14", [109.0, 151.0, 118.0, 163.0]),
    ("M16", [169.0, 234.0, 181.0, 250.0]),
    ("M18", [234.0, 323.0, 263.0, 363.0]),
    ("M20", [330.0, 457.0, 367.0, 507.0]),
    ("M22", [451.0, 623.0, 495.0, 684.0]),
    ("M24", [571.0, 790.0, 623.0, 861.0]),
];

/// The published torque of a bolt; `None` where no table here has it.
pub fn published(grade: &Grade, size: &BoltSize, series: BoltSeries) -> Option<BoltTorque> {
    let inch_row =
        INCH.iter().find(|(of, label, thread, _)| *of == grade.id && *label == size.label && *thread == series);
    if let Some((.., torque)) = inch_row {
        return Some(BoltTorque {
            torque: torque * POUND_FORCE * inch(12.0),
            on: PLATED,
            cite: cite(&IFI_GUIDE, "column for plated bolts", Obtained::Copied),
        });
    }
    let column = match (grade.id, series) {
        ("class-8-8", BoltSeries::Coarse) => 0,
        ("class-10-9", BoltSeries::Coarse) => 1,
        ("class-8-8", BoltSeries::Fine) => 2,
        ("class-10-9", BoltSeries::Fine) => 3,
        _ => return None,
    };
    let (_, row) = METRIC.iter().find(|(label, _)| *label == size.label)?;
    let place = "as received, coarse and fine threads";
    Some(BoltTorque { torque: row[column], on: AS_RECEIVED, cite: cite(&SAE_J1701M, place, Obtained::Copied) })
}
