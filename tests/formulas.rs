//! Every formula shows that its text is its code, that its units close, and that its example comes out.

#[path = "formulas/proof.rs"]
mod proof;
#[path = "formulas/reader.rs"]
mod reader;

use std::collections::BTreeSet;

use linkwright::engine::formula::{Condition, Example, Formula, Symbol};
use linkwright::engine::{formulas, notation};
use linkwright::quantity::Kind;
use linkwright::source::{GEOMETRY, Obtained, cite};
use proof::{Numbers, faults, half_of_last_digit, value_of};

#[test]
fn every_formula_is_proved() {
    let mut count = 0;
    let mut told = Vec::new();
    for (formula, example) in formulas::shown() {
        count += 1;
        told.extend(faults(formula, example).into_iter().map(|fault| format!("{}: {fault}", formula.id)));
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
    println!("{count} formulas proved");
}

#[test]
fn no_two_formulas_share_an_id() {
    let mut ids = BTreeSet::new();
    for formula in formulas::all() {
        assert!(ids.insert(formula.id), "{} stands twice", formula.id);
    }
}

#[test]
fn every_formula_in_the_files_is_listed() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/engine/formulas");
    let mut written = BTreeSet::new();
    for entry in std::fs::read_dir(folder).expect("the folder of formulas") {
        let source = std::fs::read_to_string(entry.expect("an entry").path()).expect("a file of formulas");
        for block in source.split("\nformula! {\n").skip(1) {
            let head = block.lines().map(str::trim).find(|line| !line.starts_with("//")).unwrap_or_default();
            let id = head.split(':').next().unwrap_or_default();
            assert!(written.insert(id.to_string()), "{id} is written twice");
        }
    }
    let listed: BTreeSet<String> = formulas::all().map(|formula| formula.id.to_string()).collect();
    assert_eq!(written, listed);
}

#[test]
fn values_put_in_for_symbols_read_as_the_same_calculation() {
    for formula in formulas::all() {
        let term = notation::parse(formula.text).expect("proved to read");
        let mut numbers = Numbers::named(formula.text);
        for _ in 0..50 {
            let point = numbers.point(formula, true);
            let value = |name: &str| value_of(formula, &point, name);
            let shown = notation::text_with(&term, &|name| format!("{}", value(name).unwrap_or(f64::NAN)));
            let read = notation::parse(&shown).unwrap_or_else(|fault| panic!("{}: {shown}: {fault:?}", formula.id));
            same(formula.id, &shown, notation::evaluate(&term, &value), notation::evaluate(&read, &|_| None));
        }
    }
}

#[test]
fn a_browser_shows_the_same_calculation() {
    for formula in formulas::all() {
        let term = notation::parse(formula.text).expect("proved to read");
        let seen = reader::seen(&notation::mathml(&term)).unwrap_or_else(|fault| panic!("{}: {fault}", formula.id));
        let read = notation::parse(&seen).unwrap_or_else(|fault| panic!("{}: {seen}: {fault:?}", formula.id));
        let mut numbers = Numbers::named(formula.text);
        for _ in 0..50 {
            let point = numbers.point(formula, false);
            let value = |name: &str| value_of(formula, &point, name);
            same(formula.id, &seen, notation::evaluate(&term, &value), notation::evaluate(&read, &value));
            let with_values =
                notation::mathml_with(&term, &|name| reader::number(value(name).unwrap_or(f64::NAN), " N"));
            reader::seen(&with_values).unwrap_or_else(|fault| panic!("{}: {fault}", formula.id));
        }
    }
}

fn same(id: &str, shown: &str, meant: Option<f64>, read: Option<f64>) {
    let (meant, read) = (meant.unwrap_or(f64::NAN), read.unwrap_or(f64::NAN));
    let alike = meant.is_nan() && read.is_nan() || (meant - read).abs() <= 1e-9 * meant.abs();
    assert!(alike, "{id}: {shown} comes to {read}, meant is {meant}");
}

fn text_of(text: &str, value: &str) -> String {
    notation::text_with(&notation::parse(text).expect("a text that reads"), &|_| value.to_string())
}

fn mathml_of(text: &str, value: &str) -> String {
    let term = notation::parse(text).expect("a text that reads");
    notation::mathml_with(&term, &|_| value.to_string())
}

#[test]
fn parentheses_written_are_parentheses_shown() {
    let shown = notation::mathml(&notation::parse("π² · E / (K · L)²").expect("a text that reads"));
    assert!(
        shown.contains(
            "<msup><mrow><mo>(</mo><mrow><mi>K</mi><mo>·</mo><mi>L</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>"
        ),
        "{shown}"
    );
    // The bar of a fraction groups by itself.
    let fraction = notation::mathml(&notation::parse("(a + b) / (c − d)").expect("a text that reads"));
    assert!(!fraction.contains("<mo>(</mo>"), "{fraction}");
}

#[test]
fn values_get_parentheses_where_they_would_mislead() {
    assert_eq!(text_of("a²", "2 in"), "(2 in)²");
    assert_eq!(text_of("a²", "−2"), "(−2)²");
    assert_eq!(text_of("√a", "2 in"), "√(2 in)");
    assert_eq!(text_of("1 − a", "−3"), "1 − (−3)");
    assert_eq!(text_of("1 − a", "-3"), "1 − (-3)");
    assert_eq!(text_of("−a", "−3"), "−(−3)");
    assert_eq!(text_of("2 · a", "−3"), "2 · (−3)");
    assert_eq!(text_of("6 / a", "12 N/mm"), "6 / (12 N/mm)");
    assert_eq!(text_of("6 / a", "1/2 in"), "6 / (1/2 in)");
    let raised = mathml_of("a²", "<mn>2</mn><mtext> in</mtext>");
    assert!(raised.contains("<mo>(</mo><mrow><mn>2</mn><mtext> in</mtext></mrow><mo>)</mo>"), "{raised}");
    let taken = mathml_of("1 − a", "<mn>−3</mn>");
    assert!(taken.contains("<mo>(</mo><mn>−3</mn><mo>)</mo>"), "{taken}");
}

#[test]
fn values_get_no_parentheses_where_none_are_needed() {
    assert_eq!(text_of("1 + a · 2", "3 in"), "1 + 3 in · 2");
    assert_eq!(text_of("a²", "2.5"), "2.5²");
    assert_eq!(text_of("(a) / 2", "−3 in"), "(−3 in) / 2");
    assert_eq!(text_of("min(a, 1)", "−3"), "min(−3, 1)");
    assert_eq!(notation::text(&notation::parse("P_e² · h′").expect("a text that reads")), "P_e² · h′");
}

#[test]
fn misspelled_texts_are_refused() {
    for text in
        ["", "a +", "a b", "2a", "(a", "a)", "sin a", "sin(a, b)", "min(a)", "a^b", "a · · b", "√x²", "1.2.3", "a ≥ b"]
    {
        assert!(notation::parse(text).is_err(), "{text:?} reads");
    }
    for text in ["a", "a > ", "a > b > c", "a = b"] {
        assert!(notation::comparison(text).is_err(), "{text:?} reads");
    }
}

const SIDES: &[Symbol] = &[
    Symbol { name: "a", kind: Kind::Length, meaning: "one side" },
    Symbol { name: "b", kind: Kind::Length, meaning: "other side" },
];

/// A right formula to break: the area of a rectangle whose first side is the longer one.
const RIGHT: Formula = Formula {
    id: "RECTANGLE",
    says: "Area of a rectangle.",
    result: Symbol { name: "A", kind: Kind::Area, meaning: "area" },
    text: "a · b",
    given: SIDES,
    code: |given| given[0] * given[1],
    holds: &[Condition { text: "a ≥ b", test: |given| given[0] >= given[1] }],
    source: cite(&GEOMETRY, "rectangle", Obtained::Computed),
};

const EXAMPLE: Example = Example { given: &[3.0, 2.0], gives: "6.00", unit: 1.0, origin: "own arithmetic" };

#[test]
fn a_wrong_formula_is_found_out() {
    let told = |formula: Formula| faults(&formula, &EXAMPLE).join("\n");
    assert_eq!(told(RIGHT), "");
    let wrong = [
        (Formula { text: "a · b · 1.0001", ..RIGHT }, "text gives"),
        (Formula { text: "a · (b", ..RIGHT }, "does not read"),
        (Formula { text: "a · a", ..RIGHT }, "b is given and not used"),
        (Formula { text: "a · b + c · c − c · c", ..RIGHT }, "c is used and not given"),
        (Formula { text: "a + a · b", ..RIGHT }, "units do not close"),
        (Formula { result: Symbol { name: "A", kind: Kind::Length, meaning: "area" }, ..RIGHT }, "units come to"),
        (
            Formula { holds: &[Condition { text: "a ≥ 2 · b", test: |given| given[0] >= given[1] }], ..RIGHT },
            "disagree",
        ),
        (
            Formula {
                holds: &[Condition { text: "a ≥ a · b", test: |given| given[0] >= given[0] * given[1] }],
                ..RIGHT
            },
            "unlike units",
        ),
        (Formula { holds: &[Condition { text: "a² ≥ 0 · b²", test: |_| true }], ..RIGHT }, "never changes its answer"),
        (Formula { source: cite(&GEOMETRY, "", Obtained::Computed), ..RIGHT }, "the place in its source is empty"),
        (
            Formula {
                given: &[
                    Symbol { name: "a", kind: Kind::Length, meaning: " " },
                    Symbol { name: "b", kind: Kind::Length, meaning: "other side" },
                ],
                ..RIGHT
            },
            "a is empty",
        ),
    ];
    for (formula, expected) in wrong {
        let found = told(formula);
        assert!(found.contains(expected), "{expected:?} was not told, but {found:?}");
    }
    let wrong = [
        (Example { gives: "6.01", ..EXAMPLE }, "its example gives"),
        (Example { given: &[2.0, 3.0], ..EXAMPLE }, "its example breaks"),
        (Example { origin: " ", ..EXAMPLE }, "the origin of its example is empty"),
    ];
    for (example, expected) in wrong {
        let found = faults(&RIGHT, &example).join("\n");
        assert!(found.contains(expected), "{expected:?} was not told, but {found:?}");
    }
}

#[test]
fn a_printed_number_promises_half_of_its_last_digit() {
    for (printed, promised) in [("8800.0", 0.05), ("17714", 0.5), ("49.35e3", 5.0), ("0.189375268", 0.5e-9)] {
        let found = half_of_last_digit(printed);
        assert!((found / promised - 1.0).abs() < 1e-12, "{printed}: {found}");
    }
}
