//! How far a link may be made longer and shorter, and what turning its bar does.

use super::formula::Sheet;
use super::formulas::threads as thread_formulas;
use super::geometry::MOST_VISIBLE_THREADS;
use crate::document::Hand;
use crate::report::{Adjustment, EndGeometry, OutwardStop, Reach, StopBy};

/// Settles how far an end may be wound out: to three visible threads, to the least engagement, or to where its shank
/// reaches its limit in bending (a length inside the bar, where it does so first).
pub(super) fn set_stop(end: &mut EndGeometry, shank: Option<f64>) {
    let pitch = end.thread.pitch;
    let deepest = end.thread_length - end.jam_nut;
    let by_engagement = (end.least + end.not_full, StopBy::Engagement);
    let by_shank = (shank.unwrap_or(f64::NEG_INFINITY), StopBy::ShankBending);
    let limit = if by_shank.0 > by_engagement.0 { by_shank } else { by_engagement };
    let by_threads = (deepest - MOST_VISIBLE_THREADS * pitch, StopBy::VisibleThreads);
    let stop = if limit.0 > by_threads.0 { limit } else { by_threads };
    end.stop = OutwardStop { inserted: stop.0, visible_threads: (deepest - stop.0) / pitch, by: stop.1 };
    let deepest_allowed = end.most + end.not_full;
    end.reach = Reach {
        // Good travel begins inside the good window only.
        out_good: (end.inserted.min(deepest_allowed) - stop.0).max(0.0),
        in_good: (deepest_allowed - end.inserted.max(stop.0)).max(0.0),
        out_limit: (end.inserted - limit.0).max(0.0),
        in_limit: (deepest_allowed - end.inserted).max(0.0),
    };
}

/// What turning the bar and re-clocking the eyes can do, from the reach of both ends.
pub(super) fn adjustment(ends: &[EndGeometry; 2], sheet: &mut Sheet) -> Adjustment {
    let [a, b] = ends;
    let opposite_hands = a.hand != b.hand;
    let pitches = [a.thread.pitch, b.thread.pitch];
    let sum = sheet.work(&thread_formulas::LENGTH_PER_TURN_OPPOSITE_HANDS, &pitches);
    let difference = sheet.work(&thread_formulas::LENGTH_PER_TURN_SAME_HAND, &pitches);
    let per_turn = if opposite_hands { sum } else { difference.abs() };
    // With like hands one end comes out while the other goes in: the coarser pitch decides which way is longer.
    let [coarse, fine] = if difference >= 0.0 { [a, b] } else { [b, a] };
    let turns = |out: [f64; 2], inward: [f64; 2]| {
        let [coarse_pitch, fine_pitch] = [coarse.thread.pitch, fine.thread.pitch];
        if opposite_hands {
            // Both ends move together, so the end with less room stops them.
            [(out[0] / coarse_pitch).min(out[1] / fine_pitch), (inward[0] / coarse_pitch).min(inward[1] / fine_pitch)]
        } else if per_turn > 0.0 {
            [(out[0] / coarse_pitch).min(inward[1] / fine_pitch), (inward[0] / coarse_pitch).min(out[1] / fine_pitch)]
        } else {
            [0.0; 2]
        }
    };
    let turns_good = turns([coarse.reach.out_good, fine.reach.out_good], [coarse.reach.in_good, fine.reach.in_good]);
    let turns_limit =
        turns([coarse.reach.out_limit, fine.reach.out_limit], [coarse.reach.in_limit, fine.reach.in_limit]);
    // With like hands each end is set by itself, by re-clocking its eye, so the ends' own room adds up.
    let total = |turns: f64, a: f64, b: f64| if opposite_hands { turns * sum } else { a + b };
    Adjustment {
        reach: Reach {
            out_good: total(turns_good[0], a.reach.out_good, b.reach.out_good),
            in_good: total(turns_good[1], a.reach.in_good, b.reach.in_good),
            out_limit: total(turns_limit[0], a.reach.out_limit, b.reach.out_limit),
            in_limit: total(turns_limit[1], a.reach.in_limit, b.reach.in_limit),
        },
        per_turn,
        turns_good,
        turns_limit,
        opposite_hands,
        turning: if opposite_hands {
            Some(turning_both(a.hand))
        } else {
            (per_turn > 0.0).then(|| turning_unlike(difference >= 0.0, a.hand))
        },
    }
}

/// Which way lengthens: a right-hand thread comes out of the bar when the bar is turned clockwise, seen
/// from its eye.
const fn turning_both(at_a: Hand) -> &'static str {
    match at_a {
        Hand::Right => "Look along the bar from end A: clockwise makes it longer, counterclockwise shorter.",
        Hand::Left => "Look along the bar from end A: counterclockwise makes it longer, clockwise shorter.",
    }
}

/// The same for like hands of unlike pitch: the end with the coarser thread decides.
const fn turning_unlike(coarse_at_a: bool, hand: Hand) -> &'static str {
    match (coarse_at_a, hand) {
        (true, Hand::Right) => {
            "Look along the bar from end A, the coarser thread: clockwise makes it longer by the difference of the two pitches each turn; A comes out while B goes in."
        }
        (true, Hand::Left) => {
            "Look along the bar from end A, the coarser thread: counterclockwise makes it longer by the difference of the two pitches each turn; A comes out while B goes in."
        }
        (false, Hand::Right) => {
            "Look along the bar from end B, the coarser thread: clockwise makes it longer by the difference of the two pitches each turn; B comes out while A goes in."
        }
        (false, Hand::Left) => {
            "Look along the bar from end B, the coarser thread: counterclockwise makes it longer by the difference of the two pitches each turn; B comes out while A goes in."
        }
    }
}
