//! What moves the answer: each value a tenth higher, and how far it may go.

use super::firm::Firm;
use super::later;
use super::markup::{Markup, cell, element, heads, plain, said};
use super::state::Bench;
use super::tag::{Piece, tag, words as live_words};
use super::words;
use linkwright::engine;
use linkwright::inputs;
use linkwright::quantity::Kind;
use linkwright::report::{Sensitivity, Verdict};
use std::sync::Arc;

/// What is shown of each value.
const HEAD: [&str; 4] = ["Value", "A tenth more", "Then used", "Passes as far as"];

/// The section, folded until it is wanted.
pub(super) fn moves(bench: Bench) -> Piece {
    let fold = later::fold(bench, "moves", "How each value moves the answer", |bench, document, at| {
        let rows = engine::sensitivity(document, at);
        Arc::new(move || {
            let markup = table(bench, &rows);
            tag("div").markup(move || markup.clone())
        })
    });
    tag("section class=part-of")
        .with(tag("h3").with("What would change it"))
        .with(tag("p id=furthest").with(live_words(move || furthest(bench))))
        .with(fold)
}

/// How far this very link may go, one entry at a time, in one sentence.
fn furthest(bench: Bench) -> String {
    let limits = bench.with_answer(|answer| {
        let Firm { rows, now } = bench.firm.get();
        let limit = |id: &str| rows.iter().find(|row| row.input == id).and_then(|row| row.most);
        let told = [(inputs::WEIGHT.id, "a rig of ", Kind::Weight), (inputs::LENGTH.id, "a length of ", Kind::Length)];
        // The limits of the answer before only keep the place.
        let shown = |limit, kind| if now { bench.show_at_most(limit, kind) } else { "…".to_string() };
        let told = told.map(|(id, what, kind)| limit(id).map(|limit| format!("{what}{}", shown(limit, kind))));
        (answer.verdict != Verdict::Fails).then(|| told.into_iter().flatten().collect::<Vec<_>>())
    });
    match limits.flatten() {
        Some(limits) if !limits.is_empty() => {
            format!("With nothing else changed, this link passes up to {}.", limits.join(", or "))
        }
        _ => String::new(),
    }
}

fn table(bench: Bench, rows: &[Sensitivity]) -> Markup {
    if rows.is_empty() {
        return said("p", "Nothing to show until there is an answer.");
    }
    let body: Markup = rows.iter().map(|row| one(bench, row)).collect();
    let now = bench.show(rows[0].used_now, Kind::Percent);
    let how = format!(
        "The size stays as it is. Now its weakest part is at {now} of its limit. Each row raises one value alone by a tenth, the strongest first."
    );
    let head = element("thead", element("tr", heads(&HEAD)));
    said("p", how) + element("table class=\"moves\"", head + element("tbody", body))
}

fn one(bench: Bench, row: &Sensitivity) -> Markup {
    let limit = match row.limit {
        Some(limit) if (limit - row.now).abs() <= 1e-9 * row.now.abs() => "does not pass now".to_string(),
        Some(limit) if row.used_then > row.used_now => bench.show_at_most(limit, row.kind),
        Some(limit) => bench.show(limit, row.kind),
        None => "any value you can enter".to_string(),
    };
    let change = (row.used_then - row.used_now) * 100.0;
    let sign = if change > 0.0 { "+" } else { "−" };
    let change = format!("{sign}{:.1} points; {}", change.abs(), row.decides);
    let then = said("b", bench.show(row.used_then, Kind::Percent)) + said("small", change);
    let values = format!("{} → {}", bench.show(row.now, row.kind), bench.show(row.more, row.kind));
    element(
        "tr",
        said("th scope=\"row\"", words::label(row.input))
            + cell(HEAD[1], plain(values))
            + cell(HEAD[2], then)
            + cell(HEAD[3], plain(limit)),
    )
}
