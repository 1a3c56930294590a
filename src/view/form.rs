//! The first three entries, and what stands there before them.

use super::field::{number, radios};
use super::known::Known;
use super::more::more;
use super::state::{Bench, Leaf};
use super::tag::{Piece, button, live, nothing, tag};
use super::{rig, rig_entries, trail, words};
use leptos::prelude::*;
use linkwright::document::{Document, Link};
use linkwright::inputs::{self, At};

/// Every entry of the link on the bench.
pub(super) fn form(bench: Bench) -> Piece {
    let place = Known::new(move || bench.place());
    let entered =
        live(
            move || {
                if bench.leaf.get() == Leaf::Rig {
                    rig_entries::rig_entries(bench)
                } else {
                    entries(bench, place.get())
                }
            },
        );
    tag("section class=entries aria-labelledby=entries-title")
        .with(tag("h2 class=unseen id=entries-title").with("Your entries"))
        .with(live(move || welcome(bench)))
        .with(picker(bench))
        .with(entered)
        .with(start_over(bench))
}

fn entries(bench: Bench, place: At) -> Piece {
    tag("form class=first")
        .on("submit", |event| event.prevent_default())
        .with(radios(bench, &inputs::ROLE, place))
        .with(number(bench, &inputs::LENGTH, place))
        .with(around(bench))
        .with(number(bench, &inputs::WEIGHT, place))
        .with(radios(bench, &inputs::USAGE, place))
        .with(live(move || if shows_more(bench) { more(bench, place) } else { nothing() }))
}

/// In the Prove view the defaults stand where the forces are told; every field stands on the page once.
fn shows_more(bench: Bench) -> bool {
    bench.leaf.get() == Leaf::Size || !bench.entered.get()
}

/// Which of several links is on the bench; nothing when there is only one.
fn picker(bench: Bench) -> Piece {
    // One a line.
    let titles = Known::new(move || {
        bench.document.with(|document| document.links.iter().map(Link::title).collect::<Vec<_>>().join("\n"))
    });
    live(move || {
        let titles = titles.get();
        if !titles.contains('\n') || bench.leaf.get() == Leaf::Rig {
            return nothing();
        }
        let option = |(index, title): (usize, &str)| {
            tag("option")
                .set("value", &index.to_string())
                .flag("selected", move || bench.at.get() == index)
                .with(&*format!("{}. {title}", index + 1))
        };
        tag("div class='field links'").with(tag("label for=link-picker").with("Current link")).with(
            tag("select id=link-picker")
                .on("change", move |event| bench.at.set(event_target_value(&event).parse().unwrap_or(0)))
                .with(titles.lines().enumerate().map(option).collect::<Vec<_>>()),
        )
    })
}

/// From one link of several to the others: on to the next one that is not entered yet, or back to the list. Under the
/// field that is filled in, where the thumb is.
pub(super) fn around(bench: Bench) -> Piece {
    let ways = Known::new(move || {
        bench.document.with(|document| {
            let count = document.links.len();
            let entered = (0..count).all(|link| inputs::still_needed(document, link).is_empty());
            (count > 1, inputs::next_link(document, bench.at.get()), entered)
        })
    });
    live(move || {
        let (several, next, entered) = ways.get();
        if !several || bench.leaf.get() != Leaf::Size {
            return nothing();
        }
        let back = move |_| bench.turn_to_part(Leaf::Rig, format!("open-{}", bench.at.get_untracked()));
        let label = if entered { "All entered: back to the rig" } else { "Back to the rig" };
        tag("div class='buttons around'")
            .with(
                next.map(|next| {
                    button("button type=button class=next-link", "Next link", move |_| rig::open(bench, next))
                }),
            )
            .with(button("button type=button class=back-to-rig", label, back))
    })
}

/// Steps back and forth, and a way back to an empty form once something is in it.
fn start_over(bench: Bench) -> Piece {
    let filled = Known::new(move || bench.document.with(|document| *document != Document::default()));
    let clear = move || {
        if !filled.get() {
            return nothing();
        }
        button("button type=button class=quiet id=clear", "Clear every entry", move |_| bench.clear())
    };
    tag("div class='buttons clear'").with(trail::buttons(bench, trail::BESIDE_THE_FORM)).with(live(clear))
}

/// The invitation above an empty form.
fn welcome(bench: Bench) -> Piece {
    if bench.document.with(|document| *document != Document::default()) {
        return nothing();
    }
    tag("div class=welcome").with(tag("p").with("Enter three things.")).with(button(
        "button type=button class=quiet id=example",
        "Try an example",
        move |_| bench.try_example(),
    ))
}

/// What stands in place of the answer until it can be given.
pub(super) fn invitation(needs: &[&'static str]) -> Piece {
    // Somebody who is past the first entries needs no welcome.
    if !needs.iter().any(|id| [inputs::LENGTH.id, inputs::WEIGHT.id, inputs::USAGE.id].contains(id)) {
        return tag("p class=stop id=still-needed").with(&*words::still_needed(needs));
    }
    tag("div class=invitation")
        .with(tag("p class=lead").with("Measure one link from hole center to hole center. Add what the rig weighs, loaded, and how you drive it."))
        .with(tag("p id=still-needed").with(&*words::still_needed(needs)))
        .with(tag("p").with("You get the bar, the rod ends, what to saw, tap and set, and how much margin it has. Every number opens its working."))
}
