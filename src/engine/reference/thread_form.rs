//! Thread form: basic diameters, stress areas, percent of thread.

use super::Tolerance::{Absolute, Relative};
use super::{MPMATH, rows};
use crate::engine::formulas::pins::BOLT_AREA;
use crate::engine::formulas::threads::{BASIC_MINOR_DIAMETER, PERCENT_OF_THREAD};
use crate::engine::tables::threads::{self, Thread};
use crate::quantity::{in2, inch, threads_per_inch};

const TABLE_4B: &str = "Machinery's Handbook 31, p. 1979, Table 4b; Shigley 9e, Table 8-2";
const STRESS_AREA: &str = "Shigley 9e, Table 8-1; ISO 898-1";
const SQUARE_MM: f64 = 1e-6;

/// Something about a thread of the table; NaN when it is not there.
fn of(id: &str, value: impl Fn(&'static Thread) -> f64) -> f64 {
    threads::find(id).map_or(f64::NAN, value)
}

fn stress_area(id: &str) -> f64 {
    of(id, Thread::tensile_stress_area)
}

fn pitch_diameter(id: &str) -> f64 {
    of(id, Thread::basic_pitch_diameter)
}

/// A thread by its diameter in inches and its threads per inch.
const fn thread(diameter: f64, per_inch: f64) -> [f64; 2] {
    [inch(diameter), threads_per_inch(per_inch)]
}

/// Area at the root of a sharp thread, whose depth is where 100 percent of thread would leave the hole.
fn sharp_minor_area([major, pitch]: [f64; 2]) -> f64 {
    let depth = major / PERCENT_OF_THREAD.value(&[major, 0.0, pitch]);
    BOLT_AREA.value(&[major - depth])
}

fn percent([major, pitch]: [f64; 2], drill: f64) -> f64 {
    PERCENT_OF_THREAD.value(&[major, inch(drill), pitch])
}

rows! {
    "Thread form" {
        "stress-area-3-8-24", "3/8-24: tensile stress area" = 0.0878 "in²" in in2(1.0), Relative(0.0015); TABLE_4B, Read
            => stress_area("3/8-24");
        "stress-area-1-2-20", "1/2-20: tensile stress area" = 0.1599 "in²" in in2(1.0), Relative(0.0015); TABLE_4B, Read
            => stress_area("1/2-20");
        "stress-area-5-8-18", "5/8-18: tensile stress area" = 0.256 "in²" in in2(1.0), Relative(0.0015); TABLE_4B, Read
            => stress_area("5/8-18");
        "stress-area-7-8-14", "7/8-14: tensile stress area" = 0.509 "in²" in in2(1.0), Relative(0.0015); TABLE_4B, Read
            => stress_area("7/8-14");
        "stress-area-1-1-4-12", "1-1/4-12: tensile stress area" = 1.073 "in²" in in2(1.0), Relative(0.0015); TABLE_4B, Read
            => stress_area("1-1/4-12");
        "stress-area-1-1-2-12", "1-1/2-12: tensile stress area" = 1.581 "in²" in in2(1.0), Relative(0.0015); TABLE_4B, Read
            => stress_area("1-1/2-12");
        "stress-area-m16x1-5", "M16x1.5: tensile stress area" = 167.0 "mm²" in SQUARE_MM, Relative(0.004); STRESS_AREA, Memory
            => stress_area("M16x1.5");
        "stress-area-m24x2", "M24x2: tensile stress area" = 384.0 "mm²" in SQUARE_MM, Relative(0.004); STRESS_AREA, Memory
            => stress_area("M24x2");
        "pitch-diameter-1-2-20", "1/2-20: basic pitch diameter" = 0.4675 "in" in inch(1.0), Absolute(0.000_06); TABLE_4B, Read
            => pitch_diameter("1/2-20");
        "pitch-diameter-3-4-16", "3/4-16: basic pitch diameter" = 0.7094 "in" in inch(1.0), Absolute(0.000_06); TABLE_4B, Read
            => pitch_diameter("3/4-16");
        "pitch-diameter-1-1-4-12", "1-1/4-12: basic pitch diameter" = 1.1959 "in" in inch(1.0), Absolute(0.000_06); TABLE_4B, Read
            => pitch_diameter("1-1/4-12");
        "hole-minor-7-8-14", "7/8-14: basic minor diameter of the hole" = 0.7977 "in" in inch(1.0), Absolute(0.000_06); TABLE_4B, Read
            => BASIC_MINOR_DIAMETER.value(&thread(0.875, 14.0));
        "hole-minor-1-12", "1-12: basic minor diameter of the hole" = 0.9098 "in" in inch(1.0), Absolute(0.000_06); TABLE_4B, Read
            => BASIC_MINOR_DIAMETER.value(&thread(1.0, 12.0));
        "hole-minor-1-1-4-12", "1-1/4-12: basic minor diameter of the hole" = 1.1598 "in" in inch(1.0), Absolute(0.000_06); TABLE_4B, Read
            => BASIC_MINOR_DIAMETER.value(&thread(1.25, 12.0));
        "minor-area-1-2-20", "1/2-20: area at the sharp root" = 0.1486 "in²" in in2(1.0), Absolute(0.0006); TABLE_4B, Read
            => sharp_minor_area(thread(0.5, 20.0));
        "minor-area-3-4-16", "3/4-16: area at the sharp root" = 0.351 "in²" in in2(1.0), Absolute(0.0006); TABLE_4B, Read
            => sharp_minor_area(thread(0.75, 16.0));
        "minor-area-7-8-14", "7/8-14: area at the sharp root" = 0.48 "in²" in in2(1.0), Absolute(0.0006); TABLE_4B, Read
            => sharp_minor_area(thread(0.875, 14.0));
        "shank-minor-3-4-16", "3/4-16: minor diameter of the shank, rounded root" = 0.675575942 "in" in inch(1.0), Absolute(0.001); "formula, mpmath 1.4.1; Machinery's Handbook 31, Table 4b, prints .6763", Computed
            => of("3/4-16", Thread::external_minor);
    }
    "Percent of thread" {
        "percent-3-4-16", "3/4-16 with an 11/16 drill" = 76.9800356 "%" in 0.01, Absolute(0.01); MPMATH, Computed
            => percent(thread(0.75, 16.0), 0.6875);
        "percent-7-8-14", "7/8-14 with a 13/16 drill" = 67.3575312 "%" in 0.01, Absolute(0.01); MPMATH, Computed
            => percent(thread(0.875, 14.0), 0.8125);
        "percent-1-14", "1-14 with a 59/64 drill" = 84.196914 "%" in 0.01, Absolute(0.01); MPMATH, Computed
            => percent(thread(1.0, 14.0), 0.921_875);
        "percent-at-basic-minor", "A hole of the basic minor diameter, any thread" = 83.3333327 "%" in 0.01, Absolute(1e-4); MPMATH, Computed
            => {
                let [major, pitch] = thread(0.75, 16.0);
                PERCENT_OF_THREAD.value(&[major, BASIC_MINOR_DIAMETER.value(&[major, pitch]), pitch])
            };
        "percent-1-64", "1-64 with a number 53 drill (.0595 in)" = 66.0 "%" in 0.01, Absolute(1.0); "Machinery's Handbook 31, p. 2155, Table 2", Read
            => percent(thread(0.073, 64.0), 0.0595);
    }
}
