//! The table of failed parts.

use super::tube;
use crate::links::answer;
use linkwright::engine::fitting::failures::{Catch, FAILURES, check_title, find};
use linkwright::present::drawing::{Mark, Point};
use linkwright::present::fit::broken::{self, Leads};

#[test]
fn every_look_is_told_whole() {
    assert!(FAILURES.len() >= 20);
    for (index, failure) in FAILURES.iter().enumerate() {
        let id = failure.id;
        assert!(FAILURES[..index].iter().all(|other| other.id != id && other.name != failure.name), "{id} twice");
        assert_eq!(find(id), Some(failure));
        assert!(failure.name.len() <= 22, "{id}: its name does not stand under a small drawing");
        for words in [failure.looks, failure.happened, failure.change] {
            assert!(words.ends_with('.') && words.len() > 20 && words.len() < 220, "{id}: {words}");
        }
        assert!(!failure.caught_by.is_empty(), "{id}");
        for catch in failure.caught_by {
            if let Catch::Check(check) = catch {
                assert!(check_title(check).is_some(), "{id} names {check}, which is no check");
            }
        }
        assert!(!failure.source.words().is_empty());
    }
    assert_eq!(check_title("no-such-check"), None);
}

/// What is broken in the steering or holds the axle stops the rig.
#[test]
fn what_is_broken_stops() {
    for id in ["buckled", "snapped-bar", "stripped", "shank-broken", "ball-out", "walked-out", "bent-bolt", "bottomed"]
    {
        assert!(find(id).expect("listed").stops, "{id}");
    }
    // What is weighed after a hit is not stopped here, but sent there; steering that wanders has its own stop.
    let bent = find("bent-bar").expect("listed");
    assert!(!bent.stops && bent.change.contains("After a hit before it moves"));
    assert!(find("bump-steer").expect("listed").change.contains("loose, bent or cracked, stop: do not drive"));
    assert!(!find("wrong-part").expect("listed").stops);
}

/// Each has its own small drawing, that stays on its sheet.
#[test]
fn every_look_is_drawn() {
    let looks = broken::looks();
    assert_eq!(looks.len(), FAILURES.len());
    for (index, look) in looks.iter().enumerate() {
        let drawing = &look.drawing;
        assert!(!drawing.is_empty() && !drawing.words.is_empty(), "{}", look.id);
        assert!(looks[..index].iter().all(|other| other.drawing.marks != drawing.marks), "{} twice", look.id);
        let inside = |(x, y): Point| (0.0..=drawing.width).contains(&x) && (0.0..=drawing.height).contains(&y);
        for mark in &drawing.marks {
            let points = match mark {
                Mark::Line { from, to, .. } => vec![*from, *to],
                Mark::Path { points, .. } => points.clone(),
                Mark::Circle { center: (x, y), radius, .. } => {
                    vec![(x - radius, y - radius), (x + radius, y + radius)]
                }
                other => panic!("{}: {other:?}", look.id),
            };
            assert!(points.into_iter().all(inside), "{}: {mark:?}", look.id);
        }
    }
}

/// What it tells leads to the checks that this link has, and to no others.
#[test]
fn what_would_have_caught_it_leads_there() {
    let answer = answer(&tube());
    for look in broken::looks() {
        let told = broken::told(look.id, Some(&answer)).expect("told");
        for (words, leads) in &told.caught_by {
            assert!(!words.is_empty());
            if let Leads::Check(id) = leads {
                assert!(answer.findings.iter().any(|finding| finding.id == *id));
            }
        }
    }
    let told = broken::told("shank-broken", Some(&answer)).expect("told");
    assert!(
        told.caught_by
            .contains(&("Check: Rod-end shank bending at the jam nut".to_string(), Leads::Check("shank-bending"))),
        "{:?}",
        told.caught_by
    );
    assert!(told.stops && broken::told("no-such-look", Some(&answer)).is_none());
    // A tube has no wrench flats.
    let flats = broken::told("cracked-flats", Some(&answer)).expect("told");
    assert_eq!(flats.caught_by[0].1, Leads::Nowhere);
}

/// What is in somebody's hand is told without a link too; no check is named as if it had been made.
#[test]
fn a_look_is_told_before_any_link_is_entered() {
    for look in broken::looks() {
        let told = broken::told(look.id, None).expect("told");
        assert!(!told.happened.is_empty() && !told.change.is_empty());
        assert!(told.caught_by.iter().all(|(_, leads)| !matches!(leads, broken::Leads::Check(_))), "{}", look.id);
    }
}
