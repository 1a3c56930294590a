//! Every link of the rig on a sheet of its own, for the saw and the bench: only printed, and written only then.

use super::markup::{element, said};
use super::state::{Bench, Whole};
use super::{answer, checklist, drawing, ends, words};
use leptos::prelude::Get;
use linkwright::report::LinkReport;

/// The sheets, in the order of the list; a link without an answer has a line that says so.
pub(super) fn sheets(bench: Bench, whole: &Whole) -> String {
    whole
        .rig
        .worst_first
        .iter()
        .map(|at| {
            let sheet = match whole.links.get(*at).and_then(LinkReport::answer) {
                Some(made) => {
                    let picture = drawing::link(made, bench.system.get(), "wide", 860.0);
                    let steps = element("ol class=\"steps\"", &checklist::steps(bench, made));
                    let fitting = said("h3", "Fitting it") + &steps;
                    let cautions = element("ul", &answer::cautions_first(bench, made));
                    answer::head(bench, *at, made)
                        + &element("section class=\"cautions\"", &cautions)
                        + &element("figure class=\"drawing\"", &picture)
                        + &element("section class=\"part-of\"", &ends::ends(bench, made))
                        + &element("section class=\"part-of\"", &answer::adjustment(bench, made))
                        + &element("section class=\"part-of\"", &fitting)
                }
                None => said("p", &format!("{}: no answer yet.", words::sheet_name(&whole.document, *at))),
            };
            element("section class=\"one-sheet\"", &sheet)
        })
        .collect()
}
