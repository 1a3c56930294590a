//! What goes wrong around a link: bolts, brackets, and how the axle sits.

use super::{AXIS, crack, straight};
use crate::present::drawing::sketch::Sketch;

pub(super) fn egged_hole(sketch: &mut Sketch) {
    sketch.path("part", vec![(22.0, 66.0), (26.0, 12.0), (70.0, 12.0), (74.0, 66.0)], true);
    let oval =
        [(0.0, -10.0), (12.0, -9.0), (19.0, 0.0), (12.0, 9.0), (0.0, 10.0), (-12.0, 9.0), (-19.0, 0.0), (-12.0, -9.0)];
    sketch.path("hole", oval.iter().map(|(x, y)| (48.0 + x, AXIS + y)).collect(), true);
    sketch.circle("part", (40.0, AXIS), 9.0);
}

pub(super) fn bent_bolt(sketch: &mut Sketch) {
    sketch.block("part", (8.0, 16.0), (18.0, 48.0));
    let shaft = vec![
        (18.0, 26.0),
        (40.0, 26.0),
        (48.0, 34.0),
        (88.0, 34.0),
        (88.0, 46.0),
        (44.0, 46.0),
        (36.0, 38.0),
        (18.0, 38.0),
    ];
    sketch.path("part", shaft, true);
    for x in [74.0, 78.0, 82.0, 86.0] {
        sketch.line("thin", (x, 34.0), (x - 2.0, 46.0));
    }
    sketch.line("cross", (40.0, 20.0), (46.0, 52.0));
}

pub(super) fn torn_bracket(sketch: &mut Sketch) {
    sketch.block("part bar", (6.0, 56.0), (90.0, 66.0));
    sketch.path(
        "part",
        vec![(26.0, 50.0), (34.0, 12.0), (66.0, 4.0), (76.0, 42.0), (62.0, 40.0), (52.0, 47.0), (40.0, 44.0)],
        true,
    );
    sketch.circle("hole", (54.0, 22.0), 7.0);
    sketch.path("cross", vec![(26.0, 55.0), (36.0, 52.0), (46.0, 55.0), (58.0, 52.0), (70.0, 55.0)], false);
}

/// Two wheels, seen from the front or from above.
fn wheels(sketch: &mut Sketch, [left, right]: [(f64, f64); 2], lean: f64) {
    for (x, y) in [left, right] {
        let points =
            vec![(x - 6.0, y - 14.0), (x + 6.0, y - 14.0 + lean), (x + 6.0, y + 14.0 + lean), (x - 6.0, y + 14.0)];
        sketch.path("part", points, true);
    }
}

pub(super) fn bump_steer(sketch: &mut Sketch) {
    wheels(sketch, [(12.0, 44.0), (84.0, 44.0)], 0.0);
    sketch.line("rod", (18.0, 50.0), (78.0, 50.0));
    // Track bar and drag link that do not lie alike.
    sketch.line("force", (20.0, 44.0), (74.0, 30.0));
    sketch.line("cross", (20.0, 40.0), (66.0, 10.0));
}

pub(super) fn skewed(sketch: &mut Sketch) {
    sketch.block("part", (36.0, 4.0), (60.0, 68.0));
    sketch.line("center", (8.0, AXIS), (90.0, AXIS));
    wheels(sketch, [(12.0, 46.0), (84.0, 26.0)], 0.0);
    sketch.line("force", (18.0, 46.0), (78.0, 26.0));
}

pub(super) fn universal_joint(sketch: &mut Sketch) {
    straight(sketch, 4.0, 28.0);
    straight(sketch, 70.0, 92.0);
    sketch.path(
        "part",
        vec![
            (28.0, 24.0),
            (44.0, 14.0),
            (44.0, 24.0),
            (34.0, 32.0),
            (34.0, 40.0),
            (44.0, 48.0),
            (44.0, 58.0),
            (28.0, 48.0),
        ],
        true,
    );
    sketch.path("part", vec![(70.0, 24.0), (54.0, 16.0), (60.0, 36.0), (54.0, 56.0), (70.0, 48.0)], true);
    sketch.block("part", (45.0, 18.0), (52.0, 54.0));
    crack(sketch, (48.0, 26.0), 20.0);
}
