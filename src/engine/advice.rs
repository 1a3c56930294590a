//! Cautions where the decision is made, and the fitting checklist.

use super::formula::Sheet;
use super::sentence::{Said, said};
use super::tables::jam_torque;
use crate::document::Hand;
use crate::report::{Answer, Verdict};

/// What to mind before acting on an answer, most important first.
pub(super) fn cautions(answer: &Answer, copied_end: Option<usize>) -> Vec<Said> {
    let mut cautions = Vec::new();
    if answer.verdict == Verdict::Fails {
        cautions.push(said!["At least one part fails below. Do not build this link as it stands."]);
    }
    if !answer.link.adjustment.opposite_hands {
        cautions.push(if answer.link.adjustment.per_turn > 0.0 {
            said!["Both ends have the same hand: turning the bar winds one end out while the other goes in, and changes the length only by the difference of their pitches. One end can unscrew without anybody noticing. Use one right-hand and one left-hand end."]
        } else {
            said!["Both ends have the same hand: turning the bar does not change its length, and one end can unscrew without anybody noticing. Use one right-hand and one left-hand end."]
        });
    }
    if answer.role.steers() {
        cautions.push(said!["Steering is safety critical and regulated: your local rules and the makers of its parts decide, and a licensed engineer should check it. Never straighten or weld a steering link, and never mount it in single shear."]);
    }
    if let Some(end) = copied_end {
        let [entered, copied] = if end == 1 { ["A", "B"] } else { ["B", "A"] };
        cautions.push(said![
            "Only the rod end at ",
            (entered),
            " was entered; the one at ",
            (copied),
            " is taken to be the same. Enter it if it differs."
        ]);
    }
    if !answer.loads.caution.is_empty() {
        cautions.push(answer.loads.caution.clone());
    }
    cautions.push(said!["This is an estimate for planning, not a certificate. A rod-end maker's rating, your local rules and a licensed engineer take precedence."]);
    cautions.push(said!["Links carry people. If this rig sees public roads, or the link is welded, repaired or outside the usual, have a licensed engineer check it."]);
    for words in answer.link.material.cautions {
        cautions.push(said![(*words)]);
    }
    cautions.push(said!["A part that passes these numbers can still crack with time. Replace a link that is bent, cracked or deeply gouged; never straighten it."]);
    cautions
}

/// How to fit the link, in the order of the work.
pub(super) fn checklist(answer: &Answer) -> Vec<Said> {
    // Nobody should be led through fitting a link that does not hold.
    if answer.verdict == Verdict::Fails {
        return vec![said!["Do not fit this link: a part of it fails above. Change the size or the entries first."]];
    }
    let link = &answer.link;
    let [a, b] = &link.ends;
    let mut steps = Vec::new();
    if link.provisional {
        steps.push(said!["Measure your rod ends before you saw: eye center to shank end, and thread length. Bar and cut length stand on a published series until then."]);
    }
    steps.extend([
        said![
            "Rig at ride height, on its tires. Measure hole center to hole center again: ",
            (link.length, Length),
            "."
        ],
        said![
            "Jam nut on each shank first, all the way up: ",
            (a.hand.words()),
            " at end A, ",
            (b.hand.words()),
            " at end B."
        ],
        said![
            "Blow the chips out of both holes. Anti-seize on the shanks; each starts by hand for three or four turns."
        ],
        said![
            "Screw both ends in evenly until the eyes are ",
            (link.length, Length),
            " apart, center to center, and both eyes sit square to their brackets."
        ],
    ]);
    let ends = [("A", a), ("B", b)];
    steps.extend(ends.map(|(letter, end)| {
        said![
            "End ",
            (letter),
            ": ruler from eye center to bar face reads ",
            (end.eye_to_face, Length),
            ", which puts ",
            (end.engagement, FineLength),
            " of thread in the bar."
        ]
    }));
    let most =
        ends.iter().map(|(_, end)| end.stop.visible_threads.max(end.visible_threads)).fold(f64::INFINITY, f64::min);
    steps.push(said![
        "No more than ",
        ((most * 4.0 + 1e-9).floor() / 4.0, Ratio),
        " threads show past either jam nut, and about as many at A as at B."
    ]);
    for (letter, end) in ends {
        let torque = jam_torque::range(end.thread, &mut Sheet::silent());
        steps.push(said![
            "End ",
            (letter),
            ": ",
            (if link.cut_flats().is_some() {
                "hold the bar on its flats"
            } else {
                "hold the bar in a vise with soft jaws, or on flats of its insert"
            }),
            " and tighten the jam nut ",
            (turn(end.hand)),
            " to between ",
            (torque.least, Torque),
            " and ",
            (torque.most, Torque),
            ", anti-seize on the shank."
        ]);
    }
    steps.push(said![
        "Nothing touches a tire, a brake line or the other links, at full lock and full travel both ways."
    ]);
    steps.push(said!["Paint a line across each jam nut and the bar, so that a nut that moves shows."]);
    steps.push(said!["After the first drive, and before every trip: both lines still straight, both nuts tight, no more thread showing than today."]);
    steps
}

fn turn(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "clockwise, seen from the eye,",
        Hand::Left => "counterclockwise, seen from the eye,",
    }
}
