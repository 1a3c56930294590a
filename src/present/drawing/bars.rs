//! The bars of a cut plan, to scale: blanks with their lengths, cuts, and what is left.

use super::sketch::Sketch;
use super::{Anchor, Drawing, Layout};
use crate::engine::shop::cut_plan::{Bar, CutPlan};
use crate::present::make::cut_plan::{alike, bar_name, left, rows};
use crate::present::words::{Units, length};
use crate::quantity::System;

/// Height of a bar on the sheet.
const fn high(layout: Layout) -> f64 {
    match layout {
        Layout::Narrow => 26.0,
        Layout::Wide => 32.0,
    }
}

/// Between the lines that mark what is kept.
const HATCH: f64 = 7.0;

/// Every bar of a plan under the other, those alike once; an empty drawing where nothing is cut.
pub fn bars(plan: &CutPlan, system: System, layout: Layout) -> Drawing {
    let longest = plan.bars.iter().map(|bar| bar.stock.length).fold(0.0, f64::max);
    if longest <= 0.0 {
        return Drawing::default();
    }
    let mut sketch = Sketch::new(layout.width(), layout.lettering());
    let scale = (layout.width() - 6.0) / longest;
    let mut top = 3.0;
    for (bar, count) in alike(plan) {
        let many = if count > 1 { format!("{count} × ") } else { String::new() };
        let name = format!("{many}{}", bar_name(bar, Units::In(system)));
        top = lines(&mut sketch, &name, "size", top, layout.width());
        one(&mut sketch, bar, scale, top + 3.0, layout, system);
        top += high(layout) + 6.0;
        top = lines(&mut sketch, &said(bar, system), "note", top, layout.width()) + 10.0;
    }
    let told = rows(plan, system);
    let words = format!("Bars to scale. {}: {}.", told.title, told.summary.trim_end_matches('.'));
    sketch.finish(&format!("bars {}", layout.class()), top, words)
}

/// Words in as many lines as they need; where they end.
fn lines(sketch: &mut Sketch, words: &str, class: &str, top: f64, width: f64) -> f64 {
    let mut y = top;
    for line in sketch.wrapped(words, width - 6.0) {
        sketch.text(class, Anchor::Start, (3.0, y + sketch.ascent()), &line);
        y += sketch.line_height();
    }
    y
}

/// The lengths of a bar in their order, and what is left: `2 × 40 in, 36 in; left 17-1/2 in, keep`.
fn said(bar: &Bar, system: System) -> String {
    let mut alike: Vec<(String, usize)> = Vec::new();
    for piece in &bar.pieces {
        let words = length(piece.length, system);
        match alike.last_mut() {
            Some((other, count)) if *other == words => *count += 1,
            _ => alike.push((words, 1)),
        }
    }
    let one = |(words, count): (String, usize)| if count > 1 { format!("{count} × {words}") } else { words };
    let cuts: Vec<String> = alike.into_iter().map(one).collect();
    format!("{}; left: {}", cuts.join(", "), left(bar, system.into()))
}

/// One bar: its outline, its blanks, the cuts between them, and the piece that is kept.
fn one(sketch: &mut Sketch, bar: &Bar, scale: f64, top: f64, layout: Layout, system: System) {
    let (bottom, x) = (top + high(layout), |at: f64| 3.0 + at * scale);
    sketch.block("ghost", (x(0.0), top), (x(bar.stock.length), bottom));
    for piece in &bar.pieces {
        let (from, to) = (x(piece.from), x(piece.from + piece.length));
        sketch.block("part", (from, top), (to, bottom));
        let words = length(piece.length, system);
        if sketch.fits(&words, from, to) {
            let level = f64::midpoint(top, bottom) + 0.36 * layout.lettering();
            sketch.text("size", Anchor::Middle, (f64::midpoint(from, to), level), &words);
        }
    }
    if bar.kept {
        hatch(sketch, x(bar.stock.length - bar.left), x(bar.stock.length), top, bottom);
    }
}

/// Slanting lines between four sides.
fn hatch(sketch: &mut Sketch, left: f64, right: f64, top: f64, bottom: f64) {
    sketch.block("edge", (left, top), (right, bottom));
    let high = bottom - top;
    let mut foot = left + HATCH;
    while foot < right + high {
        // From the lower edge up to the left, cut off at both sides.
        let (from, to) = (foot.min(right), (foot - high).max(left));
        sketch.line("thin", (from, bottom - (foot - from)), (to, bottom - (foot - to)));
        foot += HATCH;
    }
}
