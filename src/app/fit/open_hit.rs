//! A hit that the log holds against a bar: above every place until the damaged part is replaced.

use super::state::{Draft, use_fitting};
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::log::{EntryKind, reading_row};
use linkwright::present::fit::hit::ROWS;
use linkwright::present::fit::log::{REPLACED, open_hit};

/// What is said; nothing where no hit is open.
#[component]
pub(super) fn OpenHit() -> impl IntoView {
    let fitting = use_fitting();
    let says = Memo::new(move |_| {
        let spot = fitting.spot()?;
        fitting.log.with(|log| log.open_hit(&spot).map(|entry| open_hit(entry, &clock::spoken_time(&entry.at))))
    });
    // Where the browser refuses, a notice says so.
    let replaced = move |_| {
        let _ = fitting.record(&Draft::of_words(EntryKind::Replaced, String::new()));
        // What was answered was about the part that is gone.
        ROWS.into_iter().filter_map(reading_row).for_each(|row| fitting.note(row.id, None));
    };
    move || {
        says.get().map(|words| {
            view! {
                <div class="stop" id="open-hit" role="alert">
                    <p>{words}</p>
                    <button type="button" id="bar-replaced" class="on-screen" on:click=replaced>{REPLACED}</button>
                </div>
            }
        })
    }
}
