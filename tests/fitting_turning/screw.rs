//! A link in three dimensions: helices on bodies that turn, and an onlooker who calls a turn clockwise or not.

use linkwright::document::Hand;
use std::f64::consts::{PI, TAU};

type Vector = [f64; 3];
type Matrix = [Vector; 3];

fn apply(matrix: &Matrix, v: Vector) -> Vector {
    matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

fn add(a: Vector, b: Vector) -> Vector {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

fn minus(a: Vector, b: Vector) -> Vector {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: Vector, b: Vector) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Vector, b: Vector) -> Vector {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn transposed(m: &Matrix) -> Matrix {
    [[m[0][0], m[1][0], m[2][0]], [m[0][1], m[1][1], m[2][1]], [m[0][2], m[1][2], m[2][2]]]
}

/// A rotation about the x axis. The x axis runs from eye A to eye B, z is up, and the frame is right-handed.
fn about_x(angle: f64) -> Matrix {
    let (s, c) = angle.sin_cos();
    [[1.0, 0.0, 0.0], [0.0, c, -s], [0.0, s, c]]
}

/// A thread as a curve in its body's frame. A right-hand thread is one that, drawn standing up and looked at from the
/// side, climbs to the right on the near side: `is_right_hand` looks at it so.
#[derive(Clone, Copy)]
pub(crate) struct Helix {
    pub(crate) hand: Hand,
    pub(crate) pitch: f64,
}

const RADIUS: f64 = 0.01;

impl Helix {
    fn climb(self) -> f64 {
        match self.hand {
            Hand::Right => self.pitch / TAU,
            Hand::Left => -self.pitch / TAU,
        }
    }

    fn point(self, angle: f64) -> Vector {
        [self.climb() * angle, RADIUS * angle.cos(), RADIUS * angle.sin()]
    }

    /// Whether the near side of the thread climbs to the right, when its axis stands up before an onlooker.
    pub(crate) fn climbs_to_the_right(self) -> bool {
        // The onlooker stands out along +y and takes the axis, +x, as up.
        let (view, up) = ([0.0, -1.0, 0.0], [1.0, 0.0, 0.0]);
        let right = cross(view, up);
        let along = minus(self.point(0.01), self.point(-0.01));
        dot(along, right) * dot(along, up) > 0.0
    }
}

/// A body with its place and how it is turned.
#[derive(Clone, Copy)]
pub(crate) struct Body {
    turned: f64,
    at: f64,
}

impl Body {
    const HOME: Self = Self { turned: 0.0, at: 0.0 };

    fn place(self, point: Vector) -> Vector {
        add(apply(&about_x(self.turned), point), [self.at, 0.0, 0.0])
    }

    /// A point of the world in this body's own frame.
    fn inside(self, point: Vector) -> Vector {
        apply(&transposed(&about_x(self.turned)), minus(point, [self.at, 0.0, 0.0]))
    }
}

/// Moves `body` along x until its thread lies on the like thread of `other`, from where it is.
fn seat(body: &mut Body, other: Body, helix: Helix) {
    // A point of its thread, in the frame of the other; its angle there names a point of the other's thread, whose
    // nearest coil is where it must go.
    for angle in [0.0, 1.0, 2.5] {
        let point = other.inside(body.place(helix.point(angle)));
        let there = helix.climb() * point[2].atan2(point[1]);
        let coils = ((point[0] - there) / helix.pitch).round();
        let off = point[0] - there - coils * helix.pitch;
        assert!(off.abs() < 0.3 * helix.pitch, "the steps are too long to know the coil");
        body.at -= off;
        // Now every other point of the thread lies on it, too.
        let point = other.inside(body.place(helix.point(angle + 0.7)));
        let there = helix.climb() * point[2].atan2(point[1]);
        let coils = (point[0] - there) / helix.pitch;
        assert!((coils - coils.round()).abs() < 1e-9, "threads of one pitch and hand fit along their whole length");
    }
}

/// What can be turned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum What {
    Bar,
    Eye(usize),
    Nut(usize),
}

/// The link: a bar, a rod end at each end, a jam nut on each shank.
#[derive(Clone, Copy)]
pub(crate) struct Link {
    pub(crate) threads: [Helix; 2],
    bar: Body,
    eyes: [Body; 2],
    nuts: [Body; 2],
}

const STEPS: usize = 24;

impl Link {
    pub(crate) fn new(threads: [Helix; 2]) -> Self {
        Self { threads, bar: Body::HOME, eyes: [Body::HOME; 2], nuts: [Body::HOME; 2] }
    }

    /// Turns one part about the axis, in small steps, and lets the threads carry what they carry. The eye at A stays
    /// where it is; the bar follows its thread, and the eye at B follows the bar's.
    pub(crate) fn turn(&mut self, what: What, angle: f64) {
        for _ in 0..STEPS {
            let part = match what {
                What::Bar => &mut self.bar,
                What::Eye(end) => &mut self.eyes[end],
                What::Nut(end) => &mut self.nuts[end],
            };
            part.turned += angle / STEPS as f64;
            let [a, b] = self.threads;
            seat(&mut self.bar, self.eyes[0], a);
            seat(&mut self.eyes[1], self.bar, b);
            for end in [0, 1] {
                seat(&mut self.nuts[end], self.eyes[end], self.threads[end]);
            }
        }
    }

    /// How much longer the link is than it was.
    pub(crate) fn longer(&self) -> f64 {
        self.eyes[1].at - self.eyes[0].at
    }

    /// How far each end came out of the bar.
    pub(crate) fn out(&self) -> [f64; 2] {
        [self.bar.at - self.eyes[0].at, self.eyes[1].at - self.bar.at]
    }

    /// How far each nut went toward the bar.
    pub(crate) fn nut_to_bar(&self) -> [f64; 2] {
        [self.nuts[0].at - self.bar.at, self.bar.at - self.nuts[1].at]
    }
}

/// The angle about +x of a turn that looks clockwise to somebody at an eye who looks along the bar.
pub(crate) fn clockwise(turns: f64, from: usize) -> f64 {
    let (view, up) = ([if from == 0 { 1.0 } else { -1.0 }, 0.0, 0.0], [0.0, 0.0, 1.0]);
    // What is to the right of somebody who looks along `view` with `up` overhead.
    let right = cross(view, up);
    // Clockwise: what is on top goes to the right.
    let goes = minus(apply(&about_x(0.1), up), up);
    let sign = if dot(goes, right) > 0.0 { 1.0 } else { -1.0 };
    sign * turns * 2.0 * PI
}
