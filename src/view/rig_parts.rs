//! Every part to buy or make for the whole rig, and whether fewer sizes of rod end would do.

use super::changing::Changing;
use super::markup::{Markup, element, pair, phrases, said};
use super::rig::kinds;
use super::state::{Bench, Whole};
use super::tag::{Piece, button, live, nothing, tag};
use super::words::{self, Units};
use linkwright::document::Document;
use linkwright::document::ShankSteel;
use linkwright::engine;
use linkwright::engine::tables::{bolts, rod_ends};
use linkwright::quantity::{Kind, System, in_all};
use linkwright::report::{Answer, BoughtBolt, Cut, FewerSizes, Part};

/// What cannot be known here.
const BOLT_LENGTH: &str = "A bolt’s length is its grip plus washers and nut: measure your bracket.";

/// Everything to buy and make, summed over the links.
pub(super) fn parts(bench: Bench, whole: &Whole) -> Markup {
    let rig = &whole.rig;
    if rig.parts.is_empty() {
        return Markup::default();
    }
    let missing = if rig.open > 0 {
        said("p class=\"stop\"", format!("{} without an answer: not counted here.", kinds(rig.open)))
    } else {
        Markup::default()
    };
    let weight =
        format!("All bars together weigh {}, without rod ends, nuts and bolts.", bench.show(rig.weight, Kind::Weight));
    said("h3", "Parts for all of it") + missing + rows(bench, &rig.parts) + said("p", weight)
}

/// Everything to buy and make for one link.
pub(super) fn of_link(bench: Bench, at: usize, answer: &Answer) -> Markup {
    let mut parts = bench.document.with(|document| engine::parts(document, at, answer));
    // Whose cut it is goes without saying.
    for part in &mut parts {
        if let Part::Bar { cuts, .. } = part {
            cuts.iter_mut().for_each(|cut| cut.links.clear());
        }
    }
    let title = bench.document.with(|document| words::titled(document, at));
    said("h3", format!("Parts for {}", words::lower(&title))) + rows(bench, &parts)
}

fn rows(bench: Bench, parts: &[Part]) -> Markup {
    let system = bench.system.get();
    let mut rows = Markup::default();
    for part in parts {
        let name = name(part, Some(system));
        rows += match sawn(part, Some(system)) {
            Some(sawn) => element("div", said("dt", &name) + element("dd class=\"phrases\"", phrases(&sawn))),
            None => pair(&name, "dd", words::count(part.count())),
        };
    }
    element("dl class=\"rows\"", rows) + said("p", BOLT_LENGTH)
}

/// The same as lines of text, in both units.
pub(super) fn text(parts: &[Part]) -> impl Iterator<Item = String> {
    let line = |part: &Part| {
        let counted = sawn(part, None).unwrap_or_else(|| words::count(part.count()));
        format!("{}: {counted}", name(part, None))
    };
    parts.iter().map(line).chain([BOLT_LENGTH.to_string()])
}

/// Looks for rod-end sizes that could be done without, when asked.
pub(super) fn fewer(bench: Bench) -> Piece {
    // What was found, and for which entries.
    let found: Changing<Option<(Document, Vec<FewerSizes>)>> = Changing::new(None);
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
            return tag("p").with("No rod-end size can be done without: every other choice fails a check.");
        }
        let one = |way: FewerSizes| {
            let sentence = sentence(bench, &document, &way);
            let take = button("button type=button class=quiet", "Take it", move |_| take(way.clone()));
            tag("li").with(tag("p").with(&*sentence)).with(take)
        };
        tag("ul class=layouts").with(ways.into_iter().map(one).collect::<Vec<_>>())
    };
    tag("div class=fewer")
        .with(button("button type=button id=fewer", "Could fewer rod-end sizes do?", look))
        .with(tag("div id=fewer-ways role=status").with(live(told)))
}

fn sentence(bench: Bench, document: &Document, way: &FewerSizes) -> String {
    let names: Vec<String> = way
        .links
        .iter()
        .filter_map(|index| document.links.get(*index))
        .map(|link| words::lower(&link.title()))
        .collect();
    let label = |id: &str| {
        let label = rod_ends::find(id).map_or("", |row| row.label);
        label.split_once(", ").map_or(label.to_string(), |(name, rest)| format!("{name} ({rest})"))
    };
    let [before, then] = way.bolts.map(|bolt| words::trade(bolt, Some(bench.system.get())));
    let bolts = if before == then {
        String::new()
    } else {
        format!(" Their bolts become {then} instead of {before}: brackets and whatever else they bolt to must take it.")
    };
    let weight = bench.show(way.heavier.abs(), Kind::Weight);
    let change = if way.heavier >= 0.0 { "heavier" } else { "lighter" };
    format!(
        "One size fewer if {} take {} instead of {}: no check fails, and the bars become {weight} {change} in all.{bolts}",
        names.join(", "),
        label(way.to),
        label(way.from)
    )
}

/// What to saw off a bar: every length by itself, so that nobody takes the sum for the length of one.
fn sawn(part: &Part, units: Units) -> Option<String> {
    let Part::Bar { cuts, .. } = part else { return None };
    let each = |cut: &Cut| {
        let links: Vec<String> = cut.links.iter().map(|title| words::lower(title)).collect();
        // No comma: the line breaks at those.
        let whose = if links.is_empty() { String::new() } else { format!(" ({})", links.join(" and ")) };
        format!("{} × {}{whose}", words::count(cut.count), words::length(cut.length, units))
    };
    let each: Vec<String> = cuts.iter().map(each).collect();
    let whole = |system| in_all(cuts.iter().map(|cut| (cut.count as f64, cut.length)), system);
    let whole = match units {
        Some(system) => whole(system),
        None => format!("{} ({})", whole(System::Inch), whole(System::Metric)),
    };
    // One piece is its own sum.
    let sum = if part.count() > 1 { format!("; {whole} in all, before the kerf") } else { String::new() };
    Some(format!("saw {}, {}{sum}", words::pieces(part.count()), each.join(", ")))
}

/// What a spacer is called, by its bore, its face on the ear and the ball it reaches into.
fn spacer([bore, foot, into]: [Option<f64>; 3], long: String, units: Units) -> String {
    let trade = |value: f64| words::trade(value, units);
    let kind =
        into.map_or("Spacer".to_string(), |ball| format!("High-misalignment spacer into a {} bore", trade(ball)));
    let bolt = bore.map_or("a bolt not entered".to_string(), |bore| format!("a {} bolt", trade(bore)));
    let face = foot.map_or(String::new(), |foot| format!(", {} across on the ear", words::fit(foot, units)));
    format!("{kind}, for {bolt}{face}, {long} long")
}

/// What a part is called in a list.
fn name(part: &Part, units: Units) -> String {
    let trade = |value: f64| words::trade(value, units);
    let fine = |value: f64| words::fit(value, units);
    let graded = |bolt: &BoughtBolt| bolts::find(bolt.grade).map_or("", |grade| grade.label);
    match part {
        Part::Bar { material, outside_diameter, wall, .. } => format!(
            "{}{} {}",
            words::size(*outside_diameter, *wall, units),
            if *wall > 0.0 { "" } else { " solid" },
            words::short(material),
        ),
        Part::RodEnd { name, thread, hand, steel, .. } => {
            let (thread, hand) = (words::thread(thread), hand.words());
            let steel = if *steel == ShankSteel::Alloy { ", heat-treated alloy" } else { "" };
            match name.strip_prefix(thread) {
                Some(rest) => format!("Rod end, {thread} {hand}{rest}{steel}"),
                // The user's own has no size in its name.
                None => format!("{name}, {thread} {hand}{steel}"),
            }
        }
        Part::JamNut { thread, hand, .. } => {
            format!("Jam nut, {} {}", words::thread(thread), hand.words())
        }
        Part::Insert { thread, hand, outside_diameter, wall, length, .. } => format!(
            "Threaded insert, {} {}, {} outside, {} wall, {} long",
            words::thread(thread),
            hand.words(),
            fine(*outside_diameter),
            fine(*wall),
            fine(*length)
        ),
        Part::Bolt { bolt: Some(bolt), grip, .. } => format!(
            "Bolt {}, {}, {}, grip {} without thread",
            trade(bolt.diameter),
            bolt.series.words(),
            graded(bolt),
            words::length(*grip, units)
        ),
        Part::Bolt { bolt: None, grip, .. } => {
            format!("Bolt, diameter not entered, grip {} without thread", words::length(*grip, units))
        }
        Part::LockNut { bolt: Some(bolt), .. } => {
            let (size, thread, grade) = (trade(bolt.diameter), bolt.series.words(), graded(bolt));
            format!("Lock nut for the {size} bolts, {thread}, to match {grade}")
        }
        Part::LockNut { bolt: None, .. } => "Lock nut for the bolts whose diameter is not entered".to_string(),
        Part::Spacer { bore, foot, into, long, .. } => {
            spacer([*bore, *foot, *into], words::length(*long, units), units)
        }
    }
}
