//! What the reader enters, beside every view.

mod defaults;
mod groups;
mod link;
mod picker;
mod rig;
#[cfg(test)]
mod tests;
mod undo;

pub(crate) use defaults::Defaults;
pub(crate) use groups::FieldGroups;
pub(crate) use picker::{LinkPicker, OtherLinks};
pub(crate) use undo::UndoButtons;

use crate::app::session::{View, use_session};
use leptos::prelude::*;
use link::LinkEntries;
use rig::RigEntries;

/// The first entries of the open view.
#[component]
pub(crate) fn Entries() -> impl IntoView {
    let session = use_session();
    let filled = Memo::new(move |_| !session.is_empty());
    let whole_rig = Memo::new(move |_| session.view.get() == View::Rig);
    view! {
        <section class="entries" aria-labelledby="entries-title">
            <h2 class="unseen" id="entries-title">"Your entries"</h2>
            <Show when=move || !filled.get()>
                <div class="welcome">
                    <p>"Enter three things."</p>
                    <button type="button" class="quiet" id="example" on:click=move |_| session.try_example()>
                        "Try an example"
                    </button>
                </div>
            </Show>
            <LinkPicker />
            <Show when=move || whole_rig.get() fallback=|| view! { <LinkEntries /> }>
                <RigEntries />
            </Show>
            <Show when=move || session.columns.get()>
                <Defaults />
            </Show>
            <div class="buttons clear">
                <UndoButtons ids=true />
                <Show when=move || filled.get()>
                    <button type="button" class="quiet" id="clear" on:click=move |_| session.clear()>
                        "Clear every entry"
                    </button>
                </Show>
            </div>
        </section>
    }
}
