//! A field for one reading on the rig.

use super::number::NumberField;
use super::state::use_fitting;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::log::{ReadingKind, ReadingRow, reading_row};
use linkwright::present::fit::reading;
use linkwright::present::fit::recheck::KIND;
use linkwright::quantity::Kind;

/// The field of a reading, by the id of its row.
#[component]
pub(super) fn ReadingField(
    /// The id.
    of: &'static str,
) -> impl IntoView {
    let fitting = use_fitting();
    // What is half typed belongs to one bar, and goes when another is looked at.
    let number = move |row, kind| {
        move || {
            fitting.chosen.track();
            view! { <NumberReading row kind /> }
        }
    };
    reading_row(of).map(|row| match row.holds {
        ReadingKind::Number { kind, .. } => number(row, kind).into_any(),
        ReadingKind::Pick(picks) => view! { <PickReading row picks /> }.into_any(),
    })
}

#[component]
fn NumberReading(row: &'static ReadingRow, kind: Kind) -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let take = move |text: String| {
        let read = reading::read(row, &text, session.units.get_untracked());
        let value = read.as_ref().ok().copied().flatten();
        // Nothing is judged by what stood there before an entry that cannot be read.
        fitting.note_unread(row.id, read.is_err());
        if value != untrack(|| fitting.reading(row.id)) {
            fitting.note(row.id, value);
        }
        read.map(|_| ())
    };
    // What is typed goes with its field.
    on_cleanup(move || {
        if !fitting.is_gone() {
            fitting.note_unread(row.id, false);
        }
    });
    let shown = move || reading::typed(row, fitting.reading(row.id), session.units.get());
    view! {
        <NumberField
            id=format!("in-{}", row.id)
            label=row.label
            help=row.help
            kind
            shown=Signal::derive(shown)
            take=Callback::new(take)
        />
    }
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
    // Which recheck it is has no answer to clear.
    let clear = move || {
        fitting.picked(row.id).filter(|_| row.id != KIND).map(|_| {
            view! {
                <button type="button" class="quiet" on:click=move |_| fitting.note(row.id, None)>
                    "Clear this answer"<span class="unseen">": "{row.label}</span>
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
