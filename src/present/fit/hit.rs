//! After a hit, as the page says it: one word, what to do, the limits, and what every look came to.

use super::standing::mark;
use crate::engine::fitting::Standing;
use crate::engine::fitting::hit::{self, AfterHit, BowedBar, Found, Gouge, HitReadings, LEAST_SEEN, Look};
use crate::log::reading_row;
use crate::present::words::say;
use crate::present::working::{self, Step};
use crate::quantity::{Kind, System, exceeds, fit, show};
use crate::report::{Answer, Verdict};

/// Every row of readings, for what goes into the log.
pub const ROWS: [&str; 14] = [
    "hit-bow",
    "hit-string",
    "hit-bend",
    "hit-kink",
    "hit-crack",
    "hit-gouge",
    "hit-dent",
    "hit-dent-depth",
    "hit-shank",
    "hit-head",
    "hit-eye",
    "hit-nut",
    "hit-mount",
    "hit-play",
];

/// The looks that are picked, in their order, but for the dent with its depth, which stands between.
pub const PICKED: [&str; 11] = [
    "hit-bend",
    "hit-kink",
    "hit-crack",
    "hit-gouge",
    "hit-dent",
    "hit-shank",
    "hit-head",
    "hit-eye",
    "hit-nut",
    "hit-mount",
    "hit-play",
];

/// Each look with how it is done, where nothing is answered.
pub fn looks() -> impl Iterator<Item = (&'static str, &'static str)> {
    PICKED.into_iter().filter_map(reading_row).map(|row| (row.label, row.help))
}

/// What the looks are for, above them.
pub const HELP: &str =
    "Park level, chock it, wipe the link clean. One bad look is enough to stop; check every item before you drive.";

/// What the button says by which all looks that are still open are answered with “none”.
pub const ALL_CLEAN: &str = "Everything else checked, nothing found";

/// What it stands for, under it.
pub const ALL_CLEAN_HELP: &str = "Kink, crack, gouge, dent, shanks, heads, eyes, jam nuts, bolts, brackets, welds, play. Answers only what is still open.";

/// How to stretch a string.
pub const STRING: &str = "Stretch a string from face to face of the bar, along the hollow side. Measure the deepest gap to the bar. Turn a quarter and do it again; the deeper gap counts.";

/// What must be known whatever the looks say.
pub const CAUTION: &str = "No look finds every crack. The rod-end maker, local rules and a licensed engineer take precedence, and a link that took a hard hit has less life left.";

/// Said of a bar that is bent on purpose.
pub const BENT_BY_DESIGN: &str = "This bar is bent on purpose, so a string tells nothing. Lay it on its twin or on its drawing, and say whether it still lies alike.";

/// The word for a standing after a hit.
pub const fn word(standing: Standing) -> &'static str {
    match standing {
        Standing::Good => "Drive on",
        Standing::NotJudged => "Not judged",
        Standing::Watch => "Limp home",
        Standing::Stop => "Stop",
    }
}

/// What one look came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its mark.
    pub mark: Verdict,
    /// Its word.
    pub word: &'static str,
    /// The reason.
    pub words: String,
    /// Where the rule comes from.
    pub source: String,
}

/// The whole place.
#[derive(Debug, Clone, PartialEq)]
pub struct HitPage {
    /// Its mark.
    pub mark: Verdict,
    /// The one word.
    pub word: &'static str,
    /// Why: the worst look, or what is still to be looked at.
    pub reason: String,
    /// What to do now.
    pub next: String,
    /// On what conditions it may limp home.
    pub limits: Vec<String>,
    /// What each look came to, the worst first.
    pub lines: Vec<Line>,
    /// What the bow leaves, each with its number.
    pub left: Vec<(&'static str, String)>,
    /// The line for the log.
    pub log: String,
    /// How the numbers came out.
    pub working: Vec<Step>,
}

/// The readings of a bar, from where they are kept.
pub fn readings(number: impl Fn(&str) -> Option<f64>, picked: impl Fn(&str) -> Option<&'static str>) -> HitReadings {
    let yes = |id| picked(id).map(|pick| pick == "yes");
    let gouge = picked("hit-gouge").map(|pick| match pick {
        "sharp" => Gouge::Sharp,
        "blunt" => Gouge::Blunt,
        _ => Gouge::None,
    });
    // A dent without its depth is one that nobody measured.
    let dent = if yes("hit-dent") == Some(false) { Some(0.0) } else { number("hit-dent-depth") };
    HitReadings {
        bow: number("hit-bow"),
        bow_span: number("hit-string"),
        bend_seen: yes("hit-bend"),
        kink: yes("hit-kink"),
        crack: yes("hit-crack"),
        gouge,
        dent: dent.filter(|_| yes("hit-dent").is_some()),
        shank_bent: yes("hit-shank"),
        head: yes("hit-head"),
        eye_turned: yes("hit-eye"),
        nut_loose: yes("hit-nut"),
        mount_damaged: yes("hit-mount"),
        play: yes("hit-play"),
        unreadable: false,
    }
}

/// Whether an answer that stands, in the log or not, says that something is damaged.
pub fn found_damage(number: impl Fn(&str) -> Option<f64>, picked: impl Fn(&str) -> Option<&'static str>) -> bool {
    let bad = |id: &str| picked(id).is_some_and(|picked| picked == "yes" || picked == "sharp");
    PICKED.into_iter().any(bad) || number("hit-bow").is_some_and(|gap| exceeds(gap, LEAST_SEEN))
}

/// The pick that says “none” of a look, for all looks that are still open. Whether a bend shows is answered by the string
/// where one can be stretched, never by the way.
pub fn none_of(picked: impl Fn(&str) -> Option<&'static str>, string: bool) -> Vec<(&'static str, &'static str)> {
    let open = PICKED.into_iter().filter(|id| picked(id).is_none() && !(string && *id == "hit-bend"));
    open.map(|id| (id, if id == "hit-gouge" { "none" } else { "no" })).collect()
}

/// The place in words.
pub fn page(answer: &Answer, bar: Option<&BowedBar>, readings: &HitReadings, system: System) -> HitPage {
    let after = hit::after_hit(answer, bar, readings);
    let line = |found: &Found| Line {
        mark: mark(found.standing),
        word: look_word(found.standing),
        words: say(&found.says, system),
        source: found.source.words(),
    };
    let reason = reason(&after, readings, system);
    let word = word(after.standing);
    HitPage {
        mark: mark(after.standing),
        word,
        log: format!("{word}. {reason}"),
        reason,
        next: say(&after.next, system),
        limits: after.limits.iter().map(|limit| say(limit, system)).collect(),
        lines: after.found.iter().map(line).collect(),
        left: left(&after, system),
        working: working::steps(&after.working, system),
    }
}

/// The word of a single look: only the whole may say that it drives on.
const fn look_word(standing: Standing) -> &'static str {
    match standing {
        Standing::Good => "In order",
        Standing::NotJudged => "Not judged",
        Standing::Watch => "Limp home",
        Standing::Stop => "Stop",
    }
}

fn reason(after: &AfterHit, readings: &HitReadings, system: System) -> String {
    if after.standing == Standing::NotJudged {
        let open = after.found.iter().find(|found| found.standing == Standing::NotJudged);
        let open = open.map(|found| format!(" {}", say(&found.says, system))).unwrap_or_default();
        let missing: Vec<&str> = after.missing.iter().map(|look| look.words()).collect();
        return match missing.split_last() {
            None => open.trim().to_string(),
            Some((last, [])) => format!("Still to look for: {last}.{open}"),
            Some((last, first)) => format!("Still to look for: {}; {last}.{open}", first.join("; ")),
        };
    }
    match after.found.first().filter(|found| found.standing != Standing::Good) {
        Some(worst) => say(&worst.says, system),
        None => match small(after, readings, system) {
            marks if marks.is_empty() => "Everything was looked at, and nothing found.".to_string(),
            marks => format!("Everything was looked at. {}", marks.join(" ")),
        },
    }
}

/// What was found and is small enough to keep: it may stay, but it is not nothing.
fn small(after: &AfterHit, readings: &HitReadings, system: System) -> Vec<String> {
    let is_there = |look: Look| match look {
        Look::Bend => readings.bow > Some(0.0),
        Look::Gouge => readings.gouge == Some(Gouge::Blunt),
        Look::Dent => readings.dent > Some(0.0),
        _ => false,
    };
    after.found.iter().filter(|found| is_there(found.look)).map(|found| say(&found.says, system)).collect()
}

/// What the bow leaves, each number with its name.
fn left(after: &AfterHit, system: System) -> Vec<(&'static str, String)> {
    let (Some(left), Some(straight)) = (after.left, after.straight) else { return Vec::new() };
    let force = |value: f64| show(value.max(0.0), Kind::Force, system);
    let percent =
        |value: f64| if value.is_finite() { show(value, Kind::Percent, system) } else { "over its limit".to_string() };
    let mut rows = vec![
        ("Bow counted, with that of a bar sold as straight", fit(left.bow, system)),
        ("Buckling load, straight", force(straight)),
        ("Buckling load, now", force(left.buckles_at)),
        ("Buckling capacity left", percent(left.left)),
        ("Design load with safety factor, share of that", percent(left.column)),
        ("Bending + compression, share of yield", percent(left.force)),
    ];
    if let Some([was, now]) = left.yields_at {
        rows.push(("Hit that bends it for good, straight", force(was)));
        rows.push(("Hit that bends it further, now", force(now)));
        rows.push(("Design hit, share of yield", percent(left.hit)));
    }
    rows
}
