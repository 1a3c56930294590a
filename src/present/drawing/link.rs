//! The whole link, to scale, with its lengths and its weakest part written on it.

use super::rod_end::{self, Frame};
use super::sketch::{Dimension, Label, Sketch};
use super::touch::EYE;
use super::{Anchor, Area, Drawing, Layout, Touch};
use crate::present::{verdict, words};
use crate::quantity::System;
use crate::report::Answer;

/// Height that a link may take, so that a short one does not fill the page.
const fn tallest(layout: Layout) -> f64 {
    match layout {
        Layout::Narrow => 150.0,
        Layout::Wide => 120.0,
    }
}

/// Where a link lies on a sheet.
pub(super) struct OnSheet {
    pub(super) frames: [Frame; 2],
    pub(super) axis: f64,
    /// Half the height that the link takes.
    pub(super) half: f64,
    scale: f64,
}

impl OnSheet {
    /// The link as wide as it may be between two places, `top` under the upper edge of the sheet.
    pub(super) fn new(answer: &Answer, layout: Layout, [left, right]: [f64; 2], top: f64) -> Self {
        let made = &answer.link;
        let heads = made.ends.each_ref().map(rod_end::head);
        let highest = made.ends.iter().map(|end| rod_end::tallest(made, end)).fold(0.0, f64::max);
        let long = made.length + (heads[0] + heads[1]) / 2.0;
        let scale = ((right - left) / long).min(tallest(layout) / highest);
        let eye_a = left + (right - left - long * scale) / 2.0 + heads[0] / 2.0 * scale;
        let half = highest / 2.0 * scale;
        let axis = top + half;
        let frame = |eye, way| Frame { eye, axis, way, scale };
        Self { frames: [frame(eye_a, 1.0), frame(eye_a + made.length * scale, -1.0)], axis, half, scale }
    }

    /// The height above the link.
    pub(super) fn top(&self) -> f64 {
        self.axis - self.half
    }

    /// The height under the link.
    pub(super) fn bottom(&self) -> f64 {
        self.axis + self.half
    }

    /// The place on the sheet of a point so far from eye A.
    pub(super) fn x(&self, station: f64) -> f64 {
        self.frames[0].x(station)
    }

    fn faces(&self, answer: &Answer) -> [f64; 2] {
        let [a, b] = &answer.link.ends;
        [self.frames[0].x(a.eye_to_face), self.frames[1].x(b.eye_to_face)]
    }
}

/// Bar, rod ends and what is hidden in them.
pub(super) fn body(sketch: &mut Sketch, answer: &Answer, on: &OnSheet) {
    let made = &answer.link;
    let faces = on.faces(answer);
    rod_end::bar(sketch, made, faces[0], faces[1], on.axis, on.scale);
    rod_end::flats(sketch, made, faces[0], on.axis, on.scale);
    for (frame, end) in on.frames.into_iter().zip(&made.ends) {
        rod_end::rod_end(sketch, frame, end);
        rod_end::hidden(sketch, frame, end, made);
    }
    let past = made.ends.each_ref().map(|end| rod_end::head(end) / 2.0 * on.scale + 4.0);
    let [a, b] = on.frames.map(|frame| frame.eye);
    sketch.line("center", (a - past[0], on.axis), (b + past[1], on.axis));
}

/// The link that is answered for.
pub fn link(answer: &Answer, system: System, layout: Layout) -> Drawing {
    let made = &answer.link;
    let width = layout.width();
    let mut sketch = Sketch::new(width, layout.lettering());
    // Above: what is set, then what is sawn. Below: what yields first, and which end is which.
    let set = sketch.over() + 2.0;
    let sawn = set + sketch.over() + 3.0;
    let on = OnSheet::new(answer, layout, [6.0, width - 6.0], sawn + 10.0);
    let [eye_a, eye_b] = on.frames.map(|frame| frame.eye);
    body(&mut sketch, answer, &on);
    sketch.dimension(&Dimension {
        class: "set",
        ends: [eye_a, eye_b],
        parts: [on.axis; 2],
        row: set,
        words: &words::length(made.length, system),
        label: Label::Over,
    });
    sketch.dimension(&Dimension {
        class: "",
        ends: on.faces(answer),
        parts: [on.axis - made.outside_diameter / 2.0 * on.scale; 2],
        row: sawn,
        words: &format!("bar {}", words::length(made.bar, system)),
        label: Label::Over,
    });
    let below = weakest(&mut sketch, answer, &on, width);
    let height = names(&mut sketch, answer, [eye_a, eye_b], below, width);
    for (frame, end) in on.frames.into_iter().zip(&made.ends) {
        let head = frame.half(rod_end::head(end));
        let area = Area::Block((frame.eye - head, on.top()), (frame.eye + head, on.bottom()));
        sketch.touch(Touch::Part(EYE), area);
    }
    for part in &answer.parts {
        let area = Area::Block((on.x(part.from), on.top()), (on.x(part.to), on.bottom()));
        sketch.touch(Touch::Part(part.part), area);
    }
    sketch.finish(&format!("whole {}", layout.class()), height, verdict::drawing_words(answer, system))
}

/// The name of the weakest part with an arrow to where it is, where it is at one place; where the words end.
fn weakest(sketch: &mut Sketch, answer: &Answer, on: &OnSheet, width: f64) -> f64 {
    let above = on.bottom() + 12.0;
    let Some(finding) = answer.weakest_finding() else { return above };
    let lines = sketch.wrapped(&format!("weakest: {}", finding.part), width - 6.0);
    let mut x = width / 2.0;
    if let Some(station) = finding.station {
        x = on.x(station);
        let y = on.axis + rod_end::across(&answer.link, station) / 2.0 * on.scale + 1.0;
        sketch.arrow("mark", (x, y), (0.0, 10.0));
        sketch.line("leader", (x, y + 9.0), (x, above - 1.0));
    }
    let mut below = above;
    for line in &lines {
        let at = (sketch.clamped(x, line), below + sketch.ascent() + 1.0);
        sketch.text("note", Anchor::Middle, at, line);
        below += sketch.line_height();
    }
    below
}

/// Letters and hands under the eyes; where the sheet ends.
fn names(sketch: &mut Sketch, answer: &Answer, eyes: [f64; 2], below: f64, width: f64) -> f64 {
    let hands = answer.link.ends.each_ref().map(|end| words::hand_mark(end.hand));
    let ring = sketch.ring();
    let middle = below + 4.0 + ring;
    let level = middle + sketch.ascent() / 2.0;
    let [a, b] = letters(sketch, eyes, middle, width);
    sketch.text("note", Anchor::Start, (a + ring + 5.0, level), hands[0]);
    sketch.text("note", Anchor::End, (b - ring - 5.0, level), hands[1]);
    let between = [0, 1].map(|end| ring + 5.0 + sketch.width_of(hands[end]));
    let (scale, under) = ("drawn to scale", middle + ring + 3.0);
    if sketch.fits(scale, a + between[0], b - between[1]) {
        sketch.text("faint", Anchor::Middle, (f64::midpoint(a, b), level), scale);
        return under;
    }
    sketch.text("faint", Anchor::Middle, (f64::midpoint(a, b), under + sketch.ascent()), scale);
    under + sketch.line_height()
}

/// The letters of the two ends under their eyes; where they are.
pub(super) fn letters(sketch: &mut Sketch, eyes: [f64; 2], y: f64, width: f64) -> [f64; 2] {
    let margin = sketch.ring() + 2.0;
    let at = eyes.map(|eye| eye.max(margin).min(width - margin));
    for (x, end) in at.into_iter().zip([0, 1]) {
        sketch.balloon((x, y), words::letter(end));
    }
    at
}

/// A link that nothing is known about yet, with what stands for its length.
pub fn outline(layout: Layout, words: &str) -> Drawing {
    let width = layout.width();
    let mut sketch = Sketch::new(width, layout.lettering());
    let half = 15.0;
    let row = sketch.over() + 2.0;
    let axis = row + 12.0 + half;
    let (a, b) = (half + 8.0, width - half - 8.0);
    sketch.block("ghost", (a + 34.0, axis - 10.0), (b - 34.0, axis + 10.0));
    for (eye, way) in [(a, 1.0), (b, -1.0)] {
        sketch.block("ghost", (eye + way * half, axis - 6.0), (eye + way * 34.0, axis + 6.0));
        sketch.circle("ghost", (eye, axis), half);
        sketch.circle("ghost", (eye, axis), 6.0);
    }
    sketch.line("center", (2.0, axis), (width - 2.0, axis));
    let (ends, parts) = ([a, b], [axis; 2]);
    sketch.dimension(&Dimension { class: "set", ends, parts, row, words, label: Label::Over });
    let middle = axis + half + 6.0 + sketch.ring();
    letters(&mut sketch, [a, b], middle, width);
    let height = middle + sketch.ring() + 3.0;
    let said = "A link with an eye at each end, waiting for its sizes.".to_string();
    sketch.finish(&format!("whole {}", layout.class()), height, said)
}
