//! DXF files, read back by an independent reader.

use dxf::Drawing;
use dxf::entities::EntityType;
use dxf::enums::AcadVersion;
use linkwright::engine::report_on;
use linkwright::present::make::dxf::bar;
use linkwright::quantity::System;
use linkwright::report::LinkGeometry;

use super::links::{answer, hard};
use super::{SYSTEMS, rigs};

fn read(text: &str) -> Drawing {
    Drawing::load(&mut text.as_bytes()).unwrap_or_else(|why| panic!("{why}\n{text}"))
}

/// Every line of a layer, from where to where.
fn lines(drawing: &Drawing, layer: &str) -> Vec<[f64; 4]> {
    let line = |entity: &dxf::entities::Entity| match &entity.specific {
        EntityType::Line(line) if entity.common.layer == layer => Some([line.p1.x, line.p1.y, line.p2.x, line.p2.y]),
        _ => None,
    };
    drawing.entities().filter_map(line).collect()
}

fn texts(drawing: &Drawing) -> Vec<String> {
    let text = |entity: &dxf::entities::Entity| match &entity.specific {
        EntityType::Text(text) => Some(text.value.clone()),
        _ => None,
    };
    drawing.entities().filter_map(text).collect()
}

/// The least and the most of places along, and across.
fn extents(lines: &[[f64; 4]]) -> [f64; 4] {
    let along = || lines.iter().flat_map(|line| [line[0], line[2]]);
    let across = || lines.iter().flat_map(|line| [line[1], line[3]]);
    let least = |of: &mut dyn Iterator<Item = f64>| of.fold(f64::INFINITY, f64::min);
    let most = |of: &mut dyn Iterator<Item = f64>| of.fold(f64::NEG_INFINITY, f64::max);
    [least(&mut along()), most(&mut along()), least(&mut across()), most(&mut across())]
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 2e-6
}

/// What does not agree between a file and the bar that it draws.
fn wrong(made: &LinkGeometry, drawing: &Drawing, system: System) -> Vec<String> {
    let scale = if system == System::Inch { 1.0 / 0.0254 } else { 1e3 };
    let mut told = Vec::new();
    let (long, radius) = (made.bar * scale, made.outside_diameter / 2.0 * scale);
    let [left, right, low, high] = extents(&lines(drawing, "OUTLINE"));
    if !(near(left, 0.0) && near(right, long) && near(low, -radius) && near(high, radius)) {
        told.push(format!("{left} to {right}, {low} to {high}; the bar is {long} by {radius}"));
    }
    let hidden = lines(drawing, "HIDDEN");
    for (end, flip) in made.ends.iter().zip([false, true]) {
        let x = |deep: f64| if flip { long - deep * scale } else { deep * scale };
        let has = |from: [f64; 2], to: [f64; 2]| {
            hidden.iter().any(|line| {
                near(line[0], from[0]) && near(line[1], from[1]) && near(line[2], to[0]) && near(line[3], to[1])
            })
        };
        let (major, minor) = (end.thread.major / 2.0 * scale, end.hole[0] / 2.0 * scale);
        // A countersink of 90° is half as deep as it is wider: thread and hole begin where it ends.
        let mouth = end.countersink / 2.0 * scale;
        let below = |radius: f64| x((mouth - radius) / scale);
        let cone = [1.0, -1.0].map(|side| has([x(0.0), side * mouth], [below(minor), side * minor]));
        if cone != [true; 2] || !has([below(minor), -minor], [below(minor), minor]) {
            told.push(format!("no countersink of {}", 2.0 * mouth));
        }
        if !has([below(major), major], [x(end.tapped_depth), major]) {
            told.push(format!("no thread of {}", end.tapped_depth * scale));
        }
        let (deep, point) = (x(end.drill_depth), x(end.drill_point));
        let drilled = has([below(minor), minor], [deep, minor]) && has([deep, minor], [point, 0.0]);
        if drilled != (made.bore == 0.0) {
            told.push("the hole of a bar is drilled, an insert is not".to_string());
        }
    }
    let behind = made.ends[1].insert.map_or(0.0, |insert| insert.shoulder) * scale;
    let is_bore = |line: &[f64; 4]| near(line[1], made.bore / 2.0 * scale) && near(line[2], long - behind);
    if made.bore > 0.0 && !hidden.iter().any(is_bore) {
        told.push("no bore".to_string());
    }
    if lines(drawing, "CENTER").len() != 1 || lines(drawing, "DIMENSION").len() < 10 {
        told.push("no axis, or no sizes".to_string());
    }
    told
}

#[test]
fn a_file_comes_back_as_the_bar() {
    let mut seen = [0, 0];
    for document in rigs(41, 10) {
        for at in 0..document.links.len() {
            let report = report_on(&document, at);
            let Some(answer) = report.answer() else { continue };
            for system in SYSTEMS {
                let made = &answer.link;
                let drawing = read(&bar(made, &document.name, system));
                let told = wrong(made, &drawing, system);
                assert!(told.is_empty(), "{}", told.join("\n"));
                seen[usize::from(made.bore > 0.0)] += 1;
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 10), "{seen:?}");
}

/// 3/4-16 with 1/64 in more: 0.7656 in across. The hole is drawn at the least minor diameter, 0.682 in.
#[test]
fn the_countersink_by_hand() {
    let made = answer(&hard()).link;
    let end = &made.ends[0];
    let expected = end.thread.major / 0.0254 + 1.0 / 64.0;
    let drawing = read(&bar(&made, "Demo", System::Inch));
    let deep = (expected - end.hole[0] / 0.0254) / 2.0;
    let cone = lines(&drawing, "HIDDEN")
        .into_iter()
        .filter(|line| near(line[0], 0.0) && near(line[1].abs(), expected / 2.0) && near(line[2], deep));
    assert_eq!(cone.count(), 2, "above and below the axis at end A");
    let mut wider = hard();
    wider.links[0].countersink = Some(0.0254 / 8.0);
    let wide = answer(&wider).link;
    assert!(near(wide.ends[1].countersink / 0.0254, wide.ends[1].thread.major / 0.0254 + 0.125));
    assert_eq!(wrong(&wide, &read(&bar(&wide, "Demo", System::Metric)), System::Metric), [""; 0]);
}

/// Of a shouldered bung the file has the seam at its flange, a bore that begins behind it, and both sizes in words.
#[test]
fn a_shouldered_bung_has_its_flange() {
    let mut document = hard();
    let link = &mut document.links[0];
    link.material = Some("1026-dom");
    (link.outside_diameter, link.wall) = (Some(0.0508), Some(0.00635));
    link.ends.iter_mut().for_each(|end| end.rod_end = Some("wide-12"));
    (link.ends[1].insert, link.bung_flange, link.rosette_welds) = (Some("shouldered"), Some(0.0254 / 4.0), true);
    let made = answer(&document).link;
    let drawing = read(&bar(&made, "Demo", System::Inch));
    assert_eq!(wrong(&made, &drawing, System::Inch), [""; 0]);
    let seam = made.bar / 0.0254 - 0.25;
    let seams = lines(&drawing, "OUTLINE").into_iter().filter(|line| near(line[0], seam) && near(line[2], seam));
    assert_eq!(seams.count(), 1, "at end B alone");
    let hidden = lines(&drawing, "HIDDEN");
    assert!(hidden.iter().any(|line| near(line[1], 0.75) && near(line[0], 0.0) && near(line[2], seam)), "the bore");
    let texts = texts(&drawing).join("\n");
    for says in
        ["FLANGE 1/4 in", "BUNG ", "INSERT ", "End B: shouldered bung", "welded around its flange. Four rosette welds."]
    {
        assert!(texts.contains(says), "{says} is missing in {texts}");
    }
}

#[test]
fn the_file_is_of_release_12_with_plain_layers() {
    let text = bar(&answer(&hard()).link, "Demo", System::Inch);
    assert!(text.is_ascii());
    let drawing = read(&text);
    assert_eq!(drawing.header.version, AcadVersion::R12);
    let layers: Vec<(String, String)> =
        drawing.layers().map(|layer| (layer.name.clone(), layer.line_type_name.clone())).collect();
    for (name, line) in [
        ("OUTLINE", "CONTINUOUS"),
        ("HIDDEN", "HIDDEN"),
        ("CENTER", "CENTER"),
        ("DIMENSION", "CONTINUOUS"),
        ("TEXT", "CONTINUOUS"),
    ] {
        assert!(layers.contains(&(name.to_string(), line.to_string())), "{layers:?}");
    }
    let types: Vec<String> = drawing.line_types().map(|line| line.name.clone()).collect();
    for name in ["CONTINUOUS", "HIDDEN", "CENTER"] {
        assert!(types.iter().any(|line| line == name), "{types:?}");
    }
    let known: Vec<&str> = layers.iter().map(|(name, _)| name.as_str()).collect();
    assert!(drawing.entities().all(|entity| known.contains(&entity.common.layer.as_str())));
    let texts = texts(&drawing);
    assert!(texts.iter().any(|text| text.contains("All coordinates in inches")), "{texts:?}");
    assert!(texts.iter().any(|text| text.starts_with("TAP ")) && texts.contains(&"A".to_string()));
    let metric = read(&bar(&answer(&hard()).link, "Demo", System::Metric));
    assert!(self::texts(&metric).iter().any(|text| text.contains("All coordinates in millimeters")));
}

#[test]
fn a_hostile_name_stays_one_text() {
    let made = answer(&hard()).link;
    let plain = read(&bar(&made, "Demo", System::Inch)).entities().count();
    let names = [
        "Demo\r\n  0\r\nLINE\r\n  8\r\nOUTLINE\r\n 10\r\n-99",
        "0\nENDSEC\n0\nEOF",
        "100 %%c %%u ^J \\P \\U+0041",
        "é ½ 日 😀 ×",
        &"x".repeat(5000),
        "",
    ];
    for name in names {
        let text = bar(&made, name, System::Inch);
        assert!(text.is_ascii(), "{name:?}");
        assert!(text.split("\r\n").all(|line| line.len() <= 255 && !line.contains(['\r', '\n'])), "{name:?}");
        let drawing = read(&text);
        assert_eq!(drawing.entities().count(), plain, "{name:?}");
        assert_eq!(wrong(&made, &drawing, System::Inch), [""; 0], "{name:?}");
        // A command of the format would stand between signs that are not there.
        let written = texts(&drawing).join(" ");
        assert!(!written.replace("%%%", "").contains("%%"), "{written}");
    }
}
