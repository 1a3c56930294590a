//! What a shop's machines can do, how long handling takes, the tolerances it works to, and what its saw needs:
//! assumptions that can be set, and are kept as a line each.

use crate::engine::shop::cut_plan::Saw;
use crate::quantity::{exceeds, inch, mm};
use crate::source::{Cite, OURS, Obtained, PRACTICE, cite};

/// What a setting measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measures {
    /// Turns of a spindle in a minute.
    Rpm,
    /// Minutes.
    Minutes,
    /// A length, m.
    Length,
}

/// One value that a shop can set.
#[derive(Debug, PartialEq)]
pub struct Setting {
    /// Never reused once released.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// What it measures.
    pub measures: Measures,
    /// The value taken when none is set.
    pub default: f64,
    /// Least and most that is accepted.
    pub range: [f64; 2],
    /// What stands behind the default.
    pub cite: Cite,
}

const MACHINE: Cite = cite(&OURS, "machines of a small shop", Obtained::Assumption);
const HANDLING: Cite = cite(&OURS, "setting, handling and measuring in a small shop", Obtained::Assumption);
const TOLERANCE: Cite = cite(&OURS, "what a small shop holds without effort", Obtained::Assumption);
const HABIT: Cite = cite(&PRACTICE, "insert that slips into a tube", Obtained::Practice);
const SAWING: Cite = cite(&OURS, "a band saw in a small shop", Obtained::Assumption);
const BUYING: Cite = cite(&OURS, "a length that bar and tube are sold in", Obtained::Assumption);

macro_rules! settings {
    ($($(#[doc = $doc:literal])+ $name:ident $id:literal $label:literal $measures:ident $default:expr, $least:expr => $most:expr, $cite:expr;)+) => {
        $($(#[doc = $doc])+ pub static $name: Setting = Setting {
            id: $id,
            label: $label,
            measures: Measures::$measures,
            default: $default,
            range: [$least, $most],
            cite: $cite,
        };)+
        /// Every setting, in the order of a form.
        pub static SETTINGS: &[&Setting] = &[$(&$name),+];
    };
}

settings! {
    /// Fastest spindle speed.
    MOST_RPM "most-rpm" "Fastest spindle speed" Rpm 1800.0, 50.0 => 30_000.0, MACHINE;
    /// Slowest spindle speed.
    LEAST_RPM "least-rpm" "Slowest spindle speed" Rpm 60.0, 1.0 => 5000.0, MACHINE;
    /// Fastest spindle speed for tapping.
    MOST_TAP_RPM "most-tap-rpm" "Fastest spindle speed for tapping" Rpm 300.0, 5.0 => 5000.0, MACHINE;
    /// Minutes to pull and check the stock.
    STOCK_MINUTES "stock-minutes" "Pull and check the stock" Minutes 3.0, 0.0 => 240.0, HANDLING;
    /// Minutes to saw.
    SAW_MINUTES "saw-minutes" "Saw" Minutes 5.0, 0.0 => 240.0, HANDLING;
    /// Minutes to face both ends.
    FACE_MINUTES "face-minutes" "Face both ends to length" Minutes 8.0, 0.0 => 240.0, HANDLING;
    /// Minutes to center drill one end.
    CENTER_MINUTES "center-minutes" "Center drill, each end" Minutes 1.0, 0.0 => 240.0, HANDLING;
    /// Minutes to change the drill and clear chips at one end, beside the cutting.
    DRILL_MINUTES "drill-minutes" "Tap drill, each end: handling" Minutes 3.0, 0.0 => 240.0, HANDLING;
    /// Minutes to countersink one end.
    COUNTERSINK_MINUTES "countersink-minutes" "Countersink, each end" Minutes 1.0, 0.0 => 240.0, HANDLING;
    /// Minutes to set the tap and oil it at one end, beside the cutting.
    TAP_MINUTES "tap-minutes" "Tap, each end: handling" Minutes 4.0, 0.0 => 240.0, HANDLING;
    /// Minutes to gauge one thread.
    GAUGE_MINUTES "gauge-minutes" "Gauge, each end" Minutes 2.0, 0.0 => 240.0, HANDLING;
    /// Minutes to set up the skim pass, beside the cutting.
    SKIM_MINUTES "skim-minutes" "Skim pass: handling" Minutes 6.0, 0.0 => 240.0, HANDLING;
    /// Minutes to mill the flats.
    FLATS_MINUTES "flats-minutes" "Mill the wrench flats" Minutes 10.0, 0.0 => 240.0, HANDLING;
    /// Minutes to turn one insert.
    INSERT_MINUTES "insert-minutes" "Turn and drill an insert, each end" Minutes 15.0, 0.0 => 240.0, HANDLING;
    /// Minutes to fit and weld one insert, cooling not counted.
    WELD_MINUTES "weld-minutes" "Fit and weld an insert, each end" Minutes 12.0, 0.0 => 240.0, HANDLING;
    /// Minutes to deburr, wash and blow out.
    CLEAN_MINUTES "clean-minutes" "Deburr, wash and blow out" Minutes 5.0, 0.0 => 240.0, HANDLING;
    /// Minutes to mark.
    MARK_MINUTES "mark-minutes" "Mark the ends" Minutes 2.0, 0.0 => 240.0, HANDLING;
    /// Minutes to try the rod ends.
    TRIAL_MINUTES "trial-minutes" "Try both rod ends" Minutes 4.0, 0.0 => 240.0, HANDLING;
    /// Minutes to measure what was made.
    MEASURE_MINUTES "measure-minutes" "Measure and record" Minutes 5.0, 0.0 => 240.0, HANDLING;
    /// Minutes to protect and pack.
    PACK_MINUTES "pack-minutes" "Protect and pack" Minutes 5.0, 0.0 => 240.0, HANDLING;
    /// How far the finished length may be off, either way.
    LENGTH_TOLERANCE "length-tolerance" "Tolerance of the bar's length" Length inch(0.01), mm(0.01) => inch(0.25), TOLERANCE;
    /// How far a turned diameter may be off, either way.
    DIAMETER_TOLERANCE "diameter-tolerance" "Tolerance of a turned diameter" Length inch(0.005), mm(0.005) => inch(0.05), TOLERANCE;
    /// How far the width across the flats may be under.
    FLATS_TOLERANCE "flats-tolerance" "Tolerance across the flats, under" Length inch(0.01), mm(0.01) => inch(0.05), TOLERANCE;
    /// How far the hole may be deeper than asked for.
    DEPTH_TOLERANCE "depth-tolerance" "Tolerance of a depth, over" Length inch(1.0 / 16.0), mm(0.1) => inch(0.25), TOLERANCE;
    /// How much smaller than the tube's bore an insert is turned.
    INSERT_CLEARANCE "insert-clearance" "Insert smaller than the tube's bore by" Length inch(0.004), 0.0 => inch(0.0625), HABIT;
    /// Width of the saw's cut.
    SAW_KERF "saw-kerf" "Width of the saw cut" Length Saw::ASSUMED.kerf, 0.0 => inch(0.5), SAWING;
    /// What falls off both ends of a bar.
    SAW_TRIM "saw-trim" "Trimmed off each end of a bar" Length Saw::ASSUMED.trim, 0.0 => inch(12.0), SAWING;
    /// What the saw holds of a bar at its last cut.
    SAW_GRIP "saw-grip" "Held by the saw at the last cut" Length Saw::ASSUMED.grip, 0.0 => inch(24.0), SAWING;
    /// How long a piece left over must be to be kept.
    SAW_KEEP "saw-keep" "Keep remnants from this length on" Length Saw::ASSUMED.keep, 0.0 => inch(120.0), SAWING;
    /// How long bars are that no list names.
    STOCK_LENGTH "stock-length" "Length of bars that are not in your lists" Length inch(144.0), inch(12.0) => inch(480.0), BUYING;
}

/// Those of them that a cut plan goes by.
pub static SAW: [&Setting; 5] = [&SAW_KERF, &SAW_TRIM, &SAW_GRIP, &SAW_KEEP, &STOCK_LENGTH];

/// Those of them that a route sheet goes by, in the order of a form.
pub fn of_the_route() -> impl Iterator<Item = &'static Setting> {
    SETTINGS.iter().copied().filter(|setting| !SAW.contains(setting))
}

/// A slowest speed and a fastest one that may not be below it.
static SLOWEST_TO_FASTEST: [[&Setting; 2]; 2] = [[&LEAST_RPM, &MOST_RPM], [&LEAST_RPM, &MOST_TAP_RPM]];

/// Why a value is not taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Refused {
    /// It is out of the range of its setting.
    OutOfRange,
    /// The slowest speed would be above the fastest one.
    Crossed {
        /// The slowest speed.
        slowest: &'static Setting,
        /// The fastest one.
        fastest: &'static Setting,
    },
}

/// What one shop has set; what it has not set is the default.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Machine {
    set: Vec<(&'static str, f64)>,
}

impl Machine {
    /// The value in force.
    pub fn in_force(&self, setting: &Setting) -> f64 {
        self.decided(setting).unwrap_or(setting.default)
    }

    /// The saw as it is set.
    pub fn saw(&self) -> Saw {
        let [kerf, trim, grip, keep] =
            [&SAW_KERF, &SAW_TRIM, &SAW_GRIP, &SAW_KEEP].map(|setting| self.in_force(setting));
        Saw { kerf, trim, grip, keep }
    }

    /// What the shop has set.
    pub fn decided(&self, setting: &Setting) -> Option<f64> {
        self.set.iter().find(|(id, _)| *id == setting.id).map(|(_, value)| *value)
    }

    /// The fastest that the spindle turns a tap.
    pub fn fastest_tapping(&self) -> f64 {
        self.in_force(&MOST_TAP_RPM).min(self.in_force(&MOST_RPM))
    }

    /// Sets a value, or takes it back.
    ///
    /// # Errors
    /// Why not: it is out of its range, or would put a slowest speed above a fastest one. Nothing is changed then.
    pub fn set(&mut self, setting: &'static Setting, value: Option<f64>) -> Result<(), Refused> {
        let [least, most] = setting.range;
        if value.is_some_and(|value| !(least..=most).contains(&value)) {
            return Err(Refused::OutOfRange);
        }
        let mut changed = self.clone();
        changed.put(setting, value);
        if let Some([slowest, fastest]) = changed.crossed().find(|pair| pair.contains(&setting)) {
            return Err(Refused::Crossed { slowest, fastest });
        }
        *self = changed;
        Ok(())
    }

    /// Takes several back at once, whatever stood between them.
    pub fn reset(&mut self, settings: impl Iterator<Item = &'static Setting>) {
        for setting in settings {
            self.put(setting, None);
        }
    }

    fn put(&mut self, setting: &'static Setting, value: Option<f64>) {
        self.set.retain(|(id, _)| *id != setting.id);
        self.set.extend(value.map(|value| (setting.id, value)));
    }

    /// Pairs of settings whose slowest speed is above their fastest.
    fn crossed(&self) -> impl Iterator<Item = [&'static Setting; 2]> {
        SLOWEST_TO_FASTEST
            .into_iter()
            .filter(|[slowest, fastest]| exceeds(self.in_force(slowest), self.in_force(fastest)))
    }
}

/// What a shop has set, as a text to keep: a line each, `id=value`, lengths in meters.
pub fn write(machine: &Machine) -> String {
    let lines = SETTINGS.iter().filter_map(|setting| {
        let value = machine.decided(setting)?;
        Some(format!("{}={value}\n", setting.id))
    });
    lines.collect()
}

/// What was kept, read. A line that names no setting, or a value that its setting does not take, is left out, and so are
/// a slowest speed and a fastest one below it: then the default stands.
pub fn read(text: &str) -> Machine {
    let mut machine = Machine::default();
    for line in text.lines() {
        let Some((id, value)) = line.split_once('=') else { continue };
        if let (Some(setting), Ok(value)) = (setting(id.trim()), value.trim().parse::<f64>()) {
            let [least, most] = setting.range;
            if (least..=most).contains(&value) {
                machine.put(setting, Some(value));
            }
        }
    }
    let crossed: Vec<&Setting> = machine.crossed().flatten().collect();
    machine.set.retain(|(id, _)| crossed.iter().all(|setting| setting.id != *id));
    machine
}

/// The setting with an id.
pub fn setting(id: &str) -> Option<&'static Setting> {
    SETTINGS.iter().copied().find(|setting| setting.id == id)
}
