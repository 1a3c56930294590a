//! Hardware: nuts, bolts, rod ends, drills and taps as their tables hold them.

use super::Tolerance::{Absolute, Exact};
use super::rows;
use crate::engine::formulas::pins::EYE_AREA;
use crate::engine::tables::bolts::{self, BoltStrength};
use crate::engine::tables::drills::{self, CuttingSpeed, Feed, Tap};
use crate::engine::tables::jam_nuts::{self, JamNut};
use crate::engine::tables::rod_ends::{self, RodEnd};
use crate::engine::tables::threads;
use crate::quantity::{KSI, in2, inch, mm};

const ISO_4035: &str = "ISO 4035 table in public reprints";
const B18_2_2: &str = "ASME B18.2.2-2015 in Machinery's Handbook 31, p. 1677, Table 7";
const J429: &str = "SAE J429 in Shigley 9e, p. 433, Table 8-9";
const AS81935: &str = "SAE AS81935/1A, Table 1 (public preview)";
const TAP_DRILLS: &str = "Machinery's Handbook 31, p. 2168, Table 4 (scanned decimals)";
const TM_9_254: &str = "US Army TM 9-254, par. 4-27d";
const NAVEDTRA: &str = "US Navy NAVEDTRA 14345, drills of high-speed steel";

/// Something about a jam nut; NaN when the table does not hold it.
fn nut(size: &str, value: impl Fn(&JamNut) -> f64) -> f64 {
    jam_nuts::ALL.iter().find(|row| row.size == size).map_or(f64::NAN, value)
}

fn least_thickness(size: &str) -> f64 {
    nut(size, |row| row.thickness_min.unwrap_or(f64::NAN))
}

fn bolt(grade: &str, diameter: f64, value: impl Fn(&BoltStrength) -> f64) -> f64 {
    bolts::find(grade).and_then(|grade| grade.strength(inch(diameter))).map_or(f64::NAN, value)
}

fn rod_end(id: &str, value: impl Fn(&RodEnd) -> f64) -> f64 {
    rod_ends::find(id).map_or(f64::NAN, value)
}

fn eye_area(id: &str) -> f64 {
    rod_end(id, |row| EYE_AREA.value(&[row.head_diameter, row.race_bore.unwrap_or(f64::NAN), row.head_width]))
}

fn tap_drill(thread: &str) -> f64 {
    threads::find(thread).and_then(drills::tap_drill).map_or(f64::NAN, |listed| listed.drill.diameter)
}

fn tap(id: &str, value: impl Fn(&Tap) -> f64) -> f64 {
    drills::TAPS.iter().find(|row| row.id == id).map_or(f64::NAN, value)
}

fn speed(id: &str, value: impl Fn(&CuttingSpeed) -> f64) -> f64 {
    drills::DRILLING_SPEEDS.iter().find(|row| row.id == id).map_or(f64::NAN, value)
}

/// Something about the feed of a drill that is well inside its range, inches.
fn feed(diameter: f64, value: impl Fn(&Feed) -> f64) -> f64 {
    drills::FEEDS.iter().find(|row| inch(diameter) > row.over && inch(diameter) <= row.up_to).map_or(f64::NAN, value)
}

rows! {
    "Jam nuts" {
        "nut-m12-thickness", "M12 thin nut: largest thickness" = 6.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M12", |row| row.thickness_max);
        "nut-m12-flats", "M12 thin nut: largest width across flats" = 18.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M12", |row| row.across_flats_max);
        "nut-m14-least", "M14 thin nut: least thickness" = 6.42 "mm" in mm(1.0), Exact; ISO_4035, Copied => least_thickness("M14");
        "nut-m14-flats", "M14 thin nut: largest width across flats" = 21.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M14", |row| row.across_flats_max);
        "nut-m16-least", "M16 thin nut: least thickness" = 7.42 "mm" in mm(1.0), Exact; ISO_4035, Copied => least_thickness("M16");
        "nut-m18-thickness", "M18 thin nut: largest thickness" = 9.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M18", |row| row.thickness_max);
        "nut-m18-least", "M18 thin nut: least thickness" = 8.42 "mm" in mm(1.0), Exact; ISO_4035, Copied => least_thickness("M18");
        "nut-m20-thickness", "M20 thin nut: largest thickness" = 10.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M20", |row| row.thickness_max);
        "nut-m20-flats", "M20 thin nut: largest width across flats" = 30.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M20", |row| row.across_flats_max);
        "nut-m24-thickness", "M24 thin nut: largest thickness" = 12.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M24", |row| row.thickness_max);
        "nut-m24-flats", "M24 thin nut: largest width across flats" = 36.0 "mm" in mm(1.0), Exact; ISO_4035, Copied => nut("M24", |row| row.across_flats_max);
        "nut-1-2-least", "1/2 in jam nut: least thickness" = 0.302 "in" in inch(1.0), Exact; B18_2_2, Copied => least_thickness("1/2");
        "nut-5-8-thickness", "5/8 in jam nut: largest thickness" = 0.387 "in" in inch(1.0), Exact; B18_2_2, Copied => nut("5/8", |row| row.thickness_max);
        "nut-5-8-least", "5/8 in jam nut: least thickness" = 0.363 "in" in inch(1.0), Exact; B18_2_2, Copied => least_thickness("5/8");
        "nut-3-4-thickness", "3/4 in jam nut: largest thickness" = 0.446 "in" in inch(1.0), Exact; B18_2_2, Copied => nut("3/4", |row| row.thickness_max);
        "nut-3-4-flats", "3/4 in jam nut: largest width across flats" = 1.125 "in" in inch(1.0), Exact; B18_2_2, Copied => nut("3/4", |row| row.across_flats_max);
        "nut-7-8-thickness", "7/8 in jam nut: largest thickness" = 0.51 "in" in inch(1.0), Exact; B18_2_2, Copied => nut("7/8", |row| row.thickness_max);
        "nut-7-8-flats", "7/8 in jam nut: largest width across flats" = 1.312 "in" in inch(1.0), Exact; B18_2_2, Copied => nut("7/8", |row| row.across_flats_max);
        "nut-1-least", "1 in jam nut: least thickness" = 0.519 "in" in inch(1.0), Exact; B18_2_2, Copied => least_thickness("1");
        "nut-1-flats", "1 in jam nut: largest width across flats" = 1.5 "in" in inch(1.0), Exact; B18_2_2, Copied => nut("1", |row| row.across_flats_max);
        "nut-1-1-4-least", "1-1/4 in jam nut: least thickness" = 0.687 "in" in inch(1.0), Exact; B18_2_2, Copied => least_thickness("1-1/4");
    }
    "Bolts" {
        "grade-5-proof", "Grade 5, 1/4 to 1 in: proof strength" = 85.0 "ksi" in KSI, Exact; J429, Copied => bolt("grade-5", 0.75, |row| row.proof);
        "grade-5-ultimate", "Grade 5, 1/4 to 1 in: tensile strength" = 120.0 "ksi" in KSI, Exact; J429, Copied => bolt("grade-5", 0.75, |row| row.ultimate);
        "grade-5-large-proof", "Grade 5, 1-1/8 to 1-1/2 in: proof strength" = 74.0 "ksi" in KSI, Exact; J429, Copied => bolt("grade-5", 1.25, |row| row.proof);
        "grade-5-large-yield", "Grade 5, 1-1/8 to 1-1/2 in: yield strength" = 81.0 "ksi" in KSI, Exact; J429, Copied => bolt("grade-5", 1.25, |row| row.yield_strength);
        "grade-8-proof", "Grade 8, 1/4 to 1-1/2 in: proof strength" = 120.0 "ksi" in KSI, Exact; J429, Copied => bolt("grade-8", 0.75, |row| row.proof);
        "grade-8-yield", "Grade 8, 1/4 to 1-1/2 in: yield strength" = 130.0 "ksi" in KSI, Exact; J429, Copied => bolt("grade-8", 0.75, |row| row.yield_strength);
    }
    "Rod ends" {
        "dash-12-bore", "Dash 12, 3/4-16: bore" = 0.75 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-12", |row| row.bore);
        "dash-12-thread", "Dash 12, 3/4-16: thread length" = 1.687 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-12", |row| row.thread_length);
        "dash-12-ball", "Dash 12, 3/4-16: ball width" = 0.875 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-12", |row| row.ball_width);
        "dash-12-head", "Dash 12, 3/4-16: head width" = 0.64 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-12", |row| row.head_width);
        "dash-16-bore", "Dash 16, 1-1/4-12: bore" = 1.0 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-16", |row| row.bore);
        "dash-16-eye", "Dash 16, 1-1/4-12: eye center to shank end" = 4.125 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-16", |row| row.eye_to_end);
        "dash-16-thread", "Dash 16, 1-1/4-12: thread length" = 2.343 "in" in inch(1.0), Exact; AS81935, Read => rod_end("wide-16", |row| row.thread_length);
        "dash-10-eye-area", "Dash 10, 5/8-18: metal on both sides of the ball" = 0.1947375 "in²" in in2(1.0), Absolute(0.0005); "printed sizes, mpmath 1.4.1", Computed => eye_area("wide-10");
        "dash-14-eye-area", "Dash 14, 7/8-14: metal on both sides of the ball" = 0.306 "in²" in in2(1.0), Absolute(0.0005); "printed sizes, mpmath 1.4.1", Computed => eye_area("wide-14");
        "dash-16-eye-area", "Dash 16, 1-1/4-12: metal on both sides of the ball" = 0.65975 "in²" in in2(1.0), Absolute(0.0005); "printed sizes, mpmath 1.4.1", Computed => eye_area("wide-16");
    }
    "Drills and taps" {
        "tap-drill-3-8-24", "3/8-24: tap drill" = 0.332 "in" in inch(1.0), Absolute(0.0001); TAP_DRILLS, Copied => tap_drill("3/8-24");
        "tap-drill-1-2-20", "1/2-20: tap drill" = 0.4531 "in" in inch(1.0), Absolute(0.0001); TAP_DRILLS, Copied => tap_drill("1/2-20");
        "tap-drill-3-4-16", "3/4-16: tap drill" = 0.6875 "in" in inch(1.0), Absolute(0.0001); TAP_DRILLS, Copied => tap_drill("3/4-16");
        "tap-drill-7-8-14", "7/8-14: tap drill" = 0.8125 "in" in inch(1.0), Absolute(0.0001); TAP_DRILLS, Copied => tap_drill("7/8-14");
        "tap-drill-1-14", "1-14: tap drill" = 0.9375 "in" in inch(1.0), Absolute(0.0001); TAP_DRILLS, Copied => tap_drill("1-14");
        "tap-drill-1-1-2-12", "1-1/2-12: tap drill" = 1.4219 "in" in inch(1.0), Absolute(0.0001); TAP_DRILLS, Copied => tap_drill("1-1/2-12");
        "taper-most", "Taper tap: most threads of chamfer" = 10.0 "" in 1.0, Exact; TM_9_254, Read => tap("taper", |row| row.chamfer[1]);
        "plug-least", "Plug tap: least threads of chamfer" = 3.0 "" in 1.0, Exact; TM_9_254, Read => tap("plug", |row| row.chamfer[0]);
        "plug-most", "Plug tap: most threads of chamfer" = 5.0 "" in 1.0, Exact; TM_9_254, Read => tap("plug", |row| row.chamfer[1]);
        "bottoming-least", "Bottoming tap: least threads of chamfer" = 1.0 "" in 1.0, Exact; TM_9_254, Read => tap("bottoming", |row| row.chamfer[0]);
        "speed-low-carbon", "Drilling low-carbon steel: highest speed" = 110.0 "ft/min" in 1.0, Exact; NAVEDTRA, Read => speed("low-carbon-steel", |row| row.feet_per_minute[1]);
        "speed-alloy", "Drilling alloy steel: lowest speed" = 50.0 "ft/min" in 1.0, Exact; NAVEDTRA, Read => speed("alloy-steel", |row| row.feet_per_minute[0]);
        "speed-aluminum-least", "Drilling aluminum: lowest speed" = 200.0 "ft/min" in 1.0, Exact; NAVEDTRA, Read => speed("aluminum", |row| row.feet_per_minute[0]);
        "speed-aluminum-most", "Drilling aluminum: highest speed" = 300.0 "ft/min" in 1.0, Exact; NAVEDTRA, Read => speed("aluminum", |row| row.feet_per_minute[1]);
        "speed-stainless", "Drilling stainless steel: highest speed" = 40.0 "ft/min" in 1.0, Exact; NAVEDTRA, Read => speed("stainless-steel", |row| row.feet_per_minute[1]);
        "feed-small-most", "Drills of 1/4 to 1/2 in: largest feed for a turn" = 0.007 "in" in inch(1.0), Exact; NAVEDTRA, Read => feed(0.375, |row| row.per_turn[1]);
        "feed-middle-least", "Drills of 1/2 to 1 in: least feed for a turn" = 0.007 "in" in inch(1.0), Exact; NAVEDTRA, Read => feed(0.75, |row| row.per_turn[0]);
        "feed-large-least", "Drills over 1 in: least feed for a turn" = 0.015 "in" in inch(1.0), Exact; NAVEDTRA, Read => feed(1.25, |row| row.per_turn[0]);
    }
}
