//! What is turned: the bar, in flats, or one eye with its bolt out, in half turns.

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
}

impl Way {
    /// Change of length that it gives.
    pub const fn change(self) -> f64 {
        match self {
            Self::Bar(bar) => bar.change,
            Self::Eye(eye) => eye.change,
        }
    }

    /// How far each end comes out of the bar, from the pitches of both.
    pub fn out(self, pitches: [f64; 2]) -> [f64; 2] {
        match self {
            Self::Bar(bar) => {
                let turns = f64::from(bar.flats) / FLATS * if bar.change < 0.0 { -1.0 } else { 1.0 };
                pitches.map(|pitch| pitch * turns)
            }
            Self::Eye(eye) => [0, 1].map(|end| if end == eye.end { eye.change } else { 0.0 }),
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
    // Of two ends that are set one by one, the one with more room is turned.
    let room = |end| if wanted > 0.0 { outward(link, from, end) } else { inward(link, from, end) };
    let end = usize::from(room(1) > room(0));
    let pitch = pitches[end];
    let turns = sheet.work(&lengths::LENGTH_TURNS, &[wanted.abs(), pitch]);
    let half_turns = whole(turns * 2.0)?;
    let change = sheet.work(&formulas::CHANGE_BY_HALF_TURNS, &[f64::from(half_turns), pitch]);
    let out = eye_unscrews(link.ends[end].hand);
    let turning = if wanted > 0.0 { out } else { out.opposite() };
    Some(Way::Eye(EyeTurn { end, half_turns, turning, change: change * wanted.signum() }))
}

/// The nearest whole number, where there is one above 0 that a link could need.
fn whole(steps: f64) -> Option<u32> {
    // Half a step goes up, whatever the last bits, so that two links asked for the same get the same.
    let steps = (steps + 1e-6).round();
    // No link has a thread of ten thousand flats.
    (1.0..10_000.0).contains(&steps).then_some(steps as u32)
}
