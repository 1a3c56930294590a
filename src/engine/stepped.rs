//! A link whose section changes along its length, resting on its two ball centers: exact bending, deflection and
//! buckling by carrying two numbers from piece to piece (a transfer matrix).
//!
//! Under a compression `N` the moment of a piece obeys `M″ = −k²·M` with `k = √(N / EI)`, and both the moment and its slope
//! (the shear in the bent shape) are the same on either side of a step. So a unit slope at an eye, carried piece
//! by piece, gives the lever `u` with its slope `u′`, and everything else follows from the levers of the two eyes.

use crate::engine::math::{cosine, direction, sine, squared};
use std::f64::consts::PI;

use super::formulas::{columns, stepped};
use super::roots::crossing;

/// A piece of one section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Along the link, m.
    pub length: f64,
    /// Modulus of elasticity, Pa.
    pub modulus: f64,
    /// Second moment of area, m⁴.
    pub second_moment: f64,
}

/// Below this compression, in N, a link is worked out as not compressed at all.
const NO_COMPRESSION: f64 = 1e-6;
/// Rounds in which the critical load is sought upward; a handful is enough.
const ROUNDS: u32 = 100;
/// Steps of the secant rule; five are usual.
const SECANTS: u32 = 12;
/// How far past the straight line to step, so that the next value lies on the other side.
const WIDEN: f64 = 1.3;

/// Length of a link, m.
pub fn length(steps: &[Step]) -> f64 {
    steps.iter().map(|step| step.length).sum()
}

/// Deflection under a load at a place, for each unit of it, m/N; by the work of a unit load.
pub fn deflection_per_force(steps: &[Step], at: f64) -> f64 {
    let whole = length(steps);
    let moment = |x: f64| if x <= at { x * (1.0 - at / whole) } else { at * (1.0 - x / whole) };
    let mut from = 0.0;
    let mut deflection = 0.0;
    for step in steps {
        let to = from + step.length;
        // The moment has a corner at the load.
        let corner = at.max(from).min(to);
        for (a, b) in [(from, corner), (corner, to)] {
            if b > a {
                deflection +=
                    stepped::PIECE_DEFLECTION.value(&[moment(a), moment(b), b - a, step.modulus, step.second_moment]);
            }
        }
        from = to;
    }
    deflection
}

/// The compression at which a straight link buckles, N, were nothing to yield.
///
/// The bent shape turns through half a wave between the eyes. Its phase grows steadily with the compression, so there is one
/// compression at which it is exactly half a wave; NaN when a piece has no stiffness.
pub fn critical_load(steps: &[Step]) -> f64 {
    let whole = length(steps);
    // Half a wave over the whole length, each piece counted by how much it bends in it: close, and never far off.
    let mut from = 0.0;
    let mut deflection = 0.0;
    for step in steps {
        let turn = |x: f64| x / whole - sine(2.0 * PI * x / whole) / (2.0 * PI);
        deflection += (turn(from + step.length) - turn(from)) / (step.modulus * step.second_moment);
        from += step.length;
    }
    let guess = columns::EULER_LOAD.value(&[1.0, 1.0 / deflection, whole]).sqrt();
    if !guess.is_finite() || guess <= 0.0 {
        return f64::NAN;
    }
    // Close to the guess the lever from eye to eye goes straight through zero, so the secant rule gets there at once;
    // that it is the first zero and not a later one shows in the phase.
    let whole = |compression: f64| carry_over(steps, compression);
    let (mut before, mut now) = (0.98 * guess * guess, guess * guess);
    let (mut left_before, mut left) = (whole(before), whole(now));
    for _ in 0..SECANTS {
        let next = now - left * (now - before) / (left - left_before);
        (before, left_before, now) = (now, left, next);
        if !(now.is_finite() && now > 0.0) {
            break;
        }
        if (now - before).abs() <= 1e-12 * now {
            if (phase(steps, now) - PI).abs() < 1e-6 {
                return now;
            }
            break;
        }
        left = whole(now);
    }
    critical_load_by_phase(steps, guess)
}

/// The same for links so uneven that the guess is far off: the phase only ever grows with the compression.
fn critical_load_by_phase(steps: &[Step], guess: f64) -> f64 {
    let missing = |root: f64| phase(steps, root * root) - PI;
    let (mut low, mut high) = ((0.0, -PI), (guess, missing(guess)));
    for _ in 0..ROUNDS {
        if high.1 > 0.0 {
            return squared(crossing(low, high, 1e-13 * guess, missing));
        }
        low = high;
        let above = high.0 * (1.0 - WIDEN * high.1 / PI) + 1e-9 * guess;
        high = (above, missing(above));
    }
    f64::NAN
}

/// The lever carried from eye to eye.
fn carry_over(steps: &[Step], compression: f64) -> f64 {
    let Some((last, before)) = steps.split_last() else { return 0.0 };
    let at = before.iter().fold((0.0, 1.0), |at, step| carry(at, step, compression, step.length));
    lever(at, last, compression, last.length)
}

/// Phase that the bent shape has turned through from eye to eye.
fn phase(steps: &[Step], compression: f64) -> f64 {
    let mut phase = 0.0_f64;
    let mut before: Option<f64> = None;
    for step in steps {
        let wave = wave(step, compression);
        if let Some(before) = before {
            // Moment and slope stay the same over a step, so the tangent of the phase changes with the wave number.
            let ratio = wave / before;
            let (up, along) = (sine(phase), cosine(phase));
            phase += direction((ratio - 1.0) * up * along, along * along + ratio * up * up);
        }
        phase += wave * step.length;
        before = Some(wave);
    }
    phase
}

fn wave(step: &Step, compression: f64) -> f64 {
    columns::WAVE_NUMBER.value(&[compression, step.modulus, step.second_moment])
}

/// The place nearest to a wish inside a zone.
pub fn in_zone(wish: f64, [begins, ends]: [f64; 2]) -> f64 {
    wish.max(begins).min(ends)
}

/// The levers of a link under one compression.
#[derive(Debug, Clone)]
pub struct Levers<'a> {
    steps: &'a [Step],
    compression: f64,
    length: f64,
    /// Lever and slope at the beginning of each piece, from eye A; the last is at eye B.
    from_a: Vec<(f64, f64)>,
    /// The same from eye B, at the end of each piece, in order from eye A; the first is at eye A.
    from_b: Vec<(f64, f64)>,
    /// Where the lever from eye A is greatest, and where the one from eye B is.
    peaks: [f64; 2],
}

impl<'a> Levers<'a> {
    /// The levers under a compression of 0 or more, N.
    pub fn new(steps: &'a [Step], compression: f64) -> Self {
        let carry_all = |steps: &mut dyn Iterator<Item = &Step>| {
            let mut at = (0.0, 1.0);
            let mut all = Vec::with_capacity(steps.size_hint().0 + 1);
            all.push(at);
            for step in steps {
                at = carry(at, step, compression, step.length);
                all.push(at);
            }
            all
        };
        let from_a = carry_all(&mut steps.iter());
        let mut from_b = carry_all(&mut steps.iter().rev());
        from_b.reverse();
        let mut levers = Self { steps, compression, length: length(steps), from_a, from_b, peaks: [0.0; 2] };
        levers.peaks = [levers.peak_from_a(), levers.peak_from_b()];
        levers
    }

    /// The levers of a place and of the strike in a zone that bends it most: the one on the place itself, or, under a
    /// great compression, one nearer the middle.
    pub fn worst(&self, station: f64, zone: [f64; 2]) -> (f64, f64) {
        let [begins, ends] = zone;
        let [from_a, from_b] = self.peaks;
        let beyond = (station <= ends)
            .then(|| (self.from_a(station), self.from_b(in_zone(from_b, [begins.max(station), ends]))));
        let before = (station >= begins)
            .then(|| (self.from_b(station), self.from_a(in_zone(from_a, [begins, ends.min(station)]))));
        match (beyond, before) {
            (Some(beyond), Some(before)) if before.0 * before.1 > beyond.0 * beyond.1 => before,
            (Some(beyond), _) => beyond,
            (None, Some(before)) => before,
            (None, None) => (f64::NAN, f64::NAN),
        }
    }

    fn peak_from_a(&self) -> f64 {
        let mut begins = 0.0;
        for (index, step) in self.steps.iter().enumerate() {
            let (lever, slope) = self.from_a[index];
            if slope > 0.0 && self.from_a[index + 1].1 <= 0.0 {
                let wave = wave(step, self.compression);
                return begins + direction(slope, wave * lever) / wave;
            }
            begins += step.length;
        }
        self.length
    }

    fn peak_from_b(&self) -> f64 {
        let mut ends = self.length;
        for (index, step) in self.steps.iter().enumerate().rev() {
            let (lever, slope) = self.from_b[index + 1];
            if slope > 0.0 && self.from_b[index].1 <= 0.0 {
                let wave = wave(step, self.compression);
                return ends - direction(slope, wave * lever) / wave;
            }
            ends -= step.length;
        }
        0.0
    }

    /// The lever carried from eye A to a place.
    pub fn from_a(&self, x: f64) -> f64 {
        let (piece, begins) = self.piece_at(x);
        lever(self.from_a[piece], &self.steps[piece], self.compression, x - begins)
    }

    /// The lever carried from eye B to a place.
    pub fn from_b(&self, x: f64) -> f64 {
        let (piece, begins) = self.piece_at(x);
        let step = &self.steps[piece];
        lever(self.from_b[piece + 1], step, self.compression, begins + step.length - x)
    }

    /// Whether the link still stands under its compression: the lever grows from the eye on without ever coming back to
    /// nothing, and no piece is so long that it could do so within.
    pub fn stand(&self) -> bool {
        let short = |step: &Step| wave(step, self.compression) * step.length < PI;
        self.compression >= 0.0 && self.from_a.iter().skip(1).all(|at| at.0 > 0.0) && self.steps.iter().all(short)
    }

    /// The lever carried from eye to eye.
    pub fn whole(&self) -> f64 {
        self.from_a.last().map_or(f64::NAN, |at| at.0)
    }

    /// Moment at a place for each unit of a load across the link, m; below the critical load.
    pub fn moment(&self, station: f64, at: f64) -> f64 {
        let (near, far) = (station.min(at), station.max(at));
        stepped::STEPPED_MOMENT.value(&[1.0, self.from_a(near), self.from_b(far), self.whole()])
    }

    /// Deflection at a place for each unit of a load at another, m/N; NaN when the link is not compressed.
    pub fn deflection(&self, station: f64, at: f64) -> f64 {
        let (near, far) = (station.min(at), station.max(at));
        let simple = near * (self.length - far) / self.length;
        columns::BEAM_COLUMN_DEFLECTION.value(&[self.moment(station, at), simple, self.compression])
    }

    fn piece_at(&self, x: f64) -> (usize, f64) {
        let mut begins = 0.0;
        for (index, step) in self.steps.iter().enumerate() {
            if x <= begins + step.length || index + 1 == self.steps.len() {
                return (index, begins);
            }
            begins += step.length;
        }
        (0, 0.0)
    }
}

/// The lever alone, which is half the work.
fn lever((lever, slope): (f64, f64), step: &Step, compression: f64, length: f64) -> f64 {
    if compression < NO_COMPRESSION {
        return lever + slope * length;
    }
    stepped::PIECE_LEVER.value(&[lever, slope, wave(step, compression), length])
}

/// Lever and slope carried over a length of a piece.
fn carry((lever, slope): (f64, f64), step: &Step, compression: f64, length: f64) -> (f64, f64) {
    if compression < NO_COMPRESSION {
        return (lever + slope * length, slope);
    }
    let given = [lever, slope, wave(step, compression), length];
    (stepped::PIECE_LEVER.value(&given), stepped::PIECE_SLOPE.value(&given))
}
