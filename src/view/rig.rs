//! The whole rig: every link, the worst first; adding, copying and taking away; every part to buy or make.

use super::markup::{element, pair, said};
use super::state::{Bench, Leaf, Whole};
use super::tag::{button, live, nothing, tag, words as live_words};
use super::{answer, plan, send, storage, verdict, words};
use leptos::prelude::*;
use linkwright::document::{Document, Position, Seat};
use linkwright::engine;
use linkwright::engine::tables::{bolts, rod_ends};
use linkwright::inputs::{self, Place};
use linkwright::layouts::{self, LAYOUTS};
use linkwright::quantity::{Kind, System, show};
use linkwright::report::{FewerSizes, LinkReport, Part};

/// The view.
pub(super) fn rig(bench: Bench) -> AnyView {
    let lead = told(bench, lead);
    let parts = told(bench, parts);
    let order = Memo::new(move |_| bench.whole.with(|whole| whole.as_ref().map(|whole| whole.rig.worst_first.clone())));
    let list = move || {
        let order = order.get().unwrap_or_default();
        order.into_iter().map(|index| one(bench, index)).collect::<Vec<_>>().into_any()
    };
    let mut view = vec![tag("div").markup(move || lead.get()).into_any()];
    view.extend(plan::plan(bench, move |index| open(bench, index)));
    view.push(
        tag("section class=part-of")
            .with(tag("h3").with("Links, the worst first"))
            .with(tag("ol class=rig-links id=rig-links").with(live(list)))
            .into_any(),
    );
    view.push(adding(bench));
    view.push(tag("section class=part-of id=parts").markup(move || parts.get()).into_any());
    view.push(fewer(bench));
    view.push(send::send(bench));
    view.into_any()
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
fn told(bench: Bench, tell: fn(Bench, &Whole) -> String) -> Memo<String> {
    Memo::new(move |_| bench.whole.with(|whole| whole.as_ref().map(|whole| tell(bench, whole)).unwrap_or_default()))
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

fn kinds(count: usize) -> String {
    if count == 1 { "1 kind".to_string() } else { format!("{count} kinds") }
}

/// A button that does not call for attention.
const QUIET: &str = "button type=button class=quiet";

/// One link: how it stands, what it is, and what can be done with it.
fn one(bench: Bench, index: usize) -> AnyView {
    let text = Memo::new(move |_| {
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
                bench.rearrange(|rig| layouts::remove(rig, index));
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
            let size = format!("{length}: {}. Saw to {cut}.", words::headline(&answer.link, system));
            let folds = verdict::buckling(answer, system);
            (verdict::mark(answer.verdict), size, words::weakest(answer, system), folds)
        }
        Some(LinkReport::Impossible(why)) => {
            (String::new(), "No link can be made of these entries.".to_string(), bench.say(why), String::new())
        }
        Some(LinkReport::Needs(needs)) => (String::new(), words::still_needed(needs), String::new(), String::new()),
        None => Default::default(),
    };
    element("div class=\"rig-line\"", &(said("h4", &title) + &mark))
        + &said("p class=\"rig-size\"", &size)
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
    lines.extend(whole.rig.parts.iter().map(|part| {
        let name = name(part, System::Inch);
        match sawn(part, System::Inch) {
            Some(sawn) => format!("{name}: {sawn}"),
            None => format!("{:.0} × {name}", part.count()),
        }
    }));
    lines.push(format!("All bars together: {}", words::both(whole.rig.weight, Kind::Weight)));
    lines.push("An estimate for planning, not a certificate.".to_string());
    lines.push(storage::address(&bench.fragment()));
    lines.join("\n")
}

/// Whole layouts for either axle, by their plain names.
fn adding(bench: Bench) -> AnyView {
    let at = RwSignal::new(Position::Front);
    let side = move |position: Position, open: &'static str, label: &str| {
        button(open, label, move |_| at.set(position))
            .attribute("aria-pressed", move || (at.get() == position).to_string())
    };
    let add = move |layout: &'static layouts::Layout| {
        let put = move |_| {
            bench.rearrange(|rig| {
                layouts::add(rig, layout, at.get_untracked());
            });
        };
        let name = button("button type=button", layout.label, put).set("id", &format!("add-{}", layout.id));
        tag("li").with(name).with(tag("p class=help").with(layout.help))
    };
    let axles = tag("div class=axles role=group aria-label='At which axle'")
        .with(side(Position::Front, "button type=button id=add-front", "Front axle"))
        .with(side(Position::Rear, "button type=button id=add-rear", "Rear axle"));
    tag("section class=part-of")
        .with(tag("h3").with("Add links"))
        .with(axles)
        .with(tag("ul class=layouts").with(LAYOUTS.iter().map(add).collect::<Vec<_>>()))
        .with(tag("p class=help").with("Only what the axle does not have yet is added. Pairs are entered once; set left and right apart if they differ."))
        .into_any()
}

/// Everything to buy and make, summed over the links.
fn parts(bench: Bench, whole: &Whole) -> String {
    let rig = &whole.rig;
    if rig.parts.is_empty() {
        return String::new();
    }
    let mut rows = String::new();
    let system = bench.system.get();
    for part in &rig.parts {
        rows.push_str(&pair(&name(part, system), "dd", &sawn(part, system).unwrap_or(format!("{:.0}", part.count()))));
    }
    let missing = if rig.open > 0 {
        said("p class=\"stop\"", &format!("{} without an answer: not counted here.", kinds(rig.open)))
    } else {
        String::new()
    };
    let weight =
        format!("All bars together weigh {}, without rod ends, nuts and bolts.", bench.show(rig.weight, Kind::Weight));
    said("h3", "Parts for all of it") + &missing + &element("dl class=\"rows\"", &rows) + &said("p", &weight)
}

/// Looks for rod-end sizes that could be done without, when asked.
fn fewer(bench: Bench) -> AnyView {
    // What was found, and for which entries.
    let found: RwSignal<Option<(Document, Vec<FewerSizes>)>> = RwSignal::new(None);
    let look = move |_: leptos::ev::Event| {
        let document = bench.document.get_untracked();
        let ways = bench
            .whole
            .with_untracked(|whole| whole.as_ref().map(|whole| engine::fewer_sizes(&document, &whole.links)));
        found.set(ways.map(|ways| (document, ways)));
    };
    let take = move |way: FewerSizes| {
        bench.rearrange(|rig| {
            for index in way.links {
                if let Some(link) = rig.links.get_mut(index) {
                    link.ends.iter_mut().for_each(|end| end.rod_end = Some(way.to));
                }
            }
        });
    };
    let told = move || {
        let Some((document, ways)) = found.get() else { return nothing() };
        if bench.document.with(|now| *now != document) {
            return nothing();
        }
        if ways.is_empty() {
            return tag("p").with("No rod-end size can be done without: every other choice fails a check.").into_any();
        }
        let one = |way: FewerSizes| {
            let sentence = sentence(bench, &document, &way);
            let take = button("button type=button class=quiet", "Take it", move |_| take(way.clone()));
            tag("li").with(tag("p").with(&*sentence)).with(take)
        };
        tag("ul class=layouts").with(ways.into_iter().map(one).collect::<Vec<_>>()).into_any()
    };
    tag("div class=fewer")
        .with(button("button type=button id=fewer", "Could fewer rod-end sizes do?", look))
        .with(tag("div id=fewer-ways role=status").with(live(told)))
        .into_any()
}

fn sentence(bench: Bench, document: &Document, way: &FewerSizes) -> String {
    let names: Vec<String> = way
        .links
        .iter()
        .filter_map(|index| document.links.get(*index))
        .map(|link| words::lower(&link.title()))
        .collect();
    let label = |id: &str| rod_ends::find(id).map_or("", |row| row.label);
    let weight = bench.show(way.heavier.abs(), Kind::Weight);
    let change = if way.heavier >= 0.0 { "heavier" } else { "lighter" };
    format!(
        "One size fewer if {} take {} instead of {}: no check fails, and the bars become {weight} {change} in all.",
        names.join(", "),
        label(way.to),
        label(way.from)
    )
}

/// What to saw off a bar: every length by itself, so that nobody takes the sum for the length of one.
fn sawn(part: &Part, system: System) -> Option<String> {
    let Part::Bar { cuts, .. } = part else { return None };
    let each: Vec<String> =
        cuts.iter().map(|cut| format!("{:.0} × {}", cut.count, words::length(cut.length, system))).collect();
    let whole = cuts.iter().map(|cut| cut.count * cut.length).sum();
    let pieces = words::pieces(part.count());
    let whole = words::length(whole, system);
    Some(format!("saw {pieces}, {}; {whole} in all before kerf", each.join(", ")))
}

/// What a part is called in a list.
fn name(part: &Part, system: System) -> String {
    let fine = |value: f64| words::length(value, system);
    match part {
        Part::Bar { material, outside_diameter, wall, .. } => format!(
            "{}{} {}",
            words::size(*outside_diameter, *wall, system),
            if *wall > 0.0 { "" } else { " solid" },
            words::short(material),
        ),
        // The user's own rod end has no size in its name.
        Part::RodEnd { name, thread, hand, .. } if name.contains(words::thread(thread)) => {
            format!("Rod end {name}, {}", hand.words())
        }
        Part::RodEnd { name, thread, hand, .. } => format!("{name}, {} {}", words::thread(thread), hand.words()),
        Part::JamNut { thread, hand, .. } => format!("Jam nut {} {}", words::thread(thread), hand.words()),
        Part::Bolt { diameter, grip, grade, .. } => format!(
            "Bolt {}, {}, at least {} of it without thread",
            fine(*diameter),
            bolts::find(grade).map_or("", |grade| grade.label),
            fine(*grip)
        ),
        Part::Spacer { bore, long, .. } => format!("Spacer for a {} bolt, {} long", fine(*bore), fine(*long)),
    }
}
