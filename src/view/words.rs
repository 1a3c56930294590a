//! Sentences that are not the engine's: headline, summary, names of inputs, and the answer as plain text.

use super::markup::{Markup, said};
use super::state::Bench;
use super::{ends, rig_parts};
use linkwright::document::{Document, Hand, Link};
use linkwright::engine;
use linkwright::engine::tables::drills;
use linkwright::engine::tables::materials::Material;
use linkwright::engine::tables::threads::Thread;
use linkwright::inputs::{At, CHOICES, NUMBERS, QUANTITY, USAGE, WEIGHT};
use linkwright::quantity::{self, Kind, System, measured, show};
use linkwright::report::{Along, Answer, EndGeometry, Finding, LinkGeometry, LinkReport, Topic, Verdict};

/// `RH` or `LH`, as stamped on parts.
pub(super) const fn hand_mark(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "RH",
        Hand::Left => "LH",
    }
}

/// `A` or `B`.
pub(super) const fn letter(end: usize) -> &'static str {
    if end == 0 { "A" } else { "B" }
}

/// A thread as people say it: `1-1/4-12`.
pub(super) fn thread(thread: &'static Thread) -> &'static str {
    thread.label.split_once(" UN").map_or(thread.label, |(size, _)| size)
}

/// Units to write in; none writes both, for those who are sent a text.
pub(super) type Units = Option<System>;

/// Defines what most callers ask for in one system, with its code only once.
macro_rules! in_units {
    ($($(#[$about:meta])* fn $name:ident($($given:ident: $kind:ty),+) = $inner:ident;)+) => {
        $($(#[$about])*
        pub(super) fn $name($($given: $kind,)+ units: impl Into<Units>) -> String {
            $inner($($given,)+ units.into())
        })+
    };
}

in_units! {
    /// A stock size as people say it: `2 in`, or `1-3/4 in by 1/4 in wall`.
    fn size(outside: f64, wall: f64) = size_in;
    /// A length that is made or measured.
    fn length(value: f64) = length_in;
    /// What to buy, in one sentence.
    fn headline(made: &LinkGeometry) = headline_in;
    /// What the verdict rests on: the weakest part with its margin and place, after a rule that is broken or nearly so.
    fn weakest(answer: &Answer) = weakest_in;
}

fn size_in(outside: f64, wall: f64, units: Units) -> String {
    let outside = trade(outside, units);
    if wall > 0.0 { format!("{outside} by {} wall", trade(wall, units)) } else { outside }
}

fn length_in(value: f64, units: Units) -> String {
    match units {
        Some(system) => measured(value, system),
        None => format!("{} ({})", measured(value, System::Inch), measured(value, System::Metric)),
    }
}

/// The size of something bought.
pub(super) fn trade(value: f64, units: Units) -> String {
    if let Some(system) = units {
        return quantity::trade(value, system);
    }
    let [inch, metric] = [System::Inch, System::Metric].map(|system| quantity::trade(value, system));
    // One of the two may have both already.
    if metric.contains('(') {
        metric
    } else if inch.contains('(') {
        inch
    } else {
        format!("{inch} ({metric})")
    }
}

/// A fit or a thread, to the last digit that a caliper reads.
pub(super) fn fit(value: f64, units: Units) -> String {
    match units {
        Some(system) => quantity::fit(value, system),
        None => format!("{} ({})", quantity::fit(value, System::Inch), quantity::fit(value, System::Metric)),
    }
}

/// What to drill with before tapping: the drill commonly listed, by its name and across.
pub(super) fn tap_drill(end: &EndGeometry, units: Units) -> String {
    let Some(drills::TapDrill { drill, .. }) = drills::tap_drill(end.thread) else { return String::new() };
    let across = match units {
        Some(system) if system == drill.system && system == System::Metric => return format!("{} across", drill.label),
        Some(system) => show(drill.diameter, Kind::FineLength, system),
        None => both(drill.diameter, Kind::FineLength),
    };
    format!("{}, {across} across", drill.label)
}

/// How wide the hole may be that the tap goes into.
pub(super) fn hole(end: &EndGeometry, units: Units) -> String {
    let [least, most] = end.hole.map(|hole| match units {
        Some(system) => show(hole, Kind::FineLength, system),
        None => both(hole, Kind::FineLength),
    });
    format!("{least} to {most} across")
}

/// The metal in as few words as tell it apart.
pub(super) fn metal(made: &LinkGeometry) -> &'static str {
    short(made.material)
}

/// A material's name without what narrows it down.
pub(super) fn short(material: &'static Material) -> &'static str {
    material.label.split(',').next().unwrap_or(material.label)
}

/// A count of things.
pub(super) fn count(things: usize) -> String {
    things.to_string()
}

/// `1 piece`, `4 pieces`.
pub(super) fn pieces(things: usize) -> String {
    if things > 1 { format!("{} pieces", count(things)) } else { "1 piece".to_string() }
}

/// Both threads in one breath.
pub(super) fn threads([a, b]: &[EndGeometry; 2]) -> String {
    if a.thread.id == b.thread.id {
        format!("{} rod ends", thread(a.thread))
    } else {
        format!("rod ends {} at A and {} at B", thread(a.thread), thread(b.thread))
    }
}

fn headline_in(made: &LinkGeometry, units: Units) -> String {
    let [a, b] = &made.ends;
    format!(
        "{} {}, {}, {} at A and {} at B",
        size(made.outside_diameter, made.wall, units),
        metal(made),
        threads(&made.ends),
        hand_mark(a.hand),
        hand_mark(b.hand)
    )
}

/// What to mill for the wrench; nothing for a tube, or where the flats would not cut into the bar.
pub(super) fn flats(made: &LinkGeometry, units: Units) -> Option<String> {
    let flats = made.flats.filter(|flats| flats.width < made.outside_diameter)?;
    let fine = |value: f64| length(value, units);
    Some(format!(
        "Wrench flats: {} across, {} long, from {} off the face at A.",
        fine(flats.width),
        fine(flats.length),
        fine(flats.start)
    ))
}

/// The label of an input.
pub(super) fn label(id: &str) -> &'static str {
    let number = NUMBERS.iter().find(|input| input.id == id).map(|input| input.label);
    let choice = || CHOICES.iter().find(|choice| choice.id == id).map(|choice| choice.label);
    number.or_else(choice).unwrap_or_default()
}

/// What is still needed, in one sentence.
pub(super) fn still_needed(needs: &[&'static str]) -> String {
    // What follows a comma in a label only narrows it down.
    let name = |id: &&'static str| lower(label(id).split(',').next().unwrap_or_default());
    let mut labels: Vec<String> = needs.iter().map(name).collect();
    let last = labels.pop().unwrap_or_default();
    if labels.is_empty() {
        format!("Still needed: {last}.")
    } else {
        format!("Still needed: {} and {last}.", labels.join(", "))
    }
}

/// With a small first letter, to stand inside a sentence.
pub(super) fn lower(words: &str) -> String {
    let mut words = words.to_string();
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    words
}

/// The line that stays in sight.
pub(super) fn summary(bench: Bench) -> String {
    let system = bench.system.get();
    let line = bench.first.with(|report| match report {
        LinkReport::Answer(answer) => {
            let made = &answer.link;
            format!(
                "{}, {}, saw to {}. {}.",
                size(made.outside_diameter, made.wall, system),
                threads(&made.ends),
                length(made.cut, Some(system)),
                answer.word()
            )
        }
        LinkReport::Impossible(_) => "No link can be made of these entries.".to_string(),
        LinkReport::Needs(needs) => still_needed(needs),
    });
    // Of several links the one that is meant is named: the picker may be out of sight.
    let line = bench.document.with(|document| match document.links.get(bench.at.get()) {
        Some(link) if document.links.len() > 1 => format!("{}. {line}", link.title()),
        _ => line,
    });
    // Without an answer there is no last good entry that it could rest on.
    let stale = bench.known.get() && bench.stale_for_good();
    if stale { format!("From your last good entry: {line}") } else { line }
}

/// What the link is for: `4,100 lb, driven hard`.
pub(super) fn job(document: &Document, system: System) -> String {
    let weight =
        WEIGHT.value(document, At::default()).map(|weight| show(weight, Kind::Weight, system)).unwrap_or_default();
    let used = USAGE.value(document, At::default());
    let used = used
        .and_then(|id| (USAGE.options)().into_iter().find(|option| option.id == id))
        .map_or("", |option| option.label);
    if weight.is_empty() || used.is_empty() { weight + &lower(used) } else { format!("{weight}, {}", lower(used)) }
}

/// A value in both unit systems, inches first.
pub(super) fn both(value: f64, kind: Kind) -> String {
    format!("{} ({})", show(value, kind, System::Inch), show(value, kind, System::Metric))
}

pub(super) fn both_lengths(value: f64) -> String {
    length(value, None)
}

/// Which link it is, and how many of it: `Front lower links, 2 pieces`.
pub(super) fn titled(document: &Document, at: usize) -> String {
    let title = document.links.get(at).map(Link::title).unwrap_or_default();
    let quantity = QUANTITY.value(document, At::of_link(document, at)).map_or(1, |quantity| quantity as usize);
    format!("{title}, {}", pieces(quantity))
}

/// The same with the name of the rig, so that two sheets are told apart.
pub(super) fn sheet_name(document: &Document, at: usize) -> String {
    let titled = titled(document, at);
    if document.name.is_empty() { titled } else { format!("{}: {titled}", document.name) }
}

/// The answer as lines of text with both units, for a message or a phone call: the sentences of the screen.
pub(super) fn plain_text(document: &Document, at: usize, answer: &Answer, link: Option<String>) -> String {
    let made = &answer.link;
    let mut lines = vec![sheet_name(document, at), format!("{} mount to mount", both_lengths(made.length))];
    let weight = WEIGHT.value(document, At::default()).map(|weight| show(weight, Kind::Weight, System::Metric));
    lines.push(format!("Rig: {} ({})", job(document, System::Inch), weight.unwrap_or_default()));
    lines.push(headline(made, None));
    let (word, says) = (answer.word(), weakest(answer, None));
    // What breaks a rule says so itself.
    lines.push(if says.starts_with(word) { says } else { format!("{word}. {says}") });
    lines.extend(buckling_text(answer));
    lines.push(format!("Bar, face to face: {}. Saw to {}.", both_lengths(made.bar), both_lengths(made.cut)));
    if made.provisional {
        lines.push("Provisional: measure your rod ends before you saw.".to_string());
    }
    lines.push(format!("Weight of the bar: {}", both(made.bar_weight, Kind::Weight)));
    for (index, end) in made.ends.iter().enumerate() {
        let rows = ends::rows(end, made.bore > 0.0, None);
        let rows: Vec<String> = rows.into_iter().map(|(name, value)| format!("{}: {value}", lower(name))).collect();
        lines.push(format!("End {}: {}, {}; {}", letter(index), thread(end.thread), end.hand.words(), rows.join("; ")));
    }
    lines.extend(flats(made, None));
    lines.push("Parts:".to_string());
    lines.extend(rig_parts::text(&engine::parts(document, at, answer)));
    lines.push("An estimate for planning, not a certificate.".to_string());
    lines.extend(link);
    lines.join("\n")
}

/// The link in words, for somebody who cannot see the drawing.
pub(super) fn drawing_words(answer: &Answer, system: System) -> String {
    let made = &answer.link;
    let mut words = format!(
        "Drawing to scale: {}; {} between the eyes, bar {} long",
        headline(made, system),
        length(made.length, system),
        length(made.bar, system)
    );
    if let Some(weakest) = answer.weakest_finding() {
        words.push_str(&format!("; weakest at the {}", weakest.part));
        words.push_str(&place_of(weakest, made, Some(system)));
    }
    words.push('.');
    words
}

/// Where on the link something gives; a push folds the whole of it, and no place is to blame.
fn place_of(finding: &Finding, made: &LinkGeometry, units: Units) -> String {
    let station = finding.station.filter(|_| finding.topic != Topic::Buckling);
    station.map(|station| place(station, made, units)).unwrap_or_default()
}

/// Where on the link: at an eye, or so far from eye A.
fn place(station: f64, made: &LinkGeometry, units: Units) -> String {
    if station < 1e-9 {
        ", end A".to_string()
    } else if station > made.length - 1e-9 {
        ", end B".to_string()
    } else {
        format!(", {} from eye A", length(station, units))
    }
}

fn weakest_in(answer: &Answer, units: Units) -> String {
    let Some(finding) = answer.weakest_finding() else { return String::new() };
    let system = units.unwrap_or(System::Inch);
    let used =
        |finding: &Finding| finding.utilization.map(|used| show(used, Kind::Percent, System::Inch)).unwrap_or_default();
    let what = if finding.topic == Topic::Buckling {
        "buckling in compression".to_string()
    } else {
        format!("{}{}", finding.part, place_of(finding, &answer.link, units))
    };
    let decides = answer.findings.iter().find(|other| other.verdict == answer.verdict);
    let mut words = match decides {
        // What bends says in full what is left of it.
        Some(bends) if answer.verdict == Verdict::Bends => engine::sentence::spoken(&bends.says, system),
        Some(other) if finding.verdict < answer.verdict && other.condition.is_none() && !other.is_left_open() => {
            let (word, part, at) = (other.word(), other.part, used(other));
            let weakest = used(finding);
            format!("{word}: {part}, {at}. In strength alone its weakest part is {what}, at {weakest} of its limit.")
        }
        _ => format!("Weakest: {what}, at {} of its limit.", used(finding)),
    };
    if let Some([own, solid]) = answer.beside_7075 {
        let [own, solid] = [own, solid].map(|force| show(force, Kind::Force, system));
        words.push_str(&format!(
            " It yields first at {own} across mid-span; a solid 7075 bar of its diameter at {solid}."
        ));
    }
    if !answer.conditions.is_empty() && answer.verdict < Verdict::Fails {
        let conditions: Vec<String> =
            answer.conditions.iter().map(|said| engine::sentence::spoken(said, system)).collect();
        let how = if answer.verdict == Verdict::Bends { "Beside that" } else { "It passes on a condition" };
        words.push_str(&format!(" {how}: {}.", conditions.join("; ")));
    }
    for said in answer.findings.iter().filter_map(|finding| finding.otherwise.as_ref()) {
        words.push(' ');
        words.push_str(&engine::sentence::spoken(said, system));
    }
    if let Some(next) = &answer.sizing.next_up {
        let size = size_in(next.outside_diameter, next.wall, units);
        let used = show(next.utilization, Kind::Percent, system);
        let sizing = &answer.sizing;
        let smallest = if sizing.by_numbers == sizing.recommended { "Smallest that passes;" } else { "What is usual;" };
        let bends = if answer.verdict == Verdict::Bends { " takes small bends;" } else { "" };
        let thread = next.thread;
        words.push_str(&format!(" {smallest}{bends} next size up: {size} with {thread} rod ends, at {used}."));
    } else if answer.sizing.recommended.is_some() && !answer.sizing.overridden && answer.has_little_margin() {
        words.push_str(" Nothing larger to choose from here has more in hand.");
    }
    words
}

/// How a steering link takes a push; nothing for other links.
pub(super) fn buckling(answer: &Answer, system: System) -> Option<(Verdict, String)> {
    let finding = answer.buckling()?;
    let used = match finding.utilization {
        Some(used) => format!("{} of its limit", show(used, Kind::Percent, system)),
        None => "no number to go by".to_string(),
    };
    Some((finding.verdict, format!("Buckling in compression: {used}")))
}

/// The same for a text, the verdict in words.
pub(super) fn buckling_text(answer: &Answer) -> Option<String> {
    let (verdict, words) = buckling(answer, System::Inch)?;
    Some(format!("{words}, {}.", lower(verdict.word())))
}

/// Bending along the link in words, for somebody who cannot see the drawing.
pub(super) fn along_words(along: &Along, system: System) -> String {
    let Some(worst) = along.weakest.and_then(|index| along.stations.get(index)) else { return String::new() };
    format!(
        "Bending along the link: the highest utilization is at the {}, {} from eye A: bending moment {}, bending strength {}, {}.",
        worst.part,
        length(worst.x, system),
        show(worst.moment, Kind::Moment, system),
        show(worst.strength, Kind::Moment, system),
        show(worst.utilization, Kind::Percent, system)
    )
}

/// A line, in an element of some name, that names the changed defaults something rests on; empty when there are none.
pub(super) fn changed(element: &str, ids: &[&'static str], more: &[&'static str]) -> Markup {
    let mut names: Vec<String> = ids.iter().chain(more).map(|id| lower(label(id))).collect();
    names.sort();
    names.dedup();
    if names.is_empty() {
        return Markup::default();
    }
    said(format!("{element} class=\"changed-mark\""), format!("Uses your own {}.", names.join(", ")))
}
