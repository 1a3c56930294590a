//! How to measure, in drawings: mount to mount, eye to bar face, a thread by caliper and count, and its hand by slope.

use super::sketch::{Dimension, Label, Sketch};
use super::{Anchor, Drawing, LETTERING, NARROW};
use crate::present::fit::guide::Topic;

/// The drawing of a topic; nothing for what another drawing shows.
pub fn guide(topic: Topic) -> Option<Drawing> {
    match topic {
        Topic::MountToMount => Some(mount_to_mount()),
        Topic::EyeToFace => Some(eye_to_face()),
        Topic::Thread => Some(thread()),
        Topic::Hand => Some(hands()),
        Topic::RodEnd => Some(rod_end()),
        Topic::Bolt => None,
    }
}

fn sketch() -> Sketch {
    Sketch::new(NARROW, LETTERING)
}

const AXIS: f64 = 78.0;

fn mount_to_mount() -> Drawing {
    let mut sketch = sketch();
    let (left, right) = (52.0, 292.0);
    for y in [-7.0, 7.0] {
        sketch.line("ghost", (left, AXIS + y), (right, AXIS + y));
    }
    // Ears hang from the frame and stand up from the axle.
    sketch.block("part bar", (left - 22.0, AXIS - 30.0), (left + 22.0, AXIS + 18.0));
    sketch.block("part bar", (right - 22.0, AXIS - 18.0), (right + 22.0, AXIS + 30.0));
    for x in [left, right] {
        sketch.circle("hole", (x, AXIS), 7.0);
        sketch.line("center", (x - 13.0, AXIS), (x + 13.0, AXIS));
    }
    sketch.dimension(&Dimension {
        class: "set",
        ends: [left, right],
        parts: [AXIS - 32.0, AXIS - 20.0],
        row: 30.0,
        words: "hole center to hole center",
        label: Label::Over,
    });
    let labels = AXIS + 52.0;
    sketch.text("note", Anchor::Middle, (left, labels), "frame");
    sketch.text("note", Anchor::Middle, (right, labels), "axle");
    let notes = ["at ride height, on the tires".to_string(), "three readings, both sides".to_string()];
    let end = sketch.notes(labels + 10.0, &notes);
    sketch.finish("guide", end + 4.0, "Tape from the center of the hole at the frame to the center of the hole at the axle, the rig at ride height on its tires; three readings, both sides.".to_string())
}

/// A rod end in its bar, lying on its axis.
fn rod_end_in_bar(sketch: &mut Sketch, eye: f64, face: f64) {
    sketch.block("part bar", (face, AXIS - 26.0), (NARROW - 8.0, AXIS + 26.0));
    sketch.block("part", (eye + 24.0, AXIS - 11.0), (face, AXIS + 11.0));
    crests(sketch, [face - 60.0, face - 24.0], 11.0);
    sketch.block("part", (face - 24.0, AXIS - 22.0), (face, AXIS + 22.0));
    sketch.circle("part", (eye, AXIS), 30.0);
    sketch.circle("hole", (eye, AXIS), 13.0);
    sketch.line("center", (eye - 38.0, AXIS), (NARROW - 4.0, AXIS));
}

/// Crests of a right-hand thread between two places: on a shank that lies they lean back.
fn crests(sketch: &mut Sketch, [from, to]: [f64; 2], half: f64) {
    let mut x = from;
    while x < to {
        sketch.line("thin", (x + 3.0, AXIS + half), (x, AXIS - half));
        x += 6.0;
    }
}

fn eye_to_face() -> Drawing {
    let mut sketch = sketch();
    let (eye, face) = (48.0, 216.0);
    rod_end_in_bar(&mut sketch, eye, face);
    sketch.text("note", Anchor::Middle, (face - 20.0, AXIS - 34.0), "jam nut");
    sketch.text("note", Anchor::Middle, (292.0, AXIS - 34.0), "bar");
    let row = AXIS + 48.0;
    sketch.dimension(&Dimension {
        class: "set",
        ends: [eye, face],
        parts: [AXIS + 32.0, AXIS + 28.0],
        row,
        words: "eye center to bar face",
        label: Label::Under,
    });
    let notes = ["the face of the bar, not of the jam nut".to_string()];
    let end = sketch.notes(row + sketch.under() + 6.0, &notes);
    sketch.finish(
        "guide",
        end + 4.0,
        "Ruler along the shank from the center of the eye to the face of the bar, not to the jam nut.".to_string(),
    )
}

fn thread() -> Drawing {
    let mut sketch = sketch();
    let (from, to, half) = (20.0, 204.0, 22.0);
    sketch.block("part", (from, AXIS - half), (to, AXIS + half));
    crests(&mut sketch, [from + 4.0, to - 6.0], half);
    // Jaws of the caliper over the crests.
    let jaw = 180.0;
    for way in [-1.0, 1.0] {
        sketch.block("part bar", (jaw - 5.0, AXIS + way * half), (jaw + 5.0, AXIS + way * (half + 26.0)));
    }
    sketch.text("size", Anchor::Start, (to + 12.0, AXIS - 6.0), "caliper");
    sketch.text("note", Anchor::Start, (to + 12.0, AXIS + 14.0), "over crests");
    let row = AXIS + half + 34.0;
    sketch.dimension(&Dimension {
        class: "set",
        ends: [from + 4.0, from + 140.0],
        parts: [AXIS + half; 2],
        row,
        words: "count the crests here",
        label: Label::Under,
    });
    let notes = ["1 in (25.4 mm) or more; the first crest is zero".to_string()];
    let end = sketch.notes(row + sketch.under() + 6.0, &notes);
    sketch.finish("guide", end + 4.0, "Caliper over the crests of the thread; ruler along it, crests counted over 1 in or 25.4 mm or more, the first crest being zero.".to_string())
}

/// How far a crest climbs across a shank, and how far crests lie apart.
const CLIMB: f64 = 10.0;
const CREST_STEP: f64 = 12.0;

fn hands() -> Drawing {
    let mut sketch = sketch();
    let (top, bottom, half) = (14.0, 132.0, 28.0);
    for (middle, way, name, rises) in
        [(92.0, 1.0, "right-hand", "rises right"), (252.0, -1.0, "left-hand", "rises left")]
    {
        sketch.block("part", (middle - half, top), (middle + half, bottom));
        let mut y = top + CLIMB + 6.0;
        while y < bottom - 4.0 {
            // Up on the sheet is a smaller height.
            sketch.line(name, (middle - way * half, y), (middle + way * half, y - CLIMB));
            y += CREST_STEP;
        }
        sketch.text("size", Anchor::Middle, (middle, bottom + 20.0), name);
        sketch.text("note", Anchor::Middle, (middle, bottom + 40.0), rises);
    }
    sketch.finish("guide", bottom + 50.0, "Two shanks held upright: the thread you see rises to the right on a right-hand one and to the left on a left-hand one.".to_string())
}

fn rod_end() -> Drawing {
    let mut sketch = sketch();
    let (eye, end) = (56.0, 300.0);
    sketch.block("part", (eye + 24.0, AXIS - 11.0), (end, AXIS + 11.0));
    crests(&mut sketch, [150.0, end - 4.0], 11.0);
    sketch.circle("part", (eye, AXIS), 32.0);
    sketch.circle("hole", (eye, AXIS), 14.0);
    sketch.text("size", Anchor::Middle, (eye, AXIS + 52.0), "bore");
    let over = 26.0;
    sketch.dimension(&Dimension {
        class: "set",
        ends: [eye, end],
        parts: [AXIS - 34.0, AXIS - 13.0],
        row: over,
        words: "eye center to shank end",
        label: Label::Over,
    });
    let row = AXIS + 34.0;
    sketch.dimension(&Dimension {
        class: "set",
        ends: [150.0, end],
        parts: [AXIS + 11.0; 2],
        row,
        words: "thread length",
        label: Label::Under,
    });
    let height = row + sketch.under() + 8.0;
    sketch.finish("guide", height, "A rod end with its three readings: eye center to shank end, thread length, and the bore or the width of its ball.".to_string())
}
