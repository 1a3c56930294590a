//! A fold: one tap away on a screen, always open on paper.

use crate::app::session::use_session;
use leptos::html;
use leptos::prelude::*;

/// A fold whose inside is made when it first opens or is printed. What the reader opened stays open when the paper is
/// done.
#[component]
pub(crate) fn Fold(
    /// What stands on the fold.
    #[prop(into)]
    summary: Signal<String>,
    /// Its id.
    #[prop(optional)]
    id: Option<&'static str>,
    /// Its class.
    #[prop(optional)]
    class: Option<&'static str>,
    /// Whether it is open from the start.
    #[prop(optional)]
    open: bool,
    /// What is folded away.
    children: ChildrenFn,
) -> impl IntoView {
    let session = use_session();
    let element = NodeRef::<html::Details>::new();
    let open = RwSignal::new(open);
    let shown = Memo::new(move |before| before == Some(&true) || open.get() || session.printing.get());
    let toggled = move |_| {
        if let Some(details) = element.get_untracked().filter(|_| !session.printing.get_untracked()) {
            open.set(details.open());
        }
    };
    view! {
        <details node_ref=element id=id class=class prop:open=move || open.get() || session.printing.get() on:toggle=toggled>
            <summary>{move || summary.get()}</summary>
            <Show when=move || shown.get()>
                <div>{children()}</div>
            </Show>
        </details>
    }
}
