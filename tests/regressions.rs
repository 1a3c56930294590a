//! Links that once got a wrong answer, each as it was sent.

#[allow(dead_code, reason = "not every helper is needed here")]
mod links;

use links::{answer, find, sized};
use linkwright::document::{Document, End, Hand, OWN_ROD_END, ShankSteel, Use};
use linkwright::engine::firmness;
use linkwright::engine::sentence::spoken;
use linkwright::inputs;
use linkwright::quantity::{INCH, System, inch, lbf};
use linkwright::report::{Answer, Verdict};
use linkwright::share::from_fragment;

/// A link as an earlier version sent it.
fn opened(fragment: &str) -> Document {
    let opened = from_fragment(fragment);
    assert!(opened.notices.is_empty(), "{:?}", opened.notices);
    opened.document
}

fn says(answer: &Answer, id: &str) -> String {
    spoken(&find(answer, id).says, System::Inch)
}

/// The measured shank at end B is so short that none of it reaches the bar. Its negative engagement once made a negative
/// utilization, so that end A was judged instead.
#[test]
fn an_end_that_is_not_in_the_bar_fails() {
    let document = opened(
        "2&length=24in&weight=2000lb&od=2in&own-f.b=1.5in&own-t.b=0.52in&own-bore.b=0.75in&rounding=0.25in&role=upper&use=easy&rod-end.a=wide-12&rod-end.b=mine&own-thread.b=3/4-16&crc=ed2ce8e5",
    );
    let forward = answer(&document);
    assert!(forward.link.ends[1].engagement < 0.0 && forward.link.ends[0].engagement > inch(1.0));
    let mut turned = document;
    turned.links[0].ends.swap(0, 1);
    for (answer, end) in [(&forward, "End B"), (&answer(&turned), "End A")] {
        assert_eq!(answer.verdict, Verdict::Fails);
        for id in ["engagement", "thread-stripping"] {
            assert_eq!(find(answer, id).verdict, Verdict::Fails, "{id}");
            assert!(find(answer, id).utilization.is_some_and(|used| used > 1.0), "{id}");
            assert!(says(answer, id).starts_with(end), "{id}: {}", says(answer, id));
        }
        assert!(says(answer, "engagement").contains("no full thread of the shank is in the bar"));
        assert!(says(answer, "thread-stripping").contains("has no thread in the bar, so it bears nothing"));
    }
}

/// The coarse rounding of the bar winds end B in past the end of its thread, where its jam nut has nothing to hold. It
/// shows fewer threads than end A, and the end that shows more was told.
#[test]
fn a_jam_nut_off_its_thread_is_told_at_either_end() {
    let document = opened(
        "2&length=32.58in&weight=2500lb&od=2in&visible=1.5&rounding=0.5in&role=upper&use=easy&rod-end.a=wide-16&rod-end.b=wide-12&crc=11738bda",
    );
    let forward = answer(&document);
    let [a, b] = forward.link.ends.each_ref().map(|end| end.visible_threads);
    assert!(a > 0.0 && b < -0.4, "{a} {b}");
    let mut turned = document;
    turned.links[0].ends.swap(0, 1);
    for (answer, end) in [(&forward, "end B"), (&answer(&turned), "end A")] {
        assert_eq!((answer.verdict, find(answer, "visible-threads").verdict), (Verdict::Fails, Verdict::Fails));
        let says = says(answer, "visible-threads");
        assert!(says.contains(&format!("The jam nut at {end} would run off the thread")), "{says}");
    }
}

/// A link of a rig so light that its shanks are not what stops it.
fn light(a: &'static str, b: &'static str) -> Document {
    let mut document = sized(2.25, a, b);
    (document.rig.weight, document.rig.usage) = (Some(lbf(1200.0)), Some(Use::Easy));
    document
}

/// With threads of one hand and unlike pitch a turn of the bar moves it by the difference of the two.
#[test]
fn like_hands_of_unlike_pitch_adjust_by_the_difference() {
    let adjusted = |a, b, hand| {
        let mut document = light(a, b);
        document.links[0].ends.iter_mut().for_each(|end| end.hand = Some(hand));
        let link = answer(&document).link;
        (link.adjustment.per_turn / INCH, link.adjustment.turning, link.adjustment.turns_good)
    };
    for (a, b, hand, turning) in [
        ("wide-16", "wide-12", Hand::Right, "from end A, the coarser thread: clockwise makes it longer"),
        ("wide-16", "wide-12", Hand::Left, "from end A, the coarser thread: counterclockwise makes it longer"),
        ("wide-12", "wide-16", Hand::Right, "from end B, the coarser thread: clockwise makes it longer"),
        ("wide-12", "wide-16", Hand::Left, "from end B, the coarser thread: counterclockwise makes it longer"),
    ] {
        let (per_turn, says, turns) = adjusted(a, b, hand);
        assert!((per_turn - (1.0 / 12.0 - 1.0 / 16.0)).abs() < 1e-12, "{a} {b}: {per_turn}");
        assert!(says.is_some_and(|says| says.contains(turning)), "{a} {b} {hand:?}: {says:?}");
        assert!(turns[0] > 0.0 && turns[1] > 0.0, "{turns:?}");
    }
    let (per_turn, says, turns) = adjusted("wide-16", "wide-16", Hand::Right);
    assert!(per_turn.abs() < 1e-15 && says.is_none() && turns.iter().all(|turns| turns.abs() < 1e-15));
    let mut opposite = light("wide-16", "wide-12");
    opposite.links[0].ends[0].hand = Some(Hand::Right);
    let opposite = answer(&opposite).link.adjustment;
    assert!((opposite.per_turn / INCH - (1.0 / 12.0 + 1.0 / 16.0)).abs() < 1e-12);
}

/// Threads wanted at each end, set outside of what is good: only the way back into the window counts as good travel.
#[test]
fn good_travel_begins_inside_the_good_window() {
    for (showing, out, inward) in [(5.0, false, true), (1.5, true, true), (0.0, true, false)] {
        let mut document = light("wide-12", "wide-12");
        (document.links[0].visible_threads, document.links[0].rounding) = (Some(showing), Some(inch(0.001)));
        let answer = answer(&document);
        for end in &answer.link.ends {
            let window = end.most + end.not_full - end.stop.inserted;
            let reach = end.reach;
            // The bar is rounded to 0.001 in.
            let some = |travel: f64| travel > inch(0.001);
            assert_eq!((some(reach.out_good), some(reach.in_good)), (out, inward), "{showing}: {reach:?}");
            assert!(reach.out_good + reach.in_good <= window + 1e-12, "{showing}: {reach:?} in {window}");
        }
    }
}

/// Where the shank governs, a shorter link fails: the limits on length look down too.
#[test]
fn a_link_that_its_shank_governs_has_a_least_length() {
    let mut document = sized(2.5, "wide-16", "wide-16");
    (document.rig.weight, document.rig.usage) = (Some(lbf(4600.0)), Some(Use::Punished));
    document.links[0].ends.iter_mut().for_each(|end| end.shank_steel = Some(ShankSteel::Alloy));
    document.links[0].length = Some(inch(36.0));
    let as_it_is = answer(&document);
    assert_eq!(as_it_is.weakest_finding().map(|finding| finding.id), Some("shank-bending"));
    let firm = firmness(&document, 0).into_iter().find(|firm| firm.input == inputs::LENGTH.id).expect("told");
    let least = firm.least.expect("a least length");
    assert!(least < firm.now && least > inch(24.0), "{}", least / INCH);
    let passes = |length: f64| {
        let mut document = document.clone();
        (document.links[0].length, document.links[0].rounding) = (Some(length), Some(inch(0.001)));
        answer(&document).findings.iter().all(|finding| finding.utilization.is_none_or(|used| used <= 1.0))
    };
    assert!(passes(firm.now) && !passes(least - inch(0.5)));
}

/// Holes as deep as usual let a shank in as far as its thread goes, and nothing else is said of them.
#[test]
fn a_hole_is_called_shallow_only_where_it_is() {
    let document = sized(2.25, "wide-16", "wide-16");
    assert!(says(&answer(&document), "bottoming").starts_with("Even wound in as far as it goes"));
    let mut shallow = document;
    shallow.links[0].ends[1].tapped_depth = Some(inch(1.7));
    let says = says(&answer(&shallow), "bottoming");
    assert!(says.starts_with("The hole ends before the thread of the shank does"), "{says}");
}

/// A capacity of nothing under load fails, wherever it comes from.
#[test]
fn what_bears_nothing_fails() {
    let mut document = sized(2.25, "wide-16", "wide-16");
    for end in &mut document.links[0].ends {
        (end.rod_end, end.own_thread) = (Some(OWN_ROD_END), Some("7/8-14"));
        (end.own_eye_to_end, end.own_thread_length, end.own_bore) =
            (Some(inch(3.0)), Some(inch(0.7)), Some(inch(0.75)));
    }
    for id in ["engagement", "thread-stripping"] {
        let answer = answer(&document);
        assert_eq!(find(&answer, id).verdict, Verdict::Fails, "{id}: {}", says(&answer, id));
    }
}

/// End A reaches its limit in bending only when it is wound out, end B as it is set. Whichever uses more at its outward
/// stop, the link fails.
#[test]
fn a_shank_that_fails_as_set_is_not_hidden_by_one_that_would_fail_wound_out() {
    let own = |to_end: f64, least: Option<f64>| End {
        rod_end: Some(OWN_ROD_END),
        shank_steel: Some(ShankSteel::Alloy),
        own_thread: Some("1-1/4-12"),
        own_eye_to_end: Some(inch(to_end)),
        own_thread_length: Some(inch(2.343)),
        own_bore: Some(inch(1.0)),
        own_ball_width: Some(inch(1.375)),
        least_engagement: least,
        ..End::default()
    };
    let (far, fixed) = (own(4.125, None), own(4.195, Some(inch(1.36))));
    let (mut hidden, mut failed) = (0, 0);
    for tens in 350..560 {
        let mut document = sized(2.5, "wide-16", "wide-16");
        (document.rig.weight, document.rig.usage) = (Some(lbf(10.0 * f64::from(tens))), Some(Use::Punished));
        document.links[0].length = Some(inch(40.0));
        let mut shank = |ends: [&End; 2]| {
            document.links[0].ends = ends.map(End::clone);
            find(&answer(&document), "shank-bending").clone()
        };
        let [a, b] = [shank([&far, &far]), shank([&fixed, &fixed])];
        if b.to_failure.expect("a number") > 1.01 {
            failed += 1;
            assert_eq!(shank([&far, &fixed]).verdict, Verdict::Fails, "at {tens}0 lb");
            assert_eq!(shank([&fixed, &far]).verdict, Verdict::Fails, "at {tens}0 lb, ends exchanged");
            hidden += u32::from(a.verdict != Verdict::Fails && a.utilization > b.utilization);
        }
    }
    assert!(failed > 0 && hidden > 0, "{failed} {hidden}");
}

/// What stands in the way at either end is told of both, where the ends are alike.
#[test]
fn a_condition_of_ends_that_are_alike_names_both() {
    let conditions = (350..560).find_map(|tens| {
        let mut document = sized(2.5, "wide-16", "wide-16");
        (document.rig.weight, document.rig.usage) = (Some(lbf(10.0 * f64::from(tens))), Some(Use::Punished));
        Some(answer(&document).conditions).filter(|conditions| !conditions.is_empty())
    });
    let said = spoken(&conditions.expect("a weight at which the stop moves in")[0], System::Inch);
    assert!(said.contains("threads showing at either end"), "{said}");
}
