//! A link of several sections against closed forms, against itself cut finer, and against the checks that use it.
#![cfg(not(target_arch = "wasm32"))]

use linkwright::document::{Document, Use};
use linkwright::engine::formulas::{beams, columns, sections};
use linkwright::engine::report;
use linkwright::engine::stepped::{Levers, Step, critical_load, deflection_per_force, length};
use linkwright::quantity::{inch, lbf};
use proptest::prelude::*;

/// Pieces of a link: length in in, modulus in ksi by metal, diameter in in.
fn steps() -> impl Strategy<Value = Vec<Step>> {
    let piece = (0.5..20.0, prop_oneof![Just(10_300.0), Just(29_000.0)], 0.6..2.75);
    prop::collection::vec(piece, 1..9).prop_map(|pieces| {
        let step = |(length, modulus, diameter)| Step {
            length: inch(length),
            modulus: linkwright::quantity::ksi(modulus),
            second_moment: sections::RING_SECOND_MOMENT.value(&[inch(diameter), 0.0]),
        };
        pieces.into_iter().map(step).collect()
    })
}

fn close(a: f64, b: f64, share: f64) -> bool {
    (a - b).abs() <= share * a.abs().max(b.abs())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn one_section_gives_the_closed_forms(steps in steps(), at in 0.05..0.95, x in 0.0..1.0, push in 0.01..0.95) {
        let one = Step { length: length(&steps), ..steps[0] };
        let whole = one.length;
        // The same section, cut into as many pieces.
        let cut: Vec<Step> = steps.iter().map(|step| Step { length: step.length, ..one }).collect();
        let euler = columns::EULER_LOAD.value(&[one.modulus, one.second_moment, whole]);
        prop_assert!(close(critical_load(&cut), euler, 1e-12), "{} for {euler}", critical_load(&cut));
        let at = at * whole;
        let give = beams::DEFLECTION_UNDER_LOAD.value(&[1.0, at, whole - at, one.modulus, one.second_moment, whole]);
        prop_assert!(close(deflection_per_force(&cut, at), give, 1e-12));
        let push = push * euler;
        let wave = columns::WAVE_NUMBER.value(&[push, one.modulus, one.second_moment]);
        let x = x * at;
        let moment = columns::BEAM_COLUMN_MOMENT.value(&[1.0, wave, whole - at, x, whole]);
        let levers = Levers::new(&cut, push);
        prop_assert!(close(levers.moment(x, at), moment, 1e-10), "{} for {moment}", levers.moment(x, at));
    }

    #[test]
    fn a_load_here_bends_there_as_a_load_there_bends_here(
        steps in steps(), a in 0.05..0.95, b in 0.05..0.95, push in 0.05..0.95,
    ) {
        let whole = length(&steps);
        let levers = Levers::new(&steps, push * critical_load(&steps));
        let (here, there) = (levers.deflection(a * whole, b * whole), levers.deflection(b * whole, a * whole));
        prop_assert!(close(here, there, 1e-9), "{here} and {there}");
        // A push makes every deflection larger, and the moment that it adds is the push times the deflection.
        prop_assert!(levers.deflection(a * whole, a * whole) >= deflection_per_force(&steps, a * whole) * (1.0 - 1e-9));
    }

    #[test]
    fn no_strike_in_its_zone_bends_a_place_more_than_the_worst(
        steps in steps(), station in 0.0..1.0, begins in 0.01..0.5, push in 0.0..0.95,
    ) {
        let whole = length(&steps);
        let levers = Levers::new(&steps, push * critical_load(&steps));
        let (station, zone) = (station * whole, [begins * whole, (1.0 - begins) * whole]);
        let (near, far) = levers.worst(station, zone);
        let worst = near * far / levers.whole();
        let mut found: f64 = 0.0;
        for count in 0..=200 {
            let at = zone[0] + (zone[1] - zone[0]) * f64::from(count) / 200.0;
            found = found.max(levers.moment(station, at));
        }
        prop_assert!(found <= worst * (1.0 + 1e-9) + 1e-15, "{found} is more than {worst}");
        prop_assert!(found >= worst * 0.99 - 1e-15, "{found} is far from {worst}");
    }

    #[test]
    fn a_link_folds_between_its_softest_and_its_stiffest_section(steps in steps()) {
        let whole = length(&steps);
        let bounds = steps.iter().map(|step| columns::EULER_LOAD.value(&[step.modulus, step.second_moment, whole]));
        let (least, most) = bounds.fold((f64::INFINITY, 0.0_f64), |(a, b), load| (a.min(load), b.max(load)));
        let folding = critical_load(&steps);
        prop_assert!(folding >= least * (1.0 - 1e-9) && folding <= most * (1.0 + 1e-9), "{least} {folding} {most}");
        // Nothing is left of the lever from eye to eye, and just below it something is.
        let below = Levers::new(&steps, folding * 0.999);
        prop_assert!(below.whole() > 0.0 && below.stand());
        let above = Levers::new(&steps, folding * 1.001);
        prop_assert!(above.whole() < 0.0 && !above.stand());
        for many in [2.0, 5.0, 9.0, 30.0] {
            prop_assert!(!Levers::new(&steps, folding * many).stand(), "stands at {many} times the push that folds it");
        }
        // Seen from the other end it is the same link.
        let turned: Vec<Step> = steps.iter().rev().copied().collect();
        prop_assert!(close(critical_load(&turned), folding, 1e-10));
    }
}

fn answer(document: &Document) -> linkwright::report::Answer {
    report(document).links[0].answer().expect("an answer").clone()
}

fn link(weight: f64, length: f64, usage: Use) -> Document {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(weight));
    document.rig.usage = Some(usage);
    document.links[0].length = Some(inch(length));
    document
}

#[test]
fn the_picture_along_the_link_says_what_the_checks_say() {
    for (weight, length, usage, material) in [
        (4100.0, 38.0, Use::Hard, None),
        (2500.0, 30.0, Use::Slow, Some("6061-t6")),
        (5200.0, 44.0, Use::Easy, Some("1026-dom")),
        (4000.0, 40.0, Use::Punished, None),
    ] {
        let mut document = link(weight, length, usage);
        document.links[0].material = material.filter(|id| linkwright::engine::tables::materials::find(id).is_some());
        let answer = answer(&document);
        let along = linkwright::engine::along(&document, 0);
        let stations = &along.stations;
        assert!(stations.windows(2).all(|pair| pair[0].x <= pair[1].x + 1e-12), "stations go from eye A to eye B");
        for id in ["bar-bending", "tapped-end", "wrench-flats", "shank-bending"] {
            let Some(finding) = answer.findings.iter().find(|finding| finding.id == id) else { continue };
            // The shank is also asked at its outward stop; the picture shows the link as set.
            let used = if id == "shank-bending" { finding.to_failure } else { finding.utilization };
            let (used, at) = (used.expect("a number"), finding.station.expect("a place"));
            let same = |station: &&linkwright::report::Station| {
                (station.x - at).abs() < 1e-6 && (station.utilization - used).abs() < 1e-9
            };
            assert!(stations.iter().any(|station| same(&station)), "{id}: {used} at {at} is not in the picture");
        }
        // Where the moment is more than the strength, the metal is used up.
        for station in stations {
            assert!(station.moment <= station.strength || station.utilization > 1.0, "{station:?}");
        }
        let weakest = along.weakest.expect("a weakest place");
        assert!(stations.iter().all(|station| station.utilization <= stations[weakest].utilization));
        // The picture shows nothing weaker than what some check has judged.
        let judged = ["bar-bending", "tapped-end", "wrench-flats", "shank-bending"];
        let used = answer.findings.iter().filter(|it| judged.contains(&it.id)).filter_map(|it| it.utilization);
        let used = used.fold(0.0, f64::max);
        assert!(stations[weakest].utilization <= used + 1e-9, "{used}, but {:?}", stations[weakest]);
    }
}
