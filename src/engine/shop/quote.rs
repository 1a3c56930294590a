//! What an order costs, from the shop's own price book.
//!
//! A quantity is charged to a thousandth of its unit, and each line is rounded once to whole cents, half away from zero;
//! the total is the sum of the lines as they stand. What has no price is named, never counted as nothing: a price of 0 in
//! the book says that something is included. The price book goes before the prices in the lists of stock. A quantity break
//! is taken off what the links cost, not off what an order costs once; the least order counts neither shipping nor tax.

mod bought;
mod lines;
mod weight;

use crate::document::Document;
use crate::inputs::pieces_of;
use crate::report::{LinkReport, Part};
use crate::shop::Lists;
use crate::shop::Per;
use crate::shop::money::{Cents, Quantity, Rate};
use crate::shop::prices::{Charge, Price, Sought};
use lines::Lines;
pub(super) use lines::{in_length, in_weight};

/// What is charged for.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// Which kind of charge.
    pub charge: Charge,
    /// For which link; `None` for what the order as a whole costs.
    pub link: Option<usize>,
    /// For which part, where it is one.
    pub part: Option<Part>,
}

/// How a line comes to its amount.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// A quantity at a rate.
    Rate {
        /// How much.
        quantity: Quantity,
        /// Of what.
        per: Per,
        /// What one costs.
        rate: Rate,
    },
    /// A percentage of an amount, which is taken off for a quantity break.
    Percent {
        /// How many percent.
        percent: Rate,
        /// Of how much.
        of: Cents,
    },
    /// What is missing up to the least order.
    UpTo(Cents),
}

/// A line of a quote.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What is charged for.
    pub item: Item,
    /// What the shop's own row is called.
    pub name: String,
    /// How it comes to its amount.
    pub how: How,
    /// The amount; less than nothing where it is taken off.
    pub amount: Cents,
    /// Whether the price stands in a list of stock, for want of a row in the price book.
    pub from_stock: bool,
}

/// A kind of part that is shipped beside the bars.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unweighed {
    /// As it is charged for.
    pub charge: Charge,
    /// How many have no listed weight.
    pub count: usize,
    /// How many there are.
    pub of: usize,
}

/// A quote.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Quote {
    /// Its lines, in the order they are added up.
    pub lines: Vec<Line>,
    /// What is taken off for the quantity; 0 or less.
    pub discount: Cents,
    /// Everything but tax.
    pub subtotal: Cents,
    /// Tax; `None` when the price book has none.
    pub tax: Option<Cents>,
    /// The sum of all lines.
    pub total: Cents,
    /// What has no price, so that the total is without it.
    pub missing: Vec<Item>,
    /// Links without an answer, which are not in it.
    pub unanswered: Vec<usize>,
    /// Links to make.
    pub links: usize,
    /// Rod ends that the customer brings, which are not charged.
    pub theirs: usize,
    /// Weight of the bars, and of the parts whose weight a list gives, as a force; without packing.
    pub weight: f64,
    /// Each kind of part that is shipped beside the bars, with how many of it have no listed weight.
    pub unweighed: Vec<Unweighed>,
    /// Whether shipping is charged by that weight.
    pub shipped_by_weight: bool,
    /// The longest bar.
    pub longest: f64,
    /// Working days until it leaves: those of the rows it rests on, each counted once; `None` when no row has any.
    pub days: Option<u32>,
}

/// What the links of a document cost together, from the reports on them in their order.
pub fn quote(document: &Document, reports: &[LinkReport], lists: &Lists) -> Quote {
    let mut quote = Quote::default();
    for index in 0..document.links.len() {
        match reports.get(index).and_then(LinkReport::answer) {
            Some(_) => quote.links += pieces_of(document, index),
            None => quote.unanswered.push(index),
        }
    }
    if quote.links == 0 {
        return quote;
    }
    let mut lines = Lines::new(lists, quote.links);
    for (index, report) in reports.iter().enumerate().take(document.links.len()) {
        if let Some(answer) = report.answer() {
            lines.link(document, index, answer);
            weight::weigh(&mut quote, document, index, answer, lists);
        }
    }
    of_the_order(&mut quote, &mut lines);
    quote.total = lines.sum(|_| true);
    (quote.lines, quote.missing, quote.days, quote.theirs) = (lines.lines, lines.missing, lines.days, lines.theirs);
    quote
}

/// Discount, what the order costs by itself, shipping and tax, in this order.
fn of_the_order(quote: &mut Quote, lines: &mut Lines) {
    let book = lines.book();
    let links = u32::try_from(quote.links).unwrap_or(u32::MAX);
    let reached = book.of(Charge::Break).filter(|row| row.from.unwrap_or(0) <= links);
    if let Some(row) = reached.max_by_key(|row| row.from.unwrap_or(0)) {
        let of = lines.sum(|line| line.item.link.is_some());
        quote.discount = lines.percent(row, of, true);
    }
    let each = Quantity::pieces(quote.links);
    let once = Quantity::pieces(1);
    for charge in [Charge::Order, Charge::Packing] {
        if let Some(row) = book.find(charge, &Sought::default(), links) {
            lines.of_order(row, if row.per() == Some(Per::Piece) { each } else { once });
        }
    }
    let so_far = lines.sum(|_| true);
    if let Some(row) = book.find(Charge::Least, &Sought::default(), links) {
        lines.up_to(row, so_far);
    }
    let taxed_before_shipping = lines.sum(|_| true);
    match book.find(Charge::Shipping, &Sought::default(), links) {
        Some(row) => {
            let quantity = match row.per() {
                Some(Per::Piece) => each,
                Some(per @ (Per::Pound | Per::Kilogram)) => {
                    quote.shipped_by_weight = true;
                    lines::in_weight(quote.weight, per)
                }
                _ => once,
            };
            lines.of_order(row, quantity);
        }
        None => lines.missing.push(Item { charge: Charge::Shipping, link: None, part: None }),
    }
    quote.subtotal = lines.sum(|_| true);
    for (charge, of) in [(Charge::Tax, taxed_before_shipping), (Charge::TaxWithShipping, quote.subtotal)] {
        let rows: Vec<&Price> = book.of(charge).collect();
        for row in rows {
            let amount = lines.percent(row, of, false);
            quote.tax = Some(quote.tax.into_iter().chain([amount]).sum());
        }
    }
    if let Some(row) = book.find(Charge::LeadTime, &Sought::default(), links) {
        lines.takes(row);
    }
}
