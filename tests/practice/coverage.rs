//! Which jobs have a recommendation and which have none, so that no rule makes one vanish unnoticed.
//!
//! `UPDATE_COVERAGE=1 cargo test --test practice` writes the text anew; read the difference before you keep it.

use std::fmt::Write;
use std::path::Path;

use linkwright::document::{Role, Use};
use linkwright::engine::report;

use super::common::job;

const WEIGHTS: [f64; 6] = [1500.0, 2500.0, 3500.0, 4500.0, 5500.0, 6500.0];
const LENGTHS: [f64; 9] = [12.0, 18.0, 24.0, 30.0, 36.0, 42.0, 48.0, 54.0, 60.0];
const USES: [(Use, &str); 4] =
    [(Use::Easy, "easy"), (Use::Slow, "slow"), (Use::Hard, "hard"), (Use::Punished, "punished")];
const ROLES: [(Role, &str); 6] = [
    (Role::Lower, "Lower link"),
    (Role::Upper, "Upper link"),
    (Role::TrackBar, "Track bar"),
    (Role::TieRod, "Tie rod"),
    (Role::DragLink, "Drag link"),
    (Role::SwayLink, "Sway-bar end link"),
];
const METALS: [&str; 2] = ["7075-t6", "1026-dom"];

fn has_size(material: &'static str, role: Role, weight: f64, length: f64, usage: Use) -> bool {
    let mut document = job(role, weight, length, usage);
    document.links[0].material = Some(material);
    report(&document).links[0].answer().is_some_and(|answer| answer.sizing.recommended.is_some())
}

/// A role in a metal: a mark for each length, on a line for each use and weight with one that has none.
fn page(material: &'static str, (role, name): (Role, &str)) -> String {
    let mut lines = String::new();
    let mut count = 0;
    for (usage, word) in USES {
        for weight in WEIGHTS {
            let found = LENGTHS.map(|length| has_size(material, role, weight, length, usage));
            count += found.iter().filter(|found| **found).count();
            if found.contains(&false) {
                let marks: String = found.iter().map(|found| if *found { "  x" } else { "  ." }).collect();
                let _ = writeln!(lines, "  {word:<9}{weight:>5} lb  {marks}");
            }
        }
    }
    if lines.is_empty() {
        return format!("{name}, {material}: all {count} jobs have one\n\n");
    }
    let lengths: String = LENGTHS.iter().map(|length| format!("{length:>3}")).collect();
    let all = USES.len() * WEIGHTS.len() * LENGTHS.len();
    format!("{name}, {material}: {count} of {all} jobs have one\n{:<20}{lengths} in\n{lines}\n", "")
}

#[test]
fn no_recommendation_vanishes_unnoticed() {
    let pages: Vec<String> = std::thread::scope(|scope| {
        let jobs = METALS.into_iter().flat_map(|metal| ROLES.map(|role| (metal, role)));
        let threads: Vec<_> = jobs.map(|(metal, role)| scope.spawn(move || page(metal, role))).collect();
        threads.into_iter().map(|thread| thread.join().expect("a page")).collect()
    });
    let head = "Jobs that have a recommended size (x) and jobs that have none (.), by use, rig weight and length of the\n\
                link. Rig weights run from 1,500 to 6,500 lb by 1,000; where all lengths have one, no line stands.\n\n";
    let now = format!("{head}{}", pages.concat().trim_end()) + "\n";
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/practice/coverage.txt");
    if std::env::var_os("UPDATE_COVERAGE").is_some() {
        std::fs::write(&path, &now).expect("a folder to write to");
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    let differ: Vec<String> = kept
        .lines()
        .zip(now.lines())
        .filter(|(kept, now)| kept != now)
        .map(|(kept, now)| format!("kept: {kept}\n now: {now}"))
        .collect();
    assert!(kept == now, "{}\nUPDATE_COVERAGE=1 writes it anew.", differ.join("\n"));
}
