//! What the order costs, from the shop's own price book.

use crate::app::fields::{CopyButton, PaperPart};
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use crate::app::shop::{Shop, use_held_back};
use leptos::prelude::*;
use linkwright::engine::shop::code::Code;
use linkwright::engine::shop::quote;
use linkwright::present::order::quote::{NO_PRICES, NOTHING, QuoteTable, table, text};
use linkwright::present::words::rig_title;

/// The section.
#[component]
pub(super) fn QuoteSection(
    /// The shop's lists, the price book among them.
    shop: Shop,
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
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
    let as_text = Callback::new(move |()| {
        let system = session.units.get_untracked();
        let lines =
            session.document.with_untracked(|document| quoted.with_untracked(|quoted| text(quoted, document, system)));
        lines.join("\n")
    });
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
            {move || view! { <QuoteRows table=shown.get() /> }}
        </PaperPart>
    }
}

/// The lines, the sum and what to know of it.
#[component]
fn QuoteRows(
    /// The quote as it is shown.
    table: QuoteTable,
) -> impl IntoView {
    let row = |row: linkwright::present::order::quote::QuoteRow| {
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
                    <th scope="row" colspan="2">"Total"</th>
                    <td class="amount" id="quote-total">{table.total}</td>
                </tr>
            </tfoot>
        </table>
        {table.lacking.map(|words| view! { <p class="lacking">{words}</p> })}
        <p>{table.weighed}</p>
        <ul class="remarks">{table.remarks.into_iter().map(|remark| view! { <li>{remark}</li> }).collect_view()}</ul>
    }
}
