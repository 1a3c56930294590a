//! Welded ends: the insert is turned and drilled, welded in, and tapped once it is cool.

use super::{made, said, step, warned};
use crate::links::hard;
use linkwright::document::{Document, Role};
use linkwright::engine::sentence::spoken;
use linkwright::engine::shop::code::code_of_link;
use linkwright::engine::shop::route::{Operation, Route};
use linkwright::engine::{parts, report};
use linkwright::inputs::{At, TUBE_END};
use linkwright::quantity::{Kind, System, inch, show};
use linkwright::report::{LinkReport, Part};

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

/// The same tube with a shouldered bung at end B, and at both.
fn bungs(ends: &[usize], flange: Option<f64>) -> Document {
    let mut document = tube("1026-dom");
    let link = &mut document.links[0];
    link.bung_flange = flange.map(inch);
    ends.iter().for_each(|end| link.ends[*end].insert = Some("shouldered"));
    document
}

/// The flange stands out of the tube: the bar stays as long as it is, and the tube is sawn and faced shorter by it.
#[test]
fn a_flange_makes_the_tube_shorter() {
    let (plain, _) = made(&tube("1026-dom"));
    for (ends, flange, shorter) in
        [(&[1][..], Some(0.375), 0.375), (&[0, 1][..], Some(0.375), 0.75), (&[0, 1][..], None, 0.5)]
    {
        let (answer, route) = made(&bungs(ends, flange));
        let (now, before) = (&answer.link, &plain.link);
        assert!((now.bar - before.bar).abs() < 1e-12, "the link is as long as it was asked to be");
        assert!((before.cut - now.cut - inch(shorter)).abs() < 1e-9, "{ends:?} {flange:?}");
        let face = said(step(&route, Operation::Face, None));
        let faced = before.bar - inch(shorter);
        let words = show(faced, Kind::Length, System::Inch);
        assert!(face.contains(&format!("square to {words}")), "{face} {words}");
        // Whoever measured the flange is not told to; who did not is told before the saw, and in the list of assumptions.
        let told = route.before.iter().map(|says| spoken(says, System::Inch));
        assert_eq!(
            told.filter(|says| says.contains("flange of the bungs is assumed to be 1/4 in")).count(),
            usize::from(flange.is_none())
        );
        let assumed = answer.assumed.iter().find(|one| one.input == "bung-flange");
        assert!(assumed.is_some_and(|one| one.changed == flange.is_some()), "{:?}", answer.assumed);
    }
    assert!(plain.assumed.iter().all(|one| one.input != "bung-flange"), "a plain insert has no flange to assume");
}

#[test]
fn that_lengths_are_provisional_is_said_last() {
    let (_, route) = made(&bungs(&[1], None));
    let told: Vec<String> = route.before.iter().map(|says| spoken(says, System::Inch)).collect();
    assert!(told.len() > 1 && told.last().is_some_and(|says| says.starts_with("Lengths are provisional")), "{told:?}");
}

#[test]
fn each_end_has_its_own_steps() {
    let (answer, route) = made(&bungs(&[1], Some(0.25)));
    let [a, b] = [0, 1].map(|end| answer.link.ends[end].insert.expect("a tube's end"));
    assert_eq!([a.kind.id, b.kind.id], ["plain", "shouldered"]);
    assert!(a.shoulder.abs() < 1e-12 && (b.inside() - (b.length - inch(0.25))).abs() < 1e-12);
    let of = |operation, end| said(step(&route, operation, Some(end)));
    assert_eq!([0, 1].map(|end| step(&route, Operation::Insert, Some(end)).title), ["Plain insert", "Shouldered bung"]);
    let turned = of(Operation::Insert, 1);
    // 1-7/8 in of thread less the flange.
    assert!(turned.contains("1-5/8 in long; its flange as wide as the tube, 2 in across and 1/4 in thick"), "{turned}");
    assert!(of(Operation::Fit, 0).contains("flush with the tube's end"), "{}", of(Operation::Fit, 0));
    assert!(of(Operation::Fit, 1).contains("until its flange sits on the tube's face"), "{}", of(Operation::Fit, 1));
    assert!(of(Operation::Weld, 0).contains("around the rim at end A"));
    assert!(of(Operation::Weld, 1).contains("the flange to the tube all around at end B"));
    let measured = &step(&route, Operation::Insert, Some(1)).boxes;
    assert!(measured.iter().any(|one| one.name == "Flange, thickness"), "{measured:?}");
    assert!(!said(step(&route, Operation::Fit, Some(0))).contains("rosette"));
}

/// A quarter of 2 in, over the middle of what is in the tube: half of 1-7/8 in, and of that less the flange.
#[test]
fn rosettes_are_an_option() {
    let mut document = bungs(&[1], Some(0.25));
    document.links[0].rosette_welds = true;
    let (answer, route) = made(&document);
    for (end, place) in [(0, "15/16 in"), (1, "13/16 in")] {
        let fit = said(step(&route, Operation::Fit, Some(end)));
        let says = format!("1/2 in across, evenly around it, {place} from the end of the tube");
        assert!(fit.contains("four rosette holes through the tube's wall alone") && fit.contains(&says), "{fit}");
        let weld = said(step(&route, Operation::Weld, Some(end)));
        assert!(weld.contains("Fill the rosette holes first") && weld.contains("counts neither"), "{weld}");
        assert!(!step(&route, Operation::Fit, Some(end)).working.is_empty());
    }
    // Nothing is judged by them.
    let (without, _) = made(&bungs(&[1], Some(0.25)));
    assert_eq!(answer.verdict, without.verdict);
    assert_eq!(answer.findings, without.findings);
}

#[test]
fn a_flange_without_a_bung_is_refused() {
    let told = |document: &Document| match &report(document).links[0] {
        LinkReport::Impossible(why) => spoken(why, System::Inch),
        _ => String::new(),
    };
    let mut shallow = bungs(&[0], Some(1.0));
    shallow.links[0].ends[0].tapped_depth = Some(inch(0.875));
    assert!(told(&shallow).contains("as thick as the bung's thread is deep"), "{}", told(&shallow));
    let mut short = bungs(&[0, 1], Some(1.0));
    short.links[0].length = Some(inch(6.0));
    assert!(told(&short).contains("of tube between them"), "{}", told(&short));
    assert_eq!(told(&bungs(&[0, 1], Some(1.0))), "");
}

/// What was written before there was a choice opens with the plain insert, and its code stands; each choice that makes
/// another part has another code, and saying what would be taken anyway has not.
#[test]
fn codes_follow_what_is_welded_in() {
    let code = |document: &Document| {
        let report = report(document);
        format!("{:?}", code_of_link(document, 0, report.links[0].answer().expect("an answer")))
    };
    let plain = tube("1026-dom");
    let mut said = plain.clone();
    for end in [0, 1] {
        assert!((TUBE_END.set)(&mut said, At { end, ..At::of_link(&plain, 0) }, Some("plain")));
    }
    let mut rosettes = plain.clone();
    rosettes.links[0].rosette_welds = true;
    let others = [bungs(&[0], None), bungs(&[1], None), bungs(&[0, 1], None), bungs(&[0], Some(0.3)), rosettes];
    let mut codes: Vec<String> = others.iter().map(code).collect();
    codes.push(code(&plain));
    assert_eq!(code(&said), code(&plain));
    codes.sort();
    codes.dedup();
    assert_eq!(codes.len(), others.len() + 1);
}

/// A bung is a part of its own: named with its flange, and never taken from a list of plain inserts.
#[test]
fn bungs_are_parts_of_their_own() {
    let document = bungs(&[1], Some(0.25));
    let (answer, _) = made(&document);
    let flanges: Vec<f64> = parts(&document, 0, &answer)
        .iter()
        .filter_map(|part| match part {
            Part::Insert { flange, .. } => Some(flange / inch(1.0)),
            _ => None,
        })
        .collect();
    assert!(flanges.len() == 2 && flanges[0].abs() < 1e-12 && (flanges[1] - 0.25).abs() < 1e-12, "{flanges:?}");
}
