//! How to stretch a string along a bent bar, and where to measure.

use super::sketch::{Dimension, Label, Sketch};
use super::{Anchor, Drawing, LETTERING, NARROW, Point};

/// How deep the bar is bent on the sheet: far more than any bar that is kept, so that it shows.
const BOW: f64 = 34.0;
const BAR: f64 = 12.0;
const FROM: f64 = 40.0;
const TO: f64 = NARROW - 40.0;
const AXIS: f64 = 78.0;

/// The drawing.
pub fn string() -> Drawing {
    let mut sketch = Sketch::new(NARROW, LETTERING);
    let at = |share: f64, half: f64| -> Point {
        (FROM + share * (TO - FROM), AXIS + 4.0 * BOW * share * (1.0 - share) + half)
    };
    let shares = (0..=24_u8).map(|step| f64::from(step) / 24.0);
    let top: Vec<Point> = shares.clone().map(|share| at(share, -BAR)).collect();
    let bottom = shares.rev().map(|share| at(share, BAR));
    sketch.path("part bar", top.into_iter().chain(bottom).collect(), true);
    for (x, way) in [(FROM, -1.0), (TO, 1.0)] {
        sketch.block("part", (x, AXIS - 6.0), (x + way * 18.0, AXIS + 6.0));
        sketch.circle("part", (x + way * 24.0, AXIS), 13.0);
        sketch.circle("hole", (x + way * 24.0, AXIS), 5.0);
    }
    let (line, middle) = (AXIS - BAR, f64::midpoint(FROM, TO));
    sketch.line("strike", (FROM, line), (TO, line));
    // The gap is read with a ruler square to the string.
    let deepest = AXIS + BOW - BAR;
    sketch.line("set dimension", (middle, line), (middle, deepest));
    sketch.arrow("set", (middle, line), (0.0, 7.0));
    sketch.arrow("set", (middle, deepest), (0.0, -7.0));
    sketch.text("set size", Anchor::Start, (middle + 8.0, f64::midpoint(line, deepest) + sketch.ascent() / 2.0), "gap");
    sketch.dimension(&Dimension {
        class: "",
        ends: [FROM, TO],
        parts: [line, line],
        row: line - 14.0,
        words: "string, face to face",
        label: Label::Over,
    });
    let bottom = AXIS + BOW + BAR + 12.0;
    let end = sketch.notes(bottom, &["Hollow side. Then turn the bar a quarter and measure again.".to_string()]);
    let words = "A string stretched from face to face along the hollow side of the bar; the gap is measured at its deepest, square to the string.";
    sketch.finish("string", end + 4.0, words.to_string())
}
