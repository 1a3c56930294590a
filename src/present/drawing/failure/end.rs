//! Failed rod ends, their threads and nuts.

use super::{AXIS, BAR, HEAD, HOLE, NUT, SHANK, broken, head, nut, shank, straight};
use crate::present::drawing::Point;
use crate::present::drawing::sketch::Sketch;

/// The mouth of a tapped hole in the end of a bar.
fn hole(sketch: &mut Sketch, face: f64, deep: f64, half: f64) {
    for y in [AXIS - half, AXIS + half] {
        sketch.line("hidden", (face, y), (face + deep, y));
    }
    sketch.line("hidden", (face + deep, AXIS - half), (face + deep, AXIS + half));
}

pub(super) fn stripped(sketch: &mut Sketch) {
    sketch.block("part bar", (66.0, AXIS - 13.0), (92.0, AXIS + 13.0));
    hole(sketch, 66.0, 20.0, SHANK + 1.0);
    shank(sketch, 26.0, 56.0);
    head(sketch, (16.0, AXIS));
    // Curls of the bar's thread on the shank.
    for x in [34.0, 44.0, 54.0] {
        sketch.path("cross", vec![(x, AXIS - 8.0), (x + 3.0, AXIS - 14.0), (x + 6.0, AXIS - 8.0)], false);
        sketch.path("cross", vec![(x, AXIS + 8.0), (x + 3.0, AXIS + 14.0), (x + 6.0, AXIS + 8.0)], false);
    }
}

pub(super) fn shank_broken(sketch: &mut Sketch) {
    straight(sketch, 62.0, 92.0);
    nut(sketch, 55.0);
    broken(sketch, "part", [55.0, 51.0], SHANK);
    broken(sketch, "part", [22.0, 42.0], SHANK);
    head(sketch, (16.0, AXIS));
}

pub(super) fn bent_shank(sketch: &mut Sketch) {
    straight(sketch, 62.0, 92.0);
    nut(sketch, 55.0);
    let points = vec![
        (55.0, AXIS - SHANK),
        (55.0, AXIS + SHANK),
        (46.0, AXIS + SHANK),
        (20.0, 24.0),
        (26.0, 16.0),
        (49.0, AXIS - SHANK),
    ];
    sketch.path("part", points, true);
    head(sketch, (18.0, 17.0));
    sketch.line("center", (4.0, AXIS), (94.0, AXIS));
}

pub(super) fn ball_out(sketch: &mut Sketch) {
    straight(sketch, 76.0, 92.0);
    shank(sketch, 52.0, 76.0);
    let center = (42.0, AXIS);
    // A head that is open on its far side.
    let around = |radius: f64, eighth: (f64, f64)| (center.0 + radius * eighth.0, center.1 + radius * eighth.1);
    let outer = [(-0.6, -0.8), (-0.2, -0.98), (0.4, -0.92), (1.0, 0.0), (0.4, 0.92), (-0.2, 0.98), (-0.6, 0.8)];
    let outside: Vec<Point> = outer.iter().map(|place| around(17.0, *place)).collect();
    let inside = outer.iter().rev().map(|place| around(11.0, *place));
    sketch.path("part", outside.into_iter().chain(inside).collect(), true);
    sketch.circle("part", (14.0, AXIS + 6.0), 10.0);
    sketch.circle("hole", (14.0, AXIS + 6.0), HOLE);
}

pub(super) fn worn_ball(sketch: &mut Sketch) {
    shank(sketch, 62.0, 92.0);
    let center = (48.0, AXIS);
    sketch.circle("part", center, HEAD + 8.0);
    sketch.circle("hole", center, HEAD + 1.0);
    sketch.circle("part", (44.0, AXIS + 2.0), HEAD - 3.0);
    sketch.circle("hole", (44.0, AXIS + 2.0), HOLE);
    sketch.line("strike", (14.0, 20.0), (14.0, 52.0));
    sketch.arrow("strike", (14.0, 12.0), (0.0, 9.0));
    sketch.arrow("strike", (14.0, 60.0), (0.0, -9.0));
}

pub(super) fn loose_nut(sketch: &mut Sketch) {
    straight(sketch, 54.0, 92.0);
    shank(sketch, 24.0, 54.0);
    nut(sketch, 40.0);
    head(sketch, (16.0, AXIS));
    // The paint line, broken.
    sketch.line("cross", (40.0, AXIS - 3.0), (47.0, AXIS - 3.0));
    sketch.line("cross", (54.0, AXIS + 4.0), (70.0, AXIS + 4.0));
}

pub(super) fn wrong_way(sketch: &mut Sketch) {
    straight(sketch, 60.0, 92.0);
    shank(sketch, 22.0, 56.0);
    nut(sketch, 40.0);
    head(sketch, (14.0, AXIS));
    let turn = vec![(34.0, 18.0), (38.0, 10.0), (46.0, 8.0), (53.0, 13.0)];
    sketch.path("strike", turn, false);
    sketch.arrow("strike", (56.0, 20.0), (-5.0, -8.0));
    sketch.line("cross", (38.0, 54.0), (50.0, 66.0));
    sketch.line("cross", (50.0, 54.0), (38.0, 66.0));
}

pub(super) fn torn_thread(sketch: &mut Sketch) {
    sketch.block("part bar", (50.0, AXIS - 13.0), (92.0, AXIS + 13.0));
    hole(sketch, 50.0, 34.0, SHANK + 1.0);
    sketch.block("part", (24.0, AXIS - SHANK), (60.0, AXIS + SHANK));
    head(sketch, (16.0, AXIS));
    let torn = vec![
        (30.0, AXIS - 4.0),
        (34.0, AXIS + 3.0),
        (37.0, AXIS - 1.0),
        (41.0, AXIS + 4.0),
        (44.0, AXIS - 3.0),
        (48.0, AXIS + 2.0),
    ];
    sketch.path("cross", torn, false);
}

pub(super) fn seized(sketch: &mut Sketch) {
    sketch.block("part bar", (50.0, AXIS - 13.0), (92.0, AXIS + 13.0));
    hole(sketch, 50.0, 34.0, SHANK);
    shank(sketch, 24.0, 50.0);
    head(sketch, (16.0, AXIS));
    for (x, y) in [(46.0, 26.0), (49.0, 22.0), (53.0, 27.0), (46.0, 46.0), (50.0, 50.0), (54.0, 45.0), (58.0, 24.0)] {
        sketch.circle("cross", (x, y), 1.6);
    }
}

pub(super) fn bottomed(sketch: &mut Sketch) {
    sketch.block("part bar", (44.0, AXIS - 13.0), (92.0, AXIS + 13.0));
    hole(sketch, 44.0, 26.0, SHANK + 1.0);
    sketch.block("part", (22.0, AXIS - SHANK), (69.0, AXIS + SHANK));
    nut(sketch, 37.0);
    head(sketch, (16.0, AXIS));
    sketch.line("cross", (70.0, AXIS - 9.0), (70.0, AXIS + 9.0));
}

pub(super) fn wrong_part(sketch: &mut Sketch) {
    for (y, tip) in [(18.0, 60.0), (54.0, 86.0)] {
        sketch.block("part", (18.0, y - SHANK), (tip, y + SHANK));
        sketch.circle("part", (14.0, y), 11.0);
        sketch.circle("hole", (14.0, y), HOLE);
        sketch.line("extension", (tip, y + SHANK + 2.0), (tip, y + BAR + 2.0));
    }
    for y in [AXIS - 3.0, AXIS + 3.0] {
        sketch.line("edge", (40.0, y), (56.0, y));
    }
    sketch.line("cross", (42.0, AXIS + NUT), (54.0, AXIS - NUT));
}
