//! Sizes of bar and tube that are commonly stocked: common practice, no source.

use crate::quantity::{inch, mm};
use crate::source::{Cite, Obtained, PRACTICE, cite};

/// Where these lists come from.
pub const CITE: Cite = cite(&PRACTICE, "commonly stocked sizes", Obtained::Practice);

/// Solid bars by the quarter inch, which links are chosen from: outside diameter, m.
pub static BARS: &[f64] =
    &[inch(1.0), inch(1.25), inch(1.5), inch(1.75), inch(2.0), inch(2.25), inch(2.5), inch(2.75), inch(3.0)];

/// Solid bars in between, which are stocked less often and used for steering: outside diameter, m.
pub static BARS_BETWEEN: &[f64] = &[inch(1.125), inch(1.375), inch(1.625), inch(1.875)];

/// Solid bars too thin for anything but sway-bar end links: outside diameter, m.
pub static SWAY_LINK_BARS: &[f64] = &[inch(0.75), inch(0.875)];

/// The same in millimeters.
pub static METRIC_SWAY_LINK_BARS: &[f64] = &[mm(20.0), mm(22.0)];

/// Solid bars in millimeters: outside diameter, m.
pub static METRIC_BARS: &[f64] = &[
    mm(25.0),
    mm(28.0),
    mm(30.0),
    mm(32.0),
    mm(35.0),
    mm(38.0),
    mm(40.0),
    mm(45.0),
    mm(50.0),
    mm(55.0),
    mm(60.0),
    mm(65.0),
    mm(70.0),
    mm(75.0),
];

/// Round tubes: outside diameter and wall, m, by section modulus, since neither diameter nor wall alone tells which of two
/// is the larger. 1-3/4 by 3/8 in is left out: 2 by 1/4 in is stronger, lighter, and takes larger rod ends.
pub static TUBES: &[(f64, f64)] = &[
    (inch(1.0), inch(0.095)),
    (inch(1.0), inch(0.120)),
    (inch(1.25), inch(0.095)),
    (inch(1.25), inch(0.120)),
    (inch(1.5), inch(0.095)),
    (inch(1.25), inch(0.188)),
    (inch(1.5), inch(0.120)),
    (inch(1.25), inch(0.250)),
    (inch(1.5), inch(0.188)),
    (inch(1.75), inch(0.120)),
    (inch(1.5), inch(0.250)),
    (inch(2.0), inch(0.120)),
    (inch(1.75), inch(0.188)),
    (inch(1.75), inch(0.250)),
    (inch(2.0), inch(0.188)),
    (inch(2.0), inch(0.250)),
    (inch(2.0), inch(0.375)),
    (inch(2.25), inch(0.250)),
    (inch(2.25), inch(0.375)),
    (inch(2.5), inch(0.250)),
    (inch(2.5), inch(0.375)),
];
