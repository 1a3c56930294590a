//! Every link in a row, the worst first, and what was just done to one of them.

use super::link_row::LinkRow;
use crate::app::session::use_session;
use crate::browser::page;
use leptos::prelude::*;
use linkwright::log::{Spot, bars};
use linkwright::present::fit::log::entries_of;
use linkwright::present::rig;
use linkwright::present::rig_list::{Change, Changed, log_stays};

/// What a button of a row did; it is said until something else changes.
#[derive(Clone, PartialEq)]
struct Done {
    /// The link that was pressed.
    index: usize,
    /// Its place in the list, where this is said if the link is gone.
    rank: usize,
    /// What it did.
    changed: Changed,
}

/// A line of the list.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum Line {
    /// The row of a link.
    Link(usize),
    /// What was just done.
    Done,
}

/// The list.
#[component]
pub(super) fn Links() -> impl IntoView {
    let session = use_session();
    let last = RwSignal::new(None::<Done>);
    let done = Memo::new(move |_| {
        last.with(|last| {
            last.as_ref().filter(|done| session.document.with(|document| *document == done.changed.after)).cloned()
        })
    });
    let lines = Memo::new(move |_| {
        let order = session.rig.with(|whole| whole.rig.worst_first.clone());
        let mut lines: Vec<Line> = order.into_iter().map(Line::Link).collect();
        if let Some(done) = done.read().as_ref() {
            // At the row that was pressed, so that no other button moves under the finger.
            let below = done.changed.below.and_then(|link| lines.iter().position(|line| *line == Line::Link(link)));
            let at = below.map_or(done.rank, |row| row + 1).min(lines.len());
            lines.insert(at, Line::Done);
        }
        lines
    });
    let entries = Memo::new(move |_| session.rig.with(|whole| rig::entries_line(whole)));
    let on_change = Callback::new(move |(index, change): (usize, Change)| {
        // What is half typed counts before the rig changes.
        session.settle();
        let is_link = |line: &Line| *line == Line::Link(index);
        let rank = lines.with_untracked(|lines| lines.iter().position(is_link).unwrap_or(0));
        let system = session.units.get_untracked();
        let mut changed = session.document.with_untracked(|document| change.make(document, index, system));
        if change == Change::Remove {
            let spots: Vec<Spot> = bars(&changed.before, index).into_iter().map(|(spot, _)| spot).collect();
            if let Some(entries) = entries_of(&session.kept_log().0, &spots) {
                changed.sentence = log_stays(&changed.sentence, &entries);
            }
        }
        session.rearrange(|document| document.clone_from(&changed.after));
        page::show_soon(if changed.did_something() { "undo-remove" } else { "gone" }.to_string());
        last.set(Some(Done { index, rank, changed }));
    });
    let on_undo = Callback::new(move |()| {
        if let Some(Done { index, changed, .. }) = last.get_untracked() {
            session.rearrange(|document| *document = changed.before);
            page::show_soon(format!("open-{index}"));
        }
    });
    view! {
        <section class="part-of">
            <h3>"Links, the worst first"</h3>
            {move || entries.get().map(|line| view! { <p class="help">{line}</p> })}
            <ol class="rig-links" id="rig-links">
                <For each=move || lines.get() key=|line| *line let(line)>
                    {match line {
                        Line::Link(index) => view! { <LinkRow index on_change /> }.into_any(),
                        Line::Done => view! { <DoneLine done on_undo /> }.into_any(),
                    }}
                </For>
            </ol>
        </section>
    }
}

/// What was just done, and the way back.
#[component]
fn DoneLine(
    /// What was done.
    done: Memo<Option<Done>>,
    /// Takes it back.
    on_undo: Callback<()>,
) -> impl IntoView {
    let sentence = move || done.with(|done| done.as_ref().map(|done| done.changed.sentence.clone()));
    let can_undo = move || done.with(|done| done.as_ref().is_some_and(|done| done.changed.did_something()));
    view! {
        <li class="gone">
            <p id="gone" tabindex="-1">{sentence}</p>
            <Show when=can_undo>
                <button type="button" id="undo-remove" aria-describedby="gone" on:click=move |_| on_undo.run(())>
                    "Undo"
                </button>
            </Show>
        </li>
    }
}
