//! Drawings: letters large enough and never crossed by a line, links to scale, every part to touch, codes that scan.

#[path = "drawing/legible.rs"]
mod legible;

use crate::dice;
use crate::links::{hard, sized};
use legible::{inside, legible, legible_from};
use linkwright::document::{BoltSeries, Document, OWN_ROD_END, Position, Role, Spacers, Use};
use linkwright::engine::tables::materials::{self, Form};
use linkwright::engine::tables::rod_ends;
use linkwright::engine::{self, report_on, whole_rig};
use linkwright::layouts::{self, LAYOUTS};
use linkwright::present::drawing::{
    Area, Drawing, LETTERING, Layout, Mark, NARROW, Touch, axle, bending, bracket, check_of, code, end, link, plan,
    plot,
};
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::{Answer, LinkReport, Part};
use std::sync::Arc;

const SYSTEMS: [System; 2] = [System::Inch, System::Metric];

fn answered(document: &Document, index: usize) -> Option<Arc<Answer>> {
    match report_on(document, index) {
        LinkReport::Answer(answer) => Some(answer),
        _ => None,
    }
}

/// Links as people make them, and some that are far from usual.
fn many() -> Vec<Document> {
    let roles = [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod, Role::DragLink, Role::SwayLink];
    let metals = materials::ALL.iter().filter(|metal| metal.form == Form::Tube).map(|metal| metal.id).take(2);
    let metals: Vec<Option<&'static str>> = [None].into_iter().chain(metals.map(Some)).collect();
    let mut all = Vec::new();
    for role in roles {
        for length in [7.0, 12.0, 22.25, 38.0, 61.3] {
            for metal in &metals {
                let mut document = hard();
                let link = &mut document.links[0];
                (link.role, link.length, link.material) = (role, Some(inch(length)), *metal);
                all.push(document.clone());
                document.rig.usage = Some(Use::Easy);
                document.links[0].spacer = Some(inch(0.375));
                all.push(document);
            }
        }
    }
    // Every rod end, beside an unlike one.
    let ids: Vec<&'static str> = rod_ends::ALL.iter().map(|row| row.id).collect();
    for (index, a) in ids.iter().enumerate() {
        let mut document = sized(2.25, a, ids[(index + 5) % ids.len()]);
        document.links[0].spacer_kind = (index % 2 == 0).then_some(Spacers::HighMisalignment);
        document.links[0].spacer = Some(inch(0.3));
        document.links[0].gap = (index % 3 == 0).then(|| inch(0.05));
        document.links[0].bolt_series = Some(BoltSeries::Coarse);
        document.links[0].ends.iter_mut().for_each(|end| end.bolt_diameter = Some(inch(0.25)));
        all.push(document);
    }
    // A short shank in a deep hole, and a long one in a shallow hole.
    for (to_end, thread, tapped) in [(2.0, 1.0, 8.0), (2.0, 1.0, 3.0), (6.0, 3.5, 0.75), (4.0, 1.5, 0.25)] {
        let mut document = hard();
        document.links[0].outside_diameter = Some(inch(2.0));
        for end in &mut document.links[0].ends {
            (end.rod_end, end.own_thread) = (Some(OWN_ROD_END), Some("3/4-16"));
            (end.own_eye_to_end, end.own_thread_length) = (Some(inch(to_end)), Some(inch(thread)));
            (end.own_bore, end.tapped_depth) = (Some(inch(0.625)), Some(inch(tapped)));
        }
        all.push(document);
    }
    all
}

/// Every drawing of one link.
fn of_link(document: &Document, index: usize, system: System) -> Vec<(String, Drawing)> {
    let Some(answer) = answered(document, index) else { return Vec::new() };
    let along = engine::along(document, index);
    let mut drawn = Vec::new();
    for layout in Layout::ALL {
        drawn.push((format!("link, {layout:?}"), link::link(&answer, system, layout)));
        let hill = bending::bending(&answer, &along, system, layout);
        drawn.extend(hill.map(|hill| (format!("bending, {layout:?}"), hill)));
    }
    for (at, layout) in [0, 1].into_iter().flat_map(|at| Layout::ALL.map(|layout| (at, layout))) {
        drawn.push((format!("end {at}, {layout:?}"), end::end(&answer.link, at, layout, system)));
        let bracket = bracket::bracket(document, index, &answer, at, layout, system);
        drawn.extend(bracket.map(|bracket| (format!("bracket {at}, {layout:?}"), bracket)));
    }
    drawn.extend(axle::axle(&answer, system).map(|axle| ("axle".to_string(), axle)));
    drawn
}

/// What is wrong with the words of a drawing. Details of an end for a desk are shown as wide as their sheet or wider.
fn of_name(name: &str, drawing: &Drawing) -> Vec<String> {
    let detail = name.contains("Wide") && (name.starts_with("end") || name.starts_with("bracket"));
    if detail { legible_from(drawing, 13.0) } else { legible(drawing) }
}

#[test]
fn letters_are_large_and_no_line_runs_through_them() {
    let mut told = Vec::new();
    let mut seen = 0;
    for document in many() {
        for system in SYSTEMS {
            for (name, drawing) in of_link(&document, 0, system) {
                seen += 1;
                let made = &document.links[0];
                let which = || {
                    let [a, b] = made.ends.each_ref().map(|end| (end.rod_end, end.own_eye_to_end));
                    format!("{name} of {:?}, {:?}, {a:?}, {b:?}, {system:?}", made.role, made.length)
                };
                told.extend(of_name(&name, &drawing).into_iter().map(|what| format!("{}: {what}", which())));
            }
        }
    }
    assert!(seen > 1500, "only {seen} drawings");
    assert!(told.is_empty(), "{} complaints\n{}", told.len(), told.join("\n"));
}

#[test]
fn letters_are_legible_on_rigs_of_chance() {
    dice::in_four_threads(40, |mut dice| {
        for _ in 0..100 {
            let mut document = dice.rig();
            document.rig.weight.get_or_insert(lbf(4100.0));
            document.rig.usage.get_or_insert(Use::Hard);
            for link in &mut document.links {
                link.length.get_or_insert(inch(6.0 + dice.next(400) as f64 / 8.0));
            }
            for index in 0..document.links.len().min(6) {
                for (name, drawing) in of_link(&document, index, SYSTEMS[dice.next(2)]) {
                    let told = of_name(&name, &drawing);
                    assert!(told.is_empty(), "{name}: {}\n{:?}", told.join("\n"), document.links[index]);
                }
            }
            for layout in Layout::ALL {
                let drawing = plan::plan(&whole_rig(&document, None), layout);
                let told = inside(&drawing);
                assert!(told.is_empty(), "plan, {layout:?}: {}\n{document:?}", told.join("\n"));
            }
        }
    });
}

#[test]
fn the_outline_and_the_plots_are_legible() {
    for layout in Layout::ALL {
        for words in ["mount to mount", "38-1/2 in"] {
            assert_eq!(legible(&link::outline(layout, words)), [""; 0]);
        }
    }
    for length in [12.0, 38.0] {
        let mut document = hard();
        document.links[0].length = Some(inch(length));
        let metals = engine::in_other_metals(&document, 0);
        for against in [plot::Against::FirstYield, plot::Against::Buckling] {
            for system in SYSTEMS {
                let drawing = plot::plot(&metals, system, against).expect("metals that bear something");
                assert_eq!(legible(&drawing), [""; 0]);
                let touched = |mark: &&Mark| matches!(mark, Mark::Touch { touch: Touch::Metal(_), .. });
                assert!(drawing.marks.iter().filter(touched).count() >= metals.len());
            }
        }
    }
    assert_eq!(plot::plot(&[], System::Inch, plot::Against::Buckling), None);
}

/// A rig with links of every role.
fn rig() -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    let add = [
        ("three", Position::Front),
        ("steering", Position::Front),
        ("sway", Position::Front),
        ("converging", Position::Rear),
    ];
    for (id, position) in add {
        let layout = LAYOUTS.iter().find(|layout| layout.id == id).expect("a layout");
        layouts::add(&mut document, layout, position);
    }
    let lengths = [38.0, 36.0, 33.5, 48.0, 40.0, 12.0, 40.25, 34.5];
    document.links.iter_mut().zip(lengths).for_each(|(link, length)| link.length = Some(inch(length)));
    document
}

#[test]
fn the_plan_is_legible_and_its_numbers_can_be_touched() {
    let whole = whole_rig(&rig(), None);
    for layout in Layout::ALL {
        let drawing = plan::plan(&whole, layout);
        assert_eq!(legible(&drawing), [""; 0], "{layout:?}");
        assert!(drawing.words.contains("The worst is number"), "{}", drawing.words);
        let touches: Vec<_> = drawing
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Touch { touch: Touch::Link(link), area: Area::Circle(center, radius) } => {
                    Some((*link, *center, *radius))
                }
                _ => None,
            })
            .collect();
        assert_eq!(touches.len(), whole.plan.placed.len());
        for (link, ..) in whole.links.iter().enumerate() {
            assert!(touches.iter().any(|touch| touch.0 == link), "link {link}");
        }
        for (index, (link, center, radius)) in touches.iter().enumerate() {
            assert!(*radius >= 22.0, "a finger is 44 wide");
            for (other, at, _) in &touches[index + 1..] {
                let apart = (center.0 - at.0).hypot(center.1 - at.1);
                assert!(apart >= 40.0, "{layout:?}: {link} and {other} are {apart:.1} apart");
            }
        }
    }
}

#[test]
fn a_link_is_drawn_to_scale_and_each_part_can_be_touched() {
    for document in many() {
        let Some(answer) = answered(&document, 0) else { continue };
        for layout in Layout::ALL {
            let drawing = link::link(&answer, System::Inch, layout);
            assert!(drawing.words.starts_with("Drawing to scale: "), "{}", drawing.words);
            let eyes: Vec<f64> = drawing
                .marks
                .iter()
                .filter_map(|mark| match mark {
                    Mark::Circle { class, center, .. } if class == "hole" => Some(center.0),
                    _ => None,
                })
                .collect();
            let bar = drawing.marks.iter().find_map(|mark| match mark {
                Mark::Path { class, points, .. } if class == "part bar" => Some(points[2].1 - points[0].1),
                _ => None,
            });
            let (drawn, made) = ((eyes[1] - eyes[0]) / bar.expect("a bar"), answer.link.length);
            assert!((drawn - made / answer.link.outside_diameter).abs() < 1e-6 * drawn, "not to scale");
            let touches: Vec<(&str, f64, f64)> = drawing
                .marks
                .iter()
                .filter_map(|mark| match mark {
                    Mark::Touch { touch: Touch::Part(part), area: Area::Block(a, b) } => Some((*part, a.0, b.0)),
                    _ => None,
                })
                .collect();
            for part in &answer.parts {
                assert!(touches.iter().any(|touch| touch.0 == part.part), "{} cannot be touched", part.part);
            }
            // From eye to eye without a gap.
            let mut reached = eyes[0];
            for (_, from, to) in &touches {
                if *from <= reached + 1e-6 {
                    reached = reached.max(*to);
                }
            }
            assert!(reached >= eyes[1], "a gap at {reached}");
        }
    }
}

#[test]
fn a_touch_on_a_part_opens_a_check_that_the_link_has() {
    let mut parts = vec!["eye"];
    for document in many() {
        let Some(answer) = answered(&document, 0) else { continue };
        for part in answer.parts.iter().map(|part| part.part).chain(["eye"]) {
            let check = check_of(part).unwrap_or_else(|| panic!("no check for {part}"));
            assert!(answer.findings.iter().any(|finding| finding.id == check), "{part}: no check {check}");
            if !parts.contains(&part) {
                parts.push(part);
            }
        }
    }
    assert!(parts.len() >= 7, "links of every make were asked: {parts:?}");
    assert_eq!(check_of("anything else"), None);
}

#[test]
fn a_tube_shows_its_insert() {
    let tube = materials::ALL.iter().find(|metal| metal.form == Form::Tube).expect("a tube");
    for (metal, welds) in [(None, 0), (Some(tube.id), 2)] {
        let mut document = hard();
        document.links[0].material = metal;
        let answer = answered(&document, 0).expect("an answer");
        let drawing = end::end(&answer.link, 0, Layout::Narrow, System::Inch);
        let found = drawing.marks.iter().filter(|mark| matches!(mark, Mark::Path { class, .. } if class == "weld"));
        assert_eq!(found.count(), welds);
        assert_eq!(drawing.words.contains("insert"), welds > 0, "{}", drawing.words);
    }
    let answer = answered(&hard(), 0).expect("an answer");
    assert_eq!(end::end(&answer.link, 2, Layout::Narrow, System::Inch), Drawing::default(), "a link has two ends");
}

#[test]
fn a_bracket_has_the_bolt_and_the_grip_of_the_parts_list() {
    let mut seen = 0;
    for document in many() {
        let Some(answer) = answered(&document, 0) else { continue };
        for at in [0, 1] {
            let Some(stack) = bracket::Stack::of(&document, 0, &answer, at) else { continue };
            seen += 1;
            let listed = engine::parts(&document, 0, &answer).into_iter().any(|part| match part {
                Part::Bolt { bolt: Some(bolt), grip, .. } => {
                    (bolt.diameter - stack.bolt).abs() < 1e-9 && (grip - stack.grip()).abs() < 1e-9
                }
                _ => false,
            });
            assert!(listed, "{stack:?} is not in the parts list");
        }
    }
    assert!(seen > 100, "only {seen} brackets");
    let mut document = hard();
    document.links[0].spacer_kind = Some(Spacers::HighMisalignment);
    let answer = answered(&document, 0).expect("an answer");
    assert_eq!(
        bracket::bracket(&document, 0, &answer, 0, Layout::Narrow, System::Inch),
        None,
        "only the user knows the bolt"
    );
}

#[test]
fn bending_is_not_drawn_without_a_hit() {
    let mut document = hard();
    document.links[0].role = Role::SwayLink;
    document.links[0].length = Some(inch(12.0));
    let answer = answered(&document, 0).expect("an answer");
    assert!(answer.loads.strike <= 0.0);
    let along = engine::along(&document, 0);
    assert_eq!(bending::bending(&answer, &along, System::Inch, Layout::Narrow), None);
    assert_eq!(axle::axle(&answer, System::Inch), None, "it holds no axle against drive and brakes");
}

#[test]
fn a_code_has_its_quiet_zone_and_its_size_on_paper() {
    let drawing = code::code("https://example.org/#2&use=hard&weight=4100").expect("short enough");
    assert_eq!(drawing.millimeters, Some(0.5));
    let blocks = |name: &str| {
        drawing.marks.iter().find_map(|mark| match mark {
            Mark::Blocks { class, blocks } if class == name => Some(blocks.clone()),
            _ => None,
        })
    };
    let whole = drawing.width;
    assert_eq!(blocks("ground"), Some(vec![((0.0, 0.0), (whole, whole))]));
    let dark = blocks("modules").expect("modules");
    let least = dark.iter().map(|(a, _)| a.0.min(a.1)).fold(whole, f64::min);
    let most = dark.iter().map(|(_, b)| b.0.max(b.1)).fold(0.0, f64::max);
    assert_eq!((least, most), (4.0, whole - 4.0), "four light modules around");
    assert_eq!(dark[0], ((4.0, 4.0), (11.0, 5.0)), "a corner mark is seven modules wide");
    assert_eq!(code::code(&"x".repeat(3000)), None, "no code holds so much");
}

#[test]
fn letters_are_16_pixels_high_on_a_phone() {
    // The page of a phone of 360 leaves 328; beside the entries a screen of 1024 leaves 488.
    for (layout, shown) in [(Layout::Narrow, 328.0), (Layout::Wide, 488.0)] {
        assert!(layout.lettering() * shown / layout.width() >= 16.0, "{layout:?}");
    }
    assert_eq!(
        (LETTERING, NARROW),
        (Layout::Narrow.lettering(), Layout::Narrow.width()),
        "ends and plots have one layout"
    );
}
