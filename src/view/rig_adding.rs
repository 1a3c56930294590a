//! Links added to the rig: whole layouts for either axle, by their plain names.

use super::changing::Changing;
use super::known::Known;
use super::state::Bench;
use super::tag::{Piece, button, tag, words as live_words};
use linkwright::document::{MOST_LINKS, Position};
use linkwright::layouts::{self, LAYOUTS, Layout};

/// The layouts; folded away once the rig is complete.
pub(super) fn adding(bench: Bench) -> Piece {
    let at = Changing::new(Position::Front);
    // What came of the last press, in the place of that layout's help.
    let told = Changing::new(("", String::new()));
    let side = move |position: Position, open: &'static str, label: &str| {
        button(open, label, move |_| {
            at.set(position);
            told.set(Default::default());
        })
        .attribute("aria-pressed", move || (at.get() == position).to_string())
    };
    let add = move |layout: &'static Layout| {
        let put = move |_| told.set((layout.id, put(bench, layout, at.get_untracked())));
        let help =
            move || told.with(|(id, says)| if *id == layout.id { says.clone() } else { layout.help.to_string() });
        tag("li")
            .with(button("button type=button", layout.label, put).set("id", &format!("add-{}", layout.id)))
            .with(tag("p class=help").with(live_words(help)))
    };
    let axles = tag("div class=axles role=group aria-label='At which axle'")
        .with(side(Position::Front, "button type=button id=add-front", "Front axle"))
        .with(side(Position::Rear, "button type=button id=add-rear", "Rear axle"));
    // A single link is where a rig begins.
    let wanted = Known::new(move || {
        bench.whole.with(|whole| whole.as_ref().is_none_or(|whole| whole.links.len() < 2 || whole.rig.open > 0))
    });
    tag("details class='part-of adding'")
        .switch("open", move || wanted.get())
        .with(tag("summary").with(tag("h3").with("Add links")))
        .with(axles)
        .with(tag("ul class=layouts").with(LAYOUTS.iter().map(add).collect::<Vec<_>>()))
        .with(tag("p class=unseen role=status").with(live_words(move || told.get().1)))
        .with(tag("p class=help").with("Only what the axle does not have yet is added. Pairs are entered once; set left and right apart if they differ."))
}

/// Adds what the axle does not have yet, and says what came of it.
fn put(bench: Bench, layout: &Layout, position: Position) -> String {
    let mut added = None;
    bench.rearrange(|rig| added = layouts::add(rig, layout, position));
    let full = bench.document.with_untracked(|document| document.links.len() >= MOST_LINKS);
    match added {
        Some(_) => format!("Added to the {} axle.", position.word()),
        None if full => no_room(),
        None => format!("The {} axle has these already.", position.word()),
    }
}

/// Why nothing was added.
pub(super) fn no_room() -> String {
    format!("A rig has room for {MOST_LINKS} entries. Take one away first.")
}
