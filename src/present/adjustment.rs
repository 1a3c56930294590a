//! How far a link can be made longer and shorter, and how many turns of the bar that is.

use super::words::value;
use crate::quantity::{Kind, System, show_at_most};
use crate::report::Answer;

/// The title of the section.
pub const TITLE: &str = "How far it adjusts";

/// What the two columns mean.
pub const CAPTION: &str = "Good practice keeps 0 to 3 threads showing. The hard limit is where you stop.";

/// How far a link can be adjusted.
#[derive(Debug, Clone, PartialEq)]
pub struct Adjustment {
    /// Longer, then shorter.
    pub rows: Vec<Way>,
    /// Which way to turn what.
    pub how: String,
}

/// One way to adjust it.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// `Longer` or `Shorter`.
    pub name: &'static str,
    /// With 0 to 3 threads showing.
    pub good: Extent,
    /// To the hard stop.
    pub limit: Extent,
}

/// How far that is.
#[derive(Debug, Clone, PartialEq)]
pub struct Extent {
    /// As a length.
    pub length: String,
    /// As turns of the bar, where turning it changes the length.
    pub turns: Option<String>,
}

/// The adjustment of an answer's link.
pub fn adjustment(answer: &Answer, system: System) -> Adjustment {
    let adjustment = &answer.link.adjustment;
    // Thousandths of an inch, tenths of a millimeter.
    let kind = if system == System::Inch { Kind::FineLength } else { Kind::Length };
    let extent = |length, turns| Extent {
        length: show_at_most(length, kind, system),
        turns: adjustment.opposite_hands.then(|| show_at_most(turns, Kind::Turns, system)),
    };
    let (reach, [good_out, good_in], [limit_out, limit_in]) =
        (adjustment.reach, adjustment.turns_good, adjustment.turns_limit);
    let longer = (extent(reach.out_good, good_out), extent(reach.out_limit, limit_out));
    let shorter = (extent(reach.in_good, good_in), extent(reach.in_limit, limit_in));
    let rows = [("Longer", longer), ("Shorter", shorter)];
    let how = match adjustment.turning {
        Some(turning) => format!(
            "{turning} One turn changes the length by {}. Loosen both jam nuts first.",
            value(adjustment.per_turn, Kind::FineLength, system)
        ),
        None => "Both ends have the same hand: turning the bar does not change the length. Unbolt one eye and turn it to set the length.".to_string(),
    };
    Adjustment { rows: rows.into_iter().map(|(name, (good, limit))| Way { name, good, limit }).collect(), how }
}
