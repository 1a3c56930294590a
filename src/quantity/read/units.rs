//! The words people write after a number.

use crate::quantity::{DEGREE, INCH, KSI, Kind, POUND_FORCE, STANDARD_GRAVITY};

/// What a unit measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Measure {
    /// Powers of force and of length.
    Powers(i32, i32),
    /// An angle.
    Angle,
    /// A share, in percent.
    Share,
    /// A count of things.
    Count,
}

impl Measure {
    /// What the unit of a kind has to measure.
    pub(super) fn of(kind: Kind) -> Self {
        match kind {
            Kind::Angle => Self::Angle,
            Kind::Ratio | Kind::Percent => Self::Share,
            Kind::Count | Kind::Turns => Self::Count,
            Kind::InInches | Kind::InMillimeters | Kind::InMicrometers => Self::Powers(0, 1),
            _ => {
                // Every quantity here is a force or free of mass, so its power of mass is that of force.
                let [mass, length, _] = kind.exponents();
                Self::Powers(mass as i32, (length - mass) as i32)
            }
        }
    }
}

/// A unit as `times / over` in SI.
#[derive(Debug, Clone, Copy)]
pub(super) struct Unit {
    pub(super) measure: Measure,
    /// What such a number is: "a length".
    pub(super) noun: &'static str,
    pub(super) times: f64,
    pub(super) over: f64,
}

const fn unit(measure: Measure, noun: &'static str, times: f64, over: f64) -> Unit {
    Unit { measure, noun, times, over }
}

const fn length(times: f64, over: f64) -> Unit {
    unit(Measure::Powers(0, 1), "a length", times, over)
}

const fn weight(times: f64) -> Unit {
    unit(Measure::Powers(1, 0), "a weight", times, 1.0)
}

const fn force(times: f64) -> Unit {
    unit(Measure::Powers(1, 0), "a force", times, 1.0)
}

const fn stress(times: f64) -> Unit {
    unit(Measure::Powers(1, -2), "a stress", times, 1.0)
}

const fn moment(times: f64) -> Unit {
    unit(Measure::Powers(1, 1), "a torque or a moment", times, 1.0)
}

/// The inch, which may follow feet.
pub(super) const INCHES: &[&str] = &["in", "inch", "inches", "\""];
/// The foot, which inches may follow.
pub(super) const FEET: &[&str] = &["ft", "foot", "feet", "'"];

/// In lower case and mostly in the singular: [`word`] also tries without an `s` at the end.
static WORDS: &[(&[&str], Unit)] = &[
    (INCHES, length(INCH, 1.0)),
    (FEET, length(12.0 * INCH, 1.0)),
    (&["thou"], length(INCH, 1e3)),
    (&["mm", "millimeter", "millimetre"], length(1.0, 1e3)),
    (&["cm", "centimeter", "centimetre"], length(1.0, 1e2)),
    (&["m", "meter", "metre"], length(1.0, 1.0)),
    (&["um", "micron", "micrometer", "micrometre"], length(1.0, 1e6)),
    (&["lb", "#", "pound"], weight(POUND_FORCE)),
    (&["kg", "kilo", "kilogram"], weight(STANDARD_GRAVITY)),
    (&["t", "tonne"], weight(1e3 * STANDARD_GRAVITY)),
    (&["lbf"], force(POUND_FORCE)),
    (&["kip"], force(1e3 * POUND_FORCE)),
    (&["kgf"], force(STANDARD_GRAVITY)),
    (&["n", "newton"], force(1.0)),
    (&["kn", "kilonewton"], force(1e3)),
    (&["psi"], stress(KSI / 1e3)),
    (&["ksi"], stress(KSI)),
    (&["mpa"], stress(1e6)),
    (&["gpa"], stress(1e9)),
    (&["kpa"], stress(1e3)),
    (&["bar"], stress(1e5)),
    (&["ftlb", "ftlbf", "lbft", "lbfft"], moment(POUND_FORCE * 12.0 * INCH)),
    (&["inlb", "inlbf", "lbin", "lbfin"], moment(POUND_FORCE * INCH)),
    (&["nm"], moment(1.0)),
    (&["knm"], moment(1e3)),
    (&["°", "deg", "degree"], unit(Measure::Angle, "an angle", DEGREE, 1.0)),
    (&["rad", "radian"], unit(Measure::Angle, "an angle", 1.0, 1.0)),
    (&["%", "percent", "pct"], unit(Measure::Share, "a percentage", 1.0, 100.0)),
    (&["turn", "thread", "link", "piece", "pc"], unit(Measure::Count, "a count", 1.0, 1.0)),
];

/// The unit that one word stands for.
pub(super) fn word(written: &str) -> Option<Unit> {
    let exact = |written: &str| WORDS.iter().find(|(names, _)| names.contains(&written)).map(|(_, unit)| *unit);
    // At least two letters must be left: "lbs" is a plural, "ms" is no meter.
    exact(written).or_else(|| exact(written.strip_suffix('s').filter(|singular| singular.len() > 1)?))
}

impl Unit {
    /// The unit to a power from 2 to 4, as in `mm²`.
    pub(super) fn power(self, exponent: i32) -> Option<Self> {
        (1..exponent).try_fold(self, |product, _| product.combined(self, false))
    }

    /// The unit times another, or per another. Only forces and lengths combine.
    pub(super) fn combined(self, other: Self, per: bool) -> Option<Self> {
        let (Measure::Powers(force, length), Measure::Powers(other_force, other_length)) =
            (self.measure, other.measure)
        else {
            return None;
        };
        let sign = if per { -1 } else { 1 };
        let (force, length) = (force + sign * other_force, length + sign * other_length);
        let (times, over) = if per { (other.over, other.times) } else { (other.times, other.over) };
        Some(Self {
            measure: Measure::Powers(force, length),
            noun: noun(force, length),
            times: self.times * times,
            over: self.over * over,
        })
    }
}

fn noun(force: i32, length: i32) -> &'static str {
    match (force, length) {
        (0, 1) => "a length",
        (0, 2) => "an area",
        (1, 0) => "a force",
        (1, 1) => "a torque or a moment",
        (1, -1) => "a stiffness",
        (1, -2) => "a stress",
        _ => "something else",
    }
}
