//! Beams: a load across a link, with and without compression along it.

use super::Tolerance::Relative;
use super::{LBF_PER_INCH, MPMATH, rows};
use crate::engine::formulas::beams::{
    COLLAPSE_MID_LOAD, DEFLECTION_UNDER_LOAD, FIRST_YIELD_MID_LOAD, MID_STIFFNESS, MOMENT_UNDER_LOAD,
};
use crate::engine::formulas::columns::{
    BEAM_COLUMN_DEFLECTION, BEAM_COLUMN_MOMENT, HALF_PHASE, MID_DEFLECTION_AMPLIFICATION, MID_MOMENT_AMPLIFICATION,
    WAVE_NUMBER,
};
use crate::engine::formulas::sections::{RING_PLASTIC_MODULUS, RING_SECOND_MOMENT, RING_SECTION_MODULUS};
use crate::quantity::{inch, ksi, lbf, lbf_in};

const PYNITE: &str = "PyNiteFEA 3.2.0 and closed form, mpmath 1.4.1";
const P_DELTA: &str = "PyNiteFEA 3.2.0 with P-delta (5 digits) and closed form, mpmath 1.4.1";

/// The bar of every row: 2.0 in round, 40 in long, 10,300 ksi.
const BAR: [f64; 2] = [inch(2.0), 0.0];
const LENGTH: f64 = inch(40.0);
const MODULUS: f64 = ksi(10_300.0);

/// A load at a place, inches from an eye; the moment under it.
fn plain_moment(load: f64, at: f64) -> f64 {
    MOMENT_UNDER_LOAD.value(&[lbf(load), inch(at), LENGTH - inch(at), LENGTH])
}

fn deflection(load: f64, at: f64) -> f64 {
    DEFLECTION_UNDER_LOAD.value(&[
        lbf(load),
        inch(at),
        LENGTH - inch(at),
        MODULUS,
        RING_SECOND_MOMENT.value(&BAR),
        LENGTH,
    ])
}

fn compressed_moment(compression: f64, load: f64, at: f64) -> f64 {
    let wave = WAVE_NUMBER.value(&[lbf(compression), MODULUS, RING_SECOND_MOMENT.value(&BAR)]);
    BEAM_COLUMN_MOMENT.value(&[lbf(load), wave, LENGTH - inch(at), inch(at), LENGTH])
}

fn compressed_deflection(compression: f64, load: f64, at: f64) -> f64 {
    BEAM_COLUMN_DEFLECTION.value(&[compressed_moment(compression, load, at), plain_moment(load, at), lbf(compression)])
}

/// Half the phase for a compression that is so much of the critical load.
fn half_phase(share: f64) -> f64 {
    HALF_PHASE.value(&[share, 1.0])
}

rows! {
    "Beams" {
        "mid-deflection", "Bar 2.0 in, 40 in long, 10,300 ksi, 2,000 lbf at the middle: deflection" = 0.329641306 "in" in inch(1.0), Relative(1e-4); PYNITE, Computed
            => deflection(2000.0, 20.0);
        "quarter-deflection", "The same load 12 in from an eye: deflection under it" = 0.232594906 "in" in inch(1.0), Relative(1e-4); PYNITE, Computed
            => deflection(2000.0, 12.0);
        "mid-stiffness", "Bar 2.0 in, 40 in long, 10,300 ksi: stiffness at the middle" = 6067.20081 "lbf/in" in LBF_PER_INCH, Relative(1e-4); MPMATH, Computed
            => MID_STIFFNESS.value(&[MODULUS, RING_SECOND_MOMENT.value(&BAR), LENGTH]);
        "first-yield-load", "The same bar, 66 ksi: load at the middle at first yield" = 5183.62788 "lbf" in lbf(1.0), Relative(1e-4); MPMATH, Computed
            => FIRST_YIELD_MID_LOAD.value(&[RING_SECTION_MODULUS.value(&BAR), ksi(66.0), LENGTH]);
        "collapse-load", "The same bar, 66 ksi: load at the middle at collapse" = 8800.0 "lbf" in lbf(1.0), Relative(1e-4); MPMATH, Computed
            => COLLAPSE_MID_LOAD.value(&[RING_PLASTIC_MODULUS.value(&BAR), ksi(66.0), LENGTH]);
    }
    "Beam-columns" {
        "pushed-moment-10", "2,000 lbf at the middle, 10,000 lbf compression: moment" = 24111.5786 "lbf·in" in lbf_in(1.0), Relative(1e-4); P_DELTA, Computed
            => compressed_moment(10_000.0, 2000.0, 20.0);
        "pushed-moment-20", "2,000 lbf at the middle, 20,000 lbf compression: moment" = 30942.7829 "lbf·in" in lbf_in(1.0), Relative(1e-4); P_DELTA, Computed
            => compressed_moment(20_000.0, 2000.0, 20.0);
        "pushed-deflection-20", "2,000 lbf at the middle, 20,000 lbf compression: deflection" = 0.547139147 "in" in inch(1.0), Relative(1e-4); P_DELTA, Computed
            => compressed_deflection(20_000.0, 2000.0, 20.0);
        "pushed-deflection-20-at-12", "2,000 lbf 12 in from an eye, 20,000 lbf compression: deflection" = 0.376904761 "in" in inch(1.0), Relative(1e-4); P_DELTA, Computed
            => compressed_deflection(20_000.0, 2000.0, 12.0);
        "pushed-deflection-30", "1,000 lbf at the middle, 30,000 lbf compression: deflection" = 0.409841788 "in" in inch(1.0), Relative(1e-4); P_DELTA, Computed
            => compressed_deflection(30_000.0, 1000.0, 20.0);
        "moment-amplification-0-1", "Compression of 0.1 of the critical load: moment at the middle, times" = 1.09126489 "" in 1.0, Relative(1e-6); MPMATH, Computed
            => MID_MOMENT_AMPLIFICATION.value(&[half_phase(0.1)]);
        "moment-amplification-0-3", "Compression of 0.3 of the critical load: moment at the middle, times" = 1.35106526 "" in 1.0, Relative(1e-6); MPMATH, Computed
            => MID_MOMENT_AMPLIFICATION.value(&[half_phase(0.3)]);
        "moment-amplification-0-5", "Compression of 0.5 of the critical load: moment at the middle, times" = 1.81682813 "" in 1.0, Relative(1e-6); MPMATH, Computed
            => MID_MOMENT_AMPLIFICATION.value(&[half_phase(0.5)]);
        "deflection-amplification-0-5", "Compression of 0.5 of the critical load: deflection at the middle, times" = 1.98628782 "" in 1.0, Relative(1e-6); MPMATH, Computed
            => MID_DEFLECTION_AMPLIFICATION.value(&[half_phase(0.5)]);
        "deflection-amplification-0-7", "Compression of 0.7 of the critical load: deflection at the middle, times" = 3.30065951 "" in 1.0, Relative(1e-6); MPMATH, Computed
            => MID_DEFLECTION_AMPLIFICATION.value(&[half_phase(0.7)]);
    }
}
