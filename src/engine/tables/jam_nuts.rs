//! Jam nuts: thin hexagon nuts that lock a shank in its bar.

use super::threads::Thread;
use crate::quantity::{System, inch, mm};
use crate::source::{ASME_B18_2_2, Cite, ISO_4035, Obtained, cite};

/// The jam nut of one thread diameter.
#[derive(Debug, PartialEq)]
pub struct JamNut {
    /// Nominal size as printed, such as `3/4` or `M20`.
    pub size: &'static str,
    /// The standard's system.
    pub system: System,
    /// Nominal thread diameter, m.
    pub major: f64,
    /// Basic thickness, m; for metric nuts the largest.
    pub thickness: f64,
    /// Largest thickness, m.
    pub thickness_max: f64,
    /// Least thickness, m, where it is held.
    pub thickness_min: Option<f64>,
    /// Largest width across flats, m.
    pub across_flats_max: f64,
    /// Least width across flats, m, where it is held.
    pub across_flats_min: Option<f64>,
    /// Where the row comes from.
    pub cite: Cite,
}

/// A row printed in inches: thickness basic, largest, least; width across flats largest, least.
const fn unified(size: &'static str, major: f64, thickness: [f64; 3], across: [f64; 2]) -> JamNut {
    let ([basic, max, min], [across_max, across_min]) = (thickness, across);
    JamNut {
        size,
        system: System::Inch,
        major: inch(major),
        thickness: inch(basic),
        thickness_max: inch(max),
        thickness_min: Some(inch(min)),
        across_flats_max: inch(across_max),
        across_flats_min: Some(inch(across_min)),
        cite: cite(&ASME_B18_2_2, "hex jam nuts, in Machinery's Handbook 31, p. 1677, Table 7", Obtained::Copied),
    }
}

/// A row whose largest thickness and least width are not held from a print: the formulas of the
/// standard's appendix, which give every printed row, give these too.
const fn from_memory(size: &'static str, major: f64, thickness: [f64; 3], across: [f64; 2]) -> JamNut {
    JamNut {
        cite: cite(
            &ASME_B18_2_2,
            "hex jam nuts; least thickness and largest width in a public reprint, the rest by its appendix",
            Obtained::Memory,
        ),
        ..unified(size, major, thickness, across)
    }
}

const IN_REPRINTS: Cite =
    cite(&ISO_4035, "table, in public reprints; fine pitch (ISO 8675) alike from memory", Obtained::Copied);

/// A row printed in millimeters: thickness largest, least; width across flats largest, least.
const fn metric(size: &'static str, major: f64, thickness: [f64; 2], across: [f64; 2], cite: Cite) -> JamNut {
    let ([max, min], [across_max, across_min]) = (thickness, across);
    JamNut {
        size,
        system: System::Metric,
        major: mm(major),
        thickness: mm(max),
        thickness_max: mm(max),
        thickness_min: Some(mm(min)),
        across_flats_max: mm(across_max),
        across_flats_min: Some(mm(across_min)),
        cite,
    }
}

/// Every jam nut, inch before metric, then by size.
pub static ALL: &[JamNut] = &[
    unified("5/16", 0.3125, [3.0 / 16.0, 0.195, 0.180], [0.500, 0.489]),
    unified("3/8", 0.375, [7.0 / 32.0, 0.227, 0.210], [0.562, 0.551]),
    unified("7/16", 0.4375, [1.0 / 4.0, 0.260, 0.240], [0.688, 0.675]),
    unified("1/2", 0.5, [5.0 / 16.0, 0.323, 0.302], [0.750, 0.736]),
    from_memory("9/16", 0.5625, [5.0 / 16.0, 0.324, 0.301], [0.875, 0.861]),
    unified("5/8", 0.625, [3.0 / 8.0, 0.387, 0.363], [0.938, 0.922]),
    unified("3/4", 0.75, [27.0 / 64.0, 0.446, 0.398], [1.125, 1.088]),
    unified("7/8", 0.875, [31.0 / 64.0, 0.510, 0.458], [1.312, 1.269]),
    unified("1", 1.0, [35.0 / 64.0, 0.575, 0.519], [1.500, 1.450]),
    from_memory("1-1/8", 1.125, [39.0 / 64.0, 0.639, 0.579], [1.688, 1.631]),
    unified("1-1/4", 1.25, [23.0 / 32.0, 0.751, 0.687], [1.875, 1.812]),
    unified("1-1/2", 1.5, [27.0 / 32.0, 0.880, 0.808], [2.250, 2.175]),
    metric("M10", 10.0, [5.0, 4.7], [16.0, 15.73], IN_REPRINTS),
    metric("M12", 12.0, [6.0, 5.7], [18.0, 17.73], IN_REPRINTS),
    metric("M14", 14.0, [7.0, 6.42], [21.0, 20.67], IN_REPRINTS),
    metric("M16", 16.0, [8.0, 7.42], [24.0, 23.67], IN_REPRINTS),
    metric("M18", 18.0, [9.0, 8.42], [27.0, 26.16], IN_REPRINTS),
    metric("M20", 20.0, [10.0, 9.1], [30.0, 29.16], IN_REPRINTS),
    metric("M22", 22.0, [11.0, 9.9], [34.0, 33.0], IN_REPRINTS),
    metric("M24", 24.0, [12.0, 10.9], [36.0, 35.0], IN_REPRINTS),
    metric("M27", 27.0, [13.5, 12.4], [41.0, 40.0], IN_REPRINTS),
    metric(
        "M30",
        30.0,
        [15.0, 13.9],
        [46.0, 45.0],
        cite(&ISO_4035, "table; the least thickness and width from memory", Obtained::Memory),
    ),
];

/// The jam nut for a thread; nuts go by nominal diameter, whatever the pitch.
pub fn for_thread(thread: &Thread) -> Option<&'static JamNut> {
    ALL.iter().find(|nut| nut.system == thread.system && (nut.major - thread.major).abs() < 1e-9)
}
