//! The finished bar as a drawing file for the shop: outline, tapped ends or inserts, flats, sizes.
//!
//! Face A is at the origin, the axis runs to the right. Sizes are lines and texts, so that any program shows them.

mod file;

use self::file::{Anchor, File, Layer, Point};
use crate::engine::tables::inserts;
use crate::present::words::{self, hand_mark, length, letter, tap_drill, thread};
use crate::quantity::{INCH, System};
use crate::report::{EndGeometry, LinkGeometry};

/// The finished bar of a link, under a name that says which rig and which link.
pub fn bar(made: &LinkGeometry, name: &str, system: System) -> String {
    let (scale, least) = match system {
        System::Inch => (1.0 / INCH, 0.1),
        System::Metric => (1e3, 2.5),
    };
    let height = (made.outside_diameter * scale / 10.0).max(least);
    let mut sheet = Sheet { file: File::default(), made, system, scale, height };
    sheet.outline();
    for end in 0..made.ends.len() {
        sheet.end(end);
    }
    sheet.flats();
    let past = 2.0 * height;
    sheet.file.line(Layer::Center, (-past, 0.0), (sheet.long() + past, 0.0));
    sheet.sizes();
    sheet.notes(name);
    sheet.file.finish(height)
}

struct Sheet<'a> {
    file: File,
    made: &'a LinkGeometry,
    system: System,
    /// Units of the file in a meter.
    scale: f64,
    /// Height of letters.
    height: f64,
}

impl Sheet<'_> {
    fn long(&self) -> f64 {
        self.made.bar * self.scale
    }

    fn radius(&self) -> f64 {
        self.made.outside_diameter / 2.0 * self.scale
    }

    /// The place so far from the face of an end.
    fn at(&self, end: usize, deep: f64) -> f64 {
        if end == 0 { deep * self.scale } else { self.long() - deep * self.scale }
    }

    /// The same line above and below the axis.
    fn both_sides(&mut self, layer: Layer, from: Point, to: Point) {
        for side in [-1.0, 1.0] {
            self.file.line(layer, (from.0, side * from.1), (to.0, side * to.1));
        }
    }

    /// The bar; of a tube its bore too.
    fn outline(&mut self) {
        let (long, radius) = (self.long(), self.radius());
        self.file.block(Layer::Outline, (0.0, -radius), (long, radius));
        let bore = self.made.bore / 2.0 * self.scale;
        if bore > 0.0 {
            let flange = |end: usize| self.made.ends[end].insert.map_or(0.0, |insert| insert.shoulder);
            let (from, to) = (self.at(0, flange(0)), self.at(1, flange(1)));
            self.both_sides(Layer::Hidden, (from, bore), (to, bore));
        }
    }

    /// The tapped hole of an end, or its insert.
    fn end(&mut self, index: usize) {
        let Some(end) = self.made.ends.get(index) else { return };
        let scale = self.scale;
        let half = |diameter: f64| diameter / 2.0 * scale;
        let (major, minor) = (half(end.thread.major), half(end.hole[0]));
        let (face, tapped) = (self.at(index, 0.0), self.at(index, end.tapped_depth));
        // A countersink of 90° is as deep as it is wider, on each side; thread and hole begin in it.
        let mouth = half(end.countersink);
        let from = |radius: f64| self.at(index, (mouth - radius).max(0.0) / scale);
        let (thread, hole) = (from(major), from(minor));
        self.both_sides(Layer::Hidden, (face, mouth), (hole, minor));
        self.file.line(Layer::Hidden, (hole, -minor), (hole, minor));
        self.both_sides(Layer::Hidden, (thread, major), (tapped, major));
        if let Some(insert) = end.insert {
            let (last, shoulder) = (self.at(index, insert.length), self.at(index, insert.shoulder));
            let outside = half(insert.outside_diameter);
            self.both_sides(Layer::Hidden, (hole, minor), (last, minor));
            self.both_sides(Layer::Hidden, (last, minor), (last, outside));
            if insert.shoulder > 0.0 {
                let radius = self.radius();
                self.file.line(Layer::Outline, (shoulder, -radius), (shoulder, radius));
            }
            return;
        }
        let (shoulder, point) = (self.at(index, end.drill_depth), self.at(index, end.drill_point));
        self.both_sides(Layer::Hidden, (tapped, minor), (tapped, major));
        self.both_sides(Layer::Hidden, (hole, minor), (shoulder, minor));
        self.file.line(Layer::Hidden, (shoulder, -minor), (shoulder, minor));
        self.both_sides(Layer::Hidden, (shoulder, minor), (point, 0.0));
    }

    /// Wrench flats, seen square on, where they cut into the bar.
    fn flats(&mut self) {
        let Some(flats) = self.made.cut_flats() else { return };
        let (from, to) = (self.at(0, flats.start), self.at(0, flats.start + flats.length));
        let (narrow, radius) = (flats.width / 2.0 * self.scale, self.radius());
        self.both_sides(Layer::Outline, (from, narrow), (to, narrow));
        for x in [from, to] {
            self.both_sides(Layer::Outline, (x, narrow), (x, radius));
        }
    }

    /// A size along the bar: two extension lines, a line with arrows, and words over it.
    fn size(&mut self, from: f64, to: f64, row: f64, words: &str) {
        let (radius, height) = (self.radius(), self.height);
        let (left, right) = (from.min(to), from.max(to));
        let way = if row < 0.0 { -1.0 } else { 1.0 };
        for x in [left, right] {
            self.file.line(Layer::Dimension, (x, way * (radius + 0.3 * height)), (x, row + way * 0.5 * height));
        }
        self.file.line(Layer::Dimension, (left, row), (right, row));
        for (x, tail) in [(left, height), (right, -height)] {
            for side in [-0.3, 0.3] {
                self.file.line(Layer::Dimension, (x, row), (x + tail, row + side * height));
            }
        }
        let at = (f64::midpoint(left, right), row + 0.4 * height);
        self.file.text(Layer::Dimension, Anchor::Middle, at, height, words);
    }

    fn sizes(&mut self) {
        let made = self.made;
        let step = 2.6 * self.height;
        let row = |number: usize| -self.radius() - step * (number as f64 + 1.0);
        let rows = [row(0), row(1), row(2), row(3)];
        let said = |name: &str, value: f64| format!("{name}{}", length(value, self.system));
        let mut all: Vec<(f64, f64, f64, String)> = Vec::new();
        for (index, end) in made.ends.iter().enumerate() {
            let face = self.at(index, 0.0);
            let deep: Vec<(&str, f64)> = if made.bore > 0.0 {
                let flange = end.insert.filter(|insert| insert.kind.has_flange);
                match flange {
                    Some(bung) => vec![("BUNG ", end.tapped_depth), ("FLANGE ", bung.shoulder)],
                    None => vec![("INSERT ", end.tapped_depth)],
                }
            } else {
                vec![("TAP ", end.tapped_depth), ("DRILL ", end.drill_depth), ("POINT ", end.drill_point)]
            };
            for ((name, depth), row) in deep.into_iter().zip(rows) {
                all.push((face, self.at(index, depth), row, said(name, depth)));
            }
        }
        all.push((0.0, self.long(), rows[3], said("", made.bar)));
        if let Some(flats) = made.cut_flats() {
            let (from, to) = (self.at(0, flats.start), self.at(0, flats.start + flats.length));
            let above = self.radius() + step;
            all.push((0.0, from, above + step, said("", flats.start)));
            all.push((from, to, above, said("FLATS ", flats.length)));
        }
        for (from, to, row, words) in all {
            self.size(from, to, row, &words);
        }
        // The diameter stands upright past face B.
        let (x, radius, height) = (self.long() + 6.0 * self.height, self.radius(), self.height);
        for y in [-radius, radius] {
            self.file.line(Layer::Dimension, (self.long() + 0.3 * height, y), (x + 0.5 * height, y));
            for side in [-0.3, 0.3] {
                self.file.line(Layer::Dimension, (x, y), (x + side * height, y - height.copysign(y)));
            }
        }
        self.file.line(Layer::Dimension, (x, -radius), (x, radius));
        let across = format!("DIA {}", words::size(made.outside_diameter, made.wall, self.system));
        self.file.text(Layer::Dimension, Anchor::Start, (x + height, -0.5 * height), height, &across);
    }

    /// Above the bar: what it is, what its ends take, and the units.
    fn notes(&mut self, name: &str) {
        let made = self.made;
        let units = match self.system {
            System::Inch => "All coordinates in inches.",
            System::Metric => "All coordinates in millimeters.",
        };
        let mut notes = vec![name.to_string(), format!("Finished bar. {}. {units}", made.material.label)];
        if made.provisional {
            notes.push("Length stands only until the rod ends are measured.".to_string());
        }
        notes.extend(made.ends.iter().enumerate().map(|(index, end)| self.end_note(end, letter(index))));
        notes.extend(words::flats(made, self.system));
        let step = 1.8 * self.height;
        let mut y = self.radius() + 6.5 * self.height + step * notes.len() as f64;
        for note in &notes {
            self.file.text(Layer::Text, Anchor::Start, (0.0, y), self.height, note);
            y -= step;
        }
        for (index, anchor) in [(0, Anchor::End), (1, Anchor::Start)] {
            let x = self.at(index, 0.0) + if index == 0 { -2.5 } else { 2.5 } * self.height;
            self.file.text(Layer::Text, anchor, (x, 0.4 * self.height), self.height, letter(index));
        }
    }

    /// What is welded into a tube at an end.
    fn insert_note(&self, end: &EndGeometry, letter: &str) -> String {
        let (thread, hand) = (thread(end.thread), hand_mark(end.hand));
        let kind = end.insert.map_or(inserts::default_row(), |insert| insert.kind);
        let rosettes = if end.insert.is_some_and(|insert| insert.rosettes) { " Four rosette welds." } else { "" };
        format!("End {letter}: {} {thread} {hand}, {}.{rosettes}", kind.noun, kind.welded)
    }

    fn end_note(&self, end: &EndGeometry, letter: &str) -> String {
        let (thread, hand) = (thread(end.thread), hand_mark(end.hand));
        if self.made.bore > 0.0 {
            return self.insert_note(end, letter);
        }
        let drill = tap_drill(end, self.system);
        format!("End {letter}: tap {thread} {hand}. Tap drill {drill}. Hole drawn at the least minor diameter.")
    }
}
