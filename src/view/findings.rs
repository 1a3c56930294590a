//! Every check, worst first, each opening its working.

use super::changing::Changing;
use super::markup::{Markup, element, said, sentence};
use super::state::{Bench, toggle};
use super::tag::{Piece, button, tag, words as live_words};
use super::{send, storage, verdict, words, working};
use linkwright::engine::formula::Line;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, Finding, Verdict};

/// The list of checks, and where the loads come from.
pub(super) fn findings(bench: Bench, answer: &Answer) -> Piece {
    let mut sorted: Vec<&Finding> = answer.findings.iter().collect();
    let used = |finding: &Finding| finding.utilization.unwrap_or(0.0);
    sorted.sort_by(|a, b| b.verdict.cmp(&a.verdict).then(used(b).total_cmp(&used(a))));
    let (fit, strength): (Vec<&Finding>, Vec<&Finding>) = sorted.into_iter().partition(|finding| finding.rule);
    let mut checks = list(bench, "Strength, weakest first", &strength);
    checks.extend(list(bench, "Fit, closest to its limit first", &fit));
    checks.extend(answer.notes.iter().map(|note| {
        let source = format!("Source: {}.", note.source.words());
        let head = question(note.title, &bench.say(&note.says));
        opening(bench, note.id, note.title, head, note.working.clone(), said("p class=\"source\"", source))
    }));
    let about = [
        (
            "lengths",
            "How the lengths come out",
            "Bar, engagement, drill depths, weight and the least thread.",
            &answer.link.working,
        ),
        (
            "loads",
            "Where the forces come from",
            "Traction along the link and the strike across it.",
            &answer.loads.working,
        ),
    ];
    checks.extend(about.map(|(id, asks, says, working)| {
        opening(bench, id, asks, question(asks, says), working.clone(), Markup::default())
    }));
    tag("section class=part-of")
        .with(tag("h3").with("Every check"))
        .with(tag("p class=on-screen").with("Tap a check to see how it was worked out. 100 % is the limit, with your factors already in it. From 90 % up, strength has little margin. Steel tube is judged by its first yield without a factor: it passes outright to about 80 %, and bends above 100 %. Matters of fit pass up to their limit."))
        .with(tag("div class=checks").with(checks))
}

/// Checks far below their limit are folded into one line.
const FAR_BELOW: f64 = 0.63;

/// A list of checks; those that pass far below their limit stand behind one line.
fn list(bench: Bench, title: &'static str, findings: &[&Finding]) -> Vec<Piece> {
    let far = |finding: &&&Finding| {
        let passes = finding.verdict == Verdict::Passes;
        finding.is_left_open() || passes && finding.utilization.is_some_and(|used| used < FAR_BELOW)
    };
    let (below, near): (Vec<&&Finding>, Vec<&&Finding>) = findings.iter().partition(far);
    let mut pieces = vec![tag("h4").with(title)];
    pieces.extend(near.into_iter().map(|finding| check(bench, finding)));
    if below.is_empty() {
        return pieces;
    }
    let open = Changing::new(false);
    let line = format!("{} more, none above 63 % or waiting for an entry", below.len());
    let inside: Vec<Piece> = below.into_iter().map(|finding| check(bench, finding)).collect();
    pieces.push(
        tag("details class=far-below")
            .switch("open", move || bench.printing.get() || open.get())
            .on("toggle", move |event| open.set(storage::is_open(&event)))
            .with(tag("summary").with(line.as_str()))
            .with(tag("div").with(inside)),
    );
    pieces
}

fn question(asks: &str, says: &str) -> Markup {
    element("span class=\"ask\"", said("b", asks) + sentence("span", says))
}

fn check(bench: Bench, finding: &Finding) -> Piece {
    let mut head = verdict::mark(finding.verdict, finding.word());
    if let Some(used) = finding.utilization {
        head += said("span class=\"used\"", bench.show(used, Kind::Percent));
    }
    let mut says = bench.say(&finding.says);
    if finding.rule {
        says.push_str(" A rule of thumb or of fit, not of strength.");
    }
    head += question(finding.title, &says);
    head += words::changed("span", &finding.changed, &[]);
    let source = format!("Source: {}. {}.", finding.source.words(), finding.source.source.title);
    opening(bench, finding.id, finding.title, head, finding.working.clone(), said("p class=\"source\"", source))
}

/// A line that opens; what is inside is only written once somebody looks, or when it is printed.
fn opening(
    bench: Bench,
    id: &'static str,
    asks: &'static str,
    head: Markup,
    lines: Vec<Line>,
    source: Markup,
) -> Piece {
    let open = move || bench.laid_open.get() || bench.opened.with(|opened| opened.contains(&id));
    let tap = move |event: leptos::ev::Event| {
        event.prevent_default();
        toggle(bench.opened, id);
    };
    let lines = Changing::new(lines);
    let inside = move || {
        if open() {
            lines.with_untracked(|lines| working::lines(lines, bench.system.get())) + source.clone()
        } else {
            Markup::default()
        }
    };
    let told = Changing::new(String::new());
    let copy = move |_: leptos::ev::Event| {
        let text = lines.with_untracked(|lines| working::as_text(asks, lines, bench.system.get_untracked()));
        send::copy(
            text,
            told,
            "The working is on your clipboard.",
            "Your browser did not let me copy. Select the lines above instead.",
        );
    };
    tag("details class=check")
        .set("data-check", id)
        .switch("open", open)
        .with(tag("summary").on("click", tap).markup(move || head.clone()))
        .with(tag("div class=working").markup(inside))
        .with(
            tag("p class=copying")
                .with(button("button type=button class='quiet copy-working'", "Copy this working as text", copy))
                .with(tag("span role=status").with(live_words(move || told.get()))),
        )
}
