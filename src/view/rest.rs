//! What the first answer does not need: a part of the program for itself, fetched once the answer stands there.
//!
//! `cargo xtask build` cuts the program at `brought` (`xtask/src/split.rs`): what only the functions of [`Part`] lead
//! to is not in the first file. Elsewhere the page reaches them through [`Bench::part`] alone, never by their names:
//! a name would bring them back into the first file.

use super::state::{Bench, Leaf, Whole};
use super::tag::{button, tag};
use super::{prove, qr, rig, saved, storage};
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_split::{self, SplitLoaderError, wasm_split};
use linkwright::document::Document;
use std::time::Duration;

/// What the part brings.
pub(super) struct Part {
    /// A view other than the first.
    view: fn(Bench, Leaf) -> AnyView,
    /// The line that stays in sight under such a view.
    pub(super) summed: fn(Bench) -> String,
    /// The rig as text.
    pub(super) text: fn(Bench) -> String,
    /// The reports on every link.
    pub(super) whole: fn(&Document, Option<&Whole>) -> Whole,
    /// A link as a code for a camera.
    pub(super) code: fn(&str) -> String,
}

/// How far the part has come.
#[derive(Clone, Copy)]
pub(super) enum Rest {
    OnItsWay,
    Missing,
    Here(&'static Part),
}

/// So much later than the page the part is asked for, when nobody needs it sooner: the screen comes first.
const SOON: Duration = Duration::from_millis(60);

/// Where the program is cut. The macro writes the crossing, both ways, and what waits for the file.
#[wasm_split(rest, wasm_split_path = wasm_split, fallible)]
fn brought() -> Result<&'static Part, SplitLoaderError> {
    static PART: Part = Part { view: any, summed, text, whole: Whole::of, code: qr::drawn };
    Ok(&PART)
}

fn any(bench: Bench, leaf: Leaf) -> AnyView {
    match leaf {
        Leaf::Rig => rig::rig(bench),
        Leaf::Saved => saved::saved(bench),
        Leaf::Prove | Leaf::Size => prove::prove(bench),
    }
}

fn summed(bench: Bench) -> String {
    if bench.leaf.get() == Leaf::Saved {
        let [short, _] = saved::stands(bench);
        return short;
    }
    bench.whole.with(|whole| whole.as_ref().map(rig::summary).unwrap_or_default())
}

fn text(bench: Bench) -> String {
    bench.whole.with(|whole| whole.as_ref().map(|whole| rig::text(bench, whole)).unwrap_or_default())
}

impl Bench {
    /// The part, once it is here.
    pub(super) fn part(self) -> Option<&'static Part> {
        match self.rest.get() {
            Rest::Here(part) => Some(part),
            Rest::OnItsWay | Rest::Missing => None,
        }
    }

    /// Does something once the part is here, or once it failed to come: `act` is told which.
    pub(super) fn once_here(self, act: impl FnOnce(bool) + 'static) {
        if matches!(self.rest.get_untracked(), Rest::Here(_)) {
            return act(true);
        }
        if matches!(self.rest.get_untracked(), Rest::Missing) {
            self.rest.set(Rest::OnItsWay);
        }
        spawn_local(async move {
            // Whoever asks while it is on its way waits for the same answer; after a failure it is sent for anew.
            let part = brought().await;
            let here = part.is_ok();
            if !matches!(self.rest.get_untracked(), Rest::Here(_)) {
                self.rest.set(part.map_or(Rest::Missing, Rest::Here));
            }
            act(here);
        });
    }

    /// Has the part fetched: at once where a view needs it, else quietly, so that it is there without a signal too.
    pub(super) fn fetch_rest(self) {
        let again = move || {
            if matches!(self.rest.get_untracked(), Rest::Missing) {
                self.once_here(|_| {});
            }
        };
        Effect::new(move |before: Option<()>| {
            let needed = self.leaf.get() != Leaf::Size;
            match before {
                None if needed => self.once_here(|_| {}),
                None => set_timeout(move || self.once_here(|_| {}), SOON),
                // Turning to such a view is as good as pressing the button.
                Some(()) if needed => again(),
                Some(()) => {}
            }
        });
        window_event_listener_untyped("online", move |_| again());
    }
}

/// A view other than the first, or what stands in its place until it is here.
pub(super) fn view(bench: Bench, leaf: Leaf) -> AnyView {
    let what = match leaf {
        Leaf::Rig => "The view of the whole rig",
        Leaf::Saved => "The view of what you saved",
        Leaf::Prove | Leaf::Size => "The view of every check with its working",
    };
    match bench.rest.get() {
        Rest::Here(part) => (part.view)(bench, leaf),
        _ if bench.printing.get() => {
            let words =
                format!("{what} had not arrived when this was printed. Print it again once it is on the screen.");
            tag("p class=stop").with(&*words).into_any()
        }
        Rest::OnItsWay => tag("p id=on-its-way role=status").with(&*format!("{what} is on its way …")).into_any(),
        Rest::Missing => {
            let words =
                format!("{what} did not arrive: the connection may have broken. The Size view works without it.");
            let retry = move |_| bench.once_here(|_| storage::show("answer"));
            let row = tag("div class=buttons").with(button("button type=button id=fetch-again", "Try again", retry));
            let more = tag("p class=help").with("If that does not help, load the page again. Your entries stay.");
            let told = tag("p class=stop role=alert").with(&*words);
            tag("div id=missing").with(told).with(row).with(more).into_any()
        }
    }
}
