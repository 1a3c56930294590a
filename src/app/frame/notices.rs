//! What a received link brought with it, the way back, what another tab has open, and why nothing is stored.

use crate::app::session::use_session;
use crate::browser::page;
use leptos::prelude::*;
use linkwright::present::frame;
use linkwright::present::words::rig_title;
use linkwright::share;

/// Everything the reader should know about the entries that are open.
#[component]
pub(crate) fn Notices() -> impl IntoView {
    let session = use_session();
    let lines = move || session.notices.get().into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view();
    view! {
        <div id="notices" role="status">
            {lines}
            <Unverified />
            <WayBack />
            <OtherTab />
            <StorageRefused />
            <LogRefused />
        </div>
    }
}

/// Why the numbers are unverified, until the reader has compared them.
#[component]
fn Unverified() -> impl IntoView {
    let session = use_session();
    let reasons = Memo::new(move |_| session.origin.with(|origin| origin.unverified.clone()));
    let compared = move |_| {
        session.mark_compared();
        page::show("answer");
    };
    view! {
        <Show when=move || reasons.with(|reasons| !reasons.is_empty())>
            {move || reasons.get().into_iter().map(|reason| view! { <p class="unverified">{reason}</p> }).collect_view()}
            <p class="back">
                <button type="button" id="compared" on:click=compared>"I have compared every number"</button>
            </p>
        </Show>
    }
}

/// Back to the reader's own entries from before a link was opened.
#[component]
fn WayBack() -> impl IntoView {
    let session = use_session();
    let offered = Memo::new(move |_| session.earlier.with(Option::is_some));
    let by_link = move || session.origin.with(|origin| origin.build.is_none() && !origin.base.is_empty());
    let close = move |_| {
        session.close_offer();
        page::show("answer");
    };
    view! {
        <Show when=move || offered.get()>
            <p class="back">
                {move || frame::earlier_entries(by_link())}
                <button type="button" id="back-to-own" on:click=move |_| session.back_to_own()>
                    "Back to your own entries"
                </button>
                <button type="button" id="keep-these" class="quiet" on:click=close>"Close"</button>
            </p>
        </Show>
    }
}

/// Another tab has something else open: the reader decides.
#[component]
fn OtherTab() -> impl IntoView {
    let session = use_session();
    let title = Memo::new(move |_| {
        let other = session.other_tab.get()?;
        Some(rig_title(&share::from_fragment(&other.fragment).document, session.units.get()))
    });
    view! {
        <Show when=move || title.with(Option::is_some)>
            <p class="elsewhere">
                {move || title.get().map(|title| frame::other_tab(&title))}
                <button type="button" id="join" on:click=move |_| session.show_other_tab()>
                    "Show that one here too"
                </button>
                <button type="button" id="stay-apart" class="quiet" on:click=move |_| session.other_tab.set(None)>
                    "Leave them apart"
                </button>
            </p>
        </Show>
    }
}

/// The browser refuses to store anything.
#[component]
fn StorageRefused() -> impl IntoView {
    let session = use_session();
    move || session.refused.get().map(|refused| view! { <p class="trouble">{frame::not_stored(refused)}</p> })
}

/// The browser did not keep what was put into the log.
#[component]
fn LogRefused() -> impl IntoView {
    let session = use_session();
    let why = Memo::new(move |_| session.unkept_log.with(|unkept| unkept.as_ref().map(|unkept| unkept.why)));
    move || why.get().map(|why| view! { <p class="trouble" id="log-refused">{frame::log_not_stored(why)}</p> })
}
