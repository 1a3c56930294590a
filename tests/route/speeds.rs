//! Speeds of saw, facing, center drill and countersink, worked by hand and said on the sheet.

use super::{made, said, step, warned};
use crate::links::{answer, sized};
use linkwright::engine::shop::route::machine::{LEAST_RPM, MOST_RPM, MOST_TAP_RPM};
use linkwright::engine::shop::route::{Machine, Operation, Step, Value, route};
use linkwright::quantity::inch;

fn counted(step: &Step, name: &str) -> [f64; 2] {
    match step.figures.iter().find(|figure| figure.name == name).map(|figure| &figure.value) {
        Some(Value::Counted(both, _)) => *both,
        other => panic!("{name}: {other:?}"),
    }
}

/// A bar of 2 in with 3/4-16, and one of 1-1/2 in of hardened steel: 12 times the speed in feet a minute over π times the
/// diameter in inches, no faster than 1,800 rpm.
#[test]
fn speeds_by_hand() {
    let mut steel = sized(1.5, "wide-12", "wide-12");
    steel.links[0].material = Some("4340-qt150");
    let cases = [
        // Facing 300 ft/min at 2 in; 5/8 in of center drill at 200 and 300; 49/64 in at a quarter of them.
        (sized(2.0, "wide-12", "wide-12"), [572.96, 572.96], [1222.31, 1800.0], [249.45, 374.17], [500.0, 500.0]),
        // Facing 50 to 90 at 1-1/2 in; 20 and 30 ft/min.
        (steel, [127.32, 229.18], [122.23, 183.35], [24.945, 37.417], [110.0, 165.0]),
    ];
    for (document, face, center, countersink, blade) in cases {
        let (_, route) = made(&document);
        let rpm = |operation, end| counted(step(&route, operation, end), "Spindle speed");
        for (found, expected, of) in [
            (rpm(Operation::Face, None), face, "face"),
            (rpm(Operation::CenterDrill, Some(0)), center, "center drill"),
            (rpm(Operation::Countersink, Some(1)), countersink, "countersink"),
            (counted(step(&route, Operation::Saw, None), "Blade speed"), blade, "saw"),
        ] {
            let close = found.iter().zip(expected).all(|(found, expected)| (found / expected - 1.0).abs() < 1e-4);
            assert!(close, "{of}: {found:?}, by hand {expected:?}");
        }
    }
}

#[test]
fn the_sheet_says_them() {
    let (_, route) = made(&sized(2.0, "wide-12", "wide-12"));
    for (operation, end, says) in [
        (Operation::Saw, None, "Bimetal blade with fluid: up to 500 ft/min (152 m/min); dry, 30 % to 50 % slower."),
        (Operation::Face, None, "Turn at 572 rpm; 0.008 in a turn."),
        (
            Operation::CenterDrill,
            Some(0),
            "Center drill end A, no wider than the tap drill: number 7 at most, 5/8 in across. Begin at 1,222 rpm, at most 1,800 rpm; feed by hand.",
        ),
        (
            Operation::Countersink,
            Some(1),
            "Begin at 249 rpm, at most 374 rpm; 0.007 in a turn; slower still if it chatters.",
        ),
    ] {
        let step = step(&route, operation, end);
        assert!(said(step).contains(says), "{}", said(step));
        assert!(!step.working.is_empty() && step.sources.len() > 1, "{operation:?}");
    }
}

/// A tube's own steel is sawn and faced, not its insert's: one that is hardened more slowly than one that is not.
#[test]
fn a_hardened_tube_is_sawn_slower() {
    let blade = |material| {
        let mut tube = super::tube::tube(material);
        tube.links[0].wall = Some(inch(0.12));
        counted(step(&made(&tube).1, Operation::Saw, None), "Blade speed")
    };
    let (plain, hardened) = (blade("4130-n"), blade("4130-qt125"));
    assert!((plain[0] - 270.0).abs() < 1e-9 && (plain[1] - 300.0).abs() < 1e-9, "{plain:?}");
    assert!(hardened[1] < plain[0], "{hardened:?} {plain:?}");
}

/// A machine that cannot turn as slowly says so at each of these steps; the tap is never faster than the machine itself.
#[test]
fn limits_of_the_machine_hold_here_too() {
    let document = sized(2.0, "wide-12", "wide-12");
    let answer = answer(&document);
    let mut fast = Machine::default();
    for (setting, rpm) in [(&MOST_RPM, 4000.0), (&MOST_TAP_RPM, 4000.0), (&LEAST_RPM, 2000.0)] {
        assert_eq!(fast.set(setting, Some(rpm)), Ok(()));
    }
    let made = route(&document, 0, &answer, &fast);
    for (operation, end) in
        [(Operation::Face, None), (Operation::CenterDrill, Some(0)), (Operation::Countersink, Some(0))]
    {
        let warns = warned(step(&made, operation, end));
        assert!(warns.contains("slowest speed of the machine, 2,000 rpm"), "{operation:?}: {warns}");
    }
    let mut slow = Machine::default();
    assert_eq!(slow.set(&MOST_RPM, Some(80.0)), Ok(()));
    let slow = route(&document, 0, &answer, &slow);
    for (operation, end) in [(Operation::Face, None), (Operation::Tap, Some(0)), (Operation::CenterDrill, Some(1))] {
        let [_, most] = counted(step(&slow, operation, end), "Spindle speed");
        assert!(most <= 80.0 + 1e-9, "{operation:?}: {most}");
    }
}
