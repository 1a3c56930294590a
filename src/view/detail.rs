//! One end, large: ball, jam nut, thread in sight, the tapped hole, with the sizes a builder needs.

use super::markup::Markup;
use super::parts::{self, Frame};
use super::pen::{Hang, Pen};
use super::words;
use linkwright::quantity::{Kind, System, show};
use linkwright::report::{EndGeometry, LinkGeometry};

/// Size of the sheet, in sheet units.
const WIDTH: f64 = 352.0;
/// Bar drawn past the drill point before it is broken off.
const PAST: f64 = 0.014;

/// The detail of an end.
pub(super) fn end(made: &LinkGeometry, index: usize, system: System) -> Markup {
    let Some(end) = made.ends.get(index) else { return Markup::default() };
    let head = parts::head(end);
    let past_eye = end.eye_to_face + end.drill_point.max(end.tapped_depth) + PAST;
    let scale = (WIDTH - 20.0) / (head / 2.0 + past_eye);
    let tallest = head.max(made.outside_diameter).max(end.jam_nut_across);
    let half = tallest / 2.0 * scale;
    let axis = 34.0 + half;
    let below = axis + half;
    let (eye, way) =
        if index == 0 { (10.0 + head / 2.0 * scale, 1.0) } else { (WIDTH - 10.0 - head / 2.0 * scale, -1.0) };
    let at = Frame { eye, axis, way, scale };
    let mut pen = Pen::new();
    broken_bar(&mut pen, made, at, end.eye_to_face, past_eye);
    parts::rod_end(&mut pen, at, end);
    parts::hidden(&mut pen, at, end, made.bore == 0.0);
    pen.line("center", at.x(-head / 2.0) - way * 6.0, axis, at.x(past_eye) + way * 4.0, axis);
    sizes(&mut pen, made, end, at, below, system);
    let letter = words::letter(index);
    pen.balloon(if index == 0 { 14.0 } else { WIDTH - 14.0 }, 14.0, letter);
    pen.svg("detail", WIDTH, below + 138.0, &spoken(end, letter, system))
}

/// The bar with a broken end, as drawings cut a long part short.
fn broken_bar(pen: &mut Pen, made: &LinkGeometry, at: Frame, face: f64, until: f64) {
    let half = at.half(made.outside_diameter);
    let (from, to, axis) = (at.x(face), at.x(until), at.axis);
    let step = 5.0;
    let edge = [(to, axis - half), (to + step, axis - half / 3.0), (to - step, axis + half / 3.0), (to, axis + half)];
    let mut outline = vec![(from, axis + half), (from, axis - half)];
    outline.extend(edge);
    pen.path("part bar", &outline, true);
    if made.bore > 0.0 {
        let bore = at.half(made.bore);
        for y in [axis - bore, axis + bore] {
            pen.line("hidden", from, y, to, y);
        }
    }
}

fn sizes(pen: &mut Pen, made: &LinkGeometry, end: &EndGeometry, at: Frame, below: f64, system: System) {
    let length = |value: f64| words::length(value, system);
    let face = end.eye_to_face;
    let side = at.axis + at.half(made.outside_diameter) + 2.0;
    // Above: what is set with the wrench. Below: what is cut.
    pen.across(
        "",
        at.x(face),
        at.x(end.eye_to_end),
        at.axis - at.half(end.thread.major),
        24.0,
        &format!("thread {}", words::fit(end.engagement, Some(system))),
    );
    pen.across("", at.x(0.0), at.x(face), at.axis + at.half(end.bore), below + 22.0, &length(face));
    pen.across(
        "",
        at.x(face),
        at.x(face + end.tapped_depth),
        side,
        below + 22.0,
        &format!("tap {} deep", length(end.tapped_depth)),
    );
    if made.bore == 0.0 {
        pen.across(
            "",
            at.x(face),
            at.x(face + end.drill_depth),
            side,
            below + 47.0,
            &format!("drill {} deep", length(end.drill_depth)),
        );
        pen.across(
            "",
            at.x(face),
            at.x(face + end.drill_point),
            side,
            below + 72.0,
            &format!("to the point {}", length(end.drill_point)),
        );
    }
    let (x, hang) = if at.way > 0.0 { (4.0, Hang::Start) } else { (WIDTH - 4.0, Hang::End) };
    // Under the sizes: a short hole's would run into them.
    let showing = threads_showing(end);
    let set = format!("{} {}, {showing} showing", words::thread(end.thread), words::hand_mark(end.hand));
    pen.text("note", hang, x, below + 96.0, &set);
    let across = format!("bar {} across", words::trade(made.outside_diameter, Some(system)));
    let drill =
        if made.bore == 0.0 { format!("tap drill {}", words::tap_drill(end, Some(system))) } else { String::new() };
    pen.text("note", hang, x, below + 113.0, &drill);
    pen.text("note", hang, x, below + if made.bore == 0.0 { 130.0 } else { 113.0 }, &across);
}

/// Thread in sight, counted.
pub(super) fn threads_showing(end: &EndGeometry) -> String {
    format!("{} threads", show(end.visible_threads.max(0.0), Kind::Ratio, System::Inch))
}

fn spoken(end: &EndGeometry, letter: &str, system: System) -> String {
    let length = |value: f64| words::length(value, system);
    format!(
        "End {letter} to scale: {} {} shank, {} of it in the bar, {} showing past the jam nut; eye center to bar face {}; tapped {} deep, tap drill {}, drilled {} to the shoulder and {} to the point.",
        words::thread(end.thread),
        end.hand.words(),
        words::fit(end.engagement, Some(system)),
        threads_showing(end),
        length(end.eye_to_face),
        length(end.tapped_depth),
        words::tap_drill(end, Some(system)),
        length(end.drill_depth),
        length(end.drill_point)
    )
}
