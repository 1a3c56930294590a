//! The Prove view: what yields first, every check with its working, what was assumed, and what would change it.

use super::along;
use super::forces;
use super::known::Known;
use super::markup::{Markup, element, said};
use super::metals;
use super::more::more;
use super::moves;
use super::outside;
use super::state::Bench;
use super::tag::{Piece, button, live, nothing, several, tag};
use super::{findings, verdict, words};
use linkwright::inputs::{At, NUMBERS};
use linkwright::report::LinkReport;

/// The whole view. Its fields stay where they are while the rest is written anew.
pub(super) fn prove(bench: Bench) -> Piece {
    let place = Known::new(move || bench.place());
    let findings = move || bench.answer().map_or_else(nothing, |answer| findings::findings(bench, &answer));
    several()
        .with(stale_note(bench))
        .with(tag("div").markup(move || head(bench)))
        .with(along::picture(bench))
        .with(live(findings))
        .with(
            tag("section class=part-of id=assumed")
                .with(tag("h3").with("The forces, and what was assumed"))
                .with(tag("div").markup(move || forces::forces(bench)))
                .with(live(move || more(bench, place.get())))
                .with(back_to_defaults(bench)),
        )
        .with(metals::metals(bench))
        .with(moves::moves(bench))
        .with(outside::outside(bench))
}

/// Says that an entry was not taken, over an answer that rests on the one before.
pub(super) const STALE: &str = "From your last good entry: one of your entries is not taken yet.";

/// The same above an answer.
pub(super) fn stale_note(bench: Bench) -> Piece {
    tag("p class=stale-note").flag("hidden", move || !bench.stale()).with(STALE)
}

/// What is being proved, and the verdict in one line.
fn head(bench: Bench) -> Markup {
    let Some(answer) = bench.answer() else { return said("p class=\"stop\"", in_the_way(bench)) };
    let system = bench.system.get();
    let headline = words::headline(&answer.link, system);
    let judged = verdict::mark(answer.verdict, answer.word()) + said("p", words::weakest(&answer, system));
    let name = bench.document.with(|document| words::sheet_name(document, bench.at.get()));
    said("p class=\"sheet-name\"", name)
        + said("p class=\"kicker\"", headline)
        + said("h2 id=\"prove-title\"", "What yields first, and why")
        + element("div class=\"judged\"", judged)
}

/// Why there is nothing to prove.
fn in_the_way(bench: Bench) -> String {
    bench.report.with(|report| match report {
        LinkReport::Impossible(why) => bench.say(why),
        LinkReport::Needs(needs) => words::still_needed(needs),
        LinkReport::Answer(_) => String::new(),
    })
}

/// One tap that gives every changed default back, once one is changed.
fn back_to_defaults(bench: Bench) -> Piece {
    live(move || {
        let place = bench.place();
        let changed = bench.document.with(|document| {
            NUMBERS.iter().any(|input| {
                input.standing.is_a_default()
                    && [0, 1].iter().any(|end| input.decided(document, At { end: *end, ..place }).is_some())
            })
        });
        if !changed {
            return nothing();
        }
        button("button type=button id=defaults", "Take every default again", move |_| bench.give_back_defaults())
    })
}
