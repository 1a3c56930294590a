//! Sending the answer: link, text, share sheet, paper.

use super::state::Bench;
use super::{storage, words};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::report::Answer;

/// The buttons that take the answer elsewhere.
pub(super) fn send(bench: Bench, answer: &Answer) -> AnyView {
    let done = RwSignal::new(String::new());
    let fragment = bench.fragment();
    let address = storage::address(&fragment);
    let text = bench.document.with(|document| words::plain_text(document, answer, &fragment));
    let copy = move |what: String, name: &'static str| {
        spawn_local(async move {
            let words = if storage::copy(&what).await {
                format!("{name} copied.")
            } else {
                "The browser did not let this page copy; select the text below.".to_string()
            };
            done.set(words);
        });
    };
    let (link, message, shown) = (address.clone(), text.clone(), text.clone());
    let share = storage::can_share().then(|| {
        view! {
            <button type="button" id="share" on:click=move |_| {
                let (text, address) = (text.clone(), address.clone());
                spawn_local(async move { let _ = storage::share(&text, &address).await; });
            }>"Share"</button>
        }
    });
    view! {
        <h3>"Send this"</h3>
        <div class="send">
            <button type="button" id="copy-link" on:click=move |_| copy(link.clone(), "Link")>"Copy link"</button>
            <button type="button" id="copy-text" on:click=move |_| copy(message.clone(), "Text")>"Copy as text"</button>
            {share}
            <button type="button" id="print" on:click=move |_| storage::print()>"Print"</button>
        </div>
        <p role="status" class="note">{move || done.get()}</p>
        <details class="twin"><summary>"The answer as plain text"</summary><pre id="twin">{shown}</pre></details>
    }
    .into_any()
}
