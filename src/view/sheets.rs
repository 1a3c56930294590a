//! A link on a sheet of its own, for the saw and the bench: only printed, and written only then.

use super::markup::{Markup, element, said};
use super::prove::STALE;
use super::state::{Bench, Whole};
use super::{answer, checklist, drawing, ends, rig_parts, words};
use linkwright::report::{Answer, LinkReport};

/// The sheets of every link, in the order of the list; a link without an answer has a line that says so.
pub(super) fn sheets(bench: Bench, whole: &Whole) -> Markup {
    let sheet = |at: &usize| match whole.links.get(*at).and_then(LinkReport::answer) {
        Some(made) => one(bench, *at, made),
        None => framed(bench, *at, said("p", "No answer yet.")),
    };
    whole.rig.worst_first.iter().map(sheet).collect()
}

/// What is cut and drilled first, then what is bought, set and minded.
pub(super) fn one(bench: Bench, at: usize, made: &Answer) -> Markup {
    let picture = drawing::link(made, bench.system.get(), "wide", 860.0);
    let part = |inside: Markup| element("section class=\"part-of\"", inside);
    let cautions = element("ul", answer::cautions_first(bench, made));
    let steps = said("h3", "Fitting it") + element("ol class=\"steps\"", checklist::steps(bench, made));
    let stale = if bench.stale() { said("p class=\"stale-note\"", STALE) } else { Markup::default() };
    let sheet = stale
        + answer::standing(bench, made)
        + element("figure class=\"drawing\"", picture)
        + part(ends::both(bench, made, |_, _| Markup::default()))
        + part(rig_parts::of_link(bench, at, made))
        + part(answer::adjustment(bench, made))
        + element("section class=\"cautions\"", cautions)
        + part(steps);
    framed(bench, at, sheet)
}

/// A table, because only its head is repeated on every page: a page that was dropped finds its way back.
fn framed(bench: Bench, at: usize, inside: Markup) -> Markup {
    let name = bench.document.with(|document| words::sheet_name(document, at));
    let head = element("th", said("p class=\"sheet-name\"", name) + answer::printed(bench));
    let row = |group: &str, cell: Markup| element(group, element("tr", cell));
    element("table class=\"one-sheet\"", row("thead", head) + row("tbody", element("td", inside)))
}
