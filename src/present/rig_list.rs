//! The links of the rig in rows, what the buttons of a row are called, and what each of them did, in words.

use super::rig::{Judged, numbered};
use super::verdict::{buckling_apart, weakest};
use super::words::{IMPOSSIBLE, headline, length, lower, say, still_needed, unbroken};
use crate::document::{Document, Link, MOST_LINKS, Position, Side};
use crate::layouts;
use crate::quantity::System;
use crate::report::{Answer, LinkReport, WholeRig};

/// How one link stands.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Row {
    /// Which link it is: `7. Rear lower links, 2 pieces`.
    pub title: String,
    /// How it came out; `None` without an answer.
    pub judged: Option<Judged>,
    /// What to buy, in phrases between which a line may break; without an answer, why there is none.
    pub size: String,
    /// `Saw to 32-7/8 in`.
    pub saw: Option<String>,
    /// What the verdict rests on.
    pub rests_on: String,
}

/// The row of a link.
pub fn row(whole: &WholeRig, index: usize, system: System) -> Option<Row> {
    let title = numbered(&whole.document, index);
    let without = |size: String, rests_on| Row { title: title.clone(), judged: None, size, saw: None, rests_on };
    Some(match whole.links.get(index)? {
        LinkReport::Answer(answer) => {
            let made = &answer.link;
            Row {
                title,
                judged: Some(Judged { verdict: answer.verdict, word: answer.word() }),
                size: format!("{}: {}", length(made.length, system), headline(made, system)),
                saw: Some(format!("Saw to {}", length(made.cut, system))),
                rests_on: rests_on(answer, system),
            }
        }
        LinkReport::Impossible(why) => without(IMPOSSIBLE.to_string(), say(why, system)),
        LinkReport::Needs(needs) => without(still_needed(needs), String::new()),
    })
}

/// What a verdict rests on. Of a steering link also how it takes compression, once.
fn rests_on(answer: &Answer, system: System) -> String {
    let weakest = weakest(answer, system);
    unbroken(&match buckling_apart(answer, system) {
        Some((verdict, words)) => format!("{weakest} {words}, {}.", lower(verdict.word())),
        None => weakest,
    })
}

/// What the buttons of a row are called.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Buttons {
    /// The link, for the label that a screen reader speaks.
    pub link: String,
    /// The one that copies it to the other axle; names what it would replace.
    pub other_axle: String,
    /// The one about its sides; none for a link that has only one place across the rig.
    pub sides: Option<Sides>,
}

/// The button about the sides of a link.
#[derive(Debug, Clone, PartialEq)]
pub struct Sides {
    /// What it is called.
    pub label: String,
    /// What it does.
    pub change: Change,
    /// Whether the link can be joined with that of the other side.
    pub joins: bool,
}

/// The buttons of a link's row.
pub fn buttons(document: &Document, index: usize, system: System) -> Option<Buttons> {
    let link = document.links.get(index)?;
    let axle = if link.position == Position::Front { "rear" } else { "front" };
    let there = layouts::at_other_side(document, index);
    let copy_to = |side: &str| copy_label(document, link, there, side, system);
    let sides = match link.seated() {
        Side::Both => Some(("Enter left and right separately".to_string(), Change::SetApart)),
        Side::Left => Some((copy_to("right"), Change::CopyToOtherSide)),
        Side::Right => Some((copy_to("left"), Change::CopyToOtherSide)),
        Side::Middle => None,
    };
    Some(Buttons {
        link: link.title(),
        other_axle: copy_label(document, link, layouts::at_other_axle(document, index), axle, system),
        sides: sides.map(|(label, change)| Sides { label, change, joins: there.is_some() }),
    })
}

/// What a button to copy is called; it names what would be replaced.
fn copy_label(document: &Document, from: &Link, there: Option<usize>, to: &str, system: System) -> String {
    let Some(link) = there.and_then(|there| document.links.get(there)) else { return format!("Copy to the {to}") };
    let long = link.length.map(|value| format!(" ({})", length(value, system))).unwrap_or_default();
    let title = lower(&link.title());
    if from.seated() == Side::Both {
        format!("Replace the {title}{long} with these")
    } else {
        format!("Replace the {title}{long} with this one")
    }
}

/// A change of the rig by a button of a link's row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// The other axle gets the same link.
    CopyToOtherAxle,
    /// The other side gets the same link.
    CopyToOtherSide,
    /// A pair becomes a left and a right link.
    SetApart,
    /// A left and a right link become one pair.
    Join,
    /// The link is gone.
    Remove,
}

/// What a change did.
#[derive(Debug, Clone, PartialEq)]
pub struct Changed {
    /// The rig as it was.
    pub before: Document,
    /// The rig as it is.
    pub after: Document,
    /// The link below whose row this is said: the one that was pressed, or what it became. None where it is gone.
    pub below: Option<usize>,
    /// What was done, or why nothing was.
    pub sentence: String,
}

impl Change {
    /// Makes the change at a link, and says what it did.
    pub fn make(self, before: &Document, index: usize, system: System) -> Changed {
        let mut after = before.clone();
        let made = match self {
            Self::CopyToOtherAxle => layouts::to_other_axle(&mut after, index),
            Self::CopyToOtherSide => layouts::to_other_side(&mut after, index),
            Self::SetApart => layouts::set_apart(&mut after, index),
            Self::Join => layouts::join(&mut after, index),
            Self::Remove => {
                layouts::remove(&mut after, index);
                None
            }
        };
        let title = before.links.get(index).map(Link::title).unwrap_or_default();
        let sentence = match (self, made) {
            (Self::Remove, _) => format!("{title} removed."),
            (Self::Join, Some(pair)) => joined(before, &after, index, pair, system),
            (Self::Join, None) => String::new(),
            (_, None) => no_room(),
            (Self::SetApart, Some(_)) => format!("{title} are two entries now: left and right."),
            (Self::CopyToOtherAxle | Self::CopyToOtherSide, Some(copy)) => copied(before, &after, copy, system),
        };
        let gone = after.links.len() < before.links.len();
        Changed { before: before.clone(), after, below: if gone { made } else { Some(index) }, sentence }
    }
}

/// Said of a link that was removed while something stood in the log of its bars.
pub fn log_stays(sentence: &str, entries: &str) -> String {
    format!("{sentence} Its log ({entries}) stays.")
}

impl Changed {
    /// Whether there is something to undo.
    pub fn did_something(&self) -> bool {
        self.before != self.after
    }
}

/// A copy that took the place of another link says what was there.
fn copied(before: &Document, after: &Document, copy: usize, system: System) -> String {
    let Some(link) = after.links.get(copy) else { return String::new() };
    let (title, were) = (link.title(), if link.seated() == Side::Both { "were" } else { "was" });
    let now = long(link, system);
    match before.links.get(copy) {
        None => format!("{title} added."),
        Some(old) if old == link => format!("{title} {were} the same already."),
        Some(old) if long(old, system) == now => format!("{title} {were} {now} too; now alike in everything else."),
        Some(old) => format!("{title} {were} {}, now {now}.", long(old, system)),
    }
}

/// A pair that took the place of two links says which of them it is like, and what the other was.
fn joined(before: &Document, after: &Document, index: usize, pair: usize, system: System) -> String {
    let Some(pair) = after.links.get(pair) else { return String::new() };
    let now = long(pair, system);
    let other = layouts::at_other_side(before, index).and_then(|other| before.links.get(other));
    let lost = other.filter(|other| long(other, system) != now);
    let lost = lost.map(|other| format!(" {} was {}.", other.title(), long(other, system)));
    format!("{} are one entry again: {now}.{}", pair.title(), lost.unwrap_or_default())
}

/// A link's length, for a sentence.
fn long(link: &Link, system: System) -> String {
    link.length.map_or("without a length".to_string(), |value| length(value, system))
}

/// What came of adding a layout to an axle: whether it added a link to a rig that is now as it is.
pub fn added(any: bool, document: &Document, position: Position) -> String {
    if any {
        format!("Added to the {} axle.", position.word())
    } else if document.links.len() >= MOST_LINKS {
        no_room()
    } else {
        format!("The {} axle has these already.", position.word())
    }
}

/// Why nothing was added.
fn no_room() -> String {
    format!("A rig has room for {MOST_LINKS} entries. Take one away first.")
}
