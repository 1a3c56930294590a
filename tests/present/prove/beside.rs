//! What stands beside the checks: bending, forces, other metals, what moves the answer, values from outside.

use std::collections::BTreeSet;

use super::{SYSTEMS, has_only_numbers, worked};
use crate::links::{answer, hard};
use linkwright::engine;
use linkwright::inputs;
use linkwright::present::drawing::check_of;
use linkwright::present::{bending, forces, metals, outside, sensitivity};
use linkwright::quantity::{Kind, System, lbf, show};

#[test]
fn every_part_that_is_drawn_and_bends_leads_to_its_check() {
    for document in worked() {
        let (answer, along) = (answer(&document), engine::along(&document, 0));
        let rows = bending::rows(&along, System::Inch);
        assert!(rows.windows(2).all(|pair| pair[0].part != pair[1].part), "{rows:?}");
        for part in rows.iter().map(|row| row.part) {
            let check = check_of(part).unwrap_or_else(|| panic!("{part} leads nowhere"));
            assert!(answer.findings.iter().any(|it| it.id == check), "{part} leads to {check}");
        }
    }
    assert_eq!(check_of("somewhere"), None);
}

#[test]
fn the_picture_of_bending_is_explained_or_its_absence_is() {
    let document = hard();
    let (answer, along) = (answer(&document), engine::along(&document, 0));
    let words = bending::explanation(&document, &answer, &along, System::Inch);
    assert!(words.sentence.contains("factor of 1.25") && !words.buckles, "{words:?}");
    let mut unhit = answer.clone();
    unhit.loads.strike = 0.0;
    let words = bending::explanation(&document, &unhit, &along, System::Inch);
    assert!(words.sentence.contains("No hit is assumed") && !words.buckles, "{words:?}");
    let words = bending::explanation(&document, &answer, &Default::default(), System::Inch);
    assert!(words.sentence.contains("buckles") && words.buckles, "{words:?}");
}

#[test]
fn the_forces_are_told() {
    let told = forces::forces(&answer(&hard()), System::Inch);
    let axle = told.axle.expect("a lower link holds its axle");
    assert!(axle.contains("lbf") && axle.contains("in balance"), "{axle}");
    assert!(!told.story.is_empty());
    assert_eq!(told.changed, None);
    let told = forces::forces(&answer(&worked()[1]), System::Metric);
    assert_eq!(told.changed.as_deref(), Some("Uses your own drop before it lands."));
    assert!(told.axle.is_some_and(|axle| axle.contains("kN")));
}

#[test]
fn every_metal_has_a_row_in_both_tables() {
    let all = engine::in_other_metals(&hard(), 0);
    for system in SYSTEMS {
        let tables = metals::tables(&all, system);
        assert_eq!(tables.each_ref().map(|table| table.keeps_size), [false, true]);
        for table in &tables {
            let ids: Vec<&str> = table.rows.iter().map(|row| row.id).collect();
            assert_eq!(ids, all.iter().map(|metal| metal.material.id).collect::<Vec<_>>());
            let letters: BTreeSet<&String> = table.rows.iter().map(|row| &row.letter).collect();
            assert_eq!(letters.len(), all.len());
            has_only_numbers(table);
        }
        for (row, metal) in tables[0].rows.iter().zip(&all) {
            let (Some(shown), Some(size)) = (&row.size, &metal.smallest) else { continue };
            assert_eq!(shown.used.starts_with("uses "), size.passes, "{}", shown.used);
            assert!(shown.used.contains(&show(size.utilization, Kind::Percent, system)), "{}", shown.used);
            assert_eq!(shown.collapse.is_some(), size.beyond.collapse.is_some());
        }
    }
}

#[test]
fn what_moves_the_answer_is_told_the_way_it_moves() {
    let all = engine::sensitivity(&hard(), 0);
    assert!(sensitivity::how_to_read(&all, System::Inch).is_some_and(|words| words.contains('%')));
    assert_eq!(sensitivity::how_to_read(&[], System::Inch), None);
    let rows = sensitivity::rows(&all, System::Inch);
    has_only_numbers(&rows);
    assert_eq!(rows.len(), all.len());
    for (row, of) in rows.iter().zip(&all) {
        assert!(!row.name.is_empty(), "{}", of.input);
        assert_eq!(row.change.starts_with('+'), of.used_then > of.used_now, "{}", row.change);
        assert!(row.change.contains(" points; ") && row.change.ends_with(of.decides), "{}", row.change);
    }
    let weight = rows.iter().find(|row| row.name == "Rig weight, loaded").expect("the weight moves it");
    assert!(weight.raised.starts_with("4100 lb →") || weight.raised.starts_with("4,100 lb →"), "{}", weight.raised);
}

#[test]
fn how_far_a_link_may_go_is_never_said_too_high() {
    let document = hard();
    let (passing, limits) = (answer(&document), engine::firmness(&document, 0));
    let told = sensitivity::furthest(&passing, &limits, false, System::Inch).expect("it passes");
    let most = |id: &str| limits.iter().find(|row| row.input == id).and_then(|row| row.most);
    let weight = most(inputs::WEIGHT.id).expect("some weight is too much");
    let pounds = told.split("a rig of ").nth(1).and_then(|rest| rest.split(" lb").next()).expect("a weight");
    let pounds: f64 = pounds.replace(',', "").parse().expect("a number");
    assert!(lbf(pounds) <= weight && lbf(pounds + 1.0) > weight, "{told}: {}", weight / lbf(1.0));
    let before = sensitivity::furthest(&passing, &limits, true, System::Inch).expect("it passes");
    assert!(before.contains("a rig of …") && !before.contains(" lb"), "{before}");
    assert_eq!(sensitivity::furthest(&passing, &[], false, System::Inch), None);
    assert_eq!(sensitivity::furthest(&answer(&worked()[2]), &limits, false, System::Inch), None);
}

#[test]
fn every_value_from_outside_is_counted_and_agrees() {
    let compared = outside::compare();
    let counts: Vec<usize> =
        compared.count.split(|c: char| !c.is_ascii_digit()).filter_map(|word| word.parse().ok()).collect();
    let rows: usize = compared.subjects.iter().map(|subject| subject.rows.len()).sum();
    let explained = compared.threads.iter().filter(|row| row.is_explained()).count();
    let all = rows + compared.threads.len();
    assert_eq!(counts, [all - explained, all, explained], "{}", compared.count);
    assert!(compared.subjects.iter().flat_map(|subject| &subject.rows).all(|row| row.agrees));
    assert!(compared.threads.iter().all(outside::ThreadRow::is_accounted_for));
    assert!(explained > 0 && compared.threads.iter().filter(|row| row.is_explained()).all(|row| row.why.is_some()));
    for subject in &compared.subjects {
        assert!(subject.title.ends_with(&format!(": {0} of {0}", subject.rows.len())), "{}", subject.title);
    }
    has_only_numbers(&compared);
    let shown: Vec<_> = compared.threads.iter().map(|row| show(row.tabled, row.kind, System::Metric)).collect();
    has_only_numbers(&shown);
}
