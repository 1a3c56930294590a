//! What fits on a card for the pocket: of each link how far it may go, which way lengthens, and its torque.

use super::torque_card::{self, BoltToTighten};
use crate::document::{Document, Hand, Role};
use crate::engine::formula::Sheet;
use crate::engine::tables::jam_torque::{self, TorqueRange};
use crate::engine::tables::threads::Thread;
use crate::report::{Answer, Verdict};

/// What the card says of a link. Lengths SI.
#[derive(Debug, Clone, PartialEq)]
pub struct CardLink {
    /// Eye to eye as set.
    pub length: f64,
    /// Eye to eye at the inward stop.
    pub shortest: f64,
    /// Eye to eye at the outward stop.
    pub longest: f64,
    /// Whether the ends have opposite hands, so that turning the bar changes the length.
    pub opposite_hands: bool,
    /// Change of length for one turn of the bar; 0 when turning it changes nothing.
    pub per_turn: f64,
    /// Which way to turn the bar, seen from end A.
    pub turning: Option<&'static str>,
    /// Whether the lengths stand on a published series until the rod ends are measured.
    pub provisional: bool,
    /// Whether it steers or holds the axle sideways, so that no bend is good.
    pub never_bent: bool,
    /// Whether a part of it fails, so that it must not be fitted.
    pub fails: bool,
    /// Diameter and torque of the bolt through each eye; none where no torque is published for it, or it is not known.
    pub bolts: [Option<(f64, f64)>; 2],
    /// End A and end B.
    pub ends: [CardEnd; 2],
}

/// What the card says of an end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CardEnd {
    /// Shank thread.
    pub thread: &'static Thread,
    /// Hand of thread.
    pub hand: Hand,
    /// Wrench for the jam nut: its width across flats.
    pub wrench: f64,
    /// Torque of the jam nut with anti-seize on the shank.
    pub torque: TorqueRange,
    /// Threads that show past the jam nut as set.
    pub showing: f64,
    /// Most threads that may show.
    pub most_showing: f64,
    /// Eye center to bar face as set.
    pub eye_to_face: f64,
}

/// The card's part for one link of a document.
pub fn card_link(document: &Document, index: usize, answer: &Answer) -> CardLink {
    let bolt = |bolt: &BoltToTighten| match bolt {
        BoltToTighten::Published { torque, diameter, .. } => Some((*diameter, *torque)),
        BoltToTighten::NotJudged(_) => None,
    };
    let bolts = torque_card::card(document, index, answer).map(|ends| ends.each_ref().map(|end| bolt(&end.bolt)));
    let link = &answer.link;
    let ends = link.ends.each_ref().map(|end| CardEnd {
        thread: end.thread,
        hand: end.hand,
        wrench: end.jam_nut_across,
        torque: jam_torque::range(end.thread, &mut Sheet::silent()),
        showing: end.visible_threads,
        most_showing: end.stop.visible_threads,
        eye_to_face: end.eye_to_face,
    });
    let reach = link.adjustment.reach;
    CardLink {
        length: link.length,
        shortest: link.length - reach.in_limit,
        longest: link.length + reach.out_good,
        opposite_hands: link.adjustment.opposite_hands,
        per_turn: link.adjustment.per_turn,
        turning: link.adjustment.turning,
        provisional: link.provisional,
        never_bent: answer.role.steers() || answer.role == Role::TrackBar,
        fails: answer.verdict == Verdict::Fails,
        bolts: bolts.unwrap_or_default(),
        ends,
    }
}
