//! What the first answer does not need: a part of the program for itself, fetched once the answer stands there.
//!
//! `cargo xtask build` turns on the feature `cut` and cuts the program at `brought` (`xtask/src/split.rs`): what only the
//! functions of [`Part`] lead to is not in the first file. Without the feature `brought` is a function like any other. Elsewhere the page reaches them through [`Bench::part`] alone, never by their names:
//! a name would bring them back into the first file.

use super::changing::{Changing, whenever};
use super::markup::Markup;
use super::moments::{after, at_window, meanwhile};
use super::state::{Bench, Leaf, Whole};
use super::tag::{Piece, button, tag, words as told};
use super::{answer, prove, rig, saved, sheets, storage};
use leptos::wasm_split::SplitLoaderError;
#[cfg(feature = "cut")]
use leptos::wasm_split::{self, wasm_split};
use linkwright::document::Document;
use linkwright::engine;
use linkwright::report::Firmness;
use std::time::Duration;

/// What the part brings.
pub(super) struct Part {
    /// A view; of the first one, what stands below the answer.
    view: fn(Bench, Leaf) -> Piece,
    /// The link on the bench as a sheet of paper.
    sheet: fn(Bench) -> Markup,
    /// The line that stays in sight under a view other than the first.
    pub(super) summed: fn(Bench) -> String,
    /// The reports on every link.
    pub(super) whole: fn(&Document, Option<&Whole>) -> Whole,
    /// How firm the answer for a link is.
    pub(super) firmness: fn(&Document, usize) -> Vec<Firmness>,
}

/// How far the part has come.
#[derive(Clone, Copy)]
pub(super) enum Rest {
    OnItsWay,
    Missing,
    Here(&'static Part),
}

/// From then on it is said that the part takes long.
const LATE: Duration = Duration::from_secs(15);

/// Where the program is cut. The macro writes the crossing, both ways, and what waits for the file.
#[cfg(feature = "cut")]
#[wasm_split(rest, wasm_split_path = wasm_split, fallible)]
fn brought() -> Result<&'static Part, SplitLoaderError> {
    Ok(part())
}

#[cfg(not(feature = "cut"))]
async fn brought() -> Result<&'static Part, SplitLoaderError> {
    Ok(part())
}

fn part() -> &'static Part {
    static PART: Part = Part { view: any, sheet: own_sheet, summed, whole: Whole::of, firmness: engine::firmness };
    &PART
}

fn any(bench: Bench, leaf: Leaf) -> Piece {
    match leaf {
        Leaf::Rig => rig::rig(bench),
        Leaf::Saved => saved::saved(bench),
        Leaf::Prove => prove::prove(bench),
        Leaf::Size => answer::below(bench),
    }
}

fn own_sheet(bench: Bench) -> Markup {
    let at = bench.at.get();
    bench.with_answer(|answer| sheets::one(bench, at, answer)).unwrap_or_default()
}

fn summed(bench: Bench) -> String {
    if bench.leaf.get() == Leaf::Saved {
        let [short, _] = saved::stands(bench);
        return short;
    }
    bench.whole.with(|whole| whole.as_ref().map(rig::summary).unwrap_or_default())
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
        meanwhile(async move {
            // Whoever asks while it is on its way waits for the same answer; after a failure it is sent for anew.
            let part = brought().await;
            let here = part.is_ok();
            if !matches!(self.rest.get_untracked(), Rest::Here(_)) {
                self.rest.set(part.map_or(Rest::Missing, Rest::Here));
            }
            act(here);
        });
    }

    /// Has the part fetched as soon as the first screen stands there. Where it did not come, turning to another view
    /// is as good as pressing the button.
    pub(super) fn fetch_rest(self) {
        let again = move || {
            if matches!(self.rest.get_untracked(), Rest::Missing) {
                self.fetch_again();
            }
        };
        whenever(move |first| {
            self.leaf.track();
            if first {
                self.once_here(|_| {});
            } else {
                again();
            }
        });
        at_window("online", move |_| again());
    }

    /// Sends for the part again. The focus of the button that goes away waits for what comes, unless the reader turns
    /// to something else.
    fn fetch_again(self) {
        if storage::has_focus("fetch-again") {
            after(Duration::ZERO, || storage::focus("#on-its-way"));
        }
        self.once_here(move |here| {
            if storage::has_focus("on-its-way") {
                let place = match self.leaf.get_untracked() {
                    _ if !here => "missing",
                    Leaf::Size => "below",
                    _ => "answer",
                };
                after(Duration::ZERO, move || storage::show(place));
            }
        });
    }
}

/// The link on the bench as a sheet of paper, if that can be written yet.
pub(super) fn sheet(bench: Bench) -> Markup {
    bench.part().map(|part| (part.sheet)(bench)).unwrap_or_default()
}

/// A view, or what stands in its place until it is here; of the first view, what stands below the answer.
pub(super) fn view(bench: Bench, leaf: Leaf) -> Piece {
    let what = match leaf {
        Leaf::Size => "The rest of the answer, from how far it adjusts to the fitting,",
        Leaf::Prove => "The view of every check with its working",
        Leaf::Rig => "The view of the whole rig",
        Leaf::Saved => "The view of what you saved",
    };
    match bench.rest.get() {
        Rest::Here(part) => (part.view)(bench, leaf),
        _ if bench.printing.get() => {
            let words =
                format!("{what} had not arrived when this was printed. Print it again once it is on the screen.");
            tag("p class=stop").with(&*words)
        }
        Rest::OnItsWay => on_its_way(leaf, what),
        Rest::Missing => missing(bench, leaf, what),
    }
}

fn on_its_way(leaf: Leaf, what: &str) -> Piece {
    let late = Changing::new(false);
    after(LATE, move || late.set(true));
    let more = move || {
        let more =
            " It takes long: the signal may be weak. If it does not come, load the page again; your entries stay.";
        if late.get() { more.to_string() } else { String::new() }
    };
    // Under an answer that was just told, nobody need be told of more.
    let open =
        if leaf == Leaf::Size { "p id=on-its-way tabindex=-1" } else { "p id=on-its-way tabindex=-1 role=status" };
    tag(open).with(&*format!("{what} is on its way …")).with(told(more))
}

fn missing(bench: Bench, leaf: Leaf, what: &str) -> Piece {
    let without = if leaf == Leaf::Size { "What stands above" } else { "The answer in the Size view" };
    let words = format!("{what} did not arrive: the connection may have broken. {without} holds without it.");
    let retry = move |_| bench.fetch_again();
    let row = tag("div class=buttons").with(button("button type=button id=fetch-again", "Try again", retry));
    let more = tag("p class=help").with("If that does not help, load the page again. Your entries stay.");
    tag("div id=missing tabindex=-1").with(tag("p class=stop role=alert").with(&*words)).with(row).with(more)
}
