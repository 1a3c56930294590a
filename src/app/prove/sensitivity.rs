//! What would change the answer: how far this very link may go, and each value a tenth higher.

use super::slow_fold::{SlowFold, WORKING};
use crate::app::session::{use_session, use_slow};
use leptos::prelude::*;
use linkwright::engine;
use linkwright::present::sensitivity::{self, HEAD, Row};

/// The section; the table is folded until it is wanted.
#[component]
pub(super) fn WhatWouldChange() -> impl IntoView {
    let session = use_session();
    let furthest = move || {
        let answer = session.answer.get()?;
        session.firmness.with(|firm| sensitivity::furthest(&answer, &firm.rows, !firm.current, session.units.get()))
    };

    view! {
        <section class="part-of">
            <h3>"What would change it"</h3>
            <p id="furthest">{furthest}</p>
            <SlowFold id="moves" title="How each value moves the answer">
                <Moves />
            </SlowFold>
        </section>
    }
}

/// Each value a tenth higher.
#[component]
fn Moves() -> impl IntoView {
    let session = use_session();
    let found = use_slow(Signal::from(true), engine::sensitivity);
    let shown = Memo::new(move |_| {
        let system = session.units.get();
        found.with(|found| {
            let found = found.as_deref().unwrap_or_default();
            (sensitivity::how_to_read(found, system), sensitivity::rows(found, system))
        })
    });
    let instead = move || match found.with(Option::is_none) {
        true => WORKING,
        false => sensitivity::NOTHING_YET,
    };
    let how_to_read = move || shown.with(|shown| shown.0.clone());
    let rows = move || shown.get().1.into_iter().map(|row| view! { <ValueRow row /> }).collect_view();

    view! {
        <Show when=move || shown.with(|shown| shown.0.is_some()) fallback=move || view! { <p>{instead}</p> }>
            <div>
                <p>{how_to_read}</p>
                <table class="moves">
                    <thead>
                        <tr>{HEAD.map(|name| view! { <th scope="col">{name}</th> }).collect_view()}</tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
        </Show>
    }
}

/// One value raised.
#[component]
fn ValueRow(row: Row) -> impl IntoView {
    view! {
        <tr>
            <th scope="row">{row.name}</th>
            <td data-of=HEAD[1]>{row.raised}</td>
            <td data-of=HEAD[2]><b>{row.used}</b><small>{row.change}</small></td>
            <td data-of=HEAD[3]>{row.limit}</td>
        </tr>
    }
}
