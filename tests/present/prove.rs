//! What the Prove view shows: every check once with its working, what is said beside them, and no number that is none.

#[path = "prove/beside.rs"]
mod beside;

use std::sync::atomic::{AtomicUsize, Ordering};

use crate::dice::{Dice, in_four_threads};
use crate::links::{answer, find, hard, sized};
use linkwright::document::{Document, Use};
use linkwright::engine::formula::Line;
use linkwright::engine::sentence::spoken;
use linkwright::engine::{self, notation};
use linkwright::present::findings::{self, Checks, Row};
use linkwright::present::math::{self, Node};
use linkwright::present::working::{self, Step};
use linkwright::present::{bending, forces};
use linkwright::quantity::{Kind, System, inch, lbf, show, show_fine};
use linkwright::report::{Answer, Verdict};

const SYSTEMS: [System; 2] = [System::Inch, System::Metric];

/// Links that pass, fail, bend, and rest on a changed default.
fn worked() -> Vec<Document> {
    let mut changed = hard();
    changed.rig.drop = Some(inch(0.1));
    let mut heavy = sized(1.5, "wide-12", "wide-16");
    heavy.rig.weight = Some(lbf(9000.0));
    let mut tube = hard();
    tube.links[0].material = Some("1026-dom");
    vec![hard(), changed, heavy, tube]
}

/// A line of the list, which must be there.
fn row<'a>(checks: &'a Checks, id: &str) -> &'a Row {
    checks.find(id).unwrap_or_else(|| panic!("{id} is not in the list"))
}

/// The list of checks holds every finding and every note once, and the worst of each group stands first.
fn is_complete(answer: &Answer) {
    let checks = findings::checks(answer, System::Inch);
    let mut listed: Vec<&str> = checks.rows().map(|row| row.id).collect();
    let mut there: Vec<&str> = answer.findings.iter().map(|it| it.id).collect();
    there.extend(answer.notes.iter().map(|it| it.id).chain(["lengths", "loads"]));
    listed.sort_unstable();
    there.sort_unstable();
    assert_eq!(listed, there);
    for (group, fit) in checks.groups.iter().zip([false, true]) {
        for rows in [&group.near, &group.far] {
            let found: Vec<_> = rows.iter().map(|row| find(answer, row.id)).collect();
            assert!(found.iter().all(|it| it.rule == fit), "{} in {}", found[0].id, group.title);
            let rank = |at: usize| (found[at].verdict, found[at].utilization.unwrap_or(0.0));
            for at in 1..found.len() {
                assert!(rank(at - 1) >= rank(at), "{} stands before {}", found[at - 1].id, found[at].id);
            }
        }
        for row in &group.far {
            let it = find(answer, row.id);
            let quiet =
                it.is_left_open() || it.verdict == Verdict::Passes && it.utilization.is_some_and(|it| it < 0.63);
            assert!(quiet, "{} is folded away", row.id);
        }
        let counted = group.far_line.split(' ').next().and_then(|word| word.parse().ok());
        assert_eq!(counted, Some(group.far.len()));
    }
}

/// The working of every line tells what it came to, on the page and as text.
fn is_worked(answer: &Answer, system: System) {
    for row in findings::checks(answer, system).rows() {
        let lines = findings::working(answer, row.id);
        let text = working::as_text(row.title, lines, system);
        assert!(text.starts_with(row.title), "{text}");
        let steps = working::steps(lines, system);
        assert_eq!(steps.len(), lines.len());
        for (line, step) in lines.iter().zip(&steps) {
            shows(line, step, &text, system);
        }
        let Some(finding) = answer.findings.iter().find(|it| it.id == row.id) else { continue };
        assert_eq!(row.verdict, Some((finding.verdict, finding.word())));
        if let Some(used) = finding.utilization {
            let [shown, finely] = [show, show_fine].map(|show| show(used, Kind::Percent, system));
            assert_eq!(row.used.as_deref(), Some(shown.as_str()));
            // In the line of the result, or as the result of its last formula.
            // Compression that alone just buckles the bar counts as 101 % at least (`checks::actions::buckles`).
            let at_least = (used - 1.01).abs() < 1e-12 && text.contains("U = n · S / R");
            let there = text.contains(&shown) || text.contains(&finely) || at_least;
            assert!(there, "{}: {shown} is not in its working:\n{text}", row.id);
        }
    }
}

/// A line of a calculation shows its values, on the page and as text.
fn shows(line: &Line, step: &Step, text: &str, system: System) {
    let said = |value: f64, kind: Kind| format!(": {}", show(value, kind, system));
    match (line, step) {
        (Line::Result(line), Step::Result(shown)) | (Line::Chose(line), Step::Chosen(shown)) => {
            assert_eq!(*shown, spoken(line, system));
            assert!(text.contains(shown.as_str()), "{shown} is not in\n{text}");
        }
        (Line::Worked { formula, given, result }, Step::Worked(shown)) => {
            let [symbols, values, outcome] = shown.equations.as_slice() else { panic!("{shown:?}") };
            let term = notation::parse(formula.text).expect("tests/formulas.rs reads every formula");
            assert_eq!(*symbols, math::equation(Some(formula.result.name), math::with_symbols(&term)));
            let came_to = show_fine(*result, formula.result.kind, system);
            assert_eq!(*outcome, math::equation(Some(formula.result.name), math::quantity(&came_to)));
            assert!(text.contains(&format!("{} = {came_to}", formula.result.name)), "{came_to} is not in\n{text}");
            assert_eq!(shown.symbols.len(), given.len());
            for ((symbol, value), meaning) in formula.given.iter().zip(given).zip(&shown.symbols) {
                let written = math::quantity(&show_fine(*value, symbol.kind, system));
                assert!(contains(values, &written), "{}: {written:?} is not in {values:?}", formula.id);
                assert_eq!(meaning.symbol, math::symbol(symbol.name));
                assert_eq!(meaning.words, format!("{}, {}", symbol.meaning, show(*value, symbol.kind, system)));
            }
        }
        (Line::LookedUp { value, kind, source, .. }, Step::LookedUp { value: shown, source: cited, .. }) => {
            assert!(shown.ends_with(&said(*value, *kind)) && text.contains(shown.as_str()), "{shown} in\n{text}");
            assert!(cited.ends_with(&source.words()), "{cited}");
        }
        (Line::Solved { value, kind, .. }, Step::Solved { value: shown, .. }) => {
            assert!(shown.ends_with(&said(*value, *kind)) && text.contains(shown.as_str()), "{shown} in\n{text}");
        }
        (Line::Assumed { changed, .. }, Step::Assumed { value: shown, from }) => {
            assert!(text.contains(shown.as_str()), "{shown} is not in\n{text}");
            assert_eq!(from.contains("as you entered it"), *changed);
        }
        _ => panic!("{line:?} is shown as {step:?}"),
    }
}

/// Whether a written formula has another in it.
fn contains(whole: &Node, part: &Node) -> bool {
    whole == part
        || match whole {
            Node::Row(parts) => parts.iter().any(|inside| contains(inside, part)),
            Node::Fraction(parts) | Node::Power(parts) | Node::Subscript(parts) | Node::Root(parts) => {
                parts.iter().any(|inside| contains(inside, part))
            }
            Node::SquareRoot(inside) => contains(inside, part),
            Node::Number(_) | Node::Identifier(_) | Node::Operator(_) | Node::Text(_) => false,
        }
}

/// No text shows a number that is none. Debug text has every string of what is shown in it.
fn has_only_numbers(shown: &impl std::fmt::Debug) {
    let text = format!("{shown:?}");
    let odd = |word: &&str| ["NaN", "inf", "-inf", "—", "∞"].contains(word);
    let between = |c: char| c.is_whitespace() || matches!(c, '"' | ',' | ';' | '(' | ')' | '.' | '\\');
    let mut words = text.split(between);
    // A dash between words is a dash; one in place of a number stands before a unit or alone, as no sentence here does.
    assert_eq!(words.find(odd), None, "{text}");
}

fn shows_numbers(document: &Document, index: usize, answer: &Answer, system: System) {
    let checks = findings::checks(answer, system);
    let steps: Vec<_> = checks.rows().map(|row| working::steps(findings::working(answer, row.id), system)).collect();
    let along = engine::along(document, index);
    has_only_numbers(&checks);
    has_only_numbers(&steps);
    has_only_numbers(&bending::rows(&along, system));
    has_only_numbers(&bending::explanation(document, answer, &along, system));
    has_only_numbers(&forces::forces(answer, system));
}

#[test]
fn every_check_is_shown_once_with_its_working() {
    for document in worked() {
        let answer = answer(&document);
        is_complete(&answer);
        SYSTEMS.iter().for_each(|system| is_worked(&answer, *system));
        SYSTEMS.iter().for_each(|system| shows_numbers(&document, 0, &answer, *system));
    }
}

#[test]
fn every_check_of_any_link_is_shown_once_with_its_working() {
    let answers = AtomicUsize::new(0);
    in_four_threads(7, |mut dice| {
        for _ in 0..30 {
            let document = with_answers(dice.rig(), &mut dice);
            for (index, link) in engine::report(&document).links.iter().enumerate() {
                let Some(answer) = link.answer() else { continue };
                answers.fetch_add(1, Ordering::Relaxed);
                is_complete(answer);
                let system = SYSTEMS[dice.next(2)];
                is_worked(answer, system);
                shows_numbers(&document, index, answer, system);
            }
        }
    });
    let answers = answers.into_inner();
    assert!(answers > 200, "only {answers} links had an answer");
}

/// What an answer cannot do without, where the dice left it open.
fn with_answers(mut document: Document, dice: &mut Dice) -> Document {
    document.rig.weight.get_or_insert(lbf(2000.0 + dice.next(5000) as f64));
    document.rig.usage.get_or_insert(Use::Hard);
    for link in &mut document.links {
        link.length.get_or_insert(inch(18.0 + dice.next(30) as f64));
    }
    document
}

#[test]
fn the_worst_check_stands_first_and_names_what_it_rests_on() {
    let heavy = answer(&worked()[2]);
    let checks = findings::checks(&heavy, System::Inch);
    let first = &checks.groups[0].near[0];
    assert_eq!(first.verdict.map(|it| it.0), Some(Verdict::Fails));
    let changed = findings::checks(&answer(&worked()[1]), System::Inch);
    let words = row(&changed, "bar-bending").changed.as_deref().unwrap_or_default();
    assert_eq!(words, "Uses your own drop before it lands.");
    assert_eq!(row(&changed, "jam-nut-seat").changed, None);
    let source = row(&changed, "bar-bending").source.as_deref().unwrap_or_default();
    assert!(source.starts_with("Source: ") && source.ends_with('.'), "{source}");
    let rule = row(&changed, "jam-nut-seat");
    assert!(rule.sentence.ends_with("not of strength."), "{}", rule.sentence);
}

#[test]
fn a_calculation_without_lines_has_no_steps() {
    let answer = answer(&hard());
    assert_eq!(findings::working(&answer, "no-such-check"), &[]);
    assert_eq!(working::as_text("Title", &[], System::Inch), "Title");
}
