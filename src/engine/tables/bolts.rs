//! Bolts through the eyes, by grade and size.

use super::{SHEAR_SHARE, spans};
use crate::quantity::{System, inch, ksi, mm, mpa};
use crate::source::{Cite, ISO_898_1, Obtained, SAE_J429, SHIGLEY, cite};

/// A grade of bolt.
#[derive(Debug, PartialEq)]
pub struct Grade {
    /// Never reused once released.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// The system its sizes are made in.
    pub system: System,
    /// Strengths by size, smallest first.
    pub rows: &'static [BoltStrength],
}

/// The strength of a grade over a range of sizes, Pa.
#[derive(Debug, PartialEq)]
pub struct BoltStrength {
    /// The range begins above this diameter, m.
    pub over: f64,
    /// The range ends with this diameter, m.
    pub up_to: f64,
    /// Stress a bolt bears without lasting stretch.
    pub proof: f64,
    /// Tensile strength.
    pub ultimate: f64,
    /// Yield strength.
    pub yield_strength: f64,
    /// Shear strength. No bolt standard here gives it: 0.6 of the tensile strength (assumption).
    pub shear_ultimate: f64,
    /// Where the row comes from.
    pub cite: Cite,
}

const fn strength(over: f64, up_to: f64, proof: f64, ultimate: f64, yield_strength: f64, cite: Cite) -> BoltStrength {
    BoltStrength { over, up_to, proof, ultimate, yield_strength, shear_ultimate: SHEAR_SHARE * ultimate, cite }
}

const J429: Cite = cite(&SAE_J429, "Table 8-9; shear taken as 0.6 of the tensile strength", Obtained::Copied);
const CLASSES: Cite = cite(&SHIGLEY, "Table 8-11; shear taken as 0.6 of the tensile strength", Obtained::Read);
const SMALL_8_8: Cite =
    cite(&ISO_898_1, "class 8.8 up to 16 mm; shear taken as 0.6 of the tensile strength", Obtained::Memory);

/// Just below 1/4 in, the smallest size the grades are printed for.
const BELOW_QUARTER: f64 = inch(0.249);
/// Just below 5 mm, the smallest size the classes are printed for.
const BELOW_M5: f64 = mm(4.99);

/// SAE J429 grade 5.
static GRADE_5: Grade = Grade {
    id: "grade-5",
    label: "Grade 5",
    system: System::Inch,
    rows: &[
        strength(BELOW_QUARTER, inch(1.0), ksi(85.0), ksi(120.0), ksi(92.0), J429),
        strength(inch(1.0), inch(1.5), ksi(74.0), ksi(105.0), ksi(81.0), J429),
    ],
};

/// SAE J429 grade 8.
static GRADE_8: Grade = Grade {
    id: "grade-8",
    label: "Grade 8",
    system: System::Inch,
    rows: &[strength(BELOW_QUARTER, inch(1.5), ksi(120.0), ksi(150.0), ksi(130.0), J429)],
};

/// ISO 898-1 property class 8.8.
static CLASS_8_8: Grade = Grade {
    id: "class-8-8",
    label: "Class 8.8",
    system: System::Metric,
    rows: &[
        // Shigley begins the stronger row at 16 mm, ISO 898-1 above it; the weaker is taken for 16 mm.
        strength(BELOW_M5, mm(16.0), mpa(580.0), mpa(800.0), mpa(640.0), SMALL_8_8),
        strength(mm(16.0), mm(36.0), mpa(600.0), mpa(830.0), mpa(660.0), CLASSES),
    ],
};

/// ISO 898-1 property class 10.9.
static CLASS_10_9: Grade = Grade {
    id: "class-10-9",
    label: "Class 10.9",
    system: System::Metric,
    rows: &[strength(BELOW_M5, mm(36.0), mpa(830.0), mpa(1040.0), mpa(940.0), CLASSES)],
};

/// Every grade, weaker before stronger within its system.
pub static GRADES: &[&Grade] = &[&GRADE_5, &GRADE_8, &CLASS_8_8, &CLASS_10_9];

/// The grade taken when none is decided (assumption): what is sold for links.
pub const fn default_grade(system: System) -> &'static Grade {
    match system {
        System::Inch => &GRADE_8,
        System::Metric => &CLASS_10_9,
    }
}

/// The grade with an id.
pub fn find(id: &str) -> Option<&'static Grade> {
    GRADES.iter().copied().find(|grade| grade.id == id)
}

impl Grade {
    /// The strength of a bolt of this diameter, m; `None` outside the table.
    pub fn strength(&self, diameter: f64) -> Option<&'static BoltStrength> {
        self.rows.iter().find(|row| spans(diameter, row.over, row.up_to))
    }
}
