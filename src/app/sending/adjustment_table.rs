//! How far a link adjusts, as a table of lengths and turns.

use leptos::prelude::*;
use linkwright::present::adjustment::{Adjustment, CAPTION, Extent, Way};

/// Heads of the two columns.
const GOOD: &str = "Good practice";
const LIMIT: &str = "Hard limit";

/// The table, and how to turn.
#[component]
pub(crate) fn AdjustmentTable(
    /// What it shows.
    adjustment: Adjustment,
    /// Whether it is the one on the screen, which has an id.
    on_screen: bool,
) -> impl IntoView {
    view! {
        <table class="adjust" id=on_screen.then_some("adjustment")>
            <caption>{CAPTION}</caption>
            <thead>
                <tr>
                    <td></td>
                    <th scope="col">{GOOD}</th>
                    <th scope="col">{LIMIT}</th>
                </tr>
            </thead>
            <tbody>{adjustment.rows.into_iter().map(|way| view! { <WayRow way /> }).collect_view()}</tbody>
        </table>
        <p>{adjustment.how}</p>
    }
}

/// One way to adjust it.
#[component]
fn WayRow(
    /// Longer or shorter.
    way: Way,
) -> impl IntoView {
    view! {
        <tr>
            <th scope="row">{way.name}</th>
            <td data-of=GOOD><ExtentCell extent=way.good /></td>
            <td data-of=LIMIT><ExtentCell extent=way.limit /></td>
        </tr>
    }
}

/// A length and the turns of the bar that make it.
#[component]
fn ExtentCell(
    /// How far.
    extent: Extent,
) -> impl IntoView {
    view! {
        <b>{extent.length}</b>
        {extent.turns.map(|turns| view! { <span>{turns}</span> })}
    }
}
