//! What to carry, and what a borrowed part does.

use super::{link, tube};
use crate::links::{answer, sized};
use linkwright::document::{Document, Hand, Role};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::borrowed::{Borrowed, BorrowedLink, BorrowedRodEnd, rod_end, whole_link};
use linkwright::engine::fitting::spares::{Spares, spares};
use linkwright::engine::report;
use linkwright::engine::sentence::spoken;
use linkwright::quantity::{System, inch};
use linkwright::report::Part;

fn carried(document: &Document) -> Spares {
    spares(document, &report(document).links)
}

/// Both hands of every rod end and its nut, though the rig may use one; a bolt of each kind; spacers by twos.
#[test]
fn both_hands_of_every_size_are_carried() {
    let mut document = sized(2.0, "wide-16", "wide-14");
    let other = sized(2.0, "wide-14", "wide-14");
    document.links.push(other.links[0].clone());
    document.links[1].length = Some(inch(30.0));
    document.links[0].spacer = Some(inch(0.5));
    let list = carried(&document);
    let count = |wanted: &dyn Fn(&Part) -> bool| list.parts.iter().filter(|spare| wanted(&spare.part)).count();
    for thread in ["1-1/4-12", "7/8-14"] {
        for hand in [Hand::Right, Hand::Left] {
            let rod_end = |part: &Part| matches!(part, Part::RodEnd { thread: of, hand: its, .. } if of.id == thread && *its == hand);
            let nut = |part: &Part| matches!(part, Part::JamNut { thread: of, hand: its, .. } if of.id == thread && *its == hand);
            assert_eq!((count(&rod_end), count(&nut)), (1, 1), "{thread} {hand:?}");
        }
    }
    // The large one is at end A only, which is right-hand: its left-hand twin is carried, and not on the rig.
    let fitted = |id: &str, want: Hand| {
        let of = |part: &Part| matches!(part, Part::RodEnd { thread, hand, .. } if thread.id == id && *hand == want);
        list.parts.iter().find(|spare| of(&spare.part)).map(|spare| spare.fitted)
    };
    assert_eq!((fitted("1-1/4-12", Hand::Right), fitted("1-1/4-12", Hand::Left)), (Some(true), Some(false)));
    let bolts: Vec<usize> = list
        .parts
        .iter()
        .filter(|spare| matches!(spare.part, Part::Bolt { .. }))
        .map(|spare| spare.part.count())
        .collect();
    assert!(bolts.len() >= 2 && bolts.iter().all(|count| *count == 1), "{bolts:?}");
    assert!(list.parts.iter().any(|spare| matches!(spare.part, Part::Spacer { .. }) && spare.part.count() == 2));
    assert!(list.provisional);
}

/// One bar of a kind, as long as the longest, and for the shorter ones whether it winds in far enough.
#[test]
fn a_spare_bar_is_as_long_as_the_longest_and_says_what_it_cannot() {
    let mut document = sized(2.0, "wide-16", "wide-16");
    for length in [38.125, 33.0] {
        let mut link = document.links[0].clone();
        link.length = Some(inch(length));
        document.links.push(link);
    }
    document.links[2].ends[0].hand = Some(Hand::Left);
    document.links[2].ends[1].hand = Some(Hand::Right);
    let list = carried(&document);
    assert_eq!(list.bars.len(), 1, "an end for an end it is the same bar");
    let bar = &list.bars[0];
    let longest = answer(&sized(2.0, "wide-16", "wide-16")).link;
    assert!((bar.length - (longest.bar + inch(0.125))).abs() < inch(0.07));
    let fits: Vec<bool> = bar.links.iter().map(|place| place.fits).collect();
    assert_eq!(fits, [true, true, false]);
    for place in &bar.links {
        assert_eq!(place.fits, place.shortest <= place.wanted + 1e-9);
    }
    // Another hand at both ends is another bar.
    document.links[1].ends[0].hand = Some(Hand::Left);
    document.links[1].ends[1].hand = Some(Hand::Left);
    assert_eq!(carried(&document).bars.len(), 2);
    document.links[1].length = None;
    assert_eq!(carried(&document).open, 1);
}

fn seven_eighths() -> BorrowedRodEnd {
    BorrowedRodEnd {
        thread: Some("7/8-14"),
        hand: Some(Hand::Right),
        eye_to_end: Some(inch(3.375)),
        thread_length: Some(inch(2.0)),
        bore: Some(inch(0.875)),
        ball_width: Some(inch(0.875)),
        heat_treated: Some(true),
    }
}

fn words(borrowed: &Borrowed) -> String {
    borrowed.points.iter().map(|point| spoken(&point.says, System::Inch)).collect::<Vec<_>>().join(" ")
}

fn into(document: &Document, part: &BorrowedRodEnd) -> Borrowed {
    rod_end(document, 0, &answer(document), 0, part)
}

/// The same rod end fits and gives the length that the link has.
#[test]
fn the_same_rod_end_gives_the_same_length() {
    let document = sized(2.0, "wide-14", "wide-14");
    let found = into(&document, &seven_eighths());
    assert_eq!((found.standing, found.missing.len()), (Standing::Good, 0), "{}", words(&found));
    let lengths = found.lengths.expect("lengths");
    let link = answer(&document).link;
    assert!((lengths.same_showing - link.length).abs() < 1e-9);
    assert!((lengths.engagement.expect("it gets there") - link.ends[0].engagement).abs() < 1e-9);
    assert!(lengths.shortest < link.length && lengths.longest > link.length);
}

/// A longer shank end to eye makes the link longer by just that, at the same threads showing: narrow beside wide at 3/4-16
/// is .318 in.
#[test]
fn a_longer_neck_makes_a_longer_link() {
    let document = sized(2.0, "wide-12", "wide-12");
    let narrow = BorrowedRodEnd {
        thread: Some("3/4-16"),
        eye_to_end: Some(inch(3.193)),
        thread_length: Some(inch(1.687)),
        bore: Some(inch(0.75)),
        ball_width: Some(inch(0.75)),
        heat_treated: Some(true),
        hand: Some(Hand::Right),
    };
    let found = into(&document, &narrow);
    let lengths = found.lengths.expect("lengths");
    assert!((lengths.same_showing - answer(&document).link.length - inch(3.193 - 2.875)).abs() < 1e-9);
    assert_eq!((lengths.engagement, found.standing), (None, Standing::Watch));
    assert!(words(&found).contains("wound right in, the link comes out at"), "{}", words(&found));
    // Narrower than the gap: the rest must be filled.
    assert!(words(&found).contains("1/16 in of steel spacer on each side"), "{}", words(&found));
}

/// What must never be forced in.
#[test]
fn parts_that_do_not_fit_stop() {
    let (small, large) = (sized(2.0, "wide-12", "wide-12"), sized(2.0, "narrow-16", "narrow-16"));
    let seven = sized(2.0, "wide-14", "wide-14");
    let three_quarters = BorrowedRodEnd { thread: Some("3/4-16"), bore: Some(inch(0.75)), ..seven_eighths() };
    let one = BorrowedRodEnd { bore: Some(inch(1.0)), ball_width: Some(inch(1.0)), ..seven_eighths() };
    let cases: [(&str, &Document, BorrowedRodEnd, &str); 9] = [
        ("wrong hand", &seven, BorrowedRodEnd { hand: Some(Hand::Left), ..seven_eighths() }, "Wrong hand"),
        ("1-14 into 1-12", &large, BorrowedRodEnd { thread: Some("1-14"), ..one }, "start by hand, then bind"),
        ("M20x1.5 into 3/4-16", &small, BorrowedRodEnd { thread: Some("M20x1.5"), ..three_quarters }, "Never force"),
        ("M24x2 into 1-12", &large, BorrowedRodEnd { thread: Some("M24x2"), ..one }, "Never force"),
        ("7/8-14 into 3/4-16", &small, BorrowedRodEnd { bore: Some(inch(0.75)), ..seven_eighths() }, "does not fit"),
        ("short shank", &seven, BorrowedRodEnd { thread_length: Some(inch(1.2)), ..seven_eighths() }, "too short"),
        ("small bore", &seven, BorrowedRodEnd { bore: Some(inch(0.75)), ..seven_eighths() }, "Never drill out a ball"),
        ("wide ball", &seven, BorrowedRodEnd { ball_width: Some(inch(1.25)), ..seven_eighths() }, "between the ears"),
        (
            "short and wrong hand",
            &seven,
            BorrowedRodEnd { hand: Some(Hand::Left), thread_length: Some(inch(1.0)), ..seven_eighths() },
            "Never force it",
        ),
    ];
    for (name, document, part, says) in cases {
        let found = into(document, &part);
        assert_eq!(found.standing, Standing::Stop, "{name}: {}", words(&found));
        assert!(words(&found).contains(says), "{name}: {}", words(&found));
    }
    // A thread that does not fit gives no length.
    assert_eq!(into(&large, &BorrowedRodEnd { thread: Some("1-14"), ..one }).lengths, None);
}

#[test]
fn what_was_not_read_off_a_part_is_asked_for() {
    let document = sized(2.0, "wide-14", "wide-14");
    let whole = seven_eighths();
    let cases = [
        (BorrowedRodEnd { thread: None, ..whole }, "its thread"),
        (BorrowedRodEnd { hand: None, ..whole }, "its hand of thread"),
        (BorrowedRodEnd { eye_to_end: None, ..whole }, "eye center to shank end"),
        (BorrowedRodEnd { thread_length: None, ..whole }, "its thread length"),
        (BorrowedRodEnd { bore: None, ..whole }, "its bore"),
        (BorrowedRodEnd { ball_width: None, ..whole }, "its ball width"),
        (BorrowedRodEnd { heat_treated: None, ..whole }, "whether it is stamped heat-treated alloy"),
    ];
    for (part, missing) in cases {
        let found = into(&document, &part);
        assert_eq!((found.standing, found.missing), (Standing::NotJudged, vec![missing]));
    }
    let swapped = BorrowedRodEnd { eye_to_end: Some(inch(2.0)), thread_length: Some(inch(3.375)), ..whole };
    let found = into(&document, &swapped);
    assert_eq!(found.standing, Standing::NotJudged);
    assert!(words(&found).contains("measure both again"));
    assert_eq!(rod_end(&document, 0, &answer(&document), 2, &whole).standing, Standing::NotJudged);
}

/// A rod end of unknown steel never simply fits, and never goes where nothing backs it up.
#[test]
fn unknown_steel_never_simply_fits() {
    let unknown = BorrowedRodEnd { heat_treated: Some(false), ..seven_eighths() };
    let mut document = sized(2.0, "wide-14", "wide-14");
    let found = into(&document, &unknown);
    assert_eq!(found.standing, Standing::Watch, "{}", words(&found));
    assert!(words(&found).contains("Its steel is not known"), "{}", words(&found));
    for role in [Role::TieRod, Role::DragLink, Role::TrackBar] {
        document.links[0].role = role;
        let found = into(&document, &unknown);
        assert_eq!(found.standing, Standing::Stop, "{}", words(&found));
        assert!(words(&found).contains("nothing backs this link up"), "{}", words(&found));
    }
}

/// A borrowed link is judged by its length alone, and never better than for the way home.
#[test]
fn a_borrowed_link_gets_home_at_best() {
    let lower = answer(&tube());
    let lend =
        |shortest: f64, longest: f64| BorrowedLink { shortest: Some(inch(shortest)), longest: Some(inch(longest)) };
    let cases = [
        (lend(35.5, 36.5), Standing::Watch, "home at walking pace"),
        (lend(36.5, 37.5), Standing::Stop, "Too long"),
        (lend(34.0, 35.5), Standing::Stop, "Never wind an end out past its stop"),
        (lend(36.5, 35.5), Standing::NotJudged, "measure both again"),
    ];
    for (part, standing, says) in cases {
        let found = whole_link(&lower, &part);
        assert_eq!(found.standing, standing, "{}", words(&found));
        assert!(words(&found).contains(says), "{}", words(&found));
    }
    let half = whole_link(&lower, &BorrowedLink { shortest: Some(inch(35.5)), longest: None });
    assert_eq!((half.standing, half.missing.len()), (Standing::NotJudged, 1));
    assert_eq!(whole_link(&lower, &BorrowedLink::default()).standing, Standing::NotJudged);
    let tie_rod = answer(&link(Role::TieRod, "1026-dom", [4000.0, 36.0, 1.75, 0.25]));
    assert!(words(&whole_link(&tie_rod, &lend(35.5, 36.5))).contains("Nothing backs this link up"));
}
