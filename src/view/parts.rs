//! The parts of a link as a draftsman shows them, at any scale.

use super::pen::Pen;
use linkwright::report::{EndGeometry, LinkGeometry};

/// Where an end sits on the sheet: the eye's place, which way the bar lies, and the scale.
#[derive(Clone, Copy)]
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

/// The diameter to draw a head with when the table has none.
pub(super) fn head(end: &EndGeometry) -> f64 {
    end.head_diameter.unwrap_or(2.2 * end.thread.major.max(end.bore))
}

/// The rod end with its ball and jam nut, up to the face of the bar.
pub(super) fn rod_end(pen: &mut Pen, at: Frame, end: &EndGeometry) {
    let axis = at.axis;
    let shank = at.half(end.thread.major);
    let core = at.half(end.thread.major - 1.1 * end.thread.pitch);
    let nut = at.half(end.jam_nut_across);
    let (thread_starts, nut_starts) = (end.eye_to_end - end.thread_length, end.eye_to_face - end.jam_nut);
    // The neck grows out of the head.
    pen.block("part", at.x(0.0), axis - shank, at.x(thread_starts.min(nut_starts)), axis + shank);
    if nut_starts > thread_starts {
        let (from, to) = (at.x(thread_starts), at.x(nut_starts));
        pen.block("part", from, axis - shank, to, axis + shank);
        for y in [axis - core, axis + core] {
            pen.line("thin", from, y, to, y);
        }
    }
    pen.circle("part", at.eye, axis, at.half(head(end)));
    let ball = 0.5 * (head(end) * 0.78 + end.bore);
    pen.circle("thin", at.eye, axis, at.half(head(end) * 0.78));
    pen.circle("thin", at.eye, axis, at.half(ball));
    pen.circle("hole", at.eye, axis, at.half(end.bore));
    pen.block("part", at.x(nut_starts), axis - nut, at.x(end.eye_to_face), axis + nut);
    for y in [axis - nut / 2.0, axis + nut / 2.0] {
        pen.line("thin", at.x(nut_starts), y, at.x(end.eye_to_face), y);
    }
}

/// What cannot be seen from outside: the hole, its thread, and the shank in it.
pub(super) fn hidden(pen: &mut Pen, at: Frame, end: &EndGeometry, solid: bool) {
    let axis = at.axis;
    let (major, minor) = (at.half(end.thread.major), at.half(end.thread.major - 1.1 * end.thread.pitch));
    let face = end.eye_to_face;
    for side in [-1.0, 1.0] {
        pen.line("hidden", at.x(face), axis + side * major, at.x(face + end.tapped_depth), axis + side * major);
        if solid {
            pen.line("hidden", at.x(face), axis + side * minor, at.x(face + end.drill_depth), axis + side * minor);
        }
    }
    pen.line("hidden", at.x(face + end.tapped_depth), axis - major, at.x(face + end.tapped_depth), axis + major);
    if solid {
        let shoulder = at.x(face + end.drill_depth);
        pen.path(
            "hidden",
            &[(shoulder, axis - minor), (at.x(face + end.drill_point), axis), (shoulder, axis + minor)],
            false,
        );
    }
    let tip = at.x(end.eye_to_end);
    pen.line("shank", tip, axis - major, tip, axis + major);
}

/// The bar between two places on the sheet, with its bore when it is a tube.
pub(super) fn bar(pen: &mut Pen, made: &LinkGeometry, from: f64, to: f64, axis: f64, scale: f64) {
    let half = made.outside_diameter / 2.0 * scale;
    pen.block("part bar", from, axis - half, to, axis + half);
    if made.bore > 0.0 {
        let bore = made.bore / 2.0 * scale;
        for y in [axis - bore, axis + bore] {
            pen.line("hidden", from, y, to, y);
        }
    }
}

/// Wrench flats, seen square on: a narrower stretch of the bar with its two edges.
pub(super) fn flats(pen: &mut Pen, made: &LinkGeometry, face: f64, axis: f64, scale: f64) {
    let Some(flats) = made.flats else { return };
    let (from, to) = (face + flats.start * scale, face + (flats.start + flats.length) * scale);
    let (half, narrow) = (made.outside_diameter / 2.0 * scale, flats.width / 2.0 * scale);
    pen.block("notch", from, axis - half - 0.8, to, axis - narrow);
    pen.block("notch", from, axis + narrow, to, axis + half + 0.8);
    for y in [axis - narrow, axis + narrow] {
        pen.line("edge", from, y, to, y);
    }
    for x in [from, to] {
        pen.line("edge", x, axis - half, x, axis - narrow);
        pen.line("edge", x, axis + narrow, x, axis + half);
    }
}
