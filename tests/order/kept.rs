//! What an order says is kept in links and files to the letter; what is sent carries only what is made.

use crate::dice::{self, Dice};
use crate::links::{hard, sized};
use linkwright::builds::{Build, from_text, to_text};
use linkwright::differences::differences;
use linkwright::document::{
    Document, LONGEST_REMARKS, Link, MOST_STEPS, ORDER_TEXTS, Order, Stage, day_in_words, is_date, tidy_remarks,
};
use linkwright::engine::report;
use linkwright::inputs::{NUMBERS, places};
use linkwright::quantity::System;
use linkwright::share::{Sent, from_fragment, made_of, said_of, snapshot, to_fragment, to_send};

#[test]
fn an_order_comes_back_from_link_and_file_to_the_letter() {
    dice::in_four_threads(1_219, |mut dice| {
        for number in 0..100 {
            let mut document = dice.rig();
            *document.order = dice.order();
            let fragment = to_fragment(&document);
            let opened = from_fragment(&fragment);
            assert!(
                opened.notices.is_empty() && opened.document == document,
                "{number}: {fragment}\n{:?}",
                opened.notices
            );
            assert!(fragment.bytes().all(|byte| byte.is_ascii_graphic()), "{number}: {fragment}");
            let build = Build { id: "b".to_string(), document, ..Build::default() };
            let read = from_text(&to_text(std::slice::from_ref(&build))).expect("a file");
            assert!(read.notices.is_empty() && read.builds == [build], "{number}: {:?}", read.notices);
        }
    });
}

#[test]
fn no_number_rests_on_an_order() {
    let mut dice = Dice(42);
    let known = report(&hard());
    for _ in 0..5 {
        let document = Document { order: Box::new(dice.order()), ..hard() };
        assert!(report(&document) == known);
    }
}

#[test]
fn what_is_sent_carries_only_what_is_made_and_what_is_ticked() {
    let mut dice = Dice(7);
    for _ in 0..200 {
        let mut document = dice.rig();
        *document.order = dice.order();
        let plain = Document { order: Box::default(), ..document.clone() };
        assert_eq!(to_send(&document, Sent::default()), to_fragment(&plain));
        for what in [Sent { reference: true, remarks: false }, Sent { reference: false, remarks: true }] {
            let order = from_fragment(&to_send(&document, what)).document.order;
            let known = &document.order;
            let wanted = |ticked: bool, text: &String| if ticked { text.clone() } else { String::new() };
            assert_eq!(order.reference, wanted(what.reference, &known.reference));
            assert_eq!(order.remarks, wanted(what.remarks, &known.remarks));
            let rest = Order { reference: String::new(), remarks: String::new(), ..*order };
            assert_eq!(rest, Order::default(), "nothing else of the order");
        }
    }
}

#[test]
fn a_snapshot_is_what_was_said() {
    let mut document = sized(2.0, "wide-16", "wide-16");
    document.name = "Blue".to_string();
    let plain = snapshot(&document);
    assert_eq!(from_fragment(&plain).document, made_of(&document));
    *document.order = Dice(3).order();
    let opened = from_fragment(&snapshot(&document)).document;
    assert_eq!(opened, said_of(&document));
    let (said, all) = (&opened.order, &document.order);
    assert_eq!((&said.reference, &said.remarks, &said.wanted), (&all.reference, &all.remarks, &all.wanted));
    assert!(!said.yes.is_given() && said.first_said.is_empty() && said.stage == Stage::Asked);
    assert_eq!(made_of(&document).name, "");
}

#[test]
fn a_rig_with_everything_decided_and_two_snapshots_of_it_fits_a_link() {
    let mut document = Document { links: vec![Link::default(); 40], ..Document::default() };
    for input in NUMBERS {
        for place in places(&document, input.scope) {
            let value = input.whole(input.least + 0.37 * (input.most - input.least));
            (input.set)(&mut document, place, Some(value));
        }
    }
    let all = snapshot(&document);
    document.order.first_said = all.clone();
    document.order.yes.snapshot = all;
    for _ in 0..MOST_STEPS {
        document.order.ask(&"é".repeat(60), "2026-11-30T10:00:00.000Z", "K7QM-2XPA-B");
    }
    let opened = from_fragment(&to_fragment(&document));
    assert!(opened.notices.is_empty() && opened.document == document, "{:?}", opened.notices);
}

#[test]
fn an_order_that_cannot_be_read_is_told() {
    for part in [
        "order-wanted=2026-02-30",
        "order-wanted=tomorrow",
        "order-stage=asked_for",
        "order-stage=",
        "order-reference=_x",
        "order-remarks=.0a",
        "yes-at=.3cscript.3e",
        "yes-code=.26",
        "first-said=.c3.a9",
        "yes-to=a_b",
        &format!("order-remarks={}", "x".repeat(LONGEST_REMARKS + 1)),
        &format!("order-reference={}", "x".repeat(61)),
    ] {
        // Without a check: that is told too.
        let opened = from_fragment(&format!("3&weight=4100lb&{part}"));
        assert_eq!(
            (*opened.document.order, opened.notices.len()),
            (Order::default(), 2),
            "{part}: {:?}",
            opened.notices
        );
        assert!(opened.document.rig.weight.is_some(), "{part}");
    }
    let build = Build { id: "b".to_string(), document: hard(), ..Build::default() };
    let text = to_text(&[build]).replace("\"links\":", "\"order\": { \"order-wanted\": \"soon\" }, \"links\":");
    let read = from_text(&text).expect("a file");
    assert!(read.notices[0].contains("“order-wanted”"), "{:?}", read.notices);
    assert_eq!(read.builds[0].document, hard());
}

#[test]
fn days_are_those_of_the_calendar() {
    for day in ["2026-12-24", "2028-02-29", "2000-02-29", "2026-01-31", "0001-01-01"] {
        assert!(is_date(day), "{day}");
    }
    for day in [
        "",
        "2026-2-3",
        "2026-02-29",
        "2100-02-29",
        "2026-13-01",
        "2026-00-10",
        "2026-04-31",
        "2026-01-00",
        "24.12.2026",
        "2026-12-24T",
        "2026/12/24",
        "２０２６-12-24",
        "+026-12-24",
    ] {
        assert!(!is_date(day), "{day}");
    }
}

#[test]
fn days_are_told_in_words_and_kept_as_iso() {
    for (day, words) in [
        ("2026-12-14", "December 14, 2026"),
        ("2028-02-29", "February 29, 2028"),
        ("2027-01-01", "January 1, 2027"),
        ("2026-02-29", "2026-02-29"),
        ("soon", "soon"),
        ("", ""),
    ] {
        assert_eq!(day_in_words(day), words);
    }
    let mut document = hard();
    document.order.wanted = "2026-12-14".to_string();
    assert!(to_fragment(&document).contains("order-wanted=2026-12-14"));
    let build = Build { id: "b".to_string(), document, ..Build::default() };
    assert!(to_text(&[build]).contains("\"2026-12-14\""));
}

#[test]
fn a_changed_order_is_a_difference() {
    let before = hard();
    let mut after = hard();
    after.order.reference = "PO 17".to_string();
    after.order.stage = Stage::Confirmed;
    after.order.first_said = snapshot(&before);
    let told =
        |before, after| differences(before, after).iter().map(|it| it.sentence(System::Inch)).collect::<Vec<_>>();
    assert_eq!(
        told(&before, &after),
        [
            "Order: Customer reference: “PO 17”, before left open",
            "Order: Stage: Confirmed, before Asked for",
            "Order: What was first said: recorded, before left open",
        ]
    );
    assert_eq!(
        told(&after, &before),
        [
            "Order: Customer reference: left open, before “PO 17”",
            "Order: Stage: Asked for, before Confirmed",
            "Order: What was first said: left open, before recorded",
        ]
    );
}

#[test]
fn texts_are_tidy_however_often_they_are_tidied() {
    let mut dice = Dice(11);
    for _ in 0..200 {
        let order = dice.order();
        assert_eq!(tidy_remarks(&order.remarks), order.remarks);
        assert!(order.remarks.chars().count() <= LONGEST_REMARKS);
        let mut copy = Order::default();
        for text in &ORDER_TEXTS {
            let said = (text.get)(&order);
            assert!(said.is_empty() || (text.set)(&mut copy, said), "{}: {said:?}", text.id);
        }
        assert_eq!(copy, order);
    }
    assert_eq!(tidy_remarks("  two\nlines\u{202e} "), "two lines");
}
