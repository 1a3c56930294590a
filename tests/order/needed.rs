//! What an order still needs.

use crate::dice::Dice;
use crate::links::{answer, sized};
use linkwright::document::{Document, Finish, Hand, MeasuredOn, ORDER_TEXTS, OWN_ROD_END, Spacers, SuppliedBy};
use linkwright::engine::report_on;
use linkwright::engine::shop::code::code_of_rig;
use linkwright::inputs::drafts::{Drafts, Typed};
use linkwright::inputs::{At, CHOICES, HAND, LENGTH, NUMBERS, POSITION, QUANTITY, ROLE};
use linkwright::present::order::needed::{Row, State, rows, still_needed};
use linkwright::present::order::not_taken::sentence;
use linkwright::quantity::{System, inch};
use linkwright::share::{from_fragment, to_fragment};

fn asked(document: &Document) -> Vec<Row> {
    rows(document, 0, &report_on(document, 0), System::Inch)
}

/// What the head of the order says.
fn counted(document: &Document) -> String {
    still_needed(document, &[report_on(document, 0)], 0, System::Inch)
}

fn row<'a>(rows: &'a [Row], question: &str) -> &'a Row {
    rows.iter().find(|row| row.question.contains(question)).unwrap_or_else(|| panic!("{question}: {rows:#?}"))
}

fn state(rows: &[Row], question: &str) -> (State, String) {
    let row = row(rows, question);
    (row.state, row.known.clone())
}

/// An order of the shop's own rod ends with everything said.
fn complete() -> Document {
    let mut document = sized(2.0, "wide-16", "wide-16");
    let link = &mut document.links[0];
    link.seat = Some(linkwright::document::Side::Both);
    link.measured_on = Some(MeasuredOn::Rig);
    link.quantity = Some(2.0);
    link.finish = Some(Finish::Polished);
    (link.spacer, link.gap) = (Some(0.0), Some(0.0));
    for (end, hand) in link.ends.iter_mut().zip([Hand::Right, Hand::Left]) {
        (end.supplied_by, end.hand, end.bolt_diameter) = (Some(SuppliedBy::Shop), Some(hand), Some(inch(1.0)));
    }
    document
}

#[test]
fn nothing_is_known_of_a_new_rig() {
    let rows = asked(&Document::default());
    let missing: Vec<&str> =
        rows.iter().filter(|row| row.state == State::Missing).map(|row| row.question.as_str()).collect();
    assert_eq!(
        missing,
        [
            "How far is it from hole center to hole center, mount to mount?",
            "How was that measured?",
            "Whose rod end goes on end A?",
            "Whose rod end goes on end B?",
            "How is the rig used?",
            "What does the rig weigh, loaded as it is driven?",
        ]
    );
    assert_eq!(counted(&Document::default()), "6 still needed");
    assert_eq!(state(&rows, "How many"), (State::ByDefault, "Taken as 2.".to_string()));
    assert_eq!(state(&rows, "Which link"), (State::ByDefault, "Taken as front lower links.".to_string()));
    assert_eq!(state(&rows, "finished"), (State::ByDefault, "As turned, as is usual.".to_string()));
    assert_eq!(state(&rows, "own reference").0, State::LeftOpen);
}

#[test]
fn the_questions_stand_in_the_order_of_the_phone() {
    let asked: Vec<String> = asked(&complete()).into_iter().map(|row| row.question).collect();
    assert_eq!(
        asked,
        [
            "Which link is it?",
            "Which rig is it on?",
            "How far is it from hole center to hole center, mount to mount?",
            "How was that measured?",
            "Whose rod end goes on end A?",
            "Whose rod end goes on end B?",
            "Which thread, and which hand, at end A?",
            "Which thread, and which hand, at end B?",
            "Which bolt goes through end A?",
            "Which bolt goes through end B?",
            "What fills each bracket, from ear to ear?",
            "How is the rig used?",
            "What does the rig weigh, loaded as it is driven?",
            "How many of this link are to be made?",
            "How is the bar finished?",
            "Is there anything else the shop should know?",
            "What is the customer’s own reference?",
            "When is it wanted?",
        ]
    );
}

#[test]
fn a_complete_order_lacks_nothing() {
    let mut document = complete();
    let rows = asked(&document);
    assert_eq!(counted(&document), "Nothing is missing.");
    assert!(rows.iter().all(|row| matches!(row.state, State::Said | State::LeftOpen)), "{rows:#?}");
    assert_eq!(state(&rows, "mount to mount").1, "38 in");
    assert_eq!(state(&rows, "hand, at end B").1, "1-1/4-12, left-hand");
    assert_eq!(state(&rows, "finished").1, "Polished. Polish before tapping, or plug the holes.");
    assert_eq!(state(&rows, "each bracket").1, "A ball 1.375 in wide with no spacer and no open gap on each side");
    document.order.wanted = "2026-12-24".to_string();
    assert_eq!(state(&asked(&document), "wanted"), (State::Said, "December 24, 2026".to_string()));
    // A reference that looks like a day stays as the customer wrote it.
    document.order.reference = "2026-12-14".to_string();
    assert_eq!(state(&asked(&document), "own reference").1, "2026-12-14");
}

#[test]
fn a_customers_rod_end_must_be_measured() {
    let mut document = complete();
    document.links[0].ends[1].supplied_by = Some(SuppliedBy::Customer);
    let rows = asked(&document);
    assert_eq!(counted(&document), "4 still needed", "three readings, and the thread with its hand");
    let (state_of, known) = state(&rows, "shank end on the rod end at B");
    assert_eq!(state_of, State::Missing);
    assert_eq!(known, "Taken as 4.125 in from a table, not measured on the customer’s own.");
    let end = &mut document.links[0].ends[1];
    (end.rod_end, end.own_thread) = (Some(OWN_ROD_END), Some("1-1/4-12"));
    (end.own_eye_to_end, end.own_bore) = (Some(inch(4.3)), Some(inch(1.0)));
    let rows = asked(&document);
    assert_eq!(counted(&document), "1 still needed");
    assert_eq!(row(&rows, "How long is the thread").inputs, ["own-t"]);
    document.links[0].ends[1].own_thread_length = Some(inch(2.5));
    assert_eq!(counted(&document), "Nothing is missing.");
    document.links[0].ends[1].hand = None;
    let rows = asked(&document);
    assert_eq!(state(&rows, "hand, at end B").0, State::Missing, "both ends of one hand are the costliest mistake");
}

/// An answer that is as usual is an answer: it is kept, it travels, and it makes no other bar.
#[test]
fn the_usual_can_be_said() {
    let mut document = complete();
    let taken = rows(&Document::default(), 0, &report_on(&Document::default(), 0), System::Inch);
    assert_eq!(state(&taken, "Which link").0, State::ByDefault);
    document.links[0].seat = None;
    let before = code_of_rig(&document, &[report_on(&document, 0)]);
    let at_b = At { end: 1, ..At::default() };
    for (choice, place, id) in
        [(&ROLE, At::default(), "lower"), (&POSITION, At::default(), "front"), (&HAND, at_b, "lh")]
    {
        assert!((choice.set)(&mut document, place, Some(id)));
        assert_eq!((choice.get)(&document, place), Some(id));
    }
    assert_eq!(state(&asked(&document), "Which link").0, State::Said);
    assert_eq!(from_fragment(&to_fragment(&document)).document, document);
    assert_eq!(code_of_rig(&document, &[report_on(&document, 0)]), before);
    (ROLE.set)(&mut document, At::default(), None);
    (POSITION.set)(&mut document, At::default(), None);
    assert_eq!(state(&asked(&document), "Which link").0, State::ByDefault);
}

/// A measured rod end says nothing of the one at the other end.
#[test]
fn ours_is_not_taken_from_the_customers() {
    let mut document = complete();
    let link = &mut document.links[0];
    link.ends[0].rod_end = None;
    link.ends[1].supplied_by = Some(SuppliedBy::Customer);
    link.ends[1].rod_end = Some(OWN_ROD_END);
    link.ends[1].own_thread = Some("1-1/4-12");
    let readings = (Some(inch(3.9)), Some(inch(2.4)), Some(inch(1.0)));
    (link.ends[1].own_eye_to_end, link.ends[1].own_thread_length, link.ends[1].own_bore) = readings;
    let made = answer(&document).link;
    assert!(made.provisional, "nobody measured the end at A");
    assert_ne!(made.ends[0].rod_end_id, OWN_ROD_END);
    assert_eq!(made.ends[0].thread.id, "1-1/4-12", "a table row of the same thread");
    assert!((made.ends[0].eye_to_end - inch(3.9)).abs() > 1e-4);
    // What was picked for A stays.
    document.links[0].ends[0].rod_end = Some("wide-16");
    assert_eq!(answer(&document).link.ends[0].rod_end_id, "wide-16");
    // Both measured: final.
    let measured = document.links[0].ends[1].clone();
    let end = &mut document.links[0].ends[0];
    (end.rod_end, end.own_thread) = (measured.rod_end, measured.own_thread);
    (end.own_eye_to_end, end.own_thread_length, end.own_bore) = readings;
    assert!(!answer(&document).link.provisional);
}

#[test]
fn not_known_is_still_needed() {
    let mut document = complete();
    document.links[0].measured_on = Some(MeasuredOn::NotKnown);
    document.links[0].ends[0].supplied_by = Some(SuppliedBy::NotKnown);
    assert_eq!(counted(&document), "2 still needed");
    document.links[0].spacer_kind = Some(Spacers::HighMisalignment);
    document.links[0].spacer = Some(inch(0.5));
    document.links[0].ends[0].bolt_diameter = None;
    assert_eq!(counted(&document), "3 still needed", "only the customer knows the stepped bolt");
}

#[test]
fn what_cannot_be_made_is_the_first_question() {
    let mut document = complete();
    document.links[0].ends[0].bolt_diameter = Some(inch(2.0));
    let rows = asked(&document);
    assert_eq!(rows[0].state, State::Missing);
    assert!(rows[0].known.contains("does not go through"), "{}", rows[0].known);
}

#[test]
fn every_question_can_be_answered() {
    let mut dice = Dice(23);
    let known = |id: &str| {
        id == "name"
            || NUMBERS.iter().any(|input| input.id == id)
            || CHOICES.iter().any(|choice| choice.id == id)
            || ORDER_TEXTS.iter().any(|text| text.id == id)
    };
    for _ in 0..40 {
        let document = dice.rig();
        for system in [System::Inch, System::Metric] {
            for row in rows(&document, 0, &report_on(&document, 0), system) {
                assert!(row.inputs.iter().all(|id| known(id)), "{row:?}");
                assert!(!row.known.is_empty() && !row.known.contains("NaN") && !row.known.contains("  "), "{row:?}");
                let settled = row.question.starts_with("What must be settled");
                assert!(row.question.ends_with('?') && (settled || !row.inputs.is_empty()), "{row:?}");
            }
        }
    }
}

/// What was typed and not taken holds the order back, and is told beside what the order is for.
#[test]
fn a_refused_entry_is_still_needed() {
    let mut document = complete();
    let mut drafts = Drafts::default();
    let place = At::default();
    for (input, typed, told) in [
        (&QUANTITY, "5000", "How many to make: 5000 was not taken; this order is for 2."),
        (&LENGTH, "200", "Mount to mount: 200 was not taken; this order is for 38 in."),
    ] {
        let at = (input, place);
        drafts.type_into(&mut document, System::Inch, at, typed.to_string(), Typed::Whole);
        let refused = drafts.refused(&document, System::Inch);
        assert_eq!(sentence(&document, refused.last().expect("refused")), told);
    }
    let count = drafts.refused(&document, System::Inch).len();
    assert_eq!(still_needed(&document, &[report_on(&document, 0)], count, System::Inch), "2 still needed");
}
