//! Save it, copy it, share it, print it: the section under the answer for a link and under the whole rig.

mod adjustment_table;
mod answer_head;
mod part_rows;
mod printed;
mod qr_code;
mod sheet;
mod size_rows;
mod steps;

pub(crate) use adjustment_table::AdjustmentTable;
pub(crate) use answer_head::AnswerHead;
pub(crate) use part_rows::PartRows;
pub(crate) use printed::PrintedLine;
pub(crate) use sheet::{CurrentSheet, Sheet};
pub(crate) use size_rows::SizeRows;
pub(crate) use steps::Steps;

use self::qr_code::QrCode;
use crate::app::fields::{Fold, say_again};
use crate::app::session::{Session, View, use_session};
use crate::browser::{address, clipboard, page};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::present::sending::{
    COPY_THE_LINK_BY_HAND, LINK_COPIED, OF_A_FILE, OF_A_LINK, SHARED, TEXT_COPIED, handed_on,
};
use linkwright::store::saved_builds::Target;

/// What can be done with the answer.
#[component]
pub(crate) fn Sending(
    /// Whether the whole rig is sent, and not one link.
    whole_rig: bool,
    /// The answer as text in both units; empty while there is none.
    text: Callback<(), String>,
    /// The answer in one sentence, for the share sheet.
    summary: Callback<(), String>,
) -> impl IntoView {
    let session = use_session();
    let address = Memo::new(move |_| session.link_address());
    // The message disappears once the entries differ from what was copied or saved.
    let (done, of_address) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let current = move || if *of_address.read() == *address.read() { done.get() } else { String::new() };
    // The view may be gone by the time the browser has answered.
    let say = move |sentence: String| {
        if let Some(address) = address.try_get_untracked() {
            of_address.set(address);
            say_again(done, sentence);
        }
    };
    let copy = move |text: String, sentence: &'static str| {
        spawn_local(async move {
            if clipboard::copy(&text).await {
                say(with_stale_note(session, sentence));
            } else {
                say(COPY_THE_LINK_BY_HAND.to_string());
                page::show("link-text");
            }
        });
    };
    let on_copy_link = move |_| {
        session.settle();
        copy(address.get_untracked(), LINK_COPIED);
    };
    let on_copy_text = move |_| {
        session.settle();
        copy(untrack(|| text.run(())), TEXT_COPIED);
    };
    let on_share = move |_| {
        session.settle();
        let (text, address) = (untrack(|| summary.run(())), address.get_untracked());
        spawn_local(async move {
            if clipboard::share(&text, &address).await {
                say(with_stale_note(session, SHARED));
            }
        });
    };
    let on_save = move |_| {
        if let Some(sentence) = save(session) {
            say(with_stale_note(session, &sentence));
        }
    };
    let empty = Memo::new(move |_| session.is_empty());
    let everything = if whole_rig { "Print every link’s sheet too" } else { "Print with every working" };

    view! {
        <section class="part-of sending" id="sending" tabindex="-1">
            <h3>"Keep it or send it"</h3>
            <p>{if address::is_a_file() { OF_A_FILE } else { OF_A_LINK }}</p>
            <div class="buttons">
                <button type="button" id="save-here" disabled=empty on:click=on_save>"Save on this device"</button>
                <button type="button" id="copy-link" on:click=on_copy_link>"Copy the link"</button>
                <button type="button" id="copy-text" on:click=on_copy_text>"Copy as text"</button>
                {clipboard::can_share()
                    .then(|| view! { <button type="button" id="share" on:click=on_share>"Share"</button> })}
                <button type="button" id="print" on:click=move |_| session.print(false)>"Print"</button>
                <button type="button" id="print-all" on:click=move |_| session.print(true)>{everything}</button>
            </div>
            <p class="done" role="status">{current}</p>
            <div class="link-line">
                <label for="link-text">"The link"</label>
                <input
                    id="link-text"
                    class="own-line"
                    readonly
                    prop:value=address
                    on:focus=|_| page::select_all("link-text")
                />
            </div>
            <Fold summary="The answer as text, both units">
                <pre id="twin">{move || text.run(())}</pre>
            </Fold>
        </section>
        <QrCode address />
    }
}

/// Saves the build and says so; where that needs a decision, turns to where it is made.
fn save(session: Session) -> Option<String> {
    let sentence = session.save(Target::Same).sentence();
    if sentence.is_none() {
        session.open_view(View::Saved);
    }
    sentence
}

/// A sentence about what was handed on; while an entry is refused, with a note that it is not in there.
fn with_stale_note(session: Session, done: &str) -> String {
    handed_on(done, untrack(|| session.is_stale()))
}
