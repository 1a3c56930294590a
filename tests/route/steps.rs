//! The steps of a bar: their order, their numbers by hand, the limits of the machine, and what they warn of.

use super::{made, said, step, warned};
use crate::links::{answer, sized};
use linkwright::document::Hand;
use linkwright::engine::formula::Line;
use linkwright::engine::shop::route::machine::{self, LEAST_RPM, MOST_RPM, MOST_TAP_RPM, Refused, SETTINGS};
use linkwright::engine::shop::route::{Machine, Operation, Route, Step, Value, route};
use linkwright::quantity::inch;

fn figure<'a>(step: &'a Step, name: &str) -> &'a Value {
    &step.figures.iter().find(|figure| figure.name == name).expect("a figure").value
}

fn inches(step: &Step, name: &str) -> f64 {
    match figure(step, name) {
        Value::One(value, _) => value / inch(1.0),
        other => panic!("{name}: {other:?}"),
    }
}

fn rpm(step: &Step) -> [f64; 2] {
    match figure(step, "Spindle speed") {
        Value::Counted(both, "rpm") => *both,
        other => panic!("{other:?}"),
    }
}

/// 3/4-16 in a bar of 7075, worked by hand.
#[test]
fn one_end_by_hand() {
    let (answer, route) = made(&sized(2.0, "wide-12", "wide-12"));
    let tapped = answer.link.ends[0].tapped_depth / inch(1.0);
    assert!((tapped - 1.875).abs() < 1e-9, "{tapped}: 1.687 in of shank and two pitches, up to the next 1/8 in");
    let drill = step(&route, Operation::TapDrill, Some(0));
    // 1.875 in and six pitches of 1/16 in: five of chamfer, one clear.
    for (name, expected) in [
        ("Depth to the shoulder", 2.25),
        ("Depth to the point, 118°", 2.25 + 0.6875 * 0.300_43),
        ("Depth to the point, 135°", 2.25 + 0.6875 * 0.207_11),
    ] {
        assert!((inches(drill, name) - expected).abs() < 1e-5, "{name}: {}", inches(drill, name));
    }
    let says = said(drill);
    assert!(says.contains("11/16 in (0.6875 in, 17.463 mm): 77 % of full thread"), "{says}");
    assert!(says.contains("0.6820 in to 0.6960 in (17.323 mm to 17.678 mm), class 2B."), "{says}");
    // 12 · 200 / (π · 0.6875) and 12 · 300 / (π · 0.6875).
    let [least, most] = rpm(drill);
    assert!((least - 1111.2).abs() < 0.05 && (most - 1666.8).abs() < 0.05, "{least} {most}");
    // 2.45655 in at 1111.2 rpm and .007 in, beside 3 minutes of handling.
    assert!((drill.minutes - 3.3158).abs() < 1e-3, "{}", drill.minutes);
    let tap = step(&route, Operation::Tap, Some(0));
    assert!(said(tap).contains("3/4-16 UNF-2B, RIGHT-HAND, full thread 1-7/8 in deep"), "{}", said(tap));
    // 12 · 40 / (π · 0.75), and no faster than 300 rpm.
    let [least, most] = rpm(tap);
    assert!((least - 203.7).abs() < 0.05 && (most - 300.0).abs() < 1e-9, "{least} {most}");
}

/// A hole that measures what is printed is within its limits, in both units.
#[test]
fn hole_limits_are_rounded_inward() {
    for rod_end in ["wide-12", "wide-14", "wide-16", "mine"] {
        let mut document = sized(2.0, rod_end, rod_end);
        if rod_end == "mine" {
            for end in &mut document.links[0].ends {
                (end.own_thread, end.own_bore) = (Some("M24x2"), Some(inch(0.75)));
                (end.own_eye_to_end, end.own_thread_length) = (Some(inch(4.0)), Some(inch(2.5)));
            }
        }
        let (answer, route) = made(&document);
        let says = said(step(&route, Operation::TapDrill, Some(0)));
        let limits = says.split("must measure ").nth(1).expect("limits").split("), class").next().expect("limits");
        let numbers: Vec<f64> =
            limits.split(|c: char| !c.is_ascii_digit() && c != '.').filter_map(|number| number.parse().ok()).collect();
        let [least, most] = answer.link.ends[0].hole;
        let told = [numbers[0] * 0.0254, numbers[1] * 0.0254, numbers[2] / 1e3, numbers[3] / 1e3];
        for (told, step) in [(&told[..2], 0.0254e-4), (&told[2..], 1e-6)] {
            let within = told[0] > least - 1e-9 && told[1] < most + 1e-9;
            assert!(within && told[0] < least + step && told[1] > most - step, "{rod_end}: {says}");
        }
    }
}

/// Blind holes in aluminum take the short chamfer, those in steel the longer one, and through holes the spiral point; the
/// hole has room for each below its full thread.
#[test]
fn the_chamfer_of_the_tap_suits_the_hole() {
    let mut steel = sized(1.5, "wide-12", "wide-12");
    steel.links[0].material = Some("4340-qt150");
    let cases = [
        (
            sized(2.0, "wide-12", "wide-12"),
            "Chamfer of 2 to 3 threads (form C).",
            [2.0, 3.0],
            Some((2.125, "2-1/8 in")),
        ),
        (steel, "Chamfer of 3.5 to 5 threads (form D).", [3.5, 5.0], Some((2.25, "2-1/4 in"))),
        (
            super::tube::tube("1026-dom"),
            "Chamfer of 3.5 to 5.5 threads (form B): it must pass right through.",
            [3.5, 5.5],
            None,
        ),
    ];
    for (document, says, threads, needs) in cases {
        let (answer, route) = made(&document);
        let tap = step(&route, Operation::Tap, Some(0));
        assert!(said(tap).contains(says), "{}", said(tap));
        let Value::Counted(told, "threads") = figure(tap, "Chamfer of the tap") else { panic!("{tap:?}") };
        assert!(told.iter().zip(threads).all(|(told, asked)| (told - asked).abs() < 1e-12), "{told:?}");
        assert_eq!(said(tap).contains("to the shoulder"), needs.is_some());
        let Some((needs, words)) = needs else { continue };
        let end = &answer.link.ends[0];
        let hole = (end.tapped_depth + (threads[1] + 1.0) * end.thread.pitch) / inch(1.0);
        assert!((hole - needs).abs() < 1e-9 && end.drill_depth / inch(1.0) > hole - 1e-9, "{hole}");
        assert!((end.drill_depth / inch(1.0) - 2.25).abs() < 1e-9, "one hole for either tap: {}", end.drill_depth);
        let told = format!("This chamfer needs {words} to the shoulder; the hole is drilled 2-1/4 in.");
        assert!(said(tap).contains(&told) && !warned(tap).contains("no room"), "{} {told}", said(tap));
    }
}

#[test]
fn steps_come_in_their_order_and_add_up() {
    let (_, route) = made(&sized(2.0, "wide-12", "wide-12"));
    let order: Vec<(Operation, Option<usize>)> = route.steps.iter().map(|step| (step.operation, step.end)).collect();
    use Operation::*;
    let end = |end| [CenterDrill, TapDrill, Countersink, Tap, Gauge].map(|operation| (operation, Some(end)));
    let mut expected = vec![(Stock, None), (Saw, None), (Face, None)];
    expected.extend(end(0).into_iter().chain(end(1)));
    expected.extend([Flats, Clean, Mark, Trial, Measure, Pack].map(|operation| (operation, None)));
    assert_eq!(order, expected);
    let sum: f64 = route.steps.iter().map(|step| step.minutes).sum();
    assert!((route.minutes - sum).abs() < 1e-9 && route.minutes > 40.0, "{} {sum}", route.minutes);
}

#[test]
fn machines_set_the_limits() {
    let document = sized(2.0, "wide-12", "wide-12");
    let answer = answer(&document);
    let with = |machine: &Machine| route(&document, 0, &answer, machine);
    let mut slow = Machine::default();
    assert_eq!([slow.set(&MOST_RPM, Some(500.0)), slow.set(&MOST_TAP_RPM, Some(100.0))], [Ok(()); 2]);
    let (usual, slowed) = (with(&Machine::default()), with(&slow));
    let drilling = |route: &Route| step(route, Operation::TapDrill, Some(0)).clone();
    let all = |speeds: [f64; 2], most: f64| speeds.iter().all(|speed| (speed - most).abs() < 1e-9);
    assert!(all(rpm(&drilling(&slowed)), 500.0));
    assert!(all(rpm(step(&slowed, Operation::Tap, Some(0))), 100.0));
    assert!(slowed.minutes > usual.minutes && warned(&drilling(&usual)).is_empty());
    let mut fast = Machine::default();
    for (setting, rpm) in [(&MOST_RPM, 3000.0), (&MOST_TAP_RPM, 3000.0), (&LEAST_RPM, 2000.0)] {
        assert_eq!(fast.set(setting, Some(rpm)), Ok(()));
    }
    assert!(warned(&drilling(&with(&fast))).contains("slowest speed of the machine, 2,000 rpm"));
    // What is out of range changes nothing; what is taken back is the default again.
    for setting in SETTINGS {
        let mut machine = Machine::default();
        for bad in [setting.range[0] - 1.0, setting.range[1] * 2.0, f64::NAN, f64::INFINITY] {
            assert_eq!(machine.set(setting, Some(bad)), Err(Refused::OutOfRange), "{} takes {bad}", setting.id);
        }
        assert_eq!(machine, Machine::default());
        // The slowest speed at its most is above what the others are by default.
        let at = if *setting == &LEAST_RPM { 200.0 } else { setting.range[1] };
        assert_eq!(machine.set(setting, Some(at)), Ok(()));
        assert!(all([machine.in_force(setting); 2], at));
        assert_eq!(machine.set(setting, None), Ok(()));
        assert!(all([machine.in_force(setting); 2], setting.default));
        assert!((setting.range[0]..=setting.range[1]).contains(&setting.default), "{}", setting.id);
        assert_eq!(machine::setting(setting.id), Some(*setting));
    }
}

#[test]
fn the_left_hand_end_is_marked() {
    use Hand::{Left, Right};
    let cases = [
        (Right, Left, "at end B", false),
        (Left, Right, "at end A", false),
        (Left, Left, "at both ends", true),
        (Right, Right, "No LH mark", true),
    ];
    for (a, b, says, warns) in cases {
        let mut document = sized(2.0, "wide-12", "wide-12");
        (document.links[0].ends[0].hand, document.links[0].ends[1].hand) = (Some(a), Some(b));
        let (_, route) = made(&document);
        let mark = step(&route, Operation::Mark, None);
        assert!(said(mark).contains(says), "{a:?} {b:?}: {}", said(mark));
        assert_eq!(!mark.warnings.is_empty(), warns, "{a:?} {b:?}");
        for (end, hand) in [(0, a), (1, b)] {
            let tap = step(&route, Operation::Tap, Some(end));
            assert_eq!(said(tap).contains("LEFT-HAND"), hand == Left);
            assert_eq!(warned(tap).contains("LEFT-HAND"), hand == Left);
        }
    }
}

#[test]
fn flats_over_the_thread_are_told() {
    let flats = |start: Option<f64>| {
        let mut document = sized(2.0, "wide-12", "wide-12");
        document.links[0].flats_start = start.map(inch);
        let (_, route) = made(&document);
        warned(step(&route, Operation::Flats, None))
    };
    assert_eq!(flats(None), "");
    assert!(flats(Some(0.25)).contains("over the tapped thread"));
    assert!(flats(Some(2.0)).contains("over the drilled hole"));
    assert!(flats(Some(33.0)).contains("over the tapped thread"), "at end B too");
}

/// A bar so short that its holes run into each other, one with less than a diameter between them, and one with more: the
/// drilling step says what the answer says.
#[test]
fn holes_that_meet_are_told_as_the_answer_tells_them() {
    let cases = [
        (8.0, Some("the two holes run into each other")),
        (9.0, Some("is left between the drill points")),
        (10.0, None),
    ];
    for (length, says) in cases {
        let mut document = sized(2.0, "wide-12", "wide-12");
        document.links[0].length = Some(inch(length));
        let (answer, route) = made(&document);
        let [a, b] = &answer.link.ends;
        let web = (answer.link.bar - a.drill_point - b.drill_point) / a.thread.major;
        assert_eq!(web < 1.0, says.is_some(), "{length}: {web}");
        for end in [Some(0), Some(1)] {
            let warns = warned(step(&route, Operation::TapDrill, end));
            assert_eq!(warns.is_empty(), says.is_none(), "{length}: {warns}");
            assert!(warns.contains(says.unwrap_or_default()), "{length}: {warns}");
        }
    }
}

/// 37/64 in is what tables list for 5/8-18, and is itself a hair over the limit of 2B.
#[test]
fn a_listed_drill_outside_the_limits_is_told() {
    let (answer, route) = made(&sized(2.0, "wide-10", "wide-10"));
    let warns = warned(step(&route, Operation::TapDrill, Some(0)));
    let [_, most] = answer.link.ends[0].hole;
    assert!(most < inch(37.0 / 64.0) && warns.contains("outside the limits of the hole"), "{most} {warns}");
    assert!(
        warns.contains("To be inside them use 14.5 mm") || warns.contains("To be inside them use 14.6 mm"),
        "{warns}"
    );
    assert_eq!(warned(step(&made(&sized(2.0, "wide-12", "wide-12")).1, Operation::TapDrill, Some(0))), "");
}

#[test]
fn what_fails_is_not_cut() {
    let fails = sized(1.0, "wide-10", "wide-10");
    let (answer, route) = made(&fails);
    assert_eq!(answer.verdict, linkwright::report::Verdict::Fails);
    let before = |route: &Route| route.before.len();
    assert_eq!(before(&route), 2, "it fails, and its lengths are provisional: {:?}", route.before);
    assert_eq!(before(&made(&crate::links::hard()).1), 1, "only provisional");
}

#[test]
fn numbers_come_with_their_working() {
    let (_, route) = made(&sized(2.0, "wide-12", "wide-12"));
    for operation in [Operation::TapDrill, Operation::Tap, Operation::Countersink] {
        let step = step(&route, operation, Some(0));
        assert!(step.working.iter().any(|line| matches!(line, Line::Worked { .. })), "{operation:?}");
    }
    assert!(route.working.len() > 10 && route.steps.iter().all(|step| !step.sources.is_empty()));
}
