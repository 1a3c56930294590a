//! The same job in other metals: two tables, and weight against strength as pictures whose points can be taken.

use super::slow_fold::{SlowFold, WORKING};
use crate::app::drawings::DrawingView;
use crate::app::session::{use_session, use_slow};
use leptos::prelude::*;
use linkwright::engine;
use linkwright::present::drawing::Touch;
use linkwright::present::drawing::plot::{Against, plot};
use linkwright::present::metals::{self, HEAD, Row, Size, Table};
use linkwright::report::InMetal;

/// A metal's id, and whether it is taken with its size.
type Taken = (&'static str, bool);

/// The section, folded until it is wanted.
#[component]
pub(super) fn OtherMetals() -> impl IntoView {
    view! {
        <section class="part-of">
            <h3>"In another metal"</h3>
            <SlowFold id="metals" title="The same job in other metals">
                <Comparison />
            </SlowFold>
        </section>
    }
}

/// The metals compared.
#[component]
fn Comparison() -> impl IntoView {
    let session = use_session();
    let metals = use_slow(Signal::from(true), engine::in_other_metals);
    let tables = Memo::new(move |_| {
        metals.with(|metals| metals::tables(metals.as_deref().unwrap_or_default(), session.units.get()))
    });
    let take = Callback::new(move |(id, keeps_size): Taken| {
        let size = metals.with_untracked(|metals| {
            let metal = metals.iter().flatten().find(|metal| metal.material.id == id)?;
            metal.same.clone().filter(|_| keeps_size)
        });
        session.take_metal(id, size.as_ref());
    });
    let compared = move || metals.with(|metals| metals.as_ref().is_some_and(|metals| !metals.is_empty()));
    let instead = move || match metals.with(Option::is_none) {
        true => WORKING,
        false => metals::NOTHING_YET,
    };

    view! {
        <Show when=compared fallback=move || view! { <p>{instead}</p> }>
            <div>
                <div>{move || tables.get().map(|table| view! { <MetalTable table take /> }).collect_view()}</div>
                <p>{metals::HOW_TO_READ_PLOTS}</p>
                <div class="plots">
                    <Plot metals against=Against::FirstYield take />
                    <Plot metals against=Against::Buckling take />
                </div>
            </div>
        </Show>
    }
}

/// One table of metals.
#[component]
fn MetalTable(table: Table, take: Callback<Taken>) -> impl IntoView {
    let keeps_size = table.keeps_size;
    let row = move |row: Row| {
        let id = row.id;
        view! {
            <tr>
                <th scope="row">
                    <b>{row.letter}</b>
                    " "
                    <button type="button" class="quiet" data-metal=id on:click=move |_| take.run((id, keeps_size))>
                        {row.name}
                    </button>
                </th>
                {size_cells(row.size)}
            </tr>
        }
    };

    view! {
        <div class="scroll" data-same=keeps_size.then_some("")>
            <table class="metals">
                <caption>{table.caption}</caption>
                <thead>
                    <tr>{HEAD.map(|name| view! { <th scope="col">{name}</th> }).collect_view()}</tr>
                </thead>
                <tbody>{table.rows.into_iter().map(row).collect_view()}</tbody>
            </table>
        </div>
    }
}

/// The cells of a size behind the metal's name.
fn size_cells(size: Option<Size>) -> AnyView {
    let Some(size) = size else { return view! { <td colspan="5">"no answer at this size"</td> }.into_any() };
    view! {
        <td data-of=HEAD[1]>{size.bar}<small>{size.used}</small></td>
        <td data-of=HEAD[2]>{size.weight}</td>
        <td data-of=HEAD[3]>{size.deflection}</td>
        <td data-of=HEAD[4]>{size.first_yield}{size.collapse.map(|collapse| view! { <small>{collapse}</small> })}</td>
        <td data-of=HEAD[5]>{size.buckling}</td>
    }
    .into_any()
}

/// The metals' weight against a strength.
#[component]
fn Plot(metals: Signal<Option<Vec<InMetal>>>, against: Against, take: Callback<Taken>) -> impl IntoView {
    let session = use_session();
    let drawing = Memo::new(move |_| {
        metals
            .with(|metals| plot(metals.as_deref().unwrap_or_default(), session.units.get(), against))
            .unwrap_or_default()
    });
    let on_touch = move |touch| {
        if let Touch::Metal(id) = touch {
            take.run((id, false));
        }
    };

    view! {
        <Show when=move || !drawing.read().is_empty()>
            <figure class="drawing plot"><DrawingView drawing on_touch /></figure>
        </Show>
    }
}
