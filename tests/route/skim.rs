//! A skim pass: the answer is worked out with what is left, the bar is bought as it was.

use super::{made, said, step, warned};
use crate::links::{answer, find, hard, sized};
use linkwright::engine::sentence::spoken;
use linkwright::engine::shop::route::Operation;
use linkwright::engine::{parts, report};
use linkwright::quantity::{System, inch};
use linkwright::report::{LinkReport, Part};

#[test]
fn without_a_skim_pass_nothing_changes() {
    let plain = answer(&hard());
    assert!(!plain.link.is_skimmed() && plain.assumed.iter().all(|one| one.input != "skim"));
    let mut nothing = hard();
    nothing.links[0].skim = Some(0.0);
    let nothing = answer(&nothing);
    let came_out = |answer: &linkwright::report::Answer| -> Vec<_> {
        answer.findings.iter().map(|finding| (finding.id, finding.verdict, finding.utilization)).collect()
    };
    assert_eq!((came_out(&nothing), nothing.verdict), (came_out(&plain), plain.verdict));
    assert_eq!(nothing.link.outside_diameter.to_bits(), plain.link.outside_diameter.to_bits());
}

/// 2 in less 0.030 in is a bar of 1.970 in, whoever turned it.
#[test]
fn a_skimmed_bar_is_as_strong_as_one_of_its_finished_size() {
    let mut skimmed = sized(2.0, "wide-12", "wide-12");
    skimmed.links[0].skim = Some(inch(0.03));
    let (skimmed_answer, other) = (answer(&skimmed), answer(&sized(1.97, "wide-12", "wide-12")));
    assert!((skimmed_answer.link.outside_diameter - inch(1.97)).abs() < 1e-12);
    assert!((skimmed_answer.link.stock_diameter - inch(2.0)).abs() < 1e-12);
    assert!((skimmed_answer.link.bar_weight - other.link.bar_weight).abs() < 1e-9);
    assert_eq!(skimmed_answer.link.flats, other.link.flats, "flats go by the finished diameter");
    for finding in &other.findings {
        let same = find(&skimmed_answer, finding.id);
        assert_eq!((same.verdict, same.utilization), (finding.verdict, finding.utilization), "{}", finding.id);
    }
    let bending = |answer| find(answer, "bar-bending").utilization.expect("worked out");
    let thick = answer(&sized(2.0, "wide-12", "wide-12"));
    assert!(bending(&skimmed_answer) > 1.01 * bending(&thick));
    // What is bought is the bar as it comes.
    let bought = parts(&skimmed, 0, &skimmed_answer);
    assert!(bought.iter().any(
        |part| matches!(part, Part::Bar { outside_diameter, .. } if (outside_diameter - inch(2.0)).abs() < 1e-12)
    ));
}

#[test]
fn a_search_recommends_what_is_stocked_and_lasts_after_the_skim() {
    let plain = answer(&hard());
    let mut skimmed = hard();
    skimmed.links[0].skim = Some(inch(0.1));
    let skimmed = answer(&skimmed);
    let of = |answer: &linkwright::report::Answer| answer.sizing.recommended.clone().expect("recommended");
    let (with, without) = (of(&skimmed), of(&plain));
    assert!((with.outside_diameter - skimmed.link.stock_diameter).abs() < 1e-12);
    assert!(with.outside_diameter >= without.outside_diameter && with.utilization <= 1.0);
    assert!((skimmed.link.stock_diameter - skimmed.link.outside_diameter - inch(0.1)).abs() < 1e-12);
}

#[test]
fn nothing_is_turned_off_a_tube() {
    let mut tube = hard();
    tube.links[0].material = Some("1026-dom");
    let before = report(&tube);
    tube.links[0].skim = Some(inch(0.1));
    assert_eq!(report(&tube), before);
}

#[test]
fn too_deep_a_skim_is_told() {
    let mut document = sized(1.0, "wide-12", "wide-12");
    document.links[0].skim = Some(inch(0.25));
    let LinkReport::Impossible(why) = &report(&document).links[0] else { panic!("0.750 in around 3/4-16") };
    let why = spoken(why, System::Inch);
    assert_eq!(
        why,
        "Skimming 1/4 in off a bar of 1 in leaves 3/4 in: nothing around a 3/4-16 UNF thread. Skim less, or buy a thicker bar."
    );
}

#[test]
fn the_route_tells_what_the_skim_pass_costs() {
    let mut document = sized(2.0, "wide-16", "wide-16");
    assert!(made(&document).1.steps.iter().all(|step| step.operation != Operation::Skim));
    let before = answer(&document);
    document.links[0].skim = Some(inch(0.06));
    let (after, route) = made(&document);
    let skim = step(&route, Operation::Skim, None);
    let bending = |answer| {
        linkwright::quantity::show(
            find(answer, "bar-bending").utilization.expect("worked out"),
            linkwright::quantity::Kind::Percent,
            System::Inch,
        )
    };
    let (says, warns) = (said(skim), warned(skim));
    assert!(says.contains("from 2 in to 1.940 in"), "{says}");
    assert!(says.contains(&format!("to {} of its limit instead of {}", bending(&after), bending(&before))), "{says}");
    assert!(warns.is_empty() || warns.contains("fails"), "{warns}");
}
