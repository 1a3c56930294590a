//! Every value from outside, worked out again in this very browser.

use super::later;
use super::markup::{Markup, cell, element, heads, plain, said};
use super::state::Bench;
use super::tag::{Piece, tag};
use super::words;
use linkwright::engine::reference::{self, Reference, Tabled};
use linkwright::quantity::trimmed;
use linkwright::quantity::{Kind, System, inch, mm, show};
use std::sync::Arc;

/// What is shown of each value.
const HEAD: [&str; 4] = ["Value", "Expected", "Here", "Differs by"];

/// The section, folded until it is wanted.
pub(super) fn outside(bench: Bench) -> Piece {
    let fold = later::fold(bench, "outside", "Run every outside check in this browser", |bench, _, _| {
        Arc::new(move || {
            let markup = all(bench.system.get());
            tag("div").markup(move || markup.clone())
        })
    });
    tag("section class=part-of")
        .with(tag("h3").with("Checked from outside"))
        .with(tag("p").with("Do not take this page’s word for it: values that others printed, or that other tools worked out, beside what the same engine gives here and now. Random links worked out by finite elements are compared in this project’s own tests."))
        .with(fold)
}

fn all(system: System) -> Markup {
    let rows: Vec<(&Reference, f64, bool)> = reference::all().map(|row| (row, row.found(), row.agrees())).collect();
    let agree = rows.iter().filter(|row| row.2).count();
    let tabled = reference::tabled();
    let explained: Vec<&Tabled> = tabled.iter().filter(|row| row.accounted_for() && !row.agrees()).collect();
    let accounted = tabled.iter().filter(|row| row.accounted_for()).count();
    let count = format!(
        "{} of {} agree; {} differ as explained.",
        agree + accounted - explained.len(),
        rows.len() + tabled.len(),
        explained.len()
    );
    let mut out = said("p id=\"outside-sum\" class=\"sum\"", count);
    for subject in rows.chunk_by(|a, b| a.0.subject == b.0.subject) {
        let agree = subject.iter().filter(|row| row.2).count();
        let title = format!("{}: {agree} of {}", subject[0].0.subject, subject.len());
        let body: Markup = subject.iter().map(|row| one(row.0, row.1, row.2)).collect();
        let table =
            element("table class=\"outside\"", element("thead", element("tr", heads(&HEAD))) + element("tbody", body));
        out += element("details", said("summary", title) + element("div class=\"scroll\"", table));
    }
    out + thread_tables(&tabled, &explained, system)
}

/// Every tabled thread value in one table, after those that differ and why.
fn thread_tables(tabled: &[Tabled], explained: &[&Tabled], system: System) -> Markup {
    let shown = |row: &Tabled, value: f64| {
        let kind = match (row.what, row.thread.system) {
            ("stress area", _) => Kind::Area,
            (_, System::Inch) => Kind::InInches,
            (_, System::Metric) => Kind::InMillimeters,
        };
        let unit = if row.thread.system == System::Inch { inch(1.0) } else { mm(1.0) };
        show(if kind == Kind::Area { value } else { value / unit }, kind, system)
    };
    let cells = |row: &Tabled| {
        said("th scope=\"row\"", format!("{}, {}", words::thread(row.thread), row.what))
            + said("td", shown(row, row.tabled))
            + said("td", shown(row, row.by_formula))
    };
    let why = |row: &&Tabled| element("tr", cells(row) + said("td", row.why.unwrap_or_default()));
    let differ: Markup = explained.iter().map(why).collect();
    let all: Markup = tabled
        .iter()
        .map(|row| {
            let open = if row.accounted_for() { "tr" } else { "tr class=\"differs\"" };
            let verdict = if row.agrees() { "agrees" } else { "differs" };
            element(open, cells(row) + element("td", plain(verdict) + said("small", row.cite.words())))
        })
        .collect();
    let table = |last: &str, rows: Markup| {
        let head = heads(&["Value", "Tabled", "By formula", last]);
        let inside = element("thead", element("tr", head)) + element("tbody", rows);
        element("div class=\"scroll\"", element("table class=\"outside\"", inside))
    };
    let title = format!("Thread limits and stress areas, every tabled value held: {}", tabled.len());
    let intro = "Where formula and table differ, the weaker of the two is used.";
    element(
        "details id=\"thread-tables\"",
        said("summary", title) + said("p", intro) + table("Why they differ", differ) + table("", all),
    )
}

fn one(row: &Reference, found: f64, agrees: bool) -> Markup {
    let digits = |value: f64| format!("{} {}", significant(value), row.unit).trim_end().to_string();
    let about = plain(row.name) + said("small", format!("{} ({})", row.source, row.obtained.words()));
    let differs = if row.expected == 0.0 { found - row.expected } else { (found - row.expected) / row.expected.abs() };
    let difference =
        if differs.is_finite() && differs != 0.0 { format!("{differs:.1e}") } else { differs.abs().to_string() };
    let verdict = if agrees { "agrees" } else { "DIFFERS" };
    element(
        if agrees { "tr" } else { "tr class=\"differs\"" },
        element("th scope=\"row\"", about)
            + cell(HEAD[1], plain(digits(row.expected)))
            + cell(HEAD[2], plain(digits(found)))
            + cell(HEAD[3], plain(difference) + said("small", verdict)),
    )
}

/// Eight digits, which is more than most sources print, without trailing noise.
fn significant(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return value.to_string();
    }
    let places = (8 - 1 - value.abs().log10().floor() as i32).clamp(0, 12);
    trimmed(format!("{value:.*}", places as usize))
}
