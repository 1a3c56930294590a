//! What lies exactly on its limit passes, in every check; a millionth past it fails.

#[allow(dead_code, reason = "only its links are needed here")]
mod links;

use std::collections::BTreeSet;

use links::{hard, sized};
use linkwright::document::{Document, OWN_ROD_END, Role, ShankSteel, Spacers};
use linkwright::engine::report;
use linkwright::inputs::{self, At, Number};
use linkwright::quantity::{deg, inch, lbf, mm};
use linkwright::report::{Finding, LinkReport, Verdict};

/// A check, a link whose answer to it an entry carries past the limit, that entry, and where to look for it.
type Row = (&'static str, Document, &'static Number, [f64; 2]);

fn tube(outside: f64, wall: f64, rod_end: &'static str) -> Document {
    let mut document = sized(outside, rod_end, rod_end);
    (document.links[0].material, document.links[0].wall) = (Some("1026-dom"), Some(inch(wall)));
    document
}

fn with(mut document: Document, change: impl FnOnce(&mut Document)) -> Document {
    change(&mut document);
    document
}

/// Loads in so wide a range that the limit is within it.
const FORCE: [f64; 2] = [lbf(100.0), lbf(150_000.0)];

fn rows() -> Vec<Row> {
    let plain = || {
        with(sized(2.25, "wide-16", "wide-16"), |document| {
            (document.links[0].own_axial, document.links[0].own_strike) = (Some(lbf(5000.0)), Some(lbf(4000.0)));
            for end in &mut document.links[0].ends {
                (end.shank_steel, end.rating) = (Some(ShankSteel::Alloy), Some(lbf(40_000.0)));
            }
        })
    };
    let upper = || {
        with(plain(), |document| {
            (document.links[0].role, document.links[0].own_strike) = (Role::Upper, Some(0.0));
        })
    };
    let (axial, strike) = (&inputs::OWN_AXIAL, &inputs::OWN_STRIKE);
    vec![
        ("bar-bending", plain(), strike, FORCE),
        ("bar-bending", tube(2.0, 0.25, "wide-16"), strike, FORCE),
        ("bar-bending", with(tube(1.75, 0.25, "wide-14"), |it| it.links[0].role = Role::TieRod), strike, FORCE),
        ("tapped-end", plain(), strike, FORCE),
        ("tapped-end", tube(2.0, 0.25, "wide-16"), strike, FORCE),
        ("wrench-flats", plain(), strike, FORCE),
        ("buckling", plain(), axial, FORCE),
        (
            "compression-yield",
            with(sized(2.0, "wide-10", "wide-10"), |document| {
                (document.links[0].role, document.links[0].length) = (Role::Upper, Some(inch(24.0)));
            }),
            axial,
            FORCE,
        ),
        (
            "bent-bar",
            with(tube(1.5, 0.25, "wide-12"), |document| {
                (document.links[0].role, document.links[0].bend_offset) = (Role::TrackBar, Some(inch(2.0)));
            }),
            axial,
            FORCE,
        ),
        ("shank-bending", plain(), strike, FORCE),
        ("shank-tension", plain(), axial, FORCE),
        ("engagement", plain(), &inputs::LEAST_ENGAGEMENT, [inch(1.0), inch(1.6)]),
        ("thread-stripping", plain(), axial, FORCE),
        (
            "visible-threads",
            with(plain(), |it| (it.links[0].visible_threads, it.links[0].rounding) = (Some(3.0), Some(inch(0.5)))),
            &inputs::LENGTH,
            [inch(38.0), inch(38.5)],
        ),
        ("eye", plain(), axial, FORCE),
        ("maker-rating", plain(), axial, FORCE),
        ("bolt-shear", upper(), axial, FORCE),
        // By itself, and clamped.
        ("bolt-bending", with(upper(), |it| it.links[0].gap = Some(inch(0.125))), axial, FORCE),
        (
            "bolt-bending",
            with(upper(), |it| {
                (it.links[0].spacer, it.links[0].spacer_kind) = (Some(inch(0.6)), Some(Spacers::HighMisalignment));
                it.links[0].ends.iter_mut().for_each(|end| end.bolt_diameter = Some(inch(0.625)));
            }),
            axial,
            FORCE,
        ),
        ("ear-bearing", upper(), axial, FORCE),
        (
            "holes-meet",
            with(plain(), |it| it.links[0].length = Some(inch(16.0))),
            &inputs::TAPPED_DEPTH,
            [inch(2.0), inch(6.0)],
        ),
        ("bottoming", plain(), &inputs::TAPPED_DEPTH, [inch(1.0), inch(3.0)]),
        ("misalignment", plain(), &inputs::TILT, [deg(1.0), deg(20.0)]),
        ("misalignment", plain(), &inputs::FLEX, [inch(1.0), inch(25.0)]),
        ("thin-tube", tube(2.0, 0.25, "wide-12"), &inputs::WALL, [inch(0.02), inch(0.3)]),
        ("wall", plain(), &inputs::OUTSIDE_DIAMETER, [inch(1.5), inch(2.5)]),
        ("wall", tube(2.0, 0.25, "wide-16"), &inputs::WALL, [inch(0.2), inch(0.3)]),
    ]
}

fn entered(document: &Document, input: &Number, value: f64) -> Document {
    let mut document = document.clone();
    for end in [0, 1] {
        (input.set)(&mut document, At { end, ..At::default() }, Some(value));
    }
    document
}

fn asked(document: &Document, id: &str) -> Option<Finding> {
    match &report(document).links[0] {
        LinkReport::Answer(answer) => answer.findings.iter().find(|finding| finding.id == id).cloned(),
        _ => None,
    }
}

/// A link whose check comes to a number within 1e-12 of it, on the side that is asked for; by halving between the first
/// two of some values of the entry that lie on either side of it.
fn reaches(row: &Row, wanted: f64, measure: fn(&Finding) -> Option<f64>) -> Option<Finding> {
    let (id, document, input, [least, most]) = row;
    let at = |value: f64| asked(&entered(document, input, value), id);
    let over = |value: f64| at(value).as_ref().and_then(measure).map(|used| used > wanted);
    let steps = 60;
    let value = |step: u32| least + (most - least) * f64::from(step) / f64::from(steps);
    for step in 0..steps {
        let (mut a, mut b) = (value(step), value(step + 1));
        let (Some(first), Some(second)) = (over(a), over(b)) else { continue };
        if first == second {
            continue;
        }
        for _ in 0..80 {
            let middle = (a + b) / 2.0;
            if over(middle) == Some(first) { a = middle } else { b = middle }
        }
        let near = [a, b]
            .into_iter()
            .filter_map(at)
            .find(|finding| measure(finding).is_some_and(|used| (used - wanted).abs() <= 1e-12));
        if near.is_some() {
            return near;
        }
    }
    None
}

#[test]
fn exactly_on_its_limit_passes_in_every_check() {
    for row in &rows() {
        let to_failure = |finding: &Finding| finding.to_failure;
        let (id, input) = (row.0, row.2.id);
        let on = reaches(row, 1.0, to_failure).unwrap_or_else(|| panic!("{id} by {input}: no link on its limit"));
        assert!(!matches!(on.verdict, Verdict::Fails | Verdict::Unanswered), "{id} by {input}: {on:?}");
        let past = reaches(row, 1.0 + 1e-6, to_failure).unwrap_or_else(|| panic!("{id} by {input}: none past it"));
        assert_eq!(past.verdict, Verdict::Fails, "{id} by {input}: {past:?}");
        assert!(!past.recommendable, "{id} by {input}");
    }
}

/// Strength is called close from 90 % up, and 90 % itself is not.
#[test]
fn exactly_at_90_percent_has_margin() {
    let steel = |row: &Row| row.1.links[0].material.is_some();
    let mut asked = 0;
    for row in rows().iter().filter(|row| !steel(row)) {
        let (id, input) = (row.0, row.2.id);
        // On a condition they pass whatever is used of them.
        if id == "bolt-bending" || id == "shank-bending" {
            continue;
        }
        let used = |finding: &Finding| finding.utilization.filter(|_| !finding.rule);
        let Some(on) = reaches(row, 0.9, used) else { continue };
        assert_eq!(on.verdict, Verdict::Passes, "{id} by {input}: {on:?}");
        let past = reaches(row, 0.9 + 1e-6, used).unwrap_or_else(|| panic!("{id} by {input}"));
        assert_eq!(past.verdict, Verdict::Close, "{id} by {input}: {past:?}");
        asked += 1;
    }
    assert!(asked >= 10, "{asked}");
}

/// The jam nut is as wide as its bar, or a hair wider.
#[test]
fn a_jam_nut_as_wide_as_its_bar_passes() {
    let at = |outside: f64| {
        let document = entered(&tube(2.0, 0.25, "wide-16"), &inputs::OUTSIDE_DIAMETER, outside);
        asked(&document, "jam-nut-seat").expect("asked")
    };
    let across = match &report(&tube(2.0, 0.25, "wide-16")).links[0] {
        LinkReport::Answer(answer) => answer.link.ends[0].jam_nut_across,
        other => panic!("{other:?}"),
    };
    for share in [1.0, 1.0 + 1e-12, 1.0 - 1e-12] {
        let on = at(share * across);
        assert_eq!(on.verdict, Verdict::Passes, "{share}: {on:?}");
        assert!(on.utilization.is_some_and(|used| used < 0.999), "the seat is judged, {share}: {on:?}");
    }
    assert_eq!(at(across * (1.0 - 1e-6)).verdict, Verdict::Fails);
}

/// Inserts of 1/8 in of wall, which is what is required of them.
#[test]
fn tubes_that_their_inserts_just_fit_pass() {
    for (outside, wall, rod_end) in [(2.0, 0.25, "wide-16"), (1.5, 0.25, "wide-12")] {
        let finding = asked(&tube(outside, wall, rod_end), "wall").expect("asked");
        let used = finding.utilization.expect("a number");
        assert!((used - 1.0).abs() < 1e-9 && finding.verdict == Verdict::Passes, "{outside} x {wall}: {finding:?}");
        assert!(finding.recommendable);
        // The same tube in millimeters, to their last digit.
        let metric = with(tube(outside, wall, rod_end), |it| {
            (it.links[0].outside_diameter, it.links[0].wall) = (Some(mm(outside * 25.4)), Some(mm(wall * 25.4)));
        });
        assert_eq!(asked(&metric, "wall").expect("asked").verdict, Verdict::Passes);
    }
}

/// A check that is new must be held on its limit too.
#[test]
fn every_check_is_among_them() {
    let mut documents: Vec<Document> = rows().into_iter().map(|row| row.1).collect();
    documents.push(with(hard(), |document| document.links[0].ends[0].rod_end = Some(OWN_ROD_END)));
    for role in [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod, Role::DragLink, Role::SwayLink] {
        documents.push(with(hard(), |document| document.links[0].role = role));
    }
    let seen: BTreeSet<&str> = documents
        .iter()
        .filter_map(|document| {
            report(document).links[0].answer().map(|it| it.findings.iter().map(|it| it.id).collect())
        })
        .flat_map(|ids: Vec<&str>| ids)
        .collect();
    let mut held: BTreeSet<&str> = rows().iter().map(|row| row.0).collect();
    held.insert("jam-nut-seat");
    assert_eq!(seen, held);
}
