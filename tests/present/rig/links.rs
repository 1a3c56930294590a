//! The rows of the rig's links: what they say, what their buttons are called, what these did.

use super::{SYSTEMS, eight, layout, whole};
use linkwright::document::{Document, Link, MOST_LINKS, Position, Role, Side};
use linkwright::layouts;
use linkwright::present::rig_list::{Change, Row, added, buttons, row};
use linkwright::quantity::{System, inch};
use linkwright::report::Verdict;

fn inch_row(document: &Document, index: usize) -> Row {
    row(&whole(document), index, System::Inch).expect("a row")
}

#[test]
fn a_row_says_what_to_buy_and_what_the_verdict_rests_on() {
    let lower = inch_row(&eight(), 6);
    assert_eq!(lower.title, "7. Rear lower links, 2 pieces");
    assert_eq!(lower.judged.map(|judged| judged.verdict), Some(Verdict::Close));
    assert_eq!(lower.size, "40-1/4 in: 2-1/4 in 7075-T6/T651 bar, 1-1/4-12 rod ends, RH at A and LH at B");
    assert_eq!(lower.saw.as_deref(), Some("Saw to 35-1/8 in"));
    assert!(lower.rests_on.starts_with("Weakest: middle of the bar, "), "{}", lower.rests_on);
    let metric = row(&whole(&eight()), 6, System::Metric).expect("a row");
    assert_eq!(metric.saw.as_deref(), Some("Saw to 892.2 mm"));
    assert_eq!(row(&whole(&eight()), 8, System::Inch), None, "there is no ninth");
}

#[test]
fn buckling_of_a_steering_link_is_told_once() {
    let document = eight();
    for index in 0..8 {
        let told = inch_row(&document, index).rests_on.to_lowercase().matches("buckling").count();
        let role = document.links[index].role;
        let governs = role == Role::TrackBar;
        assert_eq!(told, usize::from(role.steers() || governs), "{}", document.links[index].title());
    }
    assert_eq!(
        inch_row(&document, 3).rests_on,
        "Weakest: middle of the bar, 24 in from eye A, at 55.3 % of its limit. Buckling in compression: 52.9 % of its limit, passes."
    );
}

#[test]
fn a_link_without_an_answer_says_why() {
    let mut document = eight();
    document.links[0].length = None;
    document.links[1].length = Some(inch(6.0));
    document.links[1].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    let [needs, impossible] = [0, 1].map(|index| inch_row(&document, index));
    assert_eq!((needs.size.as_str(), needs.rests_on.as_str()), ("Still needed: mount to mount.", ""));
    assert_eq!(impossible.size, "No link can be made of these entries.");
    assert!(!impossible.rests_on.is_empty());
    for row in [needs, impossible] {
        assert_eq!((row.judged, row.saw), (None, None));
    }
}

#[test]
fn buttons_name_what_they_would_replace() {
    let mut document = eight();
    let label = |document: &Document, index| buttons(document, index, System::Inch).expect("a link").other_axle;
    assert_eq!(label(&document, 0), "Replace the rear lower links (40-1/4 in) with these");
    assert_eq!(label(&document, 6), "Replace the front lower links (38 in) with these");
    assert_eq!(label(&document, 2), "Copy to the rear");
    document.links[6].length = None;
    assert_eq!(label(&document, 0), "Replace the rear lower links with these");
    let sides = |document: &Document, index| buttons(document, index, System::Inch).expect("a link").sides;
    assert_eq!(sides(&document, 3), None, "a tie rod has no other side");
    let pair = sides(&document, 0).expect("a pair");
    assert_eq!(
        (pair.label.as_str(), pair.change, pair.joins),
        ("Enter left and right separately", Change::SetApart, false)
    );
    document = Change::SetApart.make(&document, 0, System::Inch).after;
    let left = sides(&document, 0).expect("a left link");
    assert_eq!(left.label, "Replace the right front lower link (38 in) with this one");
    assert_eq!((left.change, left.joins), (Change::CopyToOtherSide, true));
    let right = sides(&document, 8).expect("a right link");
    assert_eq!(right.label, "Replace the left front lower link (38 in) with this one");
    layouts::remove(&mut document, 0);
    let alone = sides(&document, 7).expect("a right link");
    assert_eq!((alone.label.as_str(), alone.joins), ("Copy to the left", false));
    assert_eq!(buttons(&document, 7, System::Inch).map(|it| it.link).as_deref(), Some("Right front lower link"));
}

/// The same changes one after the other, as a builder makes them.
#[test]
fn every_change_says_what_it_did() {
    let steps: [(Change, usize, &str, Option<usize>); 9] = [
        (Change::CopyToOtherAxle, 2, "Rear track bar added.", Some(2)),
        (Change::CopyToOtherAxle, 2, "Rear track bar was the same already.", Some(2)),
        (Change::CopyToOtherAxle, 0, "Rear lower links were 40-1/4 in, now 38 in.", Some(0)),
        (Change::SetApart, 0, "Front lower links are two entries now: left and right.", Some(0)),
        (Change::CopyToOtherSide, 9, "Left front lower link was the same already.", Some(9)),
        (Change::Join, 9, "Front lower links are one entry again: 38 in.", Some(0)),
        (Change::Remove, 8, "Rear track bar removed.", None),
        (Change::SetApart, 6, "Rear lower links are two entries now: left and right.", Some(6)),
        (Change::Remove, 6, "Left rear lower link removed.", None),
    ];
    let mut document = eight();
    for (change, index, sentence, below) in steps {
        let changed = change.make(&document, index, System::Inch);
        assert_eq!((changed.sentence.as_str(), changed.below), (sentence, below));
        assert_eq!(changed.did_something(), !sentence.contains("already"), "{sentence}");
        assert_eq!(changed.before, document, "the way back");
        document = changed.after;
    }
}

#[test]
fn a_pair_of_unlike_links_says_which_length_is_gone() {
    let mut document = eight();
    document = Change::SetApart.make(&document, 0, System::Inch).after;
    document.links[8].length = Some(inch(37.0));
    let joined = Change::Join.make(&document, 0, System::Inch);
    assert_eq!(joined.sentence, "Front lower links are one entry again: 38 in. Right front lower link was 37 in.");
    document.links[0].length = None;
    let copied = Change::CopyToOtherSide.make(&document, 0, System::Inch);
    assert_eq!(copied.sentence, "Right front lower link was 37 in, now without a length.");
    document.links[8] = Link { bow: Some(0.001), length: None, ..document.links[8].clone() };
    let copied = Change::CopyToOtherSide.make(&document, 0, System::Inch);
    assert_eq!(copied.sentence, "Right front lower link was without a length too; now alike in everything else.");
}

#[test]
fn a_full_rig_says_so() {
    let bar = Link { role: Role::TrackBar, ..Link::default() };
    let document = Document { links: vec![bar; MOST_LINKS], ..Document::default() };
    let full = "A rig has room for 40 entries. Take one away first.";
    let changed = Change::CopyToOtherAxle.make(&document, 0, System::Inch);
    assert_eq!((changed.sentence.as_str(), changed.did_something()), (full, false));
    assert_eq!(added(false, &document, Position::Rear), full);
    let pair = Document { links: vec![Link { seat: Some(Side::Both), ..Link::default() }; MOST_LINKS], ..document };
    assert_eq!(Change::SetApart.make(&pair, 0, System::Inch).sentence, full);
}

#[test]
fn the_last_link_is_emptied_not_taken_away() {
    let document =
        Document { links: vec![Link { length: Some(inch(38.0)), ..Link::default() }], ..Document::default() };
    let changed = Change::Remove.make(&document, 0, System::Inch);
    assert_eq!(changed.after, Document::default());
    assert_eq!((changed.sentence.as_str(), changed.below), ("Front lower links removed.", Some(0)));
}

#[test]
fn adding_a_layout_says_where_it_went() {
    let mut document = eight();
    let any = layouts::add(&mut document, layout("sway"), Position::Rear).is_some();
    assert_eq!(added(any, &document, Position::Rear), "Added to the rear axle.");
    let any = layouts::add(&mut document, layout("sway"), Position::Rear).is_some();
    assert_eq!(added(any, &document, Position::Rear), "The rear axle has these already.");
}

#[test]
fn labels_have_a_length_in_the_reader_s_units() {
    for (system, long) in SYSTEMS.into_iter().zip(["40-1/4 in", "1022.4 mm"]) {
        let label = buttons(&eight(), 0, system).expect("a link").other_axle;
        assert_eq!(label, format!("Replace the rear lower links ({long}) with these"));
    }
}
