//! Why this size: numbers against habit, the neighbors, and how firm it is. All of it is markup.

use super::firm::Firm;
use super::known::Known;
use super::markup::{Markup, Row, plain, said, sentence, table, unbroken};
use super::state::Bench;
use super::{answer, words};
use linkwright::engine;
use linkwright::engine::tables::threads;
use linkwright::inputs::NUMBERS;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, Assumption, Candidate, Firmness};

/// Which rule decides, what the sizes around it would do, and where the answer tips over.
pub(super) fn why(bench: Bench) -> Known<Markup> {
    // Looked for once, though how firm the answer is comes later and the units may change.
    let around = Known::new(move || {
        let at = bench.at.get();
        let around = |of: &Candidate| bench.document.with(|document| engine::neighbors(document, at, of));
        bench.with_answer(|answer| answer.sizing.recommended.as_ref().map(around)).flatten().unwrap_or_default()
    });
    answer::part(bench, move |bench, answer| around.with(|around| told(bench, answer, around)))
}

fn told(bench: Bench, answer: &Answer, [smaller, larger]: &[Option<Candidate>; 2]) -> Markup {
    let sizing = &answer.sizing;
    // For steering and track bars habit and calculation are one answer, the larger.
    let one_answer = linkwright::inputs::has_no_second_path(answer.role);
    let (smaller, by_numbers) = if one_answer { (&None, &None) } else { (smaller, &sizing.by_numbers) };
    let sizes = [
        ("One size down", smaller),
        ("Smallest that passes", by_numbers),
        ("Recommended", &sizing.recommended),
        ("One size up", larger),
    ];
    let mut rows = Vec::new();
    for (name, size) in sizes {
        if let Some(size) = size {
            rows.push(candidate(bench, name, size));
        }
    }
    let mut out = said("h3", "Why this size") + sentence("p id=\"governs\"", &bench.say(&sizing.governs));
    if sizing.overridden {
        out += said("p", "You chose another size than the recommended one; the rest of this page answers for yours.");
    }
    if !rows.is_empty() {
        out += table("table class=\"sizes\"", "", ["Size", "Bar and rod ends", "Highest utilization"], rows);
    }
    if let Some(trade) = &sizing.by_trade {
        let words = bench.say(&trade.words);
        out += said("p class=\"source\"", format!("Builders usually fit {words}. Common practice, no source."));
    }
    out + bench.firm.with(|firmness| firm(bench, firmness))
}

fn candidate(bench: Bench, name: &'static str, size: &Candidate) -> Row {
    let outside = words::size(size.outside_diameter, size.wall, bench.system.get());
    let thread = threads::find(size.thread).map_or(size.thread, words::thread);
    let verdict = if size.feasible { "" } else { ", not recommended" };
    Row {
        class: if name == "Recommended" { "chosen" } else { "" },
        about: name,
        cells: [
            said("span", outside + ",") + plain(" ") + said("span", thread),
            said("span", bench.show(size.utilization, Kind::Percent) + verdict) + said("small", size.decides),
        ],
    }
}

/// Between which values of one entry the link still passes.
fn passes(bench: Bench, row: &Firmness) -> String {
    let most = row.most.map(|most| bench.show_at_most(most, row.kind));
    let least = row.least.map(|least| bench.show(least, row.kind));
    match (least, most) {
        (Some(least), Some(most)) => format!("from {least} to {most}"),
        (None, Some(most)) => format!("up to {most}"),
        (Some(least), None) => format!("from {least} up"),
        (None, None) => String::new(),
    }
}

/// How far each entry may go while the size stays as it is.
fn firm(bench: Bench, firm: &Firm) -> Markup {
    let Firm { rows, now } = firm;
    // A limit at the entry itself means that it does not hold even now; the verdict says so already.
    if rows.is_empty() || rows.iter().any(|row| row.most.is_some_and(|most| most <= row.now * (1.0 + 1e-9))) {
        return Markup::default();
    }
    let told = |row: &Firmness| [plain(bench.show(row.now, row.kind)), unbroken(&passes(bench, row))];
    let rows_fail = rows.iter().any(|row| row.to_failure);
    // Rows of the answer before only keep the place.
    let open = || [plain("…"), plain("…")];
    let rows: Vec<Row> = rows
        .iter()
        .map(|row| Row { class: "", about: words::label(row.input), cells: if *now { told(row) } else { open() } })
        .collect();
    let caption = "The same size does as well when one of these alone goes this far; common practice may ask for more before that.";
    let word = if rows_fail { "Does not fail" } else { "Passes" };
    said("h4", "Margin") + table("table class=\"firm\" id=\"firm\"", caption, ["Entry", "Now", word], rows)
}

/// Every value nobody gave, with what stands behind it.
pub(super) fn assumed(bench: Bench, assumed: &[Assumption]) -> Markup {
    let mut rows = Vec::new();
    for value in assumed {
        let standing = NUMBERS.iter().find(|number| number.id == value.input).map_or("", |row| row.standing.words());
        let (class, words) = if value.changed { ("chosen", "your entry") } else { ("", standing) };
        let now = bench.show(value.value, value.kind);
        rows.push(Row { class, about: words::label(value.input), cells: [plain(now), plain(words)] });
    }
    table("table class=\"assumed\"", "", ["Value", "Now", "Source"], rows)
}
