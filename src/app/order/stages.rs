//! How far the order is, and the customer's yes.

use crate::app::session::use_session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::document::{LONGEST_REFERENCE, Stage};
use linkwright::engine::shop::code;
use linkwright::present::order::confirmation::stages;

/// The section.
#[component]
pub(super) fn Stages() -> impl IntoView {
    let session = use_session();
    let rows = Memo::new(move |_| session.document.with(|document| stages(&document.order, clock::spoken_time)));
    let has_code = Memo::new(move |_| {
        session.document.with(|document| session.rig.with(|whole| code::code_of_rig(document, &whole.links).is_some()))
    });
    let confirmed = Memo::new(move |_| session.document.with(|document| document.order.yes.is_given()));
    let who = RwSignal::new(String::new());
    let set_stage = move |stage| session.edit(|document| document.order.stage = stage);
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
    let withdraw = move |_| session.edit(|document| document.order.take_back_yes());
    let row = |row: linkwright::present::order::confirmation::StageRow| {
        let mark = if row.reached { "✓ " } else { "" };
        view! { <li aria-current=row.now.then_some("step") class:reached=row.reached>{mark}{row.label}</li> }
    };
    view! {
        <section class="part-of" id="stages" tabindex="-1">
            <h3>"How far it is"</h3>
            <ol class="stages">{move || rows.get().into_iter().map(row).collect_view()}</ol>
            <div class="field">
                <label for="in-yes-by">"Who said yes"</label>
                <div class="entry words">
                    <input
                        id="in-yes-by"
                        type="text"
                        autocomplete="off"
                        maxlength=LONGEST_REFERENCE.to_string()
                        prop:value=move || who.get()
                        on:input:target=move |event| who.set(event.target().value())
                    />
                </div>
            </div>
            <div class="buttons">
                <button
                    type="button"
                    id="stage-read-back"
                    disabled=move || confirmed.get()
                    on:click=move |_| set_stage(Stage::ReadBack)
                >
                    "Read back, all right"
                </button>
                <button type="button" id="record-yes" disabled=move || !has_code.get() on:click=record>
                    "Record the yes"
                </button>
                <Show when=move || confirmed.get()>
                    <button type="button" id="stage-cut" on:click=move |_| set_stage(Stage::Cut)>"It is cut"</button>
                    <button type="button" class="quiet" id="withdraw-yes" on:click=withdraw>"Take the yes back"</button>
                </Show>
            </div>
            <p class="help">
                "The yes is kept with the build on this device, with the time and the code. It is never in a link."
            </p>
        </section>
    }
}
