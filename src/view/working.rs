//! A working: each line as it was computed, formula, values, result and source.

use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::engine::formula::{Formula, Line};
use linkwright::engine::notation;
use linkwright::inputs::NUMBERS;
use linkwright::quantity::{Kind, show_fine};
use linkwright::report::Finding;

/// A working that opens in place.
pub(super) fn folded(bench: Bench, title: &'static str, lines: &[Line]) -> AnyView {
    let lines = lines.iter().map(|line| one(bench, line)).collect_view();
    view! { <details class="working"><summary>{title}</summary><ol>{lines}</ol></details> }.into_any()
}

/// The working of one check, after that of the loads it rests on.
pub(super) fn working(bench: Bench, finding: &Finding, loads: &[Line]) -> AnyView {
    let lines = finding.working.iter().map(|line| one(bench, line)).collect_view();
    view! {
        <div class="working">
            <p class="note">{format!("Source: {}.", finding.source.words())}</p>
            {folded(bench, "The loads it rests on", loads)}
            <ol>{lines}</ol>
        </div>
    }
    .into_any()
}

fn one(bench: Bench, line: &Line) -> AnyView {
    let system = bench.system.get();
    match line {
        Line::Worked { formula, given, result } => worked(bench, formula, given, *result),
        Line::LookedUp { what, value, kind, row, source } => view! {
            <li>{format!("{what}: {} — {row}. ", show_fine(*value, *kind, system))}<small>{source.words()}</small></li>
        }
        .into_any(),
        Line::Chose(said) => view! { <li class="chose">{bench.say(said)}</li> }.into_any(),
        Line::Solved { what, value, kind, how } => {
            view! { <li>{format!("{what}: {}, found as {how}.", show_fine(*value, *kind, system))}</li> }.into_any()
        }
        Line::Assumed { input, value, changed } => {
            let kind = NUMBERS.iter().find(|number| number.id == *input).map_or(Kind::Ratio, |number| number.kind);
            let standing = if *changed { "your own value" } else { "assumed" };
            view! { <li>{format!("{}: {}, {standing}.", words::label(input), show_fine(*value, kind, system))}</li> }
                .into_any()
        }
    }
}

fn worked(bench: Bench, formula: &'static Formula, given: &[f64], result: f64) -> AnyView {
    let system = bench.system.get();
    let value_of = |name: &str| -> String {
        let at = formula.given.iter().position(|symbol| symbol.name == name);
        match at.and_then(|at| Some((formula.given.get(at)?, given.get(at)?))) {
            Some((symbol, value)) => show_fine(*value, symbol.kind, system),
            None => name.to_string(),
        }
    };
    let outcome = show_fine(result, formula.result.kind, system);
    let math = match notation::parse(formula.text) {
        Ok(term) => {
            let name = notation::symbol_mathml(formula.result.name);
            let values = notation::mathml_with(&term, &|name| format!("<mtext>{}</mtext>", value_of(name)));
            format!(
                "<math display=\"block\"><mrow>{name}<mo>=</mo>{}</mrow></math><math display=\"block\"><mrow><mo>=</mo>{values}</mrow></math><math display=\"block\"><mrow><mo>=</mo><mtext>{outcome}</mtext></mrow></math>",
                notation::mathml(&term)
            )
        }
        Err(_) => format!("<p>{}</p>", formula.text),
    };
    let symbols =
        formula.given.iter().map(|symbol| format!("{} {}", symbol.name, symbol.meaning)).collect::<Vec<_>>().join("; ");
    let holds = formula.holds.iter().map(|condition| condition.text).collect::<Vec<_>>().join(" and ");
    let holds = if holds.is_empty() { String::new() } else { format!(" Holds for {holds}.") };
    view! {
        <li class="worked">
            <p class="says">{formula.title()}</p>
            <div class="math" inner_html=math></div>
            <p class="where"><small>{format!("{symbols}. {}.{holds}", formula.source.words())}</small></p>
        </li>
    }
    .into_any()
}
