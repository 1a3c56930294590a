//! Why this size: numbers and habit, the next size each way, and how firm it is.

use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, Candidate, Firmness};

/// The part of the answer that says why this size.
pub(super) fn sizes(bench: Bench, answer: &Answer) -> AnyView {
    let sizing = &answer.sizing;
    let chosen = sizing.overridden.then(|| {
        let recommended = sizing.recommended.as_ref().map(|candidate| name(bench, candidate)).unwrap_or_default();
        view! { <p class="note">{format!("You chose this size. Recommended: {recommended}.")}</p> }
    });
    let row = |what: &'static str, candidate: &Option<Candidate>| {
        candidate.as_ref().map(|candidate| {
            let outcome = format!(
                "{} of the limit at the {}",
                bench.show(candidate.utilization, Kind::Percent),
                candidate.decides
            );
            view! { <tr><th scope="row">{what}</th><td>{name(bench, candidate)}</td><td>{outcome}</td></tr> }
        })
    };
    let trade = sizing.by_trade.as_ref().map(|trade| {
        view! { <tr><th scope="row">"Builders fit"</th><td colspan="2">{trade.words}" "<small>"(common practice, no source)"</small></td></tr> }
    });
    view! {
        <h3>"Why this size"</h3>
        <p id="governs">{bench.say(&sizing.governs)}</p>
        {chosen}
        <table class="sizes">
            <caption class="unseen">"Sizes compared"</caption>
            <tbody>
                {row("By the numbers", &sizing.by_numbers)}
                {trade}
                {row("Next size down", &sizing.smaller)}
                {row("Next size up", &sizing.larger)}
            </tbody>
        </table>
        {firm(bench, &sizing.firm)}
    }
    .into_any()
}

fn name(bench: Bench, candidate: &Candidate) -> String {
    let bore = if candidate.wall > 0.0 { candidate.outside_diameter - 2.0 * candidate.wall } else { 0.0 };
    format!("{} with {}", words::size(candidate.outside_diameter, bore, bench.system.get()), candidate.thread)
}

/// How far each entry may go before the link as shown stops holding.
fn firm(bench: Bench, firm: &[Firmness]) -> AnyView {
    let limits: Vec<String> = firm
        .iter()
        .filter_map(|row| {
            let limit = row.limit?;
            // A limit that equals the entry means it does not hold even now; the verdict says so already.
            (limit > row.now * (1.0 + 1e-9))
                .then(|| format!("{} {}", words::lower(words::label(row.input)), bench.show_at_most(limit, row.kind)))
        })
        .collect();
    if limits.is_empty() {
        return ().into_any();
    }
    view! { <p id="firm">{format!("This size holds up to {}, each taken alone.", limits.join("; or "))}</p> }.into_any()
}
