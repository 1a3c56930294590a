//! A quote as rows, with what the shop should know of it. There is no currency in it: the shop knows its own.

use crate::document::{Document, Link};
use crate::engine::shop::quote::{How, Item, Line, Quote, Unweighed};
use crate::inputs::pieces_of;
use crate::present::words::{length, lower, trade, value};
use crate::quantity::{Kind, System};
use crate::report::Part;
use crate::shop::prices::{Charge, label_of};

/// How amounts are rounded.
pub const ROUNDING: &str = "Each line is rounded once to whole cents, half a cent up; the total is the sum of the lines. Lengths and weights are charged to a thousandth of their unit.";

/// Said where the shop has no price.
pub const NO_PRICES: &str = "No price is built in. Enter your own in the price book below, or import it as a CSV file.";

/// Said where an order has no answer to be priced.
pub const NOTHING: &str = "There is nothing to quote until a link has an answer.";

/// A row of a quote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QuoteRow {
    /// Which link it is for; empty for what the order costs by itself.
    pub link: String,
    /// What is charged for, as the shop's own row calls it.
    pub what: String,
    /// How it comes to its amount: `65.75 in at 1.85 per in`.
    pub how: String,
    /// The amount.
    pub amount: String,
}

/// A quote as it is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QuoteTable {
    /// Its lines.
    pub rows: Vec<QuoteRow>,
    /// Everything but tax.
    pub subtotal: String,
    /// Tax, and how it comes to its amount; none where the price book has none.
    pub tax: Option<QuoteRow>,
    /// What stands before the sum: it says what is not in it.
    pub total_label: String,
    /// The sum.
    pub total: String,
    /// What the sum is without, to stand right beneath it; none where everything has a price.
    pub lacking: Option<String>,
    /// What shipping is charged on, to stand beneath that.
    pub weighed: Option<String>,
    /// What else the reader should know: tax, lead time, rounding.
    pub remarks: Vec<String>,
}

/// A quote in the reader's units.
pub fn table(quote: &Quote, document: &Document, system: System) -> QuoteTable {
    QuoteTable {
        rows: quote.lines.iter().filter(|line| !is_tax(line)).map(|line| row(line, document, system)).collect(),
        subtotal: quote.subtotal.to_string(),
        tax: quote.lines.iter().find(|line| is_tax(line)).map(|line| row(line, document, system)),
        total_label: total_label(quote, document),
        total: quote.total.to_string(),
        lacking: lacking(quote, document),
        weighed: Some(weighed(quote, system)),
        remarks: remarks(quote, system),
    }
}

/// The total's label: it says how many links the sum is without.
fn total_label(quote: &Quote, document: &Document) -> String {
    match quote.unanswered.iter().map(|link| pieces_of(document, *link)).sum() {
        0_usize => "Total".to_string(),
        1 => "Total (1 link is not in this quote)".to_string(),
        open => format!("Total ({open} links are not in this quote)"),
    }
}

/// Tax stands below the other lines.
const fn is_tax(line: &Line) -> bool {
    matches!(line.item.charge, Charge::Tax | Charge::TaxWithShipping)
}

fn row(line: &Line, document: &Document, system: System) -> QuoteRow {
    let link = line.item.link.and_then(|link| document.links.get(link)).map(Link::title).unwrap_or_default();
    let how = match line.how {
        How::Rate { quantity, per, rate } => match label_of(per) {
            Some("piece" | "end" | "order") => format!("{quantity} at {rate} each"),
            Some(unit) => format!("{quantity} {unit} at {rate} per {unit}"),
            None => format!("{quantity} at {rate}"),
        },
        How::Percent { percent, of } if line.item.charge == Charge::Break => format!("{percent} % off {of}"),
        How::Percent { percent, of } => format!("{percent} % of {of}"),
        How::UpTo(least) => format!("up to {least}"),
    };
    let what = if line.name.is_empty() { line.item.charge.label() } else { &line.name };
    // Right-hand and left-hand parts stand in lines of their own.
    let what = match &line.item.part {
        Some(Part::RodEnd { hand, .. } | Part::JamNut { hand, .. } | Part::Insert { hand, .. }) => {
            format!("{what}, {}", hand.words())
        }
        Some(Part::Bolt { bolt: Some(bolt), .. } | Part::LockNut { bolt: Some(bolt), .. }) => {
            format!("{what}, {}", trade(bolt.diameter, system))
        }
        Some(Part::Spacer { bore: Some(bore), long, .. }) => {
            format!("{what}, for a {} bolt, {} long", trade(*bore, system), length(*long, system))
        }
        _ => what.to_string(),
    };
    QuoteRow { link, what, how, amount: line.amount.to_string() }
}

/// What the total is without, in a phrase; `None` when everything has a price.
pub fn without(quote: &Quote, document: &Document) -> Option<String> {
    let mut named: Vec<(Charge, Vec<usize>)> = Vec::new();
    for Item { charge, link, .. } in &quote.missing {
        let at = named.iter().position(|(known, _)| known == charge).unwrap_or_else(|| {
            named.push((*charge, Vec::new()));
            named.len() - 1
        });
        if let (Some((_, links)), Some(link)) = (named.get_mut(at), link)
            && !links.contains(link)
        {
            links.push(*link);
        }
    }
    let answered = document.links.len() - quote.unanswered.len().min(document.links.len());
    let names = named
        .iter()
        .map(|(charge, links)| {
            if links.is_empty() || links.len() == answered {
                return noun(*charge).to_string();
            }
            let titles = links.iter().filter_map(|link| document.links.get(*link));
            let titles: Vec<String> = titles.map(|link| lower(&link.title())).collect();
            format!("{} for {}", noun(*charge), titles.join(" and "))
        })
        .collect();
    listed(names)
}

/// Names as a phrase: `bolts, lock nuts and spacers`; none without a name.
fn listed(mut names: Vec<String>) -> Option<String> {
    let last = names.pop()?;
    Some(if names.is_empty() { last } else { format!("{} and {last}", names.join(", ")) })
}

/// What the sum is without.
fn lacking(quote: &Quote, document: &Document) -> Option<String> {
    let without = without(quote, document)?;
    Some(format!(
        "The total is without {without}, for which the price book has no price. Enter 0 for what is included in another price."
    ))
}

/// What is weighed, and what is not.
fn weighed(quote: &Quote, system: System) -> String {
    let mut open: Vec<String> = quote.unweighed.iter().filter_map(unweighed).collect();
    open.push("packing".to_string());
    let (weight, open) = (value(quote.weight, Kind::Weight, system), listed(open).unwrap_or_default());
    if quote.shipped_by_weight {
        format!(
            "Shipping is charged on {weight}: the bars, and the parts whose weight your lists give. Not weighed: {open}."
        )
    } else {
        format!("The bars, and the parts whose weight your lists give, weigh {weight}. Not weighed: {open}.")
    }
}

/// What of a kind of part has no listed weight; none where every one has.
fn unweighed(part: &Unweighed) -> Option<String> {
    let noun = noun(part.charge);
    match part.count {
        0 => None,
        all if all == part.of => Some(noun.to_string()),
        some => Some(format!("{some} of {} {noun}", part.of)),
    }
}

fn noun(charge: Charge) -> &'static str {
    match charge {
        Charge::Material => "material",
        Charge::Saw => "sawing",
        Charge::Face => "facing",
        Charge::DrillAndTap => "drilling and tapping",
        Charge::Flats => "wrench flats",
        Charge::Skim => "the skim pass",
        Charge::Weld => "welding",
        Charge::SetUp => "set-up",
        Charge::Polish => "polishing",
        Charge::Anodize => "anodizing",
        Charge::RodEnd => "rod ends",
        Charge::JamNut => "jam nuts",
        Charge::Insert => "threaded inserts",
        Charge::Bolt => "bolts",
        Charge::LockNut => "lock nuts",
        Charge::Spacer => "spacers",
        Charge::Shipping => "shipping",
        // These are named by the book, and never missing.
        Charge::Order
        | Charge::Packing
        | Charge::Least
        | Charge::Break
        | Charge::Tax
        | Charge::TaxWithShipping
        | Charge::LeadTime => charge.label(),
    }
}

fn remarks(quote: &Quote, system: System) -> Vec<String> {
    let mut remarks = Vec::new();
    match quote.unanswered.len() {
        0 => {}
        1 => remarks.push("One entry has no answer yet and is not in this quote.".to_string()),
        open => remarks.push(format!("{open} entries have no answer yet and are not in this quote.")),
    }
    match quote.theirs {
        0 => {}
        1 => remarks.push("One rod end is the customer’s own and is not charged.".to_string()),
        theirs => remarks.push(format!("{theirs} rod ends are the customer’s own and are not charged.")),
    }
    if quote.tax.is_none() {
        remarks.push("The price book has no tax, so none is added.".to_string());
    }
    let from_stock = quote.lines.iter().filter(|line| line.from_stock).count();
    if from_stock > 0 {
        remarks.push("Where the price book has no row, the price in the list of stock is charged.".to_string());
    }
    remarks.push(format!("The longest bar is {}.", length(quote.longest, system)));
    remarks.push(match quote.days {
        Some(1) => "Lead time: 1 working day.".to_string(),
        Some(days) => format!("Lead time: {days} working days."),
        None => "The price book gives no lead time.".to_string(),
    });
    remarks.push(ROUNDING.to_string());
    remarks
}
