//! What is turned: the bar, in flats, or one eye after the other with its bolt out, in half turns.

use super::{FLATS, Setting};
use crate::document::Hand;
use crate::engine::fitting::hands::{Turning, eye_unscrews, lengthens, per_turn};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, threads, turning as formulas};
use crate::report::LinkGeometry;

/// The bar is turned while both eyes stay bolted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarTurn {
    /// Sixths of a turn.
    pub flats: u32,
    /// Which way, looking from the eye at end A along the bar.
    pub turning: Turning,
    /// Change of length for one turn, never negative.
    pub per_turn: f64,
    /// Change of length that it gives; positive is longer.
    pub change: f64,
}

/// One eye is turned with its bolt out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EyeTurn {
    /// Which end: A is 0, B is 1.
    pub end: usize,
    /// Half turns, so that the eye is square to its bracket again.
    pub half_turns: u32,
    /// Which way, seen from that eye.
    pub turning: Turning,
    /// Change of length that it gives; positive is longer.
    pub change: f64,
}

/// What is turned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Way {
    /// The bar.
    Bar(BarTurn),
    /// One eye.
    Eye(EyeTurn),
    /// Both eyes, one after the other: more than one of them may take.
    Eyes([EyeTurn; 2]),
}

impl Way {
    /// Change of length that it gives.
    pub const fn change(self) -> f64 {
        match self {
            Self::Bar(bar) => bar.change,
            Self::Eye(eye) => eye.change,
            Self::Eyes([first, second]) => first.change + second.change,
        }
    }

    /// The eyes that are turned with their bolts out, in the order of the work.
    pub fn eyes(&self) -> &[EyeTurn] {
        match self {
            Self::Bar(_) => &[],
            Self::Eye(eye) => std::slice::from_ref(eye),
            Self::Eyes(eyes) => eyes,
        }
    }

    /// How far each end comes out of the bar, from the pitches of both.
    pub fn out(self, pitches: [f64; 2]) -> [f64; 2] {
        match self {
            Self::Bar(bar) => {
                let turns = f64::from(bar.flats) / FLATS * if bar.change < 0.0 { -1.0 } else { 1.0 };
                pitches.map(|pitch| pitch * turns)
            }
            Self::Eye(_) | Self::Eyes(_) => {
                [0, 1].map(|end| self.eyes().iter().filter(|eye| eye.end == end).map(|eye| eye.change).sum())
            }
        }
    }
}

/// What turning the bar really does where both ends have the same hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SameHand {
    /// The hand.
    pub hand: Hand,
    /// How far each end comes out of the bar in one turn, clockwise looking from the eye at A; negative goes in.
    pub out: [f64; 2],
    /// Change of length for that turn; 0 where both have the same pitch.
    pub longer: f64,
    /// Turns from here until an end reaches a stop: clockwise, then counterclockwise, looking from the eye at A.
    pub turns: [f64; 2],
}

fn pairs(link: &LinkGeometry) -> [(Hand, f64); 2] {
    link.ends.each_ref().map(|end| (end.hand, end.thread.pitch))
}

/// The turning of a bar with ends of one hand.
pub(super) fn same_hand(link: &LinkGeometry, from: &Setting) -> SameHand {
    let turns = |turning| {
        let moved = per_turn(pairs(link), turning, 0).out;
        let until = |end: usize| {
            let room = if moved[end] > 0.0 { outward(link, from, end) } else { inward(link, from, end) };
            room / moved[end].abs()
        };
        until(0).min(until(1))
    };
    let clockwise = per_turn(pairs(link), Turning::Clockwise, 0);
    SameHand {
        hand: link.ends[0].hand,
        out: clockwise.out,
        longer: clockwise.longer,
        turns: [turns(Turning::Clockwise), turns(Turning::Counterclockwise)],
    }
}

pub(super) fn outward(link: &LinkGeometry, from: &Setting, end: usize) -> f64 {
    (from.inserted[end] - link.ends[end].stop.inserted).max(0.0)
}

pub(super) fn inward(link: &LinkGeometry, from: &Setting, end: usize) -> f64 {
    (link.ends[end].most + link.ends[end].not_full - from.inserted[end]).max(0.0)
}

/// What to turn for a change of length; none where it is less than half a step.
pub(super) fn way(link: &LinkGeometry, from: &Setting, wanted: f64, sheet: &mut Sheet) -> Option<Way> {
    let pitches = link.ends.each_ref().map(|end| end.thread.pitch);
    if link.adjustment.opposite_hands {
        let per_turn = sheet.work(&threads::LENGTH_PER_TURN_OPPOSITE_HANDS, &pitches);
        let turns = sheet.work(&lengths::LENGTH_TURNS, &[wanted.abs(), per_turn]);
        let flats = whole(turns * FLATS)?;
        let change = sheet.work(&formulas::CHANGE_BY_FLATS, &[f64::from(flats), per_turn]);
        let longer = lengthens(pairs(link))?;
        let turning = if wanted > 0.0 { longer } else { longer.opposite() };
        return Some(Way::Bar(BarTurn { flats, turning, per_turn, change: change * wanted.signum() }));
    }
    by_eyes(link, from, wanted, sheet)
}

/// The eye with more room; both where it would pass its stop and the two together need not.
fn by_eyes(link: &LinkGeometry, from: &Setting, wanted: f64, sheet: &mut Sheet) -> Option<Way> {
    let pitches = link.ends.each_ref().map(|end| end.thread.pitch);
    let room = rooms(link, from, wanted > 0.0);
    let end = usize::from(room[1] > room[0]);
    let turns = sheet.work(&lengths::LENGTH_TURNS, &[wanted.abs(), pitches[end]]);
    let half_turns = whole(turns * 2.0)?;
    let mut one = |end: usize, half_turns: u32| {
        let change = sheet.work(&formulas::CHANGE_BY_HALF_TURNS, &[f64::from(half_turns), pitches[end]]);
        let out = eye_unscrews(link.ends[end].hand);
        let turning = if wanted > 0.0 { out } else { out.opposite() };
        EyeTurn { end, half_turns, turning, change: change * wanted.signum() }
    };
    let most = [0, 1].map(|end| half_turns_in(room[end], pitches[end]));
    if half_turns <= most[end] {
        return Some(Way::Eye(one(end, half_turns)));
    }
    Some(match shared(wanted.abs(), room, pitches) {
        Some([a, 0]) => Way::Eye(one(0, a)),
        Some([0, b]) => Way::Eye(one(1, b)),
        Some([a, b]) => Way::Eyes([one(0, a), one(1, b)]),
        // Refused by what it would come to.
        None => Way::Eye(one(end, half_turns)),
    })
}

/// How far each end can go to its stop.
pub(super) fn rooms(link: &LinkGeometry, from: &Setting, longer: bool) -> [f64; 2] {
    [0, 1].map(|end| if longer { outward(link, from, end) } else { inward(link, from, end) })
}

/// Whole half turns in a length along a thread.
fn half_turns_in(room: f64, pitch: f64) -> u32 {
    // No link has a thread of ten thousand half turns.
    (2.0 * room / pitch + 1e-6).floor().clamp(0.0, 10_000.0) as u32
}

/// Two lengths that lie closer than this are alike, m.
const HAIR: f64 = 1e-9;

/// Half turns of A and of B that together come nearest to a change, within the room of each; of those that come alike
/// near, the ones that leave the ends the most room. None where they miss it by more than half a step of the finer end.
fn shared(change: f64, room: [f64; 2], pitches: [f64; 2]) -> Option<[u32; 2]> {
    let steps = pitches.map(|pitch| pitch / 2.0);
    let most = [0, 1].map(|end| half_turns_in(room[end], pitches[end]));
    let finest = steps[0].min(steps[1]);
    let mut best: Option<([u32; 2], f64, f64)> = None;
    for a in 0..=most[0] {
        let rest = (change - f64::from(a) * steps[0]) / steps[1];
        for b in [rest.floor(), rest.ceil()] {
            let b = b.clamp(0.0, f64::from(most[1])) as u32;
            let count = [a, b];
            let come = [0, 1].map(|end| f64::from(count[end]) * steps[end]);
            let misses = (come[0] + come[1] - change).abs();
            let left = (room[0] - come[0]).min(room[1] - come[1]);
            let better = best.is_none_or(|(_, least, most_left)| {
                misses < least - HAIR || (misses < least + HAIR && left > most_left + HAIR)
            });
            if better {
                best = Some((count, misses, left));
            }
        }
    }
    best.filter(|(_, misses, _)| *misses <= finest / 2.0 + HAIR).map(|(count, _, _)| count)
}

/// The most that half turns of both eyes come to within their stops.
pub(super) fn most_by_eyes(link: &LinkGeometry, from: &Setting, longer: bool) -> f64 {
    let pitches = link.ends.each_ref().map(|end| end.thread.pitch);
    let room = rooms(link, from, longer);
    [0, 1].map(|end| f64::from(half_turns_in(room[end], pitches[end])) * pitches[end] / 2.0).iter().sum()
}

/// The nearest whole number, where there is one above 0 that a link could need.
fn whole(steps: f64) -> Option<u32> {
    // Half a step goes up, whatever the last bits, so that two links asked for the same get the same.
    let steps = (steps + 1e-6).round();
    // No link has a thread of ten thousand flats.
    (1.0..10_000.0).contains(&steps).then_some(steps as u32)
}
