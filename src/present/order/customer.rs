//! A quote as the customer gets it: what is made, what it costs, what keeps it from being made, and no hint for the shop.

use super::mounts;
use super::needed::failing;
use super::quote::{NOTHING, QuoteTable, ROUNDING, table, without};
use crate::document::{Document, day_in_words};
use crate::engine::shop::quote::Quote;
use crate::present::words::{Units, headline, length, titled, value};
use crate::quantity::{Kind, System};
use crate::report::{Answer, LinkReport};

/// The quote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CustomerQuote {
    /// The customer's reference and the day it is wanted, as far as they were said.
    pub said: Vec<String>,
    /// What keeps the order from being made.
    pub stops: Vec<String>,
    /// What is made: the lines of each link, its title first.
    pub links: Vec<Vec<String>>,
    /// What it costs.
    pub table: QuoteTable,
}

/// The quote for the customer; `changed` says what has changed since the yes, nothing while all is as it was confirmed.
pub fn customer_quote(
    document: &Document,
    reports: &[LinkReport],
    quote: &Quote,
    changed: &[String],
    system: System,
) -> CustomerQuote {
    let order = &document.order;
    let reference =
        Some(&order.reference).filter(|text| !text.is_empty()).map(|text| format!("Your reference: {text}"));
    let wanted = Some(day_in_words(&order.wanted)).filter(|day| !day.is_empty()).map(|day| format!("Wanted by: {day}"));
    let links = reports.iter().enumerate().filter_map(|(link, report)| Some(made(document, link, report.answer()?)));
    let weighed = quote
        .shipped_by_weight
        .then(|| format!("Shipping is charged on {}.", value(quote.weight, Kind::Weight, system)));
    CustomerQuote {
        said: reference.into_iter().chain(wanted).collect(),
        stops: changed.first().cloned().into_iter().chain(failing(document, reports)).collect(),
        links: links.collect(),
        table: QuoteTable {
            lacking: without(quote, document).map(|without| format!("The total is without {without}.")),
            weighed,
            remarks: remarks(quote),
            ..table(quote, document, system)
        },
    }
}

/// What is made of one link.
fn made(document: &Document, link: usize, answer: &Answer) -> Vec<String> {
    let made = &answer.link;
    let [given, bar] = [made.length, made.bar].map(|value| length(value, Units::Both));
    let mut lines = vec![
        titled(document, link),
        headline(made, Units::Both),
        format!("Eye to eye of the finished link, as set: {given}"),
        format!("Bar, face to face: {bar}"),
    ];
    if made.provisional {
        lines.push("The bar length stands only until the rod ends are measured.".to_string());
    }
    lines.extend(mounts::one_hand(made));
    lines
}

/// What else the customer should know of the sum.
fn remarks(quote: &Quote) -> Vec<String> {
    let theirs = match quote.theirs {
        0 => None,
        1 => Some("One rod end is your own and is not charged.".to_string()),
        theirs => Some(format!("{theirs} rod ends are your own and are not charged.")),
    };
    let tax = quote.tax.is_none().then(|| "No tax is added.".to_string());
    let days = quote.days.map(|days| match days {
        1 => "Lead time: 1 working day.".to_string(),
        days => format!("Lead time: {days} working days."),
    });
    theirs.into_iter().chain(tax).chain(days).chain([ROUNDING.to_string()]).collect()
}

/// The same as lines of text, to send.
pub fn text(quote: &CustomerQuote) -> Vec<String> {
    let CustomerQuote { said, stops, links, table } = quote;
    if links.is_empty() {
        return vec![NOTHING.to_string()];
    }
    let mut lines = vec!["Quote".to_string()];
    lines.extend(said.iter().chain(stops).cloned());
    lines.extend(links.iter().flatten().cloned());
    lines.push(String::new());
    for row in &table.rows {
        let link = if row.link.is_empty() { String::new() } else { format!("{}, ", row.link) };
        lines.push(format!("{link}{}: {} = {}", row.what, row.how, row.amount));
    }
    lines.push(String::new());
    if let Some(tax) = &table.tax {
        lines.push(format!("Before tax: {}", table.subtotal));
        lines.push(format!("{}, {}: {}", tax.what, tax.how, tax.amount));
    }
    lines.push(format!("{}: {}", table.total_label, table.total));
    lines.extend(table.lacking.clone());
    lines.extend(table.weighed.clone());
    lines.extend(table.remarks.iter().cloned());
    lines
}
