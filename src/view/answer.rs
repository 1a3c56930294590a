//! The answer, in the order a reader asks: what to buy, does it hold, how far it turns, why.

use super::state::Bench;
use super::{checklist, ends, findings, send, sizes, verdict, words};
use leptos::prelude::*;
use linkwright::engine::formula::Said;
use linkwright::quantity::{Kind, System};
use linkwright::report::{Answer, Made, Verdict};

/// The whole answer.
pub(super) fn answer(bench: Bench, answer: &Answer) -> AnyView {
    view! {
        {lead(bench, answer)}
        {plate(bench, answer)}
        <p class="story"><b>"The hit it is sized for. "</b>{bench.say(&answer.loads.story)}</p>
        {cautions(bench, answer)}
        {adjustment(bench, &answer.link)}
        {sizes::why(bench, answer)}
        {ends::ends(bench, answer)}
        {findings::findings(bench, answer)}
        {sizes::assumed(bench, answer)}
        {checklist::checklist(bench, answer)}
        {send::send(bench)}
    }
    .into_any()
}

/// What to buy, and whether it holds.
fn lead(bench: Bench, answer: &Answer) -> AnyView {
    let system = bench.system.get();
    let made = &answer.link;
    let job = bench.document.with(|document| words::job(document, system));
    let kind = match (answer.sizing.overridden, &answer.sizing.recommended) {
        (true, _) => "Your own size for this",
        (false, Some(_)) => "Recommended for this",
        (false, None) => "Not a recommendation for this",
    };
    view! {
        <section class="lead-part">
            <p class="stale-note" hidden=move || !bench.stale()>"From your last good entry: one of your entries is not taken yet."</p>
            <p class="kicker">{kind}" "{words::lower(words::role_word(answer.role))}": rig of "{job}</p>
            {nothing_holds(answer)}
            <h2 id="headline">{phrases(&words::headline(made, system))}</h2>
            <div class="judged">
                {verdict::mark(answer.verdict)}
                <p id="weakest">{weakest(bench, answer)}</p>
            </div>
        </section>
    }
    .into_any()
}

/// Words that break between their phrases, so that no size is torn apart.
fn phrases(words: &str) -> AnyView {
    let count = words.split(", ").count();
    let phrase = |(index, phrase): (usize, &str)| {
        let end = if index + 1 < count { ", " } else { "" };
        view! { <span>{phrase.to_string()}{end}</span> }
    };
    words.split(", ").enumerate().map(phrase).collect_view().into_any()
}

/// A warning in front of a link that does not hold.
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

/// The weakest part with its margin and its place.
fn weakest(bench: Bench, answer: &Answer) -> String {
    let Some(finding) = answer.weakest.and_then(|index| answer.findings.get(index)) else { return String::new() };
    let mut words = format!("Weakest: {}", finding.part);
    if let Some(station) = finding.station {
        words.push_str(&format!(", {} from eye A", bench.show(station, Kind::Length)));
    }
    if let Some(used) = finding.utilization {
        words.push_str(&format!(". It uses {} of what it may", bench.show(used, Kind::Percent)));
    }
    words + "."
}

/// The title block: what is read back over a phone or copied onto the bar.
fn plate(bench: Bench, answer: &Answer) -> AnyView {
    let made = &answer.link;
    let length = |value: f64| bench.show(value, Kind::Length);
    let cell = |class: &'static str, id: Option<&'static str>, name: &'static str, value: String| {
        view! { <div class=class><dt>{name}</dt><dd id=id>{value}</dd></div> }
    };
    view! {
        <dl class="plate">
            {cell("main", Some("bar-length"), "Bar, face to face", length(made.bar))}
            {cell("main", Some("cut-length"), "Saw to", length(made.cut))}
            {cell("main", Some("eye-to-eye"), "Mount to mount", length(made.length))}
            {cell("", None, "Bar", words::size(made.outside_diameter, made.bore, bench.system.get()))}
            {cell("", None, "Rod ends", made.ends.iter().map(|end| words::thread(end.thread)).reduce(|a, b| if a == b { a } else { "two threads" }).unwrap_or_default().to_string())}
            {cell("", Some("bar-weight"), "Weight of the bar", bench.show(made.bar_weight, Kind::Weight))}
        </dl>
    }
    .into_any()
}

/// What to mind: the first two in sight, the rest one tap away.
fn cautions(bench: Bench, answer: &Answer) -> AnyView {
    let shown = if answer.verdict == Verdict::Fails || !answer.link.adjustment.opposite_hands { 2 } else { 1 };
    let (first, rest) = answer.cautions.split_at(shown.min(answer.cautions.len()));
    let one = |said: &Said| view! { <li>{bench.say(said)}</li> };
    view! {
        <section class="cautions" aria-label="Before you act on this">
            <ul>{first.iter().map(one).collect_view()}</ul>
            <details prop:open=move || bench.printing.get()>
                <summary>{format!("{} more to mind before you cut", rest.len())}</summary>
                <ul>{rest.iter().map(one).collect_view()}</ul>
            </details>
        </section>
    }
    .into_any()
}

/// How far the link can be made longer and shorter, and how many turns that is.
fn adjustment(bench: Bench, made: &Made) -> AnyView {
    let (adjustment, hand) = (&made.adjustment, made.ends[0].hand);
    let kind = if bench.system.get() == System::Inch { Kind::FineLength } else { Kind::Length };
    let reach = adjustment.reach;
    let opposite = adjustment.opposite_hands;
    let cell = |of: &'static str, length: f64, turns: f64| {
        let turned = opposite.then(|| view! { <span>{bench.show_at_most(turns, Kind::Turns)}</span> });
        view! { <td data-of=of><b>{bench.show_at_most(length, kind)}</b>{turned}</td> }
    };
    let per_turn = if opposite {
        format!(
            "{} One turn changes the length by {}. Loosen both jam nuts first.",
            words::turning(hand),
            bench.show(adjustment.per_turn, Kind::FineLength)
        )
    } else {
        "Both ends have the same hand: turning the bar does not change the length. Take an end off to set it."
            .to_string()
    };
    view! {
        <section class="part-of">
            <h3>"How far it adjusts"</h3>
            <table class="adjust" id="adjustment">
                <thead><tr><td></td><th scope="col">"Good practice"<small>"0 to 3 threads showing"</small></th><th scope="col">"Hard limit"<small>"stop here"</small></th></tr></thead>
                <tbody>
                    <tr><th scope="row">"Longer"</th>{cell("Good practice", reach.out_good, adjustment.turns_good[0])}{cell("Hard limit", reach.out_limit, adjustment.turns_limit[0])}</tr>
                    <tr><th scope="row">"Shorter"</th>{cell("Good practice", reach.in_good, adjustment.turns_good[1])}{cell("Hard limit", reach.in_limit, adjustment.turns_limit[1])}</tr>
                </tbody>
            </table>
            <p>{per_turn}</p>
        </section>
    }
    .into_any()
}
