//! The answer: what to buy and cut, how far it adjusts, what gives first, and why this size.

use super::state::Bench;
use super::{ends, findings, send, sizes, verdict, words};
use leptos::prelude::*;
use linkwright::document::Role;
use linkwright::quantity::Kind;
use linkwright::report::{Adjustment, Answer, Verdict};

/// Everything below the drawing.
pub(super) fn answer(bench: Bench, answer: &Answer) -> AnyView {
    let made = &answer.link;
    let cautions: Vec<String> = answer.cautions.iter().map(|said| bench.say(said)).collect();
    let lead = cautions.iter().take(2).cloned().map(|said| view! { <p>{said}</p> }).collect_view();
    let rest = cautions.iter().skip(2).cloned().map(|said| view! { <li>{said}</li> }).collect_view();
    view! {
        <div class="answer" class:stale=move || bench.stale()>
            {move || bench.stale().then(|| view! { <p class="stale-note">"From your last good entry."</p> })}
            {nothing_holds(answer)}
            <h2 id="headline">{words::headline(made, bench.system.get())}</h2>
            <p class="outcome">{verdict::mark(answer.verdict)} " " {weakest(bench, answer)}</p>
            <dl class="figures">
                {figure("Bar, finished", "bar-length", bench.show(made.bar, Kind::Length))}
                {figure("Saw to", "cut-length", bench.show(made.cut, Kind::Length))}
                {figure("Bar weight", "bar-weight", bench.show(made.bar_weight, Kind::Weight))}
                {figure("Eye to eye", "eye-to-eye", bench.show(made.length, Kind::Length))}
            </dl>
            {adjustment(bench, &made.adjustment)}
            <div class="cautions" role="note" aria-label="Before you build it">{lead}</div>
            {sizes::sizes(bench, answer)}
            {ends::ends(bench, made)}
            <h3>"What was assumed to happen"</h3>
            <p class="story">{bench.say(&answer.loads.story)}</p>
            {findings::findings(bench, answer)}
            <details class="more-cautions"><summary>"More to mind"</summary><ul>{rest}</ul></details>
            {super::checklist::checklist(bench, answer)}
            {send::send(bench, answer)}
        </div>
    }
    .into_any()
}

fn figure(name: &'static str, id: &'static str, value: String) -> AnyView {
    view! { <div><dt>{name}</dt><dd id=id>{value}</dd></div> }.into_any()
}

/// A warning in front of a link that nothing in stock would make good.
fn nothing_holds(answer: &Answer) -> AnyView {
    if answer.verdict != Verdict::Fails {
        return ().into_any();
    }
    let words = match (&answer.sizing.recommended, answer.sizing.overridden) {
        (None, _) => "No stock size holds. This is the largest that was tried, to show what gives first.",
        (Some(_), true) => "The size you chose does not hold. Clear it to see the recommended one.",
        (Some(_), false) => "This link does not hold as entered.",
    };
    view! { <p class="stop">{words}</p> }.into_any()
}

/// The weakest part, where it sits and what is left of it.
fn weakest(bench: Bench, answer: &Answer) -> AnyView {
    let Some(finding) = answer.weakest.and_then(|index| answer.findings.get(index)) else { return ().into_any() };
    let used = finding.utilization.map(|used| bench.show(used, Kind::Percent)).unwrap_or_default();
    let place = finding
        .station
        .map(|station| format!(", {} from eye A", bench.show(station, Kind::Length)))
        .unwrap_or_default();
    let link = match answer.role {
        Role::Lower | Role::Upper => "Weakest: ",
    };
    view! { <span id="weakest">{link}<b>{finding.part}</b>{place}{format!(", {used} of its limit used.")}</span> }
        .into_any()
}

/// How far it adjusts, in lengths and in turns.
fn adjustment(bench: Bench, adjustment: &Adjustment) -> AnyView {
    let reach = &adjustment.reach;
    let turns = |turns: f64| {
        if adjustment.opposite_hands {
            format!(" · {}", bench.show_at_most(turns, Kind::Turns))
        } else {
            String::new()
        }
    };
    let row = move |name: &'static str, good: f64, good_turns: f64, limit: f64, limit_turns: f64| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{bench.show_at_most(good, Kind::Length)}{turns(good_turns)}</td>
                <td>{bench.show_at_most(limit, Kind::Length)}{turns(limit_turns)}</td>
            </tr>
        }
    };
    let how = if adjustment.opposite_hands {
        format!(
            "One full turn of the bar changes the length by {}. Loosen both jam nuts first; one flat of a nut is a sixth of a turn.",
            bench.show(adjustment.per_turn, Kind::FineLength)
        )
    } else {
        "Turning the bar does not change the length: unbolt one eye and turn it half a turn at a time.".to_string()
    };
    view! {
        <table class="adjust" id="adjustment">
            <caption>"Adjustment from where it is set"</caption>
            <thead><tr><td></td><th scope="col">"0 to 3 threads showing"</th><th scope="col">"To the hard limit"</th></tr></thead>
            <tbody>
                {row("Out, longer", reach.out_good, adjustment.turns_good[0], reach.out_limit, adjustment.turns_limit[0])}
                {row("In, shorter", reach.in_good, adjustment.turns_good[1], reach.in_limit, adjustment.turns_limit[1])}
            </tbody>
        </table>
        <p class="note">{how}</p>
    }
    .into_any()
}
