//! Each end: rod end, hand, thread in the bar, and the lines on the engagement scale.

use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::quantity::{Kind, show_fine};
use linkwright::report::{Made, MadeEnd};

/// Both ends, side by side where there is room.
pub(super) fn ends(bench: Bench, made: &Made) -> AnyView {
    view! {
        <h3>"The ends"</h3>
        <div class="ends">{end(bench, 0, &made.ends[0])}{end(bench, 1, &made.ends[1])}</div>
        {super::working::folded(bench, "How the lengths and the least thread come out", &made.working)}
    }
    .into_any()
}

fn end(bench: Bench, index: usize, end: &MadeEnd) -> AnyView {
    let fine = |value: f64| show_fine(value, Kind::FineLength, bench.system.get());
    let row = |name: &'static str, value: String| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    let marks: Vec<_> = end
        .marks
        .iter()
        .map(|mark| {
            let reached = if mark.reached { "reached" } else { "not reached" };
            view! {
                <li class:missed=!mark.reached>
                    <b>{mark.name}</b>": "{fine(mark.length)}", "{reached}
                    <small>{mark.source.words()}</small>
                </li>
            }
        })
        .collect();
    view! {
        <section class="end-card" aria-label=format!("End {}", words::letter(index))>
            <h4>{format!("End {}: {}, {}", words::letter(index), words::thread(end.thread), words::hand_word(end.hand))}</h4>
            <p>{end.rod_end}</p>
            <dl>
                {row("Thread in the bar", fine(end.engagement))}
                {row("Eye center to bar face", fine(end.eye_to_face))}
                {row("Visible past the jam nut", format!("{} threads", bench.show(end.visible_threads.max(0.0), Kind::Ratio)))}
                {row("Tap", format!("{} full thread", fine(end.tapped_depth)))}
                {row("Drill to the shoulder", fine(end.drill_depth))}
                {row("Least and most thread in the bar", format!("{} to {}", fine(end.least), fine(end.most)))}
            </dl>
            <p class="marks-title">"How much thread do others ask for?"</p>
            <ul class="marks">{marks}</ul>
        </section>
    }
    .into_any()
}
