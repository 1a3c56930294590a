//! The as-built record: it is kept wherever its link is kept, never sent, and changes no number.
#![cfg(not(target_arch = "wasm32"))]

mod dice;

use dice::Dice;
use linkwright::builds::{self, Build};
use linkwright::differences::{Change, differences};
use linkwright::document::{Document, PIECE_FIELDS, Piece, PieceField, Use};
use linkwright::engine::shop::as_built::{Expected, Judged, expected, is_held_back, judge};
use linkwright::engine::shop::route::machine::{DEPTH_TOLERANCE, LENGTH_TOLERANCE, Machine};
use linkwright::engine::shop::route::route;
use linkwright::engine::{report, shop::code};
use linkwright::present::make::{record, route as sheet};
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::Answer;
use linkwright::{layouts, share};
use std::sync::Arc;

fn with_pieces(dice: &mut Dice) -> Document {
    let mut document = dice.rig();
    for link in &mut document.links {
        link.made = (0..dice.next(4)).map(|_| dice.piece()).collect();
        link.drop_empty_pieces();
    }
    document
}

#[test]
fn links_and_files_bring_every_piece_back_bit_for_bit() {
    let mut dice = Dice(19);
    for _ in 0..300 {
        let document = with_pieces(&mut dice);
        let opened = share::from_fragment(&share::to_fragment(&document));
        assert_eq!((opened.document, opened.notices), (document.clone(), vec![]));
        let build = Build { id: "one".to_string(), document, ..Build::default() };
        let read = builds::from_text(&builds::to_text(std::slice::from_ref(&build))).expect("our own file");
        assert_eq!((read.builds, read.notices), (vec![build], vec![]));
    }
}

#[test]
fn no_link_carries_it_and_no_number_rests_on_it() {
    let mut dice = Dice(20);
    for _ in 0..20 {
        let with = with_pieces(&mut dice);
        let mut without = with.clone();
        without.links.iter_mut().for_each(|link| link.made.clear());
        assert_eq!(share::to_send(&with, share::Sent::default()), share::to_fragment(&without));
        let (before, after) = (report(&without), report(&with));
        assert_eq!(before, after);
        assert_eq!(code::code_of_rig(&with, &after.links), code::code_of_rig(&without, &before.links));
        let told = differences(&without, &with).iter().filter(|it| it.change == Change::Record).count();
        assert_eq!(told, with.links.iter().filter(|link| !link.made.is_empty()).count());
    }
}

#[test]
fn what_cannot_stand_there_is_told() {
    let mut document = Document::default();
    document.links[0].piece_mut(1).bar = Some(inch(31.0));
    let fragment = share::to_fragment(&document);
    assert!(fragment.contains("made-2-bar=31in"), "{fragment}");
    for wrong in ["bar=wide", "on=2026-02-30", "gauge-a=maybe", "bar=900in", "depth-c=1in"] {
        let opened = share::from_fragment(share::unchecked(&fragment.replace("bar=31in", wrong)));
        assert_eq!(opened.notices.len(), 2, "{wrong}: {:?}", opened.notices);
    }
    let opened = share::from_fragment(share::unchecked(&fragment.replace("made-2", "made-99")));
    assert_eq!((opened.notices.len(), opened.document.links[0].made.len()), (2, 0));
}

#[test]
fn a_copy_of_a_link_has_no_pieces() {
    let mut document = Document::default();
    document.links[0].piece_mut(0).heat = "H 1".to_string();
    let copy = layouts::to_other_axle(&mut document, 0).expect("a copy");
    assert!(document.links[copy].made.is_empty() && document.links[0].made.len() == 1);
    let right = layouts::set_apart(&mut document, 0).expect("the right one");
    assert!(document.links[right].made.is_empty() && document.links[0].made.len() == 1);
    document.links[right].piece_mut(0).heat = "H 2".to_string();
    let pair = layouts::join(&mut document, right).expect("one pair");
    assert_eq!(document.links[pair].made.len(), 2, "a pair has the pieces of both");
}

fn document() -> Document {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(4200.0));
    document.rig.usage = Some(Use::Slow);
    document.links[0].length = Some(inch(36.5));
    document
}

fn answered() -> Arc<Answer> {
    Arc::new(report(&document()).links[0].answer().expect("an answer").clone())
}

fn field(id: &str) -> &'static PieceField {
    PIECE_FIELDS.iter().find(|field| field.id == id).expect("a field")
}

#[test]
fn a_piece_is_judged_beside_what_was_asked_for() {
    let (answer, machine) = (answered(), Machine::default());
    let [a, _] = &answer.link.ends;
    let bar = answer.link.bar;
    // What is typed, whether it passes, and what is said.
    let cases = [
        ("bar", bar, true, "Within its tolerance."),
        ("bar", bar + inch(0.010), true, "Within its tolerance."),
        ("bar", bar + inch(0.011), false, "Out of tolerance: 0.011 in too much."),
        ("bar", bar - inch(0.020), false, "Out of tolerance: 0.020 in too little."),
        ("depth-a", a.tapped_depth, true, "Within its tolerance."),
        ("depth-a", a.tapped_depth - inch(0.002), false, "Out of tolerance: 0.002 in too little."),
        // No deeper than half a pitch, though the tolerance of a depth is 1/16 in: below it the tap meets the bottom.
        ("depth-b", a.tapped_depth + a.thread.pitch / 2.0, true, "Within its tolerance."),
        ("depth-b", a.tapped_depth + inch(0.06), false, "Out of tolerance: 0.060 in too much."),
    ];
    for (id, length, passes, says) in cases {
        let mut piece = Piece::default();
        assert!(field(id).set_length(&mut piece, length));
        let row = record::rows(&piece, &answer, &machine, System::Inch).into_iter().find(|row| row.field.id == id);
        assert_eq!(row.expect("a row").judged, Some((passes, says.to_string())), "{id} {length}");
        assert_eq!(is_held_back(&piece, &answer, &machine), !passes);
    }

    // An eye that stands as far out as it was set has the thread that was promised; further out it has less.
    let mut piece = Piece::default();
    field("face-a").set_length(&mut piece, a.eye_to_face);
    let Some(Judged::Engaged(full, least)) = judge(field("face-a"), &piece, &answer, &machine) else {
        panic!("judged")
    };
    assert!((full - a.engagement).abs() < 1e-9 && (least - a.least).abs() < 1e-12, "{full} beside {}", a.engagement);
    field("face-a").set_length(&mut piece, a.eye_to_face + (full - least) + inch(0.01));
    assert!(is_held_back(&piece, &answer, &machine));

    let mut piece = Piece::default();
    assert!(!is_held_back(&piece, &answer, &machine), "nothing is written down, so nothing is judged");
    assert_eq!(record::take(field("gauge-b"), &mut piece, "refused", System::Inch), Ok(()));
    assert!(is_held_back(&piece, &answer, &machine));
}

/// How a field of a piece is judged with these lengths written down.
fn judged(answer: &Answer, id: &str, lengths: &[(&str, f64)]) -> (bool, String) {
    let mut piece = Piece::default();
    for (id, length) in lengths {
        assert!(field(id).set_length(&mut piece, *length), "{id} {length}");
    }
    let rows = record::rows(&piece, answer, &Machine::default(), System::Inch);
    rows.into_iter().find(|row| row.field.id == id).expect("a row").judged.expect("judged")
}

#[test]
fn a_shank_goes_in_no_farther_than_its_hole_and_its_jam_nut_let_it() {
    let answer = answered();
    for (end, id) in [(0, "face-a"), (1, "face-b")] {
        let made = &answer.link.ends[end];
        let depth = ["depth-a", "depth-b"][end];
        let closest = made.eye_to_end - made.most - made.not_full;
        assert!(judged(&answer, id, &[(id, closest)]).0, "as far in as it goes");
        let (passes, says) = judged(&answer, id, &[(id, closest - inch(0.01))]);
        assert!(
            !passes && says.starts_with("Cannot be: ") && says.contains("with the jam nut on its thread"),
            "{says}"
        );
        let (passes, says) = judged(&answer, id, &[(id, inch(0.01))]);
        assert!(!passes && says.contains("Measure again"), "an eye at the face: {says}");
        // As set it stands in the hole as asked for, and on the bottom of one that is half an inch short of the shank.
        let short = made.inserted - inch(0.5);
        assert!(judged(&answer, id, &[(id, made.eye_to_face), (depth, made.tapped_depth)]).0);
        let (passes, says) = judged(&answer, id, &[(id, made.eye_to_face), (depth, short)]);
        assert!(!passes && says.contains("before the shank meets the bottom of its thread"), "{says}");
        // One pitch stays clear: exactly that much passes, and a hair less does not.
        let least = made.inserted + made.thread.pitch;
        assert!(judged(&answer, id, &[(id, made.eye_to_face), (depth, least)]).0);
        assert!(!judged(&answer, id, &[(id, made.eye_to_face), (depth, least - inch(0.002))]).0);
        // Farther out than the shank is long, no thread is in the bar at all.
        let (passes, says) = judged(&answer, id, &[(id, made.eye_to_end + inch(1.0))]);
        assert!(!passes && says.starts_with("Only 0"), "{says}");
    }
}

#[test]
fn eye_to_eye_is_what_the_link_can_be_set_to() {
    let answer = answered();
    let (made, reach) = (&answer.link, answer.link.adjustment.reach);
    let off = inch(0.010);
    let cases = [
        (made.length, true),
        (made.length + reach.out_limit + off, true),
        (made.length + reach.out_limit + off + inch(0.01), false),
        (made.length - reach.in_limit - off, true),
        (made.length - reach.in_limit - off - inch(0.01), false),
        (inch(3.0), false),
        (inch(120.0), false),
    ];
    for (length, passes) in cases {
        let (passed, says) = judged(&answer, "eye", &[("eye", length)]);
        assert_eq!(passed, passes, "{length}: {says}");
        assert_eq!(says.contains("Cannot be"), !passes, "{says}");
    }
    // A bar that was measured settles where the range lies.
    let longest = made.length + reach.out_limit + off;
    assert!(!judged(&answer, "eye", &[("eye", longest), ("bar", made.bar)]).0);
    assert!(judged(&answer, "eye", &[("eye", longest), ("bar", made.bar + off)]).0);
}

#[test]
fn bar_faces_and_eye_to_eye_must_agree_and_the_wrong_one_is_named() {
    let answer = answered();
    let made = &answer.link;
    let [a, b] = [0, 1].map(|end: usize| made.ends[end].eye_to_face);
    let right = [("bar", made.bar), ("face-a", a), ("face-b", b), ("eye", made.bar + a + b)];
    let (passes, says) = judged(&answer, "eye", &right);
    assert!(passes && says.starts_with("Agrees with bar and both faces, "), "{says}");
    let with = |at: usize, by: f64| {
        let mut read = right;
        read[at].1 += by;
        judged(&answer, "eye", &read)
    };
    for (at, named) in ["the bar, face to face", "bar face at A", "bar face at B", "eye to eye"].into_iter().enumerate()
    {
        for by in [inch(-0.25), inch(0.25)] {
            let (passes, says) = with(at, by);
            assert!(!passes && says.contains(&format!("Measure {}", if at == 0 { named } else { "" })), "{says}");
            assert!(says.contains(named) && says.contains("add up to"), "{named}: {says}");
        }
        assert!(with(at, inch(0.031)).0 && with(at, inch(-0.031)).0, "within 1/32 in");
        assert!(!with(at, inch(0.032)).0 && !with(at, inch(-0.032)).0, "past 1/32 in");
    }
    // Two that are off: nobody can say which.
    let mut both = right;
    (both[0].1, both[1].1) = (both[0].1 + inch(0.25), both[1].1 + inch(0.25));
    let (passes, says) = judged(&answer, "eye", &both);
    assert!(!passes && says.contains("measure all of them again"), "{says}");
    // Wound out alike at both ends, all four still agree.
    let out = inch(0.0625);
    let wound = [("bar", made.bar), ("face-a", a + out), ("face-b", b + out), ("eye", made.length + 2.0 * out)];
    assert!(judged(&answer, "eye", &wound).0);
}

#[test]
fn the_record_asks_for_what_the_route_sheet_asks_for() {
    let document = document();
    let answer = answered();
    let mut tight = Machine::default();
    for (setting, value) in [(&DEPTH_TOLERANCE, 0.01), (&LENGTH_TOLERANCE, 0.003)] {
        assert_eq!(tight.set(setting, Some(inch(value))), Ok(()));
    }
    for machine in [Machine::default(), tight] {
        let route = route(&document, 0, &answer, &machine);
        let boxes: Vec<_> = route.steps.iter().flat_map(|step| &step.boxes).collect();
        let rows = record::rows(&Piece::default(), &answer, &machine, System::Inch);
        let sheet = sheet::sheet(&document, 0, &answer, &route, System::Inch);
        for (id, name) in [("bar", "Face to face, finished"), ("depth-a", "Full thread"), ("depth-b", "Full thread")] {
            let field = field(id);
            let at = boxes.iter().position(|it| it.name == name && it.end == field.end).expect("a box");
            let asked = boxes[at].asked.expect("a length");
            assert_eq!(expected(field, &answer.link, &machine), Expected::Measured(asked), "{id}");
            let row = rows.iter().find(|row| row.field.id == id).expect("a row");
            assert_eq!(row.asked, sheet.measurements[at].asked, "{id}");
        }
    }
}

#[test]
fn typing_is_read_as_people_say_it() {
    let mut piece = Piece::default();
    for (text, system, length) in [("31 1/4", System::Inch, inch(31.25)), ("793.75", System::Metric, 0.79375)] {
        assert_eq!(record::take(field("bar"), &mut piece, text, system), Ok(()));
        assert!((piece.bar.unwrap_or_default() - length).abs() < 1e-9, "{text}");
    }
    let before = piece.clone();
    for (id, text) in [("bar", "wide"), ("bar", "-3"), ("bar", "900 in"), ("on", "yesterday")] {
        assert!(record::take(field(id), &mut piece, text, System::Inch).is_err(), "{text}");
        assert_eq!(piece, before);
    }
    assert_eq!(record::take(field("bar"), &mut piece, "", System::Inch), Ok(()));
    assert_eq!(piece, Piece::default());
}
