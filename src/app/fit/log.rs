//! The log of the bar that is looked at.

use super::into_log::{ExportUnkept, IntoLog};
use super::state::{Draft, use_fitting};
use crate::app::fields::{Fold, say_again};
use crate::app::session::use_session;
use crate::browser::{address, clipboard, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::log::{EntryKind, Log};
use linkwright::present::fit::log::{
    COPIED_WITH_LOG, COPY_WITH_LOG, HELP, LogLine, NO_LINK_OF_A_FILE, NO_LINK_WITH_LOG, NOT_COPIED, NOTHING,
    OF_ANOTHER, PUT_BACK, SINCE, TAKE_OUT, TAKEN_OUT, TITLE, UNDO, entries_of, lines, not_kept, turned_since,
};

/// The section.
#[component]
pub(super) fn LogSection() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    // What was just taken out stays in its place, so that it can be put back there.
    let just_out = RwSignal::new(Vec::<String>::new());
    let lines = Memo::new(move |_| {
        let Some(spot) = fitting.spot() else { return Vec::new() };
        let just_out = just_out.read();
        fitting.log.with(|log| fitting.codes.with(|codes| lines(log, &spot, codes, &just_out, session.units.get())))
    });
    let entries = Memo::new(move |_| fitting.log.with(|log| entries_of(log, &[fitting.spot()?])));
    let summary = move || entries.get().map_or(TITLE.to_string(), |entries| format!("{TITLE}: {entries}"));
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
    let draft = move || {
        let words = note.get();
        (!words.trim().is_empty()).then(|| Draft::of_words(EntryKind::Note, words))
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
    let done = RwSignal::new(String::new());
    let on_out = Callback::new(move |(id, out): (String, bool)| {
        just_out.update(|ids| ids.push(id.clone()));
        let words = match fitting.withdraw(&id, out) {
            Err(why) => not_kept(why),
            Ok(()) if out => TAKEN_OUT,
            Ok(()) => PUT_BACK,
        };
        say_again(done, words.to_string());
    });
    view! {
        <Fold summary=Signal::derive(summary) id="fit-log">
            <p class="help">{HELP}</p>
            {move || fitting.kept.get().err().map(|why| view! { <p class="stop">{not_kept(why)}</p> })}
            <ExportUnkept />
            <Show when=move || lines.with(Vec::is_empty)><p>{NOTHING}</p></Show>
            <ol class="log">
                <For each=move || lines.get() key=LogLine::clone let(line)>
                    <OneEntry line on_out />
                </For>
            </ol>
            <p class="done" id="log-done" role="status">{done}</p>
            <Show when=move || entries.with(Option::is_some)>
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
                <IntoLog
                    id="add-note"
                    draft=Signal::derive(draft)
                    nothing="Write the note first."
                    on_done=Callback::new(move |()| note.set(String::new()))
                />
            </div>
            <Show when=move || !fitting.log.with(Log::is_empty)>
                <div class="on-screen">
                    <button type="button" id="copy-with-log" on:click=send>{COPY_WITH_LOG}</button>
                    <p class="done" id="log-sent" role="status">{sent}</p>
                </div>
            </Show>
        </Fold>
    }
}

/// One entry, and the button that takes it out and puts it back.
#[component]
fn OneEntry(
    /// What it says.
    line: LogLine,
    /// Takes out what has this id, or puts it back.
    on_out: Callback<(String, bool)>,
) -> impl IntoView {
    let fitting = use_fitting();
    let LogLine { id, at, title, words, of_another } = line;
    let is_out = {
        let id = id.clone();
        Memo::new(move |_| {
            fitting.log.with(|log| log.entries.iter().any(|entry| entry.id == id && entry.is_withdrawn()))
        })
    };
    let about = format!(": {title}, {}", clock::spoken_time(&at));
    let press = move |_| on_out.run((id.clone(), !is_out.get_untracked()));
    view! {
        <li class:taken-out=move || is_out.get()>
            <p><b>{title}</b>" "<small>{clock::spoken_time(&at)}</small></p>
            <p class="log-words">{words}</p>
            {of_another.then(|| view! { <p class="help">{OF_ANOTHER}</p> })}
            <p class="log-out on-screen">
                <Show when=move || is_out.get()><b>{TAKEN_OUT}" "</b></Show>
                <button type="button" class="quiet" on:click=press>
                    {move || if is_out.get() { UNDO } else { TAKE_OUT }}<span class="unseen">{about}</span>
                </button>
            </p>
        </li>
    }
}
