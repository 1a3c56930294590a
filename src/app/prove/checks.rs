//! Every check, worst first, each opening its working.

use super::check::Check;
use crate::app::fields::Fold;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::findings::{self, Checks, Group, HOW_TO_READ, Row};

/// The section: strength, fit, then what is worth knowing beside them.
#[component]
pub(super) fn EveryCheck() -> impl IntoView {
    let session = use_session();
    let checks = Memo::new(move |_| {
        let system = session.units.get();
        session.answer.with(|answer| answer.as_ref().map(|answer| findings::checks(answer, system))).unwrap_or_default()
    });
    let notes = Memo::new(move |_| checks.with(|checks| ids(&checks.notes)));

    view! {
        <section class="part-of">
            <h3>"Every check"</h3>
            <p class="on-screen">{HOW_TO_READ}</p>
            <div class="checks">
                <CheckGroup checks at=0 />
                <CheckGroup checks at=1 />
                <CheckList checks ids=notes />
            </div>
        </section>
    }
}

fn ids(rows: &[Row]) -> Vec<&'static str> {
    rows.iter().map(|row| row.id).collect()
}

/// Checks of one sort; those that pass far below their limit stand behind one line.
#[component]
fn CheckGroup(checks: Memo<Checks>, at: usize) -> impl IntoView {
    let of_group = move |of: fn(&Group) -> Vec<&'static str>| {
        Memo::new(move |_| checks.with(|checks| checks.groups.get(at).map(of).unwrap_or_default()))
    };
    let (near, far) = (of_group(|group| ids(&group.near)), of_group(|group| ids(&group.far)));
    let title = move || checks.with(|checks| checks.groups.get(at).map(|group| group.title));
    let line = Signal::derive(move || {
        checks.with(|checks| checks.groups.get(at).map(|group| group.far_line.clone()).unwrap_or_default())
    });

    view! {
        <h4>{title}</h4>
        <CheckList checks ids=near />
        <Show when=move || far.with(|far| !far.is_empty())>
            <Fold class="far-below" summary=line>
                <CheckList checks ids=far />
            </Fold>
        </Show>
    }
}

#[component]
fn CheckList(checks: Memo<Checks>, ids: Memo<Vec<&'static str>>) -> impl IntoView {
    view! {
        <For each=move || ids.get() key=|id| *id let(id)>
            <Check checks id />
        </For>
    }
}
