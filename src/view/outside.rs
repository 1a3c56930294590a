//! Every value from outside, worked out again in this very browser.

use super::later;
use super::markup::{element, escaped, said};
use super::state::Bench;
use leptos::prelude::*;
use linkwright::engine::outside::{self, Outside};

/// The section, folded until it is wanted.
pub(super) fn outside(bench: Bench) -> AnyView {
    view! {
        <section class="part-of">
            <h3>"Checked from outside"</h3>
            <p>"Do not take this page’s word for it: values that others printed, or that other tools worked out, beside what the same engine gives here and now."</p>
            {later::fold(bench, "outside", "Run every outside check in this browser", |_, _| (), |()| {
                let markup = all();
                view! { <div inner_html=markup></div> }.into_any()
            })}
        </section>
    }
    .into_any()
}

fn all() -> String {
    let rows: Vec<(&Outside, f64, bool)> = outside::all().map(|row| (row, row.found(), row.agrees())).collect();
    let agree = rows.iter().filter(|row| row.2).count();
    let mut out = said("p id=\"outside-sum\" class=\"sum\"", &format!("{agree} of {} agree.", rows.len()));
    for subject in rows.chunk_by(|a, b| a.0.subject == b.0.subject) {
        let agree = subject.iter().filter(|row| row.2).count();
        let title = format!("{}: {agree} of {}", subject[0].0.subject, subject.len());
        let body: String = subject.iter().map(|row| one(row.0, row.1, row.2)).collect();
        let head = ["Value", "Expected", "Here", "Differs by"].map(|name| said("th scope=\"col\"", name)).concat();
        let table =
            element("table class=\"outside\"", &(element("thead", &element("tr", &head)) + &element("tbody", &body)));
        out += &element("details", &(said("summary", &title) + &element("div class=\"scroll\"", &table)));
    }
    out
}

fn one(row: &Outside, found: f64, agrees: bool) -> String {
    let digits = |value: f64| format!("{} {}", significant(value), row.unit).trim_end().to_string();
    let about = escaped(row.name) + &said("small", &format!("{} ({})", row.source, row.obtained.words()));
    let differs = if row.expected == 0.0 { found - row.expected } else { (found - row.expected) / row.expected.abs() };
    let verdict = if agrees { "agrees" } else { "DIFFERS" };
    element(
        if agrees { "tr" } else { "tr class=\"differs\"" },
        &(element("th scope=\"row\"", &about)
            + &said("td data-of=\"Expected\"", &digits(row.expected))
            + &said("td data-of=\"Here\"", &digits(found))
            + &format!("<td data-of=\"Differs by\">{differs:.1e}<small>{verdict}</small></td>")),
    )
}

/// Eight digits, which is more than most sources print, without trailing noise.
fn significant(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return value.to_string();
    }
    let places = (8 - 1 - value.abs().log10().floor() as i32).clamp(0, 12);
    let text = format!("{value:.*}", places as usize);
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_string() } else { text }
}
