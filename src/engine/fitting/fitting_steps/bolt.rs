//! The bolt through an eye: its grip, its length, its torque, and whether its thread stays out of the ears.

use super::{Step, ends};
use crate::engine::bolt::Bolt;
use crate::engine::fitting::Standing;
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::fastening;
use crate::engine::given::Values;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::bolt_torque;
use crate::inputs;
use crate::quantity::{System, exceeds, inch, mm};
use crate::report::{Answer, EndGeometry};

/// A lock nut is taken to be as high as its bolt is thick (assumption).
const LOCK_NUT: f64 = 1.0;
/// Threads that show past a lock nut (common practice, no source).
const PAST_THE_NUT: f64 = 2.0;

/// The length that two ears, their spacers, the ball and any gap ask for without thread.
fn grip(given: &Values, end: &EndGeometry, sheet: &mut Sheet) -> f64 {
    let [ear, spacer, gap] = [&inputs::EAR, &inputs::SPACER, &inputs::GAP].map(|input| given.known(input));
    sheet.work(&fastening::BOLT_GRIP, &[end.ball_width, ear, spacer, gap])
}

/// The least length of a bolt under its head, without washers, up to the next size that is sold; none while its thread is
/// not known.
fn length(bolt: &Bolt, grip: f64, sheet: &mut Sheet) -> Option<f64> {
    let pitch = bolt.thread()?.pitch;
    let least = sheet.work(&fastening::BOLT_LENGTH, &[grip, LOCK_NUT, bolt.diameter, PAST_THE_NUT, pitch]);
    let metric = bolt.size.is_some_and(|size| size.system == System::Metric);
    let step = if metric { mm(5.0) } else { inch(0.125) };
    Some((least / step - 1e-6).ceil() * step)
}

pub(super) fn steps(given: &Values, answer: &Answer, steps: &mut Vec<Step>) {
    let mut torques = Vec::new();
    for (letter, end, index) in ends(answer) {
        let grip = grip(given, end, &mut Sheet::silent());
        let bolt = given.bolt(index, end.bore);
        let mut words = said![
            "Bolt at ",
            (letter),
            ": ",
            (grip, FineLength),
            " or more of plain shank, through both ears, spacers and ball. No thread in an ear."
        ];
        if let Some((bolt, length)) =
            bolt.as_ref().and_then(|bolt| Some((bolt, length(bolt, grip, &mut Sheet::silent())?)))
        {
            words.extend(said![
                " A ",
                (bolt.diameter, Trade),
                " bolt is about ",
                (length, Length),
                " long under its head, and longer by its washers."
            ]);
        }
        let assumed = !given.is_decided(&inputs::EAR);
        let why = if assumed {
            said![
                "Thread in an ear wears it oval and weakens the bolt (common practice, no source). The thickness of the ears is assumed: measure yours."
            ]
        } else {
            said!["Thread in an ear wears it oval and weakens the bolt (common practice, no source)."]
        };
        steps.push(Step::on_screen(["bolt-a", "bolt-b"][index], words).because(why));
        torques.push(torque(letter, index, bolt.as_ref()));
    }
    steps.extend(torques);
}

fn torque(letter: &'static str, index: usize, bolt: Option<&Bolt>) -> Step {
    let id = ["bolt-torque-a", "bolt-torque-b"][index];
    let known = bolt.and_then(|bolt| Some((bolt, bolt_torque::published(bolt.grade, bolt.size?, bolt.series)?)));
    let Some((bolt, row)) = known else {
        let words = said![
            "Bolt at ",
            (letter),
            ": a new lock nut, tightened at ride height to the torque of the bolt's maker; none is published here."
        ];
        return Step::on_screen(id, words);
    };
    let words = said![
        "Bolt at ",
        (letter),
        ": a new lock nut, tightened at ride height to ",
        (row.torque, Torque),
        " (",
        (bolt.grade.label),
        ", ",
        (row.on),
        "), two threads past the nut."
    ];
    Step::on_screen(id, words).because(said!["Torque: ", (row.cite.words()), "."])
}

/// A bolt beside the grip it must have.
#[derive(Debug, Clone, PartialEq)]
pub struct BoltJudged {
    /// Good only without thread in an ear and with a nut that clamps.
    pub standing: Standing,
    /// The grip it must have.
    pub grip: f64,
    /// What follows.
    pub says: Said,
    /// The working.
    pub working: Vec<Line>,
}

/// Judges the bolt in hand: its length without thread, and all washers under head and nut together.
pub fn bolt_in_its_ears(
    document: &crate::document::Document,
    index: usize,
    answer: &Answer,
    end: usize,
    plain: Option<f64>,
    washers: Option<f64>,
) -> Option<BoltJudged> {
    let given = Values::new(document, index)?;
    let mut sheet = Sheet::recording();
    let made = answer.link.ends.get(end)?;
    let grip = grip(&given, made, &mut sheet);
    if let Some(bolt) = given.bolt(end, made.bore) {
        length(&bolt, grip, &mut sheet);
    }
    let (standing, says) = judged(grip, plain, washers.unwrap_or(0.0), &mut sheet);
    Some(BoltJudged { standing, grip, says, working: sheet.lines })
}

fn judged(grip: f64, plain: Option<f64>, washers: f64, sheet: &mut Sheet) -> (Standing, Said) {
    let Some(plain) = plain.filter(|plain| plain.is_finite() && *plain >= 0.0) else {
        return (
            Standing::NotJudged,
            said![
                "Not judged: measure the bolt from under its head to its first thread. It needs ",
                (grip, FineLength),
                "."
            ],
        );
    };
    if !grip.is_finite() {
        return (Standing::NotJudged, said!["Not judged: enter the ears and spacers in the Size view."]);
    }
    if exceeds(grip, plain) {
        let inside = sheet.work(&fastening::THREAD_IN_EAR, &[grip, plain]);
        let says = said![
            "Thread in the ear: ",
            (inside, FineLength),
            " of it. Do not fit this bolt; take one with ",
            (grip, FineLength),
            " or more of plain shank, and washers under its nut."
        ];
        return (Standing::Stop, says);
    }
    if exceeds(plain, grip + washers) {
        let says = said![
            "No thread in the ears, but the nut runs out of thread before it clamps: add ",
            (plain - grip - washers, FineLength),
            " of washers, or the joint stays loose at full torque."
        ];
        return (Standing::Stop, says);
    }
    let says = said![
        "Plain shank through both ears, and the nut clamps: it has ",
        (plain, FineLength),
        " and needs ",
        (grip, FineLength),
        "."
    ];
    (Standing::Good, says)
}
