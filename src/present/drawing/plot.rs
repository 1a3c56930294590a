//! Metals for one job: weight of the bar against the side load to first yield, or against the buckling load.

use super::sketch::Sketch;
use super::{Anchor, Area, Drawing, LETTERING, NARROW, Point, Touch};
use crate::engine::math::{cosine, sine};
use crate::quantity::{Kind, System, show};
use crate::report::{InMetal, MetalSize};

/// The plot between its axes: left, right, top, bottom.
const LEFT: f64 = 12.0;
const RIGHT: f64 = NARROW - 30.0;
const TOP: f64 = 54.0;
const BOTTOM: f64 = 230.0;
/// Room above the greatest value.
const SPARE: f64 = 1.12;
/// Radius of a point.
const POINT: f64 = 6.0;
/// Radius of the place to touch.
const TOUCH: f64 = 24.0;

/// Half the width and half the height of a letter.
const HALF: (f64, f64) = (5.5, 8.5);
/// How far from its point a letter may stand, and in which directions, in degrees: the first that is free is taken.
const FAR: [f64; 5] = [14.0, 18.0, 28.0, 38.0, 50.0];
const TURNS: [f64; 12] = [0.0, 180.0, 270.0, 90.0, 315.0, 45.0, 225.0, 135.0, 330.0, 30.0, 210.0, 150.0];

/// What is plotted against the weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Against {
    /// The side load at which the bar begins to yield.
    FirstYield,
    /// The compression at which the link buckles.
    Buckling,
}

impl Against {
    /// What it is called.
    pub const fn words(self) -> &'static str {
        match self {
            Self::FirstYield => "side load to yield",
            Self::Buckling => "buckling load",
        }
    }

    const fn of(self, size: &MetalSize) -> f64 {
        match self {
            Self::FirstYield => size.beyond.first_yield,
            Self::Buckling => size.buckling,
        }
    }
}

/// The letter of a metal, by its place in the list: a, b, c.
pub fn letter(index: usize) -> String {
    let letter = u8::try_from(index).ok().and_then(|index| b'a'.checked_add(index)).unwrap_or(b'?');
    char::from(letter).to_string()
}

/// A size of a metal on the plot.
struct Plotted<'a> {
    letter: String,
    metal: &'static str,
    size: &'a MetalSize,
}

/// Weight to the right, a force upward; a ring for a size that passes, a cross for one that fails. Nothing where no
/// metal has a strength.
pub fn plot(metals: &[InMetal], system: System, against: Against) -> Option<Drawing> {
    let points: Vec<Plotted> = metals.iter().enumerate().flat_map(|(index, metal)| sizes(index, metal)).collect();
    let most = |of: &dyn Fn(&MetalSize) -> f64| points.iter().map(|point| of(point.size)).fold(0.0, f64::max) * SPARE;
    let (heaviest, strongest) = (most(&|size| size.bar_weight), most(&|size| against.of(size)));
    if strongest <= 0.0 || heaviest <= 0.0 {
        return None;
    }
    let what = against.words();
    let mut sketch = Sketch::new(NARROW, LETTERING);
    sketch.line("edge", (LEFT, BOTTOM), (RIGHT, BOTTOM));
    sketch.line("edge", (LEFT, BOTTOM), (LEFT, TOP));
    // Two lines in every plot, for great forces do not fit in one, and plots side by side have their axes level.
    let up = format!("up to {}", show(strongest, Kind::Force, system));
    sketch.text("size", Anchor::Start, (4.0, TOP - 12.0 - sketch.line_height()), what);
    sketch.text("size", Anchor::Start, (4.0, TOP - 12.0), &up);
    let along = format!("weight of the bar, up to {}", show(heaviest, Kind::Weight, system));
    let below = BOTTOM + 8.0 + sketch.ascent();
    sketch.text("size", Anchor::End, (NARROW - 4.0, below), &along);
    let places: Vec<Point> = points
        .iter()
        .map(|point| {
            let x = LEFT + (RIGHT - LEFT) * point.size.bar_weight / heaviest;
            (x, BOTTOM - (BOTTOM - TOP) * against.of(point.size) / strongest)
        })
        .collect();
    for (point, at) in points.iter().zip(&places) {
        mark(&mut sketch, *at, point.size.passes);
    }
    let mut named: Vec<Point> = Vec::new();
    for (point, at) in points.iter().zip(&places) {
        let center = name_at(*at, &places, &named);
        let far = apart(*at, center);
        if far > 3.5 * POINT {
            // From the ring to the letter.
            let on = |share: f64| (at.0 + share * (center.0 - at.0), at.1 + share * (center.1 - at.1));
            sketch.line("thin", on((POINT + 1.0) / far), on(1.0 - 10.0 / far));
        }
        let level = center.1 + 0.28 * LETTERING;
        sketch.text("size", Anchor::Middle, (center.0, level), &point.letter);
        named.push(center);
    }
    // The places to touch lie over everything.
    for (point, at) in points.iter().zip(&places) {
        sketch.touch(Touch::Metal(point.metal), Area::Circle(*at, TOUCH));
    }
    let words = format!("Weight of the bar against {what}: the numbers stand in the tables above.");
    Some(sketch.finish("", below + sketch_foot(), words))
}

/// What the sheet leaves under its last words.
const fn sketch_foot() -> f64 {
    0.24 * LETTERING + 3.0
}

/// The sizes of one metal: the smallest that passes, and the one of the same diameter where that is another.
fn sizes(index: usize, metal: &InMetal) -> impl Iterator<Item = Plotted<'_>> {
    let other = |same: &&MetalSize| {
        metal.smallest.as_ref().is_none_or(|small| (small.bar_weight - same.bar_weight).abs() > 1e-9)
    };
    let same = metal.same.as_ref().filter(other);
    let plotted = move |size| Plotted { letter: letter(index), metal: metal.material.id, size };
    metal.smallest.iter().chain(same).map(plotted)
}

fn mark(sketch: &mut Sketch, at: Point, passes: bool) {
    if passes {
        sketch.circle("ring", at, POINT);
    } else {
        sketch.line("cross", (at.0 - 5.0, at.1 - 5.0), (at.0 + 5.0, at.1 + 5.0));
        sketch.line("cross", (at.0 - 5.0, at.1 + 5.0), (at.0 + 5.0, at.1 - 5.0));
    }
}

/// Where the letter of a point stands: beside it, as near as other points and letters let it.
fn name_at(point: Point, points: &[Point], named: &[Point]) -> Point {
    let mut best = ((point.0 + 14.0, point.1), f64::NEG_INFINITY);
    for far in FAR {
        for turn in TURNS {
            let (x, y) = (cosine(turn.to_radians()), sine(turn.to_radians()));
            let at = (point.0 + far * x, point.1 + far * y);
            // How much of the room that it should have is there, at most all of it.
            let share = |room: f64, gaps: f64| gaps.min(room) / room;
            let from_points = points.iter().map(|other| beyond(at, *other, HALF)).fold(f64::MAX, f64::min);
            let whole = (2.0 * HALF.0, 2.0 * HALF.1);
            let from_names = named.iter().map(|other| beyond(at, *other, whole)).fold(f64::MAX, f64::min);
            let edges =
                [at.0 - LEFT, NARROW - at.0, at.1 - TOP + 6.0, BOTTOM - at.1].into_iter().fold(f64::MAX, f64::min);
            let good = share(POINT + 2.0, from_points) + share(2.0, from_names) + share(10.0, edges) - far / 1000.0;
            if good > best.1 {
                best = (at, good);
            }
        }
    }
    best.0
}

/// How far a point is outside of a box around a center.
fn beyond(center: Point, point: Point, half: (f64, f64)) -> f64 {
    let out = |a: f64, b: f64, half: f64| ((a - b).abs() - half).max(0.0);
    apart((out(center.0, point.0, half.0), out(center.1, point.1, half.1)), (0.0, 0.0))
}

fn apart(a: Point, b: Point) -> f64 {
    ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt()
}
