//! The text that asks for a yes, with the link that opens the same numbers.

use crate::app::fields::CopyButton;
use crate::app::session::use_session;
use crate::app::shop::use_held_back;
use crate::browser::{clipboard, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;
use linkwright::engine::shop::code::Code;
use linkwright::present::order::confirmation::{GOES_ALONG, text};
use linkwright::share::Sent;

/// The section.
#[component]
pub(super) fn Confirmation(
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
) -> impl IntoView {
    let session = use_session();
    let held_back = use_held_back();
    let what = RwSignal::new(Sent::default());
    let link = move || session.link_with(what.get());
    let written = Memo::new(move |_| {
        let address = link();
        let date = clock::spoken_time(&clock::now());
        session.document.with(|document| {
            session.rig.with(|whole| text(document, &whole.links, code.get(), what.get(), &date, address))
        })
    });
    let whole = Callback::new(move |()| {
        session.settle();
        written.get_untracked()
    });
    let link_alone = Callback::new(move |()| {
        session.settle();
        untrack(link).unwrap_or_default()
    });
    let on_share = move |_| {
        session.settle();
        let (text, address) = (written.get_untracked(), untrack(link).unwrap_or_default());
        spawn_local(async move {
            clipboard::share(&text, &address).await;
        });
    };
    view! {
        <section class="part-of" id="confirmation" tabindex="-1">
            <h3>"Ask for the yes"</h3>
            <p>{GOES_ALONG}</p>
            <div class="ticks">
                <Goes id="send-reference" label="Customer reference" what of=|what| &mut what.reference />
                <Goes id="send-remarks" label="Remarks" what of=|what| &mut what.remarks />
            </div>
            <pre id="confirmation-text">{move || written.get()}</pre>
            <div class="buttons">
                <CopyButton label="Copy the text" text=whole done="Copied: text, code and link." disabled=held_back />
                <CopyButton label="Copy the link alone" text=link_alone done="The link is on your clipboard." disabled=held_back />
                {clipboard::can_share()
                    .then(|| view! { <button type="button" disabled=move || held_back.get() on:click=on_share>"Share"</button> })}
            </div>
        </section>
    }
}

/// Whether something of the order goes along.
#[component]
fn Goes(
    /// The id of its box.
    id: &'static str,
    /// What it is.
    label: &'static str,
    /// All that may go along.
    what: RwSignal<Sent>,
    /// Which of it.
    of: fn(&mut Sent) -> &mut bool,
) -> impl IntoView {
    view! {
        <label>
            <input
                type="checkbox"
                id=id
                prop:checked=move || *of(&mut what.get())
                on:change:target=move |event| what.update(|what| *of(what) = event.target().checked())
            />
            <span>{label}</span>
        </label>
    }
}
