//! What every drawing is made with: lines, circles, texts, dimensions, arrows and places to touch.

use super::{Anchor, Area, Drawing, Mark, Point, Touch};

/// Width of a letter, as a share of its height: of the wider ones among the usual fonts, in bold.
const LETTER: f64 = 0.6;
/// How high letters reach above the line they stand on, as a share of their height.
const ASCENT: f64 = 0.76;
/// How far they reach below it.
const DESCENT: f64 = 0.24;
/// From one line of words to the next.
const LINE: f64 = 1.2;
/// How far an extension line runs past its dimension line, and how far it stays off the part.
const PAST: f64 = 4.0;
const OFF: f64 = 2.0;
/// Between a dimension line and its words.
const GAP: f64 = 2.0;
/// Length of an arrow head at most, and as a share of the height of letters; half its width as a share of its length.
const ARROW: f64 = 8.0;
const ARROW_SHARE: f64 = 0.48;
const ARROW_HALF: f64 = 0.3;
/// What words keep off the edge of the sheet.
const MARGIN: f64 = 3.0;

/// A drawing in the making.
#[derive(Debug)]
pub(super) struct Sketch {
    width: f64,
    lettering: f64,
    marks: Vec<Mark>,
}

/// A dimension along the sheet.
pub(super) struct Dimension<'a> {
    /// Beside the classes of every dimension; empty for most.
    pub(super) class: &'a str,
    /// From where to where, in any order.
    pub(super) ends: [f64; 2],
    /// The height at which each extension line begins: where the part is.
    pub(super) parts: [f64; 2],
    /// The height of the dimension line.
    pub(super) row: f64,
    /// What it says; empty where that stands elsewhere.
    pub(super) words: &'a str,
    /// Where it says it.
    pub(super) label: Label,
}

/// Where the words of a dimension stand.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Label {
    /// Over the dimension line; where they are wider, clear of the extension lines' tips.
    Over,
    /// Under the dimension line, clear of the tips of extension lines from above.
    Under,
    /// On the line's level, left of it.
    Left,
    /// On the line's level, right of it.
    Right,
}

impl Sketch {
    /// An empty sheet with its width and the height of its letters.
    pub(super) const fn new(width: f64, lettering: f64) -> Self {
        Self { width, lettering, marks: Vec::new() }
    }

    /// How high letters reach.
    pub(super) const fn ascent(&self) -> f64 {
        ASCENT * self.lettering
    }

    /// How far letters reach below their line.
    pub(super) const fn descent(&self) -> f64 {
        DESCENT * self.lettering
    }

    /// From one line of words to the next.
    pub(super) const fn line_height(&self) -> f64 {
        LINE * self.lettering
    }

    /// How high above its dimension line a label [`Label::Over`] may reach.
    pub(super) const fn over(&self) -> f64 {
        PAST + GAP + self.descent() + self.ascent()
    }

    /// How far below its dimension line a label [`Label::Under`] may reach.
    pub(super) const fn under(&self) -> f64 {
        PAST + GAP + self.ascent() + self.descent()
    }

    /// Length of an arrow head of a dimension: small letters have small heads, which stay clear of them.
    const fn head(&self) -> f64 {
        (ARROW_SHARE * self.lettering).min(ARROW)
    }

    /// Radius of a ring around a letter or a number.
    pub(super) const fn ring(&self) -> f64 {
        0.74 * self.lettering
    }

    /// Width of words.
    pub(super) fn width_of(&self, words: &str) -> f64 {
        words.chars().count() as f64 * LETTER * self.lettering
    }

    /// Whether words stand between two lines without touching them.
    pub(super) fn fits(&self, words: &str, from: f64, to: f64) -> bool {
        self.width_of(words) + 2.0 * PAST <= (to - from).abs()
    }

    /// Where to center words near a place, so that they stay between two others.
    pub(super) fn clamped_between(&self, x: f64, words: &str, from: f64, to: f64) -> f64 {
        let half = self.width_of(words) / 2.0;
        x.min(to - half).max(from + half)
    }

    /// Where to center words near a place, so that they stay on the sheet.
    pub(super) fn clamped(&self, x: f64, words: &str) -> f64 {
        self.clamped_between(x, words, MARGIN, self.width - MARGIN)
    }

    /// Words in as few lines as a width allows: after a comma where two lines do, else in lines of like width.
    pub(super) fn wrapped(&self, words: &str, room: f64) -> Vec<String> {
        let fits = |words: &str| self.width_of(words) <= room;
        if fits(words) {
            return vec![words.to_string()];
        }
        if let Some((first, rest)) = words.split_once(", ")
            && fits(first)
            && fits(rest)
        {
            return vec![format!("{first},"), rest.to_string()];
        }
        let mut lines = self.filled(words, room);
        let mut room = room;
        loop {
            room -= self.lettering / 2.0;
            let narrower = self.filled(words, room);
            if room <= 0.0 || narrower.len() > lines.len() || narrower.iter().any(|line| self.width_of(line) > room) {
                return lines;
            }
            lines = narrower;
        }
    }

    /// Words in lines, each as full as a width allows.
    fn filled(&self, words: &str, room: f64) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for word in words.split(' ') {
            match lines.last_mut() {
                Some(line) if self.width_of(line) + self.width_of(word) + self.width_of(" ") <= room => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push(word.to_string()),
            }
        }
        lines
    }

    /// A straight line.
    pub(super) fn line(&mut self, class: &str, from: Point, to: Point) {
        self.marks.push(Mark::Line { class: class.to_string(), from, to });
    }

    /// A line through points; closed when `closed`.
    pub(super) fn path(&mut self, class: &str, points: Vec<Point>, closed: bool) {
        self.marks.push(Mark::Path { class: class.to_string(), points, closed });
    }

    /// A rectangle between two corners, in any order.
    pub(super) fn block(&mut self, class: &str, a: Point, b: Point) {
        self.path(class, vec![a, (b.0, a.1), b, (a.0, b.1)], true);
    }

    /// A circle.
    pub(super) fn circle(&mut self, class: &str, center: Point, radius: f64) {
        self.marks.push(Mark::Circle { class: class.to_string(), center, radius });
    }

    /// Words on one line.
    pub(super) fn text(&mut self, class: &str, anchor: Anchor, at: Point, words: &str) {
        let (class, words) = (class.to_string(), words.to_string());
        self.marks.push(Mark::Text { class, anchor, at, size: self.lettering, words });
    }

    /// Notes under each other from a height on, each in as many lines as it needs; where they end.
    pub(super) fn notes(&mut self, top: f64, notes: &[String]) -> f64 {
        let lines: Vec<String> = notes.iter().flat_map(|note| self.wrapped(note, self.width - 2.0 * MARGIN)).collect();
        let mut y = top;
        for line in &lines {
            self.text("note", Anchor::Start, (MARGIN, y + self.ascent()), line);
            y += self.line_height();
        }
        y
    }

    /// A letter or a number in a ring, as drawings name ends and details.
    pub(super) fn balloon(&mut self, center: Point, letter: &str) {
        self.circle("balloon", center, self.ring());
        // Capitals and digits are as high as their ascent, a little less than the height of all letters.
        self.text("letter", Anchor::Middle, (center.0, center.1 + 0.36 * self.lettering), letter);
    }

    /// A dimension along the sheet: extension lines, a line with an arrow at both ends, and words.
    pub(super) fn dimension(&mut self, dimension: &Dimension) {
        let Dimension { class, ends, parts, row, words, label } = *dimension;
        for (x, part) in ends.into_iter().zip(parts) {
            let way = if row > part { 1.0 } else { -1.0 };
            self.line("extension", (x, part + way * OFF), (x, row + way * PAST));
        }
        let (left, right) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        let head = self.head();
        let inside = right - left > 3.0 * head;
        // Too short for arrows inside, they come from outside.
        let beyond = if inside { 0.0 } else { 2.0 * head };
        let tail = if inside { head } else { -head };
        self.line(&format!("dimension {class}"), (left - beyond, row), (right + beyond, row));
        self.arrow(class, (left, row), (tail, 0.0));
        self.arrow(class, (right, row), (-tail, 0.0));
        let class = format!("size {class}");
        let level = row + self.ascent() / 2.0;
        if words.is_empty() {
            return;
        }
        match label {
            Label::Over => {
                let between = inside && self.fits(words, left, right);
                let y = row - GAP - self.descent() - if between { 0.0 } else { PAST };
                let x = self.clamped(f64::midpoint(left, right), words);
                self.text(&class, Anchor::Middle, (x, y), words);
            }
            Label::Under => {
                let x = self.clamped(f64::midpoint(left, right), words);
                self.text(&class, Anchor::Middle, (x, row + self.under() - self.descent()), words);
            }
            Label::Left => self.text(&class, Anchor::End, (left - beyond - PAST, level), words),
            Label::Right => self.text(&class, Anchor::Start, (right + beyond + PAST, level), words),
        }
    }

    /// A filled arrow head with its point at `tip` and its tail that far away.
    pub(super) fn arrow(&mut self, class: &str, tip: Point, tail: (f64, f64)) {
        let (x, y) = (tip.0 + tail.0, tip.1 + tail.1);
        let (across_x, across_y) = (tail.1 * ARROW_HALF, tail.0 * ARROW_HALF);
        self.path(
            &format!("head {class}"),
            vec![tip, (x + across_x, y + across_y), (x - across_x, y - across_y)],
            true,
        );
    }

    /// A place that can be touched.
    pub(super) fn touch(&mut self, touch: Touch, area: Area) {
        self.marks.push(Mark::Touch { touch, area });
    }

    /// The finished drawing with its class, its height and the words that say the same.
    pub(super) fn finish(self, class: &str, height: f64, words: String) -> Drawing {
        Drawing {
            class: class.to_string(),
            width: self.width,
            height: height.ceil(),
            words,
            millimeters: None,
            marks: self.marks,
        }
    }
}
