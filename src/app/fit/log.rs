//! The log of the bar that is looked at.

use super::state::use_fitting;
use crate::app::fields::Fold;
use crate::app::session::use_session;
use crate::browser::{address, clipboard, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::log::{EntryKind, Log};
use linkwright::present::fit::log::{
    COPIED_WITH_LOG, COPY_WITH_LOG, HELP, LogLine, NO_LINK_OF_A_FILE, NO_LINK_WITH_LOG, NOT_COPIED, NOTHING,
    OF_ANOTHER, SINCE, TITLE, lines, turned_since,
};

/// The section.
#[component]
pub(super) fn LogSection() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let lines = Memo::new(move |_| {
        let Some(spot) = fitting.spot() else { return Vec::new() };
        fitting.log.with(|log| fitting.code.with(|code| lines(log, &spot, code, session.units.get())))
    });
    let summary = move || match lines.with(Vec::len) {
        0 => TITLE.to_string(),
        1 => format!("{TITLE}: 1 entry"),
        count => format!("{TITLE}: {count} entries"),
    };
    let since = RwSignal::new(String::new());
    let turned = move || {
        let spot = fitting.spot();
        let told = |spot| fitting.log.with(|log| turned_since(log, &spot, &since.read(), session.units.get()));
        spot.map(told).unwrap_or_default()
    };
    let times = move || {
        let time = |line: LogLine| {
            let words = format!("{}, {}", clock::spoken_time(&line.at), line.title);
            let at = line.at.clone();
            view! { <option value=line.at selected=move || *since.read() == at>{words}</option> }
        };
        lines.get().into_iter().map(time).collect_view()
    };
    let note = RwSignal::new(String::new());
    let add = move |_| {
        let words = note.get_untracked();
        if !words.trim().is_empty() {
            fitting.record(EntryKind::Note, words, &[]);
            note.set(String::new());
        }
    };
    let sent = RwSignal::new(String::new());
    // The view may be gone by the time the browser has answered.
    let say = move |sentence: &str| {
        let _ = sent.try_set(sentence.to_string());
    };
    let send = move |_| {
        session.settle();
        let Some(link) = fitting.log.with_untracked(|log| session.link_with_log(log)) else {
            return say(if address::is_a_file() { NO_LINK_OF_A_FILE } else { NO_LINK_WITH_LOG });
        };
        spawn_local(async move {
            say(if clipboard::copy(&link).await { COPIED_WITH_LOG } else { NOT_COPIED });
        });
    };
    let line = move |line: LogLine| {
        let id = line.id;
        view! {
            <li>
                <p><b>{line.title}</b>" "<small>{clock::spoken_time(&line.at)}</small></p>
                <p>{line.words}</p>
                {line.of_another.then(|| view! { <p class="help">{OF_ANOTHER}</p> })}
                <button type="button" class="quiet on-screen" on:click=move |_| fitting.withdraw(&id)>
                    "Take it out"
                </button>
            </li>
        }
    };
    view! {
        <Fold summary=Signal::derive(summary) id="fit-log">
            <p class="help">{HELP}</p>
            <Show when=move || !fitting.kept.get()>
                <p class="stop">"This browser has no room for the log. Export the build as a file before you close the page."</p>
            </Show>
            <Show when=move || lines.with(Vec::is_empty)><p>{NOTHING}</p></Show>
            <ol class="log">{move || lines.get().into_iter().map(line).collect_view()}</ol>
            <Show when=move || !lines.with(Vec::is_empty)>
                <div class="field on-screen">
                    <label for="log-since">{SINCE}</label>
                    <select id="log-since" on:change:target=move |event| since.set(event.target().value())>
                        <option value="">"The beginning of this log"</option>
                        {times}
                    </select>
                    <p id="turned-since" role="status"><b>{turned}</b></p>
                </div>
            </Show>
            <div class="field words on-screen">
                <label for="log-note">"Add a note"</label>
                <div class="entry words">
                    <input
                        id="log-note"
                        type="text"
                        maxlength="200"
                        autocomplete="off"
                        prop:value=note
                        on:input:target=move |event| note.set(event.target().value())
                    />
                </div>
                <button type="button" id="add-note" on:click=add>"Put into the log"</button>
            </div>
            <Show when=move || !fitting.log.with(Log::is_empty)>
                <div class="on-screen">
                    <button type="button" id="copy-with-log" on:click=send>{COPY_WITH_LOG}</button>
                    <p class="done" role="status">{sent}</p>
                </div>
            </Show>
        </Fold>
    }
}
