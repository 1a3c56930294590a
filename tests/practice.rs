//! The sizes that builders settle on come out of the numbers (common practice, no source).

#[path = "practice/common.rs"]
mod common;
#[path = "practice/coverage.rs"]
mod coverage;
#[path = "practice/scenarios.rs"]
mod scenarios;
#[path = "practice/values.rs"]
mod values;

use linkwright::document::{Document, Hand, Use};
use linkwright::engine::{neighbors, report};
use linkwright::quantity::{INCH, inch, lbf};
use linkwright::report::Sizing;
use linkwright::share;

/// Rig weight in lb, length in in, use, diameter by the numbers in in, thread.
const SCENARIOS: [(f64, f64, Use, f64, &str); 7] = [
    (3500.0, 34.0, Use::Slow, 2.0, "1-1/4-12"),
    (3500.0, 38.0, Use::Slow, 2.0, "1-1/4-12"),
    (2500.0, 34.0, Use::Slow, 1.75, "7/8-14"),
    (4100.0, 38.0, Use::Hard, 2.25, "1-1/4-12"),
    (4800.0, 40.0, Use::Hard, 2.5, "1-1/4-12"),
    (4000.0, 40.0, Use::Punished, 2.5, "1-1/4-12"),
    (4500.0, 38.0, Use::Easy, 2.25, "1-1/4-12"),
];

#[test]
fn the_numbers_arrive_at_what_builders_fit() {
    for (weight, length, usage, diameter, thread) in SCENARIOS {
        let mut document = Document::default();
        document.rig.weight = Some(lbf(weight));
        document.rig.usage = Some(usage);
        document.links[0].length = Some(inch(length));
        let report = report(&document);
        let found = report.links[0].answer().and_then(|answer| answer.sizing.by_numbers.clone());
        let found = found.map(|size| (format!("{:.3}", size.outside_diameter / inch(1.0)), size.thread));
        assert_eq!(found, Some((format!("{diameter:.3}"), thread)), "{weight} lb, {length} in, {usage:?}");
        let fragment = share::to_fragment(&document);
        let opened = share::from_fragment(&fragment);
        assert_eq!((opened.document, opened.notices.len()), (document, 0), "{fragment} opens as it was sent");
        assert!(fragment.len() < 200, "{fragment}");
    }
}

/// In the order of the scenarios: the trade's least and most diameter in in, the diameter recommended, the threads that
/// would be right for it.
const FITTED: [(f64, f64, f64, &[&str]); 7] = [
    (2.0, 2.25, 2.0, &["1-14", "1-1/4-12"]),
    (2.0, 2.25, 2.0, &["1-14", "1-1/4-12"]),
    (2.0, 2.25, 2.0, &["7/8-14"]),
    (2.25, 2.5, 2.25, &["1-1/4-12"]),
    (2.5, 2.75, 2.5, &["1-1/4-12"]),
    (2.5, 2.75, 2.5, &["1-1/4-12"]),
    (2.0, 2.25, 2.25, &["1-1/4-12"]),
];

fn document((weight, length, usage, ..): (f64, f64, Use, f64, &str)) -> Document {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(weight));
    document.rig.usage = Some(usage);
    document.links[0].length = Some(inch(length));
    document
}

fn sizing(scenario: (f64, f64, Use, f64, &str)) -> Sizing {
    report(&document(scenario)).links[0].answer().expect("three entries give an answer").sizing.clone()
}

fn same(found: f64, inches: f64) -> bool {
    (found / INCH - inches).abs() < 1e-9
}

#[test]
fn habit_and_recommendation_are_what_builders_fit() {
    for (scenario, (least, most, recommended, threads)) in SCENARIOS.into_iter().zip(FITTED) {
        let sizing = sizing(scenario);
        let trade = sizing.by_trade.expect("a habit");
        assert!(
            same(trade.least.outside_diameter, least) && same(trade.most.outside_diameter, most),
            "{scenario:?}: {trade:?}"
        );
        let found = sizing.recommended.expect("a recommendation");
        assert!(same(found.outside_diameter, recommended), "{scenario:?}: {found:?}");
        assert!(threads.contains(&found.thread) && threads.contains(&trade.thread), "{scenario:?}: {found:?}");
        assert!(found.feasible, "{scenario:?}: {found:?}");
    }
}

#[test]
fn a_size_below_the_numbers_does_not_hold() {
    for scenario in SCENARIOS {
        let sizing = sizing(scenario);
        let (numbers, recommended) = (sizing.by_numbers.expect("a size"), sizing.recommended.expect("a size"));
        let [smaller, _] = neighbors(&document(scenario), 0, &recommended);
        let smaller = smaller.expect("stock goes further down");
        if smaller.outside_diameter < numbers.outside_diameter - 1e-9 {
            assert!(!smaller.feasible, "{scenario:?}: {smaller:?}");
        }
        assert!(recommended.outside_diameter >= numbers.outside_diameter - 1e-9, "{scenario:?}");
    }
}

/// A right-hand thread leaves the bar when the bar is turned clockwise, seen from its eye.
#[test]
fn the_way_to_turn_follows_the_hand_at_end_a() {
    for (a, b, longer) in [
        (Hand::Right, Hand::Left, Some("clockwise makes it longer")),
        (Hand::Left, Hand::Right, Some("counterclockwise makes it longer")),
        (Hand::Right, Hand::Right, None),
        (Hand::Left, Hand::Left, None),
    ] {
        let mut document = Document::default();
        document.rig.weight = Some(lbf(4100.0));
        document.rig.usage = Some(Use::Hard);
        document.links[0].length = Some(inch(38.0));
        document.links[0].ends[0].hand = Some(a);
        document.links[0].ends[1].hand = Some(b);
        let report = report(&document);
        let turning = report.links[0].answer().expect("an answer").link.adjustment.turning;
        let said = turning.map(|words| words.split(": ").nth(1).expect("a direction"));
        assert!(said.is_some() == longer.is_some(), "{a:?} {b:?}: {turning:?}");
        assert!(said.zip(longer).is_none_or(|(said, longer)| said.starts_with(longer)), "{a:?} {b:?}: {turning:?}");
    }
}
