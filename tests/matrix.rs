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
use linkwright::engine::tables::practice::{Size, class};
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
    let inches = |length: f64| (length / inch(1.0) * 1000.0).round() / 1000.0;
    let (diameter, wall) = (inches(size.outside_diameter), inches(size.wall));
    if wall > 0.0 { format!("{diameter} x {wall:.3}") } else { format!("{diameter}") }
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
        format!("{:<12} {:<9} {:<22} {:<24}", size(found.size()), found.thread, answer.word(), first(answer));
    let bent = answer.findings.iter().filter(|finding| finding.verdict == Verdict::Bends).find_map(permanent_set);
    let mut also = |words: String| {
        text += if text.ends_with(' ') { "" } else { "; " };
        text += &words;
    };
    if let Some(smallest) = sizing.by_numbers.as_ref().filter(|smallest| *smallest != found) {
        also(format!("by calculation {}, {}", size(smallest.size()), smallest.thread));
    }
    if let Some(set) = bent {
        let least = inch(0.001);
        let under = if set < least { "under " } else { "" };
        also(format!("permanent set {under}{}", shown(set.max(least), Kind::FineLength)));
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
    let usual = fitted.habit.as_ref().is_some_and(|habit| habit.least == on.size());
    let whose = if usual { "what is fitted" } else { "nearest" };
    let cure = fitted.cures.first().map_or("no cure".into(), |cure| spoken(cure, System::Inch));
    let condition = answer.conditions.iter().map(|condition| format!("{}; ", spoken(condition, System::Inch)));
    let ends = fitted.strengths_end.as_ref().map_or(String::new(), |ends| format!("; {}", spoken(ends, System::Inch)));
    format!(
        "{:<12} {:<9} {:<22} {:<24}NOT RECOMMENDED, {whose}; {}{good_to}; first cure: {cure}{ends}",
        size(on.size()),
        on.thread,
        answer.word(),
        first(answer),
        condition.collect::<String>(),
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

/// A heavier rig or a harsher use never gets less bar or smaller rod ends than what is recommended for a lighter or milder
/// one, whether that is recommended or only what is fitted.
#[test]
fn no_answer_falls_with_weight_or_harsher_use() {
    for (role, _, length) in ROLES {
        for material in materials::ALL {
            let answers = USES.map(|(usage, _)| {
                WEIGHTS.map(|weight| {
                    let report = engine::report(&document(role, material.id, usage, weight, length));
                    let answer = report.links[0].answer().expect("an answer");
                    let (link, recommended) = (&answer.link, answer.sizing.recommended.is_some());
                    let size = Size { outside_diameter: link.outside_diameter, wall: link.wall };
                    (recommended, size.modulus(), class(link.ends[0].thread))
                })
            });
            let no_less = |less: (bool, f64, _), more: (bool, f64, _)| {
                !less.0 || (more.1 >= less.1 * (1.0 - 1e-9) && more.2 >= less.2)
            };
            for (row, later) in answers.iter().zip(answers.iter().skip(1)) {
                for at in 0..WEIGHTS.len() {
                    assert!(no_less(row[at], later[at]), "{role:?} {} {} lb: {answers:?}", material.id, WEIGHTS[at]);
                }
            }
            for row in &answers {
                assert!(row.windows(2).all(|pair| no_less(pair[0], pair[1])), "{role:?} {}: {row:?}", material.id);
            }
        }
    }
}

/// What is recommended with little margin names the next size that has more, unless there is none: then neither a larger
/// bar nor larger rod ends help.
#[test]
fn the_next_size_has_more_in_hand() {
    let mut asked = 0;
    for (role, _, length) in ROLES {
        for (material, (usage, _)) in materials::ALL.iter().flat_map(|material| USES.map(|usage| (material, usage))) {
            for weight in WEIGHTS {
                let document = document(role, material.id, usage, weight, length);
                let report = engine::report(&document);
                let answer = report.links[0].answer().expect("an answer");
                let Some(found) = &answer.sizing.recommended else { continue };
                let Some(next) = &answer.sizing.next_up else {
                    let [_, above] = engine::neighbors(&document, 0, found);
                    let better = above.filter(|above| above.feasible && above.utilization < found.utilization - 1e-9);
                    let open = !answer.has_little_margin() || better.is_none();
                    assert!(open, "{role:?} {} {usage:?} {weight}: {better:?}", material.id);
                    continue;
                };
                assert!(answer.has_little_margin() && next.feasible, "{role:?} {}: {next:?}", material.id);
                assert!(next.utilization < found.utilization, "{role:?} {}: {found:?} {next:?}", material.id);
                asked += 1;
            }
        }
    }
    assert!(asked > 50, "{asked}");
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
