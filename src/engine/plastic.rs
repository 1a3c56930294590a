//! A steel tube bent past its yield strength while it is in compression: the metal is elastic, then yields at constant
//! stress, and plane sections stay plane.

use std::f64::consts::PI;

use super::math::{arcsine, cubed, fourth};
use super::roots::crossing;

/// Places between the start of yielding and mid-span at which the curvature is worked out.
const PLACES: u32 = 16;
/// Curvature up to which a moment is sought, as a multiple of that at first yield: far past any hinge that is told.
const STEEPEST: f64 = 400.0;

/// A round tube of one metal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tube {
    /// Outside diameter, m.
    pub outside_diameter: f64,
    /// Bore, m.
    pub bore: f64,
    /// Modulus of elasticity, Pa.
    pub modulus: f64,
    /// Yield strength, Pa, alike in tension and compression.
    pub yield_strength: f64,
}

/// Area, first and second moment about the center of the part of a disk below a height.
fn below(radius: f64, height: f64) -> [f64; 3] {
    let t = height.max(-radius).min(radius);
    let half_chord = (radius * radius - t * t).max(0.0).sqrt();
    let angle = if radius > 0.0 { arcsine((t / radius).clamp(-1.0, 1.0)) } else { 0.0 };
    let square = radius * radius;
    [
        square * (angle + PI / 2.0) + t * half_chord,
        -2.0 / 3.0 * cubed(half_chord),
        square * square / 4.0 * (angle + PI / 2.0) + t * half_chord * (2.0 * t * t - square) / 4.0,
    ]
}

impl Tube {
    /// Axial force (tension positive) and moment of a strain at the center and a curvature above 0.
    fn resultants(&self, strain: f64, curvature: f64) -> (f64, f64) {
        let limit = self.yield_strength / self.modulus;
        let [low, high] = [(-limit - strain) / curvature, (limit - strain) / curvature];
        let of_disk = |radius: f64| {
            let [bottom, top] = [below(radius, low), below(radius, high)];
            let whole = below(radius, radius);
            let elastic = [top[0] - bottom[0], top[1] - bottom[1], top[2] - bottom[2]];
            let force = self.modulus * (strain * elastic[0] + curvature * elastic[1])
                + self.yield_strength * (whole[0] - top[0] - bottom[0]);
            let moment = self.modulus * (strain * elastic[1] + curvature * elastic[2])
                + self.yield_strength * (whole[1] - top[1] - bottom[1]);
            (force, moment)
        };
        let (outer, inner) = (of_disk(self.outside_diameter / 2.0), of_disk(self.bore / 2.0));
        (outer.0 - inner.0, outer.1 - inner.1)
    }

    /// The moment at a curvature while a compression acts, N·m: the strain at the center is the one that balances it.
    pub fn moment(&self, curvature: f64, compression: f64) -> f64 {
        let reach = self.yield_strength / self.modulus + curvature * self.outside_diameter / 2.0;
        let missing = |strain: f64| self.resultants(strain, curvature).0 + compression;
        let (low, high) = ((-reach, missing(-reach)), (reach, missing(reach)));
        if low.1 * high.1 >= 0.0 {
            return f64::NAN;
        }
        let strain = crossing(low, high, 1e-10 * reach, missing);
        self.resultants(strain, curvature).1
    }

    /// The part of the curvature that stays under a moment and a compression, 1/m; infinite above what the section bears.
    fn plastic_curvature(&self, moment: f64, compression: f64) -> f64 {
        let second_moment = PI / 64.0 * (fourth(self.outside_diameter) - fourth(self.bore));
        let elastic = moment / (self.modulus * second_moment);
        let steepest = STEEPEST * 2.0 * self.yield_strength / (self.modulus * self.outside_diameter);
        let missing = |curvature: f64| self.moment(curvature, compression) - moment;
        let (low, high) = ((elastic, missing(elastic)), (steepest, missing(steepest)));
        if low.1 >= -1e-9 * moment {
            return 0.0;
        }
        if high.1.is_nan() || high.1 <= 0.0 {
            return f64::INFINITY;
        }
        crossing(low, high, 1e-7 * elastic, missing) - elastic
    }

    /// The moment from which a fiber yields while a compression acts, N·m.
    fn first_yield_moment(&self, compression: f64) -> f64 {
        let area = PI / 4.0 * (self.outside_diameter * self.outside_diameter - self.bore * self.bore);
        let modulus = PI / 32.0 * (fourth(self.outside_diameter) - fourth(self.bore)) / self.outside_diameter;
        (self.yield_strength - compression / area) * modulus
    }

    /// The permanent set at mid-span that a load there leaves, m: twice the plastic curvature of a half span against the
    /// moment of a unit load at mid-span. Infinite where the moment is above what the section bears.
    ///
    /// `moment` gives the moment at a distance from the eye, growing toward mid-span.
    pub fn permanent_set(&self, length: f64, compression: f64, moment: impl Fn(f64) -> f64) -> f64 {
        let middle = length / 2.0;
        let first = self.first_yield_moment(compression);
        let over = |x: f64| moment(x) - first;
        let at_middle = over(middle);
        if at_middle.is_nan() || at_middle <= 0.0 {
            return 0.0;
        }
        if self.plastic_curvature(moment(middle), compression).is_infinite() {
            return f64::INFINITY;
        }
        let begins =
            if over(0.0) < 0.0 { crossing((0.0, over(0.0)), (middle, at_middle), 1e-9 * length, over) } else { 0.0 };
        // The curvature rises steeply toward mid-span, so the places stand closer there.
        let bent = |share: f64| {
            let x = middle - (middle - begins) * (1.0 - share) * (1.0 - share);
            self.plastic_curvature(moment(x), compression) * x / 2.0 * 2.0 * (middle - begins) * (1.0 - share)
        };
        let step = 1.0 / f64::from(PLACES);
        // Simpson's rule; the last place has no width left.
        let sum: f64 = (0..PLACES)
            .map(|place| {
                let weight = if place == 0 {
                    1.0
                } else if place % 2 == 1 {
                    4.0
                } else {
                    2.0
                };
                weight * bent(f64::from(place) * step)
            })
            .sum();
        2.0 * sum * step / 3.0
    }
}
