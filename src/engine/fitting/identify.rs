//! Which thread, which hand, which rod end: told from readings, and never a guess shown as certain.

mod rod_end;

pub use rod_end::{READING_SOURCE, RodEndFound, RodEndReadings, rod_end};

use super::Standing;
use crate::document::Hand;
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::fastening;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::threads::{self, Thread};
use crate::quantity::{Kind, exceeds, inch, mm};
use crate::source::{Cite, OURS, Obtained, cite};

/// How far a caliper on a thread may be off, either way.
pub const CALIPER_ERROR: f64 = mm(0.1);
/// Nobody publishes it for a dirty shank.
pub const CALIPER_SOURCE: Cite = cite(&OURS, "how closely a caliper reads on a shank", Obtained::Assumption);

/// How many threads a count may be off.
pub const MISCOUNT: f64 = 1.0;
/// Nobody publishes it.
pub const COUNT_SOURCE: Cite = cite(&OURS, "a count is good to one thread", Obtained::Assumption);

/// How far a leaf of a thread gauge still seems to fit, as a share of its pitch.
const LEAF: f64 = 0.02;

/// What was read on a male thread.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ThreadReadings {
    /// Over the crests, by caliper.
    pub major: Option<f64>,
    /// Threads that were counted.
    pub counted: Option<f64>,
    /// Over which length.
    pub over: Option<f64>,
    /// Pitch of the leaf of a thread gauge that fits, inch or metric.
    pub leaf: Option<f64>,
}

/// What thread it is.
#[derive(Debug, Clone, PartialEq)]
pub struct ThreadFound {
    /// Good where both readings leave one thread; a name from one reading alone is not judged.
    pub standing: Standing,
    /// The threads that it can be, the nearest first.
    pub candidates: Vec<&'static Thread>,
    /// The answer.
    pub says: Said,
    /// What would tell them apart.
    pub next: Option<Said>,
    /// The working.
    pub working: Vec<Line>,
}

/// A pitch with how far it may be off.
type Pitch = (f64, f64);

/// Tells a male thread from its readings.
pub fn thread(readings: ThreadReadings) -> ThreadFound {
    let mut sheet = Sheet::recording();
    let usable = |value: &f64| value.is_finite() && *value > 0.0;
    let major = readings.major.filter(usable);
    let counted = readings.counted.filter(usable).zip(readings.over.filter(usable)).map(|(threads, over)| {
        let pitch = sheet.work(&fastening::COUNTED_PITCH, &[over, threads]);
        sheet.look_up("Threads a count may be off", MISCOUNT, Kind::Count, "by eye", COUNT_SOURCE);
        (pitch, sheet.work(&fastening::PITCH_ERROR, &[pitch, MISCOUNT, threads]))
    });
    let leaf = readings.leaf.filter(usable).map(|leaf| (leaf, LEAF * leaf));
    if let Some(((count, count_off), (leaf, leaf_off))) = counted.zip(leaf)
        && exceeds((count - leaf).abs(), count_off + leaf_off)
    {
        let says = said![
            "Not judged: the count makes the pitch ",
            (count, FineLength),
            " and the leaf of the gauge says ",
            (leaf, FineLength),
            ". One of the two is wrong: count again over 1 in or more."
        ];
        return open(says, sheet);
    }
    let pitch = leaf.or(counted);
    match (major, pitch) {
        (None, None) => open(
            said!["Not judged: measure over the threads with a caliper, and count the threads over 1 in or more."],
            sheet,
        ),
        (None, Some(_)) => open(said!["Not judged: the diameter over the threads, by caliper, is missing."], sheet),
        (Some(major), pitch) => {
            sheet.look_up("Error of the caliper", CALIPER_ERROR, Kind::FineLength, "over the crests", CALIPER_SOURCE);
            among(major, pitch, sheet)
        }
    }
}

fn open(says: Said, sheet: Sheet) -> ThreadFound {
    ThreadFound { standing: Standing::NotJudged, candidates: Vec::new(), says, next: None, working: sheet.lines }
}

/// The diameters that a caliper can read on a thread: class 2A or 6g at its least, and the basic diameter, which a rod
/// end of class 3A may have, at its most.
pub fn window(thread: &Thread) -> [f64; 2] {
    [thread.limits().external_major_min - CALIPER_ERROR, thread.major + CALIPER_ERROR]
}

fn fits_major(thread: &Thread, major: f64) -> bool {
    let [least, most] = window(thread);
    !exceeds(least, major) && !exceeds(major, most)
}

fn fits_pitch(thread: &Thread, (pitch, off): Pitch) -> bool {
    !exceeds((thread.pitch - pitch).abs(), off)
}

fn among(major: f64, pitch: Option<Pitch>, mut sheet: Sheet) -> ThreadFound {
    let mut found: Vec<&'static Thread> = threads::ALL
        .iter()
        .filter(|thread| fits_major(thread, major) && pitch.is_none_or(|pitch| fits_pitch(thread, pitch)))
        .collect();
    let off = |thread: &Thread| {
        let by_pitch = pitch.map_or(0.0, |(pitch, _)| (thread.pitch - pitch).abs() / thread.pitch);
        (thread.major - major).abs() / thread.major + by_pitch
    };
    found.sort_by(|a, b| off(a).total_cmp(&off(b)));
    for thread in &found {
        let [least, most] = [thread.limits().external_major_min, thread.major];
        sheet.look_up("Least diameter over the threads", least, Kind::FineLength, thread.label, thread.cite);
        sheet.look_up("Basic diameter over the threads", most, Kind::FineLength, thread.label, thread.cite);
    }
    let (standing, says, next) = match (found.as_slice(), pitch) {
        ([], pitch) => (Standing::NotJudged, none_of_ours(major, pitch), None),
        ([one], Some(_)) => {
            let says = said![
                "It is ",
                (one.label),
                ", by its diameter and its pitch. The hand is not told by either: look which way the thread rises."
            ];
            (Standing::Good, says, None)
        }
        ([one], None) => {
            let says = said![
                "By its diameter it can be ",
                (one.label),
                " and no other thread of ours, but its pitch is not read: not judged."
            ];
            (Standing::NotJudged, says, Some(counts(&found)))
        }
        (several, pitch) => {
            let names: Vec<&str> = several.iter().map(|thread| thread.label).collect();
            let read = if pitch.is_some() { "Both readings fit" } else { "The diameter fits" };
            let says = said![(read), " ", (names.join(" and ")), ": not judged until something tells them apart."];
            (Standing::NotJudged, says, Some(counts(&found)))
        }
    };
    ThreadFound { standing, candidates: found, says, next, working: sheet.lines }
}

/// Over this length a count tells most threads apart.
const COUNT_OVER: f64 = inch(1.0);

/// How many threads each shows over a length, or that only a gauge tells them apart.
fn counts(candidates: &[&'static Thread]) -> Said {
    let mut said = said!["Lay a ruler along the thread and count over ", (COUNT_OVER, Length), ":"];
    for (at, thread) in candidates.iter().enumerate() {
        let before = if at == 0 { " " } else { ", " };
        said.extend(said![(before), (COUNT_OVER / thread.pitch, Ratio), " threads are ", (thread.label)]);
    }
    let close = candidates.iter().enumerate().any(|(at, a)| {
        candidates.iter().skip(at + 1).any(|b| {
            let [a, b] = [COUNT_OVER / a.pitch, COUNT_OVER / b.pitch];
            (a - b).abs() <= 1.5 * MISCOUNT
        })
    });
    said.extend(if close {
        said![". Counts this close are told apart by a thread gauge, or over twice the length."]
    } else {
        said!["."]
    });
    said
}

fn none_of_ours(major: f64, pitch: Option<Pitch>) -> Said {
    let mut says = said!["No thread of ours measures ", (major, FineLength)];
    if let Some((pitch, _)) = pitch {
        says.extend(said![" over the crests with a pitch of ", (pitch, FineLength)]);
    } else {
        says.extend(said![" over the crests"]);
    }
    let nearest = |a: &&Thread, b: &&Thread| (a.major - major).abs().total_cmp(&(b.major - major).abs());
    if let Some(near) = threads::ALL.iter().min_by(nearest) {
        says.extend(said![
            ". The nearest by diameter is ",
            (near.label),
            ", ",
            (near.limits().external_major_min, FineLength),
            " to ",
            (near.major, FineLength),
            ". Clean the thread and measure both again; do not force a nut on it."
        ]);
    }
    says
}

/// How a thread slopes, the shank held upright in front of you.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slope {
    /// The thread you see rises to the right.
    RisesRight,
    /// It rises to the left.
    RisesLeft,
}

/// The hand of a thread from its slope; turned end for end it stays the same.
pub const fn hand(slope: Slope) -> Hand {
    match slope {
        Slope::RisesRight => Hand::Right,
        Slope::RisesLeft => Hand::Left,
    }
}

/// What the slope of a thread says of its hand.
pub fn hand_says(slope: Option<Slope>) -> (Standing, Said) {
    let Some(slope) = slope else {
        return (Standing::NotJudged, said!["Not judged: hold the shank upright and say which way its thread rises."]);
    };
    let (way, turn) = match hand(slope) {
        Hand::Right => ("right", "clockwise"),
        Hand::Left => ("left", "counterclockwise"),
    };
    let says = said![
        "It rises to the ",
        (way),
        ": ",
        (hand(slope).words()),
        ". Its jam nut runs up ",
        (turn),
        ", seen from the end it goes on from. Prove it with a nut you know: it must start by hand."
    ];
    (Standing::Good, says)
}
