//! Where the number of each link stands on the rig: on the link, or beside one that stands upright.

use super::super::Point;
use crate::engine::math::{cosine, sine};

/// Places that are tried for a link.
const PLACES: u8 = 36;
/// What a ring keeps off lines and tires.
const CLEAR: f64 = 4.0;

/// How numbers are drawn.
pub(super) struct Balloons {
    /// Radius of the ring.
    pub(super) ring: f64,
    /// Across the place to touch.
    pub(super) touch: f64,
    /// Width and height of the sheet.
    pub(super) sheet: Point,
}

impl Balloons {
    /// Where each number stands, after the point of its link that it belongs to: a finger apart from the others, off the
    /// tires and off other links as far as there is room.
    pub(super) fn place(&self, links: &[(Point, Point)], tires: &[(Point, Point)]) -> Vec<(Point, Point)> {
        let mut found: Vec<Option<(Point, Point)>> = vec![None; links.len()];
        // The shorter a link is, the fewer places it has.
        let mut order: Vec<(usize, (Point, Point))> = links.iter().copied().enumerate().collect();
        order.sort_by(|a, b| apart(a.1.0, a.1.1).total_cmp(&apart(b.1.0, b.1.1)));
        for (own, line) in order {
            let others: Vec<(Point, Point)> =
                links.iter().enumerate().filter(|(index, _)| *index != own).map(|(_, line)| *line).collect();
            let mut best = ((line.0, line.0), f64::NEG_INFINITY);
            for step in 0..PLACES {
                let (from, at) = candidate(line, step);
                let taken = found.iter().flatten().map(|(_, other)| *other);
                let good = self.how_good((from, at), taken, &others, tires) - 0.01 * f64::from(step);
                if good > best.1 {
                    best = ((from, at), good);
                }
            }
            if let Some(place) = found.get_mut(own) {
                *place = Some(best.0);
            }
        }
        found.into_iter().flatten().collect()
    }

    fn how_good(
        &self,
        (from, at): (Point, Point),
        taken: impl Iterator<Item = Point>,
        others: &[(Point, Point)],
        tires: &[(Point, Point)],
    ) -> f64 {
        let ring = self.ring + CLEAR;
        let room = taken.map(|other| apart(at, other)).fold(self.touch, f64::min) / self.touch;
        // What leads there keeps clear too, so that it crosses no other link.
        let half = (f64::midpoint(from.0, at.0), f64::midpoint(from.1, at.1));
        let clear = others.iter().map(|line| off_line(at, *line).min(off_line(half, *line)));
        let clear = clear.fold(ring, f64::min) / ring;
        let dry = tires.iter().map(|tire| off_block(at, *tire)).fold(ring, f64::min) / ring;
        // A ring that sticks out of the sheet is cut off.
        let inside = [at.0, self.sheet.0 - at.0, at.1, self.sheet.1 - at.1].into_iter().fold(ring, f64::min) / ring;
        3.0 * room + clear + 2.0 * dry + 2.0 * inside
    }
}

/// A place to try for the number of a link, after the point that it belongs to.
fn candidate((a, b): (Point, Point), step: u8) -> (Point, Point) {
    if apart(a, b) < 1.0 {
        let (turn, far) = (f64::from(step % 12) * 30.0_f64.to_radians(), 24.0 + 16.0 * f64::from(step / 12));
        return (a, (a.0 + far * cosine(turn), a.1 + far * sine(turn)));
    }
    // From the middle to both ends.
    let side = if step % 2 == 0 { 0.5 } else { -0.5 };
    let share = 0.5 + side * f64::from(step.div_ceil(2)) / 20.0;
    let at = (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1));
    (at, at)
}

/// How far two points are apart.
pub(super) fn apart(a: Point, b: Point) -> f64 {
    distance(a.0 - b.0, a.1 - b.1)
}

fn distance(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

/// How far a point is outside of a block between two corners.
fn off_block(point: Point, (a, b): (Point, Point)) -> f64 {
    let out = |at: f64, a: f64, b: f64| (a.min(b) - at).max(at - a.max(b)).max(0.0);
    distance(out(point.0, a.0, b.0), out(point.1, a.1, b.1))
}

/// How far a point is from the line between two others.
fn off_line(point: Point, (a, b): (Point, Point)) -> f64 {
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    let along = ((point.0 - a.0) * x + (point.1 - a.1) * y) / (x * x + y * y).max(1e-9);
    let along = along.clamp(0.0, 1.0);
    apart(point, (a.0 + along * x, a.1 + along * y))
}
