//! Drive on, limp home, or stop.

use super::{link, tube};
use crate::dice::Dice;
use crate::links::answer;
use linkwright::document::{Document, Role};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::hit::{AfterHit, Gouge, HitReadings, Look, after_hit, bowed_bar};
use linkwright::engine::sentence::spoken;
use linkwright::quantity::{System, inch};

/// What somebody reads otherwise.
type Change = fn(&mut HitReadings);

/// Everything was looked at, and nothing found.
fn clean() -> HitReadings {
    HitReadings {
        bow: Some(0.0),
        bow_span: None,
        bend_seen: Some(false),
        kink: Some(false),
        crack: Some(false),
        gouge: Some(Gouge::None),
        dent: Some(0.0),
        shank_bent: Some(false),
        head: Some(false),
        eye_turned: Some(false),
        nut_loose: Some(false),
        mount_damaged: Some(false),
        play: Some(false),
        unreadable: false,
    }
}

fn judged(document: &Document, readings: &HitReadings) -> AfterHit {
    after_hit(&answer(document), bowed_bar(document, 0).as_ref(), readings)
}

fn words(after: &AfterHit) -> String {
    let said = after.found.iter().map(|found| &found.says).chain([&after.next]).chain(&after.limits);
    said.map(|said| spoken(said, System::Inch)).collect::<Vec<_>>().join(" ")
}

fn tie_rod() -> Document {
    link(Role::TieRod, "1026-dom", [4000.0, 48.0, 1.75, 0.25])
}

fn drag_link() -> Document {
    link(Role::DragLink, "1026-dom", [4000.0, 36.0, 1.75, 0.25])
}

fn track_bar() -> Document {
    link(Role::TrackBar, "1026-dom", [4000.0, 34.0, 1.75, 0.25])
}

fn solid() -> Document {
    link(Role::Lower, "7075-t6", [4000.0, 36.0, 2.0, 0.0])
}

#[test]
fn a_clean_link_drives_on_and_one_that_was_not_looked_at_is_not_judged() {
    for document in [tube(), solid(), tie_rod(), drag_link(), track_bar()] {
        let after = judged(&document, &clean());
        assert_eq!((after.standing, after.missing.len()), (Standing::Good, 0), "{}", words(&after));
        let after = judged(&document, &HitReadings::default());
        assert_eq!((after.standing, after.missing.as_slice()), (Standing::NotJudged, &Look::ALL[..]));
        assert!(words(&after).contains("Do not drive it before everything is looked at"));
    }
}

/// Each look left out alone leaves the link without a verdict, and is named.
#[test]
fn what_is_missing_is_named() {
    let without: [(Look, Change); 11] = [
        (Look::Bend, |readings| (readings.bow, readings.bend_seen) = (None, None)),
        (Look::Kink, |readings| readings.kink = None),
        (Look::Crack, |readings| readings.crack = None),
        (Look::Gouge, |readings| readings.gouge = None),
        (Look::Dent, |readings| readings.dent = None),
        (Look::Shank, |readings| readings.shank_bent = None),
        (Look::Head, |readings| readings.head = None),
        (Look::Eye, |readings| readings.eye_turned = None),
        (Look::Nut, |readings| readings.nut_loose = None),
        (Look::Mount, |readings| readings.mount_damaged = None),
        (Look::Play, |readings| readings.play = None),
    ];
    for (look, leave_out) in without {
        for bow in [0.0, 0.1] {
            let mut readings = HitReadings { bow: Some(inch(bow)), ..clean() };
            leave_out(&mut readings);
            let after = judged(&tube(), &readings);
            assert_eq!((after.standing, after.missing), (Standing::NotJudged, vec![look]), "{bow}");
            assert!(after.limits.is_empty());
        }
    }
    // A bend that was seen and not measured is no verdict either, nor a string that no such link has.
    let seen = HitReadings { bow: None, bend_seen: Some(true), ..clean() };
    assert_eq!(judged(&tube(), &seen).standing, Standing::NotJudged);
    for string in [5.0, 60.0, -1.0, f64::NAN] {
        let readings = HitReadings { bow: Some(inch(0.1)), bow_span: Some(inch(string)), ..clean() };
        assert_eq!(judged(&tube(), &readings).standing, Standing::NotJudged, "{string}");
    }
    for bow in [f64::NAN, -0.1, f64::INFINITY] {
        let readings = HitReadings { bow: Some(bow), bend_seen: None, ..clean() };
        assert_eq!(judged(&tube(), &readings).standing, Standing::NotJudged, "{bow}");
    }
}

/// What must not be driven, and the words that say so.
#[test]
fn dangerous_situations_stop() {
    let bent = HitReadings { bow: Some(inch(0.0625)), ..clean() };
    let rolled = HitReadings { bow: None, bend_seen: Some(true), ..clean() };
    let cases: [(&str, Document, HitReadings, &str); 22] = [
        ("bent tie rod", tie_rod(), bent, "not even home"),
        ("tie rod that rolls uneven", tie_rod(), rolled, "however small the bend"),
        ("bent drag link", drag_link(), bent, "tow it with the steered wheels off the ground"),
        ("bent track bar", track_bar(), bent, "nothing else holds the axle sideways"),
        ("7075 with a set", solid(), bent, "any bend that stays may have started a crack"),
        ("7075 that rolls uneven", solid(), rolled, "replace it"),
        ("6061 with a set", link(Role::Upper, "6061-t6", [2000.0, 30.0, 2.0, 0.0]), bent, "6061"),
        ("7075 with a sharp gouge", solid(), HitReadings { gouge: Some(Gouge::Sharp), ..clean() }, "A sharp gouge"),
        ("tie rod with a sharp gouge", tie_rod(), HitReadings { gouge: Some(Gouge::Sharp), ..clean() }, "backs up"),
        ("loose jam nut", tube(), HitReadings { nut_loose: Some(true), ..clean() }, "tighten the nut before it moves"),
        ("turned eye", tube(), HitReadings { eye_turned: Some(true), ..clean() }, "then answer this again"),
        ("torn bracket", tube(), HitReadings { mount_damaged: Some(true), ..clean() }, "no longer holds the link"),
        ("crack", tube(), HitReadings { crack: Some(true), ..clean() }, "A crack"),
        ("kink", tube(), HitReadings { kink: Some(true), ..clean() }, "A kink"),
        ("bent shank", tube(), HitReadings { shank_bent: Some(true), ..clean() }, "breaks at the jam nut"),
        ("stretched head", tube(), HitReadings { head: Some(true), ..clean() }, "scrap"),
        ("tube over 1 %", tube(), HitReadings { bow: Some(inch(0.36)), ..clean() }, "Builders scrap a tube over 1 %"),
        ("deep dent", tube(), HitReadings { dent: Some(inch(0.11)), ..clean() }, "folds there"),
        ("dent in 7075", solid(), HitReadings { dent: Some(inch(0.05)), ..clean() }, "a metal that cracks"),
        ("tie rod with play", tie_rod(), HitReadings { play: Some(true), ..clean() }, "that is no limit for a rod end"),
        ("tie rod with a turned eye", tie_rod(), HitReadings { eye_turned: Some(true), ..clean() }, "before it moves"),
        ("track bar with play", track_bar(), HitReadings { play: Some(true), ..clean() }, "before it moves"),
    ];
    for (name, document, readings, says) in cases {
        let after = judged(&document, &readings);
        assert_eq!(after.standing, Standing::Stop, "{name}: {}", words(&after));
        assert!(words(&after).contains(says), "{name}: {}", words(&after));
        assert!(words(&after).contains("Do not drive"), "{name}: {}", words(&after));
        assert!(after.limits.is_empty() && !words(&after).contains("Limp"), "{name}");
        assert_eq!(after.found[0].standing, Standing::Stop, "{name}: the worst stands first");
    }
}

/// What a wrench puts right asks for no spare; together with damage it does not take its place.
#[test]
fn a_loose_nut_is_tightened_and_a_bent_link_is_not() {
    let loose = judged(&tube(), &HitReadings { nut_loose: Some(true), eye_turned: Some(true), ..clean() });
    assert!(words(&loose).contains("tighten both jam nuts") && !words(&loose).contains("spare"), "{}", words(&loose));
    let cracked = judged(&tube(), &HitReadings { nut_loose: Some(true), crack: Some(true), ..clean() });
    assert!(words(&cracked).contains("Fit a spare") && !words(&cracked).contains("answer this again"));
}

/// What stands in a field and cannot be read is never taken for nothing.
#[test]
fn an_unreadable_entry_is_not_judged() {
    for document in [tube(), solid(), tie_rod(), track_bar()] {
        assert_eq!(judged(&document, &clean()).standing, Standing::Good);
        let after = judged(&document, &HitReadings { unreadable: true, ..clean() });
        assert_eq!(after.standing, Standing::NotJudged, "{}", words(&after));
        assert!(words(&after).contains("cannot be read: type it again"), "{}", words(&after));
    }
}

/// What limps home, with its limits said in numbers.
#[test]
fn a_small_bow_in_a_steel_tube_limps_home() {
    let after = judged(&tube(), &HitReadings { bow: Some(inch(0.1)), ..clean() });
    assert_eq!(after.standing, Standing::Watch, "{}", words(&after));
    for says in
        ["Walking pace", "No drops", "bends it further; straight, it stood", "1/16 in more bow", "at least every mile"]
    {
        assert!(words(&after).contains(says), "{says}: {}", words(&after));
    }
    let left = after.left.expect("numbers");
    assert!(left.left < 1.0 && left.left > 0.5 && left.column < 1.0);
    assert!(!after.working.is_empty());
    for (readings, says) in [
        (HitReadings { play: Some(true), ..clean() }, "before the next drive"),
        (HitReadings { gouge: Some(Gouge::Sharp), ..clean() }, "File its edges"),
        (HitReadings { dent: Some(inch(0.05)), ..clean() }, "taken for small"),
    ] {
        let after = judged(&tube(), &readings);
        assert_eq!(after.standing, Standing::Watch, "{}", words(&after));
        assert!(words(&after).contains(says), "{}", words(&after));
    }
}

/// A tape does not tell a 32nd of an inch, so that much is no bend that shows, unless it was seen by turning the bar.
#[test]
fn what_a_tape_cannot_tell_is_no_bend() {
    for document in [tube(), solid()] {
        let least = HitReadings { bow: Some(inch(1.0 / 32.0)), ..clean() };
        assert_eq!(judged(&document, &least).standing, Standing::Good);
        let over = HitReadings { bow: Some(inch(1.0 / 32.0 + 0.001)), ..clean() };
        assert!(judged(&document, &over).standing >= Standing::Watch);
        let seen = HitReadings { bow: Some(inch(0.01)), bend_seen: Some(true), ..clean() };
        assert!(judged(&document, &seen).standing >= Standing::Watch);
    }
}

/// A gap is never passed where nothing else steers or holds the axle, and never called nothing elsewhere.
#[test]
fn a_measured_gap_is_never_nothing() {
    for gap in [0.001, 0.01, 1.0 / 32.0] {
        let readings = HitReadings { bow: Some(inch(gap)), ..clean() };
        for document in [tie_rod(), drag_link(), track_bar()] {
            let after = judged(&document, &readings);
            assert_eq!(after.standing, Standing::NotJudged, "{gap}: {}", words(&after));
            assert!(words(&after).contains("of gap: check it against a straightedge; if it is there, scrap it"));
            let over = HitReadings { bow: Some(inch(1.0 / 32.0 + gap)), ..clean() };
            assert_eq!(judged(&document, &over).standing, Standing::Stop);
        }
        let after = judged(&tube(), &readings);
        assert_eq!(after.standing, Standing::Good);
        assert!(words(&after).contains("of gap is within what a string can tell"), "{}", words(&after));
        assert!(!words(&after).contains("Nothing is bent"), "{}", words(&after));
    }
}

/// A link that its owner bent on purpose has no straight line for a string; the eye must judge.
#[test]
fn a_bar_bent_by_design_is_not_judged_by_a_string() {
    let mut document = track_bar();
    document.links[0].bend_offset = Some(inch(1.0));
    let by_string = HitReadings { bow: Some(0.0), bend_seen: None, ..clean() };
    let after = judged(&document, &by_string);
    assert_eq!((after.standing, after.missing), (Standing::NotJudged, vec![Look::Bend]));
    assert_eq!(judged(&document, &HitReadings { bend_seen: Some(true), ..clean() }).standing, Standing::Stop);
}

/// The force that a link is sized for still counts: one that fails undamaged is never told to drive on.
#[test]
fn a_link_that_fails_by_its_numbers_is_not_driven_on() {
    let heavy = link(Role::Lower, "1026-dom", [9000.0, 36.0, 1.5, 0.12]);
    assert!(judged(&heavy, &clean()).standing >= Standing::Watch);
    assert_eq!(judged(&heavy, &HitReadings { bow: Some(inch(0.1)), ..clean() }).standing, Standing::Stop);
    let thin = link(Role::TieRod, "7075-t6", [6000.0, 60.0, 0.75, 0.0]);
    assert_eq!(judged(&thin, &clean()).standing, Standing::Stop);
}

fn random(dice: &mut Dice) -> HitReadings {
    let maybe = |dice: &mut Dice| [None, Some(false), Some(false), Some(false), Some(true)][dice.next(5)];
    HitReadings {
        bow: [None, Some(0.0), Some(inch(dice.next(60) as f64 / 100.0))][dice.next(3)],
        bow_span: [None, None, Some(inch(20.0 + dice.next(16) as f64))][dice.next(3)],
        bend_seen: maybe(dice),
        kink: maybe(dice),
        crack: maybe(dice),
        gouge: [None, Some(Gouge::None), Some(Gouge::Blunt), Some(Gouge::Sharp)][dice.next(4)],
        dent: [None, Some(0.0), Some(inch(dice.next(20) as f64 / 100.0))][dice.next(3)],
        shank_bent: maybe(dice),
        head: maybe(dice),
        eye_turned: maybe(dice),
        nut_loose: maybe(dice),
        mount_damaged: maybe(dice),
        play: maybe(dice),
        unreadable: false,
    }
}

/// One bad look more is never milder, a deeper bow is never milder, and steering with any bend is never good.
#[test]
fn nothing_bad_ever_makes_it_milder() {
    let worse: [Change; 11] = [
        |readings| readings.bend_seen = Some(true),
        |readings| readings.kink = Some(true),
        |readings| readings.crack = Some(true),
        |readings| readings.gouge = Some(Gouge::Sharp),
        |readings| readings.shank_bent = Some(true),
        |readings| readings.head = Some(true),
        |readings| readings.eye_turned = Some(true),
        |readings| readings.nut_loose = Some(true),
        |readings| readings.mount_damaged = Some(true),
        |readings| readings.play = Some(true),
        |readings| readings.dent = readings.dent.map(|dent| dent + inch(0.05)),
    ];
    let mut dice = Dice(5);
    for document in [tube(), solid(), tie_rod(), drag_link(), track_bar()] {
        let (answer, bar) = (answer(&document), bowed_bar(&document, 0));
        let stands = |readings: &HitReadings| after_hit(&answer, bar.as_ref(), readings).standing;
        for _ in 0..250 {
            let readings = if dice.next(3) == 0 { clean() } else { random(&mut dice) };
            let before = stands(&readings);
            for bad in worse {
                let mut then = readings;
                bad(&mut then);
                // Of a look that was missing it may only become known that it is bad.
                assert!(stands(&then) >= before, "{readings:?} to {then:?}");
                assert_ne!(stands(&then), Standing::Good, "{then:?}");
            }
            let bows = [0.0, 0.02, 0.04, 0.1, 0.2, 0.3, 0.35, 0.5, 2.0];
            let bows = bows.map(|bow| stands(&HitReadings { bow: Some(inch(bow)), ..readings }));
            assert!(bows.is_sorted(), "{readings:?}: {bows:?}");
            if answer.role != Role::Lower {
                assert!(bows[1..].iter().all(|standing| *standing >= Standing::NotJudged));
                assert!(bows[2..].iter().all(|standing| *standing == Standing::Stop));
                let seen = HitReadings { bend_seen: Some(true), ..readings };
                assert_eq!(stands(&seen), Standing::Stop);
            }
        }
    }
}
