//! Is it still safe? The check as fitted, as the page says it.

use super::standing::{mark, unless_hit, word};
use crate::engine::fitting::as_fitted::{AsFitted, Readings, Remark, as_fitted_of};
use crate::engine::fitting::{Standing, quarters_below, threads_show};
use crate::engine::sentence::spoken;
use crate::present::drawing::{Drawing, Layout, as_fitted as drawing};
use crate::present::words::{hand_mark, length, letter, thread};
use crate::present::working::{self, Step};
use crate::quantity::{Kind, System, fit, show};
use crate::report::{Answer, EndGeometry, Verdict};

/// The rows of readings, end by end, then the link's.
pub const ENDS: [[&str; 3]; 2] = [["threads-a", "face-a", "nut-a"], ["threads-b", "face-b", "nut-b"]];

/// The row of the length eye to eye.
pub const EYE_TO_EYE: &str = "eye-to-eye";

/// The rows of the jam nuts.
pub const NUTS: [&str; 2] = ["nut-a", "nut-b"];

/// On the button that answers both.
pub const BOTH_TIGHT: &str = "Both jam nuts are tight, by wrench";

/// The word of a link whose threads and nuts are in order.
pub const GOOD: &str = "Threads and jam nuts good";

/// Said beside it.
pub const NOT_CHECKED_HERE: &str = "Not checked here: bends, cracks, play and bolts. See Recheck, and After a hit.";

/// Every row, for what goes into the log.
pub const ROWS: [&str; 7] = ["face-a", "face-b", "threads-a", "threads-b", "nut-a", "nut-b", EYE_TO_EYE];

/// How to take the readings.
pub const HELP: &str =
    "At each end: count the threads past the jam nut, or put a ruler from the eye’s center to the bar’s face, or both.";

/// What the button for the log says.
pub const INTO_LOG: &str = "Put into the log";

/// A remark in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// The reason.
    pub words: String,
}

/// One end.
#[derive(Debug, Clone, PartialEq)]
pub struct EndLines {
    /// `End A: 1-1/4-12, RH`.
    pub title: String,
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// The reason that stands first.
    pub reason: String,
    /// The other remarks.
    pub more: Vec<Line>,
    /// How far it may still be turned.
    pub turns: Option<String>,
}

/// The whole check.
#[derive(Debug, Clone, PartialEq)]
pub struct Checked {
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// The reason that stands first.
    pub reason: String,
    /// Said where something was not judged beside a worse word.
    pub also: Option<&'static str>,
    /// The bar to order.
    pub order: Option<String>,
    /// End A and end B.
    pub ends: [EndLines; 2],
    /// Remarks about the link.
    pub whole: Vec<Line>,
    /// Where the stops are.
    pub stops: Option<String>,
    /// The line for the log.
    pub log: String,
    /// The link as it is fitted, and where its stops are.
    pub drawing: Drawing,
    /// How the numbers came out.
    pub working: Vec<Step>,
}

/// The readings of a bar, from where they are kept.
pub fn readings(number: impl Fn(&str) -> Option<f64>, yes: impl Fn(&str) -> Option<bool>) -> Readings {
    Readings {
        face: [number("face-a"), number("face-b")],
        visible: [number("threads-a"), number("threads-b")],
        eye_to_eye: number(EYE_TO_EYE),
        nut_tight: [yes("nut-a"), yes("nut-b")],
        unreadable: false,
    }
}

/// The check in words; `hit` while one is open against this bar, which its threads do not make good.
pub fn checked(answer: &Answer, readings: &Readings, hit: bool, system: System, layout: Layout) -> Checked {
    let link = &answer.link;
    let judged = as_fitted_of(answer, readings);
    let say = |remark: &Remark| spoken(&remark.says, system);
    let all = judged.ends.iter().flat_map(|end| &end.remarks).chain(&judged.remarks);
    let worst = all.min_by(|a, b| b.standing.cmp(&a.standing).then(a.about.cmp(&b.about)));
    let reason = match worst {
        Some(remark) if remark.standing != Standing::Good => say(remark),
        _ => "Both ends have enough thread in the bar, and both jam nuts are tight.".to_string(),
    };
    let ends = [0, 1].map(|index| end_lines(&judged, &link.ends[index], index, hit, system));
    let line = |remark: &Remark| one_line(remark, hit, system);
    let good = if judged.standing == Standing::Good { GOOD } else { word(judged.standing) };
    let (mark, word) = unless_hit(mark(judged.standing), good, hit);
    let order = judged.order.map(|order| {
        format!("For {} eye to eye: order a bar of {}.", fit(order.length, system), length(order.bar, system))
    });
    let back = judged.back_to.map(|back| {
        format!(
            "Set both ends alike and turn the bar back to {} eye to eye: it is not too short for that.",
            fit(back, system)
        )
    });
    let order = back.or(order);
    let log = format!(
        "{word}. {}",
        [0, 1]
            .map(|end| format!(
                "{}: {}",
                letter(end),
                judged.ends[end].visible_threads.map_or_else(|| "not read".to_string(), threads_show)
            ))
            .join(", ")
    );
    Checked {
        mark,
        word,
        reason,
        also: (judged.unjudged && judged.standing > Standing::NotJudged)
            .then_some("Not fully judged: see below which reading is missing."),
        order,
        ends,
        whole: judged.remarks.iter().map(line).collect(),
        stops: stops(&judged, link.adjustment.opposite_hands, system),
        log,
        drawing: drawing::as_fitted(answer, &judged, system, layout),
        working: working::steps(&judged.working, system),
    }
}

fn one_line(remark: &Remark, hit: bool, system: System) -> Line {
    let (mark, word) = unless_hit(mark(remark.standing), word(remark.standing), hit);
    Line { mark, word, words: spoken(&remark.says, system) }
}

fn end_lines(judged: &AsFitted, made: &EndGeometry, index: usize, hit: bool, system: System) -> EndLines {
    let end = &judged.ends[index];
    let mut lines = end.remarks.iter().map(|remark| one_line(remark, hit, system));
    let (mark, word) = unless_hit(mark(end.standing), word(end.standing), hit);
    let first = lines.next();
    let turns = end.turns.map(|[out, inward]| {
        // Never more than there is.
        let [out, inward] = [out, inward].map(quarters_below);
        format!(
            "This end alone: still {} out, {} in.",
            show(out, Kind::Turns, system),
            show(inward, Kind::Turns, system)
        )
    });
    EndLines {
        title: format!("End {}: {}, {}", letter(index), thread(made.thread), hand_mark(made.hand)),
        mark,
        word,
        reason: first.map(|line| line.words).unwrap_or_default(),
        more: lines.collect(),
        turns,
    }
}

fn stops(judged: &AsFitted, by_the_bar: bool, system: System) -> Option<String> {
    let ([shorter, longer], now) = judged.stops.zip(judged.length)?;
    let beyond = if now > longer + 1e-9 {
        " It is wound out beyond its longer stop."
    } else if now < shorter - 1e-9 {
        " It is wound in beyond its shorter stop."
    } else {
        ""
    };
    let [shorter, now, longer] = [shorter, now, longer].map(|value| fit(value, system));
    let how = if by_the_bar { "by turning the bar" } else { "each eye turned by itself, with its bolt out" };
    Some(format!("Eye to eye: {now} now. Shorter stop {shorter}, longer stop {longer}, {how}.{beyond}"))
}
