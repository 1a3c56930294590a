//! What is asked for in a measured length: the same for the box on the route sheet and for the record of the piece.

use super::machine::{DEPTH_TOLERANCE, LENGTH_TOLERANCE, Machine};
use crate::report::{EndGeometry, LinkGeometry};

/// What a measured length should be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The length, m.
    pub length: f64,
    /// How far it may be under, m.
    pub under: f64,
    /// How far it may be over, m.
    pub over: f64,
}

impl Asked {
    /// A length that may be as far under as over.
    pub(super) const fn within(length: f64, either: f64) -> Self {
        Self { length, under: either, over: either }
    }

    /// A length that may only be over.
    pub(super) const fn at_least(length: f64, over: f64) -> Self {
        Self { length, under: 0.0, over }
    }

    /// A length that may only be under.
    pub(super) const fn at_most(length: f64, under: f64) -> Self {
        Self { length, under, over: 0.0 }
    }

    /// The finished bar, face to face.
    pub fn bar(made: &LinkGeometry, machine: &Machine) -> Self {
        Self::within(made.bar, machine.in_force(&LENGTH_TOLERANCE))
    }

    /// The depth of full thread at an end: deeper by no more than half of what is clear below the tap, so that the tap
    /// cannot reach the bottom.
    pub fn full_thread(end: &EndGeometry, machine: &Machine) -> Self {
        Self::at_least(end.tapped_depth, machine.in_force(&DEPTH_TOLERANCE).min(end.thread.pitch / 2.0))
    }
}
