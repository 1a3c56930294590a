//! Which link is proved, and the verdict in one line.

use crate::app::fields::VerdictMark;
use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::present::{verdict, words};
use linkwright::report::{LinkReport, Verdict};

/// What the head shows of an answer.
#[derive(Clone, PartialEq)]
struct Standing {
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
    let standing = Memo::new(move |_| standing(session));
    let answered = move || {
        standing.get().map(|standing| {
            view! {
                <p class="sheet-name">{standing.sheet_name}</p>
                <p class="kicker">{standing.headline}</p>
                <h2 id="prove-title">"What yields first, and why"</h2>
                <div class="judged">
                    <VerdictMark verdict=standing.verdict word=standing.word />
                    <p>{standing.weakest}</p>
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

fn standing(session: Session) -> Option<Standing> {
    let answer = session.answer.get()?;
    let system = session.units.get();
    let sheet_name = session.document.with(|document| words::sheet_name(document, session.link.get()));
    Some(Standing {
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
