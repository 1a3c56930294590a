//! The lines of a quote: what one link takes, priced.

use super::super::stock;
use super::{How, Item, Line};
use crate::document::{Document, Finish};
use crate::engine;
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, sections};
use crate::engine::tables::materials::Form;
use crate::inputs::pieces_of;
use crate::quantity::{INCH, POUND_FORCE, STANDARD_GRAVITY};
use crate::report::{Answer, Part};
use crate::shop::money::{Cents, Quantity, Rate};
use crate::shop::prices::{Charge, Price, PriceBook, Sought};
use crate::shop::{Lists, Per};

/// Lines as they are added, and what has no price.
pub(super) struct Lines<'a> {
    pub(super) lists: &'a Lists,
    /// Links of the whole order, by which prices may change.
    pub(super) links: u32,
    pub(super) lines: Vec<Line>,
    pub(super) missing: Vec<Item>,
    pub(super) days: Option<u32>,
    pub(super) theirs: usize,
    /// Rows whose days are counted, and those that are charged once for the whole order.
    counted: Vec<&'a Price>,
    once: Vec<&'a Price>,
}

/// One link, and what a price is looked for by.
pub(super) struct Job<'a> {
    pub(super) index: usize,
    pub(super) pieces: usize,
    pub(super) answer: &'a Answer,
    pub(super) sought: Sought,
    /// Length of the bar or tube to saw, and what a blank weighs.
    cut: f64,
    blank: f64,
}

/// So many units of length.
pub(in crate::engine::shop) fn in_length(length: f64, per: Per) -> Option<Quantity> {
    let unit = match per {
        Per::Inch => INCH,
        Per::Foot => 12.0 * INCH,
        Per::Millimeter => return Some(Quantity::nearest(length * 1e3)),
        Per::Meter => 1.0,
        _ => return None,
    };
    Some(Quantity::nearest(length / unit))
}

/// So many units of weight.
pub(in crate::engine::shop) fn in_weight(weight: f64, per: Per) -> Quantity {
    Quantity::nearest(weight / if per == Per::Kilogram { STANDARD_GRAVITY } else { POUND_FORCE })
}

impl<'a> Lines<'a> {
    pub(super) fn new(lists: &'a Lists, links: usize) -> Self {
        let links = u32::try_from(links).unwrap_or(u32::MAX);
        let (lines, missing, counted, once) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        Self { lists, links, lines, missing, days: None, theirs: 0, counted, once }
    }

    pub(super) fn book(&self) -> &'a PriceBook {
        &self.lists.prices
    }

    /// The sum of some of the lines.
    pub(super) fn sum(&self, of: impl Fn(&Line) -> bool) -> Cents {
        self.lines.iter().filter(|line| of(line)).map(|line| line.amount).sum()
    }

    /// Counts the days of a row, once.
    pub(super) fn takes(&mut self, row: &'a Price) {
        if let Some(days) = row.days
            && !self.counted.iter().any(|known| std::ptr::eq(*known, row))
        {
            self.counted.push(row);
            self.days = Some(self.days.unwrap_or(0).saturating_add(days));
        }
    }

    /// A line at a rate: a quantity and what one costs.
    pub(super) fn push(&mut self, item: Item, name: &str, [quantity, rate]: [i64; 2], per: Per, from_stock: bool) {
        let (quantity, rate) = (Quantity(quantity), Rate(rate));
        let how = How::Rate { quantity, per, rate };
        self.lines.push(Line { item, name: name.to_string(), how, amount: rate.times(quantity), from_stock });
    }

    /// A line of the price book.
    pub(super) fn charge(&mut self, item: Item, row: &'a Price, quantity: Quantity) {
        let (Some(rate), Some(per)) = (row.price, row.per()) else { return };
        self.takes(row);
        let (mut item, mut quantity) = (item, quantity);
        if per == Per::Order {
            // However many links it is for, it is charged once.
            if self.once.iter().any(|known| std::ptr::eq(*known, row)) {
                return;
            }
            self.once.push(row);
            (item.link, quantity) = (None, Quantity::pieces(1));
        }
        self.push(item, &row.name, [quantity.0, rate.0], per, false);
    }

    /// What the order costs by itself.
    pub(super) fn of_order(&mut self, row: &'a Price, quantity: Quantity) {
        if let Some(charge) = row.charge {
            self.charge(Item { charge, link: None, part: None }, row, quantity);
        }
    }

    /// A percentage of an amount, added or taken off; gives the amount of the line.
    pub(super) fn percent(&mut self, row: &'a Price, of: Cents, off: bool) -> Cents {
        let (Some(charge), Some(percent)) = (row.charge, row.percent) else { return Cents(0) };
        self.takes(row);
        let amount = percent.percent_of(of);
        let amount = if off { -amount } else { amount };
        let item = Item { charge, link: None, part: None };
        let how = How::Percent { percent, of };
        self.lines.push(Line { item, name: row.name.clone(), how, amount, from_stock: false });
        amount
    }

    /// What is missing up to the least order, if anything is.
    pub(super) fn up_to(&mut self, row: &'a Price, so_far: Cents) {
        let Some(least) = row.price.map(|rate| rate.times(Quantity::pieces(1))) else { return };
        if so_far < least {
            let item = Item { charge: Charge::Least, link: None, part: None };
            let amount = [least, -so_far].into_iter().sum();
            self.lines.push(Line { item, name: row.name.clone(), how: How::UpTo(least), amount, from_stock: false });
        }
    }

    /// Everything that one link takes.
    pub(super) fn link(&mut self, document: &Document, index: usize, answer: &Answer) {
        let (parts, pieces) = (engine::parts(document, index, answer), pieces_of(document, index));
        let Some(Part::Bar { material, outside_diameter, wall, cuts }) = parts.first() else { return };
        let bore = if *wall > 0.0 { (outside_diameter - 2.0 * wall).max(0.0) } else { 0.0 };
        let cut = cuts.first().map_or(0.0, |cut| cut.length);
        let sheet = &mut Sheet::silent();
        let area = sheet.work(&sections::RING_AREA, &[*outside_diameter, bore]);
        let job = Job {
            index,
            pieces,
            answer,
            sought: Sought {
                metal: Some(material.id),
                outside_diameter: Some(*outside_diameter),
                wall: (*wall > 0.0).then_some(*wall),
                thread: None,
            },
            cut,
            blank: sheet.work(&lengths::BAR_WEIGHT, &[material.density, area, cut]),
        };
        self.material(&job);
        self.operations(document, &job);
        self.rod_ends(document, &job);
        for part in &parts {
            self.part(&job, part);
        }
    }

    fn material(&mut self, job: &Job) {
        let item = Item { charge: Charge::Material, link: Some(job.index), part: None };
        let quantity = |per: Per| match per {
            Per::Pound | Per::Kilogram => in_weight(job.pieces as f64 * job.blank, per),
            _ => in_length(job.pieces as f64 * job.cut, per).unwrap_or(Quantity::pieces(job.pieces)),
        };
        if let Some(row) = self.book().find(Charge::Material, &job.sought, self.links) {
            let quantity = row.per().map_or(Quantity::default(), quantity);
            return self.charge(item, row, quantity);
        }
        let made = &job.answer.link;
        let priced = stock::of_size(self.lists, made.material, job.sought).find_map(|bar| {
            let (price, per) = (bar.price?, bar.per?);
            Some((bar.name.clone(), price, per))
        });
        match priced {
            Some((name, rate, per)) => self.push(item, &name, [quantity(per).0, rate.0], per, true),
            None => self.missing.push(item),
        }
    }

    /// A charge that every link of this kind takes, by the piece, by its length or once an order.
    fn each(&mut self, job: &Job, charge: Charge) {
        let item = Item { charge, link: Some(job.index), part: None };
        match self.book().find(charge, &job.sought, self.links) {
            Some(row) => {
                let length = row.per().and_then(|per| in_length(job.pieces as f64 * job.cut, per));
                self.charge(item, row, length.unwrap_or(Quantity::pieces(job.pieces)));
            }
            None => self.missing.push(item),
        }
    }

    /// A charge for both ends, whose threads may have prices of their own.
    fn both_ends(&mut self, job: &Job, charge: Charge) {
        let item = || Item { charge, link: Some(job.index), part: None };
        let of_end = |end: usize| {
            let thread = job.answer.link.ends.get(end).map(|end| end.thread.id);
            self.book().find(charge, &Sought { thread, ..job.sought }, self.links)
        };
        let ends = |row: &Price, count: usize| {
            Quantity::pieces(if row.per() == Some(Per::End) { count * job.pieces } else { job.pieces })
        };
        match [of_end(0), of_end(1)] {
            [Some(a), Some(b)] if std::ptr::eq(a, b) => self.charge(item(), a, ends(a, 2)),
            [None, None] => self.missing.push(item()),
            rows => {
                for row in rows {
                    match row {
                        Some(row) => self.charge(item(), row, ends(row, 1)),
                        None => self.missing.push(item()),
                    }
                }
            }
        }
    }

    fn operations(&mut self, document: &Document, job: &Job) {
        let made = &job.answer.link;
        self.each(job, Charge::Saw);
        self.both_ends(job, Charge::Face);
        self.both_ends(job, Charge::DrillAndTap);
        if made.is_skimmed() {
            self.each(job, Charge::Skim);
        }
        if made.cut_flats().is_some() {
            self.each(job, Charge::Flats);
        }
        if made.material.form == Form::Tube {
            self.both_ends(job, Charge::Weld);
        }
        match document.links.get(job.index).and_then(|link| link.finish) {
            Some(Finish::Polished) => self.each(job, Charge::Polish),
            Some(Finish::Anodized) => self.each(job, Charge::Anodize),
            Some(Finish::AsTurned) | None => {}
        }
        self.each(job, Charge::SetUp);
    }
}
