//! What takes many searches: worked out when its fold is open, and only once typing pauses.

use super::changing::{Changing, whenever};
use super::moments::after;
use super::state::Bench;
use super::tag::{Piece, live, nothing, tag};
use linkwright::document::Document;
use std::sync::Arc;
use std::time::Duration;

/// A pause that long means that nobody is typing.
const PAUSE: Duration = Duration::from_millis(350);

/// Shows what was found.
pub(super) type Found = Arc<dyn Fn() -> Piece + Send + Sync>;

/// A fold whose inside is worked out later; until then it says so.
pub(super) fn fold(
    bench: Bench,
    id: &'static str,
    name: &'static str,
    work: fn(Bench, &Document, usize) -> Found,
) -> Piece {
    let open = Changing::new(false);
    let found = Changing::new(None::<Found>);
    whenever(move |_| {
        let (document, at) = (bench.document.get(), bench.at.get());
        if !open.get() && !bench.laid_open.get() {
            return;
        }
        let revision = document.clone();
        let pause = if found.with_untracked(Option::is_none) { Duration::ZERO } else { PAUSE };
        after(pause, move || {
            // Superseded by a later key, or the view is gone.
            let same = bench.document.try_with_untracked(|now| *now == revision) == Some(true);
            if same && bench.at.try_get_untracked() == Some(at) {
                found.set(Some(work(bench, &document, at)));
            }
        });
    });
    let tap = move |event: leptos::ev::Event| {
        event.prevent_default();
        open.update(|open| *open = !*open);
    };
    let inside = move || {
        if !open.get() && !bench.laid_open.get() {
            return nothing();
        }
        found.with(|found| match found {
            Some(found) => found(),
            None => tag("p").with("Working it out …"),
        })
    };
    tag("details class=later")
        .set("id", id)
        .switch("open", move || open.get() || bench.laid_open.get())
        .with(tag("summary").on("click", tap).with(name))
        .with(live(inside))
}
