//! The order within a link: what is kept carries all of it, what is sent only what is ticked.

use super::text::{from_ascii, in_ascii};
use super::to_fragment;
use crate::document::{Document, Link, ORDER_TEXTS, Order};

/// What of an order is sent beside what is made and how many; nothing unless it is ticked. Prices stand in no document,
/// so no link can carry one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Sent {
    /// The customer reference.
    pub reference: bool,
    /// The remarks.
    pub remarks: bool,
}

/// The document as it is sent.
pub fn sent(document: &Document, sent: Sent) -> Document {
    let order = &document.order;
    let ticked = |ticked: bool, text: &String| if ticked { text.clone() } else { String::new() };
    let order = Order {
        reference: ticked(sent.reference, &order.reference),
        remarks: ticked(sent.remarks, &order.remarks),
        ..Order::default()
    };
    let links = document.links.iter().map(|link| Link { made: Vec::new(), ..link.clone() });
    Document { order: Box::new(order), name: document.name.clone(), rig: document.rig.clone(), links: links.collect() }
}

/// The fragment of a document as it is sent: see [`sent`].
pub fn to_send(document: &Document, what: Sent) -> String {
    to_fragment(&sent(document, what))
}

/// What is made, without the order and without the name.
pub fn made_of(document: &Document) -> Document {
    Document { name: String::new(), ..sent(document, Sent::default()) }
}

/// What was said: what is made, for whom, by when and with which remarks, without the name of the rig.
pub fn said_of(document: &Document) -> Document {
    let mut said = made_of(document);
    let order = &document.order;
    said.order.reference.clone_from(&order.reference);
    said.order.remarks.clone_from(&order.remarks);
    said.order.wanted.clone_from(&order.wanted);
    said
}

/// All entries as a text that an order keeps, to tell later what has changed.
pub fn snapshot(document: &Document) -> String {
    to_fragment(&said_of(document))
}

/// Adds what an order says to the parts of a fragment.
pub(super) fn write(order: &Order, parts: &mut Vec<String>) {
    for text in &ORDER_TEXTS {
        let said = (text.get)(order);
        if !said.is_empty() {
            parts.push(format!("{}={}", text.id, in_ascii(said)));
        }
    }
}

/// Takes a text of an order out of a fragment; nothing where the name is none of an order's.
pub(super) fn take(order: &mut Order, name: &str, value: &str) -> Option<Result<(), String>> {
    let text = ORDER_TEXTS.iter().find(|text| text.id == name)?;
    let said = from_ascii(value).filter(|said| !said.is_empty());
    let taken = said.is_some_and(|said| (text.set)(order, &said));
    Some(if taken {
        Ok(())
    } else {
        Err(format!("{}: what the link says cannot be read and was left out.", text.label))
    })
}
