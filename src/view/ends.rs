//! Each end of the link: its detail, its sizes, and how much thread is enough. All of it is markup.

use super::markup::{element, pair, said};
use super::state::Bench;
use super::{detail, words};
use leptos::prelude::Get;
use linkwright::order;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, EngagementMark, MadeEnd};

/// Both ends.
pub(super) fn ends(bench: Bench, answer: &Answer) -> String {
    let made = &answer.link;
    let mut out = String::new();
    for (index, end) in made.ends.iter().enumerate() {
        let (letter, thread, hand) = (words::letter(index), words::thread(end.thread), end.hand.words());
        let drawing = detail::end(made, index, bench.system.get());
        let parts = said("h4", &format!("End {letter}: {thread}, {hand}"))
            + &element("figure class=\"drawing\"", &drawing)
            + &sizes(bench, end, made.bore > 0.0)
            + &engagement(bench, end);
        out += &element("article class=\"end-of\"", &parts);
    }
    let flats = words::flats(made, bench.system.get()).map(|flats| said("p class=\"flats\"", &flats));
    said("h3", "The two ends") + &element("div class=\"ends\"", &out) + &flats.unwrap_or_default()
}

fn sizes(bench: Bench, end: &MadeEnd, tube: bool) -> String {
    let fine = |value: f64| bench.show(value, Kind::FineLength);
    let rows = [
        ("Rod end", end.rod_end.to_string()),
        ("Eye center to bar face", fine(end.eye_to_face)),
        ("Thread in the bar", fine(end.engagement)),
        ("Thread showing", detail::threads_showing(end, bench.system.get())),
        ("Tap, full thread", fine(end.tapped_depth)),
        ("Drill to the shoulder", fine(end.drill_depth)),
        ("Drill to the point", fine(end.drill_point)),
        ("Jam nut", format!("{} thick, {} across", fine(end.jam_nut), fine(end.jam_nut_across))),
        ("Bolt hole in the ball", fine(end.bore)),
    ];
    // A welded insert comes tapped; nothing is drilled.
    let rows = rows.iter().filter(|(name, _)| !(tube && name.starts_with("Drill")));
    let rows: String = rows.map(|(name, value)| pair(name, "dd", value)).collect();
    element("dl class=\"rows\"", &rows)
}

/// The named lines on the scale of engagement, the longest first, with the link as set among them.
fn engagement(bench: Bench, end: &MadeEnd) -> String {
    let fine = |value: f64| bench.show(value, Kind::FineLength);
    let mut marks: Vec<&EngagementMark> = end.marks.iter().collect();
    order::by(&mut marks, |a, b| b.length.total_cmp(&a.length));
    let range = format!("As set. It can go from {} to {}.", fine(end.least), fine(end.most));
    let set = element("li class=\"as-set\"", &(said("b", &fine(end.engagement)) + &said("span", &range)));
    let (mut missed, mut reached) = (String::new(), String::new());
    for mark in marks {
        let (list, class, word) =
            if mark.reached { (&mut reached, "", "reached") } else { (&mut missed, "missed", "not reached") };
        let words =
            said("span", &format!("{}, ", mark.name)) + &said("em", word) + &said("small", &mark.source.words());
        *list += &element(&format!("li class=\"{class}\""), &(said("b", &fine(mark.length)) + &element("div", &words)));
    }
    said("h5", "How much thread is enough") + &element("ol class=\"scale\"", &(missed + &set + &reached))
}
