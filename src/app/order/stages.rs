//! How far the order is, and the customer's yes.

use crate::app::session::use_session;
use crate::app::shop::use_held_back;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::document::{LONGEST_REFERENCE, Stage};
use linkwright::engine::shop::code::{self, Code};
use linkwright::present::order::confirmation::{
    HOW_A_YES_GOES, READ_BACK_AGAIN, StageRow, already_cut, is_read_back, not_yet_to_saw, stages,
};
use linkwright::present::order::history::{HistoryRow, TITLE, WHOSE_NAME, history};

/// The section.
#[component]
pub(super) fn Stages(
    /// The code of the order, if it has one.
    code: Memo<Option<Code>>,
    /// What has changed since the yes, a line each.
    changed: Memo<Vec<String>>,
    /// What keeps the order from its yes, a sentence each.
    obstacles: Memo<Vec<String>>,
) -> impl IntoView {
    let session = use_session();
    let (who, held_back) = (session.order_person, use_held_back());
    let rows =
        Memo::new(move |_| session.document.with(|document| stages(&document.order, code.get(), clock::spoken_time)));
    // A yes is somebody's, and to what was read back; another takes its place only once the first is taken back.
    let may_confirm = Memo::new(move |_| {
        obstacles.with(Vec::is_empty)
            && who.with(|who| !who.trim().is_empty())
            && session.origin.with(|origin| origin.unverified.is_empty())
            && session
                .document
                .with(|document| !document.order.yes.is_given() && is_read_back(&document.order, code.get()))
    });
    let no_longer =
        move || changed.with(|lines| lines.first().cloned()).map(|words| view! { <p class="stop">{words}</p> });
    let in_the_way = move || obstacles.get().into_iter().map(|words| view! { <li>{words}</li> }).collect_view();
    let confirmed = Memo::new(move |_| session.document.with(|document| document.order.yes.is_given()));
    let is_cut = Memo::new(move |_| session.document.with(|document| document.order.stage == Stage::Cut));
    // What changed since the yes is read back anew, unless it is cut.
    let again = move || confirmed.get() && !is_cut.get() && changed.with(|lines| !lines.is_empty());
    let provisional = Memo::new(move |_| {
        session.document.with(|document| session.rig.with(|whole| not_yet_to_saw(document, &whole.links)))
    });
    let already = move || {
        let cut = changed.with(|lines| !lines.is_empty());
        let lines = session.document.with(|document| already_cut(document, session.units.get()));
        let lines = lines.into_iter().filter(move |_| cut);
        lines.map(|words| view! { <p class="stop">{words}</p> }).collect_view()
    };
    let not_yet = move || provisional.get().into_iter().map(|words| view! { <li>{words}</li> }).collect_view();
    let code_now = move || untrack(|| code.get()).map(Code::written).unwrap_or_default();
    let asked = move |_| {
        session.settle();
        session.edit(|document| document.order.ask(&who.read_untracked(), &clock::now(), &code_now()));
    };
    let read_back = move |_| {
        session.settle();
        session.edit(|document| {
            let (by, at, code) = (who.read_untracked(), clock::now(), code_now());
            if document.order.yes.is_given() {
                document.order.read_back_again(&by, &at, &code);
            } else {
                document.order.read_back_to(&by, &at, &code);
            }
        });
    };
    let record = move |_| {
        session.settle();
        let yes = session.document.with_untracked(|document| {
            session.rig.with_untracked(|whole| code::yes(document, &whole.links, &who.read_untracked(), &clock::now()))
        });
        if let Some(yes) = yes {
            session.edit(|document| document.order.confirm(yes));
            who.set(String::new());
        }
    };
    let cut = move |_| {
        session.settle();
        session.edit(|document| document.order.cut(&who.read_untracked(), &clock::now(), &code_now()));
        who.set(String::new());
    };
    let withdraw = move |_| {
        session.edit(|document| document.order.take_back_yes(&who.read_untracked(), &clock::now()));
    };
    let done = Memo::new(move |_| session.document.with(|document| history(&document.order, clock::spoken_time)));
    let step = |row: HistoryRow| view! { <li><b>{row.what}</b><span>{row.when}</span><span>{row.code}</span></li> };
    let row = |row: StageRow| {
        let mark = if row.reached { "✓ " } else { "" };
        view! { <li aria-current=row.now.then_some("step") class:reached=row.reached>{mark}{row.label}</li> }
    };
    view! {
        <section class="part-of" id="stages" tabindex="-1">
            <h3>"Status"</h3>
            <ol class="stages">{move || rows.get().into_iter().map(row).collect_view()}</ol>
            <div class="field">
                <label for="in-yes-by">"Who asked, said yes or cut it"</label>
                <div class="entry words">
                    <input
                        id="in-yes-by"
                        type="text"
                        autocomplete="off"
                        aria-describedby="help-yes-by"
                        maxlength=LONGEST_REFERENCE.to_string()
                        prop:value=move || who.get()
                        on:input:target=move |event| who.set(event.target().value())
                    />
                </div>
                <p class="help" id="help-yes-by">{WHOSE_NAME}</p>
            </div>
            <div class="buttons">
                <button
                    type="button"
                    id="stage-asked"
                    disabled=move || confirmed.get() || who.with(|who| who.trim().is_empty())
                    on:click=asked
                >
                    "Note who asked"
                </button>
                <button
                    type="button"
                    id="stage-read-back"
                    disabled=move || (confirmed.get() && !again()) || held_back.get() || code.with(Option::is_none)
                    on:click=read_back
                >
                    {move || if again() { READ_BACK_AGAIN } else { "Read back, all right" }}
                </button>
                <button type="button" id="record-yes" disabled=move || !may_confirm.get() on:click=record>
                    "Record the yes"
                </button>
                <Show when=move || confirmed.get()>
                    <button
                        type="button"
                        id="stage-cut"
                        disabled=move || changed.with(|lines| !lines.is_empty()) || provisional.with(|lines| !lines.is_empty())
                        on:click=cut
                    >
                        "It is cut"
                    </button>
                    <button type="button" class="quiet" id="withdraw-yes" on:click=withdraw>"Take the yes back"</button>
                </Show>
            </div>
            {no_longer}
            <div id="already-cut">{already}</div>
            <ul class="remarks" id="provisional-lengths">{not_yet}</ul>
            <ul class="remarks" id="obstacles">{in_the_way}</ul>
            <Show when=move || done.with(|done| !done.is_empty())>
                <h4>{TITLE}</h4>
                <ol class="history" id="order-history">
                    {move || done.get().into_iter().map(step).collect_view()}
                </ol>
            </Show>
            <p class="help">{HOW_A_YES_GOES}</p>
        </section>
    }
}
