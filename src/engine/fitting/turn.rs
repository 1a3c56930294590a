//! Turn it: from the length a link has to the one that is wanted, in turns and flats, with what shows afterwards.

mod setting;
mod steps;
mod together;
mod ways;

pub use setting::{Setting, setting};
pub(super) use steps::half_turns;
pub use steps::turns_and_flats;
pub use together::{hold_back, turn_bars};
pub use ways::{BarTurn, EyeTurn, SameHand, Way};

use super::Standing;
use super::as_fitted::{OrderBar, Readings, TAPE, bar_for, too};
use crate::document::{OWN_ROD_END, Role};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{lengths, turning as formulas};
use crate::engine::sentence::{Said, said};
use crate::quantity::exceeds;
use crate::report::{EndGeometry, LinkGeometry};

/// Flats in one turn: sides of a jam nut.
pub const FLATS: f64 = 6.0;

/// What is wanted of a link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wish {
    /// So long, eye to eye.
    Length(f64),
    /// So much longer; shorter where it is negative.
    Longer(f64),
}

/// What the link is to the rig, for the steps around the turning.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// What it locates.
    pub role: Role,
    /// Whether it has a mate on the other side that is turned alike.
    pub pair: bool,
}

/// One end after the turning.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndAfter {
    /// Threads past the jam nut.
    pub visible_threads: f64,
    /// Eye center to bar face.
    pub eye_to_face: f64,
    /// Full thread engaged.
    pub engagement: f64,
    /// Shank in the bar.
    pub inserted: f64,
    /// Turns that this end could still go out of the bar and into it before it reaches a stop, never negative.
    pub turns_left: [f64; 2],
    /// Stop where it is beyond one of its stops.
    pub standing: Standing,
}

/// What to turn, and what comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Turned {
    /// Stop where it must not be done, not judged where something was not read or measured.
    pub standing: Standing,
    /// From where it was worked out.
    pub from: Setting,
    /// Change of length that was asked for; positive is longer.
    pub wanted: f64,
    /// What to turn; none where it is refused or where nothing is to be done.
    pub way: Option<Way>,
    /// Change of length that this gives, rounded to whole flats or half turns.
    pub change: f64,
    /// Eye to eye afterwards.
    pub length: f64,
    /// Both ends afterwards.
    pub ends: [EndAfter; 2],
    /// Turns of the bar that the error of a tape comes to, either way; none where the bar is not what is turned.
    pub tape_turns: Option<f64>,
    /// Change of length for half a turn of each eye; none where an eye is not what is turned.
    pub half_turn: Option<[f64; 2]>,
    /// With ends of one hand: what a turn of the bar really does.
    pub same_hand: Option<SameHand>,
    /// Whether nothing was read on this bar, so that it goes by the other of its pair.
    pub alike: bool,
    /// Why it is refused, or why nothing is to be turned.
    pub instead: Option<Said>,
    /// The bar to order where this one does not reach.
    pub order: Option<OrderBar>,
    /// What was not read or measured, so that the numbers afterwards are not judged.
    pub open: Vec<Said>,
    /// What to do, in order.
    pub steps: Vec<Said>,
    /// What to mind.
    pub cautions: Vec<Said>,
    /// How the numbers came out.
    pub working: Vec<Line>,
}

impl Turned {
    /// Whether it must not be turned, as it stands.
    pub fn is_refused(&self) -> bool {
        self.standing == Standing::Stop && self.way.is_none()
    }
}

/// Why one end is right-hand and the other left-hand, in three sentences.
pub const WHY_OPPOSITE: &str = "With one right-hand and one left-hand end, turning the bar moves both eyes out or both in, so the length changes while both stay bolted. With two ends of one hand one screws in as the other screws out: the length stays, and an end can leave the bar without anybody noticing. That is why the two jam nuts turn opposite ways, and why both must be loose before the bar is turned.";

/// Works out what to turn.
pub fn turn(link: &LinkGeometry, readings: &Readings, wish: Wish, place: Place) -> Turned {
    let mut sheet = Sheet::recording();
    let from = setting(link, readings, &mut sheet);
    let wanted = match wish {
        Wish::Length(length) => length - from.length,
        Wish::Longer(change) => change,
    };
    let pitches = link.ends.each_ref().map(|end| end.thread.pitch);
    let same_hand = (!link.adjustment.opposite_hands).then(|| ways::same_hand(link, &from));
    let way = if wanted.is_finite() { ways::way(link, &from, wanted, &mut sheet) } else { None };
    let out = way.map_or([0.0; 2], |way| way.out(pitches));
    let change = match way {
        // What both come to together is worked out once more, for the reader.
        Some(Way::Eyes([a, b])) => {
            let [m, n] = [a, b].map(|eye| f64::from(eye.half_turns));
            sheet.work(&formulas::CHANGE_BY_BOTH_EYES, &[m, pitches[0], n, pitches[1]]) * wanted.signum()
        }
        _ => way.map_or(0.0, |way| way.change()),
    };
    let inserted = [from.inserted[0] - out[0], from.inserted[1] - out[1]];
    let ends = [0, 1].map(|index| {
        let end = &link.ends[index];
        let set = [end.thread_length, end.jam_nut, inserted[index], end.thread.pitch];
        let room = [inserted[index] - end.stop.inserted, end.most + end.not_full - inserted[index]];
        EndAfter {
            visible_threads: sheet.work(&formulas::THREADS_SHOWING, &set),
            eye_to_face: sheet.work(&lengths::EYE_TO_FACE, &[end.eye_to_end, inserted[index]]),
            engagement: sheet.work(&formulas::FULL_AS_FITTED, &[inserted[index], end.not_full]),
            inserted: inserted[index],
            turns_left: room.map(|room| sheet.work(&lengths::LENGTH_TURNS, &[room.max(0.0), end.thread.pitch])),
            standing: if is_beyond(end, inserted[index]) { Standing::Stop } else { Standing::Good },
        }
    });
    let tape_turns = match way {
        Some(Way::Bar(bar)) => {
            sheet.choose(|| said!["A tape is taken to be off by up to ", (TAPE, FineLength), ": an assumption."]);
            Some(sheet.work(&formulas::TURNS_OF_TAPE, &[TAPE, bar.per_turn]))
        }
        _ => None,
    };
    let half_turn = way
        .is_some_and(|way| !way.eyes().is_empty())
        .then(|| pitches.map(|pitch| sheet.work(&formulas::CHANGE_BY_HALF_TURNS, &[1.0, pitch])));
    let mut turned = Turned {
        standing: Standing::Good,
        wanted,
        way,
        change,
        length: from.length + change,
        ends,
        tape_turns,
        half_turn,
        same_hand,
        alike: false,
        instead: None,
        order: None,
        open: open(link, &from),
        steps: Vec::new(),
        cautions: steps::cautions(link, place),
        working: Vec::new(),
        from,
    };
    if !wanted.is_finite() {
        turned.standing = Standing::NotJudged;
        turned.instead = Some(said!["Enter a length to turn it to."]);
    } else if let Some((why, order)) = refusal(link, &turned, out, &mut sheet) {
        (turned.standing, turned.instead, turned.order, turned.way) = (Standing::Stop, Some(why), order, None);
        (turned.change, turned.length) = (0.0, turned.from.length);
        (turned.tape_turns, turned.half_turn) = (None, None);
    } else if turned.way.is_none() {
        turned.instead = Some(said!["Nothing to turn: the change is less than one step gives."]);
    } else {
        turned.steps = steps::steps(link, &turned, place);
        turned.standing = turned.ends.iter().map(|end| end.standing).fold(Standing::Good, Standing::max);
    }
    if !turned.open.is_empty() {
        turned.standing = turned.standing.max(Standing::NotJudged);
    }
    turned.working = std::mem::take(&mut sheet.lines);
    turned
}

/// Whether an end with so much shank in the bar is beyond one of its stops; one that was wound too far before may be.
fn is_beyond(end: &EndGeometry, inserted: f64) -> bool {
    exceeds(end.stop.inserted, inserted) || exceeds(inserted, end.most + end.not_full)
}

/// What the numbers afterwards rest on without having been read.
fn open(link: &LinkGeometry, from: &Setting) -> Vec<Said> {
    let mut open = Vec::new();
    for (index, letter) in ["A", "B"].into_iter().enumerate() {
        if !from.read[index] {
            open.push(said![
                "Nothing was read at end ",
                (letter),
                ": what shows afterwards is counted from the setting of this build. Count the threads there first."
            ]);
        }
        if link.ends[index].rod_end_id != OWN_ROD_END {
            open.push(said![
                "The rod end at ",
                (letter),
                " is not measured: what shows there afterwards, and where it stops, goes by its published series."
            ]);
        }
    }
    open
}

/// Why the turn must not be done: an end would pass its stop.
fn refusal(link: &LinkGeometry, turned: &Turned, out: [f64; 2], sheet: &mut Sheet) -> Option<(Said, Option<OrderBar>)> {
    let longer = turned.wanted > 0.0;
    let stopped = link.ends.iter().zip(&turned.ends).zip(out).position(|((end, after), out)| {
        (out > 0.0 && exceeds(end.stop.inserted, after.inserted))
            || (out < 0.0 && exceeds(after.inserted, end.most + end.not_full))
    })?;
    let letter = ["A", "B"][stopped];
    let length = turned.from.length + turned.wanted;
    // With both ends set alike, would this bar reach?
    let in_bar = turned.from.inserted.iter().sum::<f64>() - turned.wanted;
    let least: f64 = link.ends.iter().map(|end| end.stop.inserted).sum();
    let most: f64 = link.ends.iter().map(|end| end.most + end.not_full).sum();
    let reaches = !exceeds(least, in_bar) && !exceeds(in_bar, most);
    if reaches && !link.adjustment.opposite_hands {
        let nearest = ways::most_by_eyes(link, &turned.from, longer);
        let says = said![
            "Half turns of both eyes do not come that far within their stops: ",
            (nearest, FineLength),
            (if longer { " longer" } else { " shorter" }),
            " is the most from here. Ask for that, or order another bar."
        ];
        return Some((says, None));
    }
    if reaches {
        let says = said![
            "Do not turn it that far: end ",
            (letter),
            " would pass its stop while the other has room. Even the two ends first, then turn."
        ];
        return Some((says, None));
    }
    Some(match bar_for(link, length, sheet) {
        Ok(order) => {
            let mut says = said![
                "Do not turn it that far: end ",
                (letter),
                (if longer { " would be wound out beyond its stop. " } else { " would be wound in beyond its stop. " })
            ];
            says.extend(too(if longer { "too short" } else { "too long" }, &order));
            (says, Some(order))
        }
        Err(why) => (why, None),
    })
}
