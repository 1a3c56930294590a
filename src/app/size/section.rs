//! A section that folds: its title, a line with what is essential in it, and the rest one tap away.

use super::open_sections::use_open_sections;
use crate::app::session::use_session;
use leptos::prelude::*;

/// The section. Its inside is made when it is first unfolded or printed.
#[component]
pub(super) fn Section(
    /// Its id, one of those that fold.
    id: &'static str,
    /// Its title.
    #[prop(into)]
    title: Signal<String>,
    /// The sizes that most readers look for in it.
    #[prop(into)]
    essentials: Signal<String>,
    /// A class for the style sheets.
    #[prop(optional)]
    class: &'static str,
    /// What is folded away.
    children: ChildrenFn,
) -> impl IntoView {
    let session = use_session();
    let sections = use_open_sections();
    let open = Memo::new(move |_| sections.is_open(id) || session.printing.get());
    let made = Memo::new(move |before| before == Some(&true) || open.get());

    view! {
        <section class=format!("part-of folds {class}") id=id tabindex="-1">
            <details
                prop:open=open
                on:toggle:target=move |event| {
                    // Printing opens every section, which is not the reader's choice.
                    if !session.printing.get_untracked() {
                        sections.set(id, event.target().open());
                    }
                }
            >
                <summary>
                    <h3>{title}</h3>
                    <span class="essentials on-screen">{essentials}</span>
                </summary>
                <Show when=move || made.get()>{children()}</Show>
            </details>
        </section>
    }
}
