//! Reference values, that others published or that other tools worked out, beside what this engine gives for them.
//!
//! A row never repeats its number: `compute` runs the engine's own formulas and tables.

mod axle;
mod beams;
mod columns;
mod ends;
mod engagement;
mod hardware;
mod impact;
mod making;
mod sections;
mod strengths;
mod thread_form;
mod thread_limits;
mod thread_tables;

pub use self::thread_tables::{Tabled, tabled};
use crate::source::Obtained;

/// How far the engine may be from a value, as the digits of its source allow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tolerance {
    /// The value itself; only the last bits of a conversion may differ.
    Exact,
    /// A share of the value.
    Relative(f64),
    /// So much in the unit it is printed in.
    Absolute(f64),
}

impl Tolerance {
    /// The allowed difference from a value, in its own unit.
    pub fn allows(self, expected: f64) -> f64 {
        match self {
            Self::Exact => 1e-12 * expected.abs(),
            Self::Relative(share) => share * expected.abs(),
            Self::Absolute(difference) => difference,
        }
    }
}

/// One reference value.
#[derive(Debug)]
pub struct Reference {
    /// Kebab-case, never reused.
    pub id: &'static str,
    /// The subject it is listed under.
    pub subject: &'static str,
    /// What it is the value of.
    pub name: &'static str,
    /// The value as printed.
    pub expected: f64,
    /// The unit it is printed in.
    pub unit: &'static str,
    /// What one of that unit is in SI.
    pub factor: f64,
    /// How close the engine must come.
    pub tolerance: Tolerance,
    /// Where it stands, or the tool that worked it out.
    pub source: &'static str,
    /// How it reached this project.
    pub obtained: Obtained,
    /// What the engine gives, SI.
    pub compute: fn() -> f64,
}

impl Reference {
    /// What the engine gives, in the printed unit.
    pub fn found(&self) -> f64 {
        (self.compute)() / self.factor
    }

    /// Whether the engine comes close enough; a value that is no number never does.
    pub fn agrees(&self) -> bool {
        (self.found() - self.expected).abs() <= self.tolerance.allows(self.expected)
    }
}

/// Every reference value, in handbook order.
pub fn all() -> impl Iterator<Item = &'static Reference> {
    [
        sections::ROWS,
        beams::ROWS,
        columns::ROWS,
        impact::ROWS,
        axle::ROWS,
        ends::ROWS,
        making::ROWS,
        thread_form::ROWS,
        thread_limits::ROWS,
        engagement::ROWS,
        hardware::ROWS,
        strengths::ROWS,
    ]
    .into_iter()
    .flatten()
}

/// Makes the rows of one file: `id, name = expected unit in factor, tolerance; source, obtained => code`.
macro_rules! rows {
    ($($subject:literal { $($id:literal, $name:literal = $expected:literal $unit:literal in $factor:expr, $tolerance:expr; $source:expr, $obtained:ident => $code:expr;)+ })+) => {
        /// The values of this file.
        pub(super) static ROWS: &[$crate::engine::reference::Reference] = &[$($($crate::engine::reference::Reference {
            id: $id,
            subject: $subject,
            name: $name,
            expected: $expected,
            unit: $unit,
            factor: $factor,
            tolerance: $tolerance,
            source: $source,
            obtained: $crate::source::Obtained::$obtained,
            compute: || $code,
        },)+)+];
    };
}
use rows;

/// Closed form worked out apart from this engine.
const MPMATH: &str = "closed form, mpmath 1.4.1, 30 digits";
/// One pound-force per inch.
const LBF_PER_INCH: f64 = crate::quantity::POUND_FORCE / crate::quantity::INCH;

/// Where a rising function crosses zero, by halving; NaN when it does not between the bounds.
fn root(low: f64, high: f64, rising: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (low, high);
    if rising(low) > 0.0 || rising(high) < 0.0 {
        return f64::NAN;
    }
    for _ in 0..200 {
        let middle = low + (high - low) / 2.0;
        if rising(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}
