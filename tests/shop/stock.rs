//! What a link can be made from: cases by hand, and that what is taken opens to the same numbers.

use linkwright::document::{Document, Hand, OWN_ROD_END, ShankSteel, SuppliedBy, Use};
use linkwright::engine::report_on;
use linkwright::engine::shop::cut_plan::Saw;
use linkwright::engine::shop::stock::{Held, MOST_REPORTS, Needed, Offers, Wanted, offers, standing, take};
use linkwright::quantity::{inch, lbf};
use linkwright::report::{Answer, Verdict};
use linkwright::share;
use linkwright::shop::{Kind, Lists, demo, read};

use crate::dice::Dice;

/// A 4,100 lb rig, driven hard, 38 in: the worked example.
pub(crate) fn hard() -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    document.links[0].length = Some(inch(38.0));
    document
}

fn answer(document: &Document) -> Answer {
    report_on(document, 0).answer().expect("an answer").clone()
}

/// Lists with nothing but what is given.
pub(crate) fn lists(files: &[(Kind, String)]) -> Lists {
    let mut lists = Lists::default();
    for (kind, text) in files {
        let told = read(&mut lists, *kind, text).expect("a list");
        assert!(told.is_empty(), "{told:?}");
    }
    lists
}

/// Rod ends: name, thread, bore, center to end, thread length, right-hand, left-hand; all of alloy.
fn rod_ends(rows: &[&str]) -> (Kind, String) {
    let head = "Name,Shank thread,Bore (in),Eye center to shank end (in),Thread length (in),Right-hand in stock,Left-hand in stock,Shank steel,Ball width (in)";
    let rows: Vec<String> = rows.iter().map(|row| format!("{row},alloy,1.375\n")).collect();
    (Kind::RodEnds, format!("{head}\n{}", rows.concat()))
}

/// Bars of 7075: name, diameter, length, count.
fn bars(rows: &[&str]) -> (Kind, String) {
    let rows: Vec<String> = rows.iter().map(|row| format!("{row},7075-t6\n")).collect();
    (Kind::Bars, format!("Name,Outside diameter (in),Length (in),In stock,Metal\n{}", rows.concat()))
}

const LARGE: &str = "Large,1-1/4-12,1,4.2,2.45,4,4";
const SMALL: &str = "Small,5/16-24,0.3125,1.9,1.2,40,40";

fn names(found: &Offers) -> Vec<(String, f64)> {
    let name = |it: &Option<linkwright::shop::RodEnd>| it.as_ref().map_or("-".to_string(), |it| it.name.clone());
    let size = |at: f64| (at / inch(1.0) * 1e4).round() / 1e4;
    found.offers.iter().map(|it| (name(&it.rod_ends[0]), size(it.size.outside_diameter))).collect()
}

fn find(needed: &[Needed], which: impl Fn(&Wanted) -> bool) -> &Needed {
    needed.iter().find(|it| which(&it.what)).expect("needed")
}

#[test]
fn the_smallest_bar_that_passes_comes_first() {
    // The recommendation for this link is 2-1/4 in with 1-1/4-12 rod ends: what is too thin is not offered.
    let recommended = answer(&hard()).sizing.recommended.expect("a size");
    assert_eq!((recommended.outside_diameter, recommended.thread), (inch(2.25), "1-1/4-12"));
    let lists = lists(&[rod_ends(&[SMALL, LARGE]), bars(&["a,3,144,1", "b,1.5,144,1", "c,2.25,144,1", "d,2.5,144,1"])]);
    let found = offers(&hard(), 0, &lists, &Saw::ASSUMED);
    assert_eq!(names(&found), [("Large".to_string(), 2.25)]);
    assert!(found.complete && found.reports <= 8, "{}", found.reports);
    let offer = &found.offers[0];
    assert!(offer.is_final && offer.as_large_as_usual && offer.verdict <= Verdict::Close, "{:?}", offer.verdict);
    // 38 in between the eyes; each eye stands 4.2 in from its shank's end, of which 2.45 in of thread less a jam nut of
    // 23/32 in and 1-1/2 threads of 1/12 in are inside: 38 - 2 (4.2 - 2.45 + 0.71875 + 0.125) = 32.8125 in, to the
    // nearest 1/32 in. The saw leaves 1/16 in more at each end.
    assert!(
        (offer.bar - inch(32.8125)).abs() < 1e-9 && (offer.cut - inch(32.9375)).abs() < 1e-9,
        "{}",
        offer.bar / inch(1.0)
    );
}

#[test]
fn what_is_taken_opens_to_the_same_numbers_anywhere() {
    let document = hard();
    for offer in offers(&document, 0, &demo::lists(), &Saw::ASSUMED).offers {
        let taken = take(&document, 0, &offer);
        let link = &taken.links[0];
        for (end, rod_end) in link.ends.iter().zip(&offer.rod_ends) {
            let rod_end = rod_end.as_ref().expect("from the list");
            assert_eq!((end.rod_end, end.supplied_by), (Some(OWN_ROD_END), Some(SuppliedBy::Shop)));
            assert_eq!(
                (end.own_thread, end.own_bore, end.own_eye_to_end),
                (rod_end.thread, rod_end.bore, rod_end.eye_to_end)
            );
            assert_eq!(
                (end.own_thread_length, end.rating, end.shank_steel),
                (rod_end.thread_length, rod_end.rating, rod_end.shank_steel)
            );
        }
        let opened = share::from_fragment(&share::to_fragment(&taken)).document;
        let [here, there] = [&taken, &opened].map(answer);
        assert_eq!(here, there, "the same numbers, bit for bit");
        assert_eq!((here.verdict, here.link.bar, here.link.cut), (offer.verdict, offer.bar, offer.cut));
        assert!(!here.link.provisional);
        // Asked again, the same is offered.
        assert!(
            offers(&taken, 0, &demo::lists(), &Saw::ASSUMED)
                .offers
                .iter()
                .any(|again| again.rod_ends == offer.rod_ends)
        );
    }
}

#[test]
fn what_a_customer_measured_stays() {
    let mut document = hard();
    let end = &mut document.links[0].ends[0];
    (end.rod_end, end.own_thread, end.own_bore) = (Some(OWN_ROD_END), Some("1-1/4-12"), Some(inch(1.0)));
    (end.own_eye_to_end, end.own_thread_length) = (Some(inch(4.125)), Some(inch(2.343)));
    (end.shank_steel, end.supplied_by) = (Some(ShankSteel::Alloy), Some(SuppliedBy::Customer));
    let lists = lists(&[rod_ends(&[LARGE]), bars(&["c,2.25,144,1"])]);
    let found = offers(&document, 0, &lists, &Saw::ASSUMED);
    assert_eq!(names(&found), [("-".to_string(), 2.25)]);
    let offer = &found.offers[0];
    assert_eq!(take(&document, 0, offer).links[0].ends[0], document.links[0].ends[0]);
    let rod_ends: Vec<_> = offer.needed.iter().filter(|it| matches!(it.what, Wanted::RodEnd { .. })).collect();
    assert!(rod_ends.len() == 1 && rod_ends[0].count == 2 && rod_ends[0].to_order() == Some(0), "{rod_ends:?}");
}

#[test]
fn a_thread_and_bore_that_were_decided_are_kept() {
    let mut document = hard();
    document.links[0].ends[0].rod_end = Some("wide-14");
    document.links[0].ends[1].rod_end = Some("wide-14");
    let lists = lists(&[rod_ends(&[LARGE, "Other,7/8-14,0.75,3.4,2.05,9,9"]), bars(&["d,3,144,1"])]);
    let found = offers(&document, 0, &lists, &Saw::ASSUMED);
    assert_eq!(found.reports, 0, "no rod end of the list has that thread and bore");
    assert!(found.offers.is_empty());
}

#[test]
fn what_is_missing_is_counted_by_hand() {
    // Two links: two right-hand and two left-hand rod ends, of which one left-hand one is there.
    let lists = lists(&[
        rod_ends(&["Large,1-1/4-12,1,4.2,2.45,2,1"]),
        bars(&["c,2.25,68.1875,1"]),
        (
            Kind::Nuts,
            "Name,Thread,Hand,In stock,Thickness (in)\nn,1-1/4-12,rh,9,23/32\nm,1-1/4-12,lh,9,1\n".to_string(),
        ),
    ]);
    let found = offers(&hard(), 0, &lists, &Saw::ASSUMED);
    let offer = &found.offers[0];
    assert!(!offer.is_in_stock());
    let rod_end =
        |wanted: Hand| find(&offer.needed, |what| matches!(what, Wanted::RodEnd { hand, .. } if *hand == wanted));
    assert_eq!((rod_end(Hand::Right).held, rod_end(Hand::Right).to_order()), (Held::Counted(2), Some(0)));
    assert_eq!((rod_end(Hand::Left).held, rod_end(Hand::Left).to_order()), (Held::Counted(1), Some(1)));
    // 1/8 in trimmed, two blanks of 32-15/16 in, 2 in in the saw, and four cuts of 1/16 in: 68-3/16 in, exactly.
    let blank = find(&offer.needed, |what| matches!(what, Wanted::Blank { .. }));
    assert_eq!((blank.count, blank.held), (2, Held::Counted(2)));
    let with = |saw: Saw| {
        let found = offers(&hard(), 0, &lists, &saw).offers.remove(0);
        find(&found.needed, |what| matches!(what, Wanted::Blank { .. })).held
    };
    assert_eq!(
        with(Saw { kerf: inch(0.07), ..Saw::ASSUMED }),
        Held::Counted(1),
        "a wider cut than the bar has room for"
    );
    assert_eq!(with(Saw { grip: inch(2.01), ..Saw::ASSUMED }), Held::Counted(1), "held by more than is left");
    let nut = |wanted: Hand| find(&offer.needed, |what| matches!(what, Wanted::JamNut { hand, .. } if *hand == wanted));
    assert_eq!(nut(Hand::Right).to_order(), Some(0));
    assert_eq!(nut(Hand::Left).held, Held::NotListed, "a nut of 1 in is none of the thickness that was counted with");
}

#[test]
fn what_nobody_counted_is_not_in_stock() {
    let lists = lists(&[rod_ends(&["Large,1-1/4-12,1,4.2,2.45,,"]), bars(&["c,2.25,66,"])]);
    let offer = offers(&hard(), 0, &lists, &Saw::ASSUMED).offers.remove(0);
    assert!(!offer.is_in_stock());
    for needed in offer.needed.iter().filter(|it| !matches!(it.what, Wanted::JamNut { .. })) {
        assert_eq!((needed.held, needed.to_order()), (Held::Uncounted, None), "{:?}", needed.what);
    }
}

#[test]
fn two_kinds_are_paired_only_where_each_lacks_a_hand() {
    let document = hard();
    let lists_of = |right: &str, left: &str| {
        let rows = [format!("R,1-1/4-12,1,4.2,2.45,{right}"), format!("L,1-1/4-12,1,4.15,2.4,{left}")];
        lists(&[rod_ends(&[&rows[0], &rows[1]]), bars(&["c,2.25,144,1"])])
    };
    let found = offers(&document, 0, &lists_of("4,0", "0,4"), &Saw::ASSUMED);
    let first = &found.offers[0].rod_ends;
    let [a, b] = first.each_ref().map(|it| it.as_ref().map(|it| it.name.clone()).unwrap_or_default());
    assert!(names(&found).len() == 3 && (a.as_str(), b.as_str()) == ("R", "L"), "{a} {b}");
    let found = offers(&document, 0, &lists_of("4,4", "0,4"), &Saw::ASSUMED);
    assert!(found.offers.iter().all(|it| it.rod_ends[0] == it.rod_ends[1]), "one kind is there in both hands");
}

#[test]
fn the_recommendation_says_what_is_in_stock() {
    let document = hard();
    let answer = answer(&document);
    // A rod end with the published lengths, and one of the same thread and bore with others.
    let published = "P,1-1/4-12,1,4.125,2.343,9,9";
    let bars = bars(&["c,2.25,144,1"]);
    let held = |rows: &[&str]| {
        let lists = lists(&[rod_ends(rows), bars.clone()]);
        let needed = standing(&document, 0, &answer, &lists, &Saw::ASSUMED);
        find(&needed, |what| matches!(what, Wanted::RodEnd { hand: Hand::Left, .. })).held
    };
    assert_eq!(held(&[published]), Held::Counted(9));
    assert_eq!(held(&[LARGE]), Held::OtherLengths(4));
    assert_eq!(held(&[SMALL]), Held::NotListed);
    assert_eq!(held(&[published, LARGE]), Held::Counted(9));
}

#[test]
fn without_entries_it_says_what_is_needed() {
    let found = offers(&Document::default(), 0, &demo::lists(), &Saw::ASSUMED);
    assert_eq!(found.needs, ["length", "weight", "use"]);
    assert!(found.offers.is_empty() && found.reports == 1);
    assert_eq!(offers(&hard(), 7, &demo::lists(), &Saw::ASSUMED), Offers { complete: true, ..Offers::default() });
    assert_eq!(offers(&hard(), 0, &Lists::default(), &Saw::ASSUMED).reports, 0, "nothing is listed");
}

#[test]
fn rows_that_lack_something_are_not_offered() {
    let mut lists = lists(&[bars(&["c,2.25,144,1"])]);
    let text = "Name,Shank thread,Bore (in),Eye center to shank end (in),Thread length (in),Ball width (in)\nx,1-1/4-12,1,4.2,2.45,wide\n";
    assert!(read(&mut lists, Kind::RodEnds, text).is_ok_and(|told| told.len() == 1));
    assert!(offers(&hard(), 0, &lists, &Saw::ASSUMED).offers.iter().all(|offer| offer.rod_ends == [None, None]));
}

#[test]
fn tubes_come_from_their_own_list() {
    let mut document = hard();
    document.links[0].material = Some("1020-dom");
    document.links[0].length = Some(inch(24.0));
    document.rig.usage = Some(Use::Easy);
    let found = offers(&document, 0, &demo::lists(), &Saw::ASSUMED);
    assert!(found.reports > 0);
    for offer in &found.offers {
        assert!(offer.size.wall > 0.0 && offer.stock.as_ref().is_some_and(|it| it.metal == Some("1020-dom")));
        assert!(offer.needed.iter().any(|it| matches!(it.what, Wanted::Insert { .. })));
    }
}

#[test]
fn a_search_asks_for_a_bounded_count_of_reports() {
    let rows: Vec<String> = (0..40).map(|at| format!("r{at},5/16-24,0.3125,1.9,1.{:02},4,4", at + 10)).collect();
    let rows: Vec<&str> = rows.iter().map(String::as_str).collect();
    let lists = lists(&[rod_ends(&rows), bars(&["a,1,144,1", "b,1.25,144,1", "c,1.5,144,1"])]);
    let found = offers(&hard(), 0, &lists, &Saw::ASSUMED);
    assert_eq!((found.reports, found.complete), (MOST_REPORTS, false));
    // What holds by the numbers is asked for first, so that small ones do not use the count up.
    let rows: Vec<&str> = rows.iter().copied().chain([LARGE]).collect();
    let lists = self::lists(&[rod_ends(&rows), bars(&["a,1,144,1", "b,1.25,144,1", "c,1.5,144,1", "d,2.25,144,1"])]);
    assert_eq!(names(&offers(&hard(), 0, &lists, &Saw::ASSUMED)), [("Large".to_string(), 2.25)]);
}

/// Whatever the rig, what is offered passes, and its document says so by itself.
#[test]
fn offers_on_random_rigs_pass() {
    let mut dice = Dice(5);
    let lists = demo::lists();
    let mut seen = 0;
    for _ in 0..10 {
        let mut document = dice.rig();
        document.rig.weight = Some(lbf(1500.0 + dice.next(3000) as f64));
        document.rig.usage = Some([Use::Easy, Use::Slow, Use::Hard][dice.next(3)]);
        document.links.truncate(1);
        document.links[0].length = Some(inch(14.0 + dice.next(30) as f64));
        let before = document.clone();
        let found = offers(&document, 0, &lists, &Saw::ASSUMED);
        assert!(found.reports <= MOST_REPORTS);
        for offer in &found.offers {
            let again = report_on(&take(&document, 0, offer), 0);
            let again = again.answer().expect("an answer");
            assert!(again.findings.iter().all(|finding| finding.recommendable) && again.verdict == offer.verdict);
            seen += 1;
        }
        assert_eq!(document, before);
    }
    assert!(seen >= 5, "{seen}");
}
