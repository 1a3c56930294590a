//! Units as data: what a number measures, how people type it, how it is shown.
//!
//! Inside the program every value is plain SI (m, N, Pa, rad); units live only here and in the tables.

mod read;
mod write;

pub use read::{Misread, Reading, read, reading};
pub use write::{
    System, fit, fraction, in_all, measured, plain, show, show_at_most, show_fine, trade, trimmed, unit_name,
};

/// Powers of kilogram, meter and second that a quantity is made of.
pub type Exponents = [f64; 3];

/// What a number measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A plain ratio.
    Ratio,
    /// A ratio people speak of in percent.
    Percent,
    /// A count of threads, turns or links.
    Count,
    /// Turns of a bar or of an eye.
    Turns,
    /// m
    Length,
    /// A small length that machining reads in thousandths.
    FineLength,
    /// 1/m, such as threads per inch or the wave number of a strut.
    PerLength,
    /// m²
    Area,
    /// m² per m of thread engagement.
    AreaPerLength,
    /// m³
    SectionModulus,
    /// m⁴
    SecondMoment,
    /// rad
    Angle,
    /// N
    Force,
    /// N, spoken of as a weight (lb or kg).
    Weight,
    /// N/m³, density as a weight.
    WeightDensity,
    /// N per m of thread engagement.
    ForcePerLength,
    /// Pa
    Stress,
    /// Pa, of a fluid.
    Pressure,
    /// N·m
    Moment,
    /// N/m
    Stiffness,
    /// m/N
    Compliance,
    /// N·m, spoken of as the twist on a wrench.
    Torque,
    /// A number of inches, for standards whose formulas hold in inches only.
    InInches,
    /// A number of millimeters, for standards whose formulas hold in millimeters only.
    InMillimeters,
    /// A number of micrometers, as tolerances are printed.
    InMicrometers,
}

impl Kind {
    /// The powers of kilogram, meter and second.
    pub const fn exponents(self) -> Exponents {
        match self {
            Self::Ratio | Self::Percent | Self::Count | Self::Turns | Self::Angle => [0.0, 0.0, 0.0],
            Self::InInches | Self::InMillimeters | Self::InMicrometers => [0.0, 0.0, 0.0],
            Self::Length | Self::FineLength | Self::AreaPerLength => [0.0, 1.0, 0.0],
            Self::PerLength => [0.0, -1.0, 0.0],
            Self::Area => [0.0, 2.0, 0.0],
            Self::SectionModulus => [0.0, 3.0, 0.0],
            Self::SecondMoment => [0.0, 4.0, 0.0],
            Self::Force | Self::Weight => [1.0, 1.0, -2.0],
            Self::WeightDensity => [1.0, -2.0, -2.0],
            Self::ForcePerLength | Self::Stiffness => [1.0, 0.0, -2.0],
            Self::Compliance => [-1.0, 0.0, 2.0],
            Self::Stress | Self::Pressure => [1.0, -1.0, -2.0],
            Self::Moment | Self::Torque => [1.0, 2.0, -2.0],
        }
    }
}

/// Meters in one inch, exact (NIST SP 811).
pub const INCH: f64 = 0.0254;
/// Newtons in one pound-force, exact (NIST SP 811: 0.453 592 37 kg at 9.806 65 m/s²).
pub const POUND_FORCE: f64 = 0.453_592_37 * STANDARD_GRAVITY;
/// Meters per second squared, exact by definition (NIST SP 811).
pub const STANDARD_GRAVITY: f64 = 9.806_65;
/// Pascals in one ksi, exact from the two above.
pub const KSI: f64 = 1000.0 * POUND_FORCE / (INCH * INCH);
/// Radians in one degree.
pub const DEGREE: f64 = std::f64::consts::PI / 180.0;

/// Inches, as printed, to meters.
pub const fn inch(value: f64) -> f64 {
    value * INCH
}
/// Millimeters, as printed, to meters.
pub const fn mm(value: f64) -> f64 {
    value / 1000.0
}
/// Threads per inch, as printed, to pitch in meters.
pub const fn threads_per_inch(value: f64) -> f64 {
    INCH / value
}
/// Pounds-force, as printed, to newtons.
pub const fn lbf(value: f64) -> f64 {
    value * POUND_FORCE
}
/// psi, as printed, to pascals.
pub const fn psi(value: f64) -> f64 {
    value * KSI / 1000.0
}
/// ksi, as printed, to pascals.
pub const fn ksi(value: f64) -> f64 {
    value * KSI
}
/// Megapascals, as printed, to pascals.
pub const fn mpa(value: f64) -> f64 {
    value * 1e6
}
/// Pounds per cubic inch, as printed, to newtons per cubic meter.
pub const fn lb_per_in3(value: f64) -> f64 {
    value * POUND_FORCE / (INCH * INCH * INCH)
}
/// Square inches to square meters.
pub const fn in2(value: f64) -> f64 {
    value * INCH * INCH
}
/// Cubic inches to cubic meters.
pub const fn in3(value: f64) -> f64 {
    value * INCH * INCH * INCH
}
/// Inches to the fourth to meters to the fourth.
pub const fn in4(value: f64) -> f64 {
    value * INCH * INCH * INCH * INCH
}
/// Pound-force inches to newton meters.
pub const fn lbf_in(value: f64) -> f64 {
    value * POUND_FORCE * INCH
}
/// Degrees, as printed, to radians.
pub const fn deg(value: f64) -> f64 {
    value * DEGREE
}

/// Slack of every comparison: two ways to work the same number out differ in their last digits.
pub const SLACK: f64 = 1e-9;

/// Whether a value is over a limit by more than [`SLACK`]: what lies exactly on its limit passes, and of two ends that
/// are alike the first one is named, everywhere.
pub const fn exceeds(value: f64, limit: f64) -> bool {
    value > limit + SLACK * limit.abs()
}
