//! Bending moment against bending strength along the link, to scale.

use super::link::{self, OnSheet};
use super::sketch::Sketch;
use super::{Anchor, Area, Drawing, Layout, Point, Touch};
use crate::present::{verdict, words};
use crate::quantity::{Kind, System, lbf_in, show};
use crate::report::{Along, Answer};

/// Height of the plot.
const HEIGHT: f64 = 150.0;
/// Strength far above the bending moment is cut off at this many times the greatest moment.
const CEILING: f64 = 1.35;
/// Length of a tick on the axis of moments.
const TICK: f64 = 5.0;

/// The picture of one link; nothing without a hit, or where the compression alone buckles the link.
pub fn bending(answer: &Answer, along: &Along, system: System, layout: Layout) -> Option<Drawing> {
    if along.stations.is_empty() || answer.loads.strike <= 0.0 {
        return None;
    }
    let width = layout.width();
    let mut sketch = Sketch::new(width, layout.lettering());
    let most = along.stations.iter().map(|station| station.moment).fold(0.0, f64::max);
    let ceiling = (most * CEILING).max(1e-9);
    let axis = Axis::new(ceiling, system);
    let words = axis.ticks.iter().map(|(_, words)| words.as_str()).chain([axis.unit]);
    let widest = words.map(|words| sketch.width_of(words)).fold(0.0, f64::max);
    let left = widest + TICK + 6.0;
    let strike_line = sketch.over() + 9.0;
    let on = OnSheet::new(answer, layout, [left, width - 6.0], strike_line + 14.0);
    let called = on.bottom() + sketch.ascent() + 5.0;
    let ground = called + sketch.descent() + 12.0 + HEIGHT;
    let plot = Plot { on: &on, ground, ceiling };

    plot.curves(&mut sketch, answer, along);
    axis.draw(&mut sketch, &plot, left);
    link::body(&mut sketch, answer, &on);
    strike(&mut sketch, answer, system, &on, strike_line);
    weakest(&mut sketch, along, &plot, [left, width - 3.0], called);
    let below = under(&mut sketch, answer, system, &plot, width);
    for part in &answer.parts {
        let area = Area::Block((on.x(part.from), on.top()), (on.x(part.to), ground));
        sketch.touch(Touch::Part(part.part), area);
    }
    Some(sketch.finish(layout.class(), below, verdict::along_words(along, system)))
}

/// Where stations and moments lie on the sheet.
struct Plot<'a> {
    on: &'a OnSheet,
    ground: f64,
    ceiling: f64,
}

impl Plot<'_> {
    fn y(&self, moment: f64) -> f64 {
        self.ground - moment.min(self.ceiling) / self.ceiling * HEIGHT
    }

    /// The bending moment, filled down to the ground line; where it exceeds the strength; and the strength.
    fn curves(&self, sketch: &mut Sketch, answer: &Answer, along: &Along) {
        let on = self.on;
        let [a, b] = [0.0, answer.link.length].map(|x| (on.x(x), self.ground));
        let moments = along.stations.iter().map(|station| (on.x(station.x), self.y(station.moment)));
        let asked: Vec<Point> = [a].into_iter().chain(moments).chain([b]).collect();
        sketch.path("asked", asked, true);
        for stretch in along.stations.chunk_by(|a, b| (a.utilization > 1.0) == (b.utilization > 1.0)) {
            if stretch.len() > 1 && stretch.iter().all(|station| station.utilization > 1.0) {
                let moments = stretch.iter().map(|station| (on.x(station.x), self.y(station.moment)));
                let strengths = stretch.iter().rev().map(|station| (on.x(station.x), self.y(station.strength)));
                sketch.path("over", moments.chain(strengths).collect(), true);
            }
        }
        let borne = along.stations.iter().map(|station| (on.x(station.x), self.y(station.strength)));
        sketch.path("borne", borne.collect(), false);
        sketch.line("edge", a, b);
    }
}

/// The axis of moments: ticks at round values, and the unit of their numbers.
struct Axis {
    ticks: Vec<(f64, String)>,
    unit: &'static str,
}

impl Axis {
    fn new(ceiling: f64, system: System) -> Self {
        let (size, unit) = match system {
            System::Inch => (lbf_in(1.0), "lbf·in"),
            System::Metric if ceiling < 1000.0 => (1.0, "N·m"),
            System::Metric => (1000.0, "kN·m"),
        };
        let step = round_step(ceiling / size / 5.0);
        let ticks = (1..=6_u8).map(|count| f64::from(count) * step).take_while(|number| *number * size < ceiling);
        Self { ticks: ticks.map(|number| (number * size, show(number, Kind::Count, system))).collect(), unit }
    }

    fn draw(&self, sketch: &mut Sketch, plot: &Plot, left: f64) {
        let x = plot.on.x(0.0).min(left);
        for (moment, words) in &self.ticks {
            let y = plot.y(*moment);
            sketch.line("edge", (x - TICK, y), (x, y));
            sketch.text("faint", Anchor::End, (x - TICK - 2.0, y + sketch.ascent() / 2.0), words);
        }
        let top = plot.y(plot.ceiling);
        sketch.line("edge", (x, plot.ground), (x, top));
        // Clear of a number at the very top.
        let above = top - sketch.ascent() / 2.0 - sketch.descent() - 1.0;
        sketch.text("faint", Anchor::End, (x - TICK - 2.0, above), self.unit);
    }
}

/// The first of … 0.1, 0.2, 0.5, 1, 2, 5, 10 … that is at least so much.
fn round_step(least: f64) -> f64 {
    let mut decade = 0.001;
    while 5.0 * decade < least && decade < 1e12 {
        decade *= 10.0;
    }
    [1.0, 2.0, 5.0].into_iter().map(|step| step * decade).find(|step| *step >= least).unwrap_or(decade)
}

/// The hit above the link: where it may fall, and how hard.
fn strike(sketch: &mut Sketch, answer: &Answer, system: System, on: &OnSheet, row: f64) {
    let zone = answer.loads.zone * answer.link.length;
    let [from, to] = [zone, answer.link.length - zone].map(|station| on.x(station));
    let middle = f64::midpoint(from, to);
    sketch.line("strike", (from, row), (to, row));
    for x in [from, middle, to] {
        sketch.line("strike", (x, row), (x, row + 4.0));
        sketch.arrow("strike", (x, row + 12.0), (0.0, -8.0));
    }
    let words = format!("a rock: {} anywhere here", show(answer.loads.strike, Kind::Force, system));
    sketch.text("size", Anchor::Middle, (sketch.clamped(middle, &words), row - sketch.descent() - 4.0), &words);
}

/// How much of its strength the weakest place uses, with a line down to the curves.
fn weakest(sketch: &mut Sketch, along: &Along, plot: &Plot, [left, right]: [f64; 2], row: f64) {
    let Some(station) = along.weakest.and_then(|index| along.stations.get(index)) else { return };
    let x = plot.on.x(station.x);
    sketch.line("leader strong", (x, row + sketch.descent() + 1.0), (x, plot.ground));
    let words = format!("utilization {}", show(station.utilization, Kind::Percent, System::Inch));
    sketch.text("size", Anchor::Middle, (sketch.clamped_between(x, &words, left, right), row), &words);
}

/// Under the plot: the ends, the length, and what each curve is; where the sheet ends.
fn under(sketch: &mut Sketch, answer: &Answer, system: System, plot: &Plot, width: f64) -> f64 {
    let eyes = [0.0, answer.link.length].map(|station| plot.on.x(station));
    let middle = plot.ground + 5.0 + sketch.ring();
    let [a, b] = link::letters(sketch, eyes, middle, width);
    let whole = format!("{} from eye to eye", words::length(answer.link.length, system));
    let between = f64::midpoint(a, b);
    let mut row = middle + sketch.ring() + 6.0;
    if sketch.fits(&whole, a + sketch.ring(), b - sketch.ring()) {
        sketch.text("faint", Anchor::Middle, (between, middle + sketch.ascent() / 2.0), &whole);
    } else {
        sketch.text("faint", Anchor::Middle, (sketch.clamped(between, &whole), row + sketch.ascent()), &whole);
        row += sketch.line_height() + 2.0;
    }
    let keys = [("bending strength", "borne", false), ("bending moment of the hit", "asked", true)];
    for (words, class, filled) in keys {
        let (half, center) = (sketch.ascent() / 2.0, row + sketch.ascent() / 2.0 + 1.0);
        if filled {
            sketch.block(class, (6.0, center - half), (34.0, center + half));
        } else {
            sketch.path(class, vec![(6.0, center), (34.0, center)], false);
        }
        sketch.text("note", Anchor::Start, (42.0, center + half), words);
        row += sketch.line_height() + 2.0;
    }
    row + 2.0
}
