//! Engagement: areas that shear, and the lengths of thread that follow, from the thread table.

use super::Tolerance::Relative;
use super::{MPMATH, rows};
use crate::engine::formulas::threads::{
    EQUAL_STRENGTH_ENGAGEMENT, ONE_THIRD_PULL_OUT, STRENGTH_RATIO, UNLIKE_METALS_ENGAGEMENT,
};
use crate::engine::tables::jam_nuts;
use crate::engine::tables::threads::{self, Thread};
use crate::quantity::{inch, ksi, lbf};

/// Square inches for each inch of engagement.
const IN2_PER_IN: f64 = inch(1.0);

/// Something about a thread of the table; NaN when it is not there.
fn of(id: &str, value: impl Fn(&'static Thread) -> f64) -> f64 {
    threads::find(id).map_or(f64::NAN, value)
}

fn screw(id: &str) -> f64 {
    of(id, Thread::external_shear_area)
}

fn hole(id: &str) -> f64 {
    of(id, Thread::internal_shear_area)
}

fn like_metals(id: &str) -> f64 {
    EQUAL_STRENGTH_ENGAGEMENT.value(&[of(id, Thread::tensile_stress_area), screw(id)])
}

/// A shank of 150 ksi in a bar of 77 ksi.
fn in_7075(id: &str) -> f64 {
    UNLIKE_METALS_ENGAGEMENT
        .value(&[STRENGTH_RATIO.value(&[screw(id), ksi(150.0), hole(id), ksi(77.0)]), like_metals(id)])
}

rows! {
    "Thread engagement" {
        "hole-shear-5-8-18", "5/8-18: area that shears in the bar, for each inch" = 1.36739254 "in²/in" in IN2_PER_IN, Relative(5e-4); MPMATH, Computed
            => hole("5/8-18");
        "hole-shear-7-8-14", "7/8-14: area that shears in the bar, for each inch" = 1.95846805 "in²/in" in IN2_PER_IN, Relative(5e-4); MPMATH, Computed
            => hole("7/8-14");
        "hole-shear-1-1-4-12", "1-1/4-12: area that shears in the bar, for each inch" = 2.82841852 "in²/in" in IN2_PER_IN, Relative(5e-4); MPMATH, Computed
            => hole("1-1/4-12");
        "screw-shear-3-4-16", "3/4-16: area that shears on the shank, for each inch" = 1.23264368 "in²/in" in IN2_PER_IN, Relative(5e-4); MPMATH, Computed
            => screw("3/4-16");
        "screw-shear-1-14", "1-14: area that shears on the shank, for each inch" = 1.6711031 "in²/in" in IN2_PER_IN, Relative(5e-4); MPMATH, Computed
            => screw("1-14");
        "screw-shear-1-1-4-12", "1-1/4-12: area that shears on the shank, for each inch" = 2.10423276 "in²/in" in IN2_PER_IN, Relative(5e-4); MPMATH, Computed
            => screw("1-1/4-12");
        "like-metals-5-8-18", "5/8-18 in like metal: engagement as strong as the shank" = 0.51268386 "in" in inch(1.0), Relative(5e-4); MPMATH, Computed
            => like_metals("5/8-18");
        "like-metals-3-4-16", "3/4-16 in like metal: engagement as strong as the shank" = 0.605138382 "in" in inch(1.0), Relative(5e-4); MPMATH, Computed
            => like_metals("3/4-16");
        "like-metals-1-14", "1-14 in like metal: engagement as strong as the shank" = 0.813696977 "in" in inch(1.0), Relative(5e-4); MPMATH, Computed
            => like_metals("1-14");
        "in-7075-3-4-16", "3/4-16 shank of 150 ksi in 77 ksi: engagement as strong as the shank" = 0.876095626 "in" in inch(1.0), Relative(5e-4); MPMATH, Computed
            => in_7075("3/4-16");
        "in-7075-7-8-14", "7/8-14 shank of 150 ksi in 77 ksi: engagement as strong as the shank" = 1.01352595 "in" in inch(1.0), Relative(5e-4); MPMATH, Computed
            => in_7075("7/8-14");
        "in-7075-1-1-4-12", "1-1/4-12 shank of 150 ksi in 77 ksi: engagement as strong as the shank" = 1.47796224 "in" in inch(1.0), Relative(5e-4); MPMATH, Computed
            => in_7075("1-1/4-12");
        "one-third-rule", "3/4-16, 1.125 in engaged, 46 ksi: pull-out by the one-third rule" = 38.4441405 "kip" in lbf(1000.0), Relative(1e-4); "NASA RP-1228 formula, mpmath 1.4.1", Computed
            => ONE_THIRD_PULL_OUT.value(&[inch(0.7094), ksi(46.0), inch(1.125)]);
        "jam-nut-share", "3/4-16: least jam-nut thickness over the engagement as strong as the shank" = 0.657700803 "" in 1.0, Relative(1e-3); "ASME B18.2.2 thickness, mpmath 1.4.1", Computed
            => of("3/4-16", |thread| {
                jam_nuts::for_thread(thread).and_then(|nut| nut.thickness_min).map_or(f64::NAN, |thickness| thickness / like_metals(thread.id))
            });
    }
}
