//! Bending against strength along the link, drawn to scale, and the same in a table.

use super::drawing::{self, Sheet};
use super::known::Known;
use super::markup::{Markup, attribute, cells, element, heads, said};
use super::moments::after;
use super::pen::{Hang, Pen};
use super::state::{Bench, Leaf};
use super::tag::{Piece, tag};
use super::{storage, words};
use linkwright::engine;
use linkwright::inputs::{self, At};
use linkwright::quantity::{Kind, System, lbf_in, show};
use linkwright::report::{Along, Answer};
use std::time::Duration;

/// What the table of parts holds.
const HEAD: [&str; 5] = ["Part", "From eye A", "Moment", "Strength", "Utilization"];
/// Height of the hill at most, in sheet units.
const HILL: f64 = 150.0;
/// A place that bears far more than the hill is cut off at this many times its height.
const CEILING: f64 = 1.35;

/// The picture, what it says in words, and the table of parts.
pub(super) fn picture(bench: Bench) -> Piece {
    let along = bench.pace.calm(Known::new(move || {
        let at = bench.at.get();
        bench.document.with(|document| engine::along(document, at))
    }));
    let told = move |tell: fn(Bench, &Answer, &Along) -> Markup| {
        bench.with_answer(|answer| along.with(|along| tell(bench, answer, along))).unwrap_or_default()
    };
    let draw = move || {
        told(|bench, answer, along| drawing::both(|class, width| hill(answer, along, bench.system.get(), class, width)))
    };
    let parts = move || told(|bench, _, along| table(along, bench.system.get()));
    tag("section class=part-of aria-labelledby=prove-title")
        .with(tag("figure class='drawing hill'").on("click", move |event| touched(bench, &event)).markup(draw))
        .with(tag("div").markup(move || told(explained)))
        .with(tag("div").on("click", move |event| touched(bench, &event)).markup(parts))
}

/// Opens the check of the part that was touched, in a drawing or in the table.
pub(super) fn touched(bench: Bench, event: &leptos::ev::Event) {
    let Some(part) = storage::attribute(event, "data-part") else { return };
    let Some(check) = check_of(&part) else { return };
    bench.leaf.set(Leaf::Prove);
    bench.opened.update(|opened| {
        if !opened.contains(&check) {
            opened.push(check);
        }
    });
    // The list may have to be written first.
    after(Duration::from_millis(60), move || storage::show_check(check));
}

/// The check that judges a part.
fn check_of(part: &str) -> Option<&'static str> {
    Some(match part {
        "eye" => "eye",
        part if part.starts_with("shank") => "shank-bending",
        "bar at the threaded hole" | "tube beside its weld" => "tapped-end",
        "wrench flats" => "wrench-flats",
        "plain bar" | "tube" => "bar-bending",
        _ => return None,
    })
}

fn hill(answer: &Answer, along: &Along, system: System, class: &str, width: f64) -> Markup {
    let stations = &along.stations;
    if stations.is_empty() || answer.loads.strike <= 0.0 {
        return Markup::default();
    }
    let mut pen = Pen::new();
    let sheet = Sheet::new(answer, width, 54.0);
    let ground = sheet.bottom() + 34.0 + HILL;
    let most = stations.iter().map(|station| station.moment).fold(0.0, f64::max);
    let ceiling = most * CEILING;
    let x = |at: f64| sheet.frames[0].x(at);
    let y = |moment: f64| ground - moment.min(ceiling) / ceiling.max(1e-9) * HILL;
    // What is asked: a hill on the ground line. What is borne: a line over it.
    let mut asked = vec![(x(0.0), ground)];
    asked.extend(stations.iter().map(|station| (x(station.x), y(station.moment))));
    asked.push((x(answer.link.length), ground));
    pen.path("asked", &asked, true);
    for stretch in stations.chunk_by(|a, b| (a.utilization > 1.0) == (b.utilization > 1.0)) {
        if stretch.len() > 1 && stretch[0].utilization > 1.0 {
            let mut over: Vec<(f64, f64)> = stretch.iter().map(|station| (x(station.x), y(station.moment))).collect();
            over.extend(stretch.iter().rev().map(|station| (x(station.x), y(station.strength))));
            pen.path("over", &over, true);
        }
    }
    let borne: Vec<(f64, f64)> = stations.iter().map(|station| (x(station.x), y(station.strength))).collect();
    pen.path("borne", &borne, false);
    pen.line("edge", x(0.0), ground, x(answer.link.length), ground);
    scale(&mut pen, ceiling, system, x(0.0), y);
    drawing::link_body(&mut pen, answer, &sheet);
    strike(&mut pen, answer, system, &sheet, width);
    let middle = (x(0.0) + x(answer.link.length)) / 2.0;
    pen.text("note", Hang::Middle, x(answer.link.length * 0.3), ground - 12.0, "bending moment of the hit");
    let named = answer.link.length * 0.3;
    if let Some(beside) = stations.iter().find(|station| station.x >= named) {
        pen.text("note", Hang::Middle, x(named), y(beside.strength) - 7.0, "bending strength");
    }
    if let Some(weakest) = along.weakest.map(|index| &stations[index]) {
        let at = x(weakest.x);
        pen.line("leader strong", at, sheet.bottom() + 4.0, at, ground);
        let words = format!("utilization {}", show(weakest.utilization, Kind::Percent, system));
        pen.text("size", Hang::Middle, drawing::kept(at, &words, width), sheet.bottom() + 18.0, &words);
    }
    for (at, name) in [(0.0, "A"), (answer.link.length, "B")] {
        pen.balloon(x(at), ground + 16.0, name);
    }
    let whole = words::length(answer.link.length, system);
    pen.text("faint", Hang::Middle, middle, ground + 20.0, &format!("{whole} from eye to eye"));
    for part in &answer.parts {
        pen.touch(part.part, x(part.from), sheet.axis - sheet.half, x(part.to), ground);
    }
    pen.svg(class, width, ground + 30.0, &words::along_words(along, system))
}

/// The scale of the moments: ticks at round values, from the ground line up.
fn scale(pen: &mut Pen, ceiling: f64, system: System, left: f64, y: impl Fn(f64) -> f64) {
    let unit = if system == System::Inch { lbf_in(1.0) } else { 1.0 };
    let step = unit * round_step(ceiling / unit / 4.0);
    for count in 1..=6_u8 {
        let moment = f64::from(count) * step;
        if !(moment > 0.0 && moment < ceiling) {
            break;
        }
        let at = y(moment);
        pen.line("edge", left - 4.0, at, left + 4.0, at);
        pen.text("faint", Hang::Start, left + 7.0, at + 3.5, &show(moment, Kind::Moment, system));
    }
    pen.line("edge", left, y(0.0), left, y(ceiling));
}

/// The first of 1, 2, 5, 10, 20, 50 … that is at least so much.
fn round_step(least: f64) -> f64 {
    let mut decade = 1.0;
    while 5.0 * decade < least && decade < 1e12 {
        decade *= 10.0;
    }
    [1.0, 2.0, 5.0].into_iter().map(|step| step * decade).find(|step| *step >= least).unwrap_or(decade)
}

/// The strike above the link: where it may fall, and how hard.
fn strike(pen: &mut Pen, answer: &Answer, system: System, sheet: &Sheet, width: f64) {
    let zone = answer.loads.zone * answer.link.length;
    let (from, to) = (sheet.frames[0].x(zone), sheet.frames[0].x(answer.link.length - zone));
    let top = sheet.axis - sheet.half - 12.0;
    pen.line("strike", from, top, to, top);
    for at in [from, (from + to) / 2.0, to] {
        pen.line("strike", at, top - 10.0, at, top + 4.0);
        pen.arrow("strike", at, top + 10.0, 0.0, -8.0);
    }
    let words = format!("a rock: {} anywhere here", show(answer.loads.strike, Kind::Force, system));
    pen.text("size", Hang::Middle, drawing::kept((from + to) / 2.0, &words, width), top - 16.0, &words);
}

/// How to read the picture, for somebody who never saw one like it.
fn explained(bench: Bench, answer: &Answer, along: &Along) -> Markup {
    let system = bench.system.get();
    if answer.loads.strike <= 0.0 {
        let axial = show(answer.loads.axial, Kind::Force, system);
        return said(
            "p id=\"hill-words\"",
            format!(
                "No hit is assumed on this link, so nothing bends it: it bears {axial} in tension or compression. What counts is whether it buckles, and the strength of its ends."
            ),
        );
    }
    if along.stations.is_empty() {
        return said(
            "p class=\"stop\"",
            "The compression along the link alone buckles it, so there is no bending to draw.",
        );
    }
    let factor = inputs::YIELD_FACTOR.value(&bench.document.get(), At::default()).unwrap_or(f64::NAN);
    let words = format!(
        "The filled curve is the bending moment of the hit at each place of the link: the worst hit for that place, with the factor of {} on yield. The line is the bending strength of that place, up to first yield. Where the two come closest, the link yields first. On a screen, touch a part to open its working.",
        show(factor, Kind::Ratio, system)
    );
    said("p id=\"hill-words\"", words)
}

/// Each part with the most it is asked for and where.
fn table(along: &Along, system: System) -> Markup {
    let rows: Markup = along
        .stations
        .chunk_by(|a, b| a.part == b.part)
        .filter_map(|stretch| {
            let worst = stretch.iter().max_by(|a, b| a.utilization.total_cmp(&b.utilization))?;
            let head = said(attribute("button type=\"button\" class=\"quiet\"", "data-part", worst.part), worst.part);
            let values = [
                words::length(worst.x, system),
                show(worst.moment, Kind::Moment, system),
                show(worst.strength, Kind::Moment, system),
                show(worst.utilization, Kind::Percent, system),
            ];
            Some(element("tr", element("th scope=\"row\"", head) + cells(&HEAD, values)))
        })
        .collect();
    if rows.is_empty() {
        return rows;
    }
    let inside = element("thead", element("tr", heads(&HEAD))) + element("tbody", rows);
    element(
        "details",
        said("summary", "The same as a table")
            + element("div class=\"scroll\"", element("table class=\"along\"", inside)),
    )
}
