//! What is made, its order code, and whether its lengths may be sawn.

use crate::app::fields::Phrases;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::engine::shop::code::code_of_link;
use linkwright::present::make::head::{DO_NOT_MAKE, do_not_saw, title};
use linkwright::present::words::{IMPOSSIBLE, still_needed};
use linkwright::report::{LinkReport, Verdict};

/// The title; where there is no answer, what is still needed for one.
#[component]
pub(super) fn Head() -> impl IntoView {
    let session = use_session();
    let says = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        session.report.with(|report| match report {
            LinkReport::Answer(answer) => session.document.with(|document| title(document, link, answer, system)),
            LinkReport::Needs(needs) => still_needed(needs),
            LinkReport::Impossible(_) => IMPOSSIBLE.to_string(),
        })
    });
    let why = move || {
        session.report.with(|report| match report {
            LinkReport::Impossible(why) => Some(session.say(why)),
            _ => None,
        })
    };
    let code = Memo::new(move |_| {
        let answer = session.answer.get()?;
        let code = session.document.with(|document| code_of_link(document, session.link.get(), &answer));
        Some(code.written())
    });
    let fails = move || session.answer.get().is_some_and(|answer| answer.verdict == Verdict::Fails);
    let not_yet = move || session.answer.get().and_then(|answer| do_not_saw(&answer));
    view! {
        <h2 id="make-title" class="phrases" aria-live="polite">{move || view! { <Phrases text=says.get() /> }}</h2>
        <Show when=fails>
            <p class="stop" id="do-not-make">{DO_NOT_MAKE}</p>
        </Show>
        {move || why().map(|why| view! { <p class="stop">{why}</p> })}
        {move || code.get().map(|code| view! { <p>"Code of this link "<b class="order-code" id="make-code">{code}</b></p> })}
        {move || not_yet().map(|words| view! { <p class="stop" id="do-not-saw">{words}</p> })}
    }
}
