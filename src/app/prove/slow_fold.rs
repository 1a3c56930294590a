//! A fold for what takes many searches: closed on paper too, unless every working is printed.

use crate::app::session::use_session;
use leptos::prelude::*;

/// Said until the searches are through.
pub(super) const WORKING: &str = "Working it out …";

/// The fold; its inside stands on the page only while it is open.
#[component]
pub(super) fn SlowFold(
    /// Its id.
    id: &'static str,
    /// What stands on it.
    title: &'static str,
    /// What is folded away.
    children: ChildrenFn,
) -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let shown = Memo::new(move |_| open.get() || session.laid_open.get());
    let toggle = move |event: leptos::ev::MouseEvent| {
        // The signal alone opens and closes the fold: printing opens it too.
        event.prevent_default();
        open.update(|open| *open = !*open);
    };

    view! {
        <details class="later" id=id prop:open=move || shown.get()>
            <summary on:click=toggle>{title}</summary>
            <Show when=move || shown.get()>{children()}</Show>
        </details>
    }
}
