//! Small drawings of failed parts, to pick from: a thumb wide, without words of their own.

mod axle;
mod bar;
mod end;

use super::sketch::Sketch;
use super::{Drawing, Point};

/// Width and height of the sheet.
const WIDTH: f64 = 96.0;
const HEIGHT: f64 = 72.0;
/// The line through the middle.
const AXIS: f64 = 36.0;
/// Half a bar, a shank, a jam nut; a head and the hole in it.
const BAR: f64 = 9.0;
const SHANK: f64 = 5.0;
const NUT: f64 = 10.0;
const HEAD: f64 = 14.0;
const HOLE: f64 = 5.0;

/// The drawing of a failed part by its id; empty where there is none.
pub fn failure(id: &str, words: &str) -> Drawing {
    let mut sketch = Sketch::new(WIDTH, 12.0);
    let draw: fn(&mut Sketch) = match id {
        "bent-bar" => bar::bent,
        "buckled" => bar::buckled,
        "snapped-bar" => bar::snapped,
        "kinked-tube" => bar::kinked,
        "torn-end" => bar::torn_end,
        "cracked-weld" => bar::cracked_weld,
        "cracked-flats" => bar::cracked_flats,
        "straightened" => bar::straightened,
        "walked-out" => bar::walked_out,
        "stripped" => end::stripped,
        "shank-broken" => end::shank_broken,
        "bent-shank" => end::bent_shank,
        "ball-out" => end::ball_out,
        "worn-ball" => end::worn_ball,
        "loose-nut" => end::loose_nut,
        "wrong-way" => end::wrong_way,
        "torn-thread" => end::torn_thread,
        "seized" => end::seized,
        "bottomed" => end::bottomed,
        "wrong-part" => end::wrong_part,
        "egged-hole" => axle::egged_hole,
        "bent-bolt" => axle::bent_bolt,
        "torn-bracket" => axle::torn_bracket,
        "bump-steer" => axle::bump_steer,
        "skewed-axle" => axle::skewed,
        "universal-joint" => axle::universal_joint,
        _ => return Drawing::default(),
    };
    draw(&mut sketch);
    sketch.finish("small", HEIGHT, words.to_string())
}

/// A straight bar between two places.
fn straight(sketch: &mut Sketch, from: f64, to: f64) {
    sketch.block("part bar", (from, AXIS - BAR), (to, AXIS + BAR));
}

/// The head of a rod end with its ball.
fn head(sketch: &mut Sketch, center: Point) {
    sketch.circle("part", center, HEAD);
    sketch.circle("thin", center, HEAD - 4.0);
    sketch.circle("hole", center, HOLE);
}

/// A threaded shank between two places on the line through the middle.
fn shank(sketch: &mut Sketch, from: f64, to: f64) {
    sketch.block("part", (from, AXIS - SHANK), (to, AXIS + SHANK));
    let mut x = from.min(to) + 3.0;
    while x < from.max(to) - 1.0 {
        sketch.line("thin", (x, AXIS - SHANK), (x - 1.5, AXIS + SHANK));
        x += 4.0;
    }
}

/// A jam nut that begins at a place.
fn nut(sketch: &mut Sketch, from: f64) {
    sketch.block("part", (from, AXIS - NUT), (from + 7.0, AXIS + NUT));
    for y in [AXIS - NUT / 2.0, AXIS + NUT / 2.0] {
        sketch.line("thin", (from, y), (from + 7.0, y));
    }
}

/// A crack that runs down from a place.
fn crack(sketch: &mut Sketch, from: Point, deep: f64) {
    let at = |share: f64, aside: f64| (from.0 + aside, from.1 + share * deep);
    sketch.path("cross", vec![from, at(0.3, 3.0), at(0.55, -2.0), at(0.8, 2.0), at(1.0, 0.0)], false);
}

/// A stretch of bar whose right or left end is broken.
fn broken(sketch: &mut Sketch, class: &str, [from, to]: [f64; 2], half: f64) {
    let jag = if to > from { 4.0 } else { -4.0 };
    let points = vec![
        (from, AXIS - half),
        (to, AXIS - half),
        (to - jag, AXIS - half / 3.0),
        (to + jag / 2.0, AXIS + half / 4.0),
        (to - jag, AXIS + half),
        (from, AXIS + half),
    ];
    sketch.path(class, points, true);
}

/// A bar bowed downward by so much, between two places.
fn bowed(sketch: &mut Sketch, [from, to]: [f64; 2], bow: f64) {
    let along = |share: f64, half: f64| {
        let x = from + share * (to - from);
        (x, AXIS + 4.0 * bow * share * (1.0 - share) - bow / 2.0 + half)
    };
    let shares = (0..=8_u8).map(|step| f64::from(step) / 8.0);
    let top: Vec<Point> = shares.clone().map(|share| along(share, -BAR + 2.0)).collect();
    let bottom = shares.rev().map(|share| along(share, BAR - 2.0));
    sketch.path("part bar", top.into_iter().chain(bottom).collect(), true);
}
