//! The link as it is fitted, and under it where it stands between its stops.

use super::link::{OnSheet, body, letters};
use super::sketch::Sketch;
use super::{Anchor, Drawing, Layout};
use crate::engine::fitting::as_fitted::AsFitted;
use crate::quantity::{System, fit};
use crate::report::Answer;

/// The drawing; empty where no reading says how the link is set.
pub fn as_fitted(answer: &Answer, judged: &AsFitted, system: System, layout: Layout) -> Drawing {
    let Some(([shorter, longer], now)) = judged.stops.zip(judged.length) else { return Drawing::default() };
    let set = as_set(answer, judged, now);
    let width = layout.width();
    let mut sketch = Sketch::new(width, layout.lettering());
    let on = OnSheet::new(&set, layout, [6.0, width - 6.0], 4.0);
    body(&mut sketch, &set, &on);
    let eyes = on.frames.map(|frame| frame.eye);
    let middle = on.bottom() + 4.0 + sketch.ring();
    letters(&mut sketch, eyes, middle, width);
    let under = middle + sketch.ring() + 8.0;
    let height = scale(&mut sketch, [shorter, now, longer], under, width, system);
    let [shorter, now, longer] = [shorter, now, longer].map(|value| fit(value, system));
    let said = format!(
        "The link as it is fitted, {now} eye to eye; its shorter stop is at {shorter}, its longer stop at {longer}."
    );
    sketch.finish(&format!("whole {}", layout.class()), height, said)
}

/// The answer with its ends as they were read; an end without a reading stays as the build sets it.
fn as_set(answer: &Answer, judged: &AsFitted, length: f64) -> Answer {
    let mut set = answer.clone();
    set.link.length = length;
    for (end, read) in set.link.ends.iter_mut().zip(&judged.ends) {
        if let Some((inserted, face)) = read.inserted.zip(read.eye_to_face) {
            (end.inserted, end.eye_to_face) = (inserted, face);
        }
    }
    set
}

/// The range between the stops, enlarged, with where it stands now; where it ends on the sheet.
fn scale(sketch: &mut Sketch, [shorter, now, longer]: [f64; 3], top: f64, width: f64, system: System) -> f64 {
    // Ends that are far from even may have passed one stop each.
    let (least, most) = (shorter.min(now).min(longer), longer.max(now).max(shorter));
    let margin = 14.0;
    // A link without any room is still a point on its scale.
    let per_length = (width - 2.0 * margin) / (most - least).max(1e-6);
    let x = |value: f64| margin + (value - least) * per_length;
    let words = format!("now {}", fit(now, system));
    let row = top + sketch.line_height() + 12.0;
    let at = sketch.clamped(x(now), &words);
    sketch.text("set size", Anchor::Middle, (at, top + sketch.ascent()), &words);
    let beyond = now < shorter - 1e-9 || now > longer + 1e-9;
    let class = if beyond { "over" } else { "mark" };
    sketch.path(class, vec![(x(now) - 6.0, row - 12.0), (x(now) + 6.0, row - 12.0), (x(now), row - 1.0)], true);
    sketch.line("edge", (x(shorter), row), (x(longer), row));
    if beyond {
        let stop = if now > longer { longer } else { shorter };
        sketch.line("cross", (x(stop), row), (x(now), row));
    }
    let under = row + 8.0 + sketch.ascent();
    let stops = [("shorter stop", shorter, Anchor::Start), ("longer stop", longer, Anchor::End)];
    for (name, stop, anchor) in stops {
        sketch.line("edge", (x(stop), row - 6.0), (x(stop), row + 6.0));
        let edge = if anchor == Anchor::Start { 3.0 } else { width - 3.0 };
        sketch.text("note", anchor, (edge, under), name);
        sketch.text("size", anchor, (edge, under + sketch.line_height()), &fit(stop, system));
    }
    let scale = "not to scale";
    let between = sketch.width_of("shorter stop") + 9.0;
    if sketch.fits(scale, between, width - between) {
        sketch.text("faint", Anchor::Middle, (width / 2.0, under), scale);
    }
    under + sketch.line_height() + sketch.descent() + 2.0
}
