//! What builders fit: habits, which nobody has published.

use crate::document::{Role, Use};
use crate::quantity::{inch, lbf};
use crate::report::Trade;

/// One habit: for which links, up to which rig weight, and what is fitted.
struct Habit {
    role: Role,
    uses: &'static [Use],
    up_to: f64,
    least: f64,
    most: f64,
    thread: &'static str,
    words: &'static str,
}

/// A rig lighter than this, used gently, is what builders call light.
const LIGHT: f64 = lbf(3500.0);
/// Where builders step up a bar size.
const HEAVY: f64 = lbf(4200.0);
const ANY: f64 = f64::INFINITY;
const GENTLE: &[Use] = &[Use::Easy, Use::Slow];

/// First row that fits counts. All: common practice, no source; solid 7075 bar.
static HABITS: &[Habit] = &[
    Habit {
        role: Role::Lower,
        uses: &[Use::Punished],
        up_to: ANY,
        least: inch(2.5),
        most: inch(2.5),
        thread: "1-1/4-12",
        words: "2-1/2 in with 1-1/4-12 rod ends for anyone who punishes the rig",
    },
    Habit {
        role: Role::Lower,
        uses: GENTLE,
        up_to: LIGHT,
        least: inch(2.0),
        most: inch(2.0),
        thread: "7/8-14",
        words: "2 in for light rigs driven slowly; 7/8-14 rod ends will do",
    },
    Habit {
        role: Role::Lower,
        uses: GENTLE,
        up_to: HEAVY,
        least: inch(2.0),
        most: inch(2.0),
        thread: "1-1/4-12",
        words: "2 in for slow crawling, above all under 3 ft; 1-1/4-12 rod ends on a 1 in bolt for most",
    },
    Habit {
        role: Role::Lower,
        uses: GENTLE,
        up_to: ANY,
        least: inch(2.0),
        most: inch(2.25),
        thread: "1-1/4-12",
        words: "2 to 2-1/4 in for heavier rigs driven gently",
    },
    Habit {
        role: Role::Lower,
        uses: &[Use::Hard],
        up_to: HEAVY,
        least: inch(2.25),
        most: inch(2.25),
        thread: "1-1/4-12",
        words: "2-1/4 in for harder use up to about 4,000 to 4,200 lb",
    },
    Habit {
        role: Role::Lower,
        uses: &[Use::Hard],
        up_to: ANY,
        least: inch(2.5),
        most: inch(2.5),
        thread: "1-1/4-12",
        words: "2-1/2 in for harder use above about 4,200 lb",
    },
    Habit {
        role: Role::Upper,
        uses: GENTLE,
        up_to: LIGHT,
        least: inch(1.75),
        most: inch(2.0),
        thread: "3/4-16",
        words: "1-3/4 to 2 in for uppers; 3/4-16 rod ends on a light rig",
    },
    Habit {
        role: Role::Upper,
        uses: &[Use::Easy, Use::Slow, Use::Hard, Use::Punished],
        up_to: ANY,
        least: inch(1.75),
        most: inch(2.0),
        thread: "7/8-14",
        words: "1-3/4 to 2 in with 7/8-14 rod ends for uppers",
    },
    Habit {
        role: Role::TieRod,
        uses: &[Use::Easy, Use::Slow],
        up_to: ANY,
        least: NO_SIZE,
        most: ANY_SIZE,
        thread: "3/4-16",
        words: "3/4-16 rod ends for steering",
    },
    Habit {
        role: Role::TieRod,
        uses: &[Use::Hard, Use::Punished],
        up_to: ANY,
        least: NO_SIZE,
        most: ANY_SIZE,
        thread: "7/8-14",
        words: "7/8-14 rod ends for steering that is abused",
    },
];

/// Habit says nothing about the bar of a steering link, only about its rod ends.
const NO_SIZE: f64 = 0.0;
const ANY_SIZE: f64 = f64::INFINITY;

/// Whose habit a link goes by: drag link and track bar are built like the tie rod.
const fn like(role: Role) -> Role {
    match role {
        Role::DragLink | Role::TrackBar => Role::TieRod,
        other => other,
    }
}

/// What builders fit for this job in solid 7075.
pub fn for_job(role: Role, usage: Use, weight: f64) -> Option<Trade> {
    // "Light" means below the mark, the other steps include it.
    let fits = |habit: &&Habit| {
        let light = habit.up_to <= LIGHT;
        habit.role == like(role)
            && habit.uses.contains(&usage)
            && if light { weight < habit.up_to } else { weight <= habit.up_to }
    };
    HABITS.iter().find(fits).map(|habit| Trade {
        least: habit.least,
        most: habit.most,
        thread: habit.thread,
        words: habit.words,
    })
}
