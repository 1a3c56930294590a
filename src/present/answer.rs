//! The first answer: what to buy, whether it passes, the lengths, and what to mind before acting on it.

use super::verdict;
use super::words::{headline, job, length, say, sheet_name, stock, thread_sizes, value};
use crate::document::Document;
use crate::quantity::{Kind, System};
use crate::report::{Answer, LinkGeometry, Verdict};

/// Over an answer that rests on the entries before the one that was not taken.
pub const STALE: &str = "From your last good entry: one of your entries is not taken yet.";

/// What stands before the loads that a link is sized for.
pub const SIZED_FOR: &str = "Sized for: ";

/// Beside lengths that stand only until the rod ends are measured.
const MEASURE_FIRST: &str =
    "Measure your rod ends before you saw: bar and saw length rest on a published series until then.";

/// The answer itself, from which link it is to the loads it is sized for.
#[derive(Debug, Clone, PartialEq)]
pub struct Head {
    /// `Front lower links, 2 pieces`, after the name of the rig where it has one.
    pub name: String,
    /// Whose choice the size is, and for which job.
    pub kicker: String,
    /// In front of a link that does not pass.
    pub warning: Option<&'static str>,
    /// What to buy, in one sentence.
    pub headline: String,
    /// How it came out.
    pub verdict: Verdict,
    /// The word for that.
    pub word: &'static str,
    /// What the verdict rests on.
    pub weakest: String,
    /// How a steering link takes compression, where that is not said above.
    pub buckling: Option<(Verdict, String)>,
    /// The sizes that are read back over a phone or copied onto the bar.
    pub plate: Vec<Cell>,
    /// What to do before sawing, where lengths are provisional.
    pub provisional: Option<&'static str>,
    /// The loads it is sized for.
    pub story: String,
}

/// One size on the plate.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// Kebab-case, unique on the plate.
    pub id: &'static str,
    /// What it is.
    pub name: &'static str,
    /// The size.
    pub value: String,
    /// Whether it is one of the lengths that everybody looks for.
    pub main: bool,
}

/// The head of the answer for a link.
pub fn head(document: &Document, at: usize, answer: &Answer, system: System) -> Head {
    let sizing = &answer.sizing;
    let kind = match (sizing.overridden, &sizing.recommended) {
        (true, _) => "Your own size",
        (false, Some(_)) => "Recommended",
        (false, None) => "Not a recommendation",
    };
    Head {
        name: sheet_name(document, at),
        kicker: format!("{kind} for a rig of {}", job(document, system)),
        warning: warning(answer),
        headline: headline(&answer.link, system),
        verdict: answer.verdict,
        word: answer.word(),
        weakest: verdict::weakest(answer, system),
        buckling: verdict::buckling_apart(answer, system),
        plate: plate(&answer.link, system),
        provisional: answer.link.provisional.then_some(MEASURE_FIRST),
        story: say(&answer.loads.story, system),
    }
}

/// A warning in front of a link that does not pass.
fn warning(answer: &Answer) -> Option<&'static str> {
    let nothing = answer.sizing.recommended.is_none() && !answer.sizing.overridden;
    if answer.verdict != Verdict::Fails && !nothing {
        return None;
    }
    Some(match (&answer.sizing.recommended, answer.sizing.overridden) {
        (None, _) => {
            "No stock size passes every check. This is what is fitted all the same, to show what yields first."
        }
        (Some(_), true) => "The size you chose fails. Clear it to see the recommended one.",
        (Some(_), false) => "This link fails as entered.",
    })
}

/// The sizes of a link that are needed first.
fn plate(made: &LinkGeometry, system: System) -> Vec<Cell> {
    // A length that rests on a published series is not the headline.
    let [bar, cut] = if made.provisional {
        ["Bar, face to face, provisional", "Saw to, provisional"]
    } else {
        ["Bar, face to face", "Saw to"]
    };
    let main = |id, name, meters| Cell { id, name, value: length(meters, system), main: true };
    let more = |id, name, value| Cell { id, name, value, main: false };
    vec![
        main("eye-to-eye", "Eye to eye", made.length),
        main("bar-length", bar, made.bar),
        main("cut-length", cut, made.cut),
        more("bar-size", "Bar", stock(made, system)),
        more("rod-ends", "Rod ends", thread_sizes(&made.ends)),
        more("bar-weight", "Bar weight, each", value(made.bar_weight, Kind::Weight, system)),
    ]
}

/// What to mind before acting on the answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Cautions {
    /// The most urgent ones, always in sight.
    pub first: Vec<String>,
    /// What leads to the others; `None` where there are none.
    pub more: Option<String>,
    /// The others.
    pub rest: Vec<String>,
}

/// The cautions of an answer: one in sight, two where the link fails, is awkward to set, or steers.
pub fn cautions(answer: &Answer, system: System) -> Cautions {
    let urgent = answer.verdict == Verdict::Fails || !answer.link.adjustment.opposite_hands || answer.role.steers();
    let mut first: Vec<String> = answer.cautions.iter().map(|said| say(said, system)).collect();
    let rest = first.split_off(first.len().min(if urgent { 2 } else { 1 }));
    let more = match rest.len() {
        0 => None,
        1 => Some("1 more caution before you cut".to_string()),
        count => Some(format!("{count} more cautions before you cut")),
    };
    Cautions { first, more, rest }
}

/// When the answer was printed, for the newer of two sheets counts, and how far to trust it.
pub fn printed(time: &str) -> String {
    format!(
        "Printed {time} by Linkwright. An estimate for planning: makers’ ratings, local rules and a licensed engineer come first."
    )
}
