//! What to buy, whether it passes, and the plate of sizes: the answer on the screen and on each printed sheet.

use crate::app::fields::{Phrases, VerdictMark};
use leptos::prelude::*;
use linkwright::present::answer::{Cell, Head};

/// The answer from whose choice the size is to its plate.
#[component]
pub(crate) fn Standing(
    /// The answer.
    head: Head,
    /// Whether it is the one on the screen: its parts have ids, which stand on a page once.
    on_screen: bool,
) -> impl IntoView {
    let id = move |id: &'static str| on_screen.then_some(id);

    view! {
        <p class="kicker">{head.kicker}</p>
        {head.warning.map(|warning| view! { <p class="stop">{warning}</p> })}
        <h2 class="headline phrases" id=id("headline")><Phrases text=head.headline /></h2>
        <div class="judged">
            <VerdictMark verdict=head.verdict word=head.word />
            <p id=id("weakest")>{head.weakest}</p>
        </div>
        {head
            .buckling
            .map(|(verdict, words)| {
                view! { <p class="buckling"><span>{words}</span><VerdictMark verdict word=verdict.word() /></p> }
            })}
        <dl class="plate">
            {head.plate.into_iter().map(|cell| view! { <PlateCell id=id(cell.id) cell /> }).collect_view()}
        </dl>
        {head.provisional.map(|note| view! { <p class="provisional">{note}</p> })}
    }
}

/// One size on the plate.
#[component]
fn PlateCell(
    /// Its id on the screen.
    id: Option<&'static str>,
    /// The size.
    cell: Cell,
) -> impl IntoView {
    view! {
        <div>
            <dt>{cell.name}</dt>
            <dd class:main=cell.main id=id>{cell.value}</dd>
        </div>
    }
}
