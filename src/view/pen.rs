//! A pen that writes SVG. Lines carry classes; the style sheets decide weight, dash and color.

use super::markup::{Markup, attribute, element, said};
use std::fmt::Write;

/// What has been drawn so far.
pub(super) struct Pen {
    ink: String,
}

/// Where a text hangs on its point.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Hang {
    /// Begins there.
    Start,
    /// Is centered there.
    Middle,
    /// Ends there.
    End,
}

/// Coordinates to hundredths, finer than any screen.
fn hundredths<const N: usize>(places: [f64; N]) -> [String; N] {
    places.map(|place| format!("{place:.2}"))
}

impl Pen {
    /// An empty sheet.
    pub(super) fn new() -> Self {
        Self { ink: String::new() }
    }

    fn put(&mut self, element: std::fmt::Arguments) {
        // Writing into a string cannot fail.
        let _ = self.ink.write_fmt(element);
    }

    /// A straight line.
    pub(super) fn line(&mut self, class: &str, x1: f64, y1: f64, x2: f64, y2: f64) {
        let [x1, y1, x2, y2] = hundredths([x1, y1, x2, y2]);
        self.put(format_args!(r#"<path class="{class}" d="M{x1} {y1}L{x2} {y2}"/>"#));
    }

    /// A line through points; closed when `close`.
    pub(super) fn path(&mut self, class: &str, points: &[(f64, f64)], close: bool) {
        self.put(format_args!(r#"<path class="{class}" d=""#));
        for (index, (x, y)) in points.iter().enumerate() {
            let [x, y] = hundredths([*x, *y]);
            self.put(format_args!("{}{x} {y}", if index == 0 { 'M' } else { 'L' }));
        }
        self.put(format_args!("{}\"/>", if close { "Z" } else { "" }));
    }

    /// A rectangle between two corners, in any order.
    pub(super) fn block(&mut self, class: &str, x1: f64, y1: f64, x2: f64, y2: f64) {
        self.path(class, &[(x1, y1), (x2, y1), (x2, y2), (x1, y2)], true);
    }

    /// A circle.
    pub(super) fn circle(&mut self, class: &str, x: f64, y: f64, radius: f64) {
        let [x, y, radius] = hundredths([x, y, radius]);
        self.put(format_args!(r#"<circle class="{class}" cx="{x}" cy="{y}" r="{radius}"/>"#));
    }

    /// Words.
    pub(super) fn text(&mut self, class: &str, hang: Hang, x: f64, y: f64, words: &str) {
        let anchor = match hang {
            Hang::Start => "start",
            Hang::Middle => "middle",
            Hang::End => "end",
        };
        let [x, y] = hundredths([x, y]);
        let open = format!(r#"text class="{class}" text-anchor="{anchor}" x="{x}" y="{y}""#);
        self.ink += &said(open, words).written();
    }

    /// A letter in a ring, as drawings name ends and details.
    pub(super) fn balloon(&mut self, x: f64, y: f64, letter: &str) {
        self.circle("balloon", x, y, 9.0);
        self.text("letter", Hang::Middle, x, y + 4.3, letter);
    }

    /// A dimension along the link: extension lines from `from`, arrows inside, words over the line.
    pub(super) fn across(&mut self, class: &str, x1: f64, x2: f64, from: f64, y: f64, words: &str) {
        let past = if y > from { 4.0 } else { -4.0 };
        for x in [x1, x2] {
            self.line("extension", x, from, x, y + past);
        }
        let (left, right) = (x1.min(x2), x1.max(x2));
        self.line(&format!("dimension {class}"), left, y, right, y);
        if right - left > 16.0 {
            self.arrow(class, left, y, 7.0, 0.0);
            self.arrow(class, right, y, -7.0, 0.0);
        } else {
            // Too short for arrows inside: strokes across, as on a builder's sketch.
            for x in [left, right] {
                self.line(&format!("dimension {class}"), x - 3.0, y + 3.0, x + 3.0, y - 3.0);
            }
        }
        self.text(&format!("size {class}"), Hang::Middle, (left + right) / 2.0, y - 4.0, words);
    }

    /// A filled arrow head whose point is at `x`, `y` and whose tail lies `dx`, `dy` away.
    pub(super) fn arrow(&mut self, class: &str, x: f64, y: f64, dx: f64, dy: f64) {
        let (wide_x, wide_y) = (dy * 0.35, dx * 0.35);
        self.path(
            &format!("head {class}"),
            &[(x, y), (x + dx + wide_x, y + dy + wide_y), (x + dx - wide_x, y + dy - wide_y)],
            true,
        );
    }

    /// A place that can be touched, named for the part under it.
    pub(super) fn touch(&mut self, part: &str, x1: f64, y1: f64, x2: f64, y2: f64) {
        let [x1, y1, x2, y2] = hundredths([x1, y1, x2, y2]);
        let open = attribute("path class=\"touch\"", "data-part", part);
        self.put(format_args!(r#"<{open} d="M{x1} {y1}H{x2}V{y2}H{x1}Z"/>"#));
    }

    /// A piece of a rig that can be touched.
    pub(super) fn touch_piece(&mut self, link: usize, x: f64, y: f64, radius: f64) {
        let [x, y, radius] = hundredths([x, y, radius]);
        self.put(format_args!(r#"<circle class="touch" data-piece="{link}" cx="{x}" cy="{y}" r="{radius}"/>"#));
    }

    /// A point of a plot that can be touched: a ring for what holds, a cross for what does not.
    pub(super) fn mark(&mut self, metal: &str, x: f64, y: f64, holds: bool) {
        if holds {
            self.circle("ring", x, y, 6.0);
        } else {
            self.line("cross", x - 5.0, y - 5.0, x + 5.0, y + 5.0);
            self.line("cross", x - 5.0, y + 5.0, x + 5.0, y - 5.0);
        }
        let [x, y] = hundredths([x, y]);
        let open = attribute("circle class=\"touch\"", "data-metal", metal);
        self.put(format_args!(r#"<{open} cx="{x}" cy="{y}" r="24"/>"#));
    }

    /// The finished drawing with the sentence that says the same.
    pub(super) fn svg(self, class: &str, width: f64, height: f64, words: &str) -> Markup {
        let [width, height] = [width, height].map(|size| format!("{size:.0}"));
        let open = format!(r#"svg class="{class}" viewBox="0 0 {width} {height}" role="img""#);
        element(attribute(&open, "aria-label", words), Markup::drawn(self.ink))
    }
}
