//! Spares and borrowed parts, as the page says them.

use super::standing::{mark, unless_hit};
use crate::document::{Document, Hand};
use crate::engine::fitting::Standing;
use crate::engine::fitting::borrowed::{self, Borrowed, BorrowedLink, BorrowedRodEnd};
use crate::engine::fitting::spares::{self, Spare, SpareBar};
use crate::engine::tables::{rod_ends, threads};
use crate::log::{ReadingKind, ReadingRow};
use crate::present::parts;
use crate::present::words::{self, hand_mark, length, lower, say, short, size, thread};
use crate::quantity::{Kind, System, inch};
use crate::report::{Answer, LinkReport, Part, Verdict};

/// Its name on paper.
pub const TITLE: &str = "Spares to carry";

/// What the list is.
pub const HELP: &str =
    "One of each gets you home. Both hands of every rod end and jam nut: you never know which one goes.";

/// Said while lengths stand on a series.
pub const PROVISIONAL: &str =
    "The rod ends were not measured: lengths stand on a published series. Measure yours before a spare bar is made.";

/// Said of a hand that the rig does not use.
pub const NOT_FITTED: &str = "not on the rig now";

/// What to carry beside what is listed.
pub const ALSO: [&str; 4] = [
    "Wrenches for both jam nuts and the bolts, a pipe wrench or a bar for the flats, and something to hold the bar.",
    "Tape, string, paint marker, anti-seize, a small file.",
    "A spare bar or link belongs on the rig, strapped down; it is not a pry bar.",
    "After a spare goes in: read both ends under “Is it still safe?”, tighten both nuts, and put it into the log.",
];

/// The list in words.
#[derive(Debug, Clone, PartialEq)]
pub struct List {
    /// Spare bars, each with a line for every link it is for.
    pub bars: Vec<Bar>,
    /// The parts: name, how many, and a remark.
    pub parts: Vec<(String, usize, &'static str)>,
    /// What is not in it or may change.
    pub notes: Vec<String>,
}

/// A spare bar in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// What it is, with its length and threads.
    pub name: String,
    /// How it does for each link: mark, word, and the lengths.
    pub links: Vec<(Verdict, &'static str, String)>,
}

/// The list for a rig; `hit` tells of a link whether a hit is open against one of its bars.
pub fn list(document: &Document, reports: &[LinkReport], hit: &dyn Fn(usize) -> bool, system: System) -> List {
    let spares = spares::spares(document, reports);
    let row = |spare: &Spare| {
        let rows = parts::rows(std::slice::from_ref(&spare.part), system);
        let name = rows.into_iter().next().map(|row| row.name).unwrap_or_default();
        (name, spare.part.count(), if spare.fitted { "" } else { NOT_FITTED })
    };
    let open = (spares.open > 0)
        .then(|| format!("{} of the rig’s links without an answer: nothing is listed for them.", spares.open));
    let bolts = spares.parts.iter().any(|spare| matches!(spare.part, Part::Bolt { .. }));
    List {
        bars: spares.bars.iter().map(|bar| in_words(document, reports, bar, hit, system)).collect(),
        parts: spares.parts.iter().map(row).collect(),
        notes: open
            .into_iter()
            .chain(spares.provisional.then(|| PROVISIONAL.to_string()))
            .chain(bolts.then(|| parts::BOLT_LENGTH.to_string()))
            .collect(),
    }
}

fn in_words(
    document: &Document,
    reports: &[LinkReport],
    bar: &SpareBar,
    hit: &dyn Fn(usize) -> bool,
    system: System,
) -> Bar {
    let unmeasured =
        |link: usize| reports.get(link).and_then(LinkReport::answer).is_none_or(|answer| answer.link.provisional);
    let ends = bar.ends.map(|(of, hand)| format!("{} {}", thread(of), hand_mark(hand)));
    let link = |place: &spares::StandsIn| {
        let title = lower(&words::titled(document, place.link));
        let (wanted, shortest) = (length(place.wanted, system), length(place.shortest, system));
        if place.fits && unmeasured(place.link) {
            let says = format!("Rod ends not measured: by a published series it reaches {wanted} for the {title}.");
            (Verdict::Unanswered, "Not judged", says)
        } else if place.fits {
            let (mark, word) = unless_hit(Verdict::Passes, "Fits", hit(place.link));
            (mark, word, format!("Reaches {wanted} eye to eye for the {title}."))
        } else {
            (
                Verdict::Fails,
                "Too long",
                format!(
                    "Too long for the {title}: {shortest} wound right in, {wanted} is wanted. Carry another, or cut and tap this one."
                ),
            )
        }
    };
    Bar {
        name: format!(
            "{} {}, {} long, tapped {} and {}",
            size(bar.outside_diameter, bar.wall, system),
            short(bar.material),
            length(bar.length, system),
            ends[0],
            ends[1]
        ),
        links: bar.links.iter().map(link).collect(),
    }
}

const fn row(id: &'static str, label: &'static str, help: &'static str, most: f64) -> ReadingRow {
    ReadingRow { id, label, help, holds: ReadingKind::Number { kind: Kind::FineLength, least: inch(0.1), most } }
}

/// What is read off a borrowed rod end; nothing of it is kept.
pub static ROD_END: [ReadingRow; 4] = [
    row("lend-eye-to-end", "Eye center to shank end", "Ball center to the tip of the thread.", inch(12.0)),
    row("lend-thread-length", "Thread length", "Along the shank.", inch(10.0)),
    row("lend-bore", "Bore", "Hole in the ball.", inch(3.0)),
    row("lend-ball", "Ball width", "Face to face of the ball, not of the head.", inch(4.0)),
];

/// What is read off a borrowed link.
pub static LINK: [ReadingRow; 2] = [
    ReadingRow {
        id: "lend-shortest",
        label: "Its shortest, eye to eye",
        help: "Wound in until the jam nuts meet the ends of the threads.",
        holds: ReadingKind::Number { kind: Kind::Length, least: inch(4.0), most: inch(120.0) },
    },
    ReadingRow {
        id: "lend-longest",
        label: "Its longest, eye to eye",
        help: "Three threads showing at each end, and no more.",
        holds: ReadingKind::Number { kind: Kind::Length, least: inch(4.0), most: inch(120.0) },
    },
];

/// A rod end that was measured, in the list of those of the published series.
pub const MEASURED: &str = "Measured, or not listed";

/// The rod ends of the published series: id and label.
pub fn series() -> Vec<(&'static str, &'static str)> {
    rod_ends::ALL.iter().map(|row| (row.id, row.label)).collect()
}

/// The threads: id and label.
pub fn thread_picks() -> Vec<(&'static str, &'static str)> {
    threads::ALL.iter().map(|thread| (thread.id, thread.label)).collect()
}

/// The hands: id and label.
pub const HANDS: [(&str, &str); 2] = [("right", "Right-hand"), ("left", "Left-hand")];

/// What is asked about its steel.
pub const STEEL: &str = "Stamped heat-treated alloy?";

/// What is known of its steel: id and label.
pub const STEELS: [(&str, &str); 2] = [("yes", "Yes"), ("unknown", "Not known")];

/// A rod end of a series as if it had been measured; its hand and its steel are still to be told.
pub fn of_series(id: &str, hand: Option<Hand>) -> Option<BorrowedRodEnd> {
    let row = rod_ends::find(id)?;
    Some(BorrowedRodEnd {
        thread: Some(row.thread),
        hand,
        eye_to_end: Some(row.eye_to_end),
        thread_length: Some(row.thread_length),
        bore: Some(row.bore),
        ball_width: Some(row.ball_width),
        heat_treated: None,
    })
}

/// The thread of an id that came from the page.
pub fn thread_of(id: &str) -> Option<&'static str> {
    threads::find(id).map(|thread| thread.id)
}

/// What a borrowed part comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Lent {
    /// Its mark.
    pub mark: Verdict,
    /// One word.
    pub word: &'static str,
    /// What is still to be read; empty where nothing is.
    pub missing: String,
    /// The points, the worst first.
    pub points: Vec<(Verdict, String)>,
    /// The lengths it gives, each with its name.
    pub lengths: Vec<(&'static str, String)>,
}

/// A borrowed rod end in an end of a link, 0 for A.
pub fn rod_end(
    document: &Document,
    index: usize,
    answer: &Answer,
    end: usize,
    part: &BorrowedRodEnd,
    system: System,
) -> Lent {
    in_lines(borrowed::rod_end(document, index, answer, end, part), system)
}

/// A borrowed link in the place of this one.
pub fn whole_link(answer: &Answer, part: &BorrowedLink, system: System) -> Lent {
    in_lines(borrowed::whole_link(answer, part), system)
}

impl Lent {
    /// The same while a hit may be open against the bar: a part that fits does not make the rest good.
    #[must_use]
    pub fn unless_hit(mut self, hit: bool) -> Self {
        (self.mark, self.word) = unless_hit(self.mark, self.word, hit);
        self.points.iter_mut().for_each(|(mark, _)| *mark = unless_hit(*mark, "", hit).0);
        self
    }
}

fn in_lines(found: Borrowed, system: System) -> Lent {
    let word = match found.standing {
        Standing::Good => "Fits",
        Standing::NotJudged => "Not judged",
        Standing::Watch => "With care",
        Standing::Stop => "Does not fit",
    };
    let lengths = found.lengths.map(|lengths| {
        [
            ("Wound right in, the link is", lengths.shortest),
            ("With as many threads showing as now", lengths.same_showing),
            ("At its outward stop", lengths.longest),
        ]
        .map(|(name, value)| (name, length(value, system)))
        .to_vec()
    });
    Lent {
        mark: mark(found.standing),
        word,
        missing: if found.missing.is_empty() {
            String::new()
        } else {
            format!("Still needed: {}.", found.missing.join(", "))
        },
        points: found.points.iter().map(|point| (mark(point.standing), say(&point.says, system))).collect(),
        lengths: lengths.unwrap_or_default(),
    }
}
