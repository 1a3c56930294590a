//! The whole rig: every link, the worst first; opened, copied and taken away.

use super::known::Known;
use super::markup::{element, phrases, said};
use super::state::{Bench, Leaf, Whole};
use super::tag::{button, live, nothing, tag, words as live_words};
use super::{answer, plan, rig_adding, rig_parts, send, sheets, storage, verdict, words};
use leptos::prelude::*;
use linkwright::document::{Document, Position, Seat};
use linkwright::inputs::{self, Place};
use linkwright::layouts;
use linkwright::quantity::{Kind, System, show};
use linkwright::report::LinkReport;

/// The view.
pub(super) fn rig(bench: Bench) -> AnyView {
    let lead = told(bench, lead);
    let parts = told(bench, rig_parts::parts);
    let gone = RwSignal::new(None::<Gone>);
    let order = Known::new(move || bench.whole.with(|whole| whole.as_ref().map(|whole| whole.rig.worst_first.clone())));
    let lost = Known::new(move || gone.get().filter(|gone| bench.document.with(|now| *now == gone.after)));
    let list = move || {
        let order = order.get().unwrap_or_default();
        let mut list: Vec<AnyView> = order.into_iter().map(|index| one(bench, gone, index)).collect();
        if let Some(gone) = lost.get() {
            list.insert(gone.rank.min(list.len()), missed(bench, &gone));
        }
        list.into_any()
    };
    let mut view = vec![tag("div").markup(move || lead.get()).into_any()];
    view.extend(plan::plan(bench, move |index| open(bench, index)));
    view.push(
        tag("section class=part-of")
            .with(tag("h3").with("Links, the worst first"))
            .with(tag("ol class=rig-links id=rig-links").with(live(list)))
            .into_any(),
    );
    view.push(rig_adding::adding(bench));
    view.push(tag("section class=part-of id=parts").markup(move || parts.get()).into_any());
    view.push(rig_parts::fewer(bench));
    view.push(send::send(bench));
    let sheets =
        told(bench, |bench, whole| if bench.laid_open.get() { sheets::sheets(bench, whole) } else { String::new() });
    view.push(tag("div class=sheets").markup(move || sheets.get()).into_any());
    view.into_any()
}

/// A link that was taken away, and how to bring it back for as long as nothing else changed.
#[derive(Clone, PartialEq)]
struct Gone {
    index: usize,
    /// Its place in the list.
    rank: usize,
    before: Document,
    after: Document,
}

fn remove(bench: Bench, index: usize) -> Gone {
    let before = bench.document.get_untracked();
    let place = |whole: &Whole| whole.rig.worst_first.iter().position(|other| *other == index);
    let rank = bench.whole.with_untracked(|whole| whole.as_ref().and_then(place)).unwrap_or(0);
    bench.rearrange(|rig| layouts::remove(rig, index));
    Gone { index, rank, before, after: bench.document.get_untracked() }
}

/// Stands where the link was, so that nothing else comes under the finger.
fn missed(bench: Bench, gone: &Gone) -> AnyView {
    let (index, before) = (gone.index, gone.before.clone());
    let title = before.links.get(index).map(|link| link.title()).unwrap_or_default();
    let undo = move |_| {
        bench.rearrange(|now| *now = before.clone());
        show_soon(format!("open-{index}"));
    };
    tag("li class=gone")
        .with(tag("p id=gone").with(&*format!("{title} removed.")))
        .with(button("button type=button id=undo-remove aria-describedby=gone", "Undo", undo))
        .into_any()
}

/// Shows what the next moment puts there.
fn show_soon(id: String) {
    set_timeout(move || storage::show(&id), std::time::Duration::from_millis(30));
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
fn told(bench: Bench, tell: fn(Bench, &Whole) -> String) -> Known<String> {
    Known::new(move || bench.whole.with(|whole| whole.as_ref().map(|whole| tell(bench, whole)).unwrap_or_default()))
}

/// How many links, and how they stand together.
fn lead(bench: Bench, whole: &Whole) -> String {
    let system = bench.system.get();
    let (name, job) = bench.document.with(|document| (document.name.clone(), words::job(document, system)));
    let rig = &whole.rig;
    let impossible = whole.links.iter().filter(|link| matches!(link, LinkReport::Impossible(_))).count();
    let lacking = rig.open - impossible;
    let mut sentences = Vec::new();
    if lacking > 0 {
        sentences.push(format!("{} still to be entered.", kinds(lacking)));
    }
    if impossible > 0 {
        sentences.push(format!("{} cannot be made as entered.", kinds(impossible)));
    }
    sentences.extend(worst(whole));
    let answered = rig.worst_first.iter().find_map(|index| whole.links.get(*index)?.answer());
    let mark = answered.map(|answer| verdict::mark(answer.verdict)).unwrap_or_default();
    let kicker = if rig.open == whole.links.len() { "The whole rig".to_string() } else { format!("Rig of {job}") };
    let title = if name.is_empty() { count(whole) } else { name };
    said("p class=\"kicker\"", &kicker)
        + &answer::printed(bench)
        + &said("h2 id=\"rig-title\"", &title)
        + &element("div class=\"judged\"", &(mark + &said("p id=\"rig-stands\"", &sentences.join(" "))))
}

/// The line that stays in sight while the rig is entered.
pub(super) fn summary(whole: &Whole) -> String {
    let open =
        if whole.rig.open > 0 { format!(" {} without an answer.", kinds(whole.rig.open)) } else { String::new() };
    let worst = worst(whole).unwrap_or_else(|| "Nothing answered yet.".to_string());
    format!("{}. {worst}{open}", count(whole))
}

/// Which link says most against the rig, and what; nothing while none says anything.
fn worst(whole: &Whole) -> Option<String> {
    let index = *whole.rig.worst_first.first()?;
    let says = match whole.links.get(index)? {
        LinkReport::Answer(answer) => words::lower(verdict::word(answer.verdict)),
        LinkReport::Impossible(_) => "cannot be made as entered".to_string(),
        LinkReport::Needs(_) => return None,
    };
    Some(format!("Worst: {}, {says}.", words::lower(&whole.document.links.get(index)?.title())))
}

/// `13 links, 8 kinds`.
fn count(whole: &Whole) -> String {
    format!("{}, {}", links(whole.rig.pieces), kinds(whole.links.len()))
}

fn links(count: f64) -> String {
    if count > 1.5 { format!("{count:.0} links") } else { "1 link".to_string() }
}

pub(super) fn kinds(count: usize) -> String {
    if count == 1 { "1 kind".to_string() } else { format!("{count} kinds") }
}

/// A button that does not call for attention.
const QUIET: &str = "button type=button class=quiet";

/// One link: how it stands, what it is, and what can be done with it.
fn one(bench: Bench, gone: RwSignal<Option<Gone>>, index: usize) -> AnyView {
    let text = Known::new(move || {
        bench.whole.with(|whole| whole.as_ref().map(|whole| line(bench, whole, index)).unwrap_or_default())
    });
    let title =
        move || bench.document.with(|document| document.links.get(index).map(|link| link.title())).unwrap_or_default();
    let seat = move || bench.document.with(|document| document.links.get(index).map(|link| link.seated()));
    let other_axle = move || {
        let position = bench.document.with(|document| document.links.get(index).map(|link| link.position));
        let there = if position == Some(Position::Rear) { "front" } else { "rear" };
        format!("Copy to the {there}")
    };
    let other_side = move || match seat() {
        Some(Seat::Both) => Some("Set left and right apart"),
        Some(Seat::Left) => Some("Copy to the right"),
        Some(Seat::Right) => Some("Copy to the left"),
        _ => None,
    };
    // Said aloud, each button names its link.
    let unseen = move |before: &str| tag("span class=unseen").with(before).with(live_words(title));
    let act = move |open: &'static str, change: fn(&mut Document, usize) -> Option<usize>| {
        tag(open).on("click", move |_| {
            bench.rearrange(|rig| {
                change(rig, index);
            });
        })
    };
    let aside = live(move || match other_side() {
        Some(label) => act(QUIET, layouts::to_other_side).with(label).with(unseen(": ")).into_any(),
        None => nothing(),
    });
    let buttons = tag("div class=buttons")
        .with(
            button("button type=button class=open", "Open", move |_| open(bench, index))
                .set("id", &format!("open-{index}"))
                .with(unseen(" ")),
        )
        .with(act(QUIET, layouts::to_other_axle).with(live_words(other_axle)).with(unseen(": ")))
        .with(aside)
        .with(
            button("button type=button class='quiet remove'", "Remove", move |_| {
                gone.set(Some(remove(bench, index)));
                show_soon("undo-remove".to_string());
            })
            .with(unseen(" ")),
        );
    tag("li").set("data-link", &index.to_string()).with(tag("div").markup(move || text.get())).with(buttons).into_any()
}

fn line(bench: Bench, whole: &Whole, index: usize) -> String {
    let system = bench.system.get();
    let rank = whole.rig.worst_first.iter().position(|other| *other == index).unwrap_or(0) + 1;
    let title = format!("{rank}. {}", words::titled(&whole.document, index));
    let (mark, size, says, folds) = match whole.links.get(index) {
        Some(LinkReport::Answer(answer)) => {
            let length = words::length(answer.link.length, system);
            let cut = words::length(answer.link.cut, system);
            let size = phrases(&format!("{length}: {}", words::headline(&answer.link, system)));
            let size = size + " " + &said("b", &format!("Saw to {cut}"));
            let folds = verdict::buckling(answer, system);
            (verdict::mark(answer.verdict), size, words::weakest(answer, system), folds)
        }
        Some(LinkReport::Impossible(why)) => {
            (String::new(), phrases("No link can be made of these entries."), bench.say(why), String::new())
        }
        Some(LinkReport::Needs(needs)) => {
            (String::new(), phrases(&words::still_needed(needs)), String::new(), String::new())
        }
        None => Default::default(),
    };
    element("div class=\"rig-line\"", &(said("h4", &title) + &mark))
        + &element("p class=\"rig-size phrases\"", &size)
        + &folds
        + &said("p class=\"help\"", &says)
}

/// The rig as lines of text with both units, for a message.
pub(super) fn text(bench: Bench, whole: &Whole) -> String {
    let document = bench.document.get();
    let metric = inputs::WEIGHT.value(&document, Place::default());
    let metric = metric.map(|weight| show(weight, Kind::Weight, System::Metric)).unwrap_or_default();
    let mut lines = vec![format!("Rig: {} ({metric})", words::job(&document, System::Inch)), summary(whole)];
    if !document.name.is_empty() {
        lines.insert(0, document.name.clone());
    }
    for (rank, index) in whole.rig.worst_first.iter().enumerate() {
        let Some(report) = whole.links.get(*index) else { continue };
        lines.push(format!("{}. {}", rank + 1, words::titled(&document, *index)));
        match report.answer() {
            Some(answer) => {
                let made = &answer.link;
                lines.push(format!(
                    "{} mount to mount: {}. Saw to {}. {}.",
                    words::both_lengths(made.length),
                    words::headline(made, System::Inch),
                    words::both_lengths(made.cut),
                    verdict::word(answer.verdict)
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
    lines.push(storage::address(&bench.fragment()));
    lines.join("\n")
}
