//! The force along each kind of link and what it does to the whole of it: tables of values worked apart from the engine.

use std::sync::Arc;

use linkwright::builds::{Build, from_text, to_text};
use linkwright::document::{
    Document, Link, Position, Role, Side, SteeringBox, SwayMeasured, TieRodSide, TrackBar, Use,
};
use linkwright::engine::formula::Line;
use linkwright::engine::formulas::{beams, columns, sections};
use linkwright::engine::report;
use linkwright::engine::sentence::spoken;
use linkwright::inputs::{self, At};
use linkwright::quantity::{INCH, POUND_FORCE, System, deg, inch, ksi, lbf};
use linkwright::report::{Answer, Finding, LinkReport, Verdict};
use linkwright::share::from_fragment;

fn rig(role: Role, weight: f64, usage: Use, length: f64) -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(weight)), Some(usage));
    document.links = vec![Link { role, length: Some(inch(length)), ..Link::default() }];
    document
}

fn answer(document: &Document) -> Arc<Answer> {
    match report(document).links.swap_remove(0) {
        LinkReport::Answer(answer) => answer,
        LinkReport::Impossible(why) => panic!("{}", spoken(&why, System::Inch)),
        LinkReport::Needs(needs) => panic!("{needs:?}"),
    }
}

/// The force along the first link, in lbf.
fn axial(document: &Document) -> f64 {
    answer(document).loads.axial / POUND_FORCE
}

/// Why there is no answer.
fn refused(document: &Document) -> String {
    match report(document).links.swap_remove(0) {
        LinkReport::Impossible(why) => spoken(&why, System::Inch),
        other => panic!("{other:?}"),
    }
}

fn story(document: &Document) -> String {
    spoken(&answer(document).loads.story, System::Inch)
}

fn cautions(document: &Document) -> String {
    answer(document).cautions.iter().map(|said| spoken(said, System::Inch)).collect::<Vec<_>>().join("\n")
}

/// What a formula gave on the way to the loads, in lbf.
fn worked(document: &Document, id: &str) -> f64 {
    let answer = answer(document);
    let found = answer.loads.working.iter().find_map(|line| match line {
        Line::Worked { formula, result, .. } if formula.id == id => Some(*result),
        _ => None,
    });
    found.unwrap_or_else(|| panic!("{id} was not worked")) / POUND_FORCE
}

fn find<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    answer.findings.iter().find(|finding| finding.id == id).unwrap_or_else(|| panic!("{id}"))
}

fn close(found: f64, expected: f64, digits: f64, what: &str) {
    assert!((found - expected).abs() <= digits, "{what}: {found}, expected {expected}");
}

#[test]
fn converging_uppers_carry_the_side_load() {
    // Half-angle in plan (none: traction only, at 30°), then slow and hard for 3,500, 4,500 and 6,000 lb.
    let rows: [(Option<f64>, [[f64; 2]; 3]); 4] = [
        (None, [[2863.0, 3435.0], [3681.0, 4417.0], [4907.0, 5889.0]]),
        (Some(20.0), [[4657.0, 5588.0], [5987.0, 7185.0], [7983.0, 9580.0]]),
        (Some(30.0), [[3884.0, 4661.0], [4994.0, 5992.0], [6658.0, 7990.0]]),
        (Some(45.0), [[3967.0, 4761.0], [5101.0, 6121.0], [6801.0, 8161.0]]),
    ];
    for (angle, forces) in rows {
        for (weight, forces) in [3500.0, 4500.0, 6000.0].into_iter().zip(forces) {
            for (usage, force) in [Use::Slow, Use::Hard].into_iter().zip(forces) {
                let mut document = rig(Role::Upper, weight, usage, 30.0);
                document.links[0].plan_angle = Some(deg(angle.unwrap_or(30.0)));
                document.rig.axles[0].track_bar = angle.is_none().then_some(TrackBar::Fitted);
                close(axial(&document), force, 0.5, &format!("{angle:?}, {weight} lb, {usage:?}"));
            }
        }
    }
}

#[test]
fn an_upper_in_its_worst_direction() {
    let mut document = rig(Role::Upper, 4100.0, Use::Hard, 30.0);
    close(axial(&document), 5459.8, 0.05, "worst");
    close(1.5 * worked(&document, "PER_LINK"), 4024.1, 0.05, "traction");
    close(1.5 * worked(&document, "CONVERGING_SIDE"), 3690.0, 0.05, "side");
    let said = story(&document);
    assert!(said.contains("Does this axle have a track bar? Not known: taken as none, 30°."), "{said}");
    assert!(said.contains("A bound, not the load it is sized for") && said.contains("7,714 lbf"), "{said}");
    document.rig.axles[0].track_bar = Some(TrackBar::Absent);
    close(axial(&document), 5459.8, 0.05, "known to have none");
    assert!(!story(&document).contains("Does this axle"), "what was answered is not asked");
    document.rig.axles[0].track_bar = Some(TrackBar::Fitted);
    close(axial(&document), 4024.1 * 0.75_f64.sqrt(), 0.05, "straight ahead, as four links with a track bar run");
    assert!(!story(&document).contains("A bound"), "nothing sideways is left");
}

#[test]
fn a_track_bar_in_the_document_takes_the_side_load_of_its_axle() {
    let mut document = rig(Role::Upper, 4100.0, Use::Hard, 30.0);
    let bar = |position| Link { role: Role::TrackBar, position, length: Some(inch(34.0)), ..Link::default() };
    document.links.push(bar(Position::Rear));
    close(axial(&document), 5459.8, 0.05, "the other axle's bar");
    document.links.push(bar(Position::Front));
    let place = At::of_link(&document, 0);
    assert_eq!(inputs::TRACK_BAR.value(&document, place), Some("yes"));
    assert_eq!(inputs::PLAN_ANGLE.value(&document, place), Some(0.0));
    close(axial(&document), 3485.0, 0.05, "its own");
    document.rig.axles[0].track_bar = Some(TrackBar::Absent);
    close(axial(&document), 5459.8, 0.05, "what the user says wins");
}

#[test]
fn too_little_convergence_is_refused_where_it_was_entered() {
    let mut document = rig(Role::Upper, 4100.0, Use::Hard, 30.0);
    for (angle, refuses, warns) in
        [(0.0, true, false), (14.9, true, false), (15.0, false, true), (19.9, false, true), (20.0, false, false)]
    {
        document.links[0].plan_angle = Some(deg(angle));
        document.rig.axles[0].track_bar = None;
        if refuses {
            assert!(refused(&document).contains("converge too little"), "{angle}");
        } else {
            assert_eq!(cautions(&document).contains("hold the axle sideways poorly"), warns, "{angle}");
        }
        document.rig.axles[0].track_bar = Some(TrackBar::Fitted);
        assert!(!cautions(&document).contains("sideways"), "{angle} with a track bar");
    }
    document.rig.axles[0].track_bar = None;
    document.links[0].plan_angle = Some(0.0);
    document.links[0].own_axial = Some(lbf(4000.0));
    close(axial(&document), 4000.0, 1e-6, "an own force needs no angle");
}

#[test]
fn a_single_upper_needs_a_track_bar() {
    let mut document = rig(Role::Upper, 4100.0, Use::Hard, 30.0);
    document.links[0].seat = Some(Side::Middle);
    close(axial(&document), 6970.0, 0.05, "all of the pair's force, no side load");
    assert!(story(&document).contains("Not known: taken to have one"), "{}", story(&document));
    document.rig.axles[0].track_bar = Some(TrackBar::Absent);
    assert!(refused(&document).contains("single upper link cannot hold"));
}

#[test]
fn uneven_grip_loads_one_lower_link_more() {
    let mut document = rig(Role::Lower, 5000.0, Use::Easy, 38.0);
    document.rig.axles[0].lower_height = Some(inch(16.5));
    document.rig.axles[0].upper_height = Some(inch(25.5));
    close(axial(&document), 4250.0, 0.01, "even grip");
    document.rig.axles[0].grip_offset = Some(inch(32.5));
    close(axial(&document), 6687.5, 0.01, "one wheel with all the grip, lowers 40 in apart");
    document.rig.axles[0].lower_spread = Some(inch(30.0));
    close(axial(&document), 4250.0 + 3250.0, 0.01, "closer together");
    document.links[0].role = Role::Upper;
    document.rig.axles[0].track_bar = Some(TrackBar::Fitted);
    close(axial(&document), 2750.0, 0.01, "parallel uppers take none of it");
}

#[test]
fn steering_takes_the_largest_of_scrub_obstacle_box_and_ram() {
    let mut document = rig(Role::TieRod, 5000.0, Use::Hard, 50.0);
    close(worked(&document, "OBSTACLE_FORCE"), 3230.8, 0.05, "obstacle");
    close(worked(&document, "BOX_FORCE"), 3333.3, 0.05, "box");
    close(worked(&document, "SCRUB_FORCE"), 1201.6, 0.05, "scrub");
    close(axial(&document), 3333.3, 0.05, "the box decides");
    document.rig.steering_box = Some(SteeringBox::Unassisted);
    close(axial(&document), 3230.8, 0.05, "with a rack the obstacle does");
    document.rig.box_force = Some(lbf(4000.0));
    close(axial(&document), 4000.0, 1e-6, "an entered force takes precedence");
    document.rig.box_force = None;
    document.links[0].role = Role::DragLink;
    close(worked(&document, "SCRUB_FORCE"), 2403.2, 0.1, "a drag link turns both wheels");
    document.links[0].role = Role::TieRod;
    document.rig.cylinder_bore = Some(inch(2.5));
    close(axial(&document), 7363.1, 0.05, "a ram pushes with its full bore");
    document.rig.cylinder_rod = Some(inch(1.25));
    close(axial(&document), 7363.1, 0.05, "whatever its rod");
}

#[test]
fn a_rack_is_assumed_in_light_rigs() {
    for (weight, expected) in [(2499.0, "rack"), (2500.0, "power"), (4000.0, "power")] {
        let document = rig(Role::TieRod, weight, Use::Easy, 50.0);
        assert_eq!(inputs::STEERING_BOX.value(&document, At::default()), Some(expected), "{weight}");
        let force = if expected == "rack" { 1500.0 } else { 3333.3 };
        let by_default = inputs::BOX_FORCE.value(&document, At::default()).expect("a default") / POUND_FORCE;
        close(by_default, force, 0.05, expected);
        close(axial(&document), force, 0.05, "nothing else is larger");
    }
}

#[test]
fn a_tie_rod_ahead_of_the_axle_is_hit_harder() {
    let part = |role, side, own: Option<f64>| {
        let mut document = rig(role, 4000.0, Use::Slow, 40.0);
        document.links[0].tie_rod_side = side;
        document.rig.upper_strike = own;
        document.rig.strike_share = Some(0.5);
        answer(&document).loads.strike_weight / (0.5 * lbf(4000.0))
    };
    for (role, side, own, expected) in [
        (Role::Lower, None, None, 1.0),
        (Role::Upper, None, None, 0.15),
        (Role::TieRod, None, None, 0.10),
        (Role::TieRod, Some(TieRodSide::Behind), None, 0.10),
        (Role::TieRod, Some(TieRodSide::Ahead), None, 0.20),
        (Role::Upper, Some(TieRodSide::Ahead), None, 0.15),
        (Role::TieRod, Some(TieRodSide::Ahead), Some(0.3), 0.3),
        (Role::TrackBar, None, Some(0.3), 0.0),
        (Role::DragLink, None, Some(0.3), 0.0),
        (Role::SwayLink, None, Some(0.3), 0.0),
    ] {
        close(part(role, side, own), expected, 1e-12, &format!("{role:?}, {side:?}, {own:?}"));
    }
}

#[test]
fn a_sloping_track_bar_takes_more() {
    let mut document = rig(Role::TrackBar, 4000.0, Use::Slow, 34.0);
    close(axial(&document), 3000.0, 1e-6, "level");
    document.links[0].slope = Some(deg(20.0));
    close(axial(&document), 3192.5, 0.05, "20°");
}

/// A torsion bar between two arms: its force goes with the twist, which is the travel of both ends over the arm.
#[test]
fn a_sway_bar_rate_says_which_end_was_held() {
    let (torsion, arm, travel) = (3000.0, 10.0, 5.0);
    let force = |this: f64, other: f64| torsion * (this - other) / arm / arm;
    let (one_held, both_moved) = (force(1.0, 0.0), force(1.0, -1.0));
    assert!((both_moved / one_held - 2.0).abs() < 1e-12);
    for (rate, measured) in [(one_held, SwayMeasured::OneArm), (both_moved, SwayMeasured::BothArms)] {
        let mut document = rig(Role::SwayLink, 4000.0, Use::Easy, 12.0);
        document.rig.sway_rate = Some(lbf(rate) / INCH);
        document.rig.sway_measured = Some(measured);
        close(axial(&document), force(travel, -travel), 1e-6, &format!("{measured:?}"));
    }
}

/// Links wrote the rate as a force for each inch, in the unit that was shortest, and files did the same.
#[test]
fn a_sway_bar_rate_of_an_old_link_opens_to_the_same_force() {
    let head = "2&weight=4000lb&length=12in&role=sway-link&use=easy";
    for written in ["300lb", "1334.4664845781567", "1.3344664845781567kN"] {
        let opened = from_fragment(&format!("{head}&sway-rate={written}"));
        let rate = opened.document.rig.sway_rate.expect(written) * INCH / POUND_FORCE;
        close(rate, 300.0, 1e-9, written);
        close(axial(&opened.document), 1500.0, 1e-6, written);
    }
    let mut document = rig(Role::SwayLink, 4000.0, Use::Easy, 12.0);
    document.rig.sway_rate = Some(lbf(300.0) / INCH);
    let file = to_text(&[Build { id: "a".to_string(), document: document.clone(), ..Build::default() }]);
    assert!(file.contains("\"300 lb\""), "{file}");
    for written in ["300 lb", "1334.4664845781567 N", "300 lbf/in", "52538.05057394291 N/m"] {
        let read = from_text(&file.replace("300 lb", written)).expect("a file");
        let rate = read.builds[0].document.rig.sway_rate.expect(written) * INCH / POUND_FORCE;
        close(rate, 300.0, 1e-9, written);
    }
    // In pounds it would not come back bit for bit.
    for rate in [12_345.678_901_234_5, 40_000.1, lbf(200.0) / INCH] {
        document.rig.sway_rate = Some(rate);
        let opened = from_fragment(&linkwright::share::to_fragment(&document)).document;
        assert_eq!(opened.rig.sway_rate.map(f64::to_bits), Some(rate.to_bits()), "{rate}");
    }
}

#[test]
fn a_bow_makes_a_column_buckle_earlier() {
    let size = [inch(1.5), 0.0];
    let [area, second_moment] = [sections::RING_AREA.value(&size), sections::RING_SECOND_MOMENT.value(&size)];
    let length = inch(50.0);
    let euler = columns::EULER_LOAD.value(&[ksi(10_500.0), second_moment, length]);
    close(euler / POUND_FORCE, 10_301.0, 0.5, "straight");
    let radius = sections::RADIUS_OF_GYRATION.value(&[second_moment, area]);
    let bow = columns::STRAIGHTNESS.value(&[0.002, length]);
    let crookedness = columns::CROOKEDNESS.value(&[bow, inch(0.75), radius]);
    let critical = beams::AXIAL_STRESS.value(&[euler, area]);
    let half_sum = columns::PERRY_HALF_SUM.value(&[ksi(64.0), crookedness, critical]);
    let bowed = columns::PERRY_ROBERTSON_LOAD.value(&[area, half_sum, ksi(64.0), critical]);
    close(bowed / POUND_FORCE, 9781.0, 0.05, "bow of a 500th");
}

#[test]
fn the_bow_counts_in_every_role() {
    for role in [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod, Role::DragLink, Role::SwayLink] {
        let mut document = rig(role, 4000.0, Use::Slow, 40.0);
        document.links[0].outside_diameter = Some(inch(1.75));
        let used = |document: &Document| find(&answer(document), "buckling").utilization.expect("a number");
        let usual = used(&document);
        document.links[0].bow = Some(0.01);
        let crooked = used(&document);
        document.links[0].bow = Some(0.0);
        let straight = used(&document);
        assert!(straight < usual && usual < crooked, "{role:?}: {straight} {usual} {crooked}");
        document.links[0].bow = None;
        let factor = inputs::COLUMN_FACTOR.value(&document, At::of_link(&document, 0));
        let guides = matches!(role, Role::TrackBar | Role::TieRod | Role::DragLink);
        assert_eq!(factor, Some(if guides { 1.67 } else { 1.5 }), "{role:?}");
        document.rig.column_factor = Some(3.0);
        close(used(&document), usual * 3.0 / factor.expect("a default"), 1e-12, &format!("{role:?}"));
    }
}

#[test]
fn a_bent_bar_works_on_its_offset() {
    let size = [inch(1.5), inch(1.0)];
    let area = sections::RING_AREA.value(&size);
    let modulus = sections::RING_SECTION_MODULUS.value(&size);
    let euler = columns::EULER_LOAD.value(&[ksi(29_000.0), sections::RING_SECOND_MOMENT.value(&size), inch(34.0)]);
    let load = 1.25 * lbf(4500.0);
    let moment = columns::BENT_MOMENT.value(&[load, inch(2.0), euler]);
    close(beams::COMBINED_STRESS.value(&[load, area, moment, modulus]) / ksi(70.0), 0.764_00, 5e-6, "uniform tube");

    let mut document = rig(Role::TrackBar, 5000.0, Use::Hard, 34.0);
    let link = &mut document.links[0];
    (link.material, link.outside_diameter, link.wall) = (Some("1026-dom"), Some(inch(1.5)), Some(inch(0.25)));
    link.ends.iter_mut().for_each(|end| end.rod_end = Some("wide-14"));
    assert!(answer(&document).findings.iter().all(|finding| finding.id != "bent-bar"), "nothing is bent");
    let straight = answer(&document);
    document.links[0].bend_offset = Some(inch(2.0));
    let bent = answer(&document);
    // The link's weaker ends lower its critical load a little.
    close(find(&bent, "bent-bar").utilization.expect("a number"), 0.764, 0.01, "offset of 2 in");
    assert_eq!(find(&bent, "buckling"), find(&straight, "buckling"), "the straight bar's column is asked as well");
    document.links[0].bend_offset = Some(inch(3.0));
    let far = answer(&document);
    close(find(&far, "bent-bar").utilization.expect("a number"), 1.10, 0.02, "offset of 3 in");
    assert_eq!(find(&far, "bent-bar").verdict, Verdict::Fails);
    document.links[0].role = Role::Lower;
    let lower = answer(&document);
    assert_eq!(find(&lower, "bent-bar").verdict, Verdict::Unanswered);
    assert_ne!(lower.verdict, Verdict::Passes);
    document.links[0].material = Some("7075-t6");
    assert!(refused(&document).contains("only steel tube is bent"));
}

#[test]
fn a_shank_that_yields_before_the_link_buckles_is_named() {
    let mut document = rig(Role::Upper, 4000.0, Use::Slow, 24.0);
    let link = &mut document.links[0];
    link.outside_diameter = Some(inch(2.0));
    link.ends.iter_mut().for_each(|end| end.rod_end = Some("wide-10"));
    let stout = answer(&document);
    let finding = find(&stout, "compression-yield");
    assert_eq!(finding.part, "compression yield of the shank");
    let capacity = stout.link.ends[0].thread.tensile_stress_area() * ksi(132.0);
    close(finding.utilization.expect("a number"), 1.25 * stout.loads.axial / capacity, 1e-9, "factor on yield");
    let buckling = find(&stout, "buckling");
    let limit = 1.5 * stout.loads.axial / buckling.utilization.expect("a number");
    assert!(limit > capacity, "the link buckles at {limit}, its shank yields at {capacity}");
    // A slim link buckles first, and nothing is said of its sections.
    document.links[0].length = Some(inch(60.0));
    document.links[0].outside_diameter = Some(inch(1.25));
    let slim = answer(&document);
    assert!(slim.findings.iter().all(|finding| finding.id != "compression-yield"));
}
