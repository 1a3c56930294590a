//! Every table of numbers that was not worked out here, each row with its source, in the order a link is decided.

/// Sizes and threads of the bolts through the eyes.
pub mod bolt_threads;
/// Tightening torque of those bolts.
pub mod bolt_torque;
/// Grades of the bolts through the eyes.
pub mod bolts;
/// Cutting fluids, chamfers of taps, turning, and which metal cuts like which.
pub mod cutting;
/// Drills, tap drills, taps and cutting speeds.
pub mod drills;
/// Threaded inserts for the ends of tubes.
pub mod inserts;
/// Jam nuts for those threads.
pub mod jam_nuts;
/// Tightening torque of jam nuts.
pub mod jam_torque;
/// What bars and tubes are made of, and how strong that is.
pub mod materials;
/// What builders fit.
pub mod practice;
/// Rod ends with a male shank.
pub mod rod_ends;
/// Sizes of bar and tube that are commonly stocked.
pub mod stock;
/// Thread limits as tabled, beside what the tolerance formulas give.
pub mod thread_limits;
/// Thread sizes, with their class limits and areas.
pub mod threads;
/// How rigs are used, and what each use does to a link.
pub mod uses;

/// Shear strength of a steel for which none is published, as a share of its breaking strength
/// (assumption, the usual design value).
pub const SHEAR_SHARE: f64 = 0.6;

/// Whether a size, m, lies in a row that begins above `over` and ends with `up_to`. A size must not
/// miss its row by the last bits of a conversion.
fn spans(size: f64, over: f64, up_to: f64) -> bool {
    const NOTHING: f64 = 1e-9;
    size > over + NOTHING && size <= up_to + NOTHING
}
