//! The torque card: one range, its source, and the adapter.

use crate::links::{answer, hard, sized};
use linkwright::document::{BoltSeries, Spacers};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::torque_card::{Adapter, BoltToTighten, card, crow_foot};
use linkwright::engine::sentence::spoken;
use linkwright::engine::tables::{bolt_threads, bolt_torque, bolts};
use linkwright::quantity::{POUND_FORCE, System, inch};

const LBF_FT: f64 = POUND_FORCE * 12.0 * 0.0254;

/// Thread, least and most: the published thin-nut range less 30 %, in lbf·ft, worked out by hand.
const JAM_NUTS: [(&str, f64, f64); 4] =
    [("wide-10", 35.0, 45.0), ("wide-12", 76.0, 88.0), ("wide-14", 88.0, 105.0), ("wide-16", 315.0, 385.0)];

#[test]
fn each_jam_nut_has_one_range_and_its_source() {
    for (rod_end, least, most) in JAM_NUTS {
        let document = sized(2.25, rod_end, rod_end);
        for end in card(&document, 0, &answer(&document)).expect("a card") {
            assert!((end.jam_nut.least / LBF_FT - least).abs() < 0.8, "{rod_end}: {}", end.jam_nut.least / LBF_FT);
            assert!((end.jam_nut.most / LBF_FT - most).abs() < 0.8, "{rod_end}: {}", end.jam_nut.most / LBF_FT);
            assert!(end.jam_nut_source.words().contains("AC 43.13"), "{}", end.jam_nut_source.words());
            assert!(end.across > end.thread.major && !end.working.is_empty());
            let how = spoken(&end.how, System::Inch);
            assert!(how.contains("seen from the eye") && !how.contains("dry"), "{how}");
            let counter = how.contains("counterclockwise");
            assert_eq!(counter, end.hand == linkwright::document::Hand::Left, "{how}");
        }
    }
    let mut metric = hard();
    metric.links[0].family = Some("series-k");
    for end in card(&metric, 0, &answer(&metric)).expect("a card") {
        assert!(end.jam_nut_source.words().contains("assumption"), "no torque is printed for metric thin nuts");
    }
}

/// Torques that independent tables print beside ours: makers' manuals for plated or oiled threads, lbf·ft and N·m.
const BESIDE: [(&str, &str, BoltSeries, f64); 10] = [
    ("grade-8", "1/2", BoltSeries::Fine, 90.0 * LBF_FT),
    ("grade-8", "5/8", BoltSeries::Fine, 180.0 * LBF_FT),
    ("grade-8", "3/4", BoltSeries::Fine, 315.0 * LBF_FT),
    ("grade-8", "3/4", BoltSeries::Coarse, 280.0 * LBF_FT),
    ("grade-8", "7/8", BoltSeries::Fine, 500.0 * LBF_FT),
    ("grade-5", "5/8", BoltSeries::Fine, 130.0 * LBF_FT),
    ("grade-5", "1/2", BoltSeries::Coarse, 57.0 * LBF_FT),
    ("class-10-9", "M12", BoltSeries::Coarse, 94.0),
    ("class-10-9", "M16", BoltSeries::Coarse, 234.0),
    ("class-10-9", "M20", BoltSeries::Coarse, 457.0),
];

#[test]
fn bolt_torques_agree_with_other_tables_and_with_their_own_rule() {
    let size = |label: &str| bolt_threads::ALL.iter().find(|size| size.label == label).expect("a size");
    for (grade, label, series, torque) in BESIDE {
        let row = bolt_torque::published(bolts::find(grade).expect("a grade"), size(label), series).expect("a row");
        assert!((row.torque / torque - 1.0).abs() < 0.02, "{grade} {label}: {}", row.torque);
    }
    // Every row: 0.75 of the proof load at a torque coefficient of 0.15, which both tables rest on.
    let mut rows = 0;
    for grade in bolts::GRADES {
        for size in bolt_threads::ALL {
            for (series, thread) in [(BoltSeries::Fine, &size.fine), (BoltSeries::Coarse, &size.coarse)] {
                let Some(row) = bolt_torque::published(grade, size, series) else { continue };
                let strength = grade.strength(size.diameter).expect("a strength");
                let by_rule = 0.15 * 0.75 * strength.proof * thread.stress_area * size.diameter;
                let off = row.torque / by_rule - 1.0;
                assert!(off.abs() < 0.06, "{} {} {series:?}: {off}", grade.id, size.label);
                assert!(!row.cite.words().is_empty() && row.on.contains("no anti-seize"));
                rows += 1;
            }
        }
    }
    assert!(rows > 60, "{rows}");
}

#[test]
fn a_bolt_without_a_published_torque_is_not_judged() {
    let mut document = sized(2.0, "wide-12", "wide-12");
    let bolt = |document: &linkwright::document::Document| {
        let [a, _] = card(document, 0, &answer(document)).expect("a card");
        a.bolt
    };
    match bolt(&document) {
        BoltToTighten::Published { torque, says, source, .. } => {
            assert!((torque / LBF_FT - 315.0).abs() < 0.1 && spoken(&says, System::Inch).contains("Grade 8"));
            assert!(source.words().contains("read in a copy"), "{}", source.words());
        }
        BoltToTighten::NotJudged(says) => panic!("{}", spoken(&says, System::Inch)),
    }
    document.links[0].ends[0].bolt_diameter = Some(inch(0.7));
    assert!(matches!(bolt(&document), BoltToTighten::NotJudged(says) if spoken(&says, System::Inch).contains("maker")));
    let mut stepped = sized(2.0, "wide-12", "wide-12");
    (stepped.links[0].spacer, stepped.links[0].spacer_kind) = (Some(inch(0.5)), Some(Spacers::HighMisalignment));
    assert!(
        matches!(bolt(&stepped), BoltToTighten::NotJudged(says) if spoken(&says, System::Inch).contains("only you know"))
    );
}

#[test]
fn an_adapter_in_line_asks_for_less_on_the_wrench() {
    let set = |torque: f64, wrench: f64, adapter: f64, sits| {
        crow_foot(torque, Some(inch(wrench)), Some(inch(adapter)), Some(sits))
    };
    let in_line = set(100.0, 18.0, 2.0, Adapter::InLine);
    assert!((in_line.set.expect("set") - 90.0).abs() < 1e-9 && in_line.standing == Standing::Good);
    // The force at the hand, over both levers: an independent way to the torque at the nut.
    let force = in_line.set.expect("set") / inch(18.0);
    assert!((force * inch(20.0) - 100.0).abs() < 1e-9);
    assert_eq!(set(100.0, 18.0, 2.0, Adapter::Square).set, Some(100.0));
    for (wrench, adapter, sits) in [
        (None, Some(inch(2.0)), Some(Adapter::InLine)),
        (Some(inch(18.0)), None, Some(Adapter::InLine)),
        (Some(inch(18.0)), Some(inch(2.0)), None),
        (Some(0.0), Some(inch(2.0)), Some(Adapter::InLine)),
        (Some(inch(18.0)), Some(inch(-30.0)), Some(Adapter::InLine)),
        (Some(f64::NAN), Some(inch(2.0)), Some(Adapter::InLine)),
    ] {
        let found = crow_foot(100.0, wrench, adapter, sits);
        assert_eq!((found.standing, found.set), (Standing::NotJudged, None));
    }
    assert_eq!(crow_foot(f64::NAN, Some(0.4), Some(0.05), Some(Adapter::Square)).set, None);
}
