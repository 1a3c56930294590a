//! The engine comes to the values that others published or that other tools worked out.

use std::collections::{BTreeMap, BTreeSet};

use linkwright::engine::reference::{self, Reference, Tolerance};
use linkwright::source::Obtained;

#[test]
fn every_value_from_outside_is_reproduced() {
    let mut by_subject: BTreeMap<&str, usize> = BTreeMap::new();
    let mut told = Vec::new();
    for row in reference::all() {
        *by_subject.entry(row.subject).or_default() += 1;
        if !row.agrees() {
            let allowed = row.tolerance.allows(row.expected);
            told.push(format!(
                "{}: {} is {} {}, engine gives {}, allowed is {allowed}",
                row.id,
                row.name,
                row.expected,
                row.unit,
                row.found()
            ));
        }
    }
    for (subject, count) in &by_subject {
        println!("{count:4} {subject}");
    }
    let count: usize = by_subject.values().sum();
    println!("{count:4} in all");
    assert!(told.is_empty(), "{}", told.join("\n"));
    assert!(count >= 120, "only {count} reference values are left");
}

#[test]
fn every_row_says_what_it_is() {
    let mut ids = BTreeSet::new();
    for row in reference::all() {
        assert!(ids.insert(row.id), "{} stands twice", row.id);
        let kebab = row
            .id
            .split('-')
            .all(|part| !part.is_empty() && part.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit()));
        assert!(kebab, "{} is not in kebab case", row.id);
        assert!(
            !row.name.is_empty() && !row.source.is_empty() && !row.subject.is_empty(),
            "{} leaves a word out",
            row.id
        );
        assert!(row.factor > 0.0 && row.expected.is_finite(), "{} has no number", row.id);
        assert!(!matches!(row.obtained, Obtained::Practice | Obtained::Assumption), "{} is nobody's value", row.id);
    }
}

#[test]
fn rows_of_a_subject_stand_together() {
    let mut seen = Vec::new();
    for row in reference::all() {
        if seen.last() != Some(&row.subject) {
            assert!(!seen.contains(&row.subject), "{} stands in two places", row.subject);
            seen.push(row.subject);
        }
    }
}

#[test]
fn a_value_that_is_off_is_found_out() {
    let row = |expected, tolerance, compute| Reference {
        id: "row",
        subject: "Test",
        name: "a length",
        expected,
        unit: "mm",
        factor: 0.001,
        tolerance,
        source: "own arithmetic",
        obtained: Obtained::Computed,
        compute,
    };
    let meter: fn() -> f64 = || 1.0;
    assert!(row(1000.0, Tolerance::Exact, meter).agrees());
    assert!(!row(1_000.000_1, Tolerance::Exact, meter).agrees());
    assert!(row(1000.4, Tolerance::Absolute(0.5), meter).agrees());
    assert!(!row(1000.6, Tolerance::Absolute(0.5), meter).agrees());
    assert!(row(1009.0, Tolerance::Relative(0.01), meter).agrees());
    assert!(!row(1011.0, Tolerance::Relative(0.01), meter).agrees());
    assert!(!row(1000.0, Tolerance::Relative(0.5), || f64::NAN).agrees());
}

#[test]
fn every_tabled_thread_value_agrees_or_is_explained() {
    let rows = reference::tabled();
    let told: Vec<String> = rows
        .iter()
        .filter(|row| !row.accounted_for())
        .map(|row| format!("{} {}: tabled {}, by formula {}", row.thread.id, row.what, row.tabled, row.by_formula))
        .collect();
    assert!(told.is_empty(), "{}", told.join("\n"));
    // With the rows above, more than the 250 that this project set itself.
    assert!(rows.len() + reference::all().count() >= 250, "{} tabled", rows.len());
    assert_eq!(rows.iter().filter(|row| !row.agrees()).count(), 13, "a disagreement appeared or is gone");
}
