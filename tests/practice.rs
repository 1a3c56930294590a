//! The sizes that builders settle on come out of the numbers (common practice, no source).

use linkwright::document::{Document, Use};
use linkwright::engine::report;
use linkwright::quantity::{inch, lbf};
use linkwright::share;

/// Rig weight in lb, length in in, use, diameter by the numbers in in, thread.
const SCENARIOS: [(f64, f64, Use, f64, &str); 7] = [
    (3500.0, 34.0, Use::Slow, 2.0, "1-1/4-12"),
    (3500.0, 38.0, Use::Slow, 2.0, "1-1/4-12"),
    (2500.0, 34.0, Use::Slow, 1.75, "7/8-14"),
    (4100.0, 38.0, Use::Hard, 2.25, "1-1/4-12"),
    (4800.0, 40.0, Use::Hard, 2.5, "1-1/4-12"),
    (4000.0, 40.0, Use::Punished, 2.5, "1-1/4-12"),
    (4500.0, 38.0, Use::Easy, 2.25, "1-1/4-12"),
];

#[test]
fn the_numbers_arrive_at_what_builders_fit() {
    for (weight, length, usage, diameter, thread) in SCENARIOS {
        let mut document = Document::default();
        document.rig.weight = Some(lbf(weight));
        document.rig.usage = Some(usage);
        document.links[0].length = Some(inch(length));
        let report = report(&document);
        let found = report.links[0].answer().and_then(|answer| answer.sizing.by_numbers.clone());
        let found = found.map(|size| (format!("{:.3}", size.outside_diameter / inch(1.0)), size.thread));
        assert_eq!(found, Some((format!("{diameter:.3}"), thread)), "{weight} lb, {length} in, {usage:?}");
        let fragment = share::to_fragment(&document);
        let opened = share::from_fragment(&fragment);
        assert_eq!((opened.document, opened.told.len()), (document, 0), "{fragment} opens as it was sent");
        assert!(fragment.len() < 200, "{fragment}");
    }
}
