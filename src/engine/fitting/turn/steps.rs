//! The steps of a turn, in the order of the work, and what to mind.

use super::{EyeTurn, Place, Turned, Way};
use crate::document::Role;
use crate::engine::fitting::hands::{nut_loosens, nut_tightens};
use crate::engine::fitting::{threads, threads_show};
use crate::engine::formula::Sheet;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::jam_torque;
use crate::report::LinkGeometry;

const LETTERS: [&str; 2] = ["A", "B"];

/// `3 turns and 2 flats`, of sixths of a turn.
pub fn turns_and_flats(flats: u32) -> String {
    let (turns, flats) = (flats / 6, flats % 6);
    let turn = if turns == 1 { "turn" } else { "turns" };
    let flat = if flats == 1 { "flat" } else { "flats" };
    match (turns, flats) {
        (0, flats) => format!("{flats} {flat}"),
        (turns, 0) => format!("{turns} {turn}"),
        (turns, flats) => format!("{turns} {turn} and {flats} {flat}"),
    }
}

/// `3 half turns`.
pub(in crate::engine::fitting) fn half_turns(count: u32) -> String {
    if count == 1 { "1 half turn".to_string() } else { format!("{count} half turns") }
}

impl Way {
    /// What to turn and how far, without the direction: `3 turns and 2 flats`, `3 half turns`.
    pub fn how_far(self) -> String {
        match self {
            Self::Bar(bar) => turns_and_flats(bar.flats),
            Self::Eye(eye) => half_turns(eye.half_turns),
            Self::Eyes([a, b]) => format!("{} at A and {} at B", half_turns(a.half_turns), half_turns(b.half_turns)),
        }
    }

    /// The answer in one line.
    pub fn says(self) -> String {
        match self {
            Self::Bar(bar) => {
                format!("{}, {}, looking from the eye at end A", turns_and_flats(bar.flats), bar.turning.words())
            }
            Self::Eye(eye) => format!(
                "Unbolt the eye at end {} and turn it {}, {}, seen from that eye",
                LETTERS[eye.end.min(1)],
                half_turns(eye.half_turns),
                eye.turning.words()
            ),
            Self::Eyes(eyes) => {
                let [a, b] = eyes.map(|eye| {
                    format!(
                        "the eye at end {} {}, {}",
                        LETTERS[eye.end.min(1)],
                        half_turns(eye.half_turns),
                        eye.turning.words()
                    )
                });
                format!("One bolt out at a time, turn {a}, then {b}, each seen from its own eye")
            }
        }
    }
}

/// What to do, in order.
pub(super) fn steps(link: &LinkGeometry, turned: &Turned, place: Place) -> Vec<Said> {
    let mut steps = vec![said!["Park on level ground at ride height, on its tires, and chock the wheels."]];
    if place.pair {
        steps.push(said![
            (if matches!(turned.way, Some(Way::Bar(_))) {
                "Both bars of the pair are turned: loosen the jam nuts of both before you turn either."
            } else {
                "Both bars of the pair are turned, one after the other."
            })
        ]);
    }
    match turned.way {
        Some(Way::Bar(bar)) => {
            steps.push(loosen(link, &[0, 1]));
            steps.push(said!["Draw a line along the bar, so that you can count turns and flats. A flat is one side of the jam nut, a sixth of a turn."]);
            steps.push(said![
                "Turn the bar ",
                (turns_and_flats(bar.flats)),
                " ",
                (bar.turning.words()),
                ", looking from the eye at end A along the bar. Seen from the eye at B that is ",
                (bar.turning.opposite().words()),
                "."
            ]);
            steps.push(said!["If the bar does not turn by hand or with a small wrench, the link is under load: rock the rig, or take the load off it. Do not force it."]);
            if place.pair {
                steps
                    .push(said!["Turn the other bar of the pair before you tighten this one: how far stands with it."]);
            }
        }
        Some(way) => {
            steps.push(said!["Stand the frame and the axle on stands, so that nothing falls when a bolt is out."]);
            if way.eyes().len() > 1 {
                steps.push(said!["One end at a time: the other end stays bolted, with its nut tight."]);
            }
            for eye in way.eyes() {
                steps.extend(by_eye(link, eye));
            }
            if place.pair {
                steps.push(said!["Then the other bar of the pair: how far stands with it."]);
            }
        }
        None => {}
    }
    let [a, b] = &turned.ends;
    steps.push(said![
        "Measure: eye to eye ",
        (turned.length, Length),
        "; eye center to bar face ",
        (a.eye_to_face, Length),
        " at A and ",
        (b.eye_to_face, Length),
        " at B. About ",
        (threads_show(a.visible_threads)),
        " at A, ",
        (threads(b.visible_threads)),
        " at B."
    ]);
    // An eye that was turned by itself is square and tight before the other bolt comes out.
    if matches!(turned.way, Some(Way::Bar(_))) {
        steps
            .push(said!["Turn each eye square to its bracket, in the middle of its tilt, so that neither ball binds."]);
        steps.extend([0, 1].map(|end| tighten(link, end)));
    }
    steps.push(said!["Paint a line across each jam nut and the bar. Look at it after the first drive."]);
    steps
}

/// One eye with its bolt out: loosened, turned, bolted up and tightened again.
fn by_eye(link: &LinkGeometry, eye: &EyeTurn) -> Vec<Said> {
    let end = eye.end.min(1);
    let letter = LETTERS[end];
    vec![
        loosen(link, &[end]),
        said![
            "Take the bolt out at ",
            (letter),
            ". Hold the bar, and leave the nut at ",
            (LETTERS[1 - end]),
            " tight."
        ],
        said![
            "Turn that eye ",
            (half_turns(eye.half_turns)),
            " ",
            (eye.turning.words()),
            ", seen from it, so that it is square to its bracket again."
        ],
        said![
            "Bring the axle to the eye with a jack or a strap until the bolt at ",
            (letter),
            " slides in by hand. Do not drive it in, and do not pry on the ball. Bolt it up, with the ball free to tilt."
        ],
        tighten(link, end),
    ]
}

fn loosen(link: &LinkGeometry, ends: &[usize]) -> Said {
    let one = |end: usize| {
        said![
            "the nut at ",
            (LETTERS[end.min(1)]),
            " (",
            (link.ends[end.min(1)].hand.words()),
            ") ",
            (nut_loosens(link.ends[end.min(1)].hand).words())
        ]
    };
    let mut said = said![(hold(link)), " and loosen "];
    for (index, end) in ends.iter().enumerate() {
        if index > 0 {
            said.extend(said![" and "]);
        }
        said.extend(one(*end));
    }
    said.extend(if ends.len() > 1 {
        said![", each seen from its own eye. Back both nuts off the bar’s faces before anything is turned."]
    } else {
        said![", seen from its eye."]
    });
    said
}

fn hold(link: &LinkGeometry) -> &'static str {
    if link.cut_flats().is_some() { "Hold the bar on its flats" } else { "Hold the bar with a strap or soft jaws" }
}

fn tighten(link: &LinkGeometry, end: usize) -> Said {
    let end = end.min(1);
    let torque = jam_torque::range(link.ends[end].thread, &mut Sheet::silent());
    said![
        (hold(link)),
        " and tighten the nut at ",
        (LETTERS[end]),
        " ",
        (nut_tightens(link.ends[end].hand).words()),
        ", seen from its eye, to between ",
        (torque.least, Torque),
        " and ",
        (torque.most, Torque),
        ", anti-seize on the shank. Keep the bar from turning: if it turns with the nut, that end winds out."
    ]
}

/// What to mind.
pub(super) fn cautions(link: &LinkGeometry, place: Place) -> Vec<Said> {
    let mut cautions = Vec::new();
    if !link.adjustment.opposite_hands {
        cautions.push(said!["Both ends have the same hand: never set the length by turning the bar. One end unscrews while the other screws in."]);
    }
    if place.role.steers() {
        cautions.push(said!["Steering is safety critical: a nut that is not tight here can take the steering away. Your local rules and the makers of its parts decide, and a licensed engineer should check it."]);
    }
    if matches!(place.role, Role::Lower | Role::Upper) && place.pair {
        cautions.push(said!["One bar of a pair turned without the other sets the axle crooked."]);
    }
    cautions
}
