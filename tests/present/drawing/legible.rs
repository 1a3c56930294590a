//! Whether the words of a drawing can be read: large enough, on the sheet, crossed by no line and by no other words.

use linkwright::present::drawing::{Anchor, Drawing, Mark, Point};

/// Width of a letter as a share of its height, in bold and otherwise; how far letters reach up and down.
const BOLD: f64 = 0.6;
const LIGHT: f64 = 0.56;
const UP: f64 = 0.73;
const DOWN: f64 = 0.21;

/// Words with the box around them.
struct Words<'a> {
    /// Place among the marks.
    at: usize,
    class: &'a str,
    words: &'a str,
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

fn words(drawing: &Drawing) -> Vec<Words<'_>> {
    let marks = drawing.marks.iter().enumerate();
    marks
        .filter_map(|(place, mark)| {
            let Mark::Text { class, anchor, at, size, words } = mark else { return None };
            let letter = if class.starts_with("size") || class == "letter" { BOLD } else { LIGHT };
            let width = words.chars().count() as f64 * letter * size;
            let left = match anchor {
                Anchor::Start => at.0,
                Anchor::Middle => at.0 - width / 2.0,
                Anchor::End => at.0 - width,
            };
            let (top, bottom) = (at.1 - UP * size, at.1 + DOWN * size);
            Some(Words { at: place, class, words, left, right: left + width, top, bottom })
        })
        .collect()
}

/// Every straight line of a drawing with its class and its place among the marks.
fn lines(drawing: &Drawing) -> Vec<(usize, &str, Point, Point)> {
    let mut found = Vec::new();
    for (place, mark) in drawing.marks.iter().enumerate() {
        match mark {
            Mark::Line { class, from, to } => found.push((place, class.as_str(), *from, *to)),
            Mark::Path { class, points, closed } => {
                found.extend(points.windows(2).map(|pair| (place, class.as_str(), pair[0], pair[1])));
                if *closed && let (Some(first), Some(last)) = (points.first(), points.last()) {
                    found.push((place, class.as_str(), *last, *first));
                }
            }
            _ => {}
        }
    }
    found
}

/// Whether a straight line passes through a box.
fn crosses(words: &Words, from: Point, to: Point) -> bool {
    // The share of the line that lies within both pairs of sides.
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (start, way, low, high) in
        [(from.0, to.0 - from.0, words.left, words.right), (from.1, to.1 - from.1, words.top, words.bottom)]
    {
        if way.abs() < 1e-12 {
            if start <= low || start >= high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / way, (high - start) / way);
        enters = enters.max(a.min(b));
        leaves = leaves.min(a.max(b));
    }
    enters < leaves
}

/// Whether a circle passes through a box.
fn touches(words: &Words, center: Point, radius: f64) -> bool {
    let near = (center.0.clamp(words.left, words.right), center.1.clamp(words.top, words.bottom));
    let far = |at: f64, low: f64, high: f64| (at - low).abs().max((at - high).abs());
    let far = far(center.0, words.left, words.right).hypot(far(center.1, words.top, words.bottom));
    (near.0 - center.0).hypot(near.1 - center.1) < radius && radius < far
}

/// What leaves the sheet.
pub(super) fn inside(drawing: &Drawing) -> Vec<String> {
    let off = |words: &Words| {
        words.left < 0.0 || words.top < 0.0 || words.right > drawing.width || words.bottom > drawing.height
    };
    let told = |words: Words| format!("{:?} leaves the sheet", words.words);
    words(drawing).into_iter().filter(off).map(told).collect()
}

/// How high the letters of a drawing are at least: 16 pixels on a phone, and on a wide sheet where the page leaves it
/// least room.
pub(super) fn least_lettering(drawing: &Drawing) -> f64 {
    if drawing.width > 400.0 { 20.9 } else { 16.7 }
}

/// What is wrong with the words of a drawing.
pub(super) fn legible(drawing: &Drawing) -> Vec<String> {
    legible_from(drawing, least_lettering(drawing))
}

/// The same, where letters may be as small as this.
pub(super) fn legible_from(drawing: &Drawing, least: f64) -> Vec<String> {
    let mut told = inside(drawing);
    if drawing.words.is_empty() {
        told.push("says nothing to somebody who cannot see it".to_string());
    }
    for mark in &drawing.marks {
        if let Mark::Text { size, words, .. } = mark
            && *size < least
        {
            told.push(format!("{words:?} is {size} high"));
        }
    }
    let all = words(drawing);
    for (index, one) in all.iter().enumerate() {
        for other in &all[index + 1..] {
            let apart = one.right <= other.left
                || other.right <= one.left
                || one.bottom <= other.top
                || other.bottom <= one.top;
            if !apart {
                told.push(format!("{:?} and {:?} overlap", one.words, other.words));
            }
        }
        for (place, class, from, to) in lines(drawing) {
            // A ring is filled: what was drawn before it is not seen inside it.
            let covered = one.class == "letter" && place < one.at;
            if !covered && crosses(one, from, to) {
                told.push(format!("{class:?} runs through {:?}", one.words));
            }
        }
    }
    for one in &all {
        for (place, mark) in drawing.marks.iter().enumerate() {
            // The number in a ring comes right after it.
            if let Mark::Circle { class, center, radius } = mark
                && place + 1 != one.at
                && touches(one, *center, *radius)
            {
                told.push(format!("a circle, {class:?}, runs through {:?}", one.words));
            }
        }
    }
    told.sort();
    told.dedup();
    told
}
