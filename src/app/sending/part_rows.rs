//! Parts to buy or make, a row each, with what cannot be known about the bolts.

use crate::app::fields::Phrases;
use leptos::either::Either;
use leptos::prelude::*;
use linkwright::present::parts::{Amount, BOLT_LENGTH, PartRow};

/// The rows.
#[component]
pub(crate) fn PartRows(
    /// What they show.
    rows: Vec<PartRow>,
) -> impl IntoView {
    view! {
        <dl class="rows">{rows.into_iter().map(|row| view! { <OnePart row /> }).collect_view()}</dl>
        <p>{BOLT_LENGTH}</p>
    }
}

/// One part: how many, or what to saw off a bar.
#[component]
fn OnePart(
    /// The part.
    row: PartRow,
) -> impl IntoView {
    let saw = matches!(row.amount, Amount::Saw(_));
    let amount = match row.amount {
        Amount::Saw(text) => Either::Left(view! { <Phrases text /> }),
        Amount::Pieces(count) => Either::Right(count.to_string()),
    };
    view! { <div><dt>{row.name}</dt><dd class:phrases=saw>{amount}</dd></div> }
}
