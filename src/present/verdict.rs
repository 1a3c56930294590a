//! Verdicts in words: what is weakest, where it is, what a pass rests on.

use super::words::{Units, headline, length, lower, size};
use crate::engine::sentence::spoken;
use crate::quantity::{Kind, System, show};
use crate::report::{Along, Answer, Finding, LinkGeometry, Topic, Verdict};

/// The class that carries a verdict into the style sheets.
pub const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "passes",
        Verdict::Unanswered => "unanswered",
        Verdict::Close => "close",
        Verdict::Bends => "bends",
        Verdict::Fails => "fails",
    }
}

/// The link in words, for a screen reader in place of the drawing.
pub fn drawing_words(answer: &Answer, system: System) -> String {
    let made = &answer.link;
    let mut words = format!(
        "Drawing to scale: {}; {} between the eyes, bar {} long",
        headline(made, system),
        length(made.length, system),
        length(made.bar, system)
    );
    if let Some(weakest) = answer.weakest_finding() {
        words.push_str(&format!("; weakest at the {}", weakest.part));
        words.push_str(&place_of(weakest, made, system.into()));
    }
    words.push('.');
    words
}

/// Where on the link something yields; compression buckles the whole of it, at no one place.
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

/// What the verdict rests on: the weakest part with its margin and place, after a rule that is broken or nearly so.
pub fn weakest(answer: &Answer, units: impl Into<Units>) -> String {
    let units = units.into();
    let Some(finding) = answer.weakest_finding() else { return String::new() };
    // A text in both units gives forces in pounds.
    let system = if let Units::In(system) = units { system } else { System::Inch };
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
        Some(bends) if answer.verdict == Verdict::Bends => spoken(&bends.says, system),
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
        let conditions: Vec<String> = answer.conditions.iter().map(|said| spoken(said, system)).collect();
        let how = if answer.verdict == Verdict::Bends { "Beside that" } else { "It passes on a condition" };
        words.push_str(&format!(" {how}: {}.", conditions.join("; ")));
    }
    for said in answer.findings.iter().filter_map(|finding| finding.otherwise.as_ref()) {
        words.push(' ');
        words.push_str(&spoken(said, system));
    }
    if let Some(next) = &answer.sizing.next_up {
        let size = size(next.outside_diameter, next.wall, units);
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

/// How a steering link takes compression; nothing for other links.
fn buckling(answer: &Answer, system: System) -> Option<(Verdict, String)> {
    let finding = answer.buckling()?;
    let used = match finding.utilization {
        Some(used) => format!("{} of its limit", show(used, Kind::Percent, system)),
        None => "no number to go by".to_string(),
    };
    Some((finding.verdict, format!("Buckling in compression: {used}")))
}

/// The same; nothing where buckling is the weakest itself, which is said already.
pub fn buckling_apart(answer: &Answer, system: System) -> Option<(Verdict, String)> {
    if answer.buckling() == answer.weakest_finding() { None } else { buckling(answer, system) }
}

/// How a steering link takes compression for a text, the verdict in words.
pub fn buckling_text(answer: &Answer) -> Option<String> {
    let (verdict, words) = buckling(answer, System::Inch)?;
    Some(format!("{words}, {}.", lower(verdict.word())))
}

/// Bending along the link in words, for a screen reader in place of the drawing.
pub fn along_words(along: &Along, system: System) -> String {
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
