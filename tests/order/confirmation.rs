//! The confirmation and the yes: what was confirmed is what is cut, or everybody is told.

use crate::links::{hard, sized};
use linkwright::document::{Document, Hand, Happened, History, Order, Stage, SuppliedBy};
use linkwright::engine::report;
use linkwright::engine::shop::code::{code_of_rig, yes};
use linkwright::present::order::confirmation::{
    already_cut, changed_since_yes, is_read_back, not_yet_to_saw, stages, text,
};
use linkwright::present::order::message::short_text;
use linkwright::present::order::needed::obstacles;
use linkwright::quantity::{System, inch};
use linkwright::report::{LinkReport, Verdict};
use linkwright::share::{Sent, from_fragment, snapshot, to_fragment};
use std::sync::Arc;

/// An order that was confirmed.
fn confirmed() -> Document {
    let mut document = sized(2.5, "wide-16", "wide-16");
    let reports = report(&document).links;
    document.order.yes = yes(&document, &reports, " The  customer", "2026-11-30T10:00:00.000Z").expect("a code");
    document.order.read_back.clone_from(&document.order.yes.code);
    document.order.stage = Stage::Confirmed;
    document
}

fn changed(document: &Document) -> Option<Vec<String>> {
    changed_since_yes(document, code_of_rig(document, &report(document).links))
        .map(|changed| changed.lines(System::Inch))
}

#[test]
fn an_order_as_confirmed_is_quiet() {
    let document = confirmed();
    assert_eq!(document.order.yes.by, "The customer");
    assert_eq!(changed(&document), None);
    assert_eq!(changed(&hard()), None, "no yes, nothing to change from");
    let elsewhere = from_fragment(&to_fragment(&document)).document;
    assert_eq!(changed(&elsewhere), None, "on a second device too");
}

#[test]
fn name_and_stage_change_nothing_that_was_confirmed() {
    let mut document = confirmed();
    document.name = "Blue".to_string();
    document.order.stage = Stage::Cut;
    assert_eq!(changed(&document), None);
}

#[test]
fn a_change_after_the_yes_is_told_with_what_changed() {
    let mut document = confirmed();
    document.links[0].length = Some(inch(38.25));
    document.links[0].ends[1].hand = Some(Hand::Right);
    let lines = changed(&document).expect("a change");
    assert_eq!(lines[0], "Changed since the yes. Do not cut: read it back and ask for a new yes.");
    assert!(lines[1].starts_with("Order code confirmed: "), "{lines:?}");
    assert_eq!(lines[2], "Front lower links: Mount to mount: 38-1/4 in, before 38 in.");
    assert!(lines.iter().any(|line| line.contains("Hand of thread at B: Right-hand")), "{lines:?}");
    document.links[0].length = None;
    assert!(changed(&document).is_some(), "nor can what has no answer any more pass");
}

#[test]
fn another_bar_from_the_same_entries_is_told() {
    let document = confirmed();
    let mut answer = report(&document).links[0].answer().expect("an answer").clone();
    answer.link.bar += inch(1.0 / 16.0);
    let found = changed_since_yes(&document, code_of_rig(&document, &[LinkReport::Answer(Arc::new(answer))]))
        .expect("another bar");
    assert!(found.sentence.starts_with("The same entries now give another bar"), "{}", found.sentence);
    assert!(found.differences.is_empty());
    assert_eq!(found.lines(System::Inch).len(), 2, "with both codes");
    let found = changed_since_yes(&document, code_of_rig(&document, &[LinkReport::Needs(Vec::new())])).expect("no bar");
    assert!(found.sentence.starts_with("The same entries no longer give a bar"), "{}", found.sentence);
}

#[test]
fn a_yes_that_cannot_be_read_is_no_yes() {
    let mut document = confirmed();
    document.order.yes.code = "AAAA-AAAA-B".to_string();
    assert!(changed(&document).expect("no code")[0].contains("cannot be read"));
    document.order.yes.snapshot = document.order.yes.snapshot.replace("38in", "39in");
    assert!(changed(&document).expect("damaged")[0].contains("can no longer be read"));
    document.order.yes = Order::default().yes;
    assert!(changed(&document).expect("none")[0].starts_with("Nobody’s yes is recorded"));
    let mut unfinished = hard();
    unfinished.links[0].length = None;
    assert_eq!(yes(&unfinished, &report(&unfinished).links, "Customer", ""), None, "nothing to say yes to");
}

#[test]
fn a_yes_taken_back_leaves_the_rest_of_the_order() {
    let said = |stage| Order {
        reference: "PO 17".to_string(),
        remarks: "ring first".to_string(),
        wanted: "2026-12-24".to_string(),
        first_said: snapshot(&hard()),
        stage,
        ..Order::default()
    };
    for (stage, then) in [
        (Stage::Asked, Stage::Asked),
        (Stage::ReadBack, Stage::ReadBack),
        (Stage::Confirmed, Stage::ReadBack),
        (Stage::Cut, Stage::ReadBack),
    ] {
        let mut order = said(Stage::Asked);
        order.confirm(confirmed().order.yes.clone());
        assert_eq!((order.stage, &order.yes), (Stage::Confirmed, &confirmed().order.yes));
        order.stage = stage;
        order.take_back_yes("The customer", "2026-12-01T08:00:00.000Z");
        let happened: Vec<Happened> = order.history.steps().iter().map(|step| step.what).collect();
        assert_eq!(happened, [Happened::Reached(Stage::Confirmed), Happened::YesTakenBack], "the history keeps both");
        order.history = History::default();
        assert_eq!(order, said(then), "{stage:?}");
    }
}

#[test]
fn stages_stand_in_order() {
    let document = confirmed();
    let code = code_of_rig(&document, &report(&document).links);
    let rows = stages(&document.order, code, |time| format!("at {time}"));
    let shown: Vec<(&str, bool, bool)> = rows.iter().map(|row| (row.label.as_str(), row.reached, row.now)).collect();
    assert_eq!(
        shown,
        [
            ("Asked for", true, false),
            ("Read back", true, false),
            ("Confirmed by The customer, at 2026-11-30T10:00:00.000Z", true, true),
            ("Cut", false, false),
        ]
    );
    let mut longer = document.clone();
    longer.links[0].length = Some(inch(39.0));
    let other = code_of_rig(&longer, &report(&longer).links);
    let rows = stages(&longer.order, other, str::to_string);
    assert!(!rows[1].reached && rows[1].label.contains("changed since"), "{rows:?}");
    assert!(stages(&Order::default(), None, str::to_string).iter().all(|row| row.now == (row.stage == Stage::Asked)));
}

#[test]
fn the_text_asks_for_a_yes_to_everything_that_matters() {
    let mut document = confirmed();
    document.order.reference = "PO 17".to_string();
    document.order.remarks = "ring first".to_string();
    let mut first = document.clone();
    first.links[0].length = Some(inch(36.5));
    document.order.first_said = snapshot(&first);
    document.links[0].ends[0].supplied_by = Some(SuppliedBy::Shop);
    document.links[0].ends[1].supplied_by = Some(SuppliedBy::Customer);
    let reports = report(&document).links;
    let code = code_of_rig(&document, &reports);
    let address = || Some("https://example.org/#3".to_string());
    let sent = |what| text(&document, &reports, code, what, "November 30, 2026", address());
    let code = code.expect("a code").written();
    let plain = sent(Sent::default());
    assert!(!plain.contains("PO 17") && !plain.contains("ring first"), "{plain}");
    let ticked = sent(Sent { reference: true, remarks: true });
    for part in [
        "Order to confirm, November 30, 2026",
        "Your reference: PO 17",
        "Front lower links, 2 pieces",
        "Mount to mount, hole center to hole center: 38 in (965.2 mm). Measured: not said yet.",
        "End A: 1-1/4-12, right-hand thread; the rod end comes from us\n",
        "End B: 1-1/4-12, left-hand thread; the rod end is your own\n",
        "Changed since you first said it: Front lower links: Mount to mount: 38 in (965.2 mm), before 36-1/2 in (927.1 mm).",
        "Remarks: ring first",
        &format!("Order code: {code} ("),
        "Nothing is cut before.",
        "https://example.org/#3",
    ] {
        assert!(ticked.contains(part), "{part}\n{ticked}");
    }
    document.links[0].ends[1].supplied_by = None;
    let open = text(&document, &reports, code_of_rig(&document, &reports), Sent::default(), "today", None);
    assert!(open.contains("left-hand thread; nobody has said whose the rod end is"), "{open}");
    let mut unfinished = document.clone();
    unfinished.links[0].length = None;
    let reports = report(&unfinished).links;
    let text = text(&unfinished, &reports, code_of_rig(&unfinished, &reports), Sent::default(), "today", None);
    assert!(text.contains("cannot be confirmed") && !text.contains("answer yes"), "{text}");
}

/// What was said beside the sizes was confirmed too; what is said as it was taken anyway changes nothing.
#[test]
fn a_yes_is_to_what_was_said_as_well() {
    let document = confirmed();
    let changed = |change: &dyn Fn(&mut Document)| {
        let mut changed = document.clone();
        change(&mut changed);
        let reports = report(&changed).links;
        changed_since_yes(&changed, code_of_rig(&changed, &reports)).map(|it| it.lines(System::Inch).join(" "))
    };
    assert_eq!(changed(&|_| {}), None);
    assert_eq!(changed(&|document| document.links[0].quantity = Some(2.0)), None, "two is what was taken");
    assert_eq!(changed(&|document| document.links[0].ends[0].hand = Some(Hand::Right)), None);
    let told = changed(&|document| document.order.remarks = "no flats".to_string()).expect("told");
    assert!(told.contains("Do not cut") && told.contains("no flats"), "{told}");
    let told = changed(&|document| document.order.wanted = "2026-12-24".to_string()).expect("told");
    assert!(told.contains("Wanted by: December 24, 2026, before left open"), "{told}");
    assert!(changed(&|document| document.links[0].quantity = Some(3.0)).is_some());
}

/// Nobody is asked for a yes to a link that fails.
#[test]
fn a_failing_order_asks_for_no_yes() {
    let mut document = confirmed();
    *document.order = Order::default();
    document.links[0].outside_diameter = Some(inch(2.0));
    let reports = report(&document).links;
    assert_eq!(reports[0].answer().expect("an answer").verdict, Verdict::Fails);
    let code = code_of_rig(&document, &reports);
    let text = text(&document, &reports, code, Sent::default(), "today", None);
    assert!(text.contains("Do not answer yes") && !text.contains("answer yes with"), "{text}");
    let answer = reports[0].answer().expect("an answer");
    let short = short_text(&document, 0, answer, code.expect("a code"), System::Inch);
    assert!(short.contains("Do not answer yes.") && !short.contains("All right?"), "{short}");
    assert!(obstacles(&document, &reports, System::Inch).iter().any(|words| words.contains("fails as entered")));
}

#[test]
fn what_changed_after_the_yes_is_read_back_in_one_step() {
    let mut document = confirmed();
    document.links[0].length = Some(inch(38.25));
    assert_eq!(already_cut(&document, System::Inch), Vec::<String>::new(), "nothing is cut");
    let code = code_of_rig(&document, &report(&document).links);
    document.order.read_back_again("The customer", "2026-12-01T08:00:00.000Z", &code.expect("a code").written());
    assert!(!document.order.yes.is_given() && document.order.stage == Stage::ReadBack);
    assert!(is_read_back(&document.order, code) && changed(&document).is_none());
    // Once it is cut, what it was cut to is told.
    let mut document = confirmed();
    document.order.stage = Stage::Cut;
    document.links[0].length = Some(inch(40.0));
    let told = "Already cut to the old order: front lower links, 38 in mount to mount. Settle it with the customer.";
    assert_eq!(already_cut(&document, System::Inch), [told]);
    // Table rod ends: no bar may be sawn.
    let waits = not_yet_to_saw(&document, &report(&document).links);
    assert!(waits.len() == 1 && waits[0].starts_with("Front lower links: provisional length."), "{waits:?}");
}
