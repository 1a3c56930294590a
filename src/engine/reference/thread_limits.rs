//! Thread limits: what the tolerance formulas and their rounding give beside printed tables of many sizes.

use super::Tolerance::Absolute;
use super::rows;
use crate::engine::formulas::threads::UN_MAJOR_TOLERANCE;
use crate::engine::tables::threads::{self, Limits, Thread, ToleranceLength};
use crate::quantity::{System, inch, mm, threads_per_inch};
use crate::source::{ASME_B1_1, Obtained, cite};

const MH27: &str = "Machinery's Handbook 27, p. 1755, Table 3";
const REPRINT: &str = "reprint of ASME B1.1";
const JUMBLED_REPRINT: &str = "reprint of ASME B1.1 with jumbled columns";
const MAJOR_TABLE: &str = "ASME B1.1, major-diameter tolerance table (public reprint)";
const STANDARD_SERIES: &str = "ASME B1.1, standard-series table";

/// Limits of a thread that need not be in the table, from its diameter in inches.
fn class_2(diameter: f64, per_inch: f64, tolerance_length: ToleranceLength) -> Limits {
    let thread = Thread {
        id: "",
        label: "",
        system: System::Inch,
        major: inch(diameter),
        pitch: threads_per_inch(per_inch),
        tolerance_length,
        tap_drill: "",
        cite: cite(&ASME_B1_1, "formulas", Obtained::Computed),
    };
    thread.limits_by_formula()
}

/// A thread of the finer and constant-pitch series.
fn nine_pitches(diameter: f64, per_inch: f64) -> Limits {
    class_2(diameter, per_inch, ToleranceLength::NinePitches)
}

/// A thread of the standard series.
fn one_diameter(diameter: f64, per_inch: f64) -> Limits {
    class_2(diameter, per_inch, ToleranceLength::Diameter)
}

fn major_tolerance(per_inch: f64) -> f64 {
    UN_MAJOR_TOLERANCE.value(&[1.0 / per_inch])
}

rows! {
    "Thread limits" {
        "2a-15-16-12", "15/16-12 class 2A: least pitch diameter of the screw" = 0.876 "in" in inch(1.0), Absolute(0.0001); REPRINT, Copied
            => nine_pitches(0.9375, 12.0).external_pitch_min;
        "2b-15-16-12", "15/16-12 class 2B: largest minor diameter of the hole" = 0.865 "in" in inch(1.0), Absolute(0.0006); REPRINT, Copied
            => nine_pitches(0.9375, 12.0).internal_minor_max;
        "2a-2-1-2-12", "2-1/2-12 class 2A: largest pitch diameter of the screw" = 2.444 "in" in inch(1.0), Absolute(0.0001); MH27, Read
            => nine_pitches(2.5, 12.0).external_pitch_max;
        "2b-2-1-2-12", "2-1/2-12 class 2B: largest minor diameter of the hole" = 2.428 "in" in inch(1.0), Absolute(0.0006); MH27, Read
            => nine_pitches(2.5, 12.0).internal_minor_max;
        "2b-pitch-2-1-2-12", "2-1/2-12 class 2B: largest pitch diameter of the hole" = 2.454 "in" in inch(1.0), Absolute(0.0001); MH27, Read
            => nine_pitches(2.5, 12.0).internal_pitch_max;
        "2a-2-1-2-14", "2-1/2-14 class 2A: least pitch diameter of the screw" = 2.4461 "in" in inch(1.0), Absolute(0.0001); MH27, Read
            => nine_pitches(2.5, 14.0).external_pitch_min;
        "2b-pitch-2-1-2-14", "2-1/2-14 class 2B: largest pitch diameter of the hole" = 2.4612 "in" in inch(1.0), Absolute(0.0001); MH27, Read
            => nine_pitches(2.5, 14.0).internal_pitch_max;
        "2a-2-1-2-16", "2-1/2-16 class 2A: largest pitch diameter of the screw" = 2.4577 "in" in inch(1.0), Absolute(0.0001); MH27, Read
            => nine_pitches(2.5, 16.0).external_pitch_max;
        "2b-2-1-2-16", "2-1/2-16 class 2B: largest minor diameter of the hole" = 2.446 "in" in inch(1.0), Absolute(0.0006); MH27, Read
            => nine_pitches(2.5, 16.0).internal_minor_max;
        "2a-major-5-8-18", "5/8-18 class 2A: largest major diameter of the screw" = 0.6236 "in" in inch(1.0), Absolute(0.0001); JUMBLED_REPRINT, Copied
            => one_diameter(0.625, 18.0).external_major_max;
        "2a-5-8-18", "5/8-18 class 2A: least pitch diameter of the screw" = 0.5828 "in" in inch(1.0), Absolute(0.0001); JUMBLED_REPRINT, Copied
            => one_diameter(0.625, 18.0).external_pitch_min;
        "2a-7-8-14", "7/8-14 class 2A: least pitch diameter of the screw" = 0.8216 "in" in inch(1.0), Absolute(0.0001); STANDARD_SERIES, Memory
            => one_diameter(0.875, 14.0).external_pitch_min;
        "2a-1-14", "1-14 class 2A: least pitch diameter of the screw" = 0.9463 "in" in inch(1.0), Absolute(0.0001); STANDARD_SERIES, Memory
            => one_diameter(1.0, 14.0).external_pitch_min;
        "2a-1-1-4-12", "1-1/4-12 class 2A: least pitch diameter of the screw" = 1.1879 "in" in inch(1.0), Absolute(0.0001); STANDARD_SERIES, Memory
            => one_diameter(1.25, 12.0).external_pitch_min;
        "2b-3-4-16", "3/4-16 class 2B: largest minor diameter of the hole" = 0.696 "in" in inch(1.0), Absolute(0.0011); STANDARD_SERIES, Memory
            => one_diameter(0.75, 16.0).internal_minor_max;
        "2b-1-1-4-12", "1-1/4-12 class 2B: largest minor diameter of the hole" = 1.178 "in" in inch(1.0), Absolute(0.0011); STANDARD_SERIES, Memory
            => one_diameter(1.25, 12.0).internal_minor_max;
        "major-tolerance-24", "24 threads per inch: major-diameter tolerance of the screw" = 0.0072 "in" in 1.0, Absolute(0.000_06); MAJOR_TABLE, Copied
            => major_tolerance(24.0);
        "major-tolerance-18", "18 threads per inch: major-diameter tolerance of the screw" = 0.0087 "in" in 1.0, Absolute(0.000_06); MAJOR_TABLE, Copied
            => major_tolerance(18.0);
        "major-tolerance-16", "16 threads per inch: major-diameter tolerance of the screw" = 0.0094 "in" in 1.0, Absolute(0.000_06); MAJOR_TABLE, Copied
            => major_tolerance(16.0);
        "major-tolerance-12", "12 threads per inch: major-diameter tolerance of the screw" = 0.0114 "in" in 1.0, Absolute(0.000_06); MAJOR_TABLE, Copied
            => major_tolerance(12.0);
        "6h-m12", "M12x1.75 class 6H: largest minor diameter of the hole" = 10.441 "mm" in mm(1.0), Absolute(0.001); "ISO 965-1 and -2", Memory
            => threads::find("M12x1.75").map_or(f64::NAN, |thread| thread.limits_by_formula().internal_minor_max);
    }
}
