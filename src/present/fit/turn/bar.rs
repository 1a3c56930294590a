//! What to turn at one bar, in words.

use super::super::standing::{mark, unless_hit, word};
use crate::document::{Document, Hand, Role};
use crate::engine::fitting::hands::nut_loosens;
use crate::engine::fitting::moves::LinkChange;
use crate::engine::fitting::turn::{FLATS, SameHand, Turned, Way, turns_and_flats};
use crate::engine::fitting::{Standing, quarters_below, threads_show};
use crate::engine::sentence::Said;
use crate::log::Spot;
use crate::present::fit::own_rod_end::Unmeasured;
use crate::present::words::{letter, lower, say};
use crate::present::working::{self, Step};
use crate::quantity::{Kind, System, exceeds, fit, show};
use crate::report::Verdict;

/// Said of a turn that was worked out from readings and stays within both stops.
const WITHIN: &str = "Within its stops";

/// What to turn at one bar.
#[derive(Debug, Clone, PartialEq)]
pub struct LinkTurn {
    /// Which link of the build.
    pub link: Option<usize>,
    /// Which bar of it; none where the build does not hold it.
    pub spot: Option<Spot>,
    /// Its name.
    pub title: String,
    /// How much longer it becomes.
    pub change: f64,
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// The answer in large letters: turns, flats and direction.
    pub large: Option<String>,
    /// Which nut loosens which way.
    pub nuts: Option<String>,
    /// Why nothing is turned.
    pub instead: Option<String>,
    /// What it gives.
    pub gives: Option<String>,
    /// What a tape may be off by, in flats.
    pub tape: Option<String>,
    /// With an eye turned by itself: the least step, and how near that comes to what was asked.
    pub step: Option<String>,
    /// What shows afterwards, at each end.
    pub after: Vec<String>,
    /// With ends of one hand: what turning the bar really does.
    pub same_hand: Option<String>,
    /// What the numbers afterwards rest on without having been read.
    pub open: Vec<String>,
    /// The ends whose rod ends nobody measured.
    pub unmeasured: Vec<Unmeasured>,
    /// What to do, in order.
    pub steps: Vec<String>,
    /// What to mind.
    pub cautions: Vec<String>,
    /// The line for the log.
    pub log: String,
    /// How the numbers came out.
    pub working: Vec<Step>,
    /// Whether a hit is open against it.
    pub hit: bool,
}

impl LinkTurn {
    /// Takes the green word while a hit is open against a bar that is turned with it.
    pub(super) fn take_the_green(&mut self) {
        (self.mark, self.word) = unless_hit(self.mark, self.word, true);
    }

    /// Whether this is something that can be turned and written down.
    pub fn can_be_logged(&self) -> bool {
        self.large.is_some() && self.spot.is_some()
    }
}

/// `0.194 in longer`.
pub(super) fn longer(change: f64, system: System) -> String {
    format!("{} {}", fit(change.abs(), system), if change < 0.0 { "shorter" } else { "longer" })
}

/// What a link that changes is called; by its role where the build does not hold it.
pub(super) fn name(document: &Document, change: &LinkChange) -> String {
    let named = change.link.and_then(|link| document.links.get(link)).map(crate::document::Link::title);
    named.unwrap_or_else(|| match change.role {
        Role::Upper => "Upper links".to_string(),
        _ => "Lower links".to_string(),
    })
}

/// A link that the build does not hold, or that has no answer yet: its change alone.
pub(super) fn of_change(document: &Document, change: &LinkChange, system: System) -> LinkTurn {
    let title = name(document, change);
    LinkTurn {
        link: change.link,
        spot: None,
        title,
        change: change.change,
        mark: mark(Standing::NotJudged),
        word: word(Standing::NotJudged),
        large: None,
        nuts: None,
        instead: Some("This build does not say what these links are: add them for turns and flats.".to_string()),
        gives: Some(format!("Each {}.", longer(change.change, system))),
        tape: None,
        step: None,
        after: Vec::new(),
        same_hand: None,
        open: Vec::new(),
        unmeasured: Vec::new(),
        steps: Vec::new(),
        cautions: Vec::new(),
        log: String::new(),
        working: Vec::new(),
        hit: false,
    }
}

/// Sentences in the reader's units.
pub(super) fn all(said: &[Said], system: System) -> Vec<String> {
    said.iter().map(|said| say(said, system)).collect()
}

/// Which nut loosens which way, in one line.
fn nuts(way: Way, hands: [Hand; 2]) -> String {
    let loosens = |end: usize| nut_loosens(hands[end]).words();
    match way {
        Way::Bar(_) => format!(
            "First loosen the nut at A {} and the nut at B {}, each seen from its own eye.",
            loosens(0),
            loosens(1)
        ),
        Way::Eye(eye) => {
            let end = eye.end.min(1);
            format!(
                "First loosen the nut at {} {}, seen from its eye; leave the other tight.",
                letter(end),
                loosens(end)
            )
        }
        Way::Eyes(_) => format!(
            "One end at a time: the nut at A loosens {}, the nut at B {}, each seen from its own eye. Leave the other tight.",
            loosens(0),
            loosens(1)
        ),
    }
}

/// A bar of the build: where it sits, and what it is.
pub(super) struct OfBar {
    pub(super) link: usize,
    pub(super) spot: Spot,
    pub(super) title: String,
    pub(super) hands: [Hand; 2],
    pub(super) unmeasured: Vec<Unmeasured>,
    /// Whether a hit is open against it.
    pub(super) hit: bool,
}

/// What was worked out for a bar.
pub(super) fn of_turned(turned: &Turned, bar: OfBar, system: System) -> LinkTurn {
    let OfBar { link, spot, title, hands, unmeasured, hit } = bar;
    let after = |end: usize| {
        let shown = &turned.ends[end];
        let stands = if shown.standing == Standing::Stop {
            "Still beyond its stop.".to_string()
        } else {
            let [out, inward] = shown.turns_left.map(quarters_below);
            format!(
                "It could still go {} out and {} in.",
                show(out, Kind::Turns, system),
                lower(&show(inward, Kind::Turns, system))
            )
        };
        format!(
            "End {}: {}, eye center to bar face {}, {} of full thread in the bar. {stands}",
            letter(end),
            threads_show(shown.visible_threads),
            fit(shown.eye_to_face, system),
            fit(shown.engagement.max(0.0), system)
        )
    };
    let large = turned.way.map(Way::says);
    let gives = turned.way.map(|_| {
        let by = longer(turned.change, system);
        // Where nothing was read nobody knows how long it becomes.
        if turned.alike { format!("{by}.") } else { format!("{by}: {} eye to eye.", fit(turned.length, system)) }
    });
    let good = if turned.standing == Standing::Good { WITHIN } else { word(turned.standing) };
    let (mark, word) = unless_hit(mark(turned.standing), good, hit);
    LinkTurn {
        link: Some(link),
        spot: Some(spot),
        title,
        change: turned.change,
        mark,
        word,
        instead: turned.instead.as_ref().map(|why| say(why, system)),
        tape: turned.tape_turns.map(|turns| {
            let flats = turns_and_flats((turns * FLATS - 1e-6).ceil().clamp(1.0, 1e4) as u32);
            format!("A tape that is off by 1/16 in is off by up to {flats} either way: measure again afterwards.")
        }),
        step: turned.half_turn.map(|each| by_half_turns(turned, each, system)),
        after: if turned.way.is_some() && !turned.alike { vec![after(0), after(1)] } else { Vec::new() },
        same_hand: turned.same_hand.map(|same| of_same_hand(&same, system)),
        open: all(&turned.open, system),
        unmeasured,
        steps: all(&turned.steps, system),
        cautions: all(&turned.cautions, system),
        log: match (&large, &gives) {
            (Some(large), Some(gives)) => format!("{large}. {gives}"),
            _ => String::new(),
        },
        large,
        nuts: turned.way.map(|way| nuts(way, hands)),
        gives,
        working: working::steps(&turned.working, system),
        hit,
    }
}

/// The least step of an eye, and how near whole steps come to what was asked.
fn by_half_turns(turned: &Turned, each: [f64; 2], system: System) -> String {
    let [a, b] = each.map(|step| fit(step, system));
    let step = if a == b { format!("{a} at either end") } else { format!("{a} at A, {b} at B") };
    let (wanted, comes) = (turned.wanted.abs(), turned.change.abs());
    let off = if exceeds(comes, wanted) { "more" } else { "less" };
    let reached = match fit((comes - wanted).abs(), system) {
        none if none == fit(0.0, system) => "That is what was asked.".to_string(),
        by => format!("That is {by} {off} than asked."),
    };
    format!("An eye goes by half turns, so that it sits square to its bolt again: {step}. {reached}")
}

/// What turning the bar really does where both ends have the same hand.
fn of_same_hand(same: &SameHand, system: System) -> String {
    let moves = |out: f64| format!("{} {}", fit(out.abs(), system), if out < 0.0 { "in" } else { "out" });
    let length = if same.longer == 0.0 {
        "the length stays".to_string()
    } else {
        format!("the link becomes {} in all", longer(same.longer, system))
    };
    let [clockwise, counterclockwise] = same.turns.map(|turns| show(quarters_below(turns), Kind::Turns, system));
    format!(
        "Both ends are {}. A turn of the bar clockwise, looking from the eye at end A, moves A {} and B {}: {length}. It could go {clockwise} clockwise and {} counterclockwise before an end reaches its stop.",
        same.hand.words(),
        moves(same.out[0]),
        moves(same.out[1]),
        lower(&counterclockwise)
    )
}
