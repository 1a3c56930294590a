//! A field for one reading on the rig.

use super::state::use_fitting;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::log::{ReadingKind, ReadingRow, reading_row};
use linkwright::present::fit::reading;
use linkwright::quantity::unit_name;

/// The field of a reading, by the id of its row.
#[component]
pub(super) fn ReadingField(
    /// The id.
    of: &'static str,
) -> impl IntoView {
    reading_row(of).map(|row| match row.holds {
        ReadingKind::Number { .. } => view! { <NumberReading row /> }.into_any(),
        ReadingKind::Pick(picks) => view! { <PickReading row picks /> }.into_any(),
    })
}

#[component]
fn NumberReading(row: &'static ReadingRow) -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let wrong = RwSignal::new(None::<String>);
    let ReadingKind::Number { kind, .. } = row.holds else { return ().into_any() };
    let take = move |text: String, left: bool| match reading::read(row, &text, session.units.get_untracked()) {
        Ok(value) => {
            wrong.set(None);
            fitting.note(row.id, value);
        }
        // A half-typed entry is not refused before it is left, and nothing is judged by what stood there before.
        Err(sentence) => {
            if untrack(|| fitting.reading(row.id)).is_some() {
                fitting.note(row.id, None);
            }
            if left {
                wrong.set(Some(sentence));
            }
        }
    };
    let typing = RwSignal::new(None::<String>);
    let value =
        move || typing.get().unwrap_or_else(|| reading::typed(row, fitting.reading(row.id), session.units.get()));
    let (id, help_id) = (format!("in-{}", row.id), format!("help-{}", row.id));
    view! {
        <div class="field" class:wrong=move || wrong.read().is_some()>
            <label for=id.clone()>{row.label}</label>
            <div class="entry">
                <input
                    type="text"
                    id=id
                    autocomplete="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    inputmode="decimal"
                    aria-invalid=move || wrong.read().is_some().to_string()
                    aria-describedby=help_id.clone()
                    prop:value=value
                    on:input:target=move |event| {
                        typing.set(Some(event.target().value()));
                        take(event.target().value(), false);
                    }
                    on:change:target=move |event| {
                        // A field that is taken off the page while somebody types says so once it is gone; what could be
                        // read of it was noted at each key.
                        if typing.is_disposed() {
                            return;
                        }
                        let text = event.target().value();
                        take(text.clone(), true);
                        typing.set(wrong.read_untracked().is_some().then_some(text));
                    }
                />
                <span class="unit" aria-hidden="true">{move || unit_name(kind, session.units.get())}</span>
            </div>
            {move || wrong.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}
            <p class="help" id=help_id.clone()>{row.help}</p>
        </div>
    }
    .into_any()
}

#[component]
fn PickReading(row: &'static ReadingRow, picks: &'static [(&'static str, &'static str)]) -> impl IntoView {
    let fitting = use_fitting();
    let help_id = format!("help-{}", row.id);
    let pick = move |(id, label): (&'static str, &'static str)| {
        let each = format!("in-{}-{id}", row.id);
        view! {
            <label class="radio" for=each.clone()>
                <input
                    type="radio"
                    id=each.clone()
                    name=row.id
                    prop:checked=move || fitting.picked(row.id) == Some(id)
                    on:change=move |_| fitting.note(row.id, row.pick(id))
                />
                <span><b>{label}</b></span>
            </label>
        }
    };
    // A finger that slipped can take it back.
    let clear = move || {
        fitting.picked(row.id).map(|_| {
            view! {
                <button type="button" class="quiet" on:click=move |_| fitting.note(row.id, None)>
                    "Not checked"<span class="unseen">": "{row.label}</span>
                </button>
            }
        })
    };
    view! {
        <fieldset class="radios" id=format!("in-{}", row.id) aria-describedby=help_id.clone()>
            <legend>{row.label}</legend>
            <p class="help" id=help_id.clone()>{row.help}</p>
            <div class="row">{picks.iter().copied().map(pick).collect_view()}</div>
            {clear}
        </fieldset>
    }
}
