//! The answer to a question, link by link.

use super::Ask;
use crate::document::{Document, Hand, Role, Side};
use crate::engine::fitting::as_fitted::Readings;
use crate::engine::fitting::hands::nut_loosens;
use crate::engine::fitting::moves::{LinkChange, Moved, SideView, Slopes, Through, Wanted, move_by};
use crate::engine::fitting::turn::{FLATS, Place, SameHand, Turned, Way, Wish, turn, turns_and_flats};
use crate::engine::fitting::{Standing, quarters_below, threads_show};
use crate::engine::sentence::{Said, spoken};
use crate::present::fit::standing::{mark, word};
use crate::present::words::{letter, lower};
use crate::present::working::{self, Step};
use crate::quantity::{Kind, System, exceeds, fit, show};
use crate::report::{Answer, Verdict};

/// Said of a turn that was worked out from readings and stays within both stops.
const WITHIN: &str = "Within its stops";

/// What was asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The question.
    pub ask: Ask,
    /// Its number, SI.
    pub value: f64,
    /// Whether it is the second of its two ways.
    pub other_way: bool,
    /// Which links tilt the axle.
    pub through: Through,
    /// Slopes read on the rig.
    pub slopes: Slopes,
    /// Whether the frame's end of the track bar is on the left; none where nobody said.
    pub frame_end_left: Option<bool>,
}

/// The whole answer.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TurnAnswer {
    /// Why there is none.
    pub instead: Option<String>,
    /// Link by link, the current one first.
    pub links: Vec<LinkTurn>,
    /// What happens beside what was wanted.
    pub says: Vec<String>,
    /// What to mind at the axle.
    pub cautions: Vec<String>,
    /// What was taken for granted.
    pub assumed: Vec<String>,
    /// How the changes of length came out.
    pub working: Vec<Step>,
}

/// What to turn at one link.
#[derive(Debug, Clone, PartialEq)]
pub struct LinkTurn {
    /// Which link of the build.
    pub link: Option<usize>,
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
    /// What to do, in order.
    pub steps: Vec<String>,
    /// What to mind.
    pub cautions: Vec<String>,
    /// The line for the log.
    pub log: String,
    /// How the numbers came out.
    pub working: Vec<Step>,
}

/// The answer. `answers` gives the answer for a link of the document, `readings` what was read on its bar.
pub fn answer(
    document: &Document,
    index: usize,
    asked: &Asked,
    answers: impl Fn(usize) -> Option<Answer>,
    readings: impl Fn(usize) -> Readings,
    system: System,
) -> TurnAnswer {
    let sign = if asked.other_way { -1.0 } else { 1.0 };
    let one = |link: usize, wish: Wish| {
        let made = answers(link)?;
        let of = document.links.get(link)?;
        let place = Place { role: of.role, pair: of.seated() == Side::Both };
        let hands = made.link.ends.each_ref().map(|end| end.hand);
        Some((turn(&made.link, &readings(link), wish, place), hands, of.title()))
    };
    let wanted = match goal(asked, sign) {
        Ok(Goal::Wish(wish)) => {
            let turned =
                one(index, wish).map(|(turned, hands, title)| of_turned(&turned, hands, Some(index), title, system));
            return TurnAnswer { links: turned.into_iter().collect(), ..TurnAnswer::default() };
        }
        Ok(Goal::Move(wanted)) => wanted,
        Err(why) => return TurnAnswer { instead: Some(why.to_string()), ..TurnAnswer::default() },
    };
    let moved = move_by(document, index, wanted, asked.through, asked.slopes);
    let mut changes = moved.changes.clone();
    changes.sort_by_key(|change| change.link != Some(index));
    let links = changes.iter().map(|change| {
        let turned = change.link.and_then(|link| one(link, Wish::Longer(change.change)));
        match turned {
            Some((turned, hands, title)) => {
                let mut told = of_turned(&turned, hands, change.link, title, system);
                told.gives = told.gives.map(|gives| gives + &reached(document, index, asked, &turned, system));
                told
            }
            None => of_change(document, change, system),
        }
    });
    let links = links.collect();
    of_moved(&moved, links, system)
}

/// What is asked of the one link, or of the axle.
enum Goal {
    Wish(Wish),
    Move(Wanted),
}

fn goal(asked: &Asked, sign: f64) -> Result<Goal, &'static str> {
    let value = sign * asked.value;
    Ok(Goal::Move(match asked.ask {
        Ask::Length => return Ok(Goal::Wish(Wish::Length(asked.value))),
        Ask::Longer => return Ok(Goal::Wish(Wish::Longer(value))),
        Ask::Pinion => Wanted::PinionUp(value),
        Ask::Caster => Wanted::Caster(value),
        Ask::Forward => Wanted::Forward(value),
        Ask::Toe => Wanted::ToeIn(value),
        Ask::Sideways => match asked.frame_end_left {
            // To the left is away from a frame's end on the right.
            Some(left) => Wanted::AwayFromFrameEnd(if left { -value } else { value }),
            None => return Err("Not judged: say on which side the track bar is bolted to the frame."),
        },
    }))
}

/// What a tilt by one pair really comes to, once it is rounded to flats.
fn reached(document: &Document, index: usize, asked: &Asked, turned: &Turned, system: System) -> String {
    // Toe goes with the length, so what whole flats give of the one they give of the other.
    if asked.ask == Ask::Toe && turned.way.is_some() && turned.wanted != 0.0 {
        let toe = asked.value * turned.change / turned.wanted;
        return format!(" That changes toe by {}.", fit(toe, system));
    }
    let tilts = matches!(asked.ask, Ask::Pinion | Ask::Caster);
    let view = SideView::of(document, index, asked.slopes).ok().filter(|_| tilts && turned.way.is_some());
    let tilt = view.and_then(|view| view.tilt_of(turned.change, asked.through));
    tilt.map(|tilt| format!(" That tilts the axle by {}.", show(tilt.abs(), Kind::Angle, system))).unwrap_or_default()
}

fn say(said: &[Said], system: System) -> Vec<String> {
    said.iter().map(|said| spoken(said, system)).collect()
}

fn of_moved(moved: &Moved, links: Vec<LinkTurn>, system: System) -> TurnAnswer {
    TurnAnswer {
        instead: moved.instead.as_ref().map(|why| format!("Not judged: {}", spoken(why, system))),
        links,
        says: say(&moved.says, system),
        cautions: say(&moved.cautions, system),
        assumed: say(&moved.assumed, system),
        working: working::steps(&moved.working, system),
    }
}

fn longer(change: f64, system: System) -> String {
    format!("{} {}", fit(change.abs(), system), if change < 0.0 { "shorter" } else { "longer" })
}

/// A link that the build does not hold, or that has no answer yet: its change alone.
fn of_change(document: &Document, change: &LinkChange, system: System) -> LinkTurn {
    let named = change.link.and_then(|link| document.links.get(link)).map(crate::document::Link::title);
    let title = named.unwrap_or_else(|| match change.role {
        Role::Upper => "Upper links".to_string(),
        _ => "Lower links".to_string(),
    });
    LinkTurn {
        link: change.link,
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
        steps: Vec::new(),
        cautions: Vec::new(),
        log: String::new(),
        working: Vec::new(),
    }
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

fn of_turned(turned: &Turned, hands: [Hand; 2], link: Option<usize>, title: String, system: System) -> LinkTurn {
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
    let gives =
        turned.way.map(|_| format!("{}: {} eye to eye.", longer(turned.change, system), fit(turned.length, system)));
    LinkTurn {
        link,
        title,
        change: turned.change,
        mark: mark(turned.standing),
        word: if turned.standing == Standing::Good { WITHIN } else { word(turned.standing) },
        instead: turned.instead.as_ref().map(|why| spoken(why, system)),
        tape: turned.tape_turns.map(|turns| {
            let flats = turns_and_flats((turns * FLATS - 1e-6).ceil().clamp(1.0, 1e4) as u32);
            format!("A tape that is off by 1/16 in is off by up to {flats} either way: measure again afterwards.")
        }),
        step: turned.half_turn.map(|each| by_half_turns(turned, each, system)),
        after: if turned.way.is_some() { vec![after(0), after(1)] } else { Vec::new() },
        same_hand: turned.same_hand.map(|same| of_same_hand(&same, system)),
        open: say(&turned.open, system),
        steps: say(&turned.steps, system),
        cautions: say(&turned.cautions, system),
        log: match (&large, &gives) {
            (Some(large), Some(gives)) => format!("{large}. {gives}"),
            _ => String::new(),
        },
        large,
        nuts: turned.way.map(|way| nuts(way, hands)),
        gives,
        working: working::steps(&turned.working, system),
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
