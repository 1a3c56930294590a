//! The answer first, the rest of the page a moment later: a reader who opens the page or types looks at the answer, and
//! on an old phone everything below it would hold up that, or the next key.

use super::known::Known;
use leptos::prelude::*;
use std::time::Duration;

/// Long enough for the browser to paint the answer before it works on the rest.
const MOMENT: Duration = Duration::from_millis(30);

/// Whether the page was just opened or somebody types right now, so that the rest of the page waits.
#[derive(Clone, Copy)]
pub(super) struct Pace {
    typing: RwSignal<bool>,
    keys: StoredValue<u32>,
    /// Whether there was time for all of the page.
    whole: RwSignal<bool>,
}

impl Pace {
    pub(super) fn new() -> Self {
        let pace = Self { typing: RwSignal::new(false), keys: StoredValue::new(0), whole: RwSignal::new(false) };
        // Effects run once what is there first stands on the page.
        Effect::new(move |_| set_timeout(move || pace.all(), MOMENT));
        pace
    }

    /// Whether there was time for what stands below the answer.
    pub(super) fn is_whole(self) -> bool {
        self.whole.get()
    }

    /// Somebody wants all of the page now.
    pub(super) fn all(self) {
        self.settle();
        if !self.whole.get_untracked() {
            self.whole.set(true);
        }
    }

    /// What follows from the entries, but not before the moment after a key.
    pub(super) fn calm<T: Send + Sync + 'static>(self, known: Known<T>) -> Known<T> {
        known.unless(self.typing)
    }

    /// A key was pressed: the rest waits a moment from now.
    pub(super) fn key(self) {
        let key = self.keys.get_value() + 1;
        self.keys.set_value(key);
        if !self.typing.get_untracked() {
            self.typing.set(true);
        }
        set_timeout(
            move || {
                if self.keys.try_get_value() == Some(key) {
                    self.settle();
                }
            },
            MOMENT,
        );
    }

    /// Something else is done than typing: it finds the page as the entries want it.
    pub(super) fn settle(self) {
        if self.typing.get_untracked() {
            self.typing.set(false);
        }
    }
}
