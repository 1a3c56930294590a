//! The way back: the buttons that undo and redo, and what the history of the library follows.

use super::changing::{Changing, Pause, whenever};
use super::state::Bench;
use super::storage;
use super::tag::{Piece, button};
use linkwright::document::Document;
use linkwright::store::history::{History, Step};
use linkwright::store::stored_entries::Origin;
use linkwright::store::{ENTRIES, other_tabs};
use std::time::Duration;

/// Keys pressed within this time of each other are one step.
const PAUSE: Duration = Duration::from_millis(900);

/// Where the entries have been.
#[derive(Clone, Copy)]
pub(super) struct Trail(Changing<History>);

impl Trail {
    /// Follows a document from now on.
    pub(super) fn follow(document: Changing<Document>, origin: Changing<Origin>) -> Self {
        let trail = Self(Changing::default());
        let pause = Pause::new();
        whenever(move |_| {
            let now = (document.get(), origin.get());
            let mut changed = false;
            trail.0.update(|history| changed = history.follow(now));
            if changed {
                pause.after(PAUSE, move || trail.0.update_untracked(History::end_burst));
            }
        });
        trail
    }

    /// The document went back by itself to what it was before some keys: these are no step.
    pub(super) fn taken_back(self, document: &Document) {
        self.0.update(|history| history.taken_back(document));
    }

    fn go(self, bench: Bench, take: fn(&mut History, Step) -> Option<Step>) {
        bench.settle();
        let now = bench.origin.get_untracked();
        let open = (bench.document.get_untracked(), now.clone());
        let mut step = None;
        self.0.update(|history| step = take(history, open));
        let Some((document, origin)) = step else { return };
        // Across an exchange the build that it belongs to comes along; within one it may have been saved since.
        if origin.id != now.id {
            // What was typed a moment ago, too, is set aside when other entries take its place.
            bench.keep();
            let shared = storage::kept(ENTRIES).unwrap_or_default();
            bench.origin.set(other_tabs::apart(origin, &shared, storage::fresh_id()));
        }
        bench.rearrange(|now| *now = document);
        bench.offer_no_longer_what_is_here();
    }
}

/// The two buttons, beside the form and in the list of builds.
pub(super) fn buttons(bench: Bench, [undo, redo]: [&'static str; 2]) -> Vec<Piece> {
    let Trail(history) = bench.trail;
    // At the end of the way a button keeps the focus, so that a keyboard is not thrown back to the top.
    let step = move |open, words, take: fn(&mut History, Step) -> Option<Step>, can: fn(&History) -> bool| {
        button(open, words, move |_| bench.trail.go(bench, take))
            .attribute("aria-disabled", move || (!history.with(can)).to_string())
    };
    vec![step(undo, "Undo", History::undo, History::can_undo), step(redo, "Redo", History::redo, History::can_redo)]
}

/// Undo and redo beside the form.
pub(super) const BESIDE_THE_FORM: [&str; 2] =
    ["button type=button class=quiet id=undo", "button type=button class=quiet id=redo"];
