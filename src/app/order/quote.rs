//! What the order costs, from the shop's own price book.

use crate::app::fields::{CopyButton, PaperPart};
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use crate::app::shop::{Shop, use_held_back};
use leptos::prelude::*;
use linkwright::engine::shop::code::Code;
use linkwright::engine::shop::quote;
use linkwright::present::order::customer::{CustomerQuote, customer_quote, text};
use linkwright::present::order::quote::{NO_PRICES, NOTHING, QuoteRow, QuoteTable, table};
use linkwright::present::words::rig_title;

/// The section.
#[component]
pub(super) fn QuoteSection(
    /// The shop's lists, the price book among them.
    shop: Shop,
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
    /// What has changed since the yes, a line each.
    changed: Memo<Vec<String>>,
) -> impl IntoView {
    let session = use_session();
    let held_back = use_held_back();
    let has_prices = Memo::new(move |_| shop.lists.with(|lists| !lists.prices.rows.is_empty()));
    let quoted = Memo::new(move |_| {
        session.document.with(|document| {
            session.rig.with(|whole| shop.lists.with(|lists| quote::quote(document, &whole.links, lists)))
        })
    });
    let shown = Memo::new(move |_| {
        let system = session.units.get();
        session.document.with(|document| quoted.with(|quoted| table(quoted, document, system)))
    });
    // Customers get no hints for the shop: neither in what is copied nor on paper.
    let for_customer = move || {
        let system = session.units.get();
        changed.with(|changed| {
            session.document.with(|document| {
                session
                    .rig
                    .with(|whole| quoted.with(|quoted| customer_quote(document, &whole.links, quoted, changed, system)))
            })
        })
    };
    let as_text = Callback::new(move |()| text(&untrack(for_customer)).join("\n"));
    let inside = move || {
        if !has_prices.get() {
            return view! { <p>{NO_PRICES}</p> }.into_any();
        }
        if quoted.with(|quoted| quoted.lines.is_empty()) {
            return view! { <p>{NOTHING}</p> }.into_any();
        }
        view! {
            <QuoteRows table=shown.get() />
            <div class="buttons">
                <CopyButton label="Copy the quote" text=as_text done="Copied." disabled=held_back />
                <button type="button" id="print-quote" disabled=move || held_back.get() on:click=move |_| session.print_part("quote")>
                    "Print the quote"
                </button>
            </div>
        }
        .into_any()
    };
    let of_code = move || code.get().map(|code| format!(", order code {}", code.written()));
    let title = move || session.document.with(|document| rig_title(document, session.units.get()));
    view! {
        <section class="part-of" id="quote" tabindex="-1">
            <h3>"Quote"</h3>
            {inside}
        </section>
        <PaperPart name="quote">
            <p class="sheet-name">"Quote: "{title}{of_code}</p>
            <PrintedLine />
            {move || view! { <OnPaper quote=for_customer() /> }}
        </PaperPart>
    }
}

/// What the customer gets.
#[component]
fn OnPaper(
    /// The quote.
    quote: CustomerQuote,
) -> impl IntoView {
    let line = |words: String| view! { <p>{words}</p> };
    let link = |lines: Vec<String>| {
        let mut lines = lines.into_iter();
        let title = lines.next().map(|title| view! { <h4>{title}</h4> });
        view! { {title} {lines.map(line).collect_view()} }
    };
    view! {
        {quote.said.into_iter().map(line).collect_view()}
        {quote.stops.into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view()}
        {quote.links.into_iter().map(link).collect_view()}
        <QuoteRows table=quote.table />
    }
}

/// The lines, the sum and what to know of it.
#[component]
fn QuoteRows(
    /// The quote as it is shown.
    table: QuoteTable,
) -> impl IntoView {
    let row = |row: QuoteRow| {
        view! {
            <tr>
                <th scope="row">{row.what}<small>{row.link}</small></th>
                <td>{row.how}</td>
                <td class="amount">{row.amount}</td>
            </tr>
        }
    };
    let before_tax = table.tax.is_some().then_some(table.subtotal);
    let sum = |label: String, amount: String| {
        view! {
            <tr>
                <th scope="row" colspan="2">{label}</th>
                <td class="amount">{amount}</td>
            </tr>
        }
    };
    view! {
        <table class="quote">
            <thead>
                <tr>
                    <th scope="col">"For"</th>
                    <th scope="col">"Rate"</th>
                    <th scope="col" class="amount">"Amount"</th>
                </tr>
            </thead>
            <tbody>{table.rows.into_iter().map(row).collect_view()}</tbody>
            <tfoot>
                {before_tax.map(|amount| sum("Before tax".to_string(), amount))}
                {table.tax.map(|tax| sum(format!("{}, {}", tax.what, tax.how), tax.amount))}
                <tr class="total">
                    <th scope="row" colspan="2">{table.total_label}</th>
                    <td class="amount" id="quote-total">{table.total}</td>
                </tr>
            </tfoot>
        </table>
        {table.lacking.map(|words| view! { <p class="lacking">{words}</p> })}
        {table.weighed.map(|words| view! { <p>{words}</p> })}
        <ul class="remarks">{table.remarks.into_iter().map(|remark| view! { <li>{remark}</li> }).collect_view()}</ul>
    }
}
