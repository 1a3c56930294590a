//! The parts of a link as drawings show them, at any scale: rod end, hole, threaded insert, bar, wrench flats.

use super::sketch::Sketch;
use crate::report::{EndGeometry, LinkGeometry};

/// Depth of a thread on a shank, in pitches.
const THREAD: f64 = 0.55;

/// Where an end sits on the sheet: the eye's place, which way the bar lies, and the scale.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    pub(super) eye: f64,
    pub(super) axis: f64,
    /// 1 when the bar lies to the right of the eye, -1 when to the left.
    pub(super) way: f64,
    /// Sheet units per meter.
    pub(super) scale: f64,
}

impl Frame {
    /// The place on the sheet of a point so far from the eye.
    pub(super) fn x(self, from_eye: f64) -> f64 {
        self.eye + self.way * from_eye * self.scale
    }

    /// Half a diameter on the sheet.
    pub(super) fn half(self, diameter: f64) -> f64 {
        diameter / 2.0 * self.scale
    }
}

/// The diameter to draw a head with; an assumed one when it was not entered.
pub(super) fn head(end: &EndGeometry) -> f64 {
    end.head_diameter.unwrap_or(2.2 * end.thread.major.max(end.bore))
}

/// The most that an end measures across.
pub(super) fn tallest(made: &LinkGeometry, end: &EndGeometry) -> f64 {
    head(end).max(made.outside_diameter).max(end.jam_nut_across)
}

/// What a link measures across so far from eye A.
pub(super) fn across(made: &LinkGeometry, station: f64) -> f64 {
    let [a, b] = &made.ends;
    let (end, from_eye) = if station < made.length / 2.0 { (a, station) } else { (b, made.length - station) };
    if from_eye < head(end) / 2.0 {
        head(end)
    } else if from_eye < end.eye_to_face - end.jam_nut {
        end.thread.major
    } else if from_eye < end.eye_to_face {
        end.jam_nut_across
    } else {
        made.outside_diameter
    }
}

/// The rod end with its ball and jam nut, up to the face of the bar.
pub(super) fn rod_end(sketch: &mut Sketch, at: Frame, end: &EndGeometry) {
    let (eye, axis) = (at.eye, at.axis);
    let shank = at.half(end.thread.major);
    let core = shank - THREAD * end.thread.pitch * at.scale;
    let nut = at.half(end.jam_nut_across);
    let (thread_starts, nut_starts) = (end.eye_to_end - end.thread_length, end.eye_to_face - end.jam_nut);
    // The neck grows out of the head.
    sketch.block("part", (at.x(0.0), axis - shank), (at.x(thread_starts.min(nut_starts)), axis + shank));
    if nut_starts > thread_starts {
        let (from, to) = (at.x(thread_starts), at.x(nut_starts));
        sketch.block("part", (from, axis - shank), (to, axis + shank));
        for y in [axis - core, axis + core] {
            sketch.line("thin", (from, y), (to, y));
        }
    }
    let race = 0.78 * head(end);
    sketch.circle("part", (eye, axis), at.half(head(end)));
    sketch.circle("thin", (eye, axis), at.half(race));
    sketch.circle("thin", (eye, axis), at.half(f64::midpoint(race, end.bore)));
    sketch.circle("hole", (eye, axis), at.half(end.bore));
    sketch.block("part", (at.x(nut_starts), axis - nut), (at.x(end.eye_to_face), axis + nut));
    for y in [axis - nut / 2.0, axis + nut / 2.0] {
        sketch.line("thin", (at.x(nut_starts), y), (at.x(end.eye_to_face), y));
    }
}

/// What cannot be seen from outside: the hole, its thread, the shank in it, and the insert of a tube.
pub(super) fn hidden(sketch: &mut Sketch, at: Frame, end: &EndGeometry, made: &LinkGeometry) {
    let solid = made.bore == 0.0;
    let axis = at.axis;
    let major = at.half(end.thread.major);
    let minor = major - THREAD * end.thread.pitch * at.scale;
    let face = end.eye_to_face;
    let tapped = at.x(face + end.tapped_depth);
    for side in [-1.0, 1.0] {
        sketch.line("hidden", (at.x(face), axis + side * major), (tapped, axis + side * major));
        if solid {
            let (y, shoulder) = (axis + side * minor, at.x(face + end.drill_depth));
            sketch.line("hidden", (at.x(face), y), (shoulder, y));
        }
    }
    sketch.line("hidden", (tapped, axis - major), (tapped, axis + major));
    if solid {
        let shoulder = at.x(face + end.drill_depth);
        let point = (at.x(face + end.drill_point), axis);
        sketch.path("hidden", vec![(shoulder, axis - minor), point, (shoulder, axis + minor)], false);
    }
    let tip = at.x(end.eye_to_end);
    sketch.line("shank", (tip, axis - major), (tip, axis + major));
    insert(sketch, at, end, made.outside_diameter);
}

/// What is welded into a tube: as wide as its bore, with the weld around its rim, or around its flange on the tube's face.
fn insert(sketch: &mut Sketch, at: Frame, end: &EndGeometry, tube: f64) {
    let Some(insert) = end.insert else { return };
    let (outside, inside) = (at.half(insert.outside_diameter), at.half(end.thread.major));
    let (face, last) = (at.x(end.eye_to_face + insert.shoulder), at.x(end.eye_to_face + insert.length));
    // The seam between tube and flange.
    let seam = if insert.kind.has_flange { at.half(tube) } else { outside };
    if insert.kind.has_flange {
        sketch.line("edge", (face, at.axis - seam), (face, at.axis + seam));
    }
    if insert.rosettes {
        let middle = f64::midpoint(face, last);
        sketch.circle("thin", (middle, at.axis), at.half(tube / 4.0));
    }
    for side in [-1.0, 1.0] {
        let (rim, thread) = (at.axis + side * outside, at.axis + side * inside);
        sketch.line("hidden", (last, rim), (last, thread));
        // A groove at the seam, filled. Nobody enters its size: it is drawn as deep as the wall around the thread, within
        // what can be seen.
        let deep = (insert.wall * at.scale).clamp(3.0, 7.0);
        if insert.kind.has_flange {
            let (out, deep) = (at.axis + side * seam, deep.min(4.0));
            sketch.path("weld", vec![(face - deep, out), (face, out - side * deep), (face + deep, out)], true);
        } else {
            sketch.path("weld", vec![(face, rim - deep), (face + at.way * deep, rim), (face, rim + deep)], true);
        }
    }
}

/// The bar between two places on the sheet, with its bore when it is a tube.
pub(super) fn bar(sketch: &mut Sketch, made: &LinkGeometry, from: f64, to: f64, axis: f64, scale: f64) {
    let half = made.outside_diameter / 2.0 * scale;
    sketch.block("part bar", (from, axis - half), (to, axis + half));
    // Between the flanges of its bungs.
    let [a, b] = made.ends.each_ref().map(|end| end.insert.map_or(0.0, |insert| insert.shoulder * scale));
    bore(sketch, made, from + a, to - b, axis, scale);
}

/// The bore of a tube between two places on the sheet.
pub(super) fn bore(sketch: &mut Sketch, made: &LinkGeometry, from: f64, to: f64, axis: f64, scale: f64) {
    let bore = made.bore / 2.0 * scale;
    if bore > 0.0 {
        for y in [axis - bore, axis + bore] {
            sketch.line("hidden", (from, y), (to, y));
        }
    }
}

/// Wrench flats, seen square on: a narrower stretch of the bar with its two edges.
pub(super) fn flats(sketch: &mut Sketch, made: &LinkGeometry, face: f64, axis: f64, scale: f64) {
    // Wider than the bar, they do not cut into it.
    let Some(flats) = made.cut_flats() else { return };
    let (from, to) = (face + flats.start * scale, face + (flats.start + flats.length) * scale);
    let (half, narrow) = (made.outside_diameter / 2.0 * scale, flats.width / 2.0 * scale);
    sketch.block("notch", (from, axis - half - 0.8), (to, axis - narrow));
    sketch.block("notch", (from, axis + narrow), (to, axis + half + 0.8));
    for y in [axis - narrow, axis + narrow] {
        sketch.line("edge", (from, y), (to, y));
    }
    for x in [from, to] {
        sketch.line("edge", (x, axis - half), (x, axis - narrow));
        sketch.line("edge", (x, axis + narrow), (x, axis + half));
    }
}
