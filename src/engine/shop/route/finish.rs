//! The last steps: clean, mark, try, measure, pack.

use super::machine::{CLEAN_MINUTES, LENGTH_TOLERANCE, MARK_MINUTES, MEASURE_MINUTES, PACK_MINUTES, TRIAL_MINUTES};
use super::{Asked, Operation, Shop, Step};
use crate::document::Hand;
use crate::engine::sentence::{Said, said};
use crate::source::{Cite, Obtained, PRACTICE, cite};

const HABIT: Cite = cite(&PRACTICE, "finishing a link", Obtained::Practice);

/// The last steps of every link.
pub(super) fn steps(shop: &Shop) -> Vec<Step> {
    vec![clean(shop), mark(shop), trial(shop), measure(shop), pack(shop)]
}

fn clean(shop: &Shop) -> Step {
    shop.step(Operation::Clean, None, "Deburr, wash, blow out", &CLEAN_MINUTES)
        .say(said![
            "Break every edge, wash out all oil and chips, blow both holes dry from the bottom up. Wear eye protection."
        ])
        .say(said!["A chip left at the bottom stops the shank before the jam nut is tight."])
        .from(HABIT)
}

fn mark(shop: &Shop) -> Step {
    let step = shop.step(Operation::Mark, None, "Mark", &MARK_MINUTES).from(HABIT);
    let [a, b] = shop.made.ends.each_ref().map(|end| end.hand);
    let turns_loose =
        said!["Both ends have the same hand: turning the bar does not change its length. Make sure that was ordered."];
    match (a, b) {
        (Hand::Right, Hand::Left) => step.say(marked("B")),
        (Hand::Left, Hand::Right) => step.say(marked("A")),
        (Hand::Left, Hand::Left) => step
            .say(said!["Engrave LH by hand at both ends, close to the face: both are left-hand. Mark A and B."])
            .warn(Some(turns_loose)),
        (Hand::Right, Hand::Right) => {
            step.say(said!["No LH mark: both ends are right-hand. Mark A and B."]).warn(Some(turns_loose))
        }
    }
}

fn marked(letter: &'static str) -> Said {
    said!["Engrave LH by hand at end ", (letter), ", close to the face: that is the left-hand thread. Mark A and B."]
}

fn trial(shop: &Shop) -> Step {
    shop.step(Operation::Trial, None, "Trial fit", &TRIAL_MINUTES)
        .say(said![
            "Run the rod end in at each end by hand, three to four turns: it must go in freely and show no play. Take it out again."
        ])
        .from(HABIT)
        .measuring("Rod end runs in, no play", Some(0), None)
        .measuring("Rod end runs in, no play", Some(1), None)
}

fn measure(shop: &Shop) -> Step {
    shop.step(Operation::Measure, None, "Measure as built", &MEASURE_MINUTES)
        .say(said!["Measure at room temperature what is asked for below, and write it down. What is out of tolerance does not leave the shop before it is settled."])
        .from(LENGTH_TOLERANCE.cite)
        .measuring("Face to face, finished", None, Asked::bar(shop.made, shop.machine))
        .measuring("Eye to eye, if rod ends are fitted", None, None)
}

fn pack(shop: &Shop) -> Step {
    shop.step(Operation::Pack, None, "Protect and pack", &PACK_MINUTES)
        .say(said!["Oil the threads lightly, plug or cap both holes, wrap the bar so that nothing scratches it."])
        .say(said!["Keep this sheet with the part."])
        .from(HABIT)
}
