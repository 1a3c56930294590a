//! Every metal in every role, at ordinary lengths, for three weights and four uses: one line for each answer, to be
//! read like a price list by somebody who has built them.
//!
//! `UPDATE_MATRIX=1 cargo test --test matrix` writes the texts anew; read the difference before you keep it.

use std::fmt::Write;
use std::path::Path;

use linkwright::document::{Document, Link, Rig, Role, Use};
use linkwright::engine;
use linkwright::engine::formula::Line;
use linkwright::engine::sentence::spoken;
use linkwright::engine::tables::materials;
use linkwright::engine::tables::practice::Size;
use linkwright::quantity::{Kind, System, inch, lbf, show};
use linkwright::report::{Answer, Finding, LinkReport, Verdict};

/// Each role, its file, and an ordinary length mount to mount, in.
const ROLES: [(Role, &str, f64); 6] = [
    (Role::Lower, "lower", 36.0),
    (Role::Upper, "upper", 30.0),
    (Role::TrackBar, "track-bar", 34.0),
    (Role::TieRod, "tie-rod", 50.0),
    (Role::DragLink, "drag-link", 40.0),
    (Role::SwayLink, "sway-link", 12.0),
];
const USES: [(Use, &str); 4] =
    [(Use::Easy, "easy"), (Use::Slow, "slow"), (Use::Hard, "hard"), (Use::Punished, "raced")];
/// Rig weights, lb.
const WEIGHTS: [f64; 3] = [2200.0, 4300.0, 6000.0];

fn document(role: Role, metal: &'static str, usage: Use, weight: f64, length: f64) -> Document {
    Document {
        rig: Box::new(Rig { weight: Some(lbf(weight)), usage: Some(usage), ..Rig::default() }),
        links: vec![Link { role, material: Some(metal), length: Some(inch(length)), ..Link::default() }],
        ..Document::default()
    }
}

fn shown(value: f64, kind: Kind) -> String {
    show(value, kind, System::Inch)
}

fn size(size: Size) -> String {
    let diameter = size.outside_diameter / inch(1.0);
    if size.wall > 0.0 { format!("{diameter} x {:.3}", size.wall / inch(1.0)) } else { format!("{diameter}") }
}

/// The permanent set that a finding worked out.
fn permanent_set(finding: &Finding) -> Option<f64> {
    finding.working.iter().find_map(|line| match line {
        Line::Solved { what: "Permanent set at mid-span", value, .. } => Some(*value),
        _ => None,
    })
}

/// The part that is asked for most.
fn first(answer: &Answer) -> String {
    let counts = |finding: &&Finding| !finding.rule || finding.verdict == Verdict::Fails;
    let used = |finding: &Finding| finding.utilization.unwrap_or(0.0);
    let worst = answer.findings.iter().filter(counts).max_by(|a, b| used(a).total_cmp(&used(b)));
    worst.map_or("-".into(), |finding| format!("{:>4.0}% {}", 100.0 * used(finding), finding.id))
}

/// What is recommended, what it would be by the calculation alone, how it comes out.
fn recommended(answer: &Answer) -> String {
    let sizing = &answer.sizing;
    let found = sizing.recommended.as_ref().expect("a recommendation");
    let mut text =
        format!("{:<11} {:<9} {:<24} {:<26}", size(found.size()), found.thread, answer.word(), first(answer));
    let bent = answer.findings.iter().filter(|finding| finding.verdict == Verdict::Bends).find_map(permanent_set);
    let mut also = |words: String| {
        text += if text.ends_with(' ') { "" } else { "; " };
        text += &words;
    };
    if let Some(smallest) = sizing.by_numbers.as_ref().filter(|smallest| *smallest != found) {
        also(format!("by calculation {}, {}", size(smallest.size()), smallest.thread));
    }
    if let Some(set) = bent {
        also(format!("keeps a bend of {}", shown(set, Kind::FineLength)));
    }
    if let Some(next) = &sizing.next_up {
        also(format!("next size up {}, {}", size(next.size()), next.thread));
    }
    answer.conditions.iter().for_each(|condition| also(spoken(condition, System::Inch)));
    text
}

/// What is fitted where nothing passes, how far it goes and what would help first.
fn fitted(answer: &Answer) -> String {
    let fitted = answer.sizing.fitted.as_ref().expect("something is fitted");
    let on = &fitted.candidate;
    let good_to =
        fitted.good_to.map_or("at no weight".into(), |weight| format!("good to {}", shown(weight, Kind::Weight)));
    let whose = if fitted.habit.is_some() { "fitted" } else { "largest" };
    let cure = fitted.cures.first().map_or("no cure".into(), |cure| spoken(cure, System::Inch));
    format!(
        "none        {:<9} {:<24} {:<26}{whose} {}, {}; {good_to}; first cure: {cure}",
        "",
        answer.word(),
        first(answer),
        size(on.size()),
        on.thread
    )
}

/// Every line of one role.
fn page(role: Role, length: f64) -> String {
    let mut page = String::new();
    for material in materials::ALL {
        let _ = writeln!(page, "{}, {length} in", material.label);
        for (usage, word) in USES {
            for weight in WEIGHTS {
                let report = engine::report(&document(role, material.id, usage, weight, length));
                let text = match &report.links[0] {
                    LinkReport::Answer(answer) if answer.sizing.recommended.is_some() => recommended(answer),
                    LinkReport::Answer(answer) => fitted(answer),
                    LinkReport::Needs(needs) => format!("NEEDS {}", needs.join(", ")),
                    LinkReport::Impossible(why) => format!("IMPOSSIBLE {}", spoken(why, System::Inch)),
                };
                let _ = writeln!(page, "  {word:<5} {weight:.0}  {}", text.trim_end());
            }
        }
    }
    page
}

/// The first lines that differ.
fn difference(kept: &str, now: &str) -> Option<String> {
    let (kept, now): (Vec<&str>, Vec<&str>) = (kept.lines().collect(), now.lines().collect());
    let lines = 0..kept.len().max(now.len());
    let differing: Vec<usize> = lines.filter(|at| kept.get(*at) != now.get(*at)).collect();
    let at = *differing.first()?;
    let show = |lines: &[&str]| lines.get(at).map_or("(the end)".to_string(), |line| (*line).to_string());
    let many = differing.len();
    Some(format!("line {} of {many} that differ\n  kept: {}\n   now: {}", at + 1, show(&kept), show(&now)))
}

#[test]
fn every_answer_is_the_one_that_was_read() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/matrix");
    let update = std::env::var_os("UPDATE_MATRIX").is_some();
    let mut told = Vec::new();
    for (role, name, length) in ROLES {
        let (now, path) = (page(role, length), folder.join(name).with_extension("txt"));
        if update {
            std::fs::write(&path, &now).expect("a folder to write to");
        }
        let kept = std::fs::read_to_string(&path).unwrap_or_default();
        if let Some(difference) = difference(&kept, &now) {
            told.push(format!("{name}.txt: {difference}"));
        }
    }
    assert!(told.is_empty(), "\n{}\nUPDATE_MATRIX=1 writes them anew.", told.join("\n"));
}
