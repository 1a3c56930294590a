//! What to look at, where it stops being in order, and where that limit comes from.

use super::Occasion;
use crate::engine::fitting::fitting_steps::{TIRE_CLEARANCE, most_showing};
use crate::engine::fitting::quarters;
use crate::engine::formula::Sheet;
use crate::engine::formulas::fastening;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::jam_torque;
use crate::engine::tables::materials::Form;
use crate::quantity::{exceeds, inch};
use crate::report::{Answer, EndGeometry, StopBy};
use crate::source::{AC_43_13, Cite, Obtained, PRACTICE, SERVICE_MANUAL, STATICS, cite};

/// One thing to look at.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    /// Never reused once released.
    pub id: &'static str,
    /// What to look at and how.
    pub words: Said,
    /// Where it stops being in order, and what then.
    pub limit: Said,
    /// Where the limit comes from.
    pub source: Cite,
}

const HABIT: Cite = cite(&PRACTICE, "", Obtained::Practice);

/// What to look at on an occasion, the most urgent first.
pub fn looks(answer: &Answer, occasion: Occasion) -> Vec<Look> {
    let steers = answer.role.steers();
    let [a, b] = &answer.link.ends;
    let look = |id, words, limit, source| Look { id, words, limit, source };
    let mut looks = vec![
        look(
            "witness",
            said!["Witness line across each jam nut and the bar."],
            said!["Straight and unbroken. A line that has moved: do not drive before that nut is tight again."],
            HABIT,
        ),
        nuts(occasion, [a, b]),
        look(
            "threads",
            said!["Threads showing past each jam nut."],
            threads_showing(most_showing(a), most_showing(b)),
            stop_source([a, b]),
        ),
        play(steers),
        look(
            "rod-ends",
            said!["Heads and shanks of both rod ends."],
            said!["None stretched, bent, cracked or dented, no liner missing. Otherwise replace the rod end."],
            HABIT,
        ),
        bow(answer),
        look(
            "bar",
            said!["The bar, with a rag along it: dents, gouges, cracks."],
            said!["No crack and nothing a fingernail catches in. Otherwise stop and go to After a hit."],
            HABIT,
        ),
        look(
            "bolts",
            said!["Bolts through the eyes, and the holes in the ears."],
            said!["Both at their torque, no hole grown oval, no rust line around the head."],
            HABIT,
        ),
        look(
            "rubbing",
            said!["Shiny places: tire, brake line, other links."],
            said!["None. Clearance to a tire is ", (TIRE_CLEARANCE, Length), " or more at full lock and full travel."],
            HABIT,
        ),
    ];
    if steers {
        looks.push(look(
            "steering",
            said!["Steering lock to lock, engine running, somebody looking."],
            said!["No knock, no joint that binds, every cotter pin and lock nut in place. Otherwise do not drive."],
            HABIT,
        ));
    }
    looks
}

fn threads_showing(a: f64, b: f64) -> Said {
    let [at_a, at_b] = [a, b].map(quarters);
    if at_a == at_b {
        return said![
            "No more than when you last set it, and never more than ",
            (at_a),
            " at either end. More: an end has wound out; go to Is it still safe?"
        ];
    }
    said![
        "No more than when you last set it, and never more than ",
        (at_a),
        " at A and ",
        (at_b),
        " at B. More: an end has wound out; go to Is it still safe?"
    ]
}

/// Where the most threads that may show come from, at the end with the fewer.
fn stop_source([a, b]: [&EndGeometry; 2]) -> Cite {
    let tighter = if exceeds(most_showing(a), most_showing(b)) { b } else { a };
    match tighter.stop.by {
        StopBy::VisibleThreads => cite(&PRACTICE, "three threads showing", Obtained::Practice),
        StopBy::Engagement => cite(&STATICS, "the least thread this link needs in its bar", Obtained::Computed),
        StopBy::ShankBending => cite(&STATICS, "the shank reaches its limit in bending", Obtained::Computed),
    }
}

fn nuts(occasion: Occasion, ends: [&EndGeometry; 2]) -> Look {
    let ranges = ends.map(|end| jam_torque::range(end.thread, &mut Sheet::silent()));
    let printed = ends.iter().all(|end| jam_torque::printed(end.thread).is_some());
    let source = if printed {
        cite(&AC_43_13, "Table 7-1, thin nuts, less 30 % with anti-seize (common practice)", Obtained::Copied)
    } else {
        HABIT
    };
    let words = if occasion == Occasion::HalfYear {
        said![
            "Back off each jam nut, hold the bar, and tighten it again. A nut that will not back off turns with its shank: free it first."
        ]
    } else {
        said!["Wrench on each jam nut, the bar held."]
    };
    let [a, b] = ranges;
    let alike = ends.map(|end| end.thread.id);
    let limit = if alike[0] == alike[1] {
        said![
            "Neither moves below ",
            (a.least, Torque),
            " at either end; tighten to no more than ",
            (a.most, Torque),
            " at both ends."
        ]
    } else {
        said![
            "Neither moves below ",
            (a.least, Torque),
            " at A and ",
            (b.least, Torque),
            " at B; tighten to no more than ",
            (a.most, Torque),
            " at A and ",
            (b.most, Torque),
            " at B."
        ]
    };
    Look { id: "nuts", words, limit, source }
}

/// What one vehicle maker allows a ball joint to move up and down.
const BALL_JOINT_PLAY: f64 = inch(0.02);

fn play(steers: bool) -> Look {
    let words = said!["Play: a pry bar at each eye, or a hand on the link while somebody rocks the steering."];
    if steers {
        return Look {
            id: "play",
            words,
            limit: said![
                "Any knock you can feel in a steering joint: do not drive, replace it. A vehicle maker allows ball joints ",
                (BALL_JOINT_PLAY, FineLength),
                "; rod ends have no such allowance."
            ],
            source: cite(
                &SERVICE_MANUAL,
                "vertical play of a ball joint; none for a rod end is common practice",
                Obtained::Copied,
            ),
        };
    }
    Look {
        id: "play",
        words,
        limit: said!["Any knock you can feel: replace the rod end before the next outing."],
        source: HABIT,
    }
}

/// From this share of its length a bow in a suspension tube is a reject (common practice, no source).
const BOW_SHARE: f64 = 0.01;

fn bow(answer: &Answer) -> Look {
    let words = said!["A string from eye to eye along the bar, and the bar rolled under it."];
    let made = &answer.link;
    let limit = if answer.role.steers() {
        said!["No gap at all: a steering link with any bend is replaced, never straightened."]
    } else if made.material.form == Form::Bar {
        said![
            "No bow that was not there before. A bar with any lasting bow goes to After a hit; one of 7075 is replaced."
        ]
    } else {
        let most = Sheet::silent().work(&fastening::BOW_TO_LOOK_AT, &[BOW_SHARE, made.length]);
        said!["Less than ", (most, Length), " of bow, and no kink. Any new bow goes to After a hit."]
    };
    Look { id: "bow", words, limit, source: fastening::BOW_TO_LOOK_AT.formula.source }
}
