//! How to measure on a rig: what to do, what was read, and what that makes it.

use super::standing;
use crate::document::Document;
use crate::engine::fitting::Standing;
use crate::engine::fitting::fitting_steps::bolt_in_its_ears;
use crate::engine::fitting::identify::{
    CALIPER_SOURCE, COUNT_SOURCE, READING_SOURCE, RodEndReadings, Slope, ThreadReadings, hand_says, rod_end, thread,
};
use crate::engine::fitting::measuring::{SPREAD_SOURCE, TAPE_SOURCE, mount_to_mount};
use crate::engine::formula::Line;
use crate::engine::sentence::said;
use crate::present::words::say;
use crate::present::working::{self, Step};
use crate::quantity::{System, mm, threads_per_inch};
use crate::report::{Answer, Verdict};
use crate::source::Cite;

/// What stands on the guide.
pub const TITLE: &str = "How to measure";

/// One thing to measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Topic {
    /// Mount to mount at ride height.
    MountToMount,
    /// Eye center to bar face.
    EyeToFace,
    /// Which thread.
    Thread,
    /// Which hand.
    Hand,
    /// Which rod end.
    RodEnd,
    /// The bolt through the ears.
    Bolt,
}

impl Topic {
    /// Each, in the order of need.
    pub const ALL: [Self; 6] =
        [Self::MountToMount, Self::EyeToFace, Self::Thread, Self::Hand, Self::RodEnd, Self::Bolt];

    /// Its id on the page.
    pub const fn id(self) -> &'static str {
        match self {
            Self::MountToMount => "guide-mounts",
            Self::EyeToFace => "guide-face",
            Self::Thread => "guide-thread",
            Self::Hand => "guide-hand",
            Self::RodEnd => "guide-rod-end",
            Self::Bolt => "guide-bolt",
        }
    }

    /// What stands on its fold.
    pub const fn title(self) -> &'static str {
        match self {
            Self::MountToMount => "Mount to mount, by tape",
            Self::EyeToFace => "Eye center to bar face, by ruler",
            Self::Thread => "Which thread is it?",
            Self::Hand => "Right-hand or left-hand?",
            Self::RodEnd => "Which rod end is it?",
            Self::Bolt => "Is this the right bolt?",
        }
    }

    /// How it is done.
    pub const fn how(self) -> &'static [&'static str] {
        match self {
            Self::MountToMount => &[
                "Rig on level ground, on its tires, loaded as it drives. Not on a jack, not at droop.",
                "From the center of one bolt hole to the center of the other, never from bracket edges. Edge to like edge of two equal holes is the same length and easier to read.",
                "Three readings, the tape let go and set again each time. Both sides of a pair.",
            ],
            Self::EyeToFace => &[
                "Ruler along the shank: from the center of the eye to the face of the bar, not to the jam nut.",
                "No center to see? Read from the far edge of the bolt head or washer and take off half its width.",
            ],
            Self::Thread => &[
                "Wipe the thread. Caliper over the crests, at three places; take the largest.",
                "Ruler along the thread: start on a crest, call it zero, and count the crests over 1 in or more. A thread gauge is better.",
                "An inch nut that starts on a metric shank binds after two turns. Never force it.",
            ],
            Self::Hand => &[
                "Hold the shank upright in front of you and look at the thread on the side you see.",
                "It does not matter which end is up. A groove or notch on shank or hex often marks left-hand (common practice, no source).",
            ],
            Self::RodEnd => &[
                "Three readings: eye center to shank end, thread length, and the ball, its width or its bore.",
                "Eye center to shank end: from the edge of the bore to the shank's end, plus half the bore.",
            ],
            Self::Bolt => &[
                "Measure from under the head to the first thread. That plain length must reach through both ears.",
                "Washers under the nut take up what is too long; they never make a short one right.",
            ],
        }
    }

    /// The ids of its readings.
    pub const fn readings(self) -> &'static [&'static str] {
        match self {
            Self::MountToMount => &["tape-1", "tape-2", "tape-3"],
            Self::EyeToFace => &["face-a", "face-b"],
            Self::Thread => &["thread-major", "thread-count", "thread-over", "leaf-inch", "leaf-metric"],
            Self::Hand => &["slope"],
            Self::RodEnd => &["rod-eye", "rod-thread", "rod-ball", "rod-bore"],
            Self::Bolt => &["bolt-plain", "bolt-washers"],
        }
    }
}

/// What readings come to, ready to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// The answer.
    pub says: String,
    /// What else there is to say.
    pub more: Vec<String>,
    /// Where limits and errors come from.
    pub sources: Vec<String>,
    /// The working.
    pub working: Vec<Step>,
}

impl Judged {
    fn new(standing: Standing, good: &'static str, says: String) -> Self {
        let word = if standing == Standing::Good { good } else { standing::word(standing) };
        Self { mark: standing::mark(standing), word, says, more: vec![], sources: vec![], working: vec![] }
    }

    /// The same while a hit may be open against the bar.
    #[must_use]
    pub fn unless_hit(self, hit: bool) -> Self {
        let (mark, word) = standing::unless_hit(self.mark, self.word, hit);
        Self { mark, word, ..self }
    }

    fn with(self, sources: &[Cite], lines: &[Line], system: System) -> Self {
        let sources = sources.iter().map(|source| source.sentence()).collect();
        Self { sources, working: working::steps(lines, system), ..self }
    }
}

/// The readings of a bar, by the ids of their rows.
pub struct Readings<'a> {
    /// The number under an id.
    pub number: &'a dyn Fn(&str) -> Option<f64>,
    /// What was picked under an id.
    pub picked: &'a dyn Fn(&str) -> Option<&'static str>,
}

/// What the readings of a topic come to; nothing for what another place judges.
pub fn judged(
    topic: Topic,
    readings: &Readings,
    document: &Document,
    index: usize,
    answer: &Answer,
    system: System,
) -> Option<Vec<Judged>> {
    let number = readings.number;
    match topic {
        Topic::MountToMount => Some(vec![tape(["tape-1", "tape-2", "tape-3"].map(number), answer, system)]),
        Topic::EyeToFace => None,
        Topic::Thread => Some(vec![which_thread(number, system)]),
        Topic::Hand => {
            let slope = (readings.picked)("slope").map(|id| match id {
                "left" => Slope::RisesLeft,
                _ => Slope::RisesRight,
            });
            let (standing, says) = hand_says(slope);
            Some(vec![Judged::new(standing, "Hand known", say(&says, system))])
        }
        Topic::RodEnd => Some(vec![which_rod_end(number, system)]),
        Topic::Bolt => {
            let bolt = |end: usize| {
                let found =
                    bolt_in_its_ears(document, index, answer, end, number("bolt-plain"), number("bolt-washers"))?;
                let mut says = say(&said!["End ", (["A", "B"][end]), ": "], system);
                says.push_str(&say(&found.says, system));
                Some(Judged::new(found.standing, "Grip fits", says).with(&[], &found.working, system))
            };
            Some([0, 1].into_iter().filter_map(bolt).collect())
        }
    }
}

fn tape(readings: [Option<f64>; 3], answer: &Answer, system: System) -> Judged {
    let found = mount_to_mount(readings, &answer.link);
    let beside = found.beside_build.as_ref();
    // The worse of the two speaks for both.
    let whole = beside.map_or(found.standing, |beside| beside.standing.max(found.standing));
    let mut judged = Judged::new(whole, "They agree", say(&found.says, system));
    judged.more.extend(beside.map(|beside| say(&beside.says, system)));
    judged.more.extend(found.turns.map(|turns| {
        say(&said!["The error of the tape alone is ", (turns, Turns), " of the bar, either way."], system)
    }));
    judged.with(&[SPREAD_SOURCE, TAPE_SOURCE], &found.working, system)
}

fn which_thread(number: &dyn Fn(&str) -> Option<f64>, system: System) -> Judged {
    let [inch_leaf, metric_leaf] = [number("leaf-inch"), number("leaf-metric")];
    let says = if inch_leaf.is_some() && metric_leaf.is_some() {
        return Judged::new(
            Standing::NotJudged,
            "",
            "Two leaves of the gauge are entered: one fits better. Take the other back.".to_string(),
        );
    } else {
        ThreadReadings {
            major: number("thread-major"),
            counted: number("thread-count"),
            over: number("thread-over"),
            leaf: inch_leaf.map(threads_per_inch).or(metric_leaf.map(mm)),
        }
    };
    let found = thread(says);
    let mut judged = Judged::new(found.standing, "Identified", say(&found.says, system));
    judged.more.extend(found.next.map(|next| say(&next, system)));
    judged.with(&[CALIPER_SOURCE, COUNT_SOURCE], &found.working, system)
}

fn which_rod_end(number: &dyn Fn(&str) -> Option<f64>, system: System) -> Judged {
    let found = rod_end(RodEndReadings {
        eye_to_end: number("rod-eye"),
        thread_length: number("rod-thread"),
        ball_width: number("rod-ball"),
        bore: number("rod-bore"),
    });
    let mut judged = Judged::new(found.standing, "Identified", say(&found.says, system));
    judged.more.extend((!found.next.is_empty()).then(|| found.next.to_string()));
    let mut sources: Vec<Cite> = found.rows.iter().map(|row| row.cite).collect();
    sources.push(READING_SOURCE);
    judged.with(&sources, &[], system)
}
