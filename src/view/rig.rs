//! The whole rig: how it stands, and its parts in their order.

mod rows;

use super::known::Known;
use super::markup::{Markup, element, said};
use super::state::{Bench, Leaf, Whole};
use super::tag::{Piece, several, tag};
use super::{answer, plan, rig_adding, rig_parts, send, sheets, verdict, words};
use linkwright::document::Document;
use linkwright::inputs::{self, At};
use linkwright::quantity::{Kind, System, show};
use linkwright::report::{Answer, LinkReport, Verdict};

/// The view.
pub(super) fn rig(bench: Bench) -> Piece {
    let lead = told(bench, lead);
    let parts = told(bench, rig_parts::parts);
    let sheets = told(
        bench,
        |bench, whole| if bench.laid_open.get() { sheets::sheets(bench, whole) } else { Markup::default() },
    );
    several()
        .with(tag("div").markup(move || lead.get()))
        .with(plan::plan(bench, move |index| open(bench, index)))
        .with(
            tag("section class=part-of")
                .with(tag("h3").with("Links, the worst first"))
                .with(tag("ol class=rig-links id=rig-links").with(rows::rows(bench))),
        )
        .with(rig_adding::adding(bench))
        .with(tag("section class=part-of id=parts").markup(move || parts.get()))
        .with(rig_parts::fewer(bench))
        .with(send::send(bench))
        .with(tag("div class=sheets").markup(move || sheets.get()))
}

/// Puts a link on the bench: at the field it still lacks, else at its answer.
pub(super) fn open(bench: Bench, index: usize) {
    bench.at.set(index);
    let lacks = bench.report.with_untracked(|report| match report {
        LinkReport::Needs(needs) => needs.first().copied(),
        _ => None,
    });
    let part = match lacks {
        Some(id) if id == inputs::USAGE.id => format!("in-{id}-{}", (inputs::USAGE.options)()[0].id),
        Some(id) if id == inputs::LENGTH.id || id == inputs::WEIGHT.id => format!("in-{id}"),
        // What is folded away is named in the answer's place.
        _ => "answer".to_string(),
    };
    bench.turn_to_part(Leaf::Size, part);
}

/// Markup that follows from the whole rig.
fn told(bench: Bench, tell: fn(Bench, &Whole) -> Markup) -> Known<Markup> {
    Known::new(move || bench.whole.with(|whole| whole.as_ref().map(|whole| tell(bench, whole)).unwrap_or_default()))
}

/// How many links, and how they stand together.
fn lead(bench: Bench, whole: &Whole) -> Markup {
    let system = bench.system.get();
    let (name, job) = bench.document.with(|document| (document.name.clone(), words::job(document, system)));
    let rig = &whole.rig;
    let mark = rig.verdict.map(|verdict| verdict::mark(verdict, word(whole, verdict))).unwrap_or_default();
    let kicker = if rig.open == whole.links.len() { "The whole rig".to_string() } else { format!("Rig of {job}") };
    let title = if name.is_empty() { links(rig.pieces) } else { name.clone() };
    said("p class=\"kicker\"", kicker)
        + answer::printed(bench)
        + said("h2 id=\"rig-title\"", title)
        + element("div class=\"judged\"", mark + said("p id=\"rig-stands\"", stands(whole, !name.is_empty())))
}

/// The word for the verdict of the rig: that of the link which decides it.
fn word(whole: &Whole, verdict: Verdict) -> &'static str {
    let decides = whole.links.iter().filter_map(LinkReport::answer).find(|answer| answer.verdict == verdict);
    decides.map_or(verdict.word(), Answer::word)
}

/// The line that stays in sight while the rig is entered.
pub(super) fn summary(whole: &Whole) -> String {
    stands(whole, true)
}

/// How the links stand together; begins with how many they are, where nothing else says so.
fn stands(whole: &Whole, counted: bool) -> String {
    let rig = &whole.rig;
    let count = links(rig.pieces);
    if rig.unmeasured >= rig.pieces {
        return if counted { format!("{count}, none entered yet.") } else { "None entered yet.".to_string() };
    }
    let mut sentences = Vec::new();
    if counted {
        sentences.push(count + ".");
    }
    sentences.extend(worst(whole));
    let mut need = |count: usize, one: &str, more: &str| {
        if count > 0 {
            sentences.push(format!("{} still {}.", links(count), if count > 1 { more } else { one }));
        }
    };
    need(rig.unmeasured, "needs its length", "need their lengths");
    // What the rig lacks, each of its links lacks.
    let of_rig = inputs::still_needed_by_rig(&whole.document);
    if of_rig.is_empty() {
        need(rig.unfinished, "needs an entry", "need an entry");
    } else {
        sentences.push(words::still_needed(&of_rig));
    }
    if rig.impossible > 0 {
        sentences.push(format!("{} cannot be made as entered.", links(rig.impossible)));
    }
    sentences.join(" ")
}

/// Which link says most against the rig, and what; nothing while none says anything.
fn worst(whole: &Whole) -> Option<String> {
    let index = *whole.rig.worst_first.first()?;
    let says = match whole.links.get(index)? {
        LinkReport::Answer(answer) => words::lower(answer.word()),
        LinkReport::Impossible(_) => "cannot be made as entered".to_string(),
        LinkReport::Needs(_) => return None,
    };
    Some(format!("Worst: {}, {says}.", words::lower(&whole.document.links.get(index)?.title())))
}

/// `13 links`.
fn links(count: usize) -> String {
    if count > 1 { format!("{} links", words::count(count)) } else { "1 link".to_string() }
}

/// A pair is one entry.
pub(super) fn kinds(count: usize) -> String {
    if count == 1 { "1 entry".to_string() } else { format!("{count} entries") }
}

/// Which link it is, under the number it keeps while others change, so that two people on a call mean the same one.
pub(super) fn numbered(document: &Document, index: usize) -> String {
    format!("{}. {}", index + 1, words::titled(document, index))
}

/// The rig as lines of text with both units, for a message.
pub(super) fn text(bench: Bench, whole: &Whole) -> String {
    let document = bench.document.get();
    let metric = inputs::WEIGHT.value(&document, At::default());
    let metric = metric.map(|weight| show(weight, Kind::Weight, System::Metric)).unwrap_or_default();
    let mut lines = vec![format!("Rig: {} ({metric})", words::job(&document, System::Inch)), summary(whole)];
    if !document.name.is_empty() {
        lines.insert(0, document.name.clone());
    }
    for index in &whole.rig.worst_first {
        let Some(report) = whole.links.get(*index) else { continue };
        lines.push(numbered(&document, *index));
        match report.answer() {
            Some(answer) => {
                let made = &answer.link;
                lines.push(format!(
                    "{} mount to mount: {}. Saw to {}. {}.",
                    words::both_lengths(made.length),
                    words::headline(made, None),
                    words::both_lengths(made.cut),
                    answer.word()
                ));
                lines.extend(words::buckling_text(answer));
            }
            None => lines.push("No answer yet.".to_string()),
        }
    }
    lines.push("Parts:".to_string());
    lines.extend(rig_parts::text(&whole.rig.parts));
    lines.push(format!("All bars together: {}", words::both(whole.rig.weight, Kind::Weight)));
    lines.push("An estimate for planning, not a certificate.".to_string());
    lines.extend(bench.link_for_others());
    lines.join("\n")
}
