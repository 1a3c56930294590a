//! A calculation as it was done: formula, values put in, result, source, and what each letter means.

use super::pen::escaped;
use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::engine::formula::{Formula, Line, Symbol};
use linkwright::engine::notation::{mathml, mathml_with, parse, symbol_mathml};
use linkwright::inputs::NUMBERS;
use linkwright::quantity::{Kind, System, show, show_fine};

/// The lines of a calculation.
pub(super) fn lines(bench: Bench, lines: &[Line]) -> AnyView {
    if lines.is_empty() {
        return view! { <p>"Nothing had to be worked out for this."</p> }.into_any();
    }
    view! { <ol class="lines">{lines.iter().map(|line| view! { <li>{one(bench, line)}</li> }).collect_view()}</ol> }
        .into_any()
}

fn one(bench: Bench, line: &Line) -> AnyView {
    let system = bench.system.get();
    match line {
        Line::Worked { formula, given, result } => worked(formula, given, *result, system),
        Line::LookedUp { what, value, kind, row, source } => view! {
            <p><b>{*what}": "{show(*value, *kind, system)}</b>", from the row “"{*row}"”."</p>
            <p class="source">"Source: "{source.words()}</p>
        }
        .into_any(),
        Line::Chose(said) => view! { <p>{bench.say(said)}</p> }.into_any(),
        Line::Solved { what, value, kind, how } => {
            view! { <p><b>{*what}": "{show(*value, *kind, system)}</b>", "{*how}"."</p> }.into_any()
        }
        Line::Assumed { input, value, changed } => {
            let kind = NUMBERS.iter().find(|number| number.id == *input).map_or(Kind::Ratio, |number| number.kind);
            let words = if *changed { "as you entered it" } else { "assumed; you can change it" };
            view! { <p><b>{words::label(input)}": "{show(*value, kind, system)}</b>", "{words}"."</p> }.into_any()
        }
    }
}

fn worked(formula: &'static Formula, given: &[f64], result: f64, system: System) -> AnyView {
    let holds: Vec<String> = formula.holds.iter().map(|condition| condition.text.to_string()).collect();
    let meanings: Vec<_> =
        formula.given.iter().zip(given).map(|(symbol, value)| meaning(symbol, *value, system)).collect();
    view! {
        <p class="says">{formula.title()}</p>
        <div class="formula" inner_html=equation(formula, given, result, system)></div>
        <dl class="symbols">{meanings}</dl>
        {(!holds.is_empty()).then(|| view! { <p class="source">"Good where "{holds.join(" and ")}"."</p> })}
        <p class="source">"Source: "{formula.source.words()}</p>
    }
    .into_any()
}

fn meaning(symbol: &'static Symbol, value: f64, system: System) -> AnyView {
    view! {
        <div>
            <dt inner_html=format!("<math>{}</math>", symbol_mathml(symbol.name))></dt>
            <dd>{symbol.meaning}", "{show(value, symbol.kind, system)}</dd>
        </div>
    }
    .into_any()
}

/// The formula, the formula with its values, and what it comes to, one under the other.
fn equation(formula: &'static Formula, given: &[f64], result: f64, system: System) -> String {
    let name = symbol_mathml(formula.result.name);
    let row =
        |left: &str, right: String| format!("<math display=\"block\"><mrow>{left}<mo>=</mo>{right}</mrow></math>");
    let outcome = row(&name, number(&show_fine(result, formula.result.kind, system)));
    let Ok(term) = parse(formula.text) else { return outcome };
    let value = |symbol: &str| {
        let found = formula.given.iter().zip(given).find(|(row, _)| row.name == symbol);
        found.map_or_else(|| symbol_mathml(symbol), |(row, value)| number(&show_fine(*value, row.kind, system)))
    };
    format!("{}{}{}", row(&name, mathml(&term)), row("", mathml_with(&term, &value)), outcome)
}

/// A shown value as MathML: its number and its unit.
fn number(shown: &str) -> String {
    match shown.split_once(' ') {
        Some((digits, unit)) => {
            format!("<mrow><mn>{}</mn><mtext>&nbsp;{}</mtext></mrow>", escaped(digits), escaped(unit))
        }
        None => format!("<mn>{}</mn>", escaped(shown)),
    }
}
