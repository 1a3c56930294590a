//! Ends: jam nuts, bolts in shear, the shank where it leaves the bar.

use super::Tolerance::{Absolute, Exact, Relative};
use super::{LBF_PER_INCH, MPMATH, rows};
use crate::engine::formulas::beams::{AXIAL_STRESS, BENDING_STRESS, SUPPORT_REACTION};
use crate::engine::formulas::jam_nut::{JOINT_SHARE, LEAD_ANGLE, TORQUE, TORQUE_COEFFICIENT};
use crate::engine::formulas::pins::{DOUBLE_SHEAR_CAPACITY, ROUND_MODULUS};
use crate::engine::formulas::threads::EXTERNAL_MINOR_INCH;
use crate::quantity::{KSI, deg, in2, inch, ksi, lbf, lbf_in};

/// Torque coefficient of 3/4-16 with friction 0.15, on the mean of the thread's diameter and that of its printed minor area.
fn coefficient() -> f64 {
    let (major, pitch) = (inch(0.75), inch(0.0625));
    let minor = (in2(0.351) * 4.0 / std::f64::consts::PI).sqrt();
    let mean = (major + minor) / 2.0;
    TORQUE_COEFFICIENT.value(&[mean, major, LEAD_ANGLE.value(&[pitch, mean]), deg(30.0), 0.15, 0.15])
}

rows! {
    "Tightening" {
        "preload-stress", "25,000 lbf on 0.373 in²: stress" = 67.02 "ksi" in KSI, Absolute(0.01); "Shigley 9e, p. 439, Ex. 8-3(a)", Read
            => AXIAL_STRESS.value(&[lbf(25_000.0), in2(0.373)]);
        "joint-share", "Stiffnesses 6.5 and 13.8 million lbf/in: share of the bolt" = 0.32 "" in 1.0, Absolute(0.0005); "Shigley 9e, p. 439", Read
            => JOINT_SHARE.value(&[6.5e6 * LBF_PER_INCH, 13.8e6 * LBF_PER_INCH]);
        "torque-coefficient", "3/4-16, friction 0.15: torque coefficient" = 0.189375268 "" in 1.0, Absolute(0.0005); "Shigley Eq. 8-26, worked out with mpmath 1.4.1", Computed
            => coefficient();
        "torque", "Coefficient 0.20, 25,000 lbf, 3/4 in: torque" = 3750.0 "lbf·in" in lbf_in(1.0), Exact; "data of Shigley Ex. 8-3(b), worked out by hand", Computed
            => TORQUE.value(&[0.2, lbf(25_000.0), inch(0.75)]);
    }
    "Pins and shanks" {
        "double-shear", "3/4-16 grade 8 bolt, thread in both shear planes: load" = 63.18 "kip" in lbf(1000.0), Relative(1e-4); MPMATH, Computed
            => DOUBLE_SHEAR_CAPACITY.value(&[in2(0.351), ksi(90.0)]);
        "shank-bending", "1,000 lbf at the middle, bar face 1.5 in from the eye, 3/4-16 shank: stress" = 24773.7897 "psi" in KSI / 1000.0, Relative(1e-3); "simple span, mpmath 1.4.1", Computed
            => {
                let moment = SUPPORT_REACTION.value(&[lbf(1000.0), inch(20.0), inch(40.0)]) * inch(1.5);
                BENDING_STRESS.value(&[moment, ROUND_MODULUS.value(&[EXTERNAL_MINOR_INCH.value(&[inch(0.75), inch(0.0625)])])])
            };
    }
}
