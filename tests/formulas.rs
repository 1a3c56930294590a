//! Every formula shows that its text is its code, that its units close, and that its example comes out.

#[path = "formulas/proof.rs"]
mod proof;
#[path = "formulas/reader.rs"]
mod reader;

use std::collections::BTreeSet;

use linkwright::engine::formula::{Condition, Example, Formula, Symbol};
use linkwright::engine::{formulas, notation};
use linkwright::present::math::{self, Node};
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
fn a_written_formula_reads_as_the_same_calculation() {
    for formula in formulas::all() {
        let term = notation::parse(formula.text).expect("proved to read");
        let seen = seen(formula.id, &math::with_symbols(&term));
        let read = notation::parse(&seen).unwrap_or_else(|fault| panic!("{}: {seen}: {fault:?}", formula.id));
        let mut numbers = Numbers::named(formula.text);
        for _ in 0..50 {
            let point = numbers.point(formula, false);
            let value = |name: &str| value_of(formula, &point, name);
            same(formula.id, &seen, notation::evaluate(&term, &value), notation::evaluate(&read, &value));
        }
    }
}

#[test]
fn values_put_into_a_written_formula_read_as_the_same_calculation() {
    for formula in formulas::all() {
        let term = notation::parse(formula.text).expect("proved to read");
        let mut numbers = Numbers::named(formula.text);
        for _ in 0..50 {
            let point = numbers.point(formula, true);
            let value = |name: &str| value_of(formula, &point, name);
            let written = math::with_values(&term, &|name| Some(format!("{} N", value(name)?)));
            let seen = seen(formula.id, &written).replace("\u{a0}N", "");
            let read = notation::parse(&seen).unwrap_or_else(|fault| panic!("{}: {seen}: {fault:?}", formula.id));
            same(formula.id, &seen, notation::evaluate(&term, &value), notation::evaluate(&read, &|_| None));
        }
    }
}

fn seen(id: &str, written: &Node) -> String {
    reader::seen(written).unwrap_or_else(|fault| panic!("{id}: {fault}"))
}

fn same(id: &str, shown: &str, meant: Option<f64>, read: Option<f64>) {
    let (meant, read) = (meant.unwrap_or(f64::NAN), read.unwrap_or(f64::NAN));
    let alike = meant.is_nan() && read.is_nan() || (meant - read).abs() <= 1e-9 * meant.abs();
    assert!(alike, "{id}: {shown} comes to {read}, meant is {meant}");
}

fn text_of(text: &str, value: &str) -> String {
    notation::text_with(&notation::parse(text).expect("a text that reads"), &|_| value.to_string())
}

fn written_of(text: &str, value: &str) -> Node {
    math::with_values(&notation::parse(text).expect("a text that reads"), &|_| Some(value.to_string()))
}

/// Parts in parentheses.
fn in_parentheses<const N: usize>(inside: [Node; N]) -> Node {
    let mut parts = vec![Node::Operator("(")];
    parts.extend(inside);
    parts.push(Node::Operator(")"));
    Node::Row(parts)
}

#[test]
fn parentheses_written_are_parentheses_shown() {
    let [k, l] = ["K", "L"].map(|name| Node::Identifier(name.to_string()));
    let base = in_parentheses([Node::Row(vec![k, Node::Operator("·"), l])]);
    let squared = Node::Power(Box::new([base, Node::Number("2".to_string())]));
    let shown = math::with_symbols(&notation::parse("π² · E / (K · L)²").expect("a text that reads"));
    assert!(matches!(&shown, Node::Fraction(parts) if parts[1] == squared), "{shown:?}");
    // The bar of a fraction groups by itself.
    let fraction = math::with_symbols(&notation::parse("(a + b) / (c − d)").expect("a text that reads"));
    assert!(!format!("{fraction:?}").contains("Operator(\"(\")"), "{fraction:?}");
}

#[test]
fn an_index_is_set_low() {
    let index = |index| Node::Subscript(Box::new([Node::Identifier("P".to_string()), index]));
    assert_eq!(math::symbol("P_e"), index(Node::Identifier("e".to_string())));
    assert_eq!(math::symbol("P_12"), index(Node::Number("12".to_string())));
    assert_eq!(math::symbol("h′"), Node::Identifier("h′".to_string()));
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
    let two_inches = Node::Row(vec![Node::Number("2".to_string()), Node::Text("\u{a0}in".to_string())]);
    let squared = Node::Power(Box::new([in_parentheses([two_inches.clone()]), Node::Number("2".to_string())]));
    assert_eq!(written_of("a²", "2 in"), squared);
    let taken = in_parentheses([Node::Number("−3".to_string())]);
    let one = Node::Number("1".to_string());
    assert_eq!(written_of("1 − a", "−3"), Node::Row(vec![one, Node::Operator("−"), taken]));
    // Neither a root sign nor a fraction bar needs any.
    assert_eq!(written_of("√a", "2 in"), Node::SquareRoot(Box::new(two_inches.clone())));
    let halved = Node::Fraction(Box::new([two_inches, Node::Number("2".to_string())]));
    assert_eq!(written_of("a / 2", "2 in"), halved);
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
