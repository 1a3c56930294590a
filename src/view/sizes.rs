//! Why this size: numbers against habit, the neighbors, and how firm it is.

use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::engine::tables::threads;
use linkwright::inputs::NUMBERS;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, Assumption, Candidate, Firmness};

/// Which rule decides, what the sizes around it would do, and where the answer tips over.
pub(super) fn why(bench: Bench, answer: &Answer) -> AnyView {
    let sizing = &answer.sizing;
    let trade =
        sizing.by_trade.as_ref().map(|trade| format!("Builders fit {}. Common practice, no source.", trade.words));
    let rows = [
        ("One size down", sizing.smaller.as_ref()),
        ("By the numbers", sizing.by_numbers.as_ref()),
        ("Recommended", sizing.recommended.as_ref()),
        ("One size up", sizing.larger.as_ref()),
    ];
    view! {
        <section class="part-of">
            <h3>"Why this size"</h3>
            <p id="governs">{bench.say(&sizing.governs)}</p>
            {sizing.overridden.then(|| view! { <p>"You chose another size than the recommended one; the rest of this page answers for yours."</p> })}
            <table class="sizes">
                <thead><tr><th scope="col">"Size"</th><th scope="col">"Bar and rod ends"</th><th scope="col">"Used at most"</th></tr></thead>
                <tbody>{rows.into_iter().filter_map(|(name, size)| size.map(|size| candidate(bench, name, size))).collect_view()}</tbody>
            </table>
            {trade.map(|words| view! { <p class="source">{words}</p> })}
            {firm(bench, &sizing.firm)}
        </section>
    }
    .into_any()
}

fn candidate(bench: Bench, name: &'static str, size: &Candidate) -> AnyView {
    let bore = if size.wall > 0.0 { size.outside_diameter - 2.0 * size.wall } else { 0.0 };
    let outside = words::size(size.outside_diameter, bore, bench.system.get());
    let thread = threads::find(size.thread).map_or(size.thread, words::thread);
    let used = bench.show(size.utilization, Kind::Percent);
    let verdict = if size.feasible { "" } else { ", fails" };
    view! {
        <tr class:chosen=name == "Recommended">
            <th scope="row">{name}</th>
            <td data-of="Bar and rod ends"><span>{outside}","</span>" "<span>{thread}</span></td>
            <td data-of="Used at most"><span>{used}{verdict}</span><small>{size.decides}</small></td>
        </tr>
    }
    .into_any()
}

/// How far each entry may go while the size stays as it is.
fn firm(bench: Bench, firm: &[Firmness]) -> AnyView {
    // A limit at the entry itself means that it does not hold even now; the verdict says so already.
    let fails = |row: &&Firmness| row.limit.is_some_and(|limit| limit <= row.now * (1.0 + 1e-9));
    if firm.iter().any(|row| fails(&row)) {
        return ().into_any();
    }
    let row = |firmness: &Firmness| {
        let limit = match firmness.limit {
            Some(limit) => bench.show_at_most(limit, firmness.kind),
            None => "anything you can enter".to_string(),
        };
        view! { <tr><th scope="row">{words::label(firmness.input)}</th><td data-of="Now">{bench.show(firmness.now, firmness.kind)}</td><td data-of="Holds up to">{limit}</td></tr> }
    };
    view! {
        <h4>"How firm that is"</h4>
        <table class="firm" id="firm">
            <caption>"The same size still holds when one of these alone goes this far."</caption>
            <thead><tr><th scope="col">"Entry"</th><th scope="col">"Now"</th><th scope="col">"Holds up to"</th></tr></thead>
            <tbody>{firm.iter().map(row).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

/// Every value nobody gave, with what stands behind it.
pub(super) fn assumed(bench: Bench, answer: &Answer) -> AnyView {
    let row = |value: &Assumption| {
        let standing =
            NUMBERS.iter().find(|number| number.id == value.input).map_or("", |number| number.standing.words());
        let words = if value.changed { "your entry" } else { standing };
        view! { <tr class:chosen=value.changed><th scope="row">{words::label(value.input)}</th><td data-of="Now">{bench.show(value.value, value.kind)}</td><td data-of="Stands on">{words}</td></tr> }
    };
    view! {
        <section class="part-of">
            <h3>"What it rests on"</h3>
            <details prop:open=move || bench.printing.get()>
                <summary>{format!("{} values you may replace under “Change a default”", answer.assumed.len())}</summary>
                <table class="assumed">
                    <thead><tr><th scope="col">"Value"</th><th scope="col">"Now"</th><th scope="col">"Stands on"</th></tr></thead>
                    <tbody>{answer.assumed.iter().map(row).collect_view()}</tbody>
                </table>
            </details>
        </section>
    }
    .into_any()
}
