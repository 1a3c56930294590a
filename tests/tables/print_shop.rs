//! Drills, speeds, taps and stock beside a second list of them.

use linkwright::engine::tables::{drills, stock};
use linkwright::quantity::{inch, mm};

use crate::printed;

/// Letter drills in thousandths.
const LETTERS: [(&str, f64); 21] = [
    ("F", 257.0),
    ("G", 261.0),
    ("H", 266.0),
    ("I", 272.0),
    ("J", 277.0),
    ("K", 281.0),
    ("L", 290.0),
    ("M", 295.0),
    ("N", 302.0),
    ("O", 316.0),
    ("P", 323.0),
    ("Q", 332.0),
    ("R", 339.0),
    ("S", 348.0),
    ("T", 358.0),
    ("U", 368.0),
    ("V", 377.0),
    ("W", 386.0),
    ("X", 397.0),
    ("Y", 404.0),
    ("Z", 413.0),
];

#[test]
fn letter_drills_are_as_listed() {
    assert_eq!(drills::LETTERS.len(), LETTERS.len());
    for (row, (letter, thousandths)) in drills::LETTERS.iter().zip(LETTERS) {
        assert_eq!(row.id, letter);
        printed(letter, "diameter", row.diameter, thousandths, inch(0.001));
    }
}

#[test]
fn metric_drills_come_in_even_steps() {
    for pair in drills::METRIC.windows(2) {
        let (from, step) = (pair[0].diameter / mm(1.0), (pair[1].diameter - pair[0].diameter) / mm(1.0));
        // 10.25 stands between 10.2 and 10.3.
        let expected = if (10.2..10.29).contains(&(from + 1e-6)) {
            0.05
        } else if from < 13.99 {
            0.1
        } else if from < 24.99 {
            0.25
        } else if from < 31.99 {
            0.5
        } else {
            1.0
        };
        assert!((step - expected).abs() < 1e-9, "after {}: {step}", pair[0].id);
    }
    assert_eq!(
        (drills::METRIC.first().map(|row| row.id), drills::METRIC.last().map(|row| row.id)),
        (Some("7mm"), Some("38mm"))
    );
}

#[test]
fn speeds_feeds_and_taps_are_as_printed() {
    let speeds: Vec<_> = drills::DRILLING_SPEEDS.iter().map(|row| (row.id, row.feet_per_minute)).collect();
    assert_eq!(
        speeds,
        [
            ("aluminum", [200.0, 300.0]),
            ("low-carbon-steel", [80.0, 110.0]),
            ("alloy-steel", [50.0, 70.0]),
            ("stainless-steel", [30.0, 40.0]),
            ("hardened-alloy-steel", [20.0, 30.0])
        ]
    );
    let tapping: Vec<_> = drills::TAPPING_SPEEDS.iter().map(|row| (row.id, row.feet_per_minute)).collect();
    assert_eq!(
        tapping,
        [
            ("aluminum", [40.0, 130.0]),
            ("low-carbon-steel", [30.0, 60.0]),
            ("alloy-steel", [15.0, 35.0]),
            ("hardened-alloy-steel", [10.0, 25.0])
        ]
    );
    let taps: Vec<_> = drills::TAPS.iter().map(|row| (row.id, row.chamfer)).collect();
    assert_eq!(taps, [("taper", [7.0, 10.0]), ("plug", [3.0, 5.0]), ("bottoming", [1.0, 2.0])]);
    let thousandths = [(0.25, 0.5, 4.0, 7.0), (0.5, 1.0, 7.0, 15.0), (1.0, f64::INFINITY, 15.0, 25.0)];
    assert_eq!(drills::FEEDS.len(), thousandths.len());
    for (row, (over, up_to, least, most)) in drills::FEEDS.iter().zip(thousandths) {
        let at = format!("feed over {over}");
        printed(&at, "begins above", row.over, over, inch(1.0));
        assert!((up_to.is_infinite() && row.up_to.is_infinite()) || (row.up_to - inch(up_to)).abs() < 1e-12, "{at}");
        printed(&at, "least", row.per_turn[0], least, inch(0.001));
        printed(&at, "most", row.per_turn[1], most, inch(0.001));
    }
}

#[test]
fn stock_is_as_commonly_listed() {
    let all = |what: &str, held: &[f64], list: &[f64], unit: f64| {
        assert_eq!(held.len(), list.len(), "{what}");
        for (held, print) in held.iter().zip(list) {
            printed(what, &format!("{print}"), *held, *print, unit);
        }
    };
    // Eighths of an inch.
    all("bars", stock::BARS, &[8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 24.0], inch(0.125));
    all("bars in between", stock::BARS_BETWEEN, &[9.0, 11.0, 13.0, 15.0], inch(0.125));
    let metric = [25.0, 28.0, 30.0, 32.0, 35.0, 38.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0, 75.0];
    all("metric bars", stock::METRIC_BARS, &metric, mm(1.0));
    all("bars for sway-bar links", stock::SWAY_LINK_BARS, &[6.0, 7.0], inch(0.125));
    all("metric bars for sway-bar links", stock::METRIC_SWAY_LINK_BARS, &[20.0, 22.0], mm(1.0));
    // Outside diameter in eighths, walls in thousandths.
    let tubes: [(f64, &[f64]); 7] = [
        (8.0, &[95.0, 120.0]),
        (10.0, &[95.0, 120.0, 188.0, 250.0]),
        (12.0, &[95.0, 120.0, 188.0, 250.0]),
        (14.0, &[120.0, 188.0, 250.0]),
        (16.0, &[120.0, 188.0, 250.0, 375.0]),
        (18.0, &[250.0, 375.0]),
        (20.0, &[250.0, 375.0]),
    ];
    let listed: Vec<(f64, f64)> =
        tubes.iter().flat_map(|(outside, walls)| walls.iter().map(move |wall| (*outside, *wall))).collect();
    let mut held = stock::TUBES.to_vec();
    held.sort_by(|a, b| a.partial_cmp(b).expect("numbers"));
    assert_eq!(held.len(), listed.len());
    for ((outside, wall), (eighths, thousandths)) in held.iter().zip(listed) {
        printed("tube", "outside", *outside, eighths, inch(0.125));
        printed("tube", "wall", *wall, thousandths, inch(0.001));
    }
}
