//! Whole links and parts of links, worked from entry to finding, as text that a builder or an engineer can check by hand.
//!
//! `UPDATE_WORKED=1 cargo test --test worked` writes the texts anew; read the difference before you keep it.

#[path = "worked/page.rs"]
mod page;

use std::path::Path;

use linkwright::document::{Document, Hand, Link, OWN_ROD_END, Rig, Role, Spacers, TieRodSide, TrackBar, Use};
use linkwright::engine;
use linkwright::quantity::{System, inch, lbf, mm};
use linkwright::report::LinkReport;
use page::Page;

fn job(role: Role, weight: f64, usage: Use, length: f64) -> Document {
    Document {
        rig: Box::new(Rig { weight: Some(lbf(weight)), usage: Some(usage), ..Rig::default() }),
        links: vec![Link { role, length: Some(inch(length)), ..Link::default() }],
        ..Document::default()
    }
}

/// A link that was bought too thin, with a rod end that was measured.
fn too_thin() -> Document {
    let mut document = job(Role::Lower, 5200.0, Use::Punished, 42.0);
    let link = &mut document.links[0];
    link.outside_diameter = Some(inch(1.75));
    link.material = Some("6061-t6");
    for end in &mut link.ends {
        (end.rod_end, end.own_thread) = (Some(OWN_ROD_END), Some("7/8-14"));
        (end.own_eye_to_end, end.own_thread_length) = (Some(inch(3.5)), Some(inch(2.0)));
        (end.own_bore, end.own_ball_width, end.rating) = (Some(inch(0.75)), Some(inch(1.25)), Some(lbf(21_000.0)));
    }
    link.ends[1].hand = Some(Hand::Right);
    document
}

/// Drawn steel tube that takes small bends.
fn tube() -> Document {
    let mut document = job(Role::Lower, 5000.0, Use::Slow, 38.0);
    document.links[0].material = Some("1026-dom");
    document
}

/// Converging uppers without a track bar, their bolts stepped down by high-misalignment spacers.
fn stepped_bolts() -> Document {
    let mut document = job(Role::Upper, 4500.0, Use::Hard, 30.0);
    document.rig.axles[0].track_bar = Some(TrackBar::Absent);
    let link = &mut document.links[0];
    (link.spacer, link.spacer_kind) = (Some(inch(0.5)), Some(Spacers::HighMisalignment));
    link.ends.iter_mut().for_each(|end| {
        (end.rod_end, end.bolt_diameter) = (Some("wide-14"), Some(inch(0.625)));
    });
    document
}

/// Bent around the differential.
fn bent_track_bar() -> Document {
    let mut document = job(Role::TrackBar, 5000.0, Use::Hard, 34.0);
    let link = &mut document.links[0];
    (link.material, link.outside_diameter, link.wall) = (Some("1026-dom"), Some(inch(1.5)), Some(inch(0.25)));
    (link.bend_offset, link.ends[0].rod_end, link.ends[1].rod_end) =
        (Some(inch(2.0)), Some("wide-12"), Some("wide-12"));
    document
}

/// A tie rod that a hydraulic ram pushes.
fn tie_rod() -> Document {
    let mut document = job(Role::TieRod, 5000.0, Use::Hard, 50.0);
    (document.rig.cylinder_bore, document.links[0].tie_rod_side) = (Some(inch(2.5)), Some(TieRodSide::Behind));
    document
}

/// Typed in millimeters and kilograms, with metric rod ends and bolts.
fn metric() -> Document {
    let mut document = job(Role::Upper, 0.0, Use::Slow, 0.0);
    document.rig.weight = Some(1400.0 * 9.80665);
    let link = &mut document.links[0];
    link.length = Some(mm(700.0));
    link.ends.iter_mut().for_each(|end| end.rod_end = Some("k-20"));
    document
}

/// What a text shows.
enum About {
    /// From entry to checklist.
    Everything,
    /// Size, loads, some checks, and, if asked, what is bought for the eyes and ends.
    Checks(&'static [&'static str], Hardware),
}

#[derive(PartialEq)]
enum Hardware {
    Shown,
    Left,
}

struct Case {
    name: &'static str,
    title: &'static str,
    document: Document,
    about: About,
    units: System,
}

fn cases() -> [Case; 7] {
    let case = |name, title, document, about| Case { name, title, document, about, units: System::Inch };
    [
        case(
            "lower-hard",
            "A lower link of a 4,100 lb rig, driven hard",
            job(Role::Lower, 4100.0, Use::Hard, 38.0),
            About::Everything,
        ),
        case(
            "lower-too-thin",
            "A lower link that was bought too thin, with measured rod ends of like hand",
            too_thin(),
            About::Everything,
        ),
        case(
            "lower-dom",
            "A lower link of drawn steel tube that takes small bends",
            tube(),
            About::Checks(&["bar-bending", "tapped-end", "wall"], Hardware::Shown),
        ),
        case(
            "upper-stepped-bolts",
            "A converging upper link with bolts stepped down by high-misalignment spacers",
            stepped_bolts(),
            About::Checks(&["bolt-shear", "bolt-bending", "ear-bearing", "misalignment"], Hardware::Shown),
        ),
        case(
            "track-bar-bent",
            "A track bar bent around the differential",
            bent_track_bar(),
            About::Checks(&["bar-bending", "tapped-end", "buckling", "bent-bar"], Hardware::Left),
        ),
        case(
            "tie-rod-ram",
            "A tie rod with a hydraulic ram on it",
            tie_rod(),
            About::Checks(&["bar-bending", "buckling", "engagement", "thread-stripping"], Hardware::Left),
        ),
        Case {
            units: System::Metric,
            ..case(
                "upper-metric",
                "An upper link with metric rod ends and metric bolts",
                metric(),
                About::Checks(&["bolt-shear", "bolt-bending", "engagement", "jam-nut-seat"], Hardware::Shown),
            )
        },
    ]
}

/// A link from entry to checklist, or as much of it as the case is about.
fn text(case: &Case) -> String {
    let Case { title, document, about, units, .. } = case;
    let mut page = Page::new(*units);
    page.line(title);
    page::entries(&mut page, document);
    match &engine::report(document).links[0] {
        LinkReport::Needs(needs) => page.line(format!("  Still needed: {}", needs.join(", "))),
        LinkReport::Impossible(why) => page.said("  ", why),
        LinkReport::Answer(answer) => {
            let at = answer.sizing.recommended.as_ref();
            let around = at.map(|at| engine::neighbors(document, 0, at)).unwrap_or_default();
            page::recommendation(&mut page, answer, &around, &engine::firmness(document, 0));
            match about {
                About::Everything => {
                    page::link(&mut page, answer);
                    page::loads(&mut page, answer);
                    page::findings(&mut page, answer, |_| true);
                    page::beside(&mut page, answer, &engine::along(document, 0));
                    page::cautions(&mut page, answer);
                    page::fitting(&mut page, document, answer);
                    page::assumed(&mut page, answer);
                }
                About::Checks(checks, hardware) => {
                    page::loads(&mut page, answer);
                    for id in *checks {
                        assert!(answer.findings.iter().any(|finding| finding.id == *id), "{title}: {id} is not asked");
                    }
                    page::findings(&mut page, answer, |finding| checks.contains(&finding.id));
                    if *hardware == Hardware::Shown {
                        page::hardware(&mut page, &engine::parts(document, 0, answer));
                    }
                }
            }
        }
    }
    page.text
}

/// The first lines that differ, as a reader compares them.
fn difference(kept: &str, now: &str) -> Option<String> {
    let (kept, now): (Vec<&str>, Vec<&str>) = (kept.lines().collect(), now.lines().collect());
    let at = (0..kept.len().max(now.len())).find(|at| kept.get(*at) != now.get(*at))?;
    let show = |lines: &[&str]| lines.get(at).map_or("(the end)".to_string(), |line| (*line).to_string());
    let many = (0..kept.len().max(now.len())).filter(|at| kept.get(*at) != now.get(*at)).count();
    Some(format!("line {} of {many} that differ\n  kept: {}\n   now: {}", at + 1, show(&kept), show(&now)))
}

#[test]
fn links_are_worked_as_they_were_read() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/worked");
    let update = std::env::var_os("UPDATE_WORKED").is_some();
    let mut told = Vec::new();
    for case in &cases() {
        let (name, now) = (case.name, text(case));
        let path = folder.join(name).with_extension("txt");
        if update {
            std::fs::write(&path, &now).expect("a folder to write to");
        }
        let kept = std::fs::read_to_string(&path).unwrap_or_default();
        if let Some(difference) = difference(&kept, &now) {
            told.push(format!("{name}.txt: {difference}"));
        }
    }
    assert!(told.is_empty(), "\n{}\nUPDATE_WORKED=1 writes them anew.", told.join("\n"));
}

/// A text that no case writes any more would be read as if it still held.
#[test]
fn every_worked_text_has_its_case() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/worked");
    let names: Vec<&str> = cases().map(|case| case.name).to_vec();
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.extension().is_some_and(|extension| extension == "txt") {
            let name = path.file_stem().and_then(|name| name.to_str()).expect("a name");
            assert!(names.contains(&name), "{name}.txt");
        }
    }
}

#[test]
fn no_worked_link_shows_what_cannot_be() {
    for mut case in cases() {
        case.about = About::Everything;
        let text = text(&case);
        for odd in ["NaN", "inf ", "?", "— from", " — lbf"] {
            let line = text.lines().find(|line| {
                line.contains(odd)
                    && !(odd == "?" && (line.contains("? ") || line.ends_with("?") && !line.contains(" = ")))
            });
            assert!(line.is_none(), "{odd}: {line:?}");
        }
        assert!(!text.contains("Still needed"), "{text}");
    }
}
