//! Screw threads of rod-end shanks: size, class limits, and the areas that carry load.
//!
//! Only diameter and pitch are typed in; the rest is worked out by the formulas of the standards.
//! Rod ends to SAE AS81935 are cut to class 3A, which has no allowance, so class 2A limits, used
//! here for every shank, are on the safe side for them. Left-hand threads have the same limits.

mod tolerances;

pub use tolerances::{Limit, Limits};

use super::thread_limits;
use crate::engine::formulas::threads as formulas;
use crate::quantity::{System, inch, mm, threads_per_inch};
use crate::source::{ASME_B1_1, Cite, ISO_724, Obtained, cite};

/// The length of engagement that a pitch-diameter tolerance is worked out for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToleranceLength {
    /// One basic major diameter: standard inch series (ASME B1.1).
    Diameter,
    /// Nine pitches: special and constant-pitch inch series (ASME B1.1).
    NinePitches,
    /// The normal group of a diameter step: metric threads (ISO 965-1).
    DiameterStep,
}

/// One size of thread.
#[derive(Debug, PartialEq)]
pub struct Thread {
    /// Never reused once released, such as `1-1/4-12` or `M20x1.5`.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// The standard it belongs to.
    pub system: System,
    /// Basic major diameter, m.
    pub major: f64,
    /// Pitch, m.
    pub pitch: f64,
    /// What its tolerance is worked out for.
    pub tolerance_length: ToleranceLength,
    /// Id of the commonly listed tap drill.
    pub tap_drill: &'static str,
    /// Where diameter and pitch come from; limits and areas are computed from them.
    pub cite: Cite,
}

/// A thread of the fine series, UNF.
const fn fine(id: &'static str, label: &'static str, diameter: f64, per_inch: f64, tap_drill: &'static str) -> Thread {
    Thread {
        id,
        label,
        system: System::Inch,
        major: inch(diameter),
        pitch: threads_per_inch(per_inch),
        tolerance_length: ToleranceLength::Diameter,
        tap_drill,
        cite: cite(&ASME_B1_1, "fine series; limits and areas by its formulas", Obtained::Computed),
    }
}

/// A metric thread; coarse or fine makes no difference to its formulas.
const fn metric(id: &'static str, label: &'static str, diameter: f64, pitch: f64, tap_drill: &'static str) -> Thread {
    Thread {
        id,
        label,
        system: System::Metric,
        major: mm(diameter),
        pitch: mm(pitch),
        tolerance_length: ToleranceLength::DiameterStep,
        tap_drill,
        cite: cite(&ISO_724, "with limits by ISO 965-1 and areas by ISO 898-1", Obtained::Computed),
    }
}

/// Every thread, inch before metric, then by diameter, then as the names count.
pub static ALL: &[Thread] = &[
    fine("5/16-24", "5/16-24 UNF", 0.3125, 24.0, "I"),
    fine("3/8-24", "3/8-24 UNF", 0.375, 24.0, "Q"),
    fine("7/16-20", "7/16-20 UNF", 0.4375, 20.0, "25/64"),
    fine("1/2-20", "1/2-20 UNF", 0.5, 20.0, "29/64"),
    fine("9/16-18", "9/16-18 UNF", 0.5625, 18.0, "33/64"),
    fine("5/8-18", "5/8-18 UNF", 0.625, 18.0, "37/64"),
    fine("3/4-16", "3/4-16 UNF", 0.75, 16.0, "11/16"),
    fine("7/8-14", "7/8-14 UNF", 0.875, 14.0, "13/16"),
    fine("1-12", "1-12 UNF", 1.0, 12.0, "59/64"),
    // The usual fine thread of 1 in rod ends in the trade, although the standard's fine series has 1-12.
    Thread {
        id: "1-14",
        label: "1-14 UNS",
        system: System::Inch,
        major: inch(1.0),
        pitch: threads_per_inch(14.0),
        tolerance_length: ToleranceLength::NinePitches,
        tap_drill: "15/16",
        cite: cite(&ASME_B1_1, "special series; limits and areas by its formulas", Obtained::Computed),
    },
    fine("1-1/8-12", "1-1/8-12 UNF", 1.125, 12.0, "1-3/64"),
    fine("1-1/4-12", "1-1/4-12 UNF", 1.25, 12.0, "1-11/64"),
    fine("1-1/2-12", "1-1/2-12 UNF", 1.5, 12.0, "1-27/64"),
    metric("M10x1.5", "M10 × 1.5", 10.0, 1.5, "8.5mm"),
    metric("M12x1.75", "M12 × 1.75", 12.0, 1.75, "10.25mm"),
    metric("M14x1.5", "M14 × 1.5", 14.0, 1.5, "12.5mm"),
    metric("M14x2", "M14 × 2", 14.0, 2.0, "12mm"),
    metric("M16x1.5", "M16 × 1.5", 16.0, 1.5, "14.5mm"),
    metric("M16x2", "M16 × 2", 16.0, 2.0, "14mm"),
    metric("M18x1.5", "M18 × 1.5", 18.0, 1.5, "16.5mm"),
    metric("M20x1.5", "M20 × 1.5", 20.0, 1.5, "18.5mm"),
    metric("M20x2.5", "M20 × 2.5", 20.0, 2.5, "17.5mm"),
    metric("M22x1.5", "M22 × 1.5", 22.0, 1.5, "20.5mm"),
    metric("M24x2", "M24 × 2", 24.0, 2.0, "22mm"),
    metric("M24x3", "M24 × 3", 24.0, 3.0, "21mm"),
    metric("M27x2", "M27 × 2", 27.0, 2.0, "25mm"),
    metric("M30x2", "M30 × 2", 30.0, 2.0, "28mm"),
    metric("M30x3.5", "M30 × 3.5", 30.0, 3.5, "26.5mm"),
];

/// The thread with an id.
pub fn find(id: &str) -> Option<&'static Thread> {
    ALL.iter().find(|thread| thread.id == id)
}

impl Thread {
    /// Class limits: 2A and 2B in inches, 6g and 6H in millimeters.
    ///
    /// Worked out by the standard's formulas, except where a printed table is known to allow a weaker
    /// thread: there the table's value stands, as [`thread_limits::DISAGREEMENTS`] tells.
    pub fn limits(&self) -> Limits {
        let mut limits = self.limits_by_formula();
        for row in thread_limits::disagreements(self) {
            limits.set(row.limit, row.tabled);
        }
        limits
    }

    /// Class limits as the standard's formulas give them.
    pub fn limits_by_formula(&self) -> Limits {
        tolerances::by_formula(self)
    }

    /// Area that carries tension along the screw, m².
    pub fn tensile_stress_area(&self) -> f64 {
        let formula = match self.system {
            System::Inch => &formulas::TENSILE_STRESS_AREA_INCH,
            System::Metric => &formulas::TENSILE_STRESS_AREA_METRIC,
        };
        formula.value(&[self.major, self.pitch])
    }

    /// Minor diameter of the screw with its rounded root, m.
    pub fn external_minor(&self) -> f64 {
        let formula = match self.system {
            System::Inch => &formulas::EXTERNAL_MINOR_INCH,
            System::Metric => &formulas::EXTERNAL_MINOR_METRIC,
        };
        formula.value(&[self.major, self.pitch])
    }

    /// Basic pitch diameter, m.
    pub fn basic_pitch_diameter(&self) -> f64 {
        formulas::BASIC_PITCH_DIAMETER.value(&[self.major, self.pitch])
    }

    /// Area that shears when the screw's thread strips, m² for each m of engagement, with the weakest
    /// screw and the widest hole that the limits allow.
    pub fn external_shear_area(&self) -> f64 {
        let limits = self.limits();
        formulas::EXTERNAL_SHEAR_AREA.value(&[self.pitch, limits.internal_minor_max, limits.external_pitch_min])
    }

    /// Area that shears when the bar's thread strips, m² for each m of engagement, with the smallest
    /// screw and the loosest hole thread that the limits allow.
    pub fn internal_shear_area(&self) -> f64 {
        let limits = self.limits();
        formulas::INTERNAL_SHEAR_AREA.value(&[self.pitch, limits.external_major_min, limits.internal_pitch_max])
    }
}
