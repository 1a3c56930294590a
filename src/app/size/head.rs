//! Which link it is, what to buy, whether it passes, and the loads it is sized for.

use super::jumps::Jumps;
use crate::app::sending::{AnswerHead, PrintedLine};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::answer;

/// The head of the answer.
#[component]
pub(super) fn Head() -> impl IntoView {
    let session = use_session();
    let head = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        let head = |answer| session.document.with(|document| answer::head(document, link, answer, system));
        session.answer.get().as_deref().map(head)
    });
    let name = move || head.with(|head| head.as_ref().map(|head| head.name.clone()));
    let story = move || head.with(|head| head.as_ref().map(|head| head.story.clone()));

    view! {
        <div class="answer-head">
            <p class="sheet-name">{name}</p>
            <PrintedLine />
            <AnswerHead head on_screen=true />
            <Jumps />
            <p class="story"><b>{answer::SIZED_FOR}</b>{story}</p>
        </div>
    }
}
