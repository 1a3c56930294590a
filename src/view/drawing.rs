//! The link to scale: the whole of it, and end A larger.

use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::quantity::{Kind, System};
use linkwright::report::{Answer, Made, MadeEnd, Verdict};
use std::fmt::Write;

/// Width of the paper in drawing units.
const PAPER: f64 = 1000.0;
/// Blank margin left and right.
const MARGIN: f64 = 60.0;

/// The drawing above the answer.
#[component]
pub(super) fn Drawing() -> impl IntoView {
    let bench = Bench::here();
    (move || match bench.answer() {
        Some(answer) => {
            let system = bench.system.get();
            let words = words::drawing_words(&answer, system);
            view! {
                <figure class="drawing">
                    <div role="img" aria-label=words inner_html=whole(&answer, system)></div>
                    <div aria-hidden="true" inner_html=detail(&answer.link, system)></div>
                </figure>
            }
            .into_any()
        }
        None => ().into_any(),
    })
    .into_any()
}

/// One scale for both directions, so that what is drawn has the link's own proportions.
struct Pen {
    svg: String,
    scale: f64,
    left: f64,
    axis: f64,
}

impl Pen {
    fn x(&self, station: f64) -> f64 {
        self.left + station * self.scale
    }

    fn rect(&mut self, class: &str, from: f64, to: f64, height: f64) {
        let (x, width, h) = (self.x(from.min(to)), (to - from).abs() * self.scale, height * self.scale);
        let _ = write!(
            self.svg,
            r#"<rect class="{class}" x="{x:.2}" y="{:.2}" width="{width:.2}" height="{h:.2}"/>"#,
            self.axis - h / 2.0
        );
    }

    fn line(&mut self, class: &str, x1: f64, y1: f64, x2: f64, y2: f64) {
        let _ = write!(self.svg, r#"<path class="{class}" d="M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}"/>"#);
    }

    fn circle(&mut self, class: &str, at: f64, diameter: f64) {
        let _ = write!(
            self.svg,
            r#"<circle class="{class}" cx="{:.2}" cy="{:.2}" r="{:.2}"/>"#,
            self.x(at),
            self.axis,
            diameter * self.scale / 2.0
        );
    }

    fn text(&mut self, class: &str, x: f64, y: f64, words: &str) {
        let _ = write!(self.svg, r#"<text class="{class}" x="{x:.2}" y="{y:.2}">{words}</text>"#);
    }

    /// A dimension line between two stations at a height, with its words.
    fn dimension(&mut self, from: f64, to: f64, y: f64, words: &str) {
        let (a, b) = (self.x(from), self.x(to));
        for x in [a, b] {
            self.line("extension", x, self.axis, x, y + if y > self.axis { 8.0 } else { -8.0 });
        }
        self.line("dimension", a, y, b, y);
        for (x, way) in [(a, 1.0), (b, -1.0)] {
            let _ = write!(self.svg, r#"<path class="arrow" d="M{x:.2} {y:.2}l{:.2} 5v-10z"/>"#, 14.0 * way);
        }
        self.text("figure", (a + b) / 2.0, y - 10.0, words);
    }

    /// An end: head, ball, shank, jam nut, hole. `eye` is its station, `way` points into the link.
    fn end(&mut self, end: &MadeEnd, eye: f64, way: f64) {
        let face = eye + way * end.eye_to_face;
        let head = end.head_diameter.unwrap_or(1.9 * end.bore);
        let thread = end.thread.major;
        self.rect("hole", face, face + way * end.drill_depth, thread);
        self.rect("shank-in", face, face + way * end.engagement, thread);
        self.rect("shank", eye + way * head * 0.4, face, thread);
        let threads_from = eye + way * (end.eye_to_end - end.thread_length);
        let turns = ((face - threads_from) * way / end.thread.pitch).floor().clamp(0.0, 60.0);
        let half = thread * self.scale / 2.0;
        let mut turn = 0.0;
        while turn < turns {
            let x = self.x(face - way * turn * end.thread.pitch);
            let slope = 0.35
                * end.thread.pitch
                * self.scale
                * if matches!(end.hand, linkwright::document::Hand::Right) { 1.0 } else { -1.0 };
            self.line("thread", x - slope, self.axis - half, x + slope, self.axis + half);
            turn += 1.0;
        }
        self.rect("nut", face - way * end.jam_nut, face, end.jam_nut_across);
        self.circle("head", eye, head);
        self.circle("ball", eye, 0.5 * (head + end.bore));
        self.circle("bore", eye, end.bore);
    }

    fn finish(self, height: f64) -> String {
        format!(r#"<svg viewBox="0 0 {PAPER} {height}" xmlns="http://www.w3.org/2000/svg">{}</svg>"#, self.svg)
    }
}

/// The whole link between its eyes, to scale.
fn whole(answer: &Answer, system: System) -> String {
    let made = &answer.link;
    let mut pen = Pen { svg: String::new(), scale: (PAPER - 2.0 * MARGIN) / made.length, left: MARGIN, axis: 130.0 };
    let [a, b] = &made.ends;
    pen.line("axis", MARGIN - 50.0, 130.0, PAPER - MARGIN + 50.0, 130.0);
    let faces = (a.eye_to_face, made.length - b.eye_to_face);
    pen.rect("bar", faces.0, faces.1, made.outside_diameter);
    if made.bore > 0.0 {
        pen.rect("hole", faces.0, faces.1, made.bore);
    }
    if let Some(flats) = made.flats {
        let start = faces.0 + flats.start;
        pen.rect("flats", start, start + flats.length, flats.width);
    }
    pen.end(a, 0.0, 1.0);
    pen.end(b, made.length, -1.0);
    let size = |value: f64| linkwright::quantity::show(value, Kind::Length, system);
    pen.dimension(0.0, made.length, 46.0, &format!("{} mount to mount", size(made.length)));
    pen.dimension(faces.0, faces.1, 226.0, &format!("{} bar", size(made.bar)));
    for (index, end) in made.ends.iter().enumerate() {
        let x = pen.x(if index == 0 { 0.0 } else { made.length });
        let anchor = if index == 0 { "letter start" } else { "letter stop" };
        pen.text(
            anchor,
            if index == 0 { 10.0 } else { PAPER - 10.0 },
            232.0,
            &format!("{} {}", words::letter(index), words::hand_mark(end.hand)),
        );
        pen.line("extension", x, 130.0, x, 200.0);
    }
    let weakest = answer.weakest.and_then(|index| answer.findings.get(index));
    if let Some((finding, station)) = weakest.and_then(|finding| Some((finding, finding.station?))) {
        let class = if finding.verdict == Verdict::Fails { "weak fails" } else { "weak" };
        let x = pen.x(station.clamp(0.0, made.length));
        let top = pen.axis - made.outside_diameter * pen.scale / 2.0;
        let _ = write!(pen.svg, r#"<path class="{class}" d="M{x:.2} {:.2}l-12 -22h24z"/>"#, top - 3.0);
    }
    pen.finish(260.0)
}

/// End A larger, where engagement and visible thread can be seen.
fn detail(made: &Made, system: System) -> String {
    let end = &made.ends[0];
    let head = end.head_diameter.unwrap_or(1.9 * end.bore);
    let shown = (end.eye_to_face + end.drill_point * 1.08).min(made.length / 2.0);
    let scale = (PAPER - 90.0) / (shown + head / 2.0);
    let half = made.outside_diameter.max(head) * scale / 2.0;
    let axis = half + 90.0;
    let mut pen = Pen { svg: String::new(), scale, left: 20.0 + head * scale / 2.0, axis };
    pen.line("axis", 5.0, axis, PAPER - 5.0, axis);
    pen.rect("bar open", end.eye_to_face, shown, made.outside_diameter);
    pen.end(end, 0.0, 1.0);
    let size = |value: f64| linkwright::quantity::show(value, Kind::FineLength, system);
    let face = end.eye_to_face;
    pen.dimension(0.0, face, 50.0, &format!("{} eye to bar", size(face)));
    pen.dimension(
        face,
        face + end.engagement,
        50.0,
        &format!("{} in", size(end.engagement)).replace(" in in", " in").replace(" mm in", " mm"),
    );
    pen.dimension(
        face,
        face + end.tapped_depth,
        axis + half + 50.0,
        &format!("{} full thread", size(end.tapped_depth)),
    );
    pen.text("caption start", 10.0, axis + half + 66.0, "End A, larger");
    pen.finish(axis + half + 90.0)
}
