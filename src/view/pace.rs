//! The answer first, the rest of the page a moment later: a reader who types looks at the answer, and on an old phone
//! everything below it would hold up the next key.

use super::changing::{Changing, Pause, whenever};
use super::known::Known;
use std::time::Duration;

/// Long enough for the browser to paint the answer before it works on the rest.
const MOMENT: Duration = Duration::from_millis(30);

/// Whether somebody types right now, so that the rest of the page waits.
#[derive(Clone, Copy)]
pub(super) struct Pace {
    typing: Changing<bool>,
    keys: Pause,
}

impl Pace {
    pub(super) fn new() -> Self {
        Self { typing: Changing::new(false), keys: Pause::new() }
    }

    /// What follows from the entries, but not before the moment after a key.
    pub(super) fn calm<T: Send + Sync + 'static>(self, known: Known<T>) -> Known<T> {
        known.unless(self.typing)
    }

    /// Does something now, and again when something that it looked at changes, but not before the moment after a key.
    pub(super) fn whenever(self, act: impl Fn() + Send + Sync + 'static) {
        whenever(move |_| {
            if !self.typing.get() {
                act();
            }
        });
    }

    /// A key was pressed: the rest waits a moment from now.
    pub(super) fn key(self) {
        if !self.typing.get_untracked() {
            self.typing.set(true);
        }
        self.keys.after(MOMENT, move || self.settle());
    }

    /// Something else is done than typing: it finds the page as the entries want it.
    pub(super) fn settle(self) {
        if self.typing.get_untracked() {
            self.typing.set(false);
        }
    }
}
