//! What a place of the Fit view keeps in sight in the line at the bottom: how the bar at hand stands.

use leptos::prelude::*;
use linkwright::report::Verdict;

/// A mark and its word; none before anything was judged.
pub(crate) type Standing = Option<(Verdict, &'static str)>;

/// How the bar stands that is looked at in a place of the Fit view.
#[derive(Clone, Copy)]
pub(crate) struct InSight(RwSignal<Option<Signal<Standing>>>);

/// Provides what a place keeps in sight.
pub(crate) fn provide_in_sight() {
    provide_context(InSight(RwSignal::new(None)));
}

impl InSight {
    /// How it stands; nothing once the place is gone that judged it.
    pub(crate) fn standing(self) -> Standing {
        self.0.get()?.try_get().flatten()
    }
}

/// Keeps how a bar stands in sight while the place is open that judges it.
pub(crate) fn stands_in_sight(standing: impl Fn() -> Standing + Send + Sync + 'static) {
    // A place by itself, in a test, has no such line.
    let Some(InSight(kept)) = use_context() else { return };
    kept.set(Some(Signal::derive(standing)));
    on_cleanup(move || {
        let _ = kept.try_set(None);
    });
}
