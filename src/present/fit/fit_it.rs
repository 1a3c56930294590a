//! Fitting a link on the page: the steps to tick, how far somebody is, and the torque card.

use super::standing;
use crate::document::Document;
use crate::engine::fitting::Standing;
use crate::engine::fitting::fitting_steps::{self, progress};
use crate::engine::fitting::torque_card::{ANTI_SEIZE_SOURCE, Adapter, BoltToTighten, EndTorque, card, crow_foot};
use crate::present::checklist::key;
use crate::present::words::{self, hand_mark, letter, say};
use crate::present::working::{self, Step};
use crate::quantity::{Kind, System, show};
use crate::report::{Answer, Verdict};

/// Said over the list.
pub const TICKS: &str = "Ticks stay with this bar in its log. A tick clears when its numbers change.";

/// Said over the torque card.
pub const TORQUE_HELP: &str = "One range for what was ordered: jam nuts with anti-seize on the shank, against the bar; bolts clean, without it. A maker's own torque takes precedence.";

/// One step, ready to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepRow {
    /// By what a tick knows it.
    pub key: String,
    /// What to do.
    pub words: String,
    /// Why, or where a number comes from.
    pub why: Option<String>,
    /// Whether it is the thing that is said first and done last.
    pub last_and_first: bool,
    /// Whether it is ticked; a notice is not.
    pub is_ticked: bool,
}

/// The steps in the order of the work.
pub fn rows(document: &Document, index: usize, answer: &Answer, system: System) -> Vec<StepRow> {
    let steps = fitting_steps::steps(document, index, answer);
    let row = |step: &fitting_steps::Step| StepRow {
        key: key(step),
        words: say(&step.words, system),
        why: step.why.as_ref().map(|why| say(why, system)),
        last_and_first: step.last_and_first,
        is_ticked: step.is_ticked(),
    };
    steps.iter().filter(|step| step.is_on_screen()).map(row).collect()
}

/// How far somebody is.
#[derive(Debug, Clone, PartialEq)]
pub struct Progress {
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// What follows.
    pub says: String,
    /// `7 of 18 done`.
    pub count: String,
    /// What goes into the log once everything is ticked; nothing before.
    pub log: Option<String>,
}

/// How far somebody is, by what is ticked; `hit` while one is open against this bar.
pub fn how_far(
    document: &Document,
    index: usize,
    answer: &Answer,
    ticked: impl Fn(&str) -> bool,
    hit: bool,
    system: System,
) -> Progress {
    let steps: Vec<_> = fitting_steps::steps(document, index, answer)
        .into_iter()
        .filter(|step| step.is_on_screen() && step.is_ticked())
        .collect();
    let ticks: Vec<bool> = steps.iter().map(|step| ticked(&key(step))).collect();
    let found = progress(&steps, &ticks);
    let good = found.standing == Standing::Good;
    let torque = || {
        let each = card(document, index, answer)?;
        let [a, b] = each.map(|end| range(&end, system));
        Some(if a == b {
            format!("All {} steps ticked. Jam nuts {a} at both ends.", found.of)
        } else {
            format!("All {} steps ticked. Jam nuts {a} at A, {b} at B.", found.of)
        })
    };
    let word = if good { "Fitted" } else { standing::word(found.standing) };
    let (mark, word) = standing::unless_hit(standing::mark(found.standing), word, hit);
    Progress {
        mark,
        word,
        says: if good && hit { standing::HIT_OPEN_SAYS.to_string() } else { say(&found.says, system) },
        count: format!("{} of {} done", found.done, found.of),
        log: (good && !hit).then(torque).flatten(),
    }
}

/// What is tightened at one end.
#[derive(Debug, Clone, PartialEq)]
pub struct TorqueRow {
    /// Which end.
    pub title: String,
    /// Range of the jam nut.
    pub jam_nut: String,
    /// Which way, and the wrench.
    pub how: Vec<String>,
    /// Where the range comes from.
    pub jam_nut_sources: Vec<String>,
    /// Torque of the bolt; nothing that is published.
    pub bolt: Option<String>,
    /// Which bolt, or why there is no torque.
    pub bolt_says: String,
    /// Where it comes from.
    pub bolt_source: Option<String>,
    /// The working.
    pub working: Vec<Step>,
}

fn range(end: &EndTorque, system: System) -> String {
    between(end.jam_nut.least, end.jam_nut.most, system)
}

fn between(least: f64, most: f64, system: System) -> String {
    let [least, most] = [least, most].map(|torque| show(torque, Kind::Torque, system));
    format!("{least} to {most}")
}

/// The torque card.
pub fn torque(document: &Document, index: usize, answer: &Answer, system: System) -> Vec<TorqueRow> {
    let ends = card(document, index, answer).into_iter().flatten().enumerate();
    ends.map(|(at, end)| torque_row(at, &end, system)).collect()
}

fn torque_row(at: usize, end: &EndTorque, system: System) -> TorqueRow {
    let (bolt, bolt_says, bolt_source) = match &end.bolt {
        BoltToTighten::Published { torque, says, source, .. } => {
            (Some(show(*torque, Kind::Torque, system)), say(says, system), Some(source.sentence()))
        }
        BoltToTighten::NotJudged(says) => (None, say(says, system), None),
    };
    TorqueRow {
        title: format!("End {}, {} {}", letter(at), words::thread(end.thread), hand_mark(end.hand)),
        jam_nut: range(end, system),
        how: vec![
            say(&end.how, system),
            format!("Wrench for the jam nut: {} across flats.", words::trade(end.across, system)),
        ],
        jam_nut_sources: vec![end.jam_nut_source.sentence(), ANTI_SEIZE_SOURCE.sentence()],
        bolt,
        bolt_says,
        bolt_source,
        working: working::steps(&end.working, system),
    }
}

/// What to set on a wrench with an adapter in line.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting {
    /// What to set, end by end, or what is missing.
    pub says: Vec<String>,
    /// The working.
    pub working: Vec<Step>,
}

/// Said of the adapter.
pub const CROW_FOOT_HELP: &str = "An adapter in line with the wrench makes it longer than it knows: set less. Square to the wrench it changes nothing.";

/// The settings for the jam nuts, with the adapter in line.
pub fn crow_foot_setting(
    document: &Document,
    index: usize,
    answer: &Answer,
    wrench: Option<f64>,
    adapter: Option<f64>,
    system: System,
) -> Setting {
    let mut setting = Setting { says: Vec::new(), working: Vec::new() };
    for (at, end) in card(document, index, answer).into_iter().flatten().enumerate() {
        let set = |torque| crow_foot(torque, wrench, adapter, Some(Adapter::InLine));
        let [least, most] = [end.jam_nut.least, end.jam_nut.most].map(set);
        let Some((from, to)) = least.set.zip(most.set) else {
            return Setting { says: vec![say(&least.says, system)], working: Vec::new() };
        };
        setting.says.push(format!("End {}: set {} on the wrench.", letter(at), between(from, to, system)));
        setting.working.extend(working::steps(&most.working, system));
    }
    setting
}
