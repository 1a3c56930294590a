//! Each end of the link: its detail, its sizes, and how much thread is enough. All of it is markup.

use super::markup::{Markup, element, pair, said};
use super::state::Bench;
use super::{detail, words};
use linkwright::order;
use linkwright::report::{Answer, EndGeometry, EngagementMark};

/// Both ends, with the scale of engagement.
pub(super) fn ends(bench: Bench, answer: &Answer) -> Markup {
    both(bench, answer, engagement)
}

/// Both ends, each with something more about it.
pub(super) fn both(bench: Bench, answer: &Answer, more: fn(Bench, &EndGeometry) -> Markup) -> Markup {
    let made = &answer.link;
    let mut out = Markup::default();
    for (index, end) in made.ends.iter().enumerate() {
        let (letter, thread, hand) = (words::letter(index), words::thread(end.thread), end.hand.words());
        let drawing = detail::end(made, index, bench.system.get());
        let parts = said("h4", format!("End {letter}: {thread}, {hand}"))
            + element("figure class=\"drawing\"", drawing)
            + sizes(bench, end, made.bore > 0.0)
            + more(bench, end);
        out += element("article class=\"end-of\"", parts);
    }
    let flats = words::flats(made, Some(bench.system.get())).map(|flats| said("p class=\"flats\"", flats));
    said("h3", "The two ends") + element("div class=\"ends\"", out) + flats.unwrap_or_default()
}

/// What there is to buy, set, drill and tap at one end.
pub(super) fn rows(end: &EndGeometry, tube: bool, units: words::Units) -> Vec<(&'static str, String)> {
    let length = |value: f64| words::length(value, units);
    let deep = |value: f64| format!("{} deep", length(value));
    let mut rows = vec![
        ("Rod end", end.rod_end.to_string()),
        ("Eye center to bar face", length(end.eye_to_face)),
        ("Full thread in the bar", words::fit(end.engagement, units)),
        ("Thread showing", detail::threads_showing(end)),
    ];
    // A welded insert comes tapped; nothing is drilled.
    if !tube {
        rows.extend([
            ("Tap drill", words::tap_drill(end, units)),
            ("Hole before tapping", words::hole(end, units)),
            ("Drill to the shoulder", deep(end.drill_depth)),
            ("Drill to the point", deep(end.drill_point)),
        ]);
    }
    rows.extend([
        ("Tap, full thread", deep(end.tapped_depth)),
        ("Jam nut", format!("{} thick, {} wrench", length(end.jam_nut), length(end.jam_nut_across))),
        ("Bolt hole in the ball", words::trade(end.bore, units)),
    ]);
    rows
}

fn sizes(bench: Bench, end: &EndGeometry, tube: bool) -> Markup {
    let rows = rows(end, tube, Some(bench.system.get()));
    let rows: Markup = rows.into_iter().map(|(name, value)| pair(name, "dd", value)).collect();
    element("dl class=\"rows\"", rows)
}

/// The named lines on the scale of engagement, the longest first, with the link as set among them.
fn engagement(bench: Bench, end: &EndGeometry) -> Markup {
    let fine = |value: f64| words::fit(value, Some(bench.system.get()));
    let mut marks: Vec<&EngagementMark> = end.marks.iter().collect();
    marks.sort_by(|a, b| b.length.total_cmp(&a.length));
    let range = if order::exceeds(end.least, end.most) {
        "As set. No setting of this rod end has enough thread in the bar.".to_string()
    } else {
        format!("As set. It can go from {} to {}.", fine(end.least), fine(end.most))
    };
    let set = element("li class=\"as-set\"", said("b", fine(end.engagement)) + said("span", range));
    let (mut missed, mut reached) = (Markup::default(), Markup::default());
    for mark in marks {
        let (list, class, word) =
            if mark.reached { (&mut reached, "", "reached") } else { (&mut missed, "missed", "not reached") };
        let words = said("span", format!("{}, ", mark.name)) + said("em", word) + said("small", mark.source.words());
        *list += element(format!("li class=\"{class}\""), said("b", fine(mark.length)) + element("div", words));
    }
    said("h5", "How much thread is enough") + element("ol class=\"scale\"", missed + set + reached)
}
