//! The way from a rod end that nobody measured to the field in the Size view that it is entered in.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::inputs::Group;
use linkwright::present::fit::own_rod_end::{ENTER, Unmeasured, of_link};

/// A button for each rod end.
#[component]
pub(super) fn EnterRodEnds(
    /// The rod ends.
    #[prop(into)]
    ends: Signal<Vec<Unmeasured>>,
) -> impl IntoView {
    let session = use_session();
    let button = move |end: Unmeasured| {
        let title = end.title.clone();
        let open = move |_| {
            session.settle();
            session.link.set(end.link);
            session.open_field(Group::Ends, session.document.with_untracked(|document| end.field(document)));
        };
        view! {
            <p class="on-screen">
                <button type="button" class="enter-rod-end" on:click=open>{ENTER}": "{title}</button>
            </p>
        }
    };
    move || ends.get().into_iter().map(button).collect_view()
}

/// The same for both ends of the current link, or for one of them.
#[component]
pub(super) fn EnterOwnRodEnds(
    /// The only end that is asked for, 0 for A; both without.
    #[prop(optional, into)]
    end: Option<usize>,
) -> impl IntoView {
    let session = use_session();
    let ends = Memo::new(move |_| {
        let of = |answer: &linkwright::report::Answer| of_link(session.link.get(), &answer.link);
        let mut ends = session.answer.with(|answer| answer.as_deref().map(of)).unwrap_or_default();
        ends.retain(|one| end.is_none_or(|end| one.end == end));
        ends
    });
    view! { <EnterRodEnds ends /> }
}
