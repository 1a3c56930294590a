//! Every part to buy or make for the whole rig.

use crate::app::fields::Phrases;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::parts::{self, Amount, BOLT_LENGTH, PartRow, RigParts};

/// The parts; nothing while nothing is to be made.
#[component]
pub(super) fn Parts() -> impl IntoView {
    let session = use_session();
    let parts = Memo::new(move |_| session.rig.with(|whole| parts::whole_rig(whole, session.units.get())));
    view! {
        <section class="part-of" id="parts">
            {move || parts.get().map(|parts| view! { <PartList parts /> })}
        </section>
    }
}

/// A row for each kind of part.
#[component]
fn PartList(parts: RigParts) -> impl IntoView {
    let RigParts { missing, rows, weight } = parts;
    let row = |PartRow { name, amount }| {
        let amount = match amount {
            Amount::Saw(saw) => view! { <dd class="phrases"><Phrases text=saw /></dd> }.into_any(),
            Amount::Pieces(count) => view! { <dd>{count}</dd> }.into_any(),
        };
        view! { <div><dt>{name}</dt>{amount}</div> }
    };
    view! {
        <h3>"Parts for all of it"</h3>
        {missing.map(|missing| view! { <p class="stop">{missing}</p> })}
        <dl class="rows">{rows.into_iter().map(row).collect_view()}</dl>
        <p>{BOLT_LENGTH}</p>
        <p>{weight}</p>
    }
}
