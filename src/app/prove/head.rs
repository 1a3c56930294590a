//! Which link is proved, and the verdict in one line.

use crate::app::fields::VerdictMark;
use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::present::{verdict, words};
use linkwright::report::{LinkReport, Verdict};

/// What the head shows of an answer.
#[derive(Clone, PartialEq)]
struct Shown {
    sheet_name: String,
    headline: String,
    verdict: Verdict,
    word: &'static str,
    weakest: String,
}

/// The head of the view; without an answer, why there is none.
#[component]
pub(super) fn Head() -> impl IntoView {
    let session = use_session();
    let shown = Memo::new(move |_| shown(session));
    let answered = move || {
        shown.get().map(|shown| {
            view! {
                <p class="sheet-name">{shown.sheet_name}</p>
                <p class="kicker">{shown.headline}</p>
                <h2 id="prove-title">"What yields first, and why"</h2>
                <div class="judged">
                    <VerdictMark verdict=shown.verdict word=shown.word />
                    <p>{shown.weakest}</p>
                </div>
            }
        })
    };

    view! {
        <div>
            <Show
                when=move || session.answered.get()
                fallback=move || view! { <p class="stop">{move || in_the_way(session)}</p> }
            >
                {answered}
            </Show>
        </div>
    }
}

fn shown(session: Session) -> Option<Shown> {
    let answer = session.answer.get()?;
    let system = session.units.get();
    let sheet_name = session.document.with(|document| words::sheet_name(document, session.link.get()));
    Some(Shown {
        sheet_name,
        headline: words::headline(&answer.link, system),
        verdict: answer.verdict,
        word: answer.word(),
        weakest: verdict::weakest(&answer, system),
    })
}

/// Why there is nothing to prove.
fn in_the_way(session: Session) -> String {
    session.report.with(|report| match report {
        LinkReport::Impossible(why) => session.say(why),
        LinkReport::Needs(needs) => words::still_needed(needs),
        LinkReport::Answer(_) => String::new(),
    })
}
