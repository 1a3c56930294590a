//! The tables: what is typed, refused and shown.

use linkwright::quantity::Kind::*;
use linkwright::quantity::System::{self, Inch, Metric};
use linkwright::quantity::{
    DEGREE, INCH, KSI, Kind, POUND_FORCE, STANDARD_GRAVITY, deg, in2, in3, in4, inch, ksi, lb_per_in3, lbf, lbf_in, mm,
    mpa, psi,
};

const GRAVITY: f64 = STANDARD_GRAVITY;

/// Typed, kind, system, SI.
#[rustfmt::skip]
pub(crate) const READS: &[(&str, Kind, System, f64)] = &[
    // A bare number takes the unit of the system.
    ("36", Length, Inch, 36.0 * INCH), ("36", Length, Metric, 0.036), ("0.078", FineLength, Inch, 0.078 * INCH),
    ("1.98", FineLength, Metric, 0.00198), ("4200", Weight, Inch, 4200.0 * POUND_FORCE),
    ("1905", Weight, Metric, 1905.0 * GRAVITY), ("5391", Force, Inch, 5391.0 * POUND_FORCE),
    ("5391", Force, Metric, 5391.0), ("66", Stress, Inch, 66.0 * KSI), ("455", Stress, Metric, 455e6),
    ("12.5", Angle, Inch, 12.5 * DEGREE), ("12.5", Angle, Metric, 12.5 * DEGREE),
    ("120", Torque, Inch, 120.0 * POUND_FORCE * 12.0 * INCH), ("163", Torque, Metric, 163.0),
    ("5000", Moment, Inch, 5000.0 * POUND_FORCE * INCH), ("565", Moment, Metric, 565.0),
    ("500", Stiffness, Inch, 500.0 * POUND_FORCE / INCH), ("88", Stiffness, Metric, 88e3), ("60", Percent, Inch, 0.6),
    ("60", Percent, Metric, 0.6), ("1.5", Ratio, Inch, 1.5), ("2", Count, Metric, 2.0), ("2 1/4", Turns, Inch, 2.25),
    ("0.5", Area, Inch, 0.5 * INCH * INCH), ("500", Area, Metric, 500e-6),
    ("0.25", Compliance, Inch, 0.25 * INCH / (1000.0 * POUND_FORCE)), ("1.4", Compliance, Metric, 1.4e-6),
    ("0.75", InInches, Inch, 0.75), ("14.7", InMillimeters, Metric, 14.7), ("265", InMicrometers, Inch, 265.0),
    // Inches.
    ("36 1/2", Length, Inch, 36.5 * INCH), ("36-1/2", Length, Inch, 36.5 * INCH),
    ("36-1/2\"", Length, Inch, 36.5 * INCH), ("36-1/2 in", Length, Inch, 36.5 * INCH),
    ("36½", Length, Inch, 36.5 * INCH), ("36 ½ in", Length, Inch, 36.5 * INCH), ("36-½", Length, Inch, 36.5 * INCH),
    ("36 - 1/2", Length, Inch, 36.5 * INCH), ("36  1 / 2", Length, Inch, 36.5 * INCH),
    ("36.5in", Length, Inch, 36.5 * INCH), ("36.5 inches", Length, Inch, 36.5 * INCH),
    ("36.5\"", Length, Inch, 36.5 * INCH), ("36.5”", Length, Inch, 36.5 * INCH), ("36.5″", Length, Inch, 36.5 * INCH),
    ("36.5''", Length, Inch, 36.5 * INCH), ("36.5 INCH", Length, Inch, 36.5 * INCH),
    ("36 1/2 in.", Length, Inch, 36.5 * INCH), ("36 1/2-inch", Length, Inch, 36.5 * INCH),
    ("1/2", Length, Inch, 0.5 * INCH), ("½", Length, Inch, 0.5 * INCH), ("⅞\"", Length, Inch, 0.875 * INCH),
    ("9/16", Length, Inch, 0.5625 * INCH), ("9/8", Length, Inch, 1.125 * INCH), (".5", Length, Inch, 0.5 * INCH),
    ("36.", Length, Inch, 36.0 * INCH), ("36,5", Length, Inch, 36.5 * INCH), ("5 thou", FineLength, Inch, 0.005 * INCH),
    // A fraction is inches where a bare number is millimeters.
    ("36 1/2", Length, Metric, 36.5 * INCH), ("36-1/2", Length, Metric, 36.5 * INCH), ("1/2", Length, Metric, 0.5 * INCH),
    ("36½", Length, Metric, 36.5 * INCH), ("1/64", FineLength, Metric, INCH / 64.0), ("36 1/2 mm", Length, Metric, 0.0365),
    ("36.5", Length, Metric, 0.0365), ("2 1/4", Turns, Metric, 2.25), ("1/2", Weight, Metric, 0.5 * GRAVITY),
    // Feet and inches.
    ("3' 0 1/2\"", Length, Inch, 36.5 * INCH), ("3' 0-1/2\"", Length, Inch, 36.5 * INCH),
    ("3'", Length, Inch, 36.0 * INCH), ("3 ft 1/2 in", Length, Inch, 36.5 * INCH), ("3ft 6", Length, Inch, 42.0 * INCH),
    ("3ft6", Length, Inch, 42.0 * INCH), ("3'6\"", Length, Inch, 42.0 * INCH), ("3'-6\"", Length, Inch, 42.0 * INCH),
    ("3′ 6″", Length, Inch, 42.0 * INCH), ("3’ 6”", Length, Inch, 42.0 * INCH),
    ("3 feet 6 inches", Length, Inch, 42.0 * INCH), ("1 foot, 6 in.", Length, Inch, 18.0 * INCH),
    ("3 ft. 6 in.", Length, Inch, 42.0 * INCH), ("3' 11\"", Length, Inch, 47.0 * INCH),
    ("3.5 ft", Length, Inch, 42.0 * INCH), ("3'½\"", Length, Inch, 36.5 * INCH),
    ("3' 6\"", Length, Metric, 42.0 * INCH),
    // Metric lengths, in either system.
    ("927 mm", Length, Inch, 0.927), ("927mm", Length, Metric, 0.927), ("92.7 cm", Length, Inch, 0.927),
    ("0.927 m", Length, Inch, 0.927), ("927,5 mm", Length, Metric, 0.9275), ("927 Millimetres", Length, Inch, 0.927),
    ("36 1/2 in", Length, Metric, 36.5 * INCH), ("50 µm", FineLength, Metric, 50e-6),
    ("19.05 mm", InInches, Inch, 0.75), ("1/4 in", InMillimeters, Metric, 6.35),
    // Commas.
    ("1,250", Length, Inch, 1.25 * INCH), ("36,500", Length, Metric, 0.0365), ("1,250.5 mm", Length, Metric, 1.2505),
    ("4,200", Weight, Inch, 4200.0 * POUND_FORCE), ("4,200 lb", Weight, Metric, 4200.0 * POUND_FORCE),
    ("0,250", Weight, Metric, 0.25 * GRAVITY), ("4,2", Weight, Metric, 4.2 * GRAVITY),
    ("4,200.5", Weight, Inch, 4200.5 * POUND_FORCE), ("4.200,5", Weight, Metric, 4200.5 * GRAVITY),
    ("1,234,567", Force, Inch, 1_234_567.0 * POUND_FORCE), ("66,000 psi", Stress, Inch, 66.0 * KSI),
    ("51,210 lbf·in", Moment, Inch, 51_210.0 * POUND_FORCE * INCH), ("1,125", Ratio, Inch, 1.125),
    ("12,5", Angle, Metric, 12.5 * DEGREE),
    // Thousands by a space or a k.
    ("4 300", Weight, Inch, 4300.0 * POUND_FORCE), ("4 300 lb", Weight, Metric, 4300.0 * POUND_FORCE),
    ("4\u{2009}300 lb", Weight, Inch, 4300.0 * POUND_FORCE), ("4\u{202f}300", Force, Metric, 4300.0),
    ("1 234 567", Force, Inch, 1_234_567.0 * POUND_FORCE), ("4 300.5", Weight, Inch, 4300.5 * POUND_FORCE),
    ("4 300,5 kg", Weight, Metric, 4300.5 * GRAVITY), ("1 250", Length, Metric, 1.25),
    ("1 250 1/2 in", Length, Inch, 1250.5 * INCH), ("36 100/128", Length, Inch, 36.781_25 * INCH),
    ("4.3k", Weight, Inch, 4300.0 * POUND_FORCE), ("4.3 k", Weight, Inch, 4300.0 * POUND_FORCE),
    ("4.3K lbs", Weight, Metric, 4300.0 * POUND_FORCE), ("4.3 k lb", Weight, Metric, 4300.0 * POUND_FORCE),
    ("4,3k", Weight, Metric, 4300.0 * GRAVITY), ("5k", Force, Inch, 5000.0 * POUND_FORCE), ("2k", Count, Inch, 2000.0),
    ("1.5k psi", Pressure, Metric, 1.5 * KSI), ("1/2k", Force, Metric, 500.0), ("5 kN", Force, Inch, 5000.0),
    // Pressures.
    ("1500", Pressure, Inch, 1.5 * KSI), ("1,500 psi", Pressure, Metric, 1.5 * KSI), ("10.3", Pressure, Metric, 10.3e6),
    ("100 bar", Pressure, Inch, 1e7), ("1.5 ksi", Pressure, Inch, 1.5 * KSI), ("700 kPa", Pressure, Inch, 7e5),
    // Other unit words.
    ("4200 lbs", Weight, Metric, 4200.0 * POUND_FORCE), ("4200#", Weight, Inch, 4200.0 * POUND_FORCE),
    ("4200 Pounds", Weight, Inch, 4200.0 * POUND_FORCE), ("1905 kg", Weight, Inch, 1905.0 * GRAVITY),
    ("1905 kilos", Weight, Inch, 1905.0 * GRAVITY), ("1.9 t", Weight, Inch, 1900.0 * GRAVITY),
    ("2 tonnes", Weight, Metric, 2000.0 * GRAVITY), ("18.7 kN", Weight, Metric, 18_700.0),
    ("100 lb", Force, Metric, 100.0 * POUND_FORCE), ("100 kg", Force, Metric, 100.0 * GRAVITY),
    ("24 kN", Force, Inch, 24_000.0), ("500 N", Force, Inch, 500.0), ("5.4 kips", Force, Inch, 5400.0 * POUND_FORCE),
    ("455 MPa", Stress, Inch, 455e6), ("455 n/mm²", Stress, Inch, 455e6), ("455 N/mm2", Stress, Inch, 455e6),
    ("66 KSI", Stress, Metric, 66.0 * KSI), ("120 lbf-ft", Torque, Metric, 120.0 * POUND_FORCE * 12.0 * INCH),
    ("120 ft-lb", Torque, Inch, 120.0 * POUND_FORCE * 12.0 * INCH),
    ("120 ft lbs", Torque, Inch, 120.0 * POUND_FORCE * 12.0 * INCH),
    ("120 foot-pounds", Torque, Inch, 120.0 * POUND_FORCE * 12.0 * INCH),
    ("120 in-lb", Torque, Inch, 120.0 * POUND_FORCE * INCH),
    ("120 ftlbs", Torque, Inch, 120.0 * POUND_FORCE * 12.0 * INCH), ("163 N·m", Torque, Inch, 163.0),
    ("163 Nm", Torque, Inch, 163.0), ("5.79 kN·m", Moment, Inch, 5790.0), ("1 kg·m", Moment, Inch, GRAVITY),
    ("500 lb/in", Stiffness, Metric, 500.0 * POUND_FORCE / INCH), ("88 N/mm", Stiffness, Inch, 88e3),
    ("0.098 lb/in³", WeightDensity, Metric, 0.098 * POUND_FORCE / (INCH * INCH * INCH)),
    ("12.5°", Angle, Inch, 12.5 * DEGREE), ("12.5 degrees", Angle, Inch, 12.5 * DEGREE),
    ("12.5deg", Angle, Inch, 12.5 * DEGREE), ("60 %", Percent, Inch, 0.6), ("60%", Percent, Inch, 0.6),
    ("60 percent", Percent, Inch, 0.6), ("110 %", Ratio, Inch, 1.1), ("2 threads", Count, Inch, 2.0),
    ("1-1/4 turns", Turns, Inch, 1.25), ("0.5 in²", Area, Metric, 0.5 * INCH * INCH),
    ("1 1/in", PerLength, Metric, 1.0 / INCH),
    ("0.25 in per 1,000 lbf", Compliance, Metric, 0.25 * INCH / (1000.0 * POUND_FORCE)),
    ("1.4 mm/kN", Compliance, Inch, 1.4e-6),
    // Odd characters and signs.
    ("３６．５", Length, Inch, 36.5 * INCH), ("36\u{a0}1⁄2\u{202f}in", Length, Inch, 36.5 * INCH),
    ("  36.5\t", Length, Inch, 36.5 * INCH), ("\u{200e}927\u{200b} mm", Length, Inch, 0.927),
    ("+5", Angle, Inch, 5.0 * DEGREE), ("-5", Angle, Inch, -5.0 * DEGREE), ("−5°", Angle, Inch, -5.0 * DEGREE),
    ("-36-1/2", Length, Inch, -36.5 * INCH), ("- 1/16 in", Length, Inch, -0.0625 * INCH),
    ("-3' 6\"", Length, Inch, -42.0 * INCH), ("000036", Length, Inch, 36.0 * INCH), ("0", Length, Inch, 0.0),
    ("-0", Length, Inch, 0.0),
];

/// Typed, kind, a part of the sentence.
#[rustfmt::skip]
pub(crate) const REFUSED: &[(&str, Kind, &str)] = &[
    ("", Length, "Nothing is typed here; this field takes a length such as 36 1/2, 3' 0 1/2\" or 927 mm."),
    ("  \u{a0}\u{200b} ", Weight, "Nothing is typed here"), ("abc", Length, "“abc” does not read as a number"),
    ("nan", Length, "does not read as a number"), ("inf", Force, "does not read as a number"),
    ("-", Length, "does not read"), (".", Length, "does not read"), ("1//2", Length, "“1//2” does not read"),
    ("1/", Length, "does not read"), ("/2", Length, "does not read"), ("1/2/3", Length, "does not read"),
    ("1/2.5", Length, "does not read"), ("1.5/2", Length, "does not read"), ("36.5 1/2", Length, "does not read"),
    ("36 3/2", Length, "does not read"), ("--36", Length, "does not read"), ("+-36", Length, "does not read"),
    ("36-", Length, "does not read"), ("1.2.3", Length, "does not read"), ("1,23,4", Weight, "does not read"),
    ("4,2005.1", Weight, "does not read"), ("1,2.3.4", Weight, "does not read"),
    ("36 😀", Length, "“36 😀” does not read"), ("😀", Length, "does not read"), ("½/2", Length, "does not read"),
    ("36 in)", Length, "does not read"), ("60 %%", Percent, "does not read"), ("٣٦", Length, "does not read"),
    ("1/0", Length, "“1/0” divides by zero"), ("36 1/00", Length, "divides by zero"),
    ("36k", Length, "“k” is not a unit known here"), ("12k", Angle, "“k” is not a unit"),
    ("4.3 k k", Weight, "“k” is not a unit"), ("4 30", Weight, "more than one number"), ("4 3000", Weight, "more than one"),
    ("1234 567", Weight, "more than one number"), ("0 300", Weight, "more than one number"),
    ("4,200 300", Weight, "more than one number"), ("4  300", Weight, "more than one number"),
    ("30 psi", Length, "is a stress"),
    ("1/0 lb", Weight, "divides by zero"), ("36 37", Length, "“36 37” is more than one number"),
    ("36 1/2 1/2", Length, "more than one number"), ("36-37", Length, "more than one number"),
    ("3' 6' ", Length, "more than one number"), ("3' 6 mm", Length, "more than one number"),
    ("36 in 1/2", Length, "more than one number"), ("½½", Length, "more than one"),
    ("36, 37", Length, "more than one number"), ("1 m 20 cm", Length, "more than one number"),
    ("1m20", Length, "more than one number"), ("12° 30'", Angle, "more than one number"),
    ("11/2", Length, "“11/2” may lack a space"), ("361/2\"", Length, "may lack a space"),
    ("3' 17/16", Length, "may lack a space"),
    ("36 lb", Length, "“36 lb” is a weight; this field takes a length such as 36 1/2, 3' 0 1/2\" or 927 mm."),
    ("36 in", Weight, "“36 in” is a length; this field takes a weight such as 4,200 lb or 1,905 kg."),
    ("36 ksi", Force, "is a stress; this field takes a force"),
    ("3 ft 6 in", Angle, "is a length; this field takes an angle in degrees"), ("10 kN", Stress, "is a force"),
    ("36 in lb", Length, "is a torque or a moment"), ("36 mm2", Length, "is an area"),
    ("500 lb/in", Weight, "is a stiffness"), ("12°", Length, "is an angle"),
    ("12 in", Count, "takes a plain number such as 2"), ("60 %", Length, "is a percentage"),
    ("2 turns", Length, "is a count"), ("120 ft-lb", Stiffness, "takes a number such as 500 lbf/in"),
    ("5 psi", Area, "takes a number in in² or mm²"),
    ("2 tons", Weight, "A “tons” can be 2,000 lb, 2,240 lb or 1,000 kg"),
    ("1e309", Length, "“e309” is not a unit known here"), ("1e3", Weight, "“e3” is not a unit"),
    ("36 furlongs", Length, "“furlongs” is not a unit known here"), ("36 in tall", Length, "“tall” is not a unit"),
    ("0x24", Length, "“x24” is not a unit"),
    ("abcdefghijklmnopqrstuvwxyz", Length, "“abcdefghijklmnopqrstuvw…” does not read"),
];

/// Value, kind, system, as shown.
#[rustfmt::skip]
pub(crate) const SHOWN: &[(f64, Kind, System, &str)] = &[
    (inch(36.5), Length, Inch, "36-1/2 in"), (inch(0.5), Length, Inch, "1/2 in"), (0.0, Length, Inch, "0 in"),
    (inch(-0.0625), Length, Inch, "-1/16 in"), (inch(-36.5), Length, Inch, "-36-1/2 in"),
    (inch(35.999), Length, Inch, "36 in"), (inch(1.03125), Length, Inch, "1-1/32 in"),
    (inch(-0.001), Length, Inch, "0 in"), (mm(927.0), Length, Inch, "36-1/2 in"),
    (mm(927.1), Length, Metric, "927.1 mm"), (mm(927.0), Length, Metric, "927.0 mm"),
    (mm(999.97), Length, Metric, "1000.0 mm"), (mm(1250.4), Length, Metric, "1250.4 mm"),
    (mm(-0.04), Length, Metric, "0.0 mm"), (inch(0.078), FineLength, Inch, "0.078 in"),
    (mm(1.98), FineLength, Metric, "1.98 mm"), (inch(-0.0001), FineLength, Inch, "0.000 in"),
    (lbf(4200.0), Weight, Inch, "4,200 lb"), (lbf(4200.0), Weight, Metric, "1,905 kg"),
    (lbf(11.38), Weight, Inch, "11.4 lb"), (lbf(99.97), Weight, Inch, "100 lb"), (lbf(999.6), Weight, Inch, "1,000 lb"),
    (lbf(1_234_567.0), Weight, Inch, "1,234,567 lb"), (lbf(-420.0), Weight, Inch, "-420 lb"),
    (lbf(-4200.0), Weight, Inch, "-4,200 lb"), (lbf(5391.2), Force, Inch, "5,391 lbf"),
    (lbf(5391.2), Force, Metric, "23.98 kN"), (lbf(12_346.0), Force, Inch, "12,350 lbf"),
    (512.34, Force, Metric, "512.3 N"), (999.96, Force, Metric, "1 kN"), (24e3, Force, Metric, "24 kN"),
    (ksi(58.4), Stress, Inch, "58.4 ksi"), (ksi(58.4), Stress, Metric, "403 MPa"), (ksi(66.0), Stress, Inch, "66 ksi"),
    (mpa(1034.2), Stress, Metric, "1,034 MPa"), (mpa(71_016.0), Stress, Metric, "71,020 MPa"),
    (psi(1500.0), Pressure, Inch, "1,500 psi"), (psi(87.5), Pressure, Inch, "87.5 psi"),
    (psi(1500.0), Pressure, Metric, "10.3 MPa"), (psi(9998.0), Pressure, Inch, "9,998 psi"),
    (psi(9999.8), Pressure, Inch, "10 ksi"), (ksi(12.5), Pressure, Inch, "12.5 ksi"),
    (ksi(999.97), Stress, Inch, "1,000 ksi"), (lbf_in(51_210.0), Moment, Inch, "51,210 lbf·in"),
    (lbf_in(51_210.0), Moment, Metric, "5.79 kN·m"), (565.4, Moment, Metric, "565 N·m"),
    (120.0 * POUND_FORCE * 12.0 * INCH, Torque, Inch, "120 lbf·ft"),
    (120.0 * POUND_FORCE * 12.0 * INCH, Torque, Metric, "163 N·m"), (in2(3.2), Area, Inch, "3.2 in²"),
    (in2(3.2468), Area, Inch, "3.247 in²"), (in2(3.2), Area, Metric, "2,065 mm²"),
    (in3(0.8), SectionModulus, Inch, "0.8 in³"), (in3(0.8), SectionModulus, Metric, "13,110 mm³"),
    (in4(0.8), SecondMoment, Inch, "0.8 in⁴"), (in4(0.8), SecondMoment, Metric, "333,000 mm⁴"),
    (1.0 / INCH, PerLength, Inch, "1 1/in"), (50.0, PerLength, Metric, "0.05 1/mm"),
    (inch(1.5), AreaPerLength, Inch, "1.5 in²/in"), (mm(38.1), AreaPerLength, Metric, "38.1 mm²/mm"),
    (lbf(500.0) / INCH, Stiffness, Inch, "500 lbf/in"), (lbf(500.0) / INCH, Stiffness, Metric, "87.56 N/mm"),
    (lb_per_in3(0.098), WeightDensity, Inch, "0.098 lb/in³"), (lb_per_in3(0.098), WeightDensity, Metric, "2,713 kg/m³"),
    (lbf(60_700.0) / INCH, ForcePerLength, Inch, "60,700 lbf/in"),
    (inch(0.25) / lbf(1000.0), Compliance, Inch, "0.25 in per 1,000 lbf"), (1.4e-6, Compliance, Metric, "1.4 mm/kN"),
    (deg(12.5), Angle, Inch, "12.5°"), (deg(-0.25), Angle, Metric, "-0.25°"), (1e-17, Angle, Inch, "0°"),
    (0.6, Percent, Inch, "60 %"), (0.625, Percent, Inch, "62.5 %"), (1.5, Ratio, Inch, "1.5"),
    (2.0 / 3.0, Ratio, Metric, "0.667"), (1250.0, Ratio, Inch, "1250"), (2.0, Count, Inch, "2"),
    (1.5, Count, Inch, "1.5"), (1.666, Count, Inch, "1.67"), (2.25, Turns, Inch, "2-1/4 turns"),
    (1.0, Turns, Inch, "1 turn"), (0.5, Turns, Inch, "1/2 turn"), (0.1, Turns, Inch, "0 turns"),
    (1.9, Turns, Inch, "2 turns"), (-0.5, Turns, Inch, "-1/2 turn"), (-1.25, Turns, Inch, "-1-1/4 turns"),
    (0.7485, InInches, Inch, "0.7485 in"), (14.701, InMillimeters, Metric, "14.701 mm"),
    (265.2, InMicrometers, Metric, "265 µm"), (12e10, Ratio, Inch, "1.2e11"), (0.000_123_4, Area, Metric, "123.4 mm²"),
    (in2(0.000_012_34), Area, Inch, "1.234e-5 in²"), (in2(0.000_123_4), Area, Inch, "0.0001234 in²"),
    (lbf(1e12), Weight, Inch, "1e12 lb"), (inch(1e12), Length, Inch, "1e12 in"), (f64::NAN, Length, Inch, "—"),
    (f64::INFINITY, Force, Metric, "—"), (f64::NEG_INFINITY, Turns, Inch, "—"), (-0.0, Ratio, Inch, "0"),
    (-0.0, Length, Inch, "0 in"), (f64::MAX, Stress, Inch, "2.607e301 ksi"),
];

/// Value, kind, system, as shown one step finer.
#[rustfmt::skip]
pub(crate) const SHOWN_FINE: &[(f64, Kind, System, &str)] = &[
    (inch(36.5), Length, Inch, "36.500 in"), (mm(927.1), Length, Metric, "927.10 mm"),
    (inch(0.0781), FineLength, Inch, "0.0781 in"), (mm(1.984), FineLength, Metric, "1.984 mm"),
    (lbf(5391.23), Force, Inch, "5,391.2 lbf"), (lbf(5391.23), Force, Metric, "23.981 kN"),
    (ksi(58.432), Stress, Inch, "58.432 ksi"), (lbf(4200.4), Weight, Inch, "4,200.4 lb"),
    (0.74853, InInches, Inch, "0.74853 in"), (14.7012, InMillimeters, Inch, "14.7012 mm"),
    (psi(1500.26), Pressure, Inch, "1,500.3 psi"), (999.996, Force, Metric, "1 kN"), (2.26, Turns, Inch, "2.26 turns"), (f64::NAN, Length, Metric, "—"),
];

/// Value, kind, system, as put back into a field.
#[rustfmt::skip]
pub(crate) const PLAIN: &[(f64, Kind, System, &str)] = &[
    (inch(36.5), Length, Inch, "36 1/2"), (inch(36.0), Length, Inch, "36"), (inch(0.5), Length, Inch, "1/2"),
    (inch(-36.5), Length, Inch, "-36 1/2"), (0.0, Length, Inch, "0"), (inch(1.0 / 64.0), Length, Inch, "1/64"),
    (mm(927.0), Length, Inch, "36.4961"), (mm(927.0), Length, Metric, "927"), (inch(36.5), Length, Metric, "927.1"),
    (inch(0.078_125), FineLength, Inch, "0.078125"), (lbf(4200.0), Weight, Inch, "4200"),
    (psi(1500.0), Pressure, Inch, "1500"), (deg(12.5), Angle, Inch, "12.5"), (0.6, Percent, Inch, "60"), (1.2345, Ratio, Inch, "1.2345"),
    (24_500.0, Force, Metric, "24500"), (f64::NAN, Length, Inch, ""), (-0.0, Ratio, Inch, "0"),
];

/// Every kind.
#[rustfmt::skip]
pub(crate) const KINDS: &[Kind] = &[
    Ratio, Percent, Count, Turns, Length, FineLength, PerLength, Area, AreaPerLength, SectionModulus, SecondMoment,
    Angle, Force, Weight, WeightDensity, ForcePerLength, Stress, Pressure, Moment, Stiffness, Compliance, Torque,
    InInches, InMillimeters, InMicrometers,
];
