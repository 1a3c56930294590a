//! The check as fitted: what is good, and every dangerous situation by its words.

use crate::rig::{document, link, of_a_series, read, with_hands, words};
use linkwright::document::{Document, Hand};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::as_fitted::{AsFitted, Readings, as_fitted};
use linkwright::quantity::{inch, threads_per_inch};
use linkwright::report::{LinkGeometry, StopBy};

const PITCH: f64 = threads_per_inch(12.0);

/// Every remark, end A, end B, then the whole.
fn remarks(judged: &AsFitted) -> Vec<String> {
    let ends = judged.ends.iter().flat_map(|end| &end.remarks);
    ends.chain(&judged.remarks).map(|remark| words(&remark.says)).collect()
}

/// The reason that stands first at an end.
fn first(judged: &AsFitted, end: usize) -> String {
    words(&judged.ends[end].first().expect("a reason").says)
}

#[test]
fn a_link_as_it_was_set_is_good_and_says_why() {
    let link = link(&document());
    let judged = as_fitted(&link, &read(&link, [1.5, 1.5]));
    assert_eq!((judged.standing, judged.unjudged), (Standing::Good, false), "{:?}", remarks(&judged));
    for (end, made) in judged.ends.iter().zip(&link.ends) {
        assert_eq!(end.standing, Standing::Good);
        // T 2.5, J as tabled, 1-1/2 threads out: by hand.
        let inserted = inch(2.5) - made.jam_nut - 1.5 * PITCH;
        let full = inserted - made.not_full;
        assert!((end.engagement.expect("read") - full).abs() < 1e-12);
        let [threads, diameters] = end.in_threads.expect("read");
        assert!((threads - full / PITCH).abs() < 1e-9 && (diameters - full / inch(1.25)).abs() < 1e-9);
        let [out, inward] = end.turns.expect("read");
        assert!((out - (inserted - made.stop.inserted) / PITCH).abs() < 1e-9 && out > 0.0);
        assert!((inward - (made.most + made.not_full - inserted) / PITCH).abs() < 1e-9 && inward > 0.0);
    }
    let bar = judged.bar.expect("all three were read");
    assert!((bar - link.bar).abs() < 1e-12);
    let [shorter, longer] = judged.stops.expect("both ends were read");
    let length = judged.length.expect("read");
    let turns = judged.ends.each_ref().map(|end| end.turns.expect("read"));
    assert!((longer - length - turns[0][0].min(turns[1][0]) * 2.0 * PITCH).abs() < 1e-12);
    assert!((length - shorter - turns[0][1].min(turns[1][1]) * 2.0 * PITCH).abs() < 1e-12);
    assert!(first(&judged, 0).contains("Full thread in the bar at A"), "{}", first(&judged, 0));
}

/// Without a reading there is never a good word, and the missing one is named.
#[test]
fn what_was_not_read_is_named_and_never_good() {
    let link = link(&document());
    let whole = read(&link, [1.5, 1.5]);
    let cases: [(&str, Readings, &str); 4] = [
        ("nothing", Readings::default(), "No reading at end A"),
        ("no nut", Readings { nut_tight: [Some(true), None], ..whole }, "Jam nut at B not checked"),
        (
            "one end",
            Readings { face: [whole.face[0], None], visible: [whole.visible[0], None], ..whole },
            "No reading at end B",
        ),
        ("nuts", Readings { nut_tight: [None; 2], ..whole }, "Jam nut at A not checked"),
    ];
    for (name, readings, says) in cases {
        let judged = as_fitted(&link, &readings);
        assert_eq!(judged.standing, Standing::NotJudged, "{name}");
        assert!(judged.unjudged && remarks(&judged).iter().any(|words| words.contains(says)), "{name}");
    }
    // One of the two ways to read is enough, and eye to eye is not needed for the ends.
    for readings in [
        Readings { face: [None; 2], eye_to_eye: None, ..whole },
        Readings { visible: [None; 2], eye_to_eye: None, ..whole },
    ] {
        assert_eq!(as_fitted(&link, &readings).standing, Standing::Good);
    }
}

#[test]
fn a_rod_end_that_was_not_measured_is_never_good() {
    let link = link(&of_a_series());
    let judged = as_fitted(&link, &read(&link, [1.0, 1.0]));
    assert!(judged.unjudged && judged.standing >= Standing::NotJudged);
    assert!(first(&judged, 0).contains("is not measured"), "{}", first(&judged, 0));
    assert!(first(&judged, 0).contains("eye center to shank end, and thread length"));
    let short = as_fitted(&link, &read(&link, [8.0, 1.0]));
    assert_eq!(short.standing, Standing::Stop);
    assert!(first(&short, 0).contains("by the published series"), "{}", first(&short, 0));
}

/// A dangerous situation: what was read, how it must stand, at which end (2 is the whole), and in which words.
struct Danger {
    name: &'static str,
    link: LinkGeometry,
    readings: Readings,
    standing: Standing,
    at: usize,
    says: &'static [&'static str],
}

fn own() -> LinkGeometry {
    link(&document())
}

fn deep_tapped(depth: f64) -> Document {
    let mut document = document();
    document.links[0].ends[0].tapped_depth = Some(inch(depth));
    document
}

fn dangers() -> Vec<Danger> {
    let made = own();
    let good = read(&made, [1.5, 1.5]);
    let room = (made.ends[0].thread_length - made.ends[0].jam_nut) / PITCH;
    let least_visible = room - (made.ends[0].least + made.ends[0].not_full) / PITCH;
    let right = link(&with_hands([Hand::Right, Hand::Right]));
    let shallow = link(&deep_tapped(1.75));
    let danger = |name, link: &LinkGeometry, readings, standing, at, says| Danger {
        name,
        link: link.clone(),
        readings,
        standing,
        at,
        says,
    };
    vec![
        danger(
            "short engagement at A",
            &made,
            read(&made, [least_visible + 1.0, 1.5]),
            Standing::Stop,
            0,
            &["Only ", "of full thread is in the bar at A", "It needs 1-1/4 in"],
        ),
        danger(
            "both ends wound out too far",
            &made,
            read(&made, [9.0, 9.0]),
            Standing::Stop,
            2,
            &["This bar is too short for ", "order one of "],
        ),
        danger(
            "more than three threads",
            &made,
            read(&made, [3.5, 3.5]),
            Standing::Watch,
            0,
            &["threads show at A", "No more than 3 is common practice, no source"],
        ),
        danger(
            "just over the least",
            &made,
            read(&made, [least_visible - 0.3, least_visible - 0.3]),
            Standing::Watch,
            0,
            &["cannot tell that apart"],
        ),
        danger(
            "both right-hand",
            &right,
            read(&right, [1.5, 1.5]),
            Standing::Watch,
            2,
            &["same hand", "without anybody noticing"],
        ),
        danger(
            "shank at the bottom",
            &shallow,
            read(&shallow, [0.5, 0.5]),
            Standing::Stop,
            0,
            &["less than a thread from its bottom", "hold nothing"],
        ),
        danger(
            "one nut loose",
            &made,
            Readings { nut_tight: [Some(true), Some(false)], ..good },
            Standing::Stop,
            1,
            &["The jam nut at B is loose: tighten it before you drive, counterclockwise seen from its eye"],
        ),
        danger(
            "uneven ends",
            &made,
            read(&made, [0.5, 3.0]),
            Standing::Watch,
            2,
            &["End B shows 2-1/2 threads more than A", "5 half turns counterclockwise, seen from it"],
        ),
        danger(
            "ruler past the shank",
            &made,
            Readings { face: [Some(inch(4.5)), good.face[1]], visible: [None, good.visible[1]], ..good },
            Standing::NotJudged,
            0,
            &["The ruler at end A cannot be right", "would not be in the bar at all"],
        ),
        danger(
            "ruler to the nut",
            &made,
            Readings { face: [Some(inch(1.75)), good.face[1]], ..good },
            Standing::NotJudged,
            0,
            &["The ruler at end A cannot be right", "to the face of the bar, not to the nut"],
        ),
        danger(
            "too many threads",
            &made,
            Readings { visible: [Some(40.0), good.visible[1]], face: [None, good.face[1]], ..good },
            Standing::NotJudged,
            0,
            &["The count at end A cannot be right", "would leave none in the bar"],
        ),
        danger(
            "they disagree",
            &made,
            Readings { visible: [good.visible[0], Some(4.0)], ..good },
            Standing::NotJudged,
            1,
            &["Ruler and count disagree at end B by 0.208 in", "2-1/2 threads", "Measure again"],
        ),
        danger(
            "a field that cannot be read",
            &made,
            Readings { unreadable: true, ..good },
            Standing::NotJudged,
            2,
            &["A reading cannot be read: type it again"],
        ),
        danger(
            "another bar",
            &made,
            Readings { eye_to_eye: good.eye_to_eye.map(|length| length + inch(0.5)), ..good },
            Standing::NotJudged,
            2,
            &["This is not the bar of this build, or a reading is off"],
        ),
    ]
}

#[test]
fn a_dangerous_situation_stands_in_its_words_and_is_never_good() {
    for Danger { name, link, readings, standing, at, says } in dangers() {
        let judged = as_fitted(&link, &readings);
        let all = remarks(&judged);
        assert!(judged.standing >= standing && judged.standing != Standing::Good, "{name}: {all:?}");
        let there = if at < 2 { &judged.ends[at].remarks } else { &judged.remarks };
        let found = there.iter().find(|remark| {
            let words = words(&remark.says);
            says.iter().all(|part| words.contains(part))
        });
        let found = found.unwrap_or_else(|| panic!("{name}: {says:?} not in {all:?}"));
        assert!(found.standing == standing || at == 2, "{name}: {:?}", found.standing);
        if at < 2 {
            assert!(judged.ends[at].standing >= standing, "{name}");
        }
    }
}

/// With both readings at an end and one impossible, the other is judged, and still nothing is good.
#[test]
fn an_impossible_reading_is_put_aside_and_named() {
    let made = own();
    let good = read(&made, [1.5, 1.5]);
    let judged = as_fitted(&made, &Readings { face: [Some(inch(4.5)), good.face[1]], ..good });
    assert_eq!(judged.ends[0].standing, Standing::NotJudged);
    let inserted = judged.ends[0].inserted.expect("the count still tells");
    assert!((inserted - (made.ends[0].thread_length - made.ends[0].jam_nut - 1.5 * PITCH)).abs() < 1e-12);
}

/// Readings that fit only another published rod end with the same thread say which.
#[test]
fn readings_of_another_series_are_told() {
    let made = link(&of_a_series());
    let narrow = linkwright::engine::tables::rod_ends::ALL
        .iter()
        .find(|row| row.thread == made.ends[0].thread.id && row.id != made.ends[0].rod_end_id)
        .expect("another series has this thread");
    let threads = 1.0;
    let inserted = narrow.thread_length - made.ends[0].jam_nut - threads * made.ends[0].thread.pitch;
    let face = narrow.eye_to_end - inserted;
    let judged =
        as_fitted(&made, &Readings { face: [Some(face), None], visible: [Some(threads), None], ..Readings::default() });
    let all = remarks(&judged);
    assert!(
        all.iter().any(|words| words.contains("would fit another rod end") && words.contains(narrow.label)),
        "{all:?}"
    );
}

/// The bar to order sets both ends to 1-1/2 threads at the length the link has, to 1/32 in, rounded up.
#[test]
fn the_bar_to_order_brings_both_ends_back() {
    let made = own();
    let readings = read(&made, [9.0, 7.0]);
    let judged = as_fitted(&made, &readings);
    let order = judged.order.expect("a bar");
    assert!(order.bar > made.bar && !order.provisional);
    let steps = order.bar / inch(1.0 / 32.0);
    assert!((steps - steps.round()).abs() < 1e-6);
    let end = &made.ends[0];
    let face = end.eye_to_end - (end.thread_length - end.jam_nut - 1.5 * PITCH);
    let exact = readings.eye_to_eye.expect("read") - 2.0 * face;
    assert!(order.bar - exact >= -1e-9 && order.bar - exact < inch(1.0 / 32.0));
    for shows in order.visible_threads {
        assert!((1.5 - shows) * PITCH <= inch(1.0 / 64.0) + 1e-9 && shows <= 1.5 + 1e-6);
    }
    assert!(!judged.remarks.iter().any(|remark| words(&remark.says).contains("wind it out")));
    // One end alone past its stop, and the other with room: the ends are evened, no bar is ordered.
    assert_eq!(as_fitted(&made, &read(&made, [6.0, 0.0])).order, None);
}

/// A shank that bends before it shows three threads stops there.
#[test]
fn past_a_stop_by_bending_is_stop() {
    let mut made = own();
    made.ends[0].stop.by = StopBy::ShankBending;
    made.ends[0].stop.inserted = made.ends[0].thread_length - made.ends[0].jam_nut - 2.0 * PITCH;
    let judged = as_fitted(&made, &read(&made, [2.5, 2.5]));
    assert_eq!(judged.ends[0].standing, Standing::Stop);
    assert!(first(&judged, 0).contains("limit in bending"), "{}", first(&judged, 0));
}

/// However the readings are drawn, less thread in the bar never stands better, and nothing unread is good.
#[test]
fn less_thread_never_stands_better() {
    let made = own();
    let room = (made.ends[0].thread_length - made.ends[0].jam_nut) / PITCH;
    let mut before = Standing::Good;
    for step in 0..=200 {
        let threads = room * f64::from(step) / 201.0;
        let judged = as_fitted(&made, &read(&made, [threads; 2]));
        let standing = judged.ends[0].standing;
        assert!(standing >= before || threads < 3.0, "{threads}: {standing:?} after {before:?}");
        before = standing;
    }
    assert_eq!(before, Standing::Stop);
}

#[test]
fn where_turning_the_bar_has_no_range_none_is_shown() {
    let link = link(&document());
    let apart = as_fitted(&link, &read(&link, [1.5, 12.0]));
    assert_eq!(apart.stops, None);
    assert!(apart.remarks.iter().any(|remark| words(&remark.says).contains("No safe range by turning the bar")));
    let alike = as_fitted(&link, &read(&link, [1.5, 1.5]));
    let [shorter, longer] = alike.stops.expect("two stops");
    assert!(shorter < longer);
}
