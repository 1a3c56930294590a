//! The bolt through an eye: its size, its bending, the clamp of its stack, and the torque of jam nuts.
//!
//! Expected values come from a calculation kept apart from this project, with the areas of the printed tables.

mod links;

use links::{answer, find, hard, sized};
use linkwright::document::*;
use linkwright::engine::fitting::fitting_steps;
use linkwright::engine::formula::{Line, Sheet};
use linkwright::engine::formulas::{jam_nut, pins, threads as thread_formulas};
use linkwright::engine::sentence::spoken;
use linkwright::engine::tables::{bolt_threads, jam_torque, threads};
use linkwright::engine::{parts, report};
use linkwright::inputs::{self, At};
use linkwright::quantity::{POUND_FORCE, System, inch, lbf, lbf_in, mm};
use linkwright::report::{Answer, LinkReport, Part, Verdict};

/// An upper link with high-misalignment spacers and nothing but a given force on its eyes.
fn stepped(force: f64, bolt: f64, spacer: f64, rod_end: &'static str) -> Document {
    let mut document = sized(2.25, rod_end, rod_end);
    let link = &mut document.links[0];
    (link.role, link.own_axial, link.own_strike) = (Role::Upper, Some(lbf(force)), Some(0.0));
    (link.spacer, link.spacer_kind) = (Some(inch(spacer)), Some(Spacers::HighMisalignment));
    link.ends.iter_mut().for_each(|end| end.bolt_diameter = Some(inch(bolt)));
    document
}

/// What a formula came to in the check on the bolt's bending.
fn worked(answer: &Answer, id: &str) -> Option<f64> {
    find(answer, "bolt-bending").working.iter().find_map(|line| match line {
        Line::Worked { formula, result, .. } if formula.id == id => Some(*result),
        _ => None,
    })
}

/// A value in a unit, rounded to the digits that are printed.
fn prints(found: Option<f64>, unit: f64, printed: &str) {
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    assert_eq!(format!("{:.decimals$}", found.expect("worked out") / unit), printed);
}

fn says(answer: &Answer, id: &str) -> String {
    spoken(&find(answer, id).says, System::Inch)
}

fn impossible(document: &Document) -> String {
    match &report(document).links[0] {
        LinkReport::Impossible(says) => spoken(says, System::Inch),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_bolt_stepped_down_is_good_while_it_is_tight() {
    let answer = answer(&stepped(5330.0, 0.625, 0.6, "wide-16"));
    prints(worked(&answer, "BOLT_MOMENT"), lbf_in(1.0), "2848.2");
    prints(worked(&answer, "STRESS_UTILIZATION"), 0.01, "114.26");
    prints(worked(&answer, "MOMENT_SHARE"), 0.01, "94.822");
    let finding = find(&answer, "bolt-bending");
    assert_eq!(finding.verdict, Verdict::Close);
    prints(finding.utilization, 0.01, "94.822");
    assert_eq!(
        finding.condition.as_ref().map(|it| spoken(it, System::Inch)).as_deref(),
        Some("while the bolt is tight")
    );
    let says = says(&answer, "bolt-bending");
    assert!(says.contains("check it; loose, it bends") && says.contains("240 lbf·ft"), "{says}");
}

#[test]
fn neither_bolt_nor_clamp_holds() {
    // A coarse thread in the same place clamps too little.
    let mut coarse = stepped(5330.0, 0.625, 0.6, "wide-16");
    coarse.links[0].bolt_series = Some(BoltSeries::Coarse);
    let coarse = answer(&coarse);
    prints(worked(&coarse, "MOMENT_SHARE"), 0.01, "107");
    let small = answer(&stepped(5460.0, 0.5625, 0.5, "wide-12"));
    prints(worked(&small, "STRESS_UTILIZATION"), 0.01, "126.76");
    prints(worked(&small, "MOMENT_SHARE"), 0.01, "107.45");
    for answer in [&coarse, &small] {
        let finding = find(answer, "bolt-bending");
        assert_eq!((finding.verdict, finding.condition.is_none()), (Verdict::Fails, true));
    }
}

#[test]
fn a_thicker_bolt_holds_by_itself() {
    let answer = answer(&stepped(5330.0, 0.75, 0.6, "wide-16"));
    let finding = find(&answer, "bolt-bending");
    prints(finding.utilization, 0.01, "66.124");
    assert_eq!((finding.verdict, finding.condition.is_none()), (Verdict::Passes, true));
    assert!(worked(&answer, "MOMENT_SHARE").is_none(), "its clamp is not asked");
}

#[test]
fn a_steering_bolt_holds_by_itself_or_fails() {
    for (role, verdict) in [
        (Role::TieRod, Verdict::Fails),
        (Role::DragLink, Verdict::Fails),
        (Role::TrackBar, Verdict::Close),
        (Role::Lower, Verdict::Close),
    ] {
        let mut document = stepped(5330.0, 0.625, 0.6, "wide-16");
        document.links[0].role = role;
        let answer = answer(&document);
        assert_eq!(find(&answer, "bolt-bending").verdict, verdict, "{role:?}");
    }
}

#[test]
fn an_open_gap_bends_the_bolt_and_clamps_nothing() {
    let moment = |gap: f64| {
        let mut document = stepped(5330.0, 0.625, 0.6, "wide-16");
        document.links[0].gap = Some(inch(gap));
        let answer = answer(&document);
        (worked(&answer, "BOLT_MOMENT").expect("worked out"), find(&answer, "bolt-bending").verdict)
    };
    assert_eq!(moment(0.0).1, Verdict::Close);
    let (open, verdict) = moment(0.125);
    assert!((open - moment(0.0).0 - lbf_in(5330.0 / 2.0 * 0.125)).abs() < 1e-6);
    assert_eq!(verdict, Verdict::Fails);
}

#[test]
fn a_wide_foot_keeps_the_stack_closed_longer() {
    let mut wide = stepped(5460.0, 0.5625, 0.5, "wide-12");
    wide.links[0].ends.iter_mut().for_each(|end| end.spacer_foot = Some(inch(1.125)));
    let answer = answer(&wide);
    let capacity = 0.75 * 0.75 * lbf(120_000.0 * 0.203) * inch(1.125 * 1.125 + 0.5625 * 0.5625) / (8.0 * 1.125);
    assert!((worked(&answer, "CLAMP_MOMENT").expect("worked out") / capacity - 1.0).abs() < 1e-9);
    assert_eq!(find(&answer, "bolt-bending").verdict, Verdict::Close);
}

/// The joint force is the larger of the link's force alone and what acts with the strike.
#[test]
fn the_strike_reaches_the_bolt() {
    let mut document = stepped(4000.0, 0.75, 0.0, "wide-16");
    document.links[0].own_strike = Some(lbf(6000.0));
    let force = |document: &Document| {
        let answer = answer(document);
        let line = find(&answer, "bolt-bending").working.iter().find_map(|line| match line {
            Line::Worked { formula, given, .. } if formula.id == "BOLT_MOMENT" => given.first().copied(),
            _ => None,
        });
        line.expect("a moment")
    };
    let together = f64::hypot(2000.0, 4500.0);
    assert!((force(&document) / lbf(together) - 1.0).abs() < 1e-9);
    document.links[0].own_strike = Some(lbf(1000.0));
    assert!((force(&document) / lbf(4000.0) - 1.0).abs() < 1e-9);
}

#[test]
fn high_misalignment_spacers_ask_for_the_bolt() {
    let mut document = stepped(2000.0, 0.625, 0.5, "wide-16");
    document.links[0].ends[1].bolt_diameter = None;
    let answer = answer(&document);
    for id in ["bolt-shear", "bolt-bending", "ear-bearing"] {
        assert_eq!(find(&answer, id).verdict, Verdict::Unanswered, "{id}");
    }
    assert!(says(&answer, "bolt-bending").contains("Enter the bolt diameter at end B"));
    assert!(answer.verdict > Verdict::Passes);
    let parts = parts(&document, 0, &answer);
    let unknown = parts.iter().filter(|part| matches!(part, Part::Bolt { bolt: None, .. })).map(Part::count);
    assert_eq!(unknown.sum::<usize>(), 2, "listed, but not guessed: {parts:?}");
}

/// What fails at one end is not hidden by what is unknown, or good on a condition, at the other.
#[test]
fn the_end_that_says_more_is_told() {
    let verdict = |[a, b]: [Option<f64>; 2], force: f64| {
        let mut document = stepped(force, 0.625, 0.6, "wide-16");
        let link = &mut document.links[0];
        (link.ends[0].bolt_diameter, link.ends[1].bolt_diameter) = (a.map(inch), b.map(inch));
        find(&answer(&document), "bolt-bending").verdict
    };
    let both = |a: Option<f64>, b: Option<f64>, force: f64, expected: Verdict| {
        assert_eq!([verdict([a, b], force), verdict([b, a], force)], [expected; 2], "{a:?} {b:?}");
    };
    both(Some(0.5), None, 5330.0, Verdict::Fails);
    both(Some(0.625), None, 5330.0, Verdict::Unanswered);
    both(Some(0.625), Some(0.75), 5330.0, Verdict::Close);
    both(Some(1.0), Some(0.75), 5330.0, Verdict::Passes);
    // A wide foot brings the clamp of one end to less than what the other's bolt is used by itself.
    let mut document = stepped(5330.0, 0.625, 0.6, "wide-16");
    document.links[0].ends[0].spacer_foot = Some(inch(1.25));
    document.links[0].ends[1].bolt_diameter = Some(inch(0.68));
    let answer = answer(&document);
    let finding = find(&answer, "bolt-bending");
    assert_eq!((finding.verdict, finding.condition.is_some()), (Verdict::Close, true), "{:?}", finding.utilization);
}

#[test]
fn a_bolt_thicker_than_the_bore_is_refused() {
    let mut document = sized(2.25, "wide-14", "wide-16");
    document.links[0].ends.iter_mut().for_each(|end| end.bolt_diameter = Some(inch(1.0)));
    let says = impossible(&document);
    assert!(says.contains("does not go through the 7/8 in bore of the rod end at A"), "{says}");
    document.links[0].ends[0].bolt_diameter = Some(inch(0.875));
    answer(&document);
    document.links[0].ends[0].spacer_foot = Some(inch(0.875));
    assert!(impossible(&document).contains("must be wider on the ear"));
    // A search takes only rod ends that the bolt goes through.
    let mut open = hard();
    open.links[0].role = Role::Upper;
    let smaller = answer(&open).link.ends[0].bore;
    open.links[0].ends.iter_mut().for_each(|end| end.bolt_diameter = Some(inch(1.0)));
    let found = answer(&open).link.ends[0].bore;
    assert!(smaller < inch(1.0) && found >= inch(1.0), "{smaller} {found}");
}

#[test]
fn high_misalignment_spacers_let_the_ball_tilt_further() {
    let used = |kind: Option<Spacers>| {
        let mut document = sized(2.25, "wide-16", "wide-16");
        (document.links[0].spacer, document.links[0].spacer_kind) = (Some(inch(0.5)), kind);
        find(&answer(&document), "misalignment").utilization.expect("a tilt")
    };
    assert!((used(None) / used(Some(Spacers::HighMisalignment)) - 30.0 / 12.0).abs() < 1e-9);
}

#[test]
fn a_bolt_that_rattles_is_told() {
    let mut document = sized(2.25, "wide-16", "wide-16");
    assert!(!says(&answer(&document), "bolt-bending").contains("wider than the bolt"));
    document.links[0].ends.iter_mut().for_each(|end| end.bolt_diameter = Some(inch(0.75)));
    let says = says(&answer(&document), "bolt-bending");
    assert!(says.contains("1/4 in wider than the bolt: without a sleeve"), "{says}");
}

/// Bore in mm, and the bolt that is made for it.
#[test]
fn a_bore_takes_the_largest_standard_bolt_that_fits() {
    for (bore, bolt) in [
        (7.9375, "5/16"),
        (9.525, "3/8"),
        (10.0, "M10"),
        (12.0, "M12"),
        (12.7, "1/2"),
        (14.0, "M14"),
        (14.2875, "9/16"),
        (15.875, "5/8"),
        (16.0, "M16"),
        (18.0, "M18"),
        (19.03, "3/4"),
        (20.0, "M20"),
        (22.0, "M22"),
        (22.225, "7/8"),
        (25.0, "M24"),
        (25.4, "1"),
        (30.0, "M30"),
    ] {
        assert_eq!(bolt_threads::for_bore(mm(bore)).map(|size| size.label), Some(bolt), "{bore} mm");
    }
    assert!(bolt_threads::for_bore(inch(2.0)).is_none());
    assert!(bolt_threads::of_diameter(inch(0.6)).is_none());
}

/// Tabled areas are rounded to three or four digits; a wrong pitch would be off by several percent.
#[test]
fn bolt_areas_are_what_their_pitch_gives() {
    for size in bolt_threads::ALL {
        for (thread, name) in [(&size.fine, "fine"), (&size.coarse, "coarse")] {
            let formula = match size.system {
                System::Inch => &thread_formulas::TENSILE_STRESS_AREA_INCH,
                System::Metric => &thread_formulas::TENSILE_STRESS_AREA_METRIC,
            };
            let found = formula.value(&[size.diameter, thread.pitch]);
            assert!((found / thread.stress_area - 1.0).abs() < 0.004, "{} {name}: {found}", size.label);
        }
        assert!(size.fine.stress_area > size.coarse.stress_area && size.fine.pitch < size.coarse.pitch);
    }
}

#[test]
fn metric_bores_take_metric_bolts_of_class_10_9() {
    let mut document = sized(2.25, "k-30", "k-25");
    let bolts = |document: &Document| {
        let answer = answer(document);
        let parts = parts(document, 0, &answer);
        let bolt = |part: &Part| match part {
            Part::Bolt { bolt: Some(bolt), .. } => Some(((bolt.diameter * 1e6).round() as i64, bolt.grade)),
            _ => None,
        };
        parts.iter().filter_map(bolt).collect::<Vec<_>>()
    };
    assert_eq!(bolts(&document), [(30_000, "class-10-9"), (24_000, "class-10-9")]);
    assert_eq!(inputs::BOLT.value(&document, At::default()), Some("class-10-9"));
    document.links[0].bolt = Some("class-8-8");
    assert_eq!(bolts(&document), [(30_000, "class-8-8"), (24_000, "class-8-8")], "an explicit grade stays");
    document.links[0].bolt = None;
    document.links[0].ends[1].rod_end = Some("wide-16");
    assert_eq!(bolts(&document), [(30_000, "class-10-9"), (25_400, "grade-8")]);
    // A measured bore decides by itself.
    let own = &mut document.links[0].ends[0];
    (own.rod_end, own.own_thread, own.own_eye_to_end) = (Some(OWN_ROD_END), Some("7/8-14"), Some(inch(4.0)));
    (own.own_thread_length, own.own_bore) = (Some(inch(2.2)), Some(mm(16.0)));
    assert_eq!(bolts(&document), [(25_400, "grade-8"), (16_000, "class-10-9")]);
}

#[test]
fn metric_rod_ends_go_with_metric_bars() {
    let mut document = hard();
    let size = |document: &Document| answer(document).link.outside_diameter;
    let is_metric = |size: f64| (size * 1e3 - (size * 1e3).round()).abs() < 1e-6;
    assert!(!is_metric(size(&document)));
    document.links[0].family = Some("series-k");
    assert!(is_metric(size(&document)), "{}", size(&document));
    document.links[0].stock = Some(Stock::Inch);
    assert!(!is_metric(size(&document)), "2 in bars are sold to owners of metric rod ends too");
    document.links[0].stock = None;
    document.links[0].family = None;
    document.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("k-30"));
    assert!(is_metric(size(&document)));
    assert_eq!(inputs::STOCK.value(&document, At::default()), Some("metric"));
}

#[test]
fn jam_nuts_have_one_range_for_what_was_ordered() {
    let lbf_ft = POUND_FORCE * inch(12.0);
    for (id, least, most) in [
        ("5/8-18", 35.0, 45.5),
        ("3/4-16", 75.6, 87.5),
        ("7/8-14", 87.5, 105.0),
        ("1-14", 128.1, 192.5),
        ("1-1/4-12", 315.0, 385.0),
    ] {
        let range = jam_torque::range(threads::find(id).expect("a thread"), &mut Sheet::silent());
        assert!((range.least / lbf_ft - least).abs() < 1e-9, "{id}: {}", range.least / lbf_ft);
        assert!((range.most / lbf_ft - most).abs() < 1e-9, "{id}: {}", range.most / lbf_ft);
    }
    let metric = jam_torque::range(threads::find("M20x1.5").expect("a thread"), &mut Sheet::silent());
    prints(Some(metric.least), 1.0, "103.39");
    prints(Some(metric.most), 1.0, "124.67");
}

#[test]
fn the_seat_bears_the_preload_without_its_countersink() {
    let answer = answer(&sized(2.25, "wide-16", "wide-16"));
    let finding = find(&answer, "jam-nut-seat");
    let pressure = finding.working.iter().find_map(|line| match line {
        Line::Worked { formula, given, .. } if formula.id == "SEAT_PRESSURE" => Some((given[0], given[1])),
        _ => None,
    });
    let (preload, area) = pressure.expect("a pressure");
    prints(Some(preload), lbf(1.0), "33000");
    assert!((area - jam_nut::SEAT_AREA.value(&[inch(1.812), inch(1.25 + 1.0 / 64.0)])).abs() < 1e-12);
    let says = spoken(&finding.says, System::Inch);
    assert!(says.contains("315 lbf·ft to 385 lbf·ft") && !says.contains(" dry"), "{says}");
    let steps = fitting_steps::steps(&sized(2.25, "wide-16", "wide-16"), 0, &answer);
    let steps: Vec<String> = steps.iter().map(|step| spoken(&step.words, System::Inch)).collect();
    assert!(steps.iter().any(|step| step.contains("between 315 lbf·ft and 385 lbf·ft, anti-seize")), "{steps:?}");
    assert!(steps.iter().all(|step| !step.contains(" dry")), "{steps:?}");
}

#[test]
fn parts_follow_bolt_spacers_and_inserts() {
    let mut document = stepped(3000.0, 0.625, 0.5, "wide-14");
    let link = &mut document.links[0];
    (link.material, link.outside_diameter, link.wall) = (Some("1026-dom"), Some(inch(2.0)), Some(inch(0.25)));
    link.gap = Some(inch(1.0 / 16.0));
    let answer = answer(&document);
    let parts = parts(&document, 0, &answer);
    let near = |a: f64, inches: f64| (a / inch(1.0) - inches).abs() < 1e-9;
    assert!(parts.iter().any(|part| matches!(part, Part::Bolt { bolt: Some(bolt), grip, count }
        if near(bolt.diameter, 0.625) && near(*grip, 0.875 + 2.0 * (0.25 + 0.5 + 0.0625)) && *count == 4)));
    assert!(
        parts.iter().any(
            |part| matches!(part, Part::Spacer { bore: Some(bore), foot: Some(foot), into: Some(ball), long, count }
        if near(*bore, 0.625) && near(*foot, 1.0) && near(*ball, 0.875) && near(*long, 0.5) && *count == 8)
        )
    );
    let inserts: Vec<_> = parts
        .iter()
        .filter_map(|part| match part {
            Part::Insert { hand, outside_diameter, wall, length, count, .. } => {
                assert!(near(*outside_diameter, 1.5) && near(*wall, 0.3125), "{part:?}");
                assert!((length - answer.link.ends[0].tapped_depth).abs() < 1e-12);
                Some((*hand, *count))
            }
            _ => None,
        })
        .collect();
    assert_eq!(inserts, [(Hand::Right, 2), (Hand::Left, 2)]);
    assert!(near(pins::SPACER_FOOT.value(&[1.6, inch(0.625)]), 1.0));
}
