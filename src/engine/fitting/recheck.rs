//! Looking again: when, at what, to which limit, and where that limit comes from.

mod looks;

pub use looks::{Look, looks};

use super::Standing;
use super::dates::Day;
use crate::engine::sentence::{Said, said};
use crate::report::{Answer, Verdict};
use crate::source::{Cite, LINK_NOTICE, Obtained, PRACTICE, cite};

/// When a link is looked at again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Occasion {
    /// After the first drive since it was fitted or turned.
    FirstDrive,
    /// Before each outing.
    Outing,
    /// Twice a year, with the jam nuts backed off.
    HalfYear,
}

impl Occasion {
    /// Each, in the order they come.
    pub const ALL: [Self; 3] = [Self::FirstDrive, Self::Outing, Self::HalfYear];

    /// Never reused once released.
    pub const fn id(self) -> &'static str {
        match self {
            Self::FirstDrive => "first-drive",
            Self::Outing => "outing",
            Self::HalfYear => "half-year",
        }
    }

    /// As the page says it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::FirstDrive => "After the first drive",
            Self::Outing => "Each outing",
            Self::HalfYear => "Twice a year",
        }
    }

    /// What it means.
    pub const fn help(self) -> &'static str {
        match self {
            Self::FirstDrive => {
                "After the first drive, and within 50 to 100 mi (80 to 160 km) of fitting or turning it."
            }
            Self::Outing => "Before you leave the road, and before you drive home.",
            Self::HalfYear => "As each outing, and both jam nuts backed off and tightened again.",
        }
    }

    /// Where the interval comes from.
    pub const fn source(self) -> Cite {
        match self {
            Self::FirstDrive => cite(&PRACTICE, "after the first drive and 50 to 100 mi", Obtained::Practice),
            Self::Outing => cite(&PRACTICE, "before each trail run", Obtained::Practice),
            Self::HalfYear => cite(&LINK_NOTICE, "jam nut backed off and retightened twice a year", Obtained::Copied),
        }
    }
}

/// What the log knows of a bar, each a time in ISO 8601.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct LastTimes<'a> {
    /// When it was last fitted.
    pub fitted: Option<&'a str>,
    /// When its length was last changed.
    pub turned: Option<&'a str>,
    /// When it was last looked at again, whatever the occasion.
    pub rechecked: Option<&'a str>,
    /// When its jam nuts were last backed off and tightened again.
    pub half_year: Option<&'a str>,
}

/// Whether something is due.
#[derive(Debug, Clone, PartialEq)]
pub struct Due {
    /// The occasion.
    pub occasion: Occasion,
    /// Good while nothing is due, Watch where it is, and not judged without a date.
    pub standing: Standing,
    /// The day it is due, where there is one.
    pub on: Option<Day>,
    /// What to say of it.
    pub says: Said,
}

/// What is due today, occasion by occasion.
pub fn due(last: LastTimes, today: &str) -> [Due; 3] {
    Occasion::ALL.map(|occasion| match occasion {
        Occasion::FirstDrive => first_drive(last, today),
        Occasion::Outing => Due {
            occasion,
            standing: Standing::Watch,
            on: None,
            says: said!["Due before every outing, whatever the date."],
        },
        Occasion::HalfYear => half_year(last, today),
    })
}

/// The later of two times; ISO 8601 in UTC sorts as it reads.
fn later<'a>(a: Option<&'a str>, b: Option<&'a str>) -> Option<&'a str> {
    a.max(b)
}

fn first_drive(last: LastTimes, today: &str) -> Due {
    let occasion = Occasion::FirstDrive;
    let open = |says| Due { occasion, standing: Standing::NotJudged, on: None, says };
    let Some(at) = later(last.fitted, last.turned) else {
        return open(said!["Not judged: the log has no date of fitting. Put it into the log under Fit it."]);
    };
    let Some((day, today)) = Day::of_iso(at).zip(Day::of_iso(today)) else {
        return open(said!["Not judged: a date cannot be read."]);
    };
    if day > today {
        return open(said!["Not judged: the log says it is fitted later than today. Check the date of this device."]);
    }
    let what = if last.turned > last.fitted { "Turned on " } else { "Fitted on " };
    if last.rechecked > Some(at) {
        let says = said![(what), (day.spoken()), " and looked at since."];
        return Due { occasion, standing: Standing::Good, on: None, says };
    }
    let says = said![(what), (day.spoken()), " and not looked at since: due after the first drive."];
    Due { occasion, standing: Standing::Watch, on: Some(day), says }
}

/// Months from one half-year recheck to the next.
pub const HALF_YEAR: u16 = 6;

fn half_year(last: LastTimes, today: &str) -> Due {
    let occasion = Occasion::HalfYear;
    let open = |says| Due { occasion, standing: Standing::NotJudged, on: None, says };
    // A turn alone says nothing of how tight the nuts are.
    let Some(at) = later(last.fitted, last.half_year) else {
        return open(said!["Not judged: the log has no date of fitting and no half-year recheck. Do it now."]);
    };
    let Some((day, today)) = Day::of_iso(at).zip(Day::of_iso(today)) else {
        return open(said!["Not judged: a date cannot be read."]);
    };
    if day > today {
        return open(said!["Not judged: the log's last date is later than today. Check the date of this device."]);
    }
    let on = day.months_later(HALF_YEAR);
    if today >= on {
        let words = if today == on { "Due today, " } else { "Overdue since " };
        let says = said![(words), (on.spoken()), ": both jam nuts were last tightened on ", (day.spoken()), "."];
        return Due { occasion, standing: Standing::Watch, on: Some(on), says };
    }
    let says = said!["Due on ", (on.spoken()), ": both jam nuts were last tightened on ", (day.spoken()), "."];
    Due { occasion, standing: Standing::Good, on: Some(on), says }
}

/// What a recheck came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Good only where everything was looked at and found in order.
    pub standing: Standing,
    /// For the log and the page.
    pub says: Said,
}

/// Sums a recheck up: for each look whether it was found in order.
pub fn outcome(answer: &Answer, occasion: Occasion, looks: &[Look], in_order: &[bool]) -> Outcome {
    let open: Vec<&str> = looks
        .iter()
        .enumerate()
        .filter(|(at, _)| !in_order.get(*at).copied().unwrap_or(false))
        .map(|(_, look)| name(look.id))
        .collect();
    if looks.is_empty() {
        return Outcome { standing: Standing::NotJudged, says: said!["Nothing to look at."] };
    }
    if answer.verdict == Verdict::Fails {
        let says = said![
            "Do not drive this link: whatever it looks like, a part of it fails by its numbers. See the Size view."
        ];
        return Outcome { standing: Standing::Stop, says };
    }
    if open.is_empty() {
        let says = said![(occasion.label()), ": everything looked at and in order."];
        return Outcome { standing: Standing::Good, says };
    }
    let says = said![
        (occasion.label()),
        ": ",
        ((looks.len() - open.len()).to_string()),
        " of ",
        (looks.len().to_string()),
        " in order; not ticked: ",
        (open.join(", ")),
        "."
    ];
    Outcome { standing: Standing::NotJudged, says }
}

fn name(id: &str) -> &str {
    match id {
        "witness" => "witness lines",
        "nuts" => "jam nuts",
        "threads" => "threads showing",
        "rod-ends" => "rod ends",
        "rubbing" => "rubbing places",
        other => other,
    }
}
