//! Every part to buy or make for the whole rig, and whether fewer sizes of rod end would do.

use super::markup::{element, pair, phrases, said};
use super::rig::kinds;
use super::state::{Bench, Whole};
use super::tag::{button, live, nothing, tag};
use super::words;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::engine::tables::{bolts, rod_ends};
use linkwright::quantity::{Kind, System};
use linkwright::report::{FewerSizes, Part};

/// Everything to buy and make, summed over the links.
pub(super) fn parts(bench: Bench, whole: &Whole) -> String {
    let rig = &whole.rig;
    if rig.parts.is_empty() {
        return String::new();
    }
    let mut rows = String::new();
    let system = bench.system.get();
    for part in &rig.parts {
        let name = name(part, system);
        rows.push_str(&match sawn(part, system) {
            Some(sawn) => element("div", &(said("dt", &name) + &element("dd class=\"phrases\"", &phrases(&sawn)))),
            None => pair(&name, "dd", &format!("{:.0}", part.count())),
        });
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

/// The same as lines of text, in inches.
pub(super) fn text(parts: &[Part]) -> impl Iterator<Item = String> {
    parts.iter().map(|part| {
        let name = name(part, System::Inch);
        match sawn(part, System::Inch) {
            Some(sawn) => format!("{name}: {sawn}"),
            None => format!("{:.0} × {name}", part.count()),
        }
    })
}

/// Looks for rod-end sizes that could be done without, when asked.
pub(super) fn fewer(bench: Bench) -> AnyView {
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
