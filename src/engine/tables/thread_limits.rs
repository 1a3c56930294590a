//! Thread limits and stress areas as tabled, held to prove the formulas and to show where they differ.
//!
//! [`Thread::limits`](super::threads::Thread::limits) works by formula. Where a table differs, the row
//! in [`DISAGREEMENTS`] says so; in every one of them the table allows the weaker thread, so the
//! table's value is the one used. A test fails when a disagreement appears or disappears.

use super::threads::{Limit, Limits, Thread};
use crate::quantity::{in2, inch, mm};
use crate::source::{ASME_B1_1, Cite, ISO_898_1, ISO_965_1, MH31, Obtained, SHIGLEY, cite};

/// The limits of one thread as tabled.
#[derive(Debug, PartialEq)]
pub struct Tabled {
    /// Id of the thread.
    pub thread: &'static str,
    /// Classes 2A and 2B, or 6g and 6H.
    pub limits: Limits,
    /// Where the table stands and how it reached this project.
    pub cite: Cite,
}

/// A tensile stress area as printed.
#[derive(Debug, PartialEq)]
pub struct TabledArea {
    /// Id of the thread.
    pub thread: &'static str,
    /// The area, m².
    pub area: f64,
    /// One unit of its last printed digit, m².
    pub last_digit: f64,
    /// Where it stands.
    pub cite: Cite,
}

/// One limit for which formula and table differ.
#[derive(Debug, PartialEq)]
pub struct Disagreement {
    /// Id of the thread.
    pub thread: &'static str,
    /// Which limit.
    pub limit: Limit,
    /// What the formula gives, m.
    pub by_formula: f64,
    /// What the table has, and what this program uses, m.
    pub tabled: f64,
    /// What is known about the difference.
    pub why: &'static str,
}

/// The order of [`Limit::ALL`].
const fn limits(v: [f64; 8]) -> Limits {
    let [
        external_major_max,
        external_major_min,
        external_pitch_max,
        external_pitch_min,
        internal_minor_min,
        internal_minor_max,
        internal_pitch_min,
        internal_pitch_max,
    ] = v;
    Limits {
        external_major_max,
        external_major_min,
        external_pitch_max,
        external_pitch_min,
        internal_minor_min,
        internal_minor_max,
        internal_pitch_min,
        internal_pitch_max,
    }
}

const UNIFIED: Cite = cite(&ASME_B1_1, "standard-series table, classes 2A and 2B", Obtained::Memory);
const METRIC: Cite =
    cite(&ISO_965_1, "Tables 1 and 3 to 6, classes 6g and 6H, as a public program transcribes them", Obtained::Copied);

/// A row printed in inches.
const fn unified(thread: &'static str, printed: [f64; 8]) -> Tabled {
    let [a, b, c, d, e, f, g, h] = printed;
    Tabled {
        thread,
        limits: limits([inch(a), inch(b), inch(c), inch(d), inch(e), inch(f), inch(g), inch(h)]),
        cite: UNIFIED,
    }
}

/// A row printed in millimeters.
const fn metric(thread: &'static str, printed: [f64; 8]) -> Tabled {
    let [a, b, c, d, e, f, g, h] = printed;
    Tabled { thread, limits: limits([mm(a), mm(b), mm(c), mm(d), mm(e), mm(f), mm(g), mm(h)]), cite: METRIC }
}

/// Screw: major diameter largest and least, pitch diameter largest and least. Hole: minor diameter
/// least and largest, pitch diameter least and largest.
pub static LIMITS: &[Tabled] = &[
    unified("5/16-24", [0.3114, 0.3042, 0.2843, 0.2806, 0.267, 0.277, 0.2854, 0.2902]),
    unified("3/8-24", [0.3739, 0.3667, 0.3468, 0.3430, 0.330, 0.340, 0.3479, 0.3528]),
    unified("7/16-20", [0.4362, 0.4281, 0.4037, 0.3995, 0.383, 0.395, 0.4050, 0.4104]),
    unified("1/2-20", [0.4987, 0.4906, 0.4662, 0.4619, 0.446, 0.457, 0.4675, 0.4731]),
    unified("9/16-18", [0.5611, 0.5524, 0.5250, 0.5205, 0.502, 0.515, 0.5264, 0.5323]),
    unified("5/8-18", [0.6236, 0.6149, 0.5875, 0.5828, 0.565, 0.578, 0.5889, 0.5949]),
    unified("3/4-16", [0.7485, 0.7391, 0.7079, 0.7029, 0.682, 0.696, 0.7094, 0.7159]),
    unified("7/8-14", [0.8734, 0.8631, 0.8270, 0.8216, 0.798, 0.814, 0.8286, 0.8356]),
    unified("1-12", [0.9982, 0.9868, 0.9441, 0.9382, 0.910, 0.928, 0.9459, 0.9535]),
    unified("1-14", [0.9983, 0.9880, 0.9519, 0.9463, 0.923, 0.938, 0.9536, 0.9609]),
    unified("1-1/8-12", [1.1232, 1.1118, 1.0691, 1.0631, 1.035, 1.053, 1.0709, 1.0787]),
    unified("1-1/4-12", [1.2482, 1.2368, 1.1941, 1.1879, 1.160, 1.178, 1.1959, 1.2039]),
    unified("1-1/2-12", [1.4981, 1.4867, 1.4440, 1.4376, 1.410, 1.428, 1.4459, 1.4542]),
    metric("M10x1.5", [9.968, 9.732, 8.994, 8.862, 8.376, 8.676, 9.026, 9.206]),
    metric("M12x1.75", [11.966, 11.701, 10.829, 10.679, 10.106, 10.441, 10.863, 11.063]),
    metric("M14x1.5", [13.968, 13.732, 12.994, 12.854, 12.376, 12.676, 13.026, 13.216]),
    metric("M14x2", [13.962, 13.682, 12.663, 12.503, 11.835, 12.210, 12.701, 12.913]),
    metric("M16x1.5", [15.968, 15.732, 14.994, 14.854, 14.376, 14.676, 15.026, 15.216]),
    metric("M16x2", [15.962, 15.682, 14.663, 14.503, 13.835, 14.210, 14.701, 14.913]),
    metric("M18x1.5", [17.968, 17.732, 16.994, 16.854, 16.376, 16.676, 17.026, 17.216]),
    metric("M20x1.5", [19.968, 19.732, 18.994, 18.854, 18.376, 18.676, 19.026, 19.216]),
    metric("M20x2.5", [19.958, 19.623, 18.334, 18.164, 17.294, 17.744, 18.376, 18.600]),
    metric("M22x1.5", [21.968, 21.732, 20.994, 20.854, 20.376, 20.676, 21.026, 21.216]),
    metric("M24x2", [23.962, 23.682, 22.663, 22.493, 21.835, 22.210, 22.701, 22.925]),
    metric("M24x3", [23.952, 23.577, 22.003, 21.803, 20.752, 21.252, 22.051, 22.316]),
    metric("M27x2", [26.962, 26.682, 25.663, 25.493, 24.835, 25.210, 25.701, 25.925]),
    metric("M30x2", [29.962, 29.682, 28.663, 28.493, 27.835, 28.210, 28.701, 28.925]),
    metric("M30x3.5", [29.947, 29.522, 27.674, 27.462, 26.211, 26.771, 27.727, 28.007]),
];

/// A disagreement in inches.
const fn inches(thread: &'static str, limit: Limit, by_formula: f64, tabled: f64, why: &'static str) -> Disagreement {
    Disagreement { thread, limit, by_formula: inch(by_formula), tabled: inch(tabled), why }
}

/// A disagreement in millimeters.
const fn millimeters(
    thread: &'static str,
    limit: Limit,
    by_formula: f64,
    tabled: f64,
    why: &'static str,
) -> Disagreement {
    Disagreement { thread, limit, by_formula: mm(by_formula), tabled: mm(tabled), why }
}

const NEXT_THOUSANDTH: &str = "the formula comes to .81349 in, which rounds to .813; the table, from memory, has .814";
const LIKE_A_FINE_THREAD: &str =
    "the table's values come out with one diameter of engagement, as for the fine series, not with nine pitches";
const SMOOTHED: &str = "the formula falls between two preferred numbers and rounds down; the table has the larger, as ISO 965-1 allows for a smooth series";

/// Every limit for which formula and table differ, by thread.
pub static DISAGREEMENTS: &[Disagreement] = &[
    inches("7/8-14", Limit::InternalMinorMax, 0.813, 0.814, NEXT_THOUSANDTH),
    inches("1-14", Limit::ExternalMajorMax, 0.9984, 0.9983, LIKE_A_FINE_THREAD),
    inches("1-14", Limit::ExternalMajorMin, 0.9881, 0.9880, LIKE_A_FINE_THREAD),
    inches("1-14", Limit::ExternalPitchMax, 0.9520, 0.9519, LIKE_A_FINE_THREAD),
    inches("1-14", Limit::ExternalPitchMin, 0.9467, 0.9463, LIKE_A_FINE_THREAD),
    inches("1-14", Limit::InternalPitchMax, 0.9605, 0.9609, LIKE_A_FINE_THREAD),
    millimeters("M10x1.5", Limit::InternalPitchMax, 9.196, 9.206, SMOOTHED),
    millimeters("M14x1.5", Limit::InternalPitchMax, 13.206, 13.216, SMOOTHED),
    millimeters("M16x1.5", Limit::InternalPitchMax, 15.206, 15.216, SMOOTHED),
    millimeters("M18x1.5", Limit::InternalPitchMax, 17.206, 17.216, SMOOTHED),
    millimeters("M20x1.5", Limit::InternalPitchMax, 19.206, 19.216, SMOOTHED),
    millimeters("M20x2.5", Limit::InternalMinorMax, 17.719, 17.744, SMOOTHED),
    millimeters("M22x1.5", Limit::InternalPitchMax, 21.206, 21.216, SMOOTHED),
];

/// The disagreements about one thread.
pub fn disagreements(thread: &Thread) -> impl Iterator<Item = &'static Disagreement> {
    let id = thread.id;
    DISAGREEMENTS.iter().filter(move |row| row.thread == id)
}

/// An area printed in square inches.
const fn square_inches(thread: &'static str, area: f64, last_digit: f64) -> TabledArea {
    let cite = cite(&MH31, "p. 1979, Table 4b", Obtained::Read);
    TabledArea { thread, area: in2(area), last_digit: in2(last_digit), cite }
}

/// An area printed in square millimeters.
const fn square_millimeters(thread: &'static str, area: f64, last_digit: f64, cite: Cite) -> TabledArea {
    TabledArea { thread, area: area * 1e-6, last_digit: last_digit * 1e-6, cite }
}

/// An area of the coarse series, which was seen printed.
const fn coarse(thread: &'static str, area: f64, last_digit: f64) -> TabledArea {
    let seen = cite(&ISO_898_1, "least ultimate tensile loads, coarse pitch, in a public reprint", Obtained::Copied);
    square_millimeters(thread, area, last_digit, seen)
}

/// An area of a fine thread.
const fn fine(thread: &'static str, area: f64) -> TabledArea {
    let unseen = cite(&ISO_898_1, "least ultimate tensile loads, fine pitch", Obtained::Memory);
    square_millimeters(thread, area, 1.0, unseen)
}

/// Tensile stress areas as printed; none was found for 1-14.
pub static STRESS_AREAS: &[TabledArea] = &[
    TabledArea { cite: cite(&SHIGLEY, "Table 8-2", Obtained::Memory), ..square_inches("5/16-24", 0.0580, 0.0001) },
    square_inches("3/8-24", 0.0878, 0.0001),
    square_inches("7/16-20", 0.1187, 0.0001),
    square_inches("1/2-20", 0.1599, 0.0001),
    TabledArea { cite: cite(&MH31, "Table 4b", Obtained::Memory), ..square_inches("9/16-18", 0.203, 0.001) },
    square_inches("5/8-18", 0.256, 0.001),
    square_inches("3/4-16", 0.373, 0.001),
    square_inches("7/8-14", 0.509, 0.001),
    square_inches("1-12", 0.663, 0.001),
    TabledArea { cite: cite(&MH31, "Table 4b", Obtained::Memory), ..square_inches("1-1/8-12", 0.856, 0.001) },
    square_inches("1-1/4-12", 1.073, 0.001),
    square_inches("1-1/2-12", 1.581, 0.001),
    coarse("M10x1.5", 58.0, 0.1),
    coarse("M12x1.75", 84.3, 0.1),
    fine("M14x1.5", 125.0),
    coarse("M14x2", 115.0, 1.0),
    fine("M16x1.5", 167.0),
    coarse("M16x2", 157.0, 1.0),
    fine("M18x1.5", 216.0),
    fine("M20x1.5", 272.0),
    coarse("M20x2.5", 245.0, 1.0),
    fine("M22x1.5", 333.0),
    fine("M24x2", 384.0),
    coarse("M24x3", 353.0, 1.0),
    fine("M27x2", 496.0),
    fine("M30x2", 621.0),
    coarse("M30x3.5", 561.0, 1.0),
];

/// Threads whose printed stress area is cut short, not rounded: .05807 is printed .0580, and .15995 .1599.
pub static AREAS_CUT_SHORT: &[&str] = &["5/16-24", "1/2-20"];
