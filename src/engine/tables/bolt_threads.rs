//! Sizes of the bolts through the eyes, with their fine and coarse threads.

use crate::quantity::{System, in2, inch, mm, threads_per_inch};
use crate::source::{Cite, ISO_898_1, Obtained, SAE_J429, SHIGLEY, cite};

/// A standard bolt size.
#[derive(Debug, PartialEq)]
pub struct BoltSize {
    /// As printed, such as `5/8` or `M16`.
    pub label: &'static str,
    /// The system it belongs to.
    pub system: System,
    /// Nominal diameter, m.
    pub diameter: f64,
    /// UNF, or the usual fine metric pitch.
    pub fine: BoltThread,
    /// UNC, or the coarse metric pitch.
    pub coarse: BoltThread,
}

/// One of a size's threads.
#[derive(Debug, PartialEq)]
pub struct BoltThread {
    /// Pitch, m.
    pub pitch: f64,
    /// Tensile stress area as tabled, m².
    pub stress_area: f64,
    /// Where the area comes from.
    pub cite: Cite,
}

const COPIED: Cite = cite(&SHIGLEY, "Table 8-2", Obtained::Copied);
const INCH: Cite = cite(&SHIGLEY, "Table 8-2, held against the formula of ASME B1.1", Obtained::Memory);
const BETWEEN: Cite = cite(&SAE_J429, "stress areas, held against the formula of ASME B1.1", Obtained::Memory);
const METRIC: Cite = cite(&ISO_898_1, "coarse threads, in public reprints", Obtained::Copied);
const METRIC_FINE: Cite = cite(&ISO_898_1, "fine threads, held against its formula", Obtained::Memory);

/// Threads per inch and area in square inches, fine and coarse.
const fn unified(label: &'static str, diameter: f64, fine: (f64, f64, Cite), coarse: (f64, f64, Cite)) -> BoltSize {
    BoltSize {
        label,
        system: System::Inch,
        diameter: inch(diameter),
        fine: BoltThread { pitch: threads_per_inch(fine.0), stress_area: in2(fine.1), cite: fine.2 },
        coarse: BoltThread { pitch: threads_per_inch(coarse.0), stress_area: in2(coarse.1), cite: coarse.2 },
    }
}

/// Pitch in millimeters and area in square millimeters, fine and coarse.
const fn metric(label: &'static str, diameter: f64, fine: (f64, f64), coarse: (f64, f64)) -> BoltSize {
    BoltSize {
        label,
        system: System::Metric,
        diameter: mm(diameter),
        fine: BoltThread { pitch: mm(fine.0), stress_area: fine.1 * mm(1.0) * mm(1.0), cite: METRIC_FINE },
        coarse: BoltThread { pitch: mm(coarse.0), stress_area: coarse.1 * mm(1.0) * mm(1.0), cite: METRIC },
    }
}

/// Every size, inch before metric, then by diameter.
pub static ALL: &[BoltSize] = &[
    unified("1/4", 0.25, (28.0, 0.0364, INCH), (20.0, 0.0318, INCH)),
    unified("5/16", 0.3125, (24.0, 0.0580, INCH), (18.0, 0.0524, INCH)),
    unified("3/8", 0.375, (24.0, 0.0878, COPIED), (16.0, 0.0775, INCH)),
    unified("7/16", 0.4375, (20.0, 0.1187, COPIED), (14.0, 0.1063, INCH)),
    unified("1/2", 0.5, (20.0, 0.1599, COPIED), (13.0, 0.1419, INCH)),
    unified("9/16", 0.5625, (18.0, 0.203, INCH), (12.0, 0.182, INCH)),
    unified("5/8", 0.625, (18.0, 0.256, COPIED), (11.0, 0.226, INCH)),
    unified("3/4", 0.75, (16.0, 0.373, COPIED), (10.0, 0.334, INCH)),
    unified("7/8", 0.875, (14.0, 0.509, COPIED), (9.0, 0.462, INCH)),
    unified("1", 1.0, (12.0, 0.663, COPIED), (8.0, 0.606, INCH)),
    unified("1-1/8", 1.125, (12.0, 0.856, BETWEEN), (7.0, 0.763, BETWEEN)),
    unified("1-1/4", 1.25, (12.0, 1.073, COPIED), (7.0, 0.969, INCH)),
    unified("1-3/8", 1.375, (12.0, 1.315, BETWEEN), (6.0, 1.155, BETWEEN)),
    unified("1-1/2", 1.5, (12.0, 1.581, COPIED), (6.0, 1.405, INCH)),
    metric("M8", 8.0, (1.0, 39.2), (1.25, 36.6)),
    metric("M10", 10.0, (1.25, 61.2), (1.5, 58.0)),
    metric("M12", 12.0, (1.25, 92.1), (1.75, 84.3)),
    metric("M14", 14.0, (1.5, 125.0), (2.0, 115.0)),
    metric("M16", 16.0, (1.5, 167.0), (2.0, 157.0)),
    metric("M18", 18.0, (1.5, 216.0), (2.5, 192.0)),
    metric("M20", 20.0, (1.5, 272.0), (2.5, 245.0)),
    metric("M22", 22.0, (1.5, 333.0), (2.5, 303.0)),
    metric("M24", 24.0, (2.0, 384.0), (3.0, 353.0)),
    metric("M27", 27.0, (2.0, 496.0), (3.0, 459.0)),
    metric("M30", 30.0, (2.0, 621.0), (3.5, 561.0)),
    metric("M33", 33.0, (2.0, 761.0), (3.5, 694.0)),
    metric("M36", 36.0, (3.0, 865.0), (4.0, 817.0)),
];

/// How far a caliper may be off: a bolt that much thicker than the bore is taken to go in.
pub const READING: f64 = mm(0.05);
/// A diameter this near to a standard one is meant to be that one; no two sizes are so close.
const SAME: f64 = mm(0.03);
/// No bore is this much wider than the bolt that is made for it.
const WIDEST_FIT: f64 = inch(0.14);

/// The largest bolt that fits a bore, inch or metric; `None` where none is near.
pub fn for_bore(bore: f64) -> Option<&'static BoltSize> {
    ALL.iter()
        .filter(|size| size.diameter <= bore + READING && size.diameter > bore - WIDEST_FIT)
        .max_by(|a, b| a.diameter.total_cmp(&b.diameter))
}

/// The size with a diameter; `None` where no bolt is made in it.
pub fn of_diameter(diameter: f64) -> Option<&'static BoltSize> {
    ALL.iter().find(|size| (size.diameter - diameter).abs() < SAME)
}

/// Whether a diameter is nearer to an inch size or to a metric one.
pub fn system_of(diameter: f64) -> System {
    let off = |size: &&BoltSize| (size.diameter - diameter).abs();
    ALL.iter().min_by(|a, b| off(a).total_cmp(&off(b))).map_or(System::Inch, |size| size.system)
}
