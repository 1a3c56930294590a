//! One end, large: ball, jam nut, thread in sight, the tapped hole or the insert, with the sizes a builder needs.

use super::rod_end::{self, Frame};
use super::sketch::{Dimension, Label, Sketch};
use super::{Anchor, Drawing, Layout, NARROW};
use crate::present::ends::threads_showing;
use crate::present::words;
use crate::quantity::System;
use crate::report::{EndGeometry, LinkGeometry};

/// Bar drawn past the end of its hole before it is broken off, in meters and at most as a share of what comes before.
const PAST: f64 = 0.014;
const PAST_SHARE: f64 = 0.09;

/// The detail of an end: A is 0, B is 1. An empty sheet for any other.
pub fn end(made: &LinkGeometry, index: usize, layout: Layout, system: System) -> Drawing {
    let Some(end) = made.ends.get(index) else { return Drawing::default() };
    let mut sketch = Sketch::new(NARROW, layout.detail_lettering());
    let head = rod_end::head(end);
    let hole = end.eye_to_face + end.drill_point.max(end.tapped_depth).max(end.inserted);
    let until = hole + PAST.min(PAST_SHARE * hole);
    let scale = (NARROW - 20.0) / (head / 2.0 + until);
    let half = rod_end::tallest(made, end) / 2.0 * scale;
    let above = sketch.over() + 2.0;
    let axis = above + 10.0 + half;
    let from_edge = 10.0 + head / 2.0 * scale;
    let (eye, way) = if index == 0 { (from_edge, 1.0) } else { (NARROW - from_edge, -1.0) };
    let at = Frame { eye, axis, way, scale };
    broken_bar(&mut sketch, made, at, end, until);
    rod_end::rod_end(&mut sketch, at, end);
    rod_end::hidden(&mut sketch, at, end, made);
    sketch.line("center", (at.x(-head / 2.0) - way * 6.0, axis), (at.x(until) + way * 4.0, axis));
    let detail = Detail { made, end, at, layout, system };
    detail.engaged(&mut sketch, above);
    let below = detail.below(&mut sketch, axis + half);
    let height = detail.notes(&mut sketch, below);
    let letter = words::letter(index);
    let ring = sketch.ring() + 2.0;
    sketch.balloon((if index == 0 { ring } else { NARROW - ring }, ring), letter);
    sketch.finish("detail", height, spoken(made, end, letter, system))
}

/// The bar with a broken end, as drawings cut a long part short.
fn broken_bar(sketch: &mut Sketch, made: &LinkGeometry, at: Frame, end: &EndGeometry, until: f64) {
    let face = end.eye_to_face;
    let half = at.half(made.outside_diameter);
    let (from, to, axis, step) = (at.x(face), at.x(until), at.axis, 5.0);
    let broken = [(to, axis - half), (to + step, axis - half / 3.0), (to - step, axis + half / 3.0), (to, axis + half)];
    let faced = [(from, axis + half), (from, axis - half)];
    sketch.path("part bar", faced.into_iter().chain(broken).collect(), true);
    let flange = at.x(face + end.insert.map_or(0.0, |insert| insert.shoulder));
    rod_end::bore(sketch, made, flange, to, axis, at.scale);
}

/// One end with its place on the sheet.
struct Detail<'a> {
    made: &'a LinkGeometry,
    end: &'a EndGeometry,
    at: Frame,
    layout: Layout,
    system: System,
}

impl Detail<'_> {
    fn has_flange(&self) -> bool {
        self.end.insert.is_some_and(|insert| insert.kind.has_flange)
    }

    fn solid(&self) -> bool {
        self.made.bore == 0.0
    }

    fn length(&self, value: f64) -> String {
        words::length(value, self.system)
    }

    /// The side on which the eye is, of a point on the sheet.
    fn eye_side(&self) -> Label {
        if self.at.way > 0.0 { Label::Left } else { Label::Right }
    }

    fn bar_side(&self) -> Label {
        if self.at.way > 0.0 { Label::Right } else { Label::Left }
    }

    /// The room on the sheet between its edge on the eye's side and the face of the bar.
    fn before_face(&self) -> f64 {
        (if self.at.way > 0.0 { self.face() } else { NARROW - self.face() }) - 3.0
    }

    fn face(&self) -> f64 {
        self.at.x(self.end.eye_to_face)
    }

    /// Above: the thread in the bar, which is set with the wrench.
    fn engaged(&self, sketch: &mut Sketch, row: f64) {
        let (end, at) = (self.end, self.at);
        let shank = at.axis - at.half(end.thread.major);
        let outside = at.axis - at.half(self.made.outside_diameter);
        let ends = [self.face(), at.x(end.eye_to_end)];
        let (parts, label) = ([outside, shank], Label::Over);
        sketch.dimension(&Dimension { class: "", ends, parts, row, words: "", label });
        // Beside the letter in the corner.
        let corner = 2.0 * sketch.ring() + 8.0;
        let room = if at.way > 0.0 { [corner, NARROW - 3.0] } else { [3.0, NARROW - corner] };
        let words = format!("thread {}", words::fit(end.engagement, self.system));
        let middle = sketch.clamped_between(f64::midpoint(ends[0], ends[1]), &words, room[0], room[1]);
        sketch.text("size", Anchor::Middle, (middle, row + sketch.ascent() - sketch.over()), &words);
    }

    /// Below: what the bar is cut to. Where the last row ends.
    fn below(&self, sketch: &mut Sketch, below: f64) -> f64 {
        let (end, at) = (self.end, self.at);
        let face = end.eye_to_face;
        let outside = at.axis + at.half(self.made.outside_diameter);
        let mut row = self.eye_to_face(sketch, below, outside);
        let deep = if self.solid() {
            vec![
                ("tap", " deep", end.tapped_depth),
                ("drill", " deep", end.drill_depth),
                ("point", " deep", end.drill_point),
            ]
        } else {
            let name = if self.has_flange() { "bung" } else { "insert" };
            vec![(name, " long", end.tapped_depth)]
        };
        let uniform = self.uniform(sketch, &deep);
        for (name, more, depth) in deep {
            // A row lies under those before it: only its own extension lines and those of deeper holes pass.
            let free = [self.face(), at.x(face + depth)];
            let short = format!("{name} {}", self.length(depth));
            let whole = format!("{short}{more}");
            let fits = |words: &str, label| self.has_room(sketch, words, label, depth);
            let (words, label) = match uniform {
                Some((true, label)) => (whole, label),
                Some((false, label)) => (short, label),
                None if fits(&short, Label::Over) => (short, Label::Over),
                None if fits(&short, self.eye_side()) => (short, self.eye_side()),
                // Half on one side, half on the other.
                None => (self.length(depth), Label::Over),
            };
            let apart = !words.starts_with(name);
            row += if label == Label::Over { sketch.over() + 3.0 } else { sketch.line_height() + 2.0 };
            sketch.dimension(&Dimension { class: "", ends: free, parts: [outside; 2], row, words: &words, label });
            if apart {
                let (way, level) = (at.way, row + sketch.ascent() / 2.0);
                let anchor = if way > 0.0 { Anchor::End } else { Anchor::Start };
                sketch.text("size", anchor, (self.face() - way * 4.0, level), name);
            }
        }
        row + sketch.ascent() / 2.0
    }

    /// Whether the depths of all rows are said in whole or in short, and where: rows that are alike read best. `None` where
    /// no one way has room for all.
    fn uniform(&self, sketch: &Sketch, deep: &[(&str, &str, f64)]) -> Option<(bool, Label)> {
        // Beside their lines, rows lie closer: paper has to be spared, a phone scrolls.
        let labels = match self.layout {
            Layout::Narrow => [Label::Over, self.eye_side()],
            Layout::Wide => [self.eye_side(), Label::Over],
        };
        let mut ways = [true, false].into_iter().flat_map(|whole| labels.map(|label| (whole, label)));
        ways.find(|(whole, label)| {
            deep.iter().all(|(name, more, depth)| {
                let more = if *whole { more } else { "" };
                self.has_room(sketch, &format!("{name} {}{more}", self.length(*depth)), *label, *depth)
            })
        })
    }

    /// Whether words fit over the line of a depth, or else beside it before the face of the bar.
    fn has_room(&self, sketch: &Sketch, words: &str, label: Label, depth: f64) -> bool {
        if label == Label::Over {
            return sketch.fits(words, self.face(), self.at.x(self.end.eye_to_face + depth));
        }
        sketch.width_of(words) + 4.0 <= self.before_face()
    }

    /// From the eye's center to the bar's face: what a ruler reads. Where its row ends.
    fn eye_to_face(&self, sketch: &mut Sketch, below: f64, outside: f64) -> f64 {
        let (end, at) = (self.end, self.at);
        let words = self.length(end.eye_to_face);
        let mut row = below + 8.0 + sketch.ascent();
        let ends = [at.x(0.0), self.face()];
        let parts = [at.axis + at.half(end.bore), outside];
        let hole = self.end.eye_to_face + end.tapped_depth;
        let mut dimension = Dimension { class: "", ends, parts, row, words: &words, label: Label::Over };
        if sketch.fits(&words, ends[0], ends[1]) {
            row += 4.0;
            dimension.row = row;
            sketch.dimension(&dimension);
        } else if sketch.fits(&words, self.face() + at.way * 20.0, at.x(hole)) {
            dimension.label = self.bar_side();
            sketch.dimension(&dimension);
            row += sketch.ascent() / 2.0;
        } else {
            // Under the line, where the extension line of the eye has ended.
            dimension.words = "";
            sketch.dimension(&dimension);
            row += sketch.line_height() + 4.0;
            let anchor = if at.way > 0.0 { Anchor::End } else { Anchor::Start };
            sketch.text("size", anchor, (self.face() - at.way * 6.0, row - sketch.descent()), &words);
        }
        row
    }

    /// Under the sizes: the thread, the drill and the bar; where the sheet ends.
    fn notes(&self, sketch: &mut Sketch, below: f64) -> f64 {
        let (made, end, units) = (self.made, self.end, self.system);
        let hand = words::hand_mark(end.hand);
        let mut notes = vec![format!("{} {hand}, {} showing", words::thread(end.thread), threads_showing(end))];
        if self.solid() {
            notes.push(format!("tap drill {}", words::tap_drill(end, units)));
            notes.push(format!("bar {} across", words::trade(made.outside_diameter, units)));
        } else {
            notes.extend(welded(end, units));
            notes.push(format!("tube {}", words::size(made.outside_diameter, made.wall, units)));
        }
        sketch.notes(below + 10.0, &notes) + 3.0
    }
}

/// What is welded in at an end, and how.
fn welded(end: &EndGeometry, system: System) -> Vec<String> {
    let Some(insert) = end.insert else { return Vec::new() };
    let (noun, around) = (insert.kind.noun, insert.kind.welded);
    let mut notes = if insert.kind.has_flange {
        vec![format!("{noun}, flange {}", words::fit(insert.shoulder, system)), around.to_string()]
    } else {
        vec![format!("insert {around}")]
    };
    notes.extend(insert.rosettes.then(|| "and by four rosette welds".to_string()));
    notes
}

fn spoken(made: &LinkGeometry, end: &EndGeometry, letter: &str, system: System) -> String {
    let length = |value: f64| words::length(value, system);
    let hole = if made.bore == 0.0 {
        format!(
            "tapped {} deep, tap drill {}, drilled {} to the shoulder and {} to the point",
            length(end.tapped_depth),
            words::tap_drill(end, system),
            length(end.drill_depth),
            length(end.drill_point)
        )
    } else {
        let kind = end.insert.map(|insert| insert.kind);
        let (noun, around) = kind.map_or(("threaded insert", "welded around its rim"), |kind| (kind.noun, kind.welded));
        format!("in a {noun} {} long, {around}", length(end.tapped_depth))
    };
    format!(
        "End {letter} to scale: {} {} shank, {} of it in the bar, {} showing past the jam nut; eye center to bar face {}; {hole}.",
        words::thread(end.thread),
        end.hand.words(),
        words::fit(end.engagement, system),
        threads_showing(end),
        length(end.eye_to_face),
    )
}
