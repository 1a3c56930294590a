//! Failed bars and tubes.

use super::{AXIS, BAR, NUT, SHANK, bowed, broken, crack, head, nut, shank, straight};
use crate::present::drawing::sketch::Sketch;

pub(super) fn bent(sketch: &mut Sketch) {
    bowed(sketch, [6.0, 90.0], -18.0);
    // The rock under it.
    sketch.path("part", vec![(30.0, 68.0), (38.0, 50.0), (52.0, 44.0), (62.0, 54.0), (66.0, 68.0)], true);
}

pub(super) fn buckled(sketch: &mut Sketch) {
    bowed(sketch, [24.0, 72.0], 20.0);
    for (x, tail) in [(22.0, -16.0), (74.0, 16.0)] {
        sketch.line("force", (x + tail, AXIS - 9.0), (x + tail / 2.0, AXIS - 9.0));
        sketch.arrow("strike", (x, AXIS - 9.0), (tail / 2.0, 0.0));
    }
}

pub(super) fn snapped(sketch: &mut Sketch) {
    broken(sketch, "part bar", [4.0, 44.0], BAR);
    broken(sketch, "part bar", [92.0, 55.0], BAR);
}

pub(super) fn kinked(sketch: &mut Sketch) {
    let points = vec![
        (4.0, 14.0),
        (44.0, 40.0),
        (52.0, 40.0),
        (92.0, 14.0),
        (92.0, 32.0),
        (54.0, 56.0),
        (48.0, 49.0),
        (42.0, 56.0),
        (4.0, 32.0),
    ];
    sketch.path("part bar", points, true);
    sketch.line("cross", (44.0, 42.0), (48.0, 48.0));
    sketch.line("cross", (52.0, 42.0), (48.0, 48.0));
}

pub(super) fn torn_end(sketch: &mut Sketch) {
    broken(sketch, "part bar", [92.0, 64.0], 13.0);
    // The torn ring stays on the shank.
    broken(sketch, "part bar", [38.0, 54.0], 13.0);
    shank(sketch, 24.0, 38.0);
    head(sketch, (16.0, AXIS));
}

pub(super) fn cracked_weld(sketch: &mut Sketch) {
    straight(sketch, 34.0, 92.0);
    for y in [AXIS - BAR + 4.0, AXIS + BAR - 4.0] {
        sketch.line("hidden", (34.0, y), (92.0, y));
    }
    sketch.block("part", (28.0, AXIS - BAR), (34.0, AXIS + BAR));
    sketch.path("weld", vec![(31.0, AXIS - BAR), (34.0, AXIS - BAR - 3.0), (38.0, AXIS - BAR)], true);
    sketch.path("weld", vec![(31.0, AXIS + BAR), (34.0, AXIS + BAR + 3.0), (38.0, AXIS + BAR)], true);
    shank(sketch, 6.0, 28.0);
    crack(sketch, (43.0, AXIS - BAR), 2.0 * BAR);
}

pub(super) fn cracked_flats(sketch: &mut Sketch) {
    let half = 15.0;
    sketch.block("part bar", (4.0, AXIS - half), (92.0, AXIS + half));
    sketch.block("part", (32.0, AXIS - half + 5.0), (66.0, AXIS + half - 5.0));
    for (y, way) in [(AXIS - half, 1.0), (AXIS + half, -1.0)] {
        sketch.block("notch", (32.0, y - way), (66.0, y + way * 4.0));
    }
    crack(sketch, (66.0, AXIS - half + 5.0), 18.0);
}

pub(super) fn straightened(sketch: &mut Sketch) {
    let points = vec![
        (4.0, 26.0),
        (26.0, 30.0),
        (46.0, 24.0),
        (70.0, 30.0),
        (92.0, 26.0),
        (92.0, 44.0),
        (70.0, 48.0),
        (46.0, 42.0),
        (26.0, 48.0),
        (4.0, 44.0),
    ];
    sketch.path("part bar", points, true);
    crack(sketch, (46.0, 24.0), 18.0);
}

pub(super) fn walked_out(sketch: &mut Sketch) {
    straight(sketch, 36.0, 76.0);
    // Many threads at one end, none at the other.
    shank(sketch, 4.0, 29.0);
    nut(sketch, 29.0);
    sketch.block("part", (76.0, AXIS - NUT), (83.0, AXIS + NUT));
    sketch.block("part", (83.0, AXIS - SHANK), (92.0, AXIS + SHANK));
    sketch.line("strike", (27.0, 60.0), (10.0, 60.0));
    sketch.arrow("strike", (4.0, 60.0), (7.0, 0.0));
    sketch.line("strike", (90.0, 60.0), (84.0, 60.0));
    sketch.arrow("strike", (77.0, 60.0), (7.0, 0.0));
}
