//! Sections: tubes, flats, net sections, weights.

use super::Tolerance::Relative;
use super::{MPMATH, rows};
use crate::engine::formulas::sections::{
    EQUAL_STRENGTH_DIAMETER, FLATS_AREA, FLATS_HALF_ANGLE, FLATS_STRONG_PLASTIC_MODULUS, FLATS_STRONG_SECOND_MOMENT,
    FLATS_WEAK_MODULUS, FLATS_WEAK_PLASTIC_MODULUS, FLATS_WEAK_SECOND_MOMENT, RING_AREA, RING_PLASTIC_MODULUS,
    RING_SECTION_MODULUS,
};
use crate::quantity::{in2, in3, in4, inch, ksi};

/// A second tool that meshes the section, and the closed form.
const MESHED: &str = "sectionproperties 3.10.2 (within 2e-6) and closed form, mpmath 1.4.1";

const TUBE: [f64; 2] = [inch(2.0), inch(1.5)];

/// A round bar with flats, bored.
#[derive(Clone, Copy)]
struct Flats {
    outer: f64,
    width: f64,
    bore: f64,
}

impl Flats {
    const fn new(outer: f64, width: f64, bore: f64) -> Self {
        Self { outer: inch(outer), width: inch(width), bore: inch(bore) }
    }

    fn by_angle(self) -> [f64; 3] {
        [self.outer, FLATS_HALF_ANGLE.value(&[self.width, self.outer]), self.bore]
    }

    fn by_width(self) -> [f64; 3] {
        [self.outer, self.width, self.bore]
    }

    fn weak_modulus(self) -> f64 {
        FLATS_WEAK_MODULUS.value(&[FLATS_WEAK_SECOND_MOMENT.value(&self.by_angle()), self.width])
    }
}

const SMALL: Flats = Flats::new(1.25, 1.125, 0.0);
const MIDDLE: Flats = Flats::new(1.5, 1.25, 0.0);
const LARGE: Flats = Flats::new(2.0, 1.75, 0.0);
const BORED: Flats = Flats::new(2.0, 1.75, 1.171_875);

rows! {
    "Sections" {
        "tube-area", "Tube 2.000 in, wall 0.250 in: area" = 1.37444679 "in²" in in2(1.0), Relative(1e-5); MPMATH, Computed
            => RING_AREA.value(&TUBE);
        "tube-plastic-modulus", "Tube 2.000 in, wall 0.250 in: plastic modulus" = 0.770833333 "in³" in in3(1.0), Relative(1e-5); MPMATH, Computed
            => RING_PLASTIC_MODULUS.value(&TUBE);
        "tube-shape-factor", "Tube 2.000 in, wall 0.250 in: plastic over elastic modulus" = 1.43572916 "" in 1.0, Relative(1e-5); MPMATH, Computed
            => RING_PLASTIC_MODULUS.value(&TUBE) / RING_SECTION_MODULUS.value(&TUBE);
        "flats-1-25-weak-moment", "Bar 1.25 in, flats 1.125 in across: second moment, weak way" = 0.103988348 "in⁴" in in4(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_WEAK_SECOND_MOMENT.value(&SMALL.by_angle());
        "flats-1-25-strong-moment", "Bar 1.25 in, flats 1.125 in across: second moment, strong way" = 0.119152975 "in⁴" in in4(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_STRONG_SECOND_MOMENT.value(&SMALL.by_angle());
        "flats-1-25-strong-plastic", "Bar 1.25 in, flats 1.125 in across: plastic modulus, strong way" = 0.320800781 "in³" in in3(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_STRONG_PLASTIC_MODULUS.value(&SMALL.by_width());
        "flats-1-5-area", "Bar 1.5 in, flats 1.25 in across: area" = 1.62647225 "in²" in in2(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_AREA.value(&MIDDLE.by_angle());
        "flats-1-5-weak-moment", "Bar 1.5 in, flats 1.25 in across: second moment, weak way" = 0.184187904 "in⁴" in in4(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_WEAK_SECOND_MOMENT.value(&MIDDLE.by_angle());
        "flats-1-5-weak-plastic", "Bar 1.5 in, flats 1.25 in across: plastic modulus, weak way" = 0.467492519 "in³" in in3(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_WEAK_PLASTIC_MODULUS.value(&MIDDLE.by_width());
        "flats-1-5-weak-modulus", "Bar 1.5 in, flats 1.25 in across: section modulus, weak way" = 0.294700647 "in³" in in3(1.0), Relative(1e-5); "sectionproperties 3.10.2", Computed
            => MIDDLE.weak_modulus();
        "flats-2-area", "Bar 2.0 in, flats 1.75 in across: area" = 2.97808674 "in²" in in2(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_AREA.value(&LARGE.by_angle());
        "flats-2-strong-moment", "Bar 2.0 in, flats 1.75 in across: second moment, strong way" = 0.777616025 "in⁴" in in4(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_STRONG_SECOND_MOMENT.value(&LARGE.by_angle());
        "flats-2-strong-plastic", "Bar 2.0 in, flats 1.75 in across: plastic modulus, strong way" = 1.30338542 "in³" in in3(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_STRONG_PLASTIC_MODULUS.value(&LARGE.by_width());
        "flats-2-weak-modulus", "Bar 2.0 in, flats 1.75 in across: section modulus, weak way" = 0.737415617 "in³" in in3(1.0), Relative(1e-5); "sectionproperties 3.10.2", Computed
            => LARGE.weak_modulus();
        "flats-2-bored-weak-moment", "Bar 2.0 in, flats 1.75 in across, bored 1.171875 in: second moment, weak way" = 0.55266338 "in⁴" in in4(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_WEAK_SECOND_MOMENT.value(&BORED.by_angle());
        "flats-2-bored-weak-plastic", "Bar 2.0 in, flats 1.75 in across, bored 1.171875 in: plastic modulus, weak way" = 0.91382402 "in³" in in3(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_WEAK_PLASTIC_MODULUS.value(&BORED.by_width());
        "flats-2-bored-strong-plastic", "Bar 2.0 in, flats 1.75 in across, bored 1.171875 in: plastic modulus, strong way" = 1.03516452 "in³" in in3(1.0), Relative(1e-5); MESHED, Computed
            => FLATS_STRONG_PLASTIC_MODULUS.value(&BORED.by_width());
        "net-area-2-with-1-1-4", "Bar 2.0 in with a 1-1/4 in thread: area left" = 1.91440802 "in²" in in2(1.0), Relative(1e-5); MPMATH, Computed
            => RING_AREA.value(&[inch(2.0), inch(1.25)]);
        "equal-strength-diameter", "Bar of 77 ksi as strong at its hole as a 3/4-16 shank of 150 ksi: diameter" = 1.21969899 "in" in inch(1.0), Relative(1e-4); MPMATH, Computed
            => EQUAL_STRENGTH_DIAMETER.value(&[inch(0.75), in2(0.373), ksi(150.0), ksi(77.0)]);
    }
}
