//! Every formula serves an answer, or is marked as one that is listed for reference only.

mod dice;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use dice::Dice;
use linkwright::document::{Document, Role, Use};
use linkwright::engine::fitting::borrowed::{BorrowedRodEnd, rod_end};
use linkwright::engine::fitting::hit::{HitReadings, after_hit, bowed_bar};
use linkwright::engine::formula::Line;
use linkwright::engine::sentence::spoken;
use linkwright::engine::shop::route::{Machine, Route, route};
use linkwright::engine::{formulas, report};
use linkwright::inputs::{CHOICES, NUMBERS, places};
use linkwright::quantity::{Kind, System, inch, lbf, show};
use linkwright::report::{Answer, LinkReport};

/// The ids of the formulas that an answer shows.
fn worked(answer: &Answer, found: &mut BTreeSet<&'static str>) {
    let workings = [&answer.link.working, &answer.loads.working];
    let findings = answer.findings.iter().map(|finding| &finding.working);
    let notes = answer.notes.iter().map(|note| &note.working);
    for line in workings.into_iter().chain(findings).chain(notes).flatten() {
        if let Line::Worked { formula, .. } = line {
            found.insert(formula.id);
        }
    }
}

/// The ids of the formulas that a route sheet shows.
fn made(route: &Route, found: &mut BTreeSet<&'static str>) {
    for line in route.steps.iter().flat_map(|step| &step.working).chain(&route.working) {
        if let Line::Worked { formula, .. } = line {
            found.insert(formula.id);
        }
    }
}

/// A rig whose links lack nothing, with a few other entries by chance.
fn rig(dice: &mut Dice) -> Document {
    let mut document = dice.rig();
    document.rig.weight = Some(lbf(2000.0 + 200.0 * dice.next(30) as f64));
    document.rig.usage = Some([Use::Easy, Use::Slow, Use::Hard, Use::Punished][dice.next(4)]);
    document.links.truncate(4);
    for link in &mut document.links {
        link.length = Some(inch(16.0 + dice.next(30) as f64));
        link.role = [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod, Role::DragLink][dice.next(5)];
    }
    document
}

/// The ids of the formulas that a link shows after a hit, and a borrowed rod end in it.
fn kept(document: &Document, answer: &Answer, found: &mut BTreeSet<&'static str>) {
    let readings = HitReadings { bow: Some(inch(0.1)), ..HitReadings::default() };
    let after = after_hit(answer, bowed_bar(document, 0).as_ref(), &readings);
    let end = &answer.link.ends[0];
    let lent = BorrowedRodEnd {
        thread: Some(end.thread.id),
        eye_to_end: Some(end.eye_to_end),
        thread_length: Some(end.thread_length),
        ..BorrowedRodEnd::default()
    };
    let lent = rod_end(document, 0, answer, 0, &lent);
    for line in after.working.iter().chain(&lent.working) {
        if let Line::Worked { formula, .. } = line {
            found.insert(formula.id);
        }
    }
}

fn served() -> BTreeSet<&'static str> {
    let mut found = BTreeSet::new();
    let mut dice = Dice(41);
    let mut gather = |document: &Document| {
        for (at, link) in report(document).links.iter().enumerate() {
            let Some(answer) = link.answer() else { continue };
            worked(answer, &mut found);
            // One link of each rig is enough for what every route works out alike.
            if at == 0 {
                made(&route(document, at, answer, &Machine::default()), &mut found);
            }
        }
    };
    for _ in 0..300 {
        gather(&rig(&mut dice));
    }
    let mut bent = Document::default();
    (bent.rig.weight, bent.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    (bent.links[0].length, bent.links[0].role) = (Some(inch(36.0)), Role::TrackBar);
    (bent.links[0].material, bent.links[0].bend_offset) = (Some("1026-dom"), Some(inch(1.5)));
    gather(&bent);
    // Tubes from those that stay straight to those that keep a bend.
    for tenths in 12..26_u8 {
        let mut tube = Document::default();
        (tube.rig.weight, tube.rig.usage) = (Some(lbf(4100.0)), Some(Use::Slow));
        (tube.links[0].length, tube.links[0].material) = (Some(inch(36.0)), Some("1026-dom"));
        tube.links[0].rosette_welds = true;
        (tube.links[0].outside_diameter, tube.links[0].wall) = (Some(inch(f64::from(tenths) / 10.0)), Some(inch(0.25)));
        gather(&tube);
    }
    // Each option of each choice, and each number at its least and most, with little else by chance.
    for role in [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod, Role::DragLink, Role::SwayLink] {
        let mut plain = Document::default();
        (plain.rig.weight, plain.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
        (plain.links[0].length, plain.links[0].role) = (Some(inch(30.0)), role);
        for choice in CHOICES {
            for option in (choice.options)() {
                let mut one = plain.clone();
                (choice.set)(&mut one, places(&plain, choice.scope)[0], Some(option.id));
                gather(&one);
            }
        }
        for input in NUMBERS {
            for value in [input.least, (input.least * 3.0 + input.most) / 4.0, input.most] {
                let mut one = plain.clone();
                (input.set)(&mut one, places(&plain, input.scope)[0], Some(input.whole(value)));
                gather(&one);
            }
        }
    }
    let mut tube = Document::default();
    (tube.rig.weight, tube.rig.usage) = (Some(lbf(4100.0)), Some(Use::Slow));
    (tube.links[0].length, tube.links[0].material) = (Some(inch(36.0)), Some("1026-dom"));
    kept(&tube, report(&tube).links[0].answer().expect("an answer"), &mut found);
    found
}

/// The names in the code of the engine, without its formulas and the reference values, which only compare.
fn named_in_the_engine() -> BTreeSet<String> {
    fn walk(folder: &Path, found: &mut BTreeSet<String>) {
        for entry in fs::read_dir(folder).expect("a folder of the project") {
            let path = entry.expect("an entry of a folder").path();
            let name = path.file_stem().expect("a name").to_string_lossy().to_string();
            if name == "formulas" || name == "reference" {
                continue;
            }
            if path.is_dir() {
                walk(&path, found);
                continue;
            }
            for line in fs::read_to_string(&path).expect("a text file").lines() {
                let code = line.split("//").next().unwrap_or_default();
                found.extend(code.split(|c: char| !(c.is_alphanumeric() || c == '_')).map(str::to_string));
            }
        }
    }
    let mut found = BTreeSet::new();
    walk(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/engine"), &mut found);
    found
}

/// What is listed as serving is shown in a working, or worked out without a sheet (see DEVELOPERS.md); what is listed as
/// a reference is neither.
#[test]
fn every_formula_serves_an_answer_or_is_a_reference() {
    let (shown, named) = (served(), named_in_the_engine());
    let mut told = Vec::new();
    for (formula, _) in formulas::serving() {
        if !shown.contains(formula.id) && !named.contains(formula.id) {
            told.push(format!("{} serves no answer: list it under references", formula.id));
        }
    }
    for (formula, _) in formulas::references() {
        if shown.contains(formula.id) || named.contains(formula.id) {
            told.push(format!("{} is used: list it with those that serve an answer", formula.id));
        }
    }
    assert!(told.is_empty(), "\n{}", told.join("\n"));
}

/// Formulas that no working shows, with why: their results stand there as values that were found, or in tables.
const UNSEEN: [(&str, &[&str]); 4] = [
    ("transfer matrix", &["WAVE_NUMBER", "PIECE_LEVER", "PIECE_SLOPE", "PIECE_DEFLECTION", "BEAM_COLUMN_DEFLECTION"]),
    ("thread tables", THREADS),
    ("readings on the rig", &["EYE_TO_EYE", "LENGTH_TURNS"]),
    ("whether a tube bends before its wall buckles", &["COMPACT_TUBE"]),
];
const THREADS: &[&str] = &[
    "BASIC_PITCH_DIAMETER",
    "EXTERNAL_MINOR_INCH",
    "EXTERNAL_MINOR_METRIC",
    "TENSILE_STRESS_AREA_INCH",
    "TENSILE_STRESS_AREA_METRIC",
    "UN_ALLOWANCE",
    "UN_PITCH_TOLERANCE",
    "UN_INTERNAL_PITCH_TOLERANCE",
    "UN_MAJOR_TOLERANCE",
    "UN_MINOR_TOLERANCE",
    "ISO_DEVIATION",
    "ISO_MAJOR_TOLERANCE",
    "ISO_PITCH_TOLERANCE",
    "ISO_INTERNAL_PITCH_TOLERANCE",
    "ISO_MINOR_TOLERANCE",
];

#[test]
fn what_no_working_shows_is_known() {
    let shown = served();
    let unseen: BTreeSet<&str> =
        formulas::serving().map(|(formula, _)| formula.id).filter(|id| !shown.contains(id)).collect();
    let mut known: BTreeSet<&str> = UNSEEN.iter().flat_map(|(_, ids)| ids.iter().copied()).collect();
    // Whoever fits a link asks for these by themselves; their workings are held where that is tested (tests/fitting_*).
    let on_the_rig = [formulas::fastening::ALL, formulas::turning::ALL, formulas::bent::ALL];
    let ids = on_the_rig.into_iter().flatten().map(|(formula, _)| formula.id);
    known.extend(ids.filter(|id| !shown.contains(id)));
    assert_eq!(unseen, known);
}

/// What a reader looks for first: demand, capacity and what they come to.
#[test]
fn a_strength_check_begins_with_its_result() {
    let (mut dice, mut told) = (Dice(43), 0);
    for _ in 0..100 {
        let document = rig(&mut dice);
        for answer in report(&document).links.iter().filter_map(LinkReport::answer) {
            for finding in answer.findings.iter().filter(|finding| !finding.rule) {
                let Some(used) = finding.utilization else { continue };
                let Some(Line::Result(line)) = finding.working.first() else {
                    panic!("{} at {used} does not tell its result", finding.id);
                };
                assert!(
                    spoken(line, System::Inch).contains(&show(used, Kind::Percent, System::Inch)),
                    "{line:?} {used}"
                );
                told += 1;
            }
        }
    }
    assert!(told > 500, "{told}");
}
