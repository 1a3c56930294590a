//! The looks, the bar's before the ends', then what goes wrong at the axle.

use super::Catch::{Check, Fit, Habit};
use super::{Catch, Failure, FitPart};
use crate::source::{AC_43_13, Cite, Obtained, PRACTICE, cite};

const HABIT: Cite = cite(&PRACTICE, "", Obtained::Practice);
const CORROSION: Cite = cite(&AC_43_13, "chapter 6, corrosion of aluminum beside steel", Obtained::Memory);

/// A row that rests on common practice.
const fn row(
    id: &'static str,
    name: &'static str,
    looks: &'static str,
    happened: &'static str,
    caught_by: &'static [Catch],
    change: &'static str,
) -> Failure {
    Failure { id, name, looks, happened, caught_by, change, stops: true, source: HABIT }
}

/// The same for what does not stop the rig where it stands.
const fn goes_on(failure: Failure) -> Failure {
    Failure { stops: false, ..failure }
}

/// Every look.
pub static FAILURES: &[Failure] = &[
    goes_on(row(
        "bent-bar",
        "Bent lower link",
        "The bar is bowed between its ends, with a scar where it was hit.",
        "The rig came down on the bar, which is then a beam. Steel tube keeps a set; 7075 springs back, then cracks.",
        &[Check("bar-bending"), Fit(FitPart::Hit)],
        "Measure it under After a hit before it moves: that says whether it limps home or stops. Then a larger bar or thicker wall, or gentler lines.",
    )),
    row(
        "buckled",
        "Buckled tie rod",
        "Bowed in one smooth curve, no scar: nothing hit it.",
        "It was pushed from end to end past its buckling load. Aluminum is a third as stiff as steel, and a hydraulic ram pushes harder than any box.",
        &[Check("buckling"), Check("bent-bar")],
        "A larger bar or steel. Enter the ram under Loads and size it again.",
    ),
    row(
        "snapped-bar",
        "Bar snapped clean",
        "A straight break across an aluminum bar, with rings or a dull patch at one edge.",
        "A crack grew from an old gouge, or along a stressed, salty surface, until the rest let go in one easy moment.",
        &[Fit(FitPart::Hit), Fit(FitPart::Recheck), Habit("Crack dye over every gouge")],
        "Replace 7075 at the first sharp gouge, set or crack. Wash salt off. Keep the log of hits.",
    ),
    row(
        "kinked-tube",
        "Tube folded",
        "A sharp kink or wrinkle at one place, the tube flattened there.",
        "A dent or a thin wall took the round shape away, and the next hit folded it.",
        &[Check("bar-bending"), Check("thin-tube"), Fit(FitPart::Hit)],
        "A thicker wall. Replace a tube with a deep dent before it folds.",
    ),
    row(
        "stripped",
        "Thread stripped out",
        "The rod end came out with aluminum curls in its thread; the hole is smooth.",
        "Too little thread was engaged, or a loose jam nut let the load rattle to and fro until the thread wore away.",
        &[Check("engagement"), Check("thread-stripping"), Fit(FitPart::AsFitted)],
        "More thread in the bar: a longer bar, or a rod end with a longer shank. Jam nut tight, checked by wrench.",
    ),
    row(
        "shank-broken",
        "Shank broken at nut",
        "The shank broke off flush with the jam nut, the stub still in the bar.",
        "Bending. The first thread outside the nut is a notch, and a ball at the end of its swing turns the link into a pry bar. Low-carbon shanks go first.",
        &[Check("shank-bending"), Check("misalignment"), Check("visible-threads")],
        "Heat-treated alloy rod ends, the next size, fewer threads showing, more swing in the joint.",
    ),
    row(
        "bent-shank",
        "Shank bent",
        "The eye leans; the bend is between nut and head.",
        "The link was hit near its end, or the joint ran out of swing.",
        &[Check("shank-bending"), Check("misalignment")],
        "Replace the rod end: bent once, it breaks next. Then the same as for a broken shank.",
    ),
    row(
        "ball-out",
        "Ball pulled out",
        "The head is open or stretched, or the ball has left it.",
        "Overload or a worn race. In single shear, nothing kept the ball from leaving.",
        &[Check("eye"), Check("maker-rating"), Habit("A washer wider than the hole in the head")],
        "A rod end with a rating for this load, in double shear; a wide safety washer where it is single.",
    ),
    row(
        "worn-ball",
        "Ball loose, knocks",
        "You feel a knock when a helper rocks the wheel; the liner is gone or the race is dented.",
        "Wear, grit, water, or one hard hit that dented the race.",
        &[Fit(FitPart::Recheck), Fit(FitPart::Hit)],
        "Replace the rod end. Steering: before it moves again.",
    ),
    row(
        "loose-nut",
        "Jam nut loose",
        "The paint line across nut and bar is broken, or rust dust sits at the nut.",
        "The ball ran out of swing and twisted the bar; or the nut sat on paint or a soft face; or it had seized to the shank and turned with it, tight on nothing.",
        &[Check("misalignment"), Check("jam-nut-seat"), Fit(FitPart::Recheck), Fit(FitPart::FitIt)],
        "Clean faces, the nut free on its thread, torque, a new paint line. Give the joint more swing.",
    ),
    row(
        "walked-out",
        "Link unscrewed itself",
        "One end shows many threads, the other none; the length has hardly changed.",
        "Both ends are right-hand. A loose bar spins: one end goes in while the other comes out, and nobody feels it.",
        &[Fit(FitPart::AsFitted), Fit(FitPart::Turn), Fit(FitPart::Recheck)],
        "One right-hand and one left-hand end. Until then, paint lines and a look before every drive.",
    ),
    row(
        "wrong-way",
        "Turned the wrong way",
        "The end is almost out, or fell out, though the nut was being tightened.",
        "A left-hand nut and bar were worked as if right-hand.",
        &[Fit(FitPart::Turn), Habit("LH marked on bar and nut")],
        "Mark the left-hand end. Read which way before you touch a wrench.",
    ),
    row(
        "egged-hole",
        "Bracket hole oval",
        "The hole in the ear is longer one way, its edge bright.",
        "Threads of the bolt lay in the ear, or the bolt was loose, or a gap in the stack kept it from clamping.",
        &[Check("ear-bearing"), Check("bolt-bending"), Fit(FitPart::FitIt)],
        "Weld in a washer or new ear, a bolt with its plain shank through both ears, no gap, torque.",
    ),
    row(
        "bent-bolt",
        "Bolt bent or sheared",
        "The bolt comes out with a step, or in two.",
        "It was stepped down for more swing and spans a wide stack by itself, or it came loose and lost its clamp.",
        &[Check("bolt-bending"), Check("bolt-shear")],
        "The full bolt the bore takes, shorter spacers, the right grade; check its torque.",
    ),
    row(
        "torn-thread",
        "Threads torn, galled",
        "The shank seized half way in; the thread is smeared and torn.",
        "Steel run dry in aluminum, chips in the hole, cross-started, forced, or another thread altogether.",
        &[Fit(FitPart::FitIt), Fit(FitPart::Spares)],
        "Clean, anti-seize, three or four turns by hand before any wrench. Identify the thread first.",
    ),
    Failure {
        source: CORROSION,
        ..goes_on(row(
            "seized",
            "Shank seized in bar",
            "It will not turn; white powder or a ring of pits where the thread enters the bar.",
            "Steel and aluminum with salt water between them corrode, worst just inside the mouth of the hole.",
            &[Fit(FitPart::Recheck), Habit("Move each end once a year")],
            "Anti-seize at every fitting, wash after salt. Do not heat 7075 to free it: that takes its strength.",
        ))
    },
    row(
        "bottomed",
        "Shank bottomed",
        "The nut felt tight, yet loosens again and again; no thread shows.",
        "The shank stands on the bottom of its hole or on chips. The nut never clamped the bar.",
        &[Check("bottoming"), Fit(FitPart::AsFitted)],
        "Blow the hole out, or wind that end out a turn and the other in.",
    ),
    row(
        "torn-end",
        "Bar torn at its hole",
        "The end of the bar broke away in a ring, the rod end still in it.",
        "A large thread left too little metal around it.",
        &[Check("tapped-end"), Check("wall")],
        "A larger bar for this rod end, or the next smaller rod end if it holds.",
    ),
    row(
        "cracked-weld",
        "Insert torn from tube",
        "A crack around the tube beside the weld, or the insert pulled out whole.",
        "The tube is weakest beside its weld, and a cold or undercut weld takes more away.",
        &[Check("tapped-end"), Fit(FitPart::Recheck)],
        "Weld with plug holes by somebody who is qualified; a thicker tube; hardened tube only if treated after welding.",
    ),
    row(
        "cracked-flats",
        "Crack at wrench flats",
        "A crack runs from the corner of a wrench flat.",
        "The flats lie over the threaded hole, or their corners are sharp.",
        &[Check("wrench-flats")],
        "Flats clear of the holes, with rounded corners, as the sheet draws them.",
    ),
    goes_on(row(
        "bump-steer",
        "Wanders, bump steer",
        "It steers by itself over bumps, or the wheel sits off center.",
        "Track bar and drag link do not lie alike, or one end was adjusted and not the other.",
        &[Fit(FitPart::Turn), Fit(FitPart::Recheck)],
        "If anything in the steering is loose, bent or cracked, stop: do not drive. Then same angle first, same length next; set toe and center with both ends alike.",
    )),
    row(
        "universal-joint",
        "Universal joint broke",
        "A cap or cross of the driveshaft broke after the links were changed.",
        "The pinion was set with one link only, or past what the joint takes.",
        &[Fit(FitPart::Turn)],
        "Both links of a pair alike, then measure pinion and shaft with an angle gauge.",
    ),
    goes_on(row(
        "skewed-axle",
        "Axle not square",
        "One tire is closer to its fender; the rig crabs.",
        "One lower link was turned and the other not.",
        &[Fit(FitPart::Turn), Habit("Measure both diagonals")],
        "Set both lowers to one length, measured eye to eye, then compare the diagonals.",
    )),
    row(
        "torn-bracket",
        "Bracket torn off",
        "The bracket or its weld tore; the link looks fine.",
        "A joint out of swing pried it off, or the link was stronger than what holds it.",
        &[Check("misalignment"), Check("eye")],
        "More swing, gussets, and a bracket checked by whoever welds it.",
    ),
    goes_on(row(
        "wrong-part",
        "Part does not fit",
        "Right in the catalog, wrong on the rig: length, hand, bore or thread.",
        "“Length” meant three things, or a rod end with another shank length took the place of the one that was measured.",
        &[Fit(FitPart::Spares), Habit("The written confirmation of the order")],
        "Say eye to eye, bore × thread, hand and eye center to shank end, each by name.",
    )),
    row(
        "straightened",
        "Straightened, broke",
        "It was bent, straightened, and broke at the same place.",
        "Each bend uses metal up. Straightened cold or hot, a crack was already there.",
        &[Fit(FitPart::Hit)],
        "Straighten only to get off the trail, never to keep. Steering and 7075: not even that.",
    ),
];
