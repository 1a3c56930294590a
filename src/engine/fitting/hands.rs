//! Which way bar, jam nut and eye turn, and what that does: the hand of each thread carried through, as data.
//!
//! Every rule here is held against a model in three dimensions by the tests.

use crate::document::Hand;

/// A direction of turning, as seen by somebody who looks from an eye along the bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turning {
    /// As the hands of a clock.
    Clockwise,
    /// Against them.
    Counterclockwise,
}

impl Turning {
    /// `clockwise` or `counterclockwise`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Clockwise => "clockwise",
            Self::Counterclockwise => "counterclockwise",
        }
    }

    /// The other way; also the same turning as somebody at the other eye sees it.
    pub const fn opposite(self) -> Self {
        match self {
            Self::Clockwise => Self::Counterclockwise,
            Self::Counterclockwise => Self::Clockwise,
        }
    }
}

/// Which way to turn the bar, seen from an eye that is held, so that this end comes out of the bar.
pub const fn bar_unscrews(hand: Hand) -> Turning {
    match hand {
        Hand::Right => Turning::Clockwise,
        Hand::Left => Turning::Counterclockwise,
    }
}

/// Which way to turn an eye whose bolt is out, seen from that eye, so that it comes out of a bar that is held.
pub const fn eye_unscrews(hand: Hand) -> Turning {
    bar_unscrews(hand).opposite()
}

/// Which way a jam nut goes against the bar, seen from its eye.
pub const fn nut_tightens(hand: Hand) -> Turning {
    match hand {
        Hand::Right => Turning::Clockwise,
        Hand::Left => Turning::Counterclockwise,
    }
}

/// Which way a jam nut comes off the bar, seen from its eye.
pub const fn nut_loosens(hand: Hand) -> Turning {
    nut_tightens(hand).opposite()
}

/// What one turn of the bar does while both eyes are held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PerTurn {
    /// How far each end comes out of the bar; negative where it goes in.
    pub out: [f64; 2],
    /// How much longer the link becomes; negative where it becomes shorter.
    pub longer: f64,
}

/// What one turn of the bar does, seen from the eye at end A (0) or end B (1), from the hand and pitch of each end.
pub fn per_turn(ends: [(Hand, f64); 2], turning: Turning, from: usize) -> PerTurn {
    let at = |end: usize| {
        let (hand, pitch) = ends[end];
        let seen_there = if end == from { turning } else { turning.opposite() };
        if bar_unscrews(hand) == seen_there { pitch } else { -pitch }
    };
    let out = [at(0), at(1)];
    PerTurn { out, longer: out[0] + out[1] }
}

/// Which way to turn the bar, seen from the eye at end A, so that the link becomes longer; none where turning the bar
/// does not change its length.
pub fn lengthens(ends: [(Hand, f64); 2]) -> Option<Turning> {
    let longer = per_turn(ends, Turning::Clockwise, 0).longer;
    // Pitches are typed as their table prints them, so like pitches are alike to the last bit.
    if longer > 0.0 {
        Some(Turning::Clockwise)
    } else if longer < 0.0 {
        Some(Turning::Counterclockwise)
    } else {
        None
    }
}
