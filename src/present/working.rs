//! A calculation as it was done, line by line: formula, values put in, result, source, and what each letter means.

use super::math::{self, Node};
use super::words;
use crate::engine::formula::{Formula, Line};
use crate::engine::notation::{parse, text_with};
use crate::engine::sentence::spoken;
use crate::inputs::NUMBERS;
use crate::quantity::{Kind, System, show, show_fine};
use crate::source::Cite;

/// What stands in place of a calculation without lines.
pub const NOTHING: &str = "Nothing had to be worked out for this.";

/// One line of a calculation, ready to be shown.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// What the whole calculation comes to.
    Result(String),
    /// A formula with its values and its result.
    Worked(Box<WorkedFormula>),
    /// A value read from a table.
    LookedUp {
        /// What it is, and the value.
        value: String,
        /// The row of the table, in words.
        row: String,
        /// Where the table comes from.
        source: String,
    },
    /// A decision between two ways.
    Chosen(String),
    /// A value found by trying.
    Solved {
        /// What it is, and the value.
        value: String,
        /// How it was found, in words.
        how: String,
    },
    /// A default, or what the user entered in its place.
    Assumed {
        /// What it is, and the value.
        value: String,
        /// Which of the two, in words.
        from: &'static str,
    },
}

/// A formula as it was worked.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedFormula {
    /// What it gives.
    pub title: &'static str,
    /// The formula, the formula with its values, and what it comes to: one under the other.
    pub equations: Vec<Node>,
    /// Whether an equation may be wider than a phone.
    pub wide: bool,
    /// What each letter means.
    pub symbols: Vec<Meaning>,
    /// Where it holds.
    pub range: String,
    /// Where it comes from.
    pub source: String,
}

/// What a letter of a formula means, and its value.
#[derive(Debug, Clone, PartialEq)]
pub struct Meaning {
    /// The letter, as it is written.
    pub symbol: Node,
    /// What it means, and its value.
    pub words: String,
}

/// A formula of more letters than this, with the values put in, may not fit on the narrowest screen.
const LONG: usize = 24;
/// Letters that a value with its unit takes beyond those of its symbol.
const VALUE: usize = 7;

/// The lines of a calculation.
pub fn steps(lines: &[Line], system: System) -> Vec<Step> {
    lines.iter().map(|line| step(line, system)).collect()
}

fn step(line: &Line, system: System) -> Step {
    let named = |what: &str, value: f64, kind: Kind| format!("{what}: {}", show(value, kind, system));
    match line {
        Line::Result(said) => Step::Result(spoken(said, system)),
        Line::Worked { formula, given, result } => Step::Worked(Box::new(worked(formula, given, *result, system))),
        Line::LookedUp { what, value, kind, row, source } => Step::LookedUp {
            value: named(what, *value, *kind),
            row: format!(", from the row “{row}”."),
            source: cited(source),
        },
        Line::Chose(said) => Step::Chosen(spoken(said, system)),
        Line::Solved { what, value, kind, how } => {
            Step::Solved { value: named(what, *value, *kind), how: format!(", {how}.") }
        }
        Line::Assumed { input, value, changed } => Step::Assumed {
            value: named(words::label(input), *value, kind_of(input)),
            from: if *changed { ", as you entered it." } else { ", assumed; you can change it." },
        },
    }
}

/// What an input measures.
fn kind_of(input: &str) -> Kind {
    NUMBERS.iter().find(|number| number.id == input).map_or(Kind::Ratio, |number| number.kind)
}

/// Where something comes from, as a line of its own.
fn cited(source: &Cite) -> String {
    format!("Source: {}", source.words())
}

fn worked(formula: &Formula, given: &[f64], result: f64, system: System) -> WorkedFormula {
    let meanings = formula.given.iter().zip(given).map(|(symbol, value)| Meaning {
        symbol: math::symbol(symbol.name),
        words: format!("{}, {}", symbol.meaning, show(*value, symbol.kind, system)),
    });
    let holds: Vec<&str> = formula.holds.iter().map(|condition| condition.text).collect();
    WorkedFormula {
        title: formula.title(),
        equations: equations(formula, given, result, system),
        wide: formula.text.len() + VALUE * formula.given.len() > LONG,
        symbols: meanings.collect(),
        range: if holds.is_empty() {
            "Holds for every value accepted here.".to_string()
        } else {
            format!("Good where {}.", holds.join(" and "))
        },
        source: cited(&formula.source),
    }
}

/// The formula, the formula with its values, and what it comes to.
fn equations(formula: &Formula, given: &[f64], result: f64, system: System) -> Vec<Node> {
    let name = Some(formula.result.name);
    let result = math::equation(name, math::quantity(&show_fine(result, formula.result.kind, system)));
    let Ok(term) = parse(formula.text) else { return vec![result] };
    let values = math::with_values(&term, &|symbol| value_of(formula, given, symbol, system));
    vec![math::equation(name, math::with_symbols(&term)), math::equation(None, values), result]
}

/// The value put in for a symbol, finely written.
fn value_of(formula: &Formula, given: &[f64], symbol: &str, system: System) -> Option<String> {
    let (found, value) = formula.given.iter().zip(given).find(|(found, _)| found.name == symbol)?;
    Some(show_fine(*value, found.kind, system))
}

/// A calculation as plain text, to be sent or saved.
pub fn as_text(title: &str, lines: &[Line], system: System) -> String {
    let mut out = vec![title.to_string()];
    for line in lines {
        match line {
            Line::Worked { formula, given, result } => out.extend(worked_text(formula, given, *result, system)),
            Line::LookedUp { what, value, kind, row, source } => {
                out.push(format!("{what}: {}, {row} ({})", show(*value, *kind, system), source.words()));
            }
            Line::Result(said) | Line::Chose(said) => out.push(spoken(said, system)),
            Line::Solved { what, value, kind, how } => {
                out.push(format!("{what}: {}, {how}", show(*value, *kind, system)));
            }
            Line::Assumed { input, value, .. } => {
                out.push(format!("{}: {}", words::label(input), show(*value, kind_of(input), system)));
            }
        }
    }
    out.join("\n")
}

fn worked_text(formula: &Formula, given: &[f64], result: f64, system: System) -> Vec<String> {
    let name = formula.result.name;
    let value = |symbol: &str| value_of(formula, given, symbol, system).unwrap_or_else(|| symbol.to_string());
    let mut out = vec![format!("{}: {name} = {}", formula.title(), formula.text)];
    if let Ok(term) = parse(formula.text) {
        out.push(format!("  {name} = {}", text_with(&term, &value)));
    }
    let result = show_fine(result, formula.result.kind, system);
    out.push(format!("  {name} = {result} ({})", formula.source.words()));
    out
}
