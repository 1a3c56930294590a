//! A part of a view that is printed by itself.

use crate::app::session::use_session;
use leptos::prelude::*;

/// The part: made only while it is printed, and then nothing else stands on the paper.
#[component]
pub(crate) fn PaperPart(
    /// Its name, which `Session::print_part` takes.
    name: &'static str,
    /// What is printed.
    children: ChildrenFn,
) -> impl IntoView {
    let session = use_session();
    view! {
        <Show when=move || session.paper_part.get() == Some(name)>
            <div class="paper-part">{children()}</div>
        </Show>
    }
}
