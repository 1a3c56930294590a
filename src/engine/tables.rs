//! Every table of numbers that was not worked out here, each row with its source, in the order a link is decided.

/// Grades of the bolts through the eyes.
pub mod bolts;
/// Drills, tap drills, taps and cutting speeds.
pub mod drills;
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
