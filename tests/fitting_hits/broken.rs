//! The table of failed parts.

use linkwright::engine::fitting::failures::{Catch, FAILURES, check_title, find};

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
    assert!(!find("wrong-part").expect("listed").stops);
}
