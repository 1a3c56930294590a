//! A calculation as it was done: formula, values put in, result, source, and what each letter means.

use super::Formula;
use leptos::prelude::*;
use linkwright::present::working::{Meaning, NOTHING, Step, WorkedFormula};

/// The lines of a calculation.
#[component]
pub(crate) fn WorkingLines(
    /// The lines.
    #[prop(into)]
    steps: Signal<Vec<Step>>,
) -> impl IntoView {
    let lines = move || steps.get().into_iter().map(|step| view! { <li>{line(step)}</li> }).collect_view();
    view! {
        <Show when=move || steps.with(|steps| !steps.is_empty()) fallback=|| view! { <p>{NOTHING}</p> }>
            <ol class="lines">{lines}</ol>
        </Show>
    }
}

/// What stands in a line.
fn line(step: Step) -> AnyView {
    match step {
        Step::Result(sentence) => view! { <p><b>{sentence}</b></p> }.into_any(),
        Step::Worked(worked) => view! { <Worked worked=*worked /> }.into_any(),
        Step::LookedUp { value, row, source } => {
            view! { <p><b>{value}</b>{row}</p><p class="source">{source}</p> }.into_any()
        }
        Step::Chosen(sentence) => view! { <p>{sentence}</p> }.into_any(),
        Step::Solved { value, how } => view! { <p><b>{value}</b>{how}</p> }.into_any(),
        Step::Assumed { value, from } => view! { <p><b>{value}</b>{from}</p> }.into_any(),
    }
}

/// A formula with its values and its result. One that may be wider than a phone scrolls, and a keyboard must reach it to
/// do so.
#[component]
fn Worked(worked: WorkedFormula) -> impl IntoView {
    let equations = worked.equations.into_iter().map(|written| view! { <Formula written block=true /> });
    let meaning = |Meaning { symbol, words }| {
        view! {
            <div>
                <dt><Formula written=symbol /></dt>
                <dd>{words}</dd>
            </div>
        }
    };

    view! {
        <p class="says">{worked.title}</p>
        <div class="formula" tabindex=worked.wide.then_some("0")>{equations.collect_view()}</div>
        <dl class="symbols">{worked.symbols.into_iter().map(meaning).collect_view()}</dl>
        <p class="source">{worked.range}</p>
        <p class="source">{worked.source}</p>
    }
}
