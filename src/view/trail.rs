//! The way back: every change of the entries can be undone and done again, as long as the page is open.

use super::changing::{Changing, Pause, whenever};
use super::held::Work;
use super::state::Bench;
use super::tag::{Piece, button};
use linkwright::document::Document;
use std::time::Duration;

/// More steps than anybody goes back.
const LONGEST: usize = 100;

/// Keys pressed within this time of each other are one step.
const PAUSE: Duration = Duration::from_millis(900);

/// What was on the bench, and which piece of work it was.
type Step = (Document, Work);

/// Where the entries have been.
#[derive(Clone, Copy)]
pub(super) struct Trail {
    back: Changing<Vec<Step>>,
    forth: Changing<Vec<Step>>,
    /// What going back or forth just put on the bench, which is no new step.
    put: Changing<Option<Document>>,
}

impl Trail {
    /// Follows a document from now on.
    pub(super) fn follow(document: Changing<Document>, work: Changing<Work>) -> Self {
        let trail =
            Self { back: Changing::new(Vec::new()), forth: Changing::new(Vec::new()), put: Changing::new(None) };
        // Whether a burst of changes goes on.
        let (going, pause) = (Changing::new(false), Pause::new());
        let mut last = None::<Step>;
        whenever(move |_| {
            let now = (document.get(), work.get());
            let Some(before) = last.replace(now.clone()).filter(|before| before.0 != now.0) else { return };
            if trail.put.take().is_some_and(|put| put == now.0) {
                return;
            }
            let goes_on = going.get_untracked();
            going.set(true);
            pause.after(PAUSE, move || going.set(false));
            // Other work is always a step of its own.
            if !goes_on || before.1.id != now.1.id {
                trail.back.update(|back| {
                    back.push(before);
                    let over = back.len().saturating_sub(LONGEST);
                    back.drain(..over);
                });
            }
            trail.forth.set(Vec::new());
        });
        trail
    }

    /// The document went back by itself to what it was before some keys: these are no step.
    pub(super) fn taken_back(self, document: &Document) {
        self.put.set(Some(document.clone()));
        if self.back.with_untracked(|back| back.last().is_some_and(|(last, _)| last == document)) {
            self.back.update(|back| drop(back.pop()));
        }
    }

    fn go(self, bench: Bench, from: Changing<Vec<Step>>, to: Changing<Vec<Step>>) {
        bench.settle();
        let mut step = None;
        from.update(|list| step = list.pop());
        let Some((document, work)) = step else { return };
        let now = bench.work.get_untracked();
        to.update(|list| list.push((bench.document.get_untracked(), now.clone())));
        self.put.set(Some(document.clone()));
        // Across an exchange the build that it belongs to comes along; within one it may have been saved since.
        if work.id != now.id {
            bench.work.set(bench.apart(work));
        }
        bench.rearrange(|now| *now = document);
        bench.offer_no_longer_what_is_here();
    }
}

/// The two buttons, beside the form and in the list of builds.
pub(super) fn buttons(bench: Bench, [undo, redo]: [&'static str; 2]) -> Vec<Piece> {
    let trail = bench.trail;
    // At the end of the way a button keeps the focus, so that a keyboard is not thrown back to the top.
    let step = move |open, words, from: Changing<Vec<Step>>, to| {
        button(open, words, move |_| trail.go(bench, from, to))
            .attribute("aria-disabled", move || from.with(Vec::is_empty).to_string())
    };
    vec![step(undo, "Undo", trail.back, trail.forth), step(redo, "Redo", trail.forth, trail.back)]
}

/// Undo and redo beside the form.
pub(super) const BESIDE_THE_FORM: [&str; 2] =
    ["button type=button class=quiet id=undo", "button type=button class=quiet id=redo"];
