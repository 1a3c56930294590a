//! Class limits by the formulas of ASME B1.1 (2A, 2B) and ISO 965-1 (6g, 6H), rounded as the tables are.

use super::{Thread, ToleranceLength};
use crate::engine::formulas::threads as formulas;
use crate::engine::math::{decimal_logarithm, logarithm, power};
use crate::quantity::{INCH, inch, mm};

/// The limits of size of a screw and of the hole it goes into, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Largest major diameter of the screw.
    pub external_major_max: f64,
    /// Least major diameter of the screw.
    pub external_major_min: f64,
    /// Largest pitch diameter of the screw.
    pub external_pitch_max: f64,
    /// Least pitch diameter of the screw.
    pub external_pitch_min: f64,
    /// Least minor diameter of the hole.
    pub internal_minor_min: f64,
    /// Largest minor diameter of the hole.
    pub internal_minor_max: f64,
    /// Least pitch diameter of the hole.
    pub internal_pitch_min: f64,
    /// Largest pitch diameter of the hole.
    pub internal_pitch_max: f64,
}

/// One of the limits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limit {
    /// Largest major diameter of the screw.
    ExternalMajorMax,
    /// Least major diameter of the screw.
    ExternalMajorMin,
    /// Largest pitch diameter of the screw.
    ExternalPitchMax,
    /// Least pitch diameter of the screw.
    ExternalPitchMin,
    /// Least minor diameter of the hole.
    InternalMinorMin,
    /// Largest minor diameter of the hole.
    InternalMinorMax,
    /// Least pitch diameter of the hole.
    InternalPitchMin,
    /// Largest pitch diameter of the hole.
    InternalPitchMax,
}

impl Limit {
    /// Every limit, in the order the tables print them.
    pub const ALL: [Self; 8] = [
        Self::ExternalMajorMax,
        Self::ExternalMajorMin,
        Self::ExternalPitchMax,
        Self::ExternalPitchMin,
        Self::InternalMinorMin,
        Self::InternalMinorMax,
        Self::InternalPitchMin,
        Self::InternalPitchMax,
    ];

    /// Whether it is a limit of the screw; a thinner screw is weaker, a wider hole is.
    pub const fn of_screw(self) -> bool {
        matches!(
            self,
            Self::ExternalMajorMax | Self::ExternalMajorMin | Self::ExternalPitchMax | Self::ExternalPitchMin
        )
    }
}

impl Limits {
    /// The value of a limit, m.
    pub const fn get(&self, limit: Limit) -> f64 {
        match limit {
            Limit::ExternalMajorMax => self.external_major_max,
            Limit::ExternalMajorMin => self.external_major_min,
            Limit::ExternalPitchMax => self.external_pitch_max,
            Limit::ExternalPitchMin => self.external_pitch_min,
            Limit::InternalMinorMin => self.internal_minor_min,
            Limit::InternalMinorMax => self.internal_minor_max,
            Limit::InternalPitchMin => self.internal_pitch_min,
            Limit::InternalPitchMax => self.internal_pitch_max,
        }
    }

    pub(super) const fn set(&mut self, limit: Limit, value: f64) {
        *match limit {
            Limit::ExternalMajorMax => &mut self.external_major_max,
            Limit::ExternalMajorMin => &mut self.external_major_min,
            Limit::ExternalPitchMax => &mut self.external_pitch_max,
            Limit::ExternalPitchMin => &mut self.external_pitch_min,
            Limit::InternalMinorMin => &mut self.internal_minor_min,
            Limit::InternalMinorMax => &mut self.internal_minor_max,
            Limit::InternalPitchMin => &mut self.internal_pitch_min,
            Limit::InternalPitchMax => &mut self.internal_pitch_max,
        } = value;
    }
}

/// The limits of a thread, unaltered by any table.
pub(super) fn by_formula(thread: &Thread) -> Limits {
    match thread.tolerance_length {
        ToleranceLength::Diameter => inch_class_2(thread, thread.major),
        ToleranceLength::NinePitches => inch_class_2(thread, 9.0 * thread.pitch),
        ToleranceLength::DiameterStep => metric_class_6(thread),
    }
}

/// Rounded to a number of steps in one unit: 10,000 for four decimals.
fn rounded(value: f64, steps: f64) -> f64 {
    (value * steps).round() / steps
}

/// Classes 2A and 2B. Each part is rounded to four decimals before it is added, and the minor
/// diameter of the hole to three after: this is what reproduces the tables.
fn inch_class_2(thread: &Thread, length: f64) -> Limits {
    let (major, pitch) = (thread.major / INCH, thread.pitch / INCH);
    let four = |value: f64| rounded(value, 1e4);
    let three = |value: f64| rounded(value, 1e3);
    let basic_pitch = four(formulas::BASIC_PITCH_DIAMETER.value(&[major, pitch]));
    let basic_minor = formulas::BASIC_MINOR_DIAMETER.value(&[major, pitch]);
    let tolerance = formulas::UN_PITCH_TOLERANCE.value(&[major, length / INCH, pitch]);
    let allowance = four(formulas::UN_ALLOWANCE.value(&[tolerance]));
    let internal = four(formulas::UN_INTERNAL_PITCH_TOLERANCE.value(&[tolerance]));
    let major_max = four(major) - allowance;
    let pitch_max = basic_pitch - allowance;
    Limits {
        external_major_max: inch(major_max),
        external_major_min: inch(major_max - four(formulas::UN_MAJOR_TOLERANCE.value(&[pitch]))),
        external_pitch_max: inch(pitch_max),
        external_pitch_min: inch(pitch_max - four(tolerance)),
        internal_minor_min: inch(three(basic_minor)),
        internal_minor_max: inch(three(basic_minor + formulas::UN_MINOR_TOLERANCE.value(&[pitch]))),
        internal_pitch_min: inch(basic_pitch),
        internal_pitch_max: inch(basic_pitch + internal),
    }
}

/// Classes 6g and 6H. Basic diameters are rounded to micrometers; the fundamental deviation goes to
/// the rounded preferred numbers R′40 and the tolerances to R40, as ISO 965-1 builds its tables.
fn metric_class_6(thread: &Thread) -> Limits {
    let pitch = thread.pitch * 1e3;
    let micrometers = |value: f64| rounded(value * 1e6, 1.0);
    let major = micrometers(thread.major);
    let basic_pitch = micrometers(formulas::BASIC_PITCH_DIAMETER.value(&[thread.major, thread.pitch]));
    let basic_minor = micrometers(formulas::BASIC_MINOR_DIAMETER.value(&[thread.major, thread.pitch]));
    let deviation = preferred(formulas::ISO_DEVIATION.value(&[pitch]), &R40_ROUNDED);
    let tolerance = formulas::ISO_PITCH_TOLERANCE.value(&[pitch, step_mean(thread.major * 1e3)]);
    let internal = formulas::ISO_INTERNAL_PITCH_TOLERANCE.value(&[tolerance]);
    let size = |micrometers: f64| mm(micrometers / 1e3);
    Limits {
        external_major_max: size(major - deviation),
        external_major_min: size(major - deviation - preferred(formulas::ISO_MAJOR_TOLERANCE.value(&[pitch]), &R40)),
        external_pitch_max: size(basic_pitch - deviation),
        external_pitch_min: size(basic_pitch - deviation - preferred(tolerance, &R40)),
        internal_minor_min: size(basic_minor),
        internal_minor_max: size(basic_minor + preferred(formulas::ISO_MINOR_TOLERANCE.value(&[pitch]), &R40)),
        internal_pitch_min: size(basic_pitch),
        internal_pitch_max: size(basic_pitch + preferred(internal, &R40)),
    }
}

/// Bounds of the diameter steps of ISO 965-1 that the threads here fall in, mm.
const STEPS: [f64; 4] = [5.6, 11.2, 22.4, 45.0];

/// Geometric mean of the diameter step a thread falls in, mm; NaN outside them.
fn step_mean(major: f64) -> f64 {
    let bounds = STEPS.iter().zip(STEPS.iter().skip(1));
    bounds
        .into_iter()
        .find(|(low, high)| major > **low && major <= **high)
        .map_or(f64::NAN, |(low, high)| (low * high).sqrt())
}

/// Preferred numbers R40 of ISO 3, one decade.
const R40: [f64; 41] = [
    1.0, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2.0, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3.0, 3.15,
    3.35, 3.55, 3.75, 4.0, 4.25, 4.5, 4.75, 5.0, 5.3, 5.6, 6.0, 6.3, 6.7, 7.1, 7.5, 8.0, 8.5, 9.0, 9.5, 10.0,
];

/// More rounded preferred numbers R′40 of ISO 3, one decade.
const R40_ROUNDED: [f64; 41] = [
    1.0, 1.05, 1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2.0, 2.1, 2.2, 2.4, 2.5, 2.6, 2.8, 3.0, 3.2, 3.4,
    3.6, 3.8, 4.0, 4.2, 4.5, 4.8, 5.0, 5.3, 5.6, 6.0, 6.3, 6.7, 7.1, 7.5, 8.0, 8.5, 9.0, 9.5, 10.0,
];

/// The preferred number nearest in ratio, in whole micrometers as the tables print them.
fn preferred(value: f64, series: &[f64]) -> f64 {
    let decade = power(10.0, decimal_logarithm(value).floor());
    let off = |number: f64| logarithm(value / (number * decade)).abs();
    let nearest = series.iter().copied().min_by(|a, b| off(*a).total_cmp(&off(*b)));
    nearest.map_or(f64::NAN, |number| (number * decade).round())
}
