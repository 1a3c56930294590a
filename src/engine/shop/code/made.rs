//! What is made as bytes that are the same wherever they are written: the entries, then what follows from them.

use crate::document::{Document, Hand};
use crate::inputs::{At, CHOICES, FINISH, HAND, NUMBERS, POSITION, QUANTITY, ROLE, SEAT, SKIM, Scope};
use crate::report::{Answer, EndGeometry, LinkGeometry};

/// Lengths that follow are told apart by the micrometer: no shop measures less, and a later version that rounds a last
/// bit otherwise makes the same bar.
const STEPS_PER_METER: f64 = 1e6;

/// Inputs that are asked for on the phone and make the same whether they are said or taken.
const SAID_OR_TAKEN: [&str; 7] = [QUANTITY.id, SKIM.id, FINISH.id, HAND.id, ROLE.id, POSITION.id, SEAT.id];

/// Bytes in which no two different lists of values look alike: each value stands after its length.
#[derive(Default)]
struct Bytes(Vec<u8>);

impl Bytes {
    fn put(&mut self, bytes: &[u8]) {
        // No value is as long as four gigabytes.
        self.0.extend((bytes.len() as u32).to_be_bytes());
        self.0.extend(bytes);
    }

    fn text(&mut self, text: &str) {
        self.put(text.as_bytes());
    }

    /// A length that follows, to the micrometer.
    fn length(&mut self, value: f64) {
        // A length of a link in micrometers fits; what is no number is zero.
        self.put(&((value * STEPS_PER_METER).round() as i64).to_be_bytes());
    }

    /// Everything decided at one place, by the ids of its inputs.
    fn decided(&mut self, document: &Document, scope: Scope, place: At) {
        for input in NUMBERS.iter().filter(|input| input.scope == scope) {
            let usual = (input.default)(document, place).filter(|_| SAID_OR_TAKEN.contains(&input.id)).map(entry);
            if let Some(value) = (input.get)(document, place).map(entry).filter(|value| usual.as_ref() != Some(value)) {
                self.text(input.id);
                self.text(&value);
            }
        }
        for choice in CHOICES.iter().filter(|choice| choice.scope == scope) {
            let usual = (choice.default)(document, place).filter(|_| SAID_OR_TAKEN.contains(&choice.id));
            if let Some(id) = (choice.get)(document, place).filter(|id| usual != Some(*id)) {
                self.text(choice.id);
                self.text(id);
            }
        }
        // Where this place ends.
        self.text("");
    }

    /// The bar as it comes out.
    fn bar(&mut self, made: &LinkGeometry) {
        self.text(made.material.id);
        for length in [made.outside_diameter, made.wall, made.length, made.bar, made.cut] {
            self.length(length);
        }
        if let Some(flats) = made.cut_flats() {
            [flats.start, flats.length, flats.width].into_iter().for_each(|length| self.length(length));
        }
        self.text("");
    }

    /// One end as it comes out.
    fn end(&mut self, end: &EndGeometry) {
        self.text(end.rod_end_id);
        self.text(end.thread.id);
        self.text(if end.hand == Hand::Left { "lh" } else { "rh" });
        for length in [end.bore, end.eye_to_end, end.eye_to_face, end.tapped_depth, end.drill_depth, end.drill_point] {
            self.length(length);
        }
        if let Some(insert) = &end.insert {
            self.length(insert.outside_diameter);
            self.length(insert.length);
            // A plain insert has none, and its codes stand as they were.
            if insert.shoulder > 0.0 {
                self.length(insert.shoulder);
            }
        }
        self.text("");
    }
}

/// An entry to nine digits, so that 36.5 in and 927.1 mm are one length; what is as good as nothing is zero, as a link
/// carries it.
fn entry(value: f64) -> String {
    let value = if value.abs() < 1e-12 { 0.0 } else { value };
    format!("{value:.8e}")
}

/// The bytes of one link: what was entered for it and what follows.
pub fn bytes_of_link(document: &Document, link: usize, answer: &Answer) -> Vec<u8> {
    let place = At::of_link(document, link);
    let mut bytes = Bytes::default();
    bytes.decided(document, Scope::Link, place);
    for end in [0, 1] {
        bytes.decided(document, Scope::End, At { end, ..place });
    }
    bytes.text(&entry(QUANTITY.value(document, place).unwrap_or(1.0)));
    bytes.text(FINISH.value(document, place).unwrap_or_default());
    bytes.bar(&answer.link);
    answer.link.ends.iter().for_each(|end| bytes.end(end));
    bytes.0
}

/// The bytes of what one link is made of, whatever side it sits on and however many there are.
pub(super) fn bytes_of_made(document: &Document, link: usize, answer: &Answer) -> Vec<u8> {
    let mut bytes = Bytes::default();
    bytes.text(FINISH.value(document, At::of_link(document, link)).unwrap_or_default());
    bytes.bar(&answer.link);
    answer.link.ends.iter().for_each(|end| bytes.end(end));
    bytes.0
}

/// The bytes of an order: what was entered for the rig and its axles, then the bytes of its links.
pub(super) fn whole(document: &Document, links: &[Vec<u8>]) -> Vec<u8> {
    let mut bytes = Bytes::default();
    bytes.decided(document, Scope::Rig, At::default());
    for axle in [0, 1] {
        bytes.decided(document, Scope::Axle, At::of_axle(axle));
    }
    links.iter().for_each(|link| bytes.put(link));
    bytes.0
}
