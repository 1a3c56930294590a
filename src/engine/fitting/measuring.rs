//! Mount to mount by tape: three readings, their spread judged, the odd one named, the tape's error in turns.

use super::Standing;
use super::as_fitted::TAPE;
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{fastening, turning};
use crate::engine::sentence::{Said, said};
use crate::quantity::{Kind, exceeds, inch};
use crate::report::LinkGeometry;
use crate::source::{Cite, OURS, Obtained, cite};

/// How far three readings may lie apart.
pub const SPREAD: f64 = inch(1.0 / 8.0);
/// Nobody publishes it.
pub const SPREAD_SOURCE: Cite = cite(&OURS, "how far readings may differ", Obtained::Assumption);

/// How far one reading of a tape may be off, either way.
pub const TAPE_ERROR: f64 = TAPE;
/// Nobody publishes it for a tape held between two brackets.
pub const TAPE_SOURCE: Cite = cite(&OURS, "a tape between two brackets reads to 1/16 in", Obtained::Assumption);

/// What three readings come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// Good only for three readings that agree.
    pub standing: Standing,
    /// The mean of those that agree; none where no two do.
    pub mean: Option<f64>,
    /// From the least to the greatest of the readings there are.
    pub spread: Option<f64>,
    /// Which reading stands off from two that agree, from 0.
    pub odd: Option<usize>,
    /// What to make of them.
    pub says: Said,
    /// How the mean lies to the length the link is built for.
    pub beside_build: Option<BesideBuild>,
    /// Turns of the bar that the tape's error stands for, where turning changes the length.
    pub turns: Option<f64>,
    /// The working.
    pub working: Vec<Line>,
}

/// A measured length beside the one the link is built for.
#[derive(Debug, Clone, PartialEq)]
pub struct BesideBuild {
    /// Good where they agree, a stop where no adjustment reaches.
    pub standing: Standing,
    /// Measured less built.
    pub difference: f64,
    /// What follows.
    pub says: Said,
}

/// Judges three readings from mount to mount at ride height.
pub fn mount_to_mount(readings: [Option<f64>; 3], link: &LinkGeometry) -> Measured {
    let mut sheet = Sheet::recording();
    let read: Vec<(usize, f64)> =
        readings.iter().enumerate().filter_map(|(at, value)| value.map(|value| (at, value))).collect();
    let (mean, odd, standing, says) = agreement(&read, &mut sheet);
    let least = read.iter().map(|(_, value)| *value).fold(f64::INFINITY, f64::min);
    let greatest = read.iter().map(|(_, value)| *value).fold(f64::NEG_INFINITY, f64::max);
    let spread = (read.len() > 1 && (greatest - least).is_finite()).then_some(greatest - least);
    let per_turn = link.adjustment.per_turn;
    let turns = (mean.is_some() && per_turn > 0.0).then(|| {
        let error = sheet.look_up("Error of the tape", TAPE_ERROR, Kind::FineLength, "steel tape", TAPE_SOURCE);
        sheet.work(&turning::TURNS_OF_TAPE, &[error, per_turn])
    });
    let beside_build = mean.map(|mean| beside_build(mean, standing, link));
    Measured { standing, mean, spread, odd, says, beside_build, turns, working: sheet.lines }
}

type Agreement = (Option<f64>, Option<usize>, Standing, Said);

fn agreement(read: &[(usize, f64)], sheet: &mut Sheet) -> Agreement {
    let open = |says: Said| (None, None, Standing::NotJudged, says);
    if let Some((at, _)) = read.iter().find(|(_, value)| !(value.is_finite() && *value > 0.0)) {
        return open(said!["Reading ", ((at + 1).to_string()), " cannot be a length: measure it again."]);
    }
    match *read {
        [] => open(said!["Take three readings, mount to mount, with the tape let go and set again each time."]),
        [(at, value)] => {
            let (_, _, standing, says) = open(said![
                "Reading ",
                ((at + 1).to_string()),
                " alone is not judged: readings ",
                (missing(read)),
                " are missing."
            ]);
            (Some(value).filter(|_| false), None, standing, says)
        }
        [(_, a), (_, b)] if !exceeds((a - b).abs(), SPREAD) => {
            let mean = sheet.work(&fastening::MEAN_OF_TWO, &[a, b]);
            let says = said!["Two readings agree; reading ", (missing(read)), " is missing. Take it before you order."];
            (Some(mean), None, Standing::NotJudged, says)
        }
        [(_, a), (_, b)] => open(said![
            "Two readings lie ",
            ((a - b).abs(), Length),
            " apart, and reading ",
            (missing(read)),
            ", which would tell the odd one, is missing."
        ]),
        [(_, a), (_, b), (_, c)] => of_three([a, b, c], sheet),
        _ => open(said!["Three readings are judged, not more."]),
    }
}

/// The numbers of the readings that are missing, as people say them.
fn missing(read: &[(usize, f64)]) -> String {
    let missing: Vec<String> =
        (0..3).filter(|at| read.iter().all(|(other, _)| other != at)).map(|at| (at + 1).to_string()).collect();
    missing.join(" and ")
}

fn of_three(values: [f64; 3], sheet: &mut Sheet) -> Agreement {
    let mut order = [0, 1, 2];
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    let [low, middle, high] = order.map(|at| values[at]);
    if !exceeds(high - low, SPREAD) {
        let mean = sheet.work(&fastening::MEAN_OF_THREE, &values);
        let says = said![
            "Three readings within ",
            (high - low, Length),
            ": they agree. Mount to mount is ",
            (mean, Length),
            ", give or take ",
            (TAPE_ERROR, Length),
            "."
        ];
        return (Some(mean), None, Standing::Good, says);
    }
    // Two that agree, and one that neither of them agrees with: only then is one of the three odd.
    let [below, above] = [middle - low, high - middle];
    let odd = match [exceeds(below, SPREAD), exceeds(above, SPREAD)] {
        [true, false] => Some((order[0], [middle, high], below)),
        [false, true] => Some((order[2], [low, middle], above)),
        _ => None,
    };
    if let Some((at, [a, b], off)) = odd {
        let mean = sheet.work(&fastening::MEAN_OF_TWO, &[a, b]);
        let says = said![
            "Reading ",
            ((at + 1).to_string()),
            " is the odd one: it lies ",
            (off, Length),
            " off the nearer of two that agree. Measure reading ",
            ((at + 1).to_string()),
            " again; until then nothing is judged."
        ];
        return (Some(mean), Some(at), Standing::NotJudged, says);
    }
    let says = said![
        "The three readings lie ",
        (high - low, Length),
        " apart and no one of them stands out. Measure all three again: hole center to hole center, at ride height, on the tires."
    ];
    (None, None, Standing::NotJudged, says)
}

fn beside_build(mean: f64, standing: Standing, link: &LinkGeometry) -> BesideBuild {
    let difference = mean - link.length;
    let reach = link.adjustment.reach;
    let size = difference.abs();
    let (of_build, says) = if !exceeds(size, TAPE_ERROR) {
        (Standing::Good, said!["The link is built for ", (link.length, Length), ": the same, within the tape."])
    } else if difference > 0.0 && exceeds(difference, reach.out_good) {
        let says = said![
            "The rig measures ",
            (size, Length),
            " more than the ",
            (link.length, Length),
            " this link is built for, and it may be wound out by no more than ",
            (reach.out_good, FineLength),
            ". It is too short: have a bar made for ",
            (mean, Length),
            ", do not wind it out."
        ];
        (Standing::Stop, says)
    } else if difference < 0.0 && exceeds(size, reach.in_good) {
        let says = said![
            "The rig measures ",
            (size, Length),
            " less than the ",
            (link.length, Length),
            " this link is built for, and it winds in by no more than ",
            (reach.in_good, FineLength),
            ". It is too long: have a bar made for ",
            (mean, Length),
            "."
        ];
        (Standing::Stop, says)
    } else {
        let longer = if difference > 0.0 { "more" } else { "less" };
        let says = said![
            "The rig measures ",
            (size, Length),
            " ",
            (longer),
            " than the ",
            (link.length, Length),
            " this link is built for. Its adjustment reaches that: Turn it says how many turns."
        ];
        (Standing::Watch, says)
    };
    // What stands on readings that do not agree is never good.
    let standing = if of_build == Standing::Good { standing } else { of_build };
    BesideBuild { standing, difference, says }
}
