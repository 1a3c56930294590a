//! What the page says: the verdict first, never a good word where something is open, and the answer in large letters.

use crate::rig::{document, of_a_series, read, with_hands};
use linkwright::document::{Document, Hand, Position, Role, Use};
use linkwright::engine::fitting::as_fitted::Readings;
use linkwright::engine::fitting::moves::{Slopes, Through};
use linkwright::engine::report_on;
use linkwright::log::{Spot, bars};
use linkwright::present::drawing::Layout;
use linkwright::present::fit::own_rod_end;
use linkwright::present::fit::safe::{Checked, checked};
use linkwright::present::fit::turn::{Ask, Asked, Known, TurnAnswer, answer, asks, read_wish};
use linkwright::quantity::{System, deg, inch, lbf};
use linkwright::report::{Answer, Verdict};

pub(crate) fn made(document: &Document, index: usize) -> Option<Answer> {
    report_on(document, index).answer().cloned()
}

fn check(document: &Document, threads: [f64; 2], change: impl Fn(Readings) -> Readings) -> Checked {
    let answer = made(document, 0).expect("an answer");
    checked(&answer, &change(read(&answer.link, threads)), false, System::Inch, Layout::Narrow)
}

#[test]
fn the_verdict_leads_and_says_why() {
    let good = check(&document(), [1.5, 1.5], |readings| readings);
    assert_eq!((good.mark, good.word), (Verdict::Passes, "Threads and jam nuts good"));
    assert!(good.reason.contains("Both ends have enough thread"), "{}", good.reason);
    assert!(good.stops.expect("stops").contains("Shorter stop"));
    assert!(!good.drawing.is_empty() && good.drawing.words.contains("longer stop"));
    assert!(
        !good.working.is_empty() && good.log.starts_with("Threads and jam nuts good. A: 1-1/2 threads show"),
        "{}",
        good.log
    );

    let loose =
        check(&document(), [1.5, 1.5], |readings| Readings { nut_tight: [Some(false), Some(true)], ..readings });
    assert_eq!((loose.mark, loose.word), (Verdict::Fails, "Stop"));
    assert!(loose.reason.contains("The jam nut at A is loose: tighten it before you drive"), "{}", loose.reason);

    let short = check(&document(), [9.0, 9.0], |readings| readings);
    // This bar reaches the length of the build, so that comes before any other bar.
    assert!(short.order.expect("what helps").starts_with("Set both ends alike and turn the bar back to 38 in"));
    let apart = check(&document(), [9.0, 9.0], |readings| Readings { visible: [Some(9.0), Some(5.0)], ..readings });
    assert_eq!(apart.order, None, "no bar is named while ruler and count disagree");
    assert!(short.whole.iter().any(|line| line.words.contains("This bar is too short")));
    let stops = short.stops.expect("stops");
    assert!(stops.contains("39-1/4 in now") && stops.contains("longer stop 38-1/4 in"), "{stops}");
    assert!(stops.contains("wound out beyond its longer stop"), "{stops}");

    let nothing = check(&document(), [1.5, 1.5], |_| Readings::default());
    assert_eq!((nothing.mark, nothing.word), (Verdict::Unanswered, "Not judged"));
    assert!(nothing.reason.contains("No reading at end A"), "{}", nothing.reason);
    assert!(nothing.drawing.is_empty() && nothing.stops.is_none());

    let series = check(&of_a_series(), [0.5, 3.2], |readings| readings);
    assert_ne!(series.mark, Verdict::Passes);
    assert!(series.also.is_some() || series.word == "Not judged");
}

/// However well it is fitted, a link that fails a check is not safe.
#[test]
fn a_link_that_fails_its_checks_is_never_good() {
    let mut thin = document();
    (thin.rig.weight, thin.rig.usage) = (Some(lbf(6000.0)), Some(Use::Punished));
    thin.links[0].outside_diameter = Some(inch(1.5));
    let failing = check(&thin, [1.5, 1.5], |readings| readings);
    assert_eq!(failing.word, "Stop");
    assert!(
        failing.whole.iter().any(|line| line.words.contains("fails a check in the Size view")),
        "{:?}",
        failing.whole
    );
}

/// Every layout of the drawing holds now and both stops, also where it is wound out too far.
#[test]
fn the_drawing_names_both_stops() {
    let answer = made(&document(), 0).expect("an answer");
    for threads in [[1.5, 1.5], [9.0, 9.0], [0.0, 0.0]] {
        for layout in Layout::ALL {
            let shown = checked(&answer, &read(&answer.link, threads), false, System::Inch, layout).drawing;
            let words = format!("{:?}", shown.marks);
            for must in ["now ", "shorter stop", "longer stop"] {
                assert!(words.contains(must), "{must}");
            }
            assert!(shown.height > 0.0 && shown.width > 0.0);
        }
    }
}

/// A rig with lowers, uppers, a track bar and a tie rod at its front axle.
pub(crate) fn whole_rig() -> Document {
    let mut rig = document();
    let link = rig.links[0].clone();
    let at = |role, length| {
        let mut other = link.clone();
        (other.role, other.length, other.position) = (role, Some(inch(length)), Position::Front);
        other
    };
    rig.links = vec![at(Role::Lower, 38.0), at(Role::Upper, 34.0), at(Role::TrackBar, 34.0), at(Role::TieRod, 48.0)];
    rig
}

pub(crate) fn asked(ask: Ask, value: f64) -> Asked {
    Asked { ask, value, other_way: false, through: Through::Uppers, slopes: Slopes::default(), frame_end_left: None }
}

fn ask(document: &Document, index: usize, asked: &Asked) -> TurnAnswer {
    let all = |_: &Spot| [1.5, 1.5];
    ask_with(document, index, asked, &all)
}

/// The answer with so many threads showing at each bar.
pub(crate) fn ask_with(
    document: &Document,
    index: usize,
    asked: &Asked,
    threads: &dyn Fn(&Spot) -> [f64; 2],
) -> TurnAnswer {
    let link_of = |spot: &Spot| {
        (0..document.links.len()).find(|link| bars(document, *link).iter().any(|(of, _)| of == spot)).expect("a link")
    };
    let readings =
        |spot: &Spot| made(document, link_of(spot)).map(|made| read(&made.link, threads(spot))).unwrap_or_default();
    let known = Known { answers: &|of| made(document, of), readings: &readings, hit: &|_| false, chosen: None };
    answer(document, index, asked, known, System::Inch)
}

#[test]
fn only_what_fits_the_axle_is_asked() {
    let rig = whole_rig();
    assert_eq!(asks(&rig, 0), Ask::ALL);
    assert_eq!(asks(&document(), 0), [Ask::Length, Ask::Longer, Ask::Pinion, Ask::Caster, Ask::Forward]);
    let mut rear = document();
    rear.links[0].position = Position::Rear;
    assert_eq!(asks(&rear, 0), [Ask::Length, Ask::Longer, Ask::Pinion, Ask::Forward]);
}

#[test]
fn three_sixteenths_longer_is_one_line() {
    let told = ask(&document(), 0, &asked(Ask::Longer, inch(3.0 / 16.0)));
    let link = &told.links[0];
    assert_eq!(link.large.as_deref(), Some("1 turn and 1 flat, clockwise, looking from the eye at end A"));
    assert!(link.gives.as_deref().is_some_and(|gives| gives.starts_with("0.194 in longer")), "{:?}", link.gives);
    assert_eq!((link.after.len(), link.mark), (2, Verdict::Passes));
    assert!(link.log.contains("1 turn and 1 flat") && !link.steps.is_empty() && !link.working.is_empty());
    // Beyond the stop there are no turns to read, and the bar to order stands there.
    let far = ask(&document(), 0, &asked(Ask::Longer, inch(2.0)));
    assert_eq!((far.links[0].large.as_deref(), far.links[0].mark), (None, Verdict::Fails));
    assert!(
        far.links[0].instead.as_deref().is_some_and(|why| why.contains("order one of")),
        "{:?}",
        far.links[0].instead
    );
    // Both right-hand: by the eye, and what the bar would really do.
    let right = ask(&with_hands([Hand::Right, Hand::Right]), 0, &asked(Ask::Longer, inch(0.08)));
    let link = &right.links[0];
    assert!(link.large.as_deref().is_some_and(|large| large.starts_with("Unbolt the eye at end ")), "{:?}", link.large);
    assert!(link.same_hand.as_deref().is_some_and(|words| words.contains("the length stays")), "{:?}", link.same_hand);
}

#[test]
fn pinion_up_two_degrees_names_the_uppers_and_what_it_comes_to() {
    let rig = whole_rig();
    // Seen from the lower link: the uppers are what is turned.
    let told = ask(&rig, 0, &asked(Ask::Pinion, deg(1.0)));
    assert_eq!(told.links.iter().map(|link| link.link).collect::<Vec<_>>(), [Some(1); 2], "both uppers");
    let link = &told.links[0];
    assert!(link.title.contains("upper link"), "{}", link.title);
    assert!(link.gives.as_deref().is_some_and(|gives| gives.contains("longer") && gives.contains("tilts the axle by")));
    assert!(told.cautions.iter().any(|words| words.contains("U-joint")) && !told.assumed.is_empty());
    let down = ask(&rig, 1, &Asked { other_way: true, ..asked(Ask::Pinion, deg(1.0)) });
    assert!(down.links[0].gives.as_deref().is_some_and(|gives| gives.contains("shorter")));
    // The current link stands first where both move.
    let both = ask(&rig, 0, &Asked { through: Through::Both, ..asked(Ask::Pinion, deg(0.5)) });
    assert_eq!(both.links.iter().map(|link| link.link).collect::<Vec<_>>(), [Some(0), Some(0), Some(1), Some(1)]);
    // Without uppers in the build their change is told, and nothing is judged.
    let alone = ask(&document(), 0, &asked(Ask::Pinion, deg(1.0)));
    assert_eq!((alone.links[0].link, alone.links[0].mark), (None, Verdict::Unanswered));
}

#[test]
fn side_shift_asks_for_the_frame_end_and_follows_it() {
    let rig = whole_rig();
    let unsaid = ask(&rig, 2, &asked(Ask::Sideways, inch(0.25)));
    assert!(unsaid.links.is_empty() && unsaid.instead.is_some_and(|why| why.starts_with("Not judged")));
    for (left, word) in [(true, "shorter"), (false, "longer")] {
        let told = ask(&rig, 2, &Asked { frame_end_left: Some(left), ..asked(Ask::Sideways, inch(0.25)) });
        assert!(told.links[0].gives.as_deref().is_some_and(|gives| gives.contains(word)), "{left}");
    }
    // Which way a tie rod is turned depends on its side of the axle.
    let unsaid = ask(&rig, 3, &asked(Ask::Toe, inch(0.25)));
    assert!(unsaid.links.is_empty() && unsaid.instead.is_some_and(|why| why.contains("ahead of the axle or behind")));
    let mut rig = rig;
    rig.links[3].tie_rod_side = Some(linkwright::document::TieRodSide::Ahead);
    let toe = ask(&rig, 3, &asked(Ask::Toe, inch(0.25)));
    assert!(toe.links[0].gives.as_deref().is_some_and(|gives| gives.contains("changes toe by")), "{toe:?}");
    assert!(toe.links[0].cautions.iter().any(|words| words.contains("Steering is safety critical")));
}

/// Wherever a series stands in for a rod end, the page has the way to the field it is entered in.
#[test]
fn a_rod_end_that_nobody_measured_leads_to_its_field() {
    let mut rig = whole_rig();
    rig.links[1].ends[1].rod_end = Some("wide-14");
    let answer = made(&rig, 1).expect("an answer");
    let ends = own_rod_end::of_link(1, &answer.link);
    assert_eq!(ends.iter().map(|end| (end.link, end.end)).collect::<Vec<_>>(), [(1, 1)]);
    assert_eq!(ends[0].field(&rig), "in-rod-end-b");
    let of_rig = own_rod_end::of_rig(&rig, &linkwright::engine::whole_rig(&rig, None).links);
    assert_eq!(of_rig.iter().map(|end| end.title.as_str()).collect::<Vec<_>>(), ["Front upper links, end B"]);
    assert_eq!(own_rod_end::of_link(0, &made(&rig, 0).expect("an answer").link), []);
    // Where Turn says that it is not measured, once for a pair; nowhere else.
    let told = ask(&rig, 0, &Asked { through: Through::Both, ..asked(Ask::Pinion, deg(0.5)) });
    for link in &told.links {
        let says = link.open.iter().any(|words| words.contains("is not measured"));
        assert_eq!(says, link.link == Some(1));
        assert!(says || link.unmeasured.is_empty());
    }
    let upper = told.links.iter().filter(|link| link.link == Some(1));
    assert_eq!(upper.map(|link| link.unmeasured.len()).sum::<usize>(), 1);
}

#[test]
fn a_wish_is_read_in_the_readers_units() {
    assert_eq!(read_wish(Ask::Longer, " ", System::Inch), Ok(None));
    let near =
        |read: Result<Option<f64>, String>, value: f64| (read.ok().flatten().unwrap_or(f64::NAN) - value).abs() < 1e-12;
    assert!(near(read_wish(Ask::Longer, "3/16", System::Inch), inch(3.0 / 16.0)));
    assert!(near(read_wish(Ask::Longer, "5", System::Metric), 0.005));
    assert!(near(read_wish(Ask::Pinion, "2", System::Inch), deg(2.0)));
    for (ask, text) in [(Ask::Longer, "40"), (Ask::Pinion, "90"), (Ask::Length, "1"), (Ask::Toe, "much")] {
        assert!(read_wish(ask, text, System::Inch).is_err(), "{text}");
    }
}
