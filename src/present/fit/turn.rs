//! Turn it: what can be asked, and the answer link by link.

mod answer;
mod bar;

pub use answer::{Asked, Known, TurnAnswer, answer};
pub use bar::LinkTurn;

use crate::document::{Document, Position, Role};
use crate::engine::fitting::moves::Through;
use crate::quantity::{self, DEGREE, Kind, System, inch};

/// What can be asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    /// A length eye to eye.
    Length,
    /// A change of length.
    Longer,
    /// A change of the pinion's angle.
    Pinion,
    /// A change of caster.
    Caster,
    /// The axle forward or back.
    Forward,
    /// The axle to a side.
    Sideways,
    /// A change of toe.
    Toe,
}

/// A question: its words, its number, and its two ways.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Question {
    /// Never reused once released.
    pub id: &'static str,
    /// On its button.
    pub title: &'static str,
    /// Above its field.
    pub label: &'static str,
    /// Under it.
    pub help: &'static str,
    /// What its number measures.
    pub kind: Kind,
    /// The least and the most that is taken.
    pub range: [f64; 2],
    /// The two ways, the usual one first; none where the number says it all.
    pub ways: Option<[&'static str; 2]>,
}

const CHANGE: [f64; 2] = [0.0, inch(6.0)];
const ANGLE: [f64; 2] = [0.0, 15.0 * DEGREE];

const fn q(
    id: &'static str,
    title: &'static str,
    label: &'static str,
    help: &'static str,
    kind: Kind,
    range: [f64; 2],
    ways: Option<[&'static str; 2]>,
) -> Question {
    Question { id, title, label, help, kind, range, ways }
}

impl Ask {
    /// Every question, in the order of the page.
    pub const ALL: [Self; 7] =
        [Self::Length, Self::Longer, Self::Pinion, Self::Caster, Self::Forward, Self::Sideways, Self::Toe];

    /// Its words.
    pub const fn question(self) -> Question {
        match self {
            Self::Length => q(
                "length",
                "Length",
                "Eye to eye, wanted",
                "Ball center to ball center.",
                Kind::Length,
                [inch(4.0), inch(120.0)],
                None,
            ),
            Self::Longer => q(
                "longer",
                "Longer or shorter",
                "By how much",
                "Eye to eye.",
                Kind::FineLength,
                CHANGE,
                Some(["Longer", "Shorter"]),
            ),
            Self::Pinion => q(
                "pinion",
                "Pinion angle",
                "By how many degrees",
                "A phone on the pinion flange, before and after.",
                Kind::Angle,
                ANGLE,
                Some(["Up", "Down"]),
            ),
            Self::Caster => q(
                "caster",
                "Caster",
                "By how many degrees",
                "More caster leans the steering axis back at its top.",
                Kind::Angle,
                ANGLE,
                Some(["More", "Less"]),
            ),
            Self::Forward => q(
                "forward",
                "Axle forward or back",
                "By how much",
                "The whole axle, both sides alike.",
                Kind::FineLength,
                CHANGE,
                Some(["Forward", "Back"]),
            ),
            Self::Sideways => q(
                "sideways",
                "Axle left or right",
                "By how much",
                "As somebody in the driver’s seat sees it.",
                Kind::FineLength,
                CHANGE,
                Some(["To the left", "To the right"]),
            ),
            Self::Toe => q(
                "toe",
                "Toe",
                "By how much",
                "Both wheels together: the difference between front and back of the tires.",
                Kind::FineLength,
                [0.0, inch(3.0)],
                Some(["Toe-in", "Toe-out"]),
            ),
        }
    }
}

/// The questions that one link, and what else hangs at its axle, can answer.
pub fn asks(document: &Document, index: usize) -> Vec<Ask> {
    let Some(link) = document.links.get(index) else { return Vec::new() };
    let at_axle = |role: Role| document.links.iter().any(|other| other.role == role && other.position == link.position);
    let tilts = at_axle(Role::Lower) || at_axle(Role::Upper);
    let front = link.position == Position::Front;
    let fits = |ask: &Ask| match ask {
        Ask::Length | Ask::Longer => true,
        Ask::Pinion | Ask::Forward => tilts,
        Ask::Caster => tilts && front,
        Ask::Sideways => at_axle(Role::TrackBar),
        Ask::Toe => at_axle(Role::TieRod),
    };
    Ask::ALL.into_iter().filter(fits).collect()
}

/// Which links tilt the axle, in words.
pub const THROUGH: [(Through, &str, &str); 3] = [
    (Through::Uppers, "uppers", "With the uppers"),
    (Through::Lowers, "lowers", "With the lowers"),
    (Through::Both, "both", "With both, opposite ways"),
];

/// The links that tilt an axle usually: its uppers, where the build holds any.
pub fn usual_through(document: &Document, index: usize) -> Through {
    let position = document.links.get(index).map(|link| link.position);
    let uppers = document.links.iter().any(|link| link.role == Role::Upper && Some(link.position) == position);
    if uppers { Through::Uppers } else { Through::Lowers }
}

/// What the button for the log says.
pub const TURNED: &str = "I turned it";

/// The same where more than one bar is turned.
pub const TURNED_ALL: &str = "I turned them";

/// Above what could do it instead.
pub const COULD: &str = "What could do it";

/// What happens at that button.
pub const TURNED_HELP: &str =
    "This goes into the log of each bar above, and their readings are taken back: read both ends again.";

/// Said once it is in the log.
pub const READ_AGAIN: &str = "Now read both ends of each bar again under “Is it still safe?”, and check all its nuts.";

/// Above the three sentences about hands.
pub const WHY_OPPOSITE: &str = "Why one end is left-hand";

/// The rows of readings for the axle seen from the side.
pub const SLOPES: [&str; 2] = ["lower-slope", "upper-slope"];

/// The row of the frame's end of the track bar.
pub const FRAME_END: &str = "track-bar-frame-end";

/// Reads the number that is wanted; none while nothing is typed.
///
/// # Errors
/// A sentence that says what would work.
pub fn read_wish(ask: Ask, text: &str, system: System) -> Result<Option<f64>, String> {
    let Question { kind, range: [least, most], .. } = ask.question();
    if text.trim().is_empty() {
        return Ok(None);
    }
    let value = quantity::read(text.trim(), kind, system).map_err(|misread| misread.sentence())?;
    if (least..=most).contains(&value) {
        return Ok(Some(value));
    }
    let [value, least, most] = [value, least, most].map(|value| quantity::show(value, kind, system));
    Err(format!("I read {value}. This can be from {least} to {most}."))
}
