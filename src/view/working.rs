//! A calculation as it was done: formula, values put in, result, source, and what each letter means.

use super::markup::{Markup, element, plain, said};
use super::words;
use linkwright::engine::formula::{Formula, Line};
use linkwright::engine::notation::{parse, text_with};
use linkwright::engine::sentence::spoken;
use linkwright::inputs::NUMBERS;
use linkwright::present::math::{self, Node};
use linkwright::quantity::{Kind, System, show, show_fine};
use linkwright::source::Cite;

/// The lines of a calculation, as markup.
pub(super) fn lines(lines: &[Line], system: System) -> Markup {
    if lines.is_empty() {
        return said("p", "Nothing had to be worked out for this.");
    }
    let lines: Markup = lines.iter().map(|line| element("li", one(line, system))).collect();
    element("ol class=\"lines\"", lines)
}

/// The lines of a calculation as plain text, to be sent or kept.
pub(super) fn as_text(asks: &str, lines: &[Line], system: System) -> String {
    let mut out = vec![asks.to_string()];
    for line in lines {
        match line {
            Line::Worked { formula, given, result } => {
                let name = formula.result.name;
                let value = |symbol: &str| {
                    let found = formula.given.iter().zip(given).find(|(row, _)| row.name == symbol);
                    found.map_or_else(|| symbol.to_string(), |(row, value)| show_fine(*value, row.kind, system))
                };
                out.push(format!("{}: {name} = {}", formula.title(), formula.text));
                if let Ok(term) = parse(formula.text) {
                    out.push(format!("  {name} = {}", text_with(&term, &value)));
                }
                let result = show_fine(*result, formula.result.kind, system);
                out.push(format!("  {name} = {result} ({})", formula.source.words()));
            }
            Line::LookedUp { what, value, kind, row, source } => {
                out.push(format!("{what}: {}, {row} ({})", show(*value, *kind, system), source.words()));
            }
            Line::Result(line) | Line::Chose(line) => out.push(spoken(line, system)),
            Line::Solved { what, value, kind, how } => {
                out.push(format!("{what}: {}, {how}", show(*value, *kind, system)));
            }
            Line::Assumed { input, value, .. } => {
                let kind = NUMBERS.iter().find(|number| number.id == *input).map_or(Kind::Ratio, |number| number.kind);
                out.push(format!("{}: {}", words::label(input), show(*value, kind, system)));
            }
        }
    }
    out.join("\n")
}

fn one(line: &Line, system: System) -> Markup {
    let named = |what: &str, value: f64, kind: Kind, rest: &str| {
        element("p", said("b", format!("{what}: {}", show(value, kind, system))) + plain(rest))
    };
    match line {
        Line::Worked { formula, given, result } => worked(formula, given, *result, system),
        Line::LookedUp { what, value, kind, row, source } => {
            named(what, *value, *kind, &format!(", from the row “{row}”.")) + cited(source)
        }
        Line::Result(line) => element("p", said("b", spoken(line, system))),
        Line::Chose(because) => said("p", spoken(because, system)),
        Line::Solved { what, value, kind, how } => named(what, *value, *kind, &format!(", {how}.")),
        Line::Assumed { input, value, changed } => {
            let kind = NUMBERS.iter().find(|number| number.id == *input).map_or(Kind::Ratio, |number| number.kind);
            let rest = if *changed { ", as you entered it." } else { ", assumed; you can change it." };
            named(words::label(input), *value, kind, rest)
        }
    }
}

/// A formula of more letters than this, with the values put in, may not fit on the narrowest screen.
const LONG: usize = 24;
/// Letters that a value with its unit takes beyond those of its symbol.
const VALUE: usize = 7;

fn cited(source: &Cite) -> Markup {
    said("p class=\"source\"", format!("Source: {}", source.words()))
}

fn worked(formula: &'static Formula, given: &[f64], result: f64, system: System) -> Markup {
    let mut out = said("p class=\"says\"", formula.title());
    // One that may be wider than a phone scrolls, and a keyboard must reach it to do so.
    let open = if formula.text.len() + VALUE * formula.given.len() > LONG {
        "div class=\"formula\" tabindex=\"0\""
    } else {
        "div class=\"formula\""
    };
    out += element(open, equation(formula, given, result, system));
    let mut symbols = Markup::default();
    for (symbol, value) in formula.given.iter().zip(given) {
        let name = element("dt", element("math", Markup::drawn(mathml(&math::symbol(symbol.name)))));
        let meaning = said("dd", format!("{}, {}", symbol.meaning, show(*value, symbol.kind, system)));
        symbols += element("div", name + meaning);
    }
    out += element("dl class=\"symbols\"", symbols);
    let holds: Vec<&str> = formula.holds.iter().map(|condition| condition.text).collect();
    let range = if holds.is_empty() {
        "Holds for every value accepted here.".to_string()
    } else {
        format!("Good where {}.", holds.join(" and "))
    };
    out += said("p class=\"source\"", range);
    out + cited(&formula.source)
}

/// The formula, the formula with its values, and what it comes to, one under the other.
fn equation(formula: &'static Formula, given: &[f64], result: f64, system: System) -> Markup {
    let row = |name: Option<&str>, right: Node| {
        let inside = Markup::drawn(mathml(&math::equation(name, right)));
        element("math display=\"block\"", inside)
    };
    let name = Some(formula.result.name);
    let outcome = row(name, math::quantity(&show_fine(result, formula.result.kind, system)));
    let Ok(term) = parse(formula.text) else { return outcome };
    let value = |symbol: &str| {
        let found = formula.given.iter().zip(given).find(|(row, _)| row.name == symbol);
        found.map(|(row, value)| show_fine(*value, row.kind, system))
    };
    row(name, math::with_symbols(&term)) + row(None, math::with_values(&term, &value)) + outcome
}

/// A written formula as MathML.
fn mathml(node: &Node) -> String {
    let all = |parts: &[Node]| parts.iter().map(mathml).collect::<String>();
    match node {
        Node::Number(word) => said("mn", word).written(),
        Node::Identifier(word) => said("mi", word).written(),
        Node::Operator(sign) => said("mo", sign).written(),
        Node::Text(word) => said("mtext", word).written(),
        Node::Row(parts) => format!("<mrow>{}</mrow>", all(parts)),
        Node::Fraction(parts) => format!("<mfrac>{}</mfrac>", all(parts.as_slice())),
        Node::Power(parts) => format!("<msup>{}</msup>", all(parts.as_slice())),
        Node::Subscript(parts) => format!("<msub>{}</msub>", all(parts.as_slice())),
        Node::SquareRoot(inside) => format!("<msqrt>{}</msqrt>", mathml(inside)),
        Node::Root(parts) => format!("<mroot>{}</mroot>", all(parts.as_slice())),
    }
}
