//! Welded ends: the insert is turned and drilled, welded in, and tapped once it is cool.

use super::{made, said, step, warned};
use crate::links::hard;
use linkwright::document::{Document, Role};
use linkwright::engine::shop::route::{Operation, Route};
use linkwright::quantity::inch;

pub(super) fn tube(material: &'static str) -> Document {
    let mut document = hard();
    let link = &mut document.links[0];
    link.material = Some(material);
    (link.outside_diameter, link.wall) = (Some(inch(2.0)), Some(inch(0.25)));
    link.ends.iter_mut().for_each(|end| end.rod_end = Some("wide-12"));
    document
}

fn at(route: &Route, operation: Operation, end: Option<usize>) -> usize {
    route.steps.iter().position(|step| (step.operation, step.end) == (operation, end)).expect("a step")
}

#[test]
fn threads_are_tapped_after_both_welds_are_cool() {
    let (_, route) = made(&tube("1026-dom"));
    let cool = at(&route, Operation::Cool, None);
    for end in [Some(0), Some(1)] {
        let order = [Operation::Insert, Operation::TapDrill, Operation::Fit, Operation::Weld];
        let before: Vec<usize> = order.iter().map(|operation| at(&route, *operation, end)).collect();
        assert!(before.windows(2).all(|pair| pair[0] < pair[1]) && before[3] < cool, "{before:?} {cool}");
        assert!(
            cool < at(&route, Operation::Tap, end)
                && at(&route, Operation::Tap, end) < at(&route, Operation::Gauge, end)
        );
    }
    for operation in [Operation::Skim, Operation::Flats] {
        assert!(route.steps.iter().all(|step| step.operation != operation), "{operation:?} on a tube");
    }
    let tap = said(step(&route, Operation::Tap, Some(1)));
    assert!(tap.contains("after welding") && tap.contains("LEFT-HAND") && tap.contains("right through"), "{tap}");
    assert_eq!(route.finished_weight, None);
}

#[test]
fn the_insert_slips_into_the_bore() {
    let (answer, route) = made(&tube("1026-dom"));
    let insert = step(&route, Operation::Insert, Some(0));
    assert_eq!(answer.link.ends[0].insert.map(|insert| insert.outside_diameter), Some(answer.link.bore));
    let says = said(insert);
    // 2 in less twice 1/4 in is a bore of 1-1/2 in, less .004 in.
    assert!(says.contains("1.496 in across in a bore of 1-1/2 in"), "{says}");
    assert!(says.contains("45 ksi in shear"), "{says}");
}

#[test]
fn the_weld_tells_what_it_does_to_the_strength() {
    let says = said(step(&made(&tube("1026-dom")).1, Operation::Weld, Some(0)));
    assert!(says.contains("yields at 70 ksi; beside the weld the answer counts 40 ksi"), "{says}");
    assert!(says.contains("none is held here"), "no preheat or filler is made up: {says}");
    let mut hardened = tube("4130-qt125");
    hardened.links[0].wall = Some(inch(0.12));
    let before = said(step(&made(&hardened).1, Operation::Weld, Some(0)));
    assert!(before.contains("not hardened again"), "{before}");
    hardened.links[0].hardened_after_welding = true;
    let after = said(step(&made(&hardened).1, Operation::Weld, Some(0)));
    assert!(after.contains("hardened again after welding"), "{after}");
}

#[test]
fn who_welds_is_warned() {
    let (_, route) = made(&tube("1026-dom"));
    let warns = warned(step(&route, Operation::Weld, Some(0)));
    assert!(warns.contains("7075") && warns.contains("2024") && !warns.contains("steering"), "{warns}");
    let mut tie_rod = tube("1026-dom");
    tie_rod.links[0].role = Role::TieRod;
    let warns = warned(step(&made(&tie_rod).1, Operation::Weld, Some(0)));
    assert!(warns.contains("steering link is safety critical"), "{warns}");
}
