//! The parts of a quote: at the price of the book, else of the list of stock.

use super::super::stock;
use super::Item;
use super::lines::{Job, Lines};
use crate::document::{Document, Hand};
use crate::inputs::{self, At};
use crate::report::Part;
use crate::shop::money::{Quantity, Rate};
use crate::shop::prices::{Charge, Sought};
use crate::shop::{INSERTS, NUTS, Per};

impl Lines<'_> {
    /// Its rod ends, but for those that the customer brings.
    pub(super) fn rod_ends(&mut self, document: &Document, job: &Job) {
        let Some(link) = document.links.get(job.index) else { return };
        for (at, (end, decided)) in job.answer.link.ends.iter().zip(&link.ends).enumerate() {
            if stock::is_theirs(decided) {
                self.theirs += job.pieces;
                continue;
            }
            let listed = stock::listed(self.lists, end);
            let priced = listed.and_then(|row| Some((row.name.clone(), row.price?)));
            let part = Part::RodEnd {
                name: end.rod_end,
                thread: end.thread,
                hand: end.hand,
                steel: inputs::shank_steel(document, At { end: at, ..At::of_link(document, job.index) }),
                count: job.pieces,
            };
            self.bought(job, Charge::RodEnd, part, Some(end.thread.id), priced);
        }
    }

    /// A part that is bought, at the price of the book, else of the list.
    fn bought(
        &mut self,
        job: &Job,
        charge: Charge,
        part: Part,
        thread: Option<&'static str>,
        priced: Option<(String, Rate)>,
    ) {
        let quantity = Quantity::pieces(part.count());
        let item = Item { charge, link: Some(job.index), part: Some(part) };
        match (self.book().find(charge, &Sought { thread, ..job.sought }, self.links), priced) {
            (Some(row), _) => self.charge(item, row, quantity),
            (None, Some((name, rate))) => self.push(item, &name, [quantity.0, rate.0], Per::Piece, true),
            (None, None) => self.missing.push(item),
        }
    }

    /// Any other part that is bought for it.
    pub(super) fn part(&mut self, job: &Job, part: &Part) {
        let (charge, thread, priced) = match part {
            Part::Bar { .. } | Part::RodEnd { .. } => return,
            Part::JamNut { thread, hand, .. } => (Charge::JamNut, Some(thread.id), self.nut(thread.id, *hand)),
            Part::Insert { thread, hand, outside_diameter, flange, .. } => {
                // The list holds inserts without a flange.
                let plain = (*flange <= 0.0).then(|| self.insert(thread.id, *hand, *outside_diameter)).flatten();
                (Charge::Insert, Some(thread.id), plain)
            }
            Part::Bolt { .. } => (Charge::Bolt, None, None),
            Part::LockNut { .. } => (Charge::LockNut, None, None),
            Part::Spacer { .. } => (Charge::Spacer, None, None),
        };
        self.bought(job, charge, part.clone(), thread, priced);
    }

    /// The price of a jam nut in the list.
    fn nut(&self, thread: &str, hand: Hand) -> Option<(String, Rate)> {
        stock::usable(&self.lists.nuts.rows, NUTS)
            .filter(|row| row.thread == Some(thread) && row.hand == Some(hand))
            .find_map(|row| Some((row.name.clone(), row.price?)))
    }

    /// The price of an insert in the list.
    fn insert(&self, thread: &str, hand: Hand, outside: f64) -> Option<(String, Rate)> {
        stock::usable(&self.lists.inserts.rows, INSERTS)
            .filter(|row| row.thread == Some(thread) && row.hand == Some(hand))
            .filter(|row| row.outside_diameter.is_some_and(|its| stock::slips_in(its, outside)))
            .find_map(|row| Some((row.name.clone(), row.price?)))
    }
}
