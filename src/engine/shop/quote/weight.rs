//! What an order weighs and how long it is, for shipping: the bars, and every part whose weight a list gives.

use super::super::stock;
use super::{Quote, Unweighed};
use crate::document::{Document, Hand};
use crate::engine;
use crate::inputs::pieces_of;
use crate::quantity::exceeds;
use crate::report::{Answer, Part};
use crate::shop::prices::Charge;
use crate::shop::{INSERTS, Lists, NUTS};

/// Readings within a hundredth of a millimeter are one reading.
const SAME: f64 = 1e-5;

/// Adds what a link weighs and how long it is to what is shipped.
pub(super) fn weigh(quote: &mut Quote, document: &Document, index: usize, answer: &Answer, lists: &Lists) {
    let (pieces, made) = (pieces_of(document, index), &answer.link);
    quote.weight += pieces as f64 * made.bar_weight;
    quote.longest = quote.longest.max(made.bar);
    let Some(link) = document.links.get(index) else { return };
    for (end, decided) in made.ends.iter().zip(&link.ends) {
        if !stock::is_theirs(decided) {
            let weight = stock::listed(lists, end).and_then(|row| row.weight);
            add(quote, Charge::RodEnd, pieces, weight);
        }
    }
    for part in engine::parts(document, index, answer) {
        let (charge, weight) = match part {
            Part::Bar { .. } | Part::RodEnd { .. } => continue,
            Part::JamNut { thread, hand, .. } => (Charge::JamNut, nut(lists, thread.id, hand)),
            Part::Insert { thread, hand, outside_diameter, .. } => {
                (Charge::Insert, insert(lists, thread.id, hand, outside_diameter))
            }
            Part::Spacer { long, .. } => (Charge::Spacer, spacer(lists, answer, long)),
            Part::Bolt { .. } => (Charge::Bolt, None),
            Part::LockNut { .. } => (Charge::LockNut, None),
        };
        add(quote, charge, part.count(), weight);
    }
}

/// Adds so many of a part, with what one weighs where that is known.
fn add(quote: &mut Quote, charge: Charge, count: usize, weight: Option<f64>) {
    let known = quote.unweighed.iter().position(|it| it.charge == charge).unwrap_or_else(|| {
        quote.unweighed.push(Unweighed { charge, count: 0, of: 0 });
        quote.unweighed.len() - 1
    });
    if let Some(part) = quote.unweighed.get_mut(known) {
        part.of += count;
        part.count += if weight.is_none() { count } else { 0 };
    }
    quote.weight += count as f64 * weight.unwrap_or(0.0);
}

/// What a jam nut of the list weighs.
fn nut(lists: &Lists, thread: &str, hand: Hand) -> Option<f64> {
    stock::usable(&lists.nuts.rows, NUTS)
        .filter(|row| row.thread == Some(thread) && row.hand == Some(hand))
        .find_map(|row| row.weight)
}

/// What an insert of the list weighs.
fn insert(lists: &Lists, thread: &str, hand: Hand, outside: f64) -> Option<f64> {
    stock::usable(&lists.inserts.rows, INSERTS)
        .filter(|row| row.thread == Some(thread) && row.hand == Some(hand))
        .filter(|row| row.outside_diameter.is_some_and(|its| stock::slips_in(its, outside)))
        .find_map(|row| row.weight)
}

/// What a spacer of a length weighs that goes with one of the link's rod ends in the list.
fn spacer(lists: &Lists, answer: &Answer, long: f64) -> Option<f64> {
    let rows = answer.link.ends.iter().filter_map(|end| stock::listed(lists, end));
    rows.filter(|row| row.spacer.is_some_and(|its| !exceeds((its - long).abs(), SAME)))
        .find_map(|row| row.spacer_weight)
}
