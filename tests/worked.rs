//! Six whole links, worked from entry to finding, as text that a builder or an engineer can check by hand.
//!
//! `UPDATE_WORKED=1 cargo test --test worked` writes the texts anew; read the difference before you keep it.

use std::fmt::Write;
use std::path::Path;

use linkwright::document::{Document, Hand, Link, OWN_ROD_END, Rig, Role, Use};
use linkwright::engine::formula::{Formula, Line};
use linkwright::engine::sentence::{Phrase, spoken};
use linkwright::engine::{self, notation};
use linkwright::inputs::{CHOICES, NUMBERS, places};
use linkwright::quantity::{Kind, System, inch, lbf, mm, show};
use linkwright::report::{Along, Answer, Candidate, Firmness, LinkReport, Verdict};

fn lower(weight: f64, usage: Use, length: f64) -> Document {
    Document {
        rig: Box::new(Rig { weight: Some(lbf(weight)), usage: Some(usage), ..Rig::default() }),
        links: vec![Link { length: Some(inch(length)), ..Link::default() }],
        ..Document::default()
    }
}

fn tube() -> Document {
    let mut document = lower(3800.0, Use::Slow, 36.0);
    document.links[0].material = Some("1026-dom");
    document
}

fn upper() -> Document {
    let mut document = lower(4100.0, Use::Hard, 30.5);
    let link = &mut document.links[0];
    (link.role, link.plan_angle, link.uneven) = (Role::Upper, Some(35.0_f64.to_radians()), Some(1.3));
    document
}

/// A link that was bought too thin, with a rod end that was measured.
fn too_thin() -> Document {
    let mut document = lower(5200.0, Use::Punished, 42.0);
    let link = &mut document.links[0];
    link.outside_diameter = Some(inch(1.75));
    link.material = Some("6061-t6");
    for end in &mut link.ends {
        (end.rod_end, end.own_thread) = (Some(OWN_ROD_END), Some("7/8-14"));
        (end.own_eye_to_end, end.own_thread_length) = (Some(inch(3.5)), Some(inch(2.0)));
        (end.own_bore, end.own_ball_width, end.rating) = (Some(inch(0.75)), Some(inch(1.25)), Some(lbf(21_000.0)));
    }
    link.ends[1].hand = Some(Hand::Right);
    document
}

/// Steering that a hydraulic cylinder pushes: buckling decides.
fn tie_rod() -> Document {
    let mut document = lower(4100.0, Use::Hard, 48.0);
    document.links[0].role = Role::TieRod;
    document.rig.cylinder_bore = Some(inch(2.5));
    document
}

/// Typed in millimeters and kilograms.
fn metric() -> Document {
    let mut document = lower(0.0, Use::Easy, 0.0);
    document.rig.weight = Some(1900.0 * 9.80665);
    document.links[0].length = Some(mm(900.0));
    document.links[0].family = Some("series-k");
    document
}

/// Text, a line at a time.
#[derive(Default)]
struct Page(String);

impl Page {
    fn line(&mut self, text: impl AsRef<str>) {
        // Writing into a string cannot fail.
        let _ = writeln!(self.0, "{}", text.as_ref().trim_end());
    }

    fn title(&mut self, text: &str) {
        self.line("");
        self.line(text.to_uppercase());
    }

    fn said(&mut self, before: &str, said: &[Phrase]) {
        self.line(format!("{before}{}", spoken(said, System::Inch)));
    }

    fn value(&mut self, what: &str, value: f64, kind: Kind) {
        self.line(format!("  {what:<34} {}", shown(value, kind)));
    }

    fn working(&mut self, lines: &[Line]) {
        for line in lines {
            match line {
                Line::Worked { formula, given, result } => self.worked(formula, given, *result),
                Line::LookedUp { what, value, kind, row, source } => {
                    self.line(format!("    {what}: {}", shown(*value, *kind)));
                    self.line(format!("      from {row}; {}", source.words()));
                }
                Line::Result(said) | Line::Chose(said) => self.said("    ", said),
                Line::Solved { what, value, kind, how } => {
                    self.line(format!("    {what}: {}, {how}", shown(*value, *kind)));
                }
                Line::Assumed { input, value, changed } => {
                    let kind = NUMBERS.iter().find(|row| row.id == *input).map_or(Kind::Ratio, |row| row.kind);
                    let standing = if *changed { "decided" } else { "assumed" };
                    self.line(format!("    {input}: {}, {standing}", shown(*value, kind)));
                }
            }
        }
    }

    fn worked(&mut self, formula: &'static Formula, given: &[f64], result: f64) {
        let term = notation::parse(formula.text).expect("tests/formulas.rs reads every formula");
        let put_in = notation::text_with(&term, &|name| {
            let of = formula.given.iter().zip(given).find(|(symbol, _)| symbol.name == name);
            of.map_or_else(|| format!("{name}?"), |(symbol, value)| shown(*value, symbol.kind))
        });
        let name = formula.result.name;
        self.line(format!("    {}", formula.title()));
        self.line(format!("      {name} = {}", formula.text));
        self.line(format!("      {name} = {put_in}"));
        self.line(format!("      {name} = {}", shown(result, formula.result.kind)));
        self.line(format!("      {}", formula.source.words()));
    }
}

/// Bending and strength where the link changes, and what is told beside the checks.
fn beside(page: &mut Page, answer: &Answer, along: &Along) {
    page.title("along the link");
    for pair in along.stations.windows(2).filter(|pair| pair[0].part != pair[1].part) {
        for station in pair {
            page.line(format!(
                "  {:<12} {:<26} bent by {:<16} bears {:<16} {}",
                shown(station.x, Kind::Length),
                station.part,
                shown(station.moment, Kind::Moment),
                shown(station.strength, Kind::Moment),
                shown(station.utilization, Kind::Percent)
            ));
        }
    }
    for note in &answer.notes {
        page.line("");
        page.line(format!("  {}", note.asks));
        page.said("  ", &note.says);
        page.working(&note.working);
        page.line(format!("    Rests on {}.", note.source.words()));
    }
}

fn shown(value: f64, kind: Kind) -> String {
    show(value, kind, System::Inch)
}

fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "passes",
        Verdict::Unanswered => "not judged",
        Verdict::Close => "passes, little margin",
        Verdict::Bends => "BENDS",
        Verdict::Fails => "FAILS",
    }
}

fn entries(page: &mut Page, document: &Document) {
    page.title("entries");
    for input in NUMBERS {
        for place in places(document, input.scope) {
            if let Some(value) = input.decided(document, place) {
                page.line(format!("  {:<34} {}", label(input.label, input.scope, place.end), shown(value, input.kind)));
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

fn label(label: &str, scope: linkwright::inputs::Scope, end: usize) -> String {
    match (scope, end) {
        (linkwright::inputs::Scope::End, 0) => format!("{label}, end A"),
        (linkwright::inputs::Scope::End, _) => format!("{label}, end B"),
        _ => label.to_string(),
    }
}

fn candidate(page: &mut Page, what: &str, candidate: Option<&Candidate>) {
    let text = candidate.map_or_else(
        || "none".to_string(),
        |it| {
            let wall = if it.wall > 0.0 { format!(" × {}", shown(it.wall, Kind::FineLength)) } else { String::new() };
            let holds = if it.feasible { "holds" } else { "does not hold" };
            let diameter = shown(it.outside_diameter, Kind::FineLength);
            let used = shown(it.utilization, Kind::Percent);
            format!("{diameter}{wall}, {}, {holds}, {used} at the {}", it.rod_end, it.decides)
        },
    );
    page.line(format!("  {what:<34} {text}"));
}

fn recommendation(page: &mut Page, answer: &Answer, around: &[Option<Candidate>; 2], firm: &[Firmness]) {
    let sizing = &answer.sizing;
    page.title("recommendation");
    candidate(page, "Smallest that passes", sizing.by_numbers.as_ref());
    let trade = sizing.by_trade.as_ref().map_or("no habit".to_string(), |it| spoken(&it.words, System::Inch));
    page.line(format!("  {:<34} {trade}", "Builders usually fit"));
    candidate(page, "Recommended", sizing.recommended.as_ref());
    candidate(page, "Next size down", around[0].as_ref());
    candidate(page, "Next size up", around[1].as_ref());
    page.said("  ", &sizing.governs);
    for firm in firm {
        let now = shown(firm.now, firm.kind);
        let least = firm.least.map(|it| format!(" from {}", shown(it, firm.kind))).unwrap_or_default();
        let most = firm.most.map(|it| format!(" up to {}", shown(it, firm.kind))).unwrap_or_default();
        page.line(format!("  Passes with a {}{least}{most}; now {now}", firm.input));
    }
}

fn link(page: &mut Page, answer: &Answer) {
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
            let length = shown(mark.length, Kind::FineLength);
            page.line(format!("    {}: {length}, {reached}; {}", mark.name, mark.source.words()));
        }
        page.value("  Threads showing", end.visible_threads, Kind::Count);
        let [least, most] = end.hole.map(|hole| shown(hole, Kind::FineLength));
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
        page.line(format!("  {what:<34} {}, {}", shown(length, Kind::FineLength), shown(turns, Kind::Turns)));
    }
}

fn findings(page: &mut Page, answer: &Answer) {
    page.title("loads");
    page.said("  ", &answer.loads.story);
    page.working(&answer.loads.working);
    page.title("findings");
    page.line(format!("  In all: {}", word(answer.verdict)));
    if let Some(weakest) = answer.weakest_finding() {
        page.line(format!("  Weakest part: {}", weakest.part));
    }
    for finding in &answer.findings {
        page.line("");
        let used = finding.utilization.map_or(String::new(), |used| format!(", {}", shown(used, Kind::Percent)));
        let rule = if finding.rule { ", rule of thumb" } else { "" };
        page.line(format!("  {} {}{used}{rule}", finding.asks, word(finding.verdict)));
        let at = finding.station.map_or(String::new(), |at| format!(", {} from eye A", shown(at, Kind::Length)));
        page.line(format!("  At the {}{at}.", finding.part));
        page.said("  ", &finding.says);
        page.working(&finding.working);
        page.line(format!("    Source: {}", finding.source.words()));
    }
}

/// A link from entry to checklist.
fn text(title: &str, document: &Document) -> String {
    let mut page = Page::default();
    page.line(title);
    entries(&mut page, document);
    match &engine::report(document).links[0] {
        LinkReport::Needs(needs) => page.line(format!("  Still needed: {}", needs.join(", "))),
        LinkReport::Impossible(why) => page.said("  ", why),
        LinkReport::Answer(answer) => {
            let at = answer.sizing.recommended.as_ref();
            let around = at.map(|at| engine::neighbors(document, 0, at)).unwrap_or_default();
            recommendation(&mut page, answer, &around, &engine::firmness(document, 0));
            link(&mut page, answer);
            findings(&mut page, answer);
            beside(&mut page, answer, &engine::along(document, 0));
            page.title("what to mind");
            answer.cautions.iter().for_each(|said| page.said("  ", said));
            page.title("fitting");
            answer.checklist.iter().for_each(|said| page.said("  ", said));
            page.title("assumed");
            for it in &answer.assumed {
                let standing = if it.changed { "decided" } else { "assumed" };
                page.line(format!("  {:<34} {}, {standing}", it.input, shown(it.value, it.kind)));
            }
        }
    }
    page.0
}

/// The first lines that differ, as a reader compares them.
fn difference(kept: &str, now: &str) -> Option<String> {
    let (kept, now): (Vec<&str>, Vec<&str>) = (kept.lines().collect(), now.lines().collect());
    let at = (0..kept.len().max(now.len())).find(|at| kept.get(*at) != now.get(*at))?;
    let show = |lines: &[&str]| lines.get(at).map_or("(the end)".to_string(), |line| (*line).to_string());
    let many = (0..kept.len().max(now.len())).filter(|at| kept.get(*at) != now.get(*at)).count();
    Some(format!("line {} of {many} that differ\n  kept: {}\n   now: {}", at + 1, show(&kept), show(&now)))
}

#[test]
fn six_links_are_worked_as_they_were_read() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/worked");
    let update = std::env::var_os("UPDATE_WORKED").is_some();
    let mut told = Vec::new();
    for (name, title, document) in [
        ("lower-hard", "A lower link of a 4,100 lb rig, driven hard", lower(4100.0, Use::Hard, 38.0)),
        ("upper-angled", "An upper link of the same rig, at an angle", upper()),
        ("tie-rod", "A tie rod with an assist cylinder", tie_rod()),
        ("lower-tube", "A lower link of drawn steel tube", tube()),
        ("lower-too-thin", "A lower link that was bought too thin, with measured rod ends of like hand", too_thin()),
        ("lower-metric", "A lower link with metric rod ends, driven gently", metric()),
    ] {
        let (now, path) = (text(title, &document), folder.join(name).with_extension("txt"));
        if update {
            std::fs::write(&path, &now).expect("a folder to write to");
        }
        let kept = std::fs::read_to_string(&path).unwrap_or_default();
        if let Some(difference) = difference(&kept, &now) {
            told.push(format!("{name}.txt: {difference}"));
        }
    }
    assert!(told.is_empty(), "\n{}\nUPDATE_WORKED=1 writes them anew.", told.join("\n"));
}

#[test]
fn no_worked_link_shows_what_cannot_be() {
    for document in [lower(4100.0, Use::Hard, 38.0), upper(), tie_rod(), tube(), too_thin(), metric()] {
        let text = text("", &document);
        for odd in ["NaN", "inf ", "?", "— from", " — lbf"] {
            let line = text.lines().find(|line| {
                line.contains(odd)
                    && !(odd == "?" && (line.contains("? ") || line.ends_with("?") && !line.contains(" = ")))
            });
            assert!(line.is_none(), "{odd}: {line:?}");
        }
        assert!(!text.contains("Still needed"), "{text}");
    }
}
