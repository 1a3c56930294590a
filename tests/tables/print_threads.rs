//! Threads and jam nuts beside a second print or the standard's formula, row by row.

use linkwright::engine::formula::Sheet;
use linkwright::engine::tables::threads::{self, Limit, ToleranceLength};
use linkwright::engine::tables::{drills, jam_nuts, jam_torque, thread_limits};
use linkwright::quantity::{POUND_FORCE, System, in2, inch, mm};

use crate::{printed, same};

/// A size by its name: `1-1/4` is 1.25.
fn size(name: &str) -> f64 {
    let part = |part: &str| match part.split_once('/') {
        Some((over, under)) => over.parse::<f64>().unwrap_or(f64::NAN) / under.parse::<f64>().unwrap_or(f64::NAN),
        None => part.parse().unwrap_or(f64::NAN),
    };
    name.split('-').map(part).sum()
}

#[test]
fn a_thread_is_named_by_its_diameter_and_pitch() {
    for row in threads::ALL {
        match row.id.strip_prefix('M') {
            Some(name) => {
                let (diameter, pitch) = name.split_once('x').expect("M20x1.5");
                assert_eq!(row.system, System::Metric, "{}", row.id);
                printed(row.id, "diameter", row.major, size(diameter), mm(1.0));
                printed(row.id, "pitch", row.pitch, size(pitch), mm(1.0));
                assert_eq!(row.label, format!("M{diameter} × {pitch}"));
                assert_eq!(row.tolerance_length, ToleranceLength::DiameterStep, "{}", row.id);
            }
            None => {
                let (diameter, per_inch) = row.id.rsplit_once('-').expect("3/4-16");
                assert_eq!(row.system, System::Inch, "{}", row.id);
                printed(row.id, "diameter", row.major, size(diameter), inch(1.0));
                printed(row.id, "pitch", row.pitch, 1.0 / size(per_inch), inch(1.0));
                let special = row.id == "1-14";
                assert_eq!(row.label, format!("{} {}", row.id, if special { "UNS" } else { "UNF" }));
                let length = if special { ToleranceLength::NinePitches } else { ToleranceLength::Diameter };
                assert_eq!(row.tolerance_length, length, "{}", row.id);
            }
        }
    }
}

/// Tap drills of the inch threads, by the decimals of the same charts: thread, name, inches.
const TAP_DRILLS: [(&str, &str, f64); 13] = [
    ("5/16-24", "I", 0.272),
    ("3/8-24", "Q", 0.332),
    ("7/16-20", "25/64", 0.390_625),
    ("1/2-20", "29/64", 0.453_125),
    ("9/16-18", "33/64", 0.515_625),
    ("5/8-18", "37/64", 0.578_125),
    ("3/4-16", "11/16", 0.6875),
    ("7/8-14", "13/16", 0.8125),
    ("1-12", "59/64", 0.921_875),
    ("1-14", "15/16", 0.9375),
    ("1-1/8-12", "1-3/64", 1.046_875),
    ("1-1/4-12", "1-11/64", 1.171_875),
    ("1-1/2-12", "1-27/64", 1.421_875),
];

#[test]
fn tap_drills_are_those_of_the_charts() {
    let inch_threads = threads::ALL.iter().filter(|row| row.system == System::Inch).count();
    assert_eq!(inch_threads, TAP_DRILLS.len());
    for (id, name, decimals) in TAP_DRILLS {
        let thread = threads::find(id).unwrap_or_else(|| panic!("{id} is gone"));
        let drill = drills::tap_drill(thread).map(|listed| listed.drill);
        assert_eq!(drill.map(|drill| drill.id), Some(name), "{id}");
        printed(id, "tap drill", drill.map_or(f64::NAN, |drill| drill.diameter), decimals, inch(1.0));
    }
    // A metric thread's is its diameter less its pitch: tried where every thread's drill is.
}

/// ISO 965-1 Tables 1, 3 and 4 by pitch, micrometers: deviation g, minor diameter of the hole and major
/// diameter of the screw, grade 6.
const BY_PITCH: [(f64, f64, f64, f64); 6] = [
    (1.5, 32.0, 300.0, 236.0),
    (1.75, 34.0, 335.0, 265.0),
    (2.0, 38.0, 375.0, 280.0),
    (2.5, 42.0, 450.0, 335.0),
    (3.0, 48.0, 500.0, 375.0),
    (3.5, 53.0, 560.0, 425.0),
];

/// Tables 5 and 6 by diameter step and pitch, micrometers: pitch diameter of the hole and of the screw, grade 6.
const BY_STEP: [(f64, f64, f64, f64, f64); 8] = [
    (5.6, 11.2, 1.5, 180.0, 132.0),
    (11.2, 22.4, 1.5, 190.0, 140.0),
    (11.2, 22.4, 1.75, 200.0, 150.0),
    (11.2, 22.4, 2.0, 212.0, 160.0),
    (11.2, 22.4, 2.5, 224.0, 170.0),
    (22.4, 45.0, 2.0, 224.0, 170.0),
    (22.4, 45.0, 3.0, 265.0, 200.0),
    (22.4, 45.0, 3.5, 280.0, 212.0),
];

#[test]
fn metric_limits_are_the_tolerances_of_the_standards_tables() {
    for thread in threads::ALL.iter().filter(|row| row.system == System::Metric) {
        let (major, pitch) = (thread.major / mm(1.0), thread.pitch / mm(1.0));
        let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
        let (_, g, minor, crest) = BY_PITCH.into_iter().find(|row| near(row.0, pitch)).expect("a pitch of the table");
        let (.., hole, screw) =
            BY_STEP.into_iter().find(|row| major > row.0 && major <= row.1 && near(row.2, pitch)).expect("a step");
        let limits = thread.limits();
        let basic = |factor: f64| ((major - factor * pitch) * 1e3).round() / 1e3;
        let (pitch_diameter, hole_minor) = (basic(0.649_519_05), basic(1.082_531_75));
        for (limit, expected) in [
            (Limit::ExternalMajorMax, major - g / 1e3),
            (Limit::ExternalMajorMin, major - (g + crest) / 1e3),
            (Limit::ExternalPitchMax, pitch_diameter - g / 1e3),
            (Limit::ExternalPitchMin, pitch_diameter - (g + screw) / 1e3),
            (Limit::InternalMinorMin, hole_minor),
            (Limit::InternalMinorMax, hole_minor + minor / 1e3),
            (Limit::InternalPitchMin, pitch_diameter),
            (Limit::InternalPitchMax, pitch_diameter + hole / 1e3),
        ] {
            let held = limits.get(limit) / mm(1.0);
            assert!((held - expected).abs() < 1e-6, "{} {limit:?}: {held}, the tables give {expected}", thread.id);
        }
    }
}

/// A metric thread of any diameter and pitch, mm.
fn any(diameter: f64, pitch: f64) -> threads::Limits {
    let like = threads::find("M24x3").expect("M24x3");
    let thread = threads::Thread {
        id: "",
        label: "",
        system: System::Metric,
        major: mm(diameter),
        pitch: mm(pitch),
        tolerance_length: ToleranceLength::DiameterStep,
        tap_drill: "",
        cite: like.cite,
    };
    thread.limits_by_formula()
}

/// Preferred numbers R40 of ISO 3 and the more rounded R′40, in thousandths.
const PREFERRED: [(f64, f64); 40] = [
    (1000.0, 1000.0),
    (1060.0, 1050.0),
    (1120.0, 1100.0),
    (1180.0, 1200.0),
    (1250.0, 1250.0),
    (1320.0, 1300.0),
    (1400.0, 1400.0),
    (1500.0, 1500.0),
    (1600.0, 1600.0),
    (1700.0, 1700.0),
    (1800.0, 1800.0),
    (1900.0, 1900.0),
    (2000.0, 2000.0),
    (2120.0, 2100.0),
    (2240.0, 2200.0),
    (2360.0, 2400.0),
    (2500.0, 2500.0),
    (2650.0, 2600.0),
    (2800.0, 2800.0),
    (3000.0, 3000.0),
    (3150.0, 3200.0),
    (3350.0, 3400.0),
    (3550.0, 3600.0),
    (3750.0, 3800.0),
    (4000.0, 4000.0),
    (4250.0, 4200.0),
    (4500.0, 4500.0),
    (4750.0, 4800.0),
    (5000.0, 5000.0),
    (5300.0, 5300.0),
    (5600.0, 5600.0),
    (6000.0, 6000.0),
    (6300.0, 6300.0),
    (6700.0, 6700.0),
    (7100.0, 7100.0),
    (7500.0, 7500.0),
    (8000.0, 8000.0),
    (8500.0, 8500.0),
    (9000.0, 9000.0),
    (9500.0, 9500.0),
];

#[test]
fn tolerances_are_preferred_numbers() {
    for (n, (r40, rounded)) in PREFERRED.into_iter().enumerate() {
        // A pitch, far beyond any thread, whose tolerance is that many micrometers: the rule is what is tried.
        // A little beside the number, so that it is not met by itself.
        for beside in [0.998, 1.002] {
            let pitch = ((beside * r40 + 0.15) / 180.0).powf(1.5);
            let limits = any(24.0, pitch);
            printed("R40", "tolerance", limits.external_major_max - limits.external_major_min, r40, mm(0.001));
            let limits = any(24.0, (beside * rounded - 15.0) / 11.0);
            printed("R'40", "deviation", mm(24.0) - limits.external_major_max, rounded, mm(0.001));
        }
        // The series are powers of the fortieth root of ten.
        let power = 1000.0 * 10_f64.powf(n as f64 / 40.0);
        assert!((r40 / power - 1.0).abs() < 0.0127 && (rounded / power - 1.0).abs() < 0.03, "{r40}, {rounded}");
    }
}

#[test]
fn diameter_steps_end_where_the_standard_ends_them() {
    let width = |diameter: f64| {
        let limits = any(diameter, 1.5);
        (limits.external_pitch_max - limits.external_pitch_min) / mm(0.001)
    };
    for (bound, below, above) in
        [(5.6, f64::NAN, 132.0), (11.2, 132.0, 140.0), (22.4, 140.0, 150.0), (45.0, 150.0, f64::NAN)]
    {
        for (at, expected) in [(bound, below), (bound + 0.0005, above)] {
            let found = width(at);
            assert!(
                found.is_nan() == expected.is_nan() && (found.is_nan() || (found - expected).abs() < 1e-6),
                "{at} mm: {found}"
            );
        }
        // A hair below the bound the lower step still holds.
        assert!(width(bound - 0.0005).is_nan() == below.is_nan(), "{bound}");
    }
}

/// Stress areas as printed, with their last digit: in², then mm².
const AREAS: [(&str, &str); 27] = [
    ("5/16-24", "0.0580"),
    ("3/8-24", "0.0878"),
    ("7/16-20", "0.1187"),
    ("1/2-20", "0.1599"),
    ("9/16-18", "0.203"),
    ("5/8-18", "0.256"),
    ("3/4-16", "0.373"),
    ("7/8-14", "0.509"),
    ("1-12", "0.663"),
    ("1-1/8-12", "0.856"),
    ("1-1/4-12", "1.073"),
    ("1-1/2-12", "1.581"),
    ("M10x1.5", "58.0"),
    ("M12x1.75", "84.3"),
    ("M14x1.5", "125"),
    ("M14x2", "115"),
    ("M16x1.5", "167"),
    ("M16x2", "157"),
    ("M18x1.5", "216"),
    ("M20x1.5", "272"),
    ("M20x2.5", "245"),
    ("M22x1.5", "333"),
    ("M24x2", "384"),
    ("M24x3", "353"),
    ("M27x2", "496"),
    ("M30x2", "621"),
    ("M30x3.5", "561"),
];

#[test]
fn stress_areas_are_as_printed() {
    assert_eq!(thread_limits::STRESS_AREAS.len(), AREAS.len());
    for (row, (id, print)) in thread_limits::STRESS_AREAS.iter().zip(AREAS) {
        assert_eq!(row.thread, id);
        let unit = if id.starts_with('M') { 1e-6 } else { in2(1.0) };
        let decimals = print.split_once('.').map_or(0, |(_, rest)| rest.len());
        printed(id, "stress area", row.area, size(print), unit);
        printed(id, "its last digit", row.last_digit, 0.1_f64.powi(decimals as i32), unit);
    }
}

/// Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th edition, metric table in a public
/// copy: stress area, then what shears of the screw and of the nut 6g/6H at one diameter of engagement, mm².
const BOLTED_JOINTS: [(&str, f64, f64, f64); 7] = [
    ("M10x1.5", 57.990, 155.80, 214.77),
    ("M12x1.75", 84.267, 227.72, 313.41),
    ("M14x2", 115.44, 313.94, 434.47),
    ("M16x2", 156.67, 417.55, 569.12),
    ("M20x2.5", 244.79, 665.58, 907.76),
    ("M24x3", 352.50, 971.10, 1320.2),
    ("M30x3.5", 560.59, 1549.2, 2086.5),
];

#[test]
fn areas_are_those_of_a_handbook_of_bolted_joints() {
    let close = |id: &str, what: &str, held: f64, print: f64| {
        assert!((held - print).abs() <= 1e-4 * print, "{id} {what}: {held}, printed {print}");
    };
    for (id, area, screw, nut) in BOLTED_JOINTS {
        let thread = threads::find(id).unwrap_or_else(|| panic!("{id} is gone"));
        let square = mm(1.0) * mm(1.0);
        close(id, "stress area", thread.tensile_stress_area() / square, area);
        close(id, "screw", thread.external_shear_area() * thread.major / square, screw);
        close(id, "nut", thread.internal_shear_area() * thread.major / square, nut);
    }
}

#[test]
fn inch_jam_nuts_follow_the_formulas_of_their_standard() {
    for nut in jam_nuts::ALL.iter().filter(|nut| nut.system == System::Inch) {
        let d = size(nut.size);
        printed(nut.size, "thread", nut.major, d, inch(1.0));
        let small = d <= 0.625;
        // ASME B18.2.2, appendix on formulas for nut dimensions, in inches.
        let basic = d / 2.0
            + match nut.size {
                "1/2" | "5/8" => 2.0 / 32.0,
                _ if small => 1.0 / 32.0,
                _ if d < 1.2 => 1.5 / 32.0,
                _ => 3.0 / 32.0,
            };
        let half = if small { 0.015 * d + 0.003 } else { 0.016 * d + 0.012 };
        let width = match nut.size {
            "5/16" | "7/16" | "9/16" => (1.5 * d * 16.0).ceil() / 16.0,
            _ => 1.5 * d,
        };
        let narrow = width - if small { 0.015 * d + 0.006 } else { 0.05 * d };
        printed(nut.size, "basic thickness", nut.thickness, basic, inch(1.0));
        for (what, held, formula) in [
            ("thickest", nut.thickness_max, basic + half),
            ("thinnest", nut.thickness_min.unwrap_or(f64::NAN), basic - half),
            ("widest", nut.across_flats_max, width),
            ("narrowest", nut.across_flats_min.unwrap_or(f64::NAN), narrow),
        ] {
            // Printed to a thousandth; a five at the end goes to the even neighbor.
            let thousandths = formula * 1000.0;
            let even = 2.0 * (thousandths / 2.0).round();
            let print = if (thousandths.fract() - 0.5).abs() < 1e-6 { even } else { thousandths.round() };
            printed(nut.size, what, held, print, inch(0.001));
        }
    }
}

/// Thin nuts, mm: thickest and width across flats as two reprints have them, then the tolerances of
/// ISO 286 for thickness (grade 14 to M12, 15 to M18, 16 above) and width (grade 13 to M16, 15 above).
const THIN: [(&str, f64, f64, f64, f64); 10] = [
    ("M10", 5.0, 16.0, 0.30, 0.27),
    ("M12", 6.0, 18.0, 0.30, 0.27),
    ("M14", 7.0, 21.0, 0.58, 0.33),
    ("M16", 8.0, 24.0, 0.58, 0.33),
    ("M18", 9.0, 27.0, 0.58, 0.84),
    ("M20", 10.0, 30.0, 0.90, 0.84),
    ("M22", 11.0, 34.0, 1.10, 1.00),
    ("M24", 12.0, 36.0, 1.10, 1.00),
    ("M27", 13.5, 41.0, 1.10, 1.00),
    ("M30", 15.0, 46.0, 1.10, 1.00),
];

#[test]
fn metric_jam_nuts_are_made_to_the_grades_of_their_standard() {
    let metric: Vec<_> = jam_nuts::ALL.iter().filter(|nut| nut.system == System::Metric).collect();
    assert_eq!(metric.len(), THIN.len());
    for (nut, (id, thick, across, thinner, narrower)) in metric.into_iter().zip(THIN) {
        assert_eq!(nut.size, id);
        printed(id, "thread", nut.major, size(&id[1..]), mm(1.0));
        printed(id, "thickest", nut.thickness_max, thick, mm(1.0));
        printed(id, "thickness", nut.thickness, thick, mm(1.0));
        printed(id, "thinnest", nut.thickness_min.unwrap_or(f64::NAN), thick - thinner, mm(1.0));
        printed(id, "widest", nut.across_flats_max, across, mm(1.0));
        printed(id, "narrowest", nut.across_flats_min.unwrap_or(f64::NAN), across - narrower, mm(1.0));
    }
}

/// AC 43.13-1B Table 7-1, shear nuts, inch-pounds as printed: thread, least, most.
const TORQUES: [(&str, f64, f64); 8] = [
    ("3/8-24", 95.0, 110.0),
    ("7/16-20", 270.0, 300.0),
    ("1/2-20", 288.0, 408.0),
    ("5/8-18", 600.0, 780.0),
    ("3/4-16", 1296.0, 1500.0),
    ("7/8-14", 1500.0, 1800.0),
    ("1-14", 2196.0, 3300.0),
    ("1-1/4-12", 5400.0, 6600.0),
];

#[test]
fn printed_torques_are_as_printed() {
    let unit = POUND_FORCE * inch(1.0);
    for (id, least, most) in TORQUES {
        let range = threads::find(id).and_then(jam_torque::printed).unwrap_or_else(|| panic!("{id} is gone"));
        printed(id, "least torque", range.0, least, unit);
        printed(id, "most torque", range.1, most, unit);
        let thread = threads::find(id).expect("a thread");
        let ordered = jam_torque::range(thread, &mut Sheet::silent());
        assert!(same(ordered.least, 0.7 * range.0) && same(ordered.most, 0.7 * range.1), "{id} with anti-seize");
    }
    // Where none is printed, 170 to 205 MPa in the shank.
    let thread = threads::find("1-12").expect("1-12");
    let range = jam_torque::range(thread, &mut Sheet::silent());
    let torque = |stress: f64| 0.7 * 0.16 * stress * 1e6 * thread.tensile_stress_area() * thread.major;
    assert!(same(range.least, torque(170.0)) && same(range.most, torque(205.0)));
    assert!(same(jam_torque::NUT_SHEAR, 54e3 * POUND_FORCE / in2(1.0)));
    assert!(same(jam_torque::COEFFICIENT_AS_RECEIVED, 0.2));
}
