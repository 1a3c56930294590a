//! The whole link, to scale, with what matters written on it. Redrawn on every key.

use super::along;
use super::markup::Markup;
use super::parts::{self, Frame};
use super::pen::{Hang, Pen};
use super::state::Bench;
use super::tag::{Piece, tag};
use super::words;
use linkwright::inputs;
use linkwright::quantity::System;
use linkwright::report::Answer;

/// Width of the sheet on a phone and on a desk, in sheet units.
const WIDTHS: [(&str, f64); 2] = [("narrow", 344.0), ("wide", 860.0)];

/// Width of a letter, on the wide side.
const LETTER: f64 = 7.0;

/// Height a link may take, so that a short one does not fill the page.
const TALLEST: f64 = 150.0;

/// The drawing that leads the page.
pub(super) fn drawing(bench: Bench) -> Piece {
    let draw = move || {
        let system = bench.system.get();
        let Some(answer) = bench.answer() else {
            let length = inputs::LENGTH.decided(&bench.document.get(), bench.place());
            let words = length.map_or("mount to mount".to_string(), |length| words::length(length, system));
            return both(|class, width| outline(class, width, &words));
        };
        let (wide, paper) = (bench.wide.get(), bench.printing.get());
        // The one that the screen does not show is only wanted on paper.
        let shown = WIDTHS.into_iter().filter(|(class, _)| paper || wide == (*class == "wide"));
        shown.map(|(class, width)| link(&answer, system, class, width)).collect()
    };
    tag("figure class='drawing leading'").on("click", move |event| along::touched(bench, &event)).markup(draw)
}

/// A drawing for a phone and the same for a desk; the style sheet shows one of them.
pub(super) fn both(draw: impl Fn(&str, f64) -> Markup) -> Markup {
    WIDTHS.into_iter().map(|(class, width)| draw(class, width)).collect()
}

/// A link laid out on a sheet of some width.
pub(super) struct Sheet {
    pub(super) frames: [Frame; 2],
    pub(super) axis: f64,
    /// Half the height that the link takes.
    pub(super) half: f64,
    scale: f64,
}

impl Sheet {
    /// The link as wide as the sheet allows, `top` under its upper edge.
    pub(super) fn new(answer: &Answer, width: f64, top: f64) -> Self {
        let made = &answer.link;
        let [head_a, head_b] = made.ends.each_ref().map(parts::head);
        let tallest = made.outside_diameter.max(head_a).max(head_b);
        let scale = ((width - 12.0) / (made.length + (head_a + head_b) / 2.0)).min(TALLEST / tallest);
        let drawn = (made.length + (head_a + head_b) / 2.0) * scale;
        let eye_a = (width - drawn) / 2.0 + head_a / 2.0 * scale;
        let half = tallest / 2.0 * scale;
        let axis = top + half;
        let frame = |eye, way| Frame { eye, axis, way, scale };
        Self { frames: [frame(eye_a, 1.0), frame(eye_a + made.length * scale, -1.0)], axis, half, scale }
    }

    /// Under the link.
    pub(super) fn bottom(&self) -> f64 {
        self.axis + self.half
    }

    fn faces(&self, answer: &Answer) -> [f64; 2] {
        [0, 1].map(|end| self.frames[end].x(answer.link.ends[end].eye_to_face))
    }
}

/// Bar, rod ends and what is hidden in them.
pub(super) fn link_body(pen: &mut Pen, answer: &Answer, sheet: &Sheet) {
    let made = &answer.link;
    let faces = sheet.faces(answer);
    parts::bar(pen, made, faces[0], faces[1], sheet.axis, sheet.scale);
    parts::flats(pen, made, faces[0], sheet.axis, sheet.scale);
    for (frame, end) in sheet.frames.into_iter().zip(&made.ends) {
        parts::rod_end(pen, frame, end);
        parts::hidden(pen, frame, end, made.bore == 0.0);
    }
    let heads = made.ends.each_ref().map(|end| parts::head(end) / 2.0 * sheet.scale + 4.0);
    pen.line("center", sheet.frames[0].eye - heads[0], sheet.axis, sheet.frames[1].eye + heads[1], sheet.axis);
}

/// Heights of the rows of the sheet, from the top.
struct Rows {
    mounts: f64,
    axis: f64,
    below: f64,
    weakest: f64,
    bar: f64,
    names: f64,
    height: f64,
}

impl Rows {
    fn new(half: f64) -> Self {
        let mounts = 24.0;
        let axis = mounts + 14.0 + half;
        let below = axis + half;
        Self {
            mounts,
            axis,
            below,
            weakest: below + 24.0,
            bar: below + 50.0,
            names: below + 70.0,
            height: below + 83.0,
        }
    }
}

pub(super) fn link(answer: &Answer, system: System, class: &str, width: f64) -> Markup {
    let made = &answer.link;
    let sheet = Sheet::new(answer, width, 38.0);
    let rows = Rows::new(sheet.half);
    let [eye_a, eye_b] = sheet.frames.map(|frame| frame.eye);
    let mut pen = Pen::new();
    link_body(&mut pen, answer, &sheet);
    pen.across("set", eye_a, eye_b, rows.axis, rows.mounts, &words::length(made.length, system));
    let faces = sheet.faces(answer);
    pen.across(
        "",
        faces[0],
        faces[1],
        rows.axis + made.outside_diameter / 2.0 * sheet.scale + 2.0,
        rows.bar,
        &format!("bar {}", words::length(made.bar, system)),
    );
    weakest(&mut pen, answer, sheet.frames[0], &rows, width);
    names(&mut pen, answer, eye_a, eye_b, &rows);
    for (frame, end) in sheet.frames.iter().zip(&made.ends) {
        let head = frame.half(parts::head(end));
        pen.touch("eye", frame.eye - head, rows.axis - sheet.half, frame.eye + head, rows.below);
    }
    for part in &answer.parts {
        let [from, to] = [part.from, part.to].map(|x| sheet.frames[0].x(x));
        pen.touch(part.part, from, rows.axis - sheet.half, to, rows.below);
    }
    pen.svg(&format!("whole {class}"), width, rows.height, &words::drawing_words(answer, system))
}

/// Where to center words near a place, so that they stay on the sheet.
pub(super) fn kept(x: f64, words: &str, width: f64) -> f64 {
    let half = words.chars().count() as f64 * LETTER / 2.0 + 4.0;
    x.max(half).min((width - half).max(half))
}

/// A pointer at the weakest place with its name.
fn weakest(pen: &mut Pen, answer: &Answer, frame: Frame, rows: &Rows, width: f64) {
    let Some(finding) = answer.weakest_finding() else { return };
    let Some(station) = finding.station else { return };
    let x = frame.x(station);
    let y = rows.axis + frame.half(answer.link.outside_diameter) + 1.0;
    pen.arrow("mark", x, y, 0.0, 9.0);
    let words = format!("weakest: {}", finding.part);
    pen.line("leader", x, y + 8.0, x, rows.weakest - 9.0);
    pen.text("note", Hang::Middle, kept(x, &words, width), rows.weakest + 2.0, &words);
}

/// Letters and hands under the eyes.
fn names(pen: &mut Pen, answer: &Answer, eye_a: f64, eye_b: f64, rows: &Rows) {
    let [a, b] = &answer.link.ends;
    let left = eye_a.max(14.0);
    pen.balloon(left, rows.names, "A");
    pen.text("note", Hang::Start, left + 14.0, rows.names + 4.5, words::hand_mark(a.hand));
    pen.balloon(eye_b, rows.names, "B");
    pen.text("note", Hang::End, eye_b - 14.0, rows.names + 4.5, words::hand_mark(b.hand));
    pen.text("faint", Hang::Middle, (eye_a + eye_b) / 2.0, rows.names + 4.5, "drawn to scale");
}

/// A link that nothing is known about yet.
fn outline(class: &str, width: f64, words: &str) -> Markup {
    let half = 15.0;
    let rows = Rows::new(half);
    let (a, b, axis) = (half + 8.0, width - half - 8.0, rows.axis);
    let mut pen = Pen::new();
    pen.block("ghost", a + 34.0, axis - 10.0, b - 34.0, axis + 10.0);
    for (eye, way) in [(a, 1.0), (b, -1.0)] {
        pen.block("ghost", eye + way * half, axis - 6.0, eye + way * 34.0, axis + 6.0);
        pen.circle("ghost", eye, axis, half);
        pen.circle("ghost", eye, axis, 6.0);
    }
    pen.line("center", 2.0, axis, width - 2.0, axis);
    pen.across("set", a, b, axis, rows.mounts, words);
    pen.balloon(a, rows.below + 16.0, "A");
    pen.balloon(b, rows.below + 16.0, "B");
    pen.svg(
        &format!("whole {class}"),
        width,
        rows.below + 30.0,
        "A link with an eye at each end, waiting for its sizes.",
    )
}
