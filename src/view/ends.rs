//! Each end of the link: its detail, its sizes, and how much thread is enough.

use super::state::Bench;
use super::{detail, words, working};
use leptos::prelude::*;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, EngagementMark, MadeEnd};

/// Both ends.
pub(super) fn ends(bench: Bench, answer: &Answer) -> AnyView {
    let made = &answer.link;
    let system = bench.system.get();
    view! {
        <section class="part-of ends-part">
            <h3>"The two ends"</h3>
            <div class="ends">
                {made.ends.iter().enumerate().map(|(index, end)| view! {
                    <article class="end-of">
                        <h4>{format!("End {}: {}, {}", words::letter(index), words::thread(end.thread), words::hand_word(end.hand))}</h4>
                        <figure class="drawing" inner_html=detail::end(made, index, system)></figure>
                        {sizes(bench, end)}
                        {engagement(bench, end)}
                    </article>
                }).collect_view()}
            </div>
            <details>
                <summary>"How the lengths and the least thread come out"</summary>
                {working::lines(bench, &made.working)}
            </details>
        </section>
    }
    .into_any()
}

fn sizes(bench: Bench, end: &MadeEnd) -> AnyView {
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
    view! {
        <dl class="rows">
            {rows.into_iter().map(|(name, value)| view! { <div><dt>{name}</dt><dd>{value}</dd></div> }).collect_view()}
        </dl>
    }
    .into_any()
}

/// The named lines on the scale of engagement, the longest first, with the link as set among them.
fn engagement(bench: Bench, end: &MadeEnd) -> AnyView {
    let fine = |value: f64| bench.show(value, Kind::FineLength);
    let mut marks: Vec<&EngagementMark> = end.marks.iter().collect();
    marks.sort_by(|a, b| b.length.total_cmp(&a.length));
    let row = |mark: &EngagementMark| {
        let reached = if mark.reached { "reached" } else { "not reached" };
        view! {
            <li class:missed=!mark.reached>
                <b>{fine(mark.length)}</b>
                <span>{mark.name}", "<em>{reached}</em><small>{mark.source.words()}</small></span>
            </li>
        }
    };
    view! {
        <h5>"How much thread is enough"</h5>
        <ol class="scale">
            {marks.iter().filter(|mark| !mark.reached).map(|mark| row(mark)).collect_view()}
            <li class="as-set"><b>{fine(end.engagement)}</b><span>"As set. It can go from "{fine(end.least)}" to "{fine(end.most)}"."</span></li>
            {marks.iter().filter(|mark| mark.reached).map(|mark| row(mark)).collect_view()}
        </ol>
    }
    .into_any()
}
