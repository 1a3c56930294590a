//! The torque card: one range for each jam nut, one torque for each bolt, and what an adapter changes.

use super::Standing;
use super::hands::nut_tightens;
use crate::document::{Document, Hand};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::fastening;
use crate::engine::given::Values;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::bolt_torque;
use crate::engine::tables::bolts::Grade;
use crate::engine::tables::jam_torque::{self, TorqueRange};
use crate::engine::tables::threads::Thread;
use crate::quantity::{Kind, inch};
use crate::report::{Answer, EndGeometry};
use crate::source::{Cite, Obtained, PRACTICE, cite};

/// What is tightened at one end.
#[derive(Debug, Clone, PartialEq)]
pub struct EndTorque {
    /// Thread of the shank and its jam nut.
    pub thread: &'static Thread,
    /// Its hand.
    pub hand: Hand,
    /// The one range of the jam nut: anti-seize on the shank, nut against the bar.
    pub jam_nut: TorqueRange,
    /// Where its torque stands, or what stands in for a printed one.
    pub jam_nut_source: Cite,
    /// Width across the flats of the jam nut.
    pub across: f64,
    /// Which way it tightens and what to hold.
    pub how: Said,
    /// The bolt through the eye.
    pub bolt: BoltToTighten,
    /// The working.
    pub working: Vec<Line>,
}

/// The torque of the bolt through an eye.
#[derive(Debug, Clone, PartialEq)]
pub enum BoltToTighten {
    /// A published torque.
    Published {
        /// The torque.
        torque: f64,
        /// Its diameter.
        diameter: f64,
        /// Which bolt, with the state of the thread that the torque is for.
        says: Said,
        /// Where it stands.
        source: Cite,
    },
    /// None that is published here, and why.
    NotJudged(Said),
}

/// What is left of a torque table: the cut with anti-seize.
pub const ANTI_SEIZE_SOURCE: Cite =
    cite(&PRACTICE, "torque cut by about 30 % with anti-seize or against aluminum", Obtained::Practice);

/// The card of a link.
pub fn card(document: &Document, index: usize, answer: &Answer) -> Option<[EndTorque; 2]> {
    let given = Values::new(document, index)?;
    let [a, b] = &answer.link.ends;
    Some([end_torque(&given, 0, a, answer), end_torque(&given, 1, b, answer)])
}

fn end_torque(given: &Values, index: usize, end: &EndGeometry, answer: &Answer) -> EndTorque {
    let mut sheet = Sheet::recording();
    let jam_nut = jam_torque::range(end.thread, &mut sheet);
    let how = said![
        "To tighten, ",
        (hold(answer)),
        " and turn the nut ",
        (nut_tightens(end.hand).words()),
        ", seen from the eye, against the bar."
    ];
    EndTorque {
        thread: end.thread,
        hand: end.hand,
        jam_nut,
        jam_nut_source: jam_nut_source(end.thread),
        across: end.jam_nut_across,
        how,
        bolt: bolt(given, index, end, &mut sheet),
        working: sheet.lines,
    }
}

/// Where the torque of a jam nut stands, or what stands in for a printed one.
pub(super) fn jam_nut_source(thread: &'static Thread) -> Cite {
    let mut sheet = Sheet::recording();
    jam_torque::range(thread, &mut sheet);
    let looked_up = sheet.lines.iter().find_map(|line| match line {
        Line::LookedUp { source, .. } => Some(*source),
        _ => None,
    });
    looked_up.unwrap_or(ANTI_SEIZE_SOURCE)
}

/// What keeps the bar from turning with its jam nut.
pub(super) fn hold(answer: &Answer) -> &'static str {
    if answer.link.cut_flats().is_some() {
        "hold the bar on its flats"
    } else {
        "hold the bar in a vise with soft jaws, or on flats of its insert"
    }
}

/// A grade as people say it in front of `bolt`.
pub(super) const fn grade(grade: &Grade) -> &'static str {
    grade.label
}

fn bolt(given: &Values, index: usize, end: &EndGeometry, sheet: &mut Sheet) -> BoltToTighten {
    let Some(bolt) = given.bolt(index, end.bore) else {
        return BoltToTighten::NotJudged(said![
            "Not judged: with high-misalignment spacers only you know the bolt. Enter its diameter in the Size view."
        ]);
    };
    let row = bolt.size.and_then(|size| Some((size, bolt_torque::published(bolt.grade, size, bolt.series)?)));
    let Some((size, row)) = row else {
        return BoltToTighten::NotJudged(said![
            "Not judged: no published torque is held here for a ",
            (bolt.diameter, Trade),
            " bolt of ",
            (grade(bolt.grade)),
            ". Ask the maker of the bolt."
        ]);
    };
    let torque = sheet.look_up("Torque of the bolt", row.torque, Kind::Torque, size.label, row.cite);
    let series = bolt.series.words();
    let says = said![(bolt.diameter, Trade), " bolt, ", (grade(bolt.grade)), ", ", (series), "; ", (row.on), "."];
    BoltToTighten::Published { torque, diameter: bolt.diameter, says, source: row.cite }
}

/// How an adapter sits on its wrench.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Adapter {
    /// In line with the wrench, away from the hand.
    InLine,
    /// Square to the wrench.
    Square,
}

/// A torque to set on a wrench.
#[derive(Debug, Clone, PartialEq)]
pub struct WrenchSetting {
    /// Not judged while a reading is missing or cannot be.
    pub standing: Standing,
    /// Torque to set.
    pub set: Option<f64>,
    /// What to do.
    pub says: Said,
    /// The working.
    pub working: Vec<Line>,
}

/// Longer than any torque wrench or adapter.
const LONGEST: f64 = inch(80.0);

/// What to set on the wrench so that the nut gets a torque through a crow-foot adapter. Lengths from the hand to the
/// middle of the wrench's square, and from there to the middle of the nut.
pub fn crow_foot(torque: f64, wrench: Option<f64>, adapter: Option<f64>, sits: Option<Adapter>) -> WrenchSetting {
    let not_judged = |says: Said| WrenchSetting { standing: Standing::NotJudged, set: None, says, working: Vec::new() };
    let mut sheet = Sheet::recording();
    let Some(sits) = sits else {
        return not_judged(said!["Not judged: say whether the adapter is in line with the wrench or square to it."]);
    };
    let usable = |value: f64| value.is_finite() && value > 0.0 && value < LONGEST;
    if !(torque.is_finite() && torque > 0.0) {
        return not_judged(said!["Not judged: there is no torque to set."]);
    }
    if sits == Adapter::Square {
        let says = said!["Square to the wrench the adapter changes nothing: set ", (torque, Torque), "."];
        return WrenchSetting { standing: Standing::Good, set: Some(torque), says, working: sheet.lines };
    }
    match (wrench, adapter) {
        (None, _) => not_judged(said!["Not judged: the length of the wrench, hand to square, is missing."]),
        (_, None) => not_judged(said!["Not judged: the length of the adapter, square to nut, is missing."]),
        (Some(wrench), Some(adapter)) if usable(wrench) && usable(adapter) => {
            let set = sheet.work(&fastening::CROW_FOOT, &[torque, wrench, adapter]);
            let says = said![
                "Set ",
                (set, Torque),
                ": the nut then gets ",
                (torque, Torque),
                ". Hold the wrench where you measured to."
            ];
            WrenchSetting { standing: Standing::Good, set: Some(set), says, working: sheet.lines }
        }
        _ => not_judged(said!["Not judged: a wrench or an adapter is not that long. Measure again."]),
    }
}
