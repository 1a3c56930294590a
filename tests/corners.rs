//! Links at the corners of what can be made: unlike ends, flats over holes, tall spacers, no push, no strike.

mod links;

use links::{answer, find, hard, sized};
use linkwright::document::*;
use linkwright::engine::formula::Line;
use linkwright::engine::sentence::spoken;
use linkwright::engine::{
    along, firmness, in_other_metals, neighbors, report,
    tables::{threads, threads::Limit},
};
use linkwright::inputs::At;
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::{LinkReport, Verdict};

fn impossible(document: &Document) -> String {
    match &report(document).links[0] {
        LinkReport::Impossible(says) => spoken(says, System::Inch),
        other => panic!("{other:?}"),
    }
}
fn used(document: &Document, id: &str) -> f64 {
    find(&answer(document), id).utilization.expect("a number")
}

#[test]
fn the_worse_of_two_unlike_ends_is_judged() {
    let (ab, ba) = (sized(2.25, "wide-12", "wide-16"), sized(2.25, "wide-16", "wide-12"));
    for id in [
        "tapped-end",
        "shank-bending",
        "thread-stripping",
        "shank-tension",
        "bolt-shear",
        "engagement",
        "visible-threads",
        "jam-nut-seat",
        "wall",
        "misalignment",
    ] {
        let (a, b) = (used(&ab, id), used(&ba, id));
        assert!((a / b - 1.0).abs() < 1e-3, "{id}: {a} {b}");
        let alone = used(&sized(2.25, "wide-12", "wide-12"), id).max(used(&sized(2.25, "wide-16", "wide-16"), id));
        if ["shank-tension", "wall"].contains(&id) {
            assert!((a - alone).abs() < 1e-9, "{id}: {a} of {alone}");
        }
        if id == "engagement" {
            assert!((a - alone).abs() < 0.01, "{id}: {a} of {alone}");
        }
    }
    let mut rated = hard();
    (rated.links[0].ends[0].rating, rated.links[0].ends[1].rating) = (Some(lbf(60_000.0)), Some(lbf(12_000.0)));
    let high = used(&rated, "maker-rating");
    (rated.links[0].ends[0].rating, rated.links[0].ends[1].rating) = (Some(lbf(12_000.0)), Some(lbf(60_000.0)));
    assert!((high - used(&rated, "maker-rating")).abs() < 1e-9 && high > 1.1, "{high}");
}

#[test]
fn a_tall_spacer_lets_the_ball_tilt_and_the_table_may_allow_less() {
    for (ends, tilt) in [("wide-14", 6.0), ("wide-16", 12.0), ("wide-12", 12.0)] {
        let mut document = sized(2.25, ends, ends);
        document.links[0].spacer = Some(inch(0.5));
        let answer = answer(&document);
        let found = find(&answer, "misalignment").working.iter().find_map(|line| match line {
            Line::LookedUp { what: "Tilt of the ball", value, .. } => Some(value.to_degrees()),
            _ => None,
        });
        assert!((found.expect("a tilt") - tilt).abs() < 1e-9, "{ends}: {found:?}");
    }
}

#[test]
fn a_push_that_folds_the_link_is_told_at_its_middle() {
    let mut document = sized(1.0, "wide-08", "wide-08");
    (document.links[0].length, document.links[0].own_axial) = (Some(inch(60.0)), Some(lbf(40_000.0)));
    let answer = answer(&document);
    let finding = find(&answer, "bar-bending");
    assert!((finding.station.expect("a place") - inch(30.0)).abs() < 1e-9);
    assert!(
        along(&document, 0).stations.is_empty() && spoken(&finding.says, System::Inch).contains("buckles this bar")
    );
}

#[test]
fn without_a_push_the_strike_alone_bends_the_bar() {
    let mut document = hard();
    document.links[0].own_axial = Some(0.0);
    let answer = answer(&document);
    let link = &answer.link;
    let moment = 1.25 * answer.loads.strike * link.length / 4.0;
    let along = along(&document, 0);
    let middle = along.stations.iter().find(|it| (it.x - link.length / 2.0).abs() < 1e-9).expect("a middle");
    assert!((middle.moment / moment - 1.0).abs() < 1e-9);
    let limits = in_other_metals(&document, 0)[0].same.as_ref().expect("a size").beyond.first_yield;
    assert!(limits > 1e4);
}

#[test]
fn what_cannot_be_made_is_told_why() {
    assert!(impossible(&sized(1.25, "wide-16", "wide-16")).contains("leaves no metal in a bar"));
    let mut cut = sized(2.25, "wide-16", "wide-16");
    (cut.links[0].flats_start, cut.links[0].flats_width) = (Some(inch(0.25)), Some(inch(1.2)));
    assert!(impossible(&cut).contains("flats are cut into the threaded hole"));
    let mut short = hard();
    short.links[0].length = Some(inch(7.5));
    for end in &mut short.links[0].ends {
        (end.rod_end, end.own_thread, end.own_eye_to_end, end.own_thread_length, end.own_bore) =
            (Some(OWN_ROD_END), Some("7/8-14"), Some(inch(5.0)), Some(inch(2.0)), Some(inch(0.75)));
    }
    assert!(impossible(&short).contains("too long for this link"));
    let mut wide = sized(2.25, "wide-16", "wide-16");
    wide.links[0].flats_width = Some(inch(2.25));
    assert_eq!(find(&answer(&wide), "wrench-flats").verdict, Verdict::Unanswered);
    assert!(!along(&wide, 0).stations.iter().any(|it| it.part == "wrench flats"));
}

#[test]
fn flats_over_a_hole_are_judged_with_the_hole() {
    let mut over = sized(2.25, "wide-16", "wide-16");
    over.links[0].flats_start = Some(inch(0.25));
    let answered = answer(&over);
    let finding = find(&answered, "wrench-flats");
    let thread = answered.link.ends[0].thread.major;
    let bored = |want: f64| {
        finding.working.iter().any(|line| matches!(line, Line::Worked { formula, given, .. } if formula.result.name.starts_with('I') && given.len() == 3 && (given[2] - want).abs() < 1e-12))
    };
    assert!(bored(thread), "{:?}", finding.working);
    assert!(
        finding.working.iter().any(
            |line| matches!(line, Line::Chose(says) if spoken(says, System::Inch).contains("over a drilled hole"))
        )
    );
    let mut turned = sized(2.0, "wide-12", "wide-12");
    (turned.links[0].length, turned.links[0].flats_length, turned.links[0].flats_start) =
        (Some(inch(18.0)), Some(inch(4.0)), Some(inch(4.9375)));
    let plain = used(&turned, "wrench-flats");
    for end in [0, 1] {
        let mut deep = turned.clone();
        deep.links[0].ends[end].tapped_depth = Some(inch(5.6));
        assert!(used(&deep, "wrench-flats") > plain * 1.0001, "{end}");
    }
}

#[test]
fn a_tube_weaker_in_tension_than_in_compression_is_judged_in_tension() {
    let mut tube = hard();
    (tube.rig.weight, tube.rig.usage, tube.links[0].length, tube.links[0].material) =
        (Some(lbf(3800.0)), Some(Use::Slow), Some(inch(36.0)), Some("4130-qt150"));
    let answer = answer(&tube);
    let row = answer.link.material.strength(answer.link.outside_diameter, answer.link.wall).expect("a strength");
    assert!(row.yield_tension < row.yield_compression);
    let finding = find(&answer, "bar-bending");
    let says = finding.working.iter().find_map(|line| match line {
        Line::Chose(says) => Some(spoken(says, System::Inch)).filter(|it| it.starts_with("Worst ")),
        _ => None,
    });
    assert!(says.as_deref().is_some_and(|it| it.starts_with("Worst in tension")), "{says:?} {finding:?}");
}

#[test]
fn a_ball_without_a_reading_is_as_wide_as_any() {
    let mut document = hard();
    for end in &mut document.links[0].ends {
        (end.rod_end, end.own_thread, end.own_eye_to_end, end.own_thread_length, end.own_bore) =
            (Some(OWN_ROD_END), Some("7/8-14"), Some(inch(3.5)), Some(inch(2.0)), Some(inch(0.75)));
    }
    let answer = answer(&document);
    assert!((answer.link.ends[0].ball_width - inch(1.05)).abs() < 1e-12);
    assert_eq!(answer.link.ends[0].rod_end_id, OWN_ROD_END);
}

#[test]
fn limits_are_read_by_name() {
    let thread = threads::find("1-1/4-12").expect("a thread");
    assert!(
        thread.limits().get(Limit::ExternalMajorMax) > inch(1.2)
            && Limit::ExternalMajorMax.of_screw()
            && !Limit::InternalMinorMin.of_screw()
    );
}

#[test]
fn a_tube_of_a_thinner_wall_is_the_next_smaller() {
    let mut tube = hard();
    (tube.rig.weight, tube.rig.usage, tube.links[0].length, tube.links[0].material) =
        (Some(lbf(2400.0)), Some(Use::Slow), Some(inch(36.0)), Some("4130-n"));
    let sizing = answer(&tube).sizing;
    let at = sizing.recommended.expect("a size");
    let [below, above] = neighbors(&tube, 0, &at).map(|it| it.expect("a size"));
    let key = |it: &linkwright::report::Candidate| (it.outside_diameter, it.wall);
    let tubes = linkwright::engine::tables::stock::TUBES;
    let index = tubes.iter().position(|row| *row == key(&at)).expect("stock");
    assert_eq!((tubes[index - 1], tubes[index + 1]), (key(&below), key(&above)));
}

#[test]
fn a_push_adds_its_moment_to_the_deflection() {
    use linkwright::engine::stepped::*;
    let steps = [
        Step { length: 0.1, modulus: 2e11, second_moment: 1e-8 },
        Step { length: 0.8, modulus: 7e10, second_moment: 4e-7 },
    ];
    // Hardly compressed, it deflects as a link without compression does.
    let levers = Levers::new(&steps, 1e-3 * critical_load(&steps));
    assert!(
        (levers.deflection(0.4, 0.4) / deflection_per_force(&steps, 0.4) - 1.0).abs() < 2e-3,
        "{}",
        levers.deflection(0.4, 0.4) / deflection_per_force(&steps, 0.4)
    );
}

#[test]
fn small_entries_count() {
    let mut a = sized(2.25, "wide-16", "wide-16");
    a.links[0].ends[0].tilt = Some(0.05);
    let mut b = sized(2.25, "wide-16", "wide-16");
    b.links[0].ends[1].tilt = Some(0.05);
    assert!((used(&a, "misalignment") - used(&b, "misalignment")).abs() < 1e-9);
    assert!(spoken(&find(&answer(&a), "misalignment").says, System::Inch).contains("end A"));
    let mut soft = sized(2.25, "wide-16", "wide-16");
    soft.rig.rest_deflection = Some(inch(0.2));
    let soft = answer(&soft);
    let line = |lines: &[Line]| {
        lines.iter().find_map(|l| match l {
            Line::Worked { formula, given, .. }
                if given.len() == 3 && formula.result.name == "δ" && formula.given[0].name == "w" =>
            {
                Some(given[2])
            }
            _ => None,
        })
    };
    for lines in [&soft.loads.working, &soft.notes[0].working] {
        let c = line(lines).expect("worked");
        assert!((c / (inch(0.2) / lbf(4100.0)) - 1.0).abs() < 1e-9, "{c}");
    }
    let ran_off = (0..16).any(|n| {
        let mut d = sized(2.25, "wide-16", "wide-16");
        d.links[0].length = Some(inch(38.0 + f64::from(n) / 16.0));
        d.links[0].rounding = Some(inch(0.5));
        d.links[0].visible_threads = Some(0.0);
        spoken(&find(&answer(&d), "visible-threads").says, System::Inch).contains("run off")
    });
    assert!(ran_off);
    let mut own = hard();
    for end in &mut own.links[0].ends {
        (end.rod_end, end.own_thread, end.own_eye_to_end, end.own_thread_length, end.own_bore) =
            (Some(OWN_ROD_END), Some("3/4-16"), Some(inch(3.5)), Some(inch(2.0)), Some(inch(0.75)));
    }
    assert!((answer(&own).link.ends[0].tapped_depth - inch(2.125)).abs() < 1e-9);
}

#[test]
fn the_limit_on_length_holds_however_the_bar_is_rounded() {
    // The limit on length is the one that holds however the bar is rounded, with a coarse rounding and unlike pitches.
    let place = At::default();
    for (a, b) in [("wide-16", "wide-16"), ("wide-16", "narrow-16")] {
        let mut d = sized(2.5, a, b);
        (d.rig.weight, d.rig.usage, d.links[0].length, d.links[0].rounding, d.links[0].visible_threads) =
            (Some(lbf(3500.0)), Some(Use::Slow), Some(inch(34.0)), Some(inch(0.25)), Some(1.5));
        let now = answer(&d);
        let firm = firmness(&d, 0).into_iter().find(|f| f.input == "length").expect("told");
        let Some(limit) = firm.most.filter(|l| *l > firm.now) else { panic!("{a} {b} {firm:?}") };
        let pitch = now.link.ends[0].thread.pitch.min(now.link.ends[1].thread.pitch);
        let shift = (inch(0.25) + inch(0.001)) / 4.0 / pitch;
        let passes = |length: f64, by: f64| {
            let mut t = d.clone();
            t.links[0].length = Some(length);
            t.links[0].rounding = Some(inch(0.001));
            t.links[0].visible_threads = Some((1.5 + by).clamp(0.0, 6.0));
            let _ = place;
            report(&t).links[0].answer().is_some_and(|a| a.verdict != Verdict::Fails)
        };
        let both = |length: f64| passes(length, shift) && passes(length, -shift);
        assert!(both(limit * (1.0 - 1e-6)) && !both(limit * (1.0 + 1e-6)), "{a} {b} {firm:?}");
    }
}

#[test]
fn a_jam_nut_wider_than_its_tube_is_said() {
    let mut thin = sized(1.5, "wide-16", "wide-16");
    (thin.links[0].material, thin.links[0].wall) = (Some("1026-dom"), Some(inch(0.12)));
    let answer = answer(&thin);
    let nut = find(&answer, "jam-nut-seat");
    assert_eq!(nut.verdict, Verdict::Fails);
    assert!(spoken(&nut.says, System::Inch).contains("wider than the bar"), "{nut:?}");
}

#[test]
fn nothing_lies_past_an_eye() {
    use linkwright::engine::stepped::{Levers, Step};
    let steps = [Step { length: 0.2, modulus: 2e11, second_moment: 1e-8 }; 3];
    let levers = Levers::new(&steps, 1000.0);
    assert!(levers.from_b(0.6 + 1e-12).abs() < 1e-9 && levers.from_a(0.0).abs() < 1e-12);
}
