//! How fast tools and blades run: spindle speeds within the machine's limits, and how a sheet says them.

use super::machine::{LEAST_RPM, MOST_RPM};
use super::{Shop, Step, Value};
use crate::engine::formula::Sheet;
use crate::engine::formulas::machining;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::cutting::{self, Class, HARDENED_ALLOY_STEEL};
use crate::quantity::{INCH, exceeds};

/// Spindle speeds, least and most, that a range of cutting speeds gives, no faster than the machine turns.
pub(super) fn spindle(sheet: &mut Sheet, feet_per_minute: [f64; 2], diameter: f64, most: f64) -> [f64; 2] {
    both(feet_per_minute, |speed| {
        let asked = sheet.work(&machining::SPINDLE_SPEED, &[speed, diameter / INCH]);
        sheet.work(&machining::SPINDLE_LIMIT, &[asked, most])
    })
}

/// What follows from the least and the most of a speed, worked out once where they are the same.
pub(super) fn both([least, most]: [f64; 2], mut work: impl FnMut(f64) -> f64) -> [f64; 2] {
    let slow = work(least);
    [slow, if exceeds(most, least) { work(most) } else { slow }]
}

/// Said where the machine cannot turn as slowly as the tool asks for.
pub(super) fn too_fast(shop: &Shop, fastest: f64) -> Option<Said> {
    let least = shop.machine.in_force(&LEAST_RPM);
    exceeds(least, fastest).then(|| {
        said![
            "The slowest speed of the machine, ",
            (least, Count),
            " rpm, is faster than this tool allows, ",
            (whole(fastest), Count),
            " rpm. Use another machine, or work by hand."
        ]
    })
}

/// Turns a minute as they are told: rounded down to a whole number.
pub(super) fn whole(rpm: f64) -> f64 {
    rpm.floor()
}

/// Where to begin and the most, with what is said of the feed: `Begin at 229 rpm, at most 343 rpm; …`.
pub(super) fn begin(rpm: [f64; 2], feed: Said) -> Said {
    let [least, most] = rpm.map(whole);
    if exceeds(most, least) {
        return sentence(said!["Begin at ", (least, Count), " rpm, at most ", (most, Count), " rpm; "], feed);
    }
    sentence(said!["Turn at ", (least, Count), " rpm; "], feed)
}

/// Two parts of a sentence as one.
pub(super) fn sentence(mut first: Said, then: Said) -> Said {
    first.extend(then);
    first
}

/// How the stock itself is cut. A hardened tube is harder than the insert that its row is cut as.
pub(super) fn of_stock(shop: &Shop) -> &'static Class {
    if shop.made.material.is_hardened_tube() { &HARDENED_ALLOY_STEEL } else { shop.class }
}

/// The speed of the saw's blade.
pub(super) fn saw(shop: &Shop, step: Step) -> Step {
    let mut sheet = Sheet::recording();
    let sawing = of_stock(shop).sawing;
    let [least, most] = sawing.feet_per_minute;
    let [slow, fast] =
        both(sawing.feet_per_minute, |speed| sheet.work(&machining::METERS_A_MINUTE, &[speed])).map(f64::round);
    let blade = if exceeds(most, least) {
        said![
            "Bimetal blade with fluid: ",
            (least, Count),
            " to ",
            (most, Count),
            " ft/min (",
            (slow, Count),
            " to ",
            (fast, Count),
            " m/min)"
        ]
    } else {
        said!["Bimetal blade with fluid: up to ", (most, Count), " ft/min (", (fast, Count), " m/min)"]
    };
    let [less, far_less] = cutting::SAWING_DRY;
    let dry = said!["; dry, ", (less, Percent), " to ", (far_less, Percent), " slower."];
    step.say(sentence(blade, dry))
        .figure("Blade speed", Value::Counted(sawing.feet_per_minute, "ft/min"))
        .from(sawing.cite)
        .worked(sheet, None)
}

/// How fast both ends are faced: set for the whole diameter, since the cut begins at the outside.
pub(super) fn face(shop: &Shop, step: Step) -> Step {
    let mut sheet = Sheet::recording();
    let turning = of_stock(shop).turning;
    let most = shop.machine.in_force(&MOST_RPM);
    let rpm = spindle(&mut sheet, [turning.begin, turning.most], shop.made.stock_diameter, most);
    step.say(begin(rpm, said![(cutting::FINISH_FEED, FineLength), " a turn."]))
        .figure("Spindle speed", Value::Counted(rpm, "rpm"))
        .length("Feed for one turn", cutting::FINISH_FEED)
        .from(turning.cite)
        .from(cutting::TURNING_CITE)
        .warn(too_fast(shop, rpm[1]))
        .worked(sheet, None)
}
