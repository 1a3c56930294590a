//! The route sheet as it is read: whole sentences, both units, boxes; and for any link, nothing left blank.

use super::made;
use crate::dice::Dice;
use crate::links::{answer, sized};
use linkwright::document::Use;
use linkwright::engine::report;
use linkwright::engine::shop::route::{Machine, route};
use linkwright::present::make::route as present;
use linkwright::present::words::Units;
use linkwright::quantity::{Kind, System, inch, lbf, show_fine};
use linkwright::report::LinkReport;

#[test]
fn the_sheet_of_a_bar() {
    let document = sized(2.0, "wide-12", "wide-12");
    let (answer, route) = made(&document);
    let sheet = present::sheet(&document, 0, &answer, &route, Units::Both);
    let head: Vec<String> = sheet.head.iter().map(|row| format!("{}: {}", row.name, row.value)).collect();
    assert_eq!(
        head,
        [
            "Stock: 7075-T6/T651 bar, 2 in (50.8 mm)",
            "Eye to eye: 38 in (965.2 mm)",
            "Bar, face to face: 34-19/32 in (878.7 mm)",
            "Saw to: 34-23/32 in (881.9 mm)",
            "Blank: 11.0 lb (5.0 kg)",
            "Finished bar: 10.8 lb (4.9 kg)",
        ]
    );
    let shapes = sheet.ends.each_ref().map(|end| (end.letter, end.shape, end.thread.as_str()));
    assert_eq!(shapes, [("A", "●", "3/4-16 UNF, RH"), ("B", "■", "3/4-16 UNF, LH")]);
    let tap = sheet.steps.iter().find(|row| row.title == "Tap, end B ■").expect("tapped");
    let says = tap.says.join(" ").replace('\u{2060}', "");
    assert!(says.contains("full thread 1-7/8 in (47.63 mm) deep from the face"), "{says}");
    assert!(sheet.foot().starts_with("Time: 1 h ") && sheet.foot().ends_with("set your own."), "{}", sheet.foot());
    assert!(sheet.time.starts_with("1 h ") && sheet.time.ends_with("for 2 pieces"), "{}", sheet.time);
    let face = sheet.measurements.iter().find(|one| one.name == "Face to face").expect("measured");
    assert_eq!(face.asked, "34-19/32 in (878.68 mm), ± 0.010 in (0.25 mm)");
    assert!(
        present::drawings(&answer, linkwright::present::drawing::Layout::Wide, System::Inch)
            .iter()
            .all(|drawing| !drawing.marks.is_empty())
    );
}

#[test]
fn one_system_stands_alone() {
    let document = sized(2.0, "wide-12", "wide-12");
    let (answer, route) = made(&document);
    let sheet = present::sheet(&document, 0, &answer, &route, System::Metric);
    let saw = &sheet.steps[1].says[0];
    assert_eq!(
        saw,
        "Saw to 881.9 mm, that is finished length and 1.59 mm for facing at each end. The blank weighs 5.0 kg."
    );
}

/// No step is without words, no number is missing, and the fitting list is not on it.
#[test]
fn any_link_has_a_whole_sheet() {
    let mut dice = Dice(77);
    let (mut told, mut routes) = (Vec::new(), 0);
    for _ in 0..60 {
        let mut rig = dice.rig();
        rig.links.truncate(3);
        (rig.rig.weight, rig.rig.usage) = (rig.rig.weight.or(Some(lbf(4100.0))), rig.rig.usage.or(Some(Use::Hard)));
        rig.links.iter_mut().for_each(|link| link.length = link.length.or(Some(inch(36.0))));
        for (at, link) in report(&rig).links.iter().enumerate() {
            let LinkReport::Answer(answer) = link else { continue };
            let route = route(&rig, at, answer, &Machine::default());
            let sheet = present::sheet(&rig, at, answer, &route, Units::Both);
            routes += 1;
            let text = format!("{sheet:?}");
            for bad in ["—", "NaN", "inf", "torque the jam nut"] {
                if text.contains(bad) {
                    told.push(format!("{bad:?} in {text}"));
                }
            }
            for row in &sheet.steps {
                assert!(!row.says.is_empty() && row.says.iter().all(|says| says.ends_with('.')), "{row:?}");
                assert!(!row.title.is_empty() && !row.sources.is_empty() && !row.minutes.is_empty(), "{row:?}");
            }
            assert!(sheet.measurements.len() > 6 && route.minutes.is_finite() && route.blank_weight > 0.0);
            assert!(route.finished_weight.is_none_or(|weight| weight > 0.0 && weight < route.blank_weight), "{text}");
        }
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
    assert!(routes > 60, "{routes}");
}

#[test]
fn a_link_that_is_not_there_has_no_route_of_another() {
    let document = sized(2.0, "wide-12", "wide-12");
    let answer = answer(&document);
    let route = route(&document, 9, &answer, &Machine::default());
    assert!(route.minutes > 0.0 && route.pieces == 1);
}

/// Every number that was computed is told with how: the speeds and minutes of each step, and the weights in the head.
#[test]
fn the_working_is_shown() {
    use linkwright::present::working;
    let document = sized(2.0, "wide-12", "wide-12");
    let (answer, route) = made(&document);
    let sheet = present::sheet(&document, 0, &answer, &route, Units::Both);
    let text = |title: &str| {
        let row = sheet.steps.iter().find(|row| row.title == title).expect("a step");
        working::as_text(title, &row.working, System::Inch)
    };
    for (title, shown) in [
        ("Saw", "V_m = 152.4"),
        ("Face", "N = 572.96"),
        ("Center drill, end A ●", "N = 1,222"),
        ("Tap drill, end A ●", "N = 1,111"),
        ("Tap, end B ■", "N_m = 300"),
        ("Countersink, end B ■", "V_k = 50"),
    ] {
        assert!(text(title).contains(shown), "{shown} is not in\n{}", text(title));
    }
    let weights = working::as_text("", &sheet.working, System::Inch);
    for weight in [Some(route.blank_weight), route.finished_weight].into_iter().flatten() {
        let shown = show_fine(weight, Kind::Weight, System::Inch);
        assert!(weights.contains(&format!(" = {shown} (")), "{shown} is not in\n{weights}");
    }
    assert_eq!(
        sheet.steps.iter().map(|row| row.working.len()).collect::<Vec<_>>(),
        route.steps.iter().map(|step| step.working.len()).collect::<Vec<_>>()
    );
}
