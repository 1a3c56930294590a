//! What a bar weighs, beside its solid summed up in slices: drilled with its point, tapped along a helix, countersunk,
//! flatted.

use super::made;
use crate::links::sized;
use linkwright::engine::tables::drills;
use linkwright::quantity::inch;
use linkwright::report::{EndGeometry, LinkGeometry};
use std::f64::consts::{PI, TAU};

/// Radius of the hole's wall at a depth and an angle around it.
fn wall(end: &EndGeometry, drill: f64, depth: f64, around: f64, countersink: f64) -> f64 {
    let (pitch, drilled) = (end.thread.pitch, drill / 2.0);
    let point = (end.drill_depth + drilled / (59.0_f64).to_radians().tan() - depth) * (59.0_f64).to_radians().tan();
    let bore = if depth <= end.drill_depth { drilled } else { point.clamp(0.0, drilled) };
    let sunk = countersink / 2.0 - depth;
    if depth > end.tapped_depth {
        return bore.max(sunk);
    }
    // The groove winds once around for each pitch; how far this place is from its middle.
    let turns = depth / pitch - around / TAU;
    let off = (turns - turns.round()).abs() * pitch;
    let groove = end.thread.major / 2.0 - (off - pitch / 16.0).max(0.0) * 3.0_f64.sqrt();
    bore.max(groove).max(sunk)
}

/// Volume of a hole by slices across it, each by its radius all around.
fn hole(end: &EndGeometry, countersink: f64) -> f64 {
    let drill = drills::tap_drill(end.thread).expect("listed").drill.diameter;
    let deep = end.drill_depth + drill;
    let (slices, rays) = (6000, 48);
    let slice = |index: usize| -> f64 {
        let depth = (index as f64 + 0.5) * deep / slices as f64;
        let ray = |index: usize| wall(end, drill, depth, index as f64 * TAU / rays as f64, countersink).powi(2);
        (0..rays).map(ray).sum::<f64>() / rays as f64 * PI
    };
    (0..slices).map(slice).sum::<f64>() * deep / slices as f64
}

/// Area of a round bar between flats, by strips.
fn between_flats(outside: f64, width: f64) -> f64 {
    let strips = 20_000;
    let strip = |index: usize| {
        let at = (index as f64 + 0.5) / strips as f64 * width - width / 2.0;
        2.0 * (outside * outside / 4.0 - at * at).max(0.0).sqrt()
    };
    (0..strips).map(strip).sum::<f64>() * width / strips as f64
}

fn weighed(made: &LinkGeometry) -> f64 {
    let round = PI / 4.0 * made.outside_diameter.powi(2);
    let holes: f64 = made.ends.iter().map(|end| hole(end, end.thread.major + inch(1.0 / 64.0))).sum();
    let flats = made.flats.expect("flats");
    let cut = (round - between_flats(made.outside_diameter, flats.width)) * flats.length;
    made.material.density * (round * made.bar - holes - cut)
}

#[test]
fn a_bar_weighs_what_its_solid_weighs() {
    let bars = [
        (1.25, "wide-10", "wide-10", "7075-t6", 0.0),
        (1.5, "wide-12", "wide-12", "6061-t6", 0.0),
        (2.0, "wide-16", "wide-16", "7075-t6", 0.0),
        (2.0, "wide-12", "wide-16", "7075-t6", 0.03),
        (1.75, "k-20", "k-16", "2024-t351", 0.02),
    ];
    for (size, a, b, metal, skim) in bars {
        let mut document = sized(size, a, b);
        document.links[0].material = Some(metal);
        document.links[0].skim = (skim > 0.0).then_some(inch(skim));
        let (answer, route) = made(&document);
        let expected = weighed(&answer.link);
        let finished = route.finished_weight.expect("a bar");
        let off = finished / expected - 1.0;
        assert!(off.abs() < 3e-4, "{size} in with {a}: {off:+.5}");
        // The answer's own weight takes each hole as wide as its thread to the shoulder, and leaves the flats.
        let rough = answer.link.bar_weight / expected - 1.0;
        assert!(rough.abs() < 0.015, "{size} in with {a}: {rough:+.4}");
        let blank = answer.link.material.density * PI / 4.0 * answer.link.stock_diameter.powi(2) * answer.link.cut;
        assert!((route.blank_weight / blank - 1.0).abs() < 1e-12);
    }
}
