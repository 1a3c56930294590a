//! What is half typed: when it counts, when it is taken back, and what fields show meanwhile.

use linkwright::document::{Document, Hand};
use linkwright::inputs::drafts::{Drafts, Taken, Typed};
use linkwright::inputs::{At, Group, LENGTH, ROD_END, WEIGHT, YIELD_FACTOR, edits};
use linkwright::present::field::{self, with_fraction};
use linkwright::quantity::{System, inch, mm};

/// Somebody who types into the length of the first link.
struct Typist {
    document: Document,
    drafts: Drafts,
    system: System,
}

impl Typist {
    fn new(length: Option<f64>) -> Self {
        let mut document = Document::default();
        (LENGTH.set)(&mut document, At::default(), length);
        Self { document, drafts: Drafts::default(), system: System::Inch }
    }

    fn types(&mut self, text: &str, typed: Typed) -> Taken {
        let field = (&LENGTH, At::default());
        self.drafts.type_into(&mut self.document, self.system, field, text.to_string(), typed)
    }

    /// Every key of a text, one after the other.
    fn keys(&mut self, text: &str) {
        for end in 1..=text.len() {
            self.types(&text[..end], Typed::Key);
        }
    }

    fn value(&self) -> Option<f64> {
        (LENGTH.get)(&self.document, At::default())
    }

    fn shows(&self) -> field::NumberText {
        field::number(&self.document, &self.drafts, self.system, &LENGTH, At::default())
    }
}

#[test]
fn each_key_counts_as_soon_as_it_can_be_read() {
    let mut typist = Typist::new(None);
    typist.keys("36 1/2");
    assert_eq!(typist.value(), Some(inch(36.5)));
    assert_eq!(typist.shows().text, "36 1/2", "the text stays as it was typed");
    assert!(typist.shows().complaint.is_none());
}

#[test]
fn a_refused_entry_takes_back_what_its_beginning_said() {
    let mut typist = Typist::new(Some(inch(30.0)));
    typist.keys("927");
    assert_eq!(typist.value(), Some(inch(92.0)), "92 in can be taken, 927 in cannot");
    assert!(typist.shows().complaint.is_none(), "no complaint interrupts");
    assert_eq!(typist.types("927", Typed::Whole), Taken::TakenBack);
    assert_eq!(typist.value(), Some(inch(30.0)));
    assert!(typist.shows().complaint.is_some());
    assert_eq!(typist.shows().text, "927");
}

#[test]
fn a_refused_entry_can_be_read_again_in_other_units() {
    let mut typist = Typist::new(Some(inch(30.0)));
    typist.keys("927");
    typist.types("927", Typed::Whole);
    let refused = typist.drafts.refused(&typist.document, System::Inch);
    assert_eq!(refused.len(), 1);
    typist.system = System::Metric;
    assert_eq!(typist.types(&refused[0].text, Typed::Whole), Taken::Changed);
    assert_eq!(typist.value(), Some(mm(927.0)));
}

#[test]
fn a_field_emptied_in_order_to_retype_it_keeps_its_value_until_it_is_left() {
    let mut typist = Typist::new(Some(inch(30.0)));
    assert_eq!(typist.types("", Typed::Key), Taken::Unchanged);
    assert_eq!(typist.value(), Some(inch(30.0)));
    assert_eq!(typist.types("", Typed::Whole), Taken::Changed);
    assert_eq!(typist.value(), None);
}

#[test]
fn a_draft_is_gone_once_the_document_says_something_else() {
    let mut typist = Typist::new(None);
    typist.keys("36.50");
    assert_eq!(typist.shows().text, "36.50");
    (LENGTH.set)(&mut typist.document, At::default(), Some(inch(40.0)));
    assert_eq!(typist.shows().text, "40");
}

#[test]
fn a_draft_of_the_rig_stands_in_every_form() {
    let mut drafts = Drafts::default();
    let mut document = Document::default();
    let place = At::of_link(&document, 0);
    drafts.type_into(&mut document, System::Inch, (&WEIGHT, place), "x".into(), Typed::Whole);
    assert!(drafts.of(&document, System::Inch, &WEIGHT, At::default()).is_some());
    assert!(drafts.of(&document, System::Metric, &WEIGHT, At::default()).is_none(), "typed in other units");
}

#[test]
fn a_fraction_takes_the_place_of_the_one_that_stands_there() {
    let cases = [
        ("", "1/2", "1/2"),
        ("36", "1/2", "36 1/2"),
        ("36 1/4", "1/2", "36 1/2"),
        ("36-1/4", "1/2", "36 1/2"),
        ("36.25", "1/2", "36 1/2"),
        ("36\"", "3/8", "36 3/8"),
        ("3' 0", "1/2", "3' 0 1/2"),
        ("3' 0-1/4\"", "1/2", "3' 0 1/2"),
        ("1/4", "1/2", "1/2"),
    ];
    for (text, fraction, wanted) in cases {
        let found = with_fraction(text, fraction);
        assert_eq!(found, wanted, "{text:?} with {fraction}");
        assert!(LENGTH.read(&found, System::Inch).is_ok() || found.starts_with('1'), "{found} cannot be read");
    }
}

#[test]
fn a_step_leads_to_the_next_mark_of_the_tape_measure() {
    let stepped = |length, system, direction| {
        let typist = Typist::new(length);
        field::stepped(&typist.document, system, &LENGTH, At::default(), direction)
    };
    assert_eq!(stepped(None, System::Inch, 1.0), None, "from nowhere");
    let read = |text: Option<String>, system| LENGTH.read(&text.expect("a length"), system).expect("readable");
    let up = read(stepped(Some(inch(36.03)), System::Inch, 1.0), System::Inch).expect("a length");
    assert!((up - inch(36.0625)).abs() < 1e-9, "{up}");
    let down = read(stepped(Some(mm(927.2)), System::Metric, -1.0), System::Metric).expect("a length");
    assert!((down - mm(926.0)).abs() < 1e-9, "{down}");
}

#[test]
fn end_b_becomes_like_end_a_but_keeps_its_hand() {
    let mut document = Document::default();
    let row = (ROD_END.options)().last().map(|option| option.id);
    let ends = &mut document.links[0].ends;
    (ends[0].rod_end, ends[0].hand, ends[1].hand) = (row, Some(Hand::Right), Some(Hand::Left));
    assert_eq!(edits::count_decided(&document, Group::Ends, At::default()), 3);
    edits::copy_end(&mut document, Group::Ends, At::default());
    let [a, b] = &document.links[0].ends;
    assert_eq!((b.rod_end, b.hand), (a.rod_end, Some(Hand::Left)));
    assert_eq!(edits::count_decided(&document, Group::Ends, At::default()), 4);
}

#[test]
fn defaults_come_back_and_entries_stay() {
    let mut document = Typist::new(Some(inch(36.0))).document;
    assert!(!edits::has_changed_defaults(&document, At::default()), "a length is no default");
    (YIELD_FACTOR.set)(&mut document, At::default(), Some(2.0));
    assert!(edits::has_changed_defaults(&document, At::default()));
    edits::reset_defaults(&mut document, At::default());
    assert_eq!(document, Typist::new(Some(inch(36.0))).document);
}
