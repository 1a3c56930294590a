//! A check: one line that opens its working.

use super::working::Working;
use crate::app::fields::{CopyButton, VerdictMark};
use crate::app::session::{check_id, use_session};
use leptos::prelude::*;
use linkwright::present::findings::{self, Checks, Row};
use linkwright::present::sending::{COPY_THE_WORKING_BY_HAND, WORKING_COPIED};
use linkwright::present::working;

/// A check. Its working is only written once somebody looks, or when it is printed.
#[component]
pub(super) fn Check(
    /// Every check.
    checks: Memo<Checks>,
    /// Which of them.
    id: &'static str,
) -> impl IntoView {
    let session = use_session();
    let row = Memo::new(move |_| checks.with(|checks| checks.find(id).cloned()));
    let open = Memo::new(move |_| session.laid_open.get() || session.open_checks.with(|open| open.contains(&id)));
    let toggle = move |event: leptos::ev::MouseEvent| {
        // The session alone opens and closes checks: printing opens them too.
        event.prevent_default();
        session.open_checks.update(|open| match open.iter().position(|other| *other == id) {
            Some(at) => {
                open.remove(at);
            }
            None => open.push(id),
        });
    };
    let source = move || row.with(|row| row.as_ref().and_then(|row| row.source.clone()));
    let text = Callback::new(move |()| {
        let title = row.with_untracked(|row| row.as_ref().map_or("", |row| row.title));
        let system = session.units.get_untracked();
        let answer = session.answer.get_untracked();
        answer.map(|answer| working::as_text(title, findings::working(&answer, id), system)).unwrap_or_default()
    });

    view! {
        <details class="check" data-check=id prop:open=move || open.get()>
            <summary id=check_id(id) on:click=toggle>
                {move || row.get().map(|row| view! { <Line row /> })}
            </summary>
            <div class="working">
                <Show when=move || open.get()>
                    <Working id />
                    {move || source().map(|source| view! { <p class="source">{source}</p> })}
                </Show>
            </div>
            <p class="copying">
                <CopyButton
                    class="quiet copy-working"
                    label="Copy this working as text"
                    text
                    done=WORKING_COPIED
                    refused=COPY_THE_WORKING_BY_HAND
                />
            </p>
        </details>
    }
}

/// How a check came out.
#[component]
fn Line(row: Row) -> impl IntoView {
    view! {
        {row.verdict.map(|(verdict, word)| view! { <VerdictMark verdict word /> })}
        {row.used.map(|used| view! { <span class="used">{used}</span> })}
        <span class="ask">
            <b>{row.title}</b>
            <span>{row.sentence}</span>
        </span>
        {row.changed.map(|changed| view! { <span class="changed-mark">{changed}</span> })}
    }
}
