//! A link as text, section by section.

use std::fmt::Write;

use linkwright::document::Document;
use linkwright::engine::fitting::fitting_steps;
use linkwright::engine::formula::{Formula, Line};
use linkwright::engine::notation;
use linkwright::engine::sentence::{Phrase, spoken};
use linkwright::inputs::{CHOICES, NUMBERS, Scope, places};
use linkwright::quantity::{Kind, System, show};
use linkwright::report::{Along, Answer, Candidate, Finding, Firmness, Part, Verdict};

/// Text, a line at a time.
pub(crate) struct Page {
    pub(crate) text: String,
    /// The units it is written in.
    system: System,
}

impl Page {
    pub(crate) fn new(system: System) -> Self {
        Self { text: String::new(), system }
    }

    fn shown(&self, value: f64, kind: Kind) -> String {
        show(value, kind, self.system)
    }

    pub(crate) fn spoken(&self, said: &[Phrase]) -> String {
        spoken(said, self.system)
    }

    pub(crate) fn line(&mut self, text: impl AsRef<str>) {
        // Writing into a string cannot fail.
        let _ = writeln!(self.text, "{}", text.as_ref().trim_end());
    }

    pub(crate) fn title(&mut self, text: &str) {
        self.line("");
        self.line(text.to_uppercase());
    }

    pub(crate) fn said(&mut self, before: &str, said: &[Phrase]) {
        self.line(format!("{before}{}", self.spoken(said)));
    }

    pub(crate) fn value(&mut self, what: &str, value: f64, kind: Kind) {
        self.line(format!("  {what:<34} {}", self.shown(value, kind)));
    }

    pub(crate) fn working(&mut self, lines: &[Line]) {
        for line in lines {
            match line {
                Line::Worked { formula, given, result } => self.worked(formula, given, *result),
                Line::LookedUp { what, value, kind, row, source } => {
                    self.line(format!("    {what}: {}", self.shown(*value, *kind)));
                    self.line(format!("      from {row}; {}", source.words()));
                }
                Line::Result(said) | Line::Chose(said) => self.said("    ", said),
                Line::Solved { what, value, kind, how } => {
                    self.line(format!("    {what}: {}, {how}", self.shown(*value, *kind)));
                }
                Line::Assumed { input, value, changed } => {
                    let kind = NUMBERS.iter().find(|row| row.id == *input).map_or(Kind::Ratio, |row| row.kind);
                    let standing = if *changed { "decided" } else { "assumed" };
                    self.line(format!("    {input}: {}, {standing}", self.shown(*value, kind)));
                }
            }
        }
    }

    fn worked(&mut self, formula: &'static Formula, given: &[f64], result: f64) {
        let term = notation::parse(formula.text).expect("tests/formulas.rs reads every formula");
        let put_in = notation::text_with(&term, &|name| {
            let of = formula.given.iter().zip(given).find(|(symbol, _)| symbol.name == name);
            of.map_or_else(|| format!("{name}?"), |(symbol, value)| self.shown(*value, symbol.kind))
        });
        let name = formula.result.name;
        self.line(format!("    {}", formula.title()));
        self.line(format!("      {name} = {}", formula.text));
        self.line(format!("      {name} = {put_in}"));
        self.line(format!("      {name} = {}", self.shown(result, formula.result.kind)));
        self.line(format!("      {}", formula.source.words()));
    }
}

/// Bending and strength where the link changes, and what is told beside the checks.
pub(crate) fn beside(page: &mut Page, answer: &Answer, along: &Along) {
    page.title("along the link");
    for pair in along.stations.windows(2).filter(|pair| pair[0].part != pair[1].part) {
        for station in pair {
            page.line(format!(
                "  {:<12} {:<26} bent by {:<16} bears {:<16} {}",
                page.shown(station.x, Kind::Length),
                station.part,
                page.shown(station.moment, Kind::Moment),
                page.shown(station.strength, Kind::Moment),
                page.shown(station.utilization, Kind::Percent)
            ));
        }
    }
    for note in &answer.notes {
        page.line("");
        page.line(format!("  {}", note.title));
        page.said("  ", &note.says);
        page.working(&note.working);
        page.line(format!("    Rests on {}.", note.source.words()));
    }
}

pub(crate) fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "passes",
        Verdict::Unanswered => "not judged",
        Verdict::Close => "passes, little margin",
        Verdict::Bends => "BENDS",
        Verdict::Fails => "FAILS",
    }
}

pub(crate) fn entries(page: &mut Page, document: &Document) {
    page.title("entries");
    for input in NUMBERS {
        for place in places(document, input.scope) {
            if let Some(value) = input.decided(document, place) {
                page.line(format!(
                    "  {:<34} {}",
                    label(input.label, input.scope, place.end),
                    page.shown(value, input.kind)
                ));
            }
        }
    }
    for choice in CHOICES {
        for place in places(document, choice.scope) {
            if let Some(id) = (choice.get)(document, place) {
                page.line(format!("  {:<34} {id}", label(choice.label, choice.scope, place.end)));
            }
        }
    }
}

pub(crate) fn label(label: &str, scope: Scope, end: usize) -> String {
    match (scope, end) {
        (Scope::End, 0) => format!("{label}, end A"),
        (Scope::End, _) => format!("{label}, end B"),
        _ => label.to_string(),
    }
}

pub(crate) fn candidate(page: &mut Page, what: &str, candidate: Option<&Candidate>) {
    let text = candidate.map_or_else(
        || "none".to_string(),
        |it| {
            let wall =
                if it.wall > 0.0 { format!(" × {}", page.shown(it.wall, Kind::FineLength)) } else { String::new() };
            let passes = if it.feasible { "passes" } else { "does not pass" };
            let diameter = page.shown(it.outside_diameter, Kind::FineLength);
            let used = page.shown(it.utilization, Kind::Percent);
            format!("{diameter}{wall}, {}, {passes}, {used} at the {}", it.rod_end, it.decides)
        },
    );
    page.line(format!("  {what:<34} {text}"));
}

pub(crate) fn recommendation(page: &mut Page, answer: &Answer, around: &[Option<Candidate>; 2], firm: &[Firmness]) {
    let sizing = &answer.sizing;
    page.title("recommendation");
    candidate(page, "Smallest that passes", sizing.by_numbers.as_ref());
    let trade = sizing.by_trade.as_ref().map_or("no habit".to_string(), |it| page.spoken(&it.words));
    page.line(format!("  {:<34} {trade}", "Builders usually fit"));
    candidate(page, "Recommended", sizing.recommended.as_ref());
    candidate(page, "Next size down", around[0].as_ref());
    candidate(page, "Next size up", around[1].as_ref());
    page.said("  ", &sizing.governs);
    for firm in firm {
        let now = page.shown(firm.now, firm.kind);
        let least = firm.least.map(|it| format!(" from {}", page.shown(it, firm.kind))).unwrap_or_default();
        let most = firm.most.map(|it| format!(" up to {}", page.shown(it, firm.kind))).unwrap_or_default();
        let does = if firm.to_failure { "Does not fail" } else { "Passes" };
        page.line(format!("  {does} with a {}{least}{most}; now {now}", firm.input));
    }
}

pub(crate) fn link(page: &mut Page, answer: &Answer) {
    let link = &answer.link;
    page.title("the link");
    page.line(format!("  {:<34} {}", "Metal", link.material.label));
    page.value("Outside diameter", link.outside_diameter, Kind::FineLength);
    page.value("Bore", link.bore, Kind::FineLength);
    page.value("Mount to mount", link.length, Kind::Length);
    page.value("Bar", link.bar, Kind::Length);
    page.value("Cut", link.cut, Kind::Length);
    page.value("Weight of the bar", link.bar_weight, Kind::Weight);
    if let Some(flats) = link.flats {
        page.value("Flats begin, from face A", flats.start, Kind::FineLength);
        page.value("Flats, length", flats.length, Kind::FineLength);
        page.value("Flats, across", flats.width, Kind::FineLength);
    }
    for (letter, end) in ["A", "B"].into_iter().zip(&link.ends) {
        page.line(format!("  End {letter}: {}, {:?}-hand {}", end.rod_end, end.hand, end.thread.label));
        page.value("  Eye center to bar face", end.eye_to_face, Kind::Length);
        page.value("  Engagement as set", end.engagement, Kind::FineLength);
        page.value("  Least engagement", end.least, Kind::FineLength);
        page.value("  Most engagement", end.most, Kind::FineLength);
        for mark in &end.marks {
            let reached = if mark.reached { "reached" } else { "not reached" };
            let length = page.shown(mark.length, Kind::FineLength);
            page.line(format!("    {}: {length}, {reached}; {}", mark.name, mark.source.words()));
        }
        page.value("  Threads showing", end.visible_threads, Kind::Count);
        let [least, most] = end.hole.map(|hole| page.shown(hole, Kind::FineLength));
        page.line(format!("    {:<32} {least} to {most}", "Hole before tapping"));
        page.value("  Tapped", end.tapped_depth, Kind::FineLength);
        page.value("  Drilled to the shoulder", end.drill_depth, Kind::FineLength);
        page.value("  Drilled to the point", end.drill_point, Kind::FineLength);
    }
    page.title("adjustment");
    let adjustment = link.adjustment;
    page.value("One turn of the bar", adjustment.per_turn, Kind::FineLength);
    let reach = adjustment.reach;
    for (what, length, turns) in [
        ("Longer, 0 to 3 threads showing", reach.out_good, adjustment.turns_good[0]),
        ("Shorter, 0 to 3 threads showing", reach.in_good, adjustment.turns_good[1]),
        ("Longer, to least engagement", reach.out_limit, adjustment.turns_limit[0]),
        ("Shorter, to the stop", reach.in_limit, adjustment.turns_limit[1]),
    ] {
        page.line(format!("  {what:<34} {}, {}", page.shown(length, Kind::FineLength), page.shown(turns, Kind::Turns)));
    }
}

pub(crate) fn loads(page: &mut Page, answer: &Answer) {
    page.title("loads");
    page.said("  ", &answer.loads.story);
    page.working(&answer.loads.working);
}

/// The verdict, and the findings that are wanted.
pub(crate) fn findings(page: &mut Page, answer: &Answer, wanted: impl Fn(&Finding) -> bool) {
    page.title("findings");
    page.line(format!("  In all: {}", word(answer.verdict)));
    for condition in &answer.conditions {
        page.said("  Condition: ", condition);
    }
    if let Some(weakest) = answer.weakest_finding() {
        page.line(format!("  Weakest part: {}", weakest.part));
    }
    for finding in answer.findings.iter().filter(|finding| wanted(finding)) {
        page.line("");
        let used = finding.utilization.map_or(String::new(), |used| format!(", {}", page.shown(used, Kind::Percent)));
        let rule = if finding.rule { ", rule of thumb" } else { "" };
        page.line(format!("  {} {}{used}{rule}", finding.title, finding.word().to_ascii_lowercase()));
        let at = finding.station.map_or(String::new(), |at| format!(", {} from eye A", page.shown(at, Kind::Length)));
        page.line(format!("  At the {}{at}.", finding.part));
        page.said("  ", &finding.says);
        page.working(&finding.working);
        page.line(format!("    Source: {}", finding.source.words()));
    }
}

pub(crate) fn cautions(page: &mut Page, answer: &Answer) {
    page.title("what to mind");
    answer.cautions.iter().for_each(|said| page.said("  ", said));
}

pub(crate) fn fitting(page: &mut Page, document: &Document, answer: &Answer) {
    page.title("fitting");
    let steps = fitting_steps::steps(document, 0, answer);
    steps.iter().filter(|step| step.is_on_screen()).for_each(|step| page.said("  ", &step.words));
}

pub(crate) fn assumed(page: &mut Page, answer: &Answer) {
    page.title("assumed");
    for it in &answer.assumed {
        let standing = if it.changed { "decided" } else { "assumed" };
        page.line(format!("  {:<34} {}, {standing}", it.input, page.shown(it.value, it.kind)));
    }
}

/// Bolts, spacers and inserts of all its pieces.
pub(crate) fn hardware(page: &mut Page, parts: &[Part]) {
    page.title("bolts, spacers, inserts");
    for part in parts {
        match part {
            Part::Bolt { bolt: Some(bolt), grip, count } => {
                let thread = format!("{} × {}", page.shown(bolt.diameter, Kind::FineLength), bolt.grade);
                page.line(format!("  {count} bolts, {thread}, grip {}", page.shown(*grip, Kind::FineLength)));
            }
            Part::Bolt { bolt: None, count, .. } => page.line(format!("  {count} bolts, not known")),
            Part::Spacer { bore, foot, into, long, count } => {
                let size = |size: &Option<f64>| {
                    size.map_or_else(|| "none".to_string(), |size| page.shown(size, Kind::FineLength))
                };
                let (bore, foot, into) = (size(bore), size(foot), size(into));
                let long = page.shown(*long, Kind::FineLength);
                page.line(format!("  {count} spacers, bore {bore}, face {foot}, into a ball of {into}, {long} long"));
            }
            Part::Insert { thread, hand, outside_diameter, wall, length, count, .. } => {
                let [outside, wall, length] =
                    [outside_diameter, wall, length].map(|size| page.shown(*size, Kind::FineLength));
                let name = format!("{:?}-hand {}", hand, thread.label);
                page.line(format!("  {count} inserts, {name}, outside {outside}, wall {wall}, {length} long"));
            }
            _ => {}
        }
    }
}
